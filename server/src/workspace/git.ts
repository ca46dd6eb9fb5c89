/**
 * Knows what is asked of the repository that files lie in; `host/` fulfils it.
 */

export type GitAnswer<T> =
  | { readonly known: true; readonly value: T }
  /** No repository, no such revision, no such file in it: in words. */
  | { readonly known: false; readonly why: string };

export interface Repository {
  /** The absolute path of its outermost folder. */
  readonly root: string;
  /** The way from there to the folder that was asked about, with `/` between; '' where they are one. */
  readonly inside: string;
  /** Where git looks for hooks; undefined where that lies outside the repository. */
  readonly hooks: string | undefined;
}

export interface Git {
  /** The repository that a folder lies in. */
  repositoryAt(folder: string): GitAnswer<Repository>;
  /**
   * Absolute paths of the files below the repository's root that differ from where the present branch left the revision:
   * committed since, changed, new or deleted.
   */
  changedSince(folder: string, revision: string): GitAnswer<readonly string[]>;
  /** What the file held at a revision. */
  textAt(path: string, revision: string): GitAnswer<string>;
}
