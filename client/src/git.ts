// Knows how the editor's own git extension is asked for earlier texts of a file.
// It refuses to run git: where that extension is not there, nothing is known.

import * as vscode from 'vscode';

/** What is used of the git extension's interface, version 1 (github.com/microsoft/vscode, extensions/git/src/api). */
interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: vscode.Event<unknown>;
  getRepository(uri: vscode.Uri): Repository | null;
  openRepository?(root: vscode.Uri): Promise<Repository | null>;
}

interface Repository {
  show(ref: string, path: string): Promise<string>;
  log(options: {
    readonly path: string;
    readonly maxEntries: number;
    readonly range?: string;
  }): Promise<readonly Commit[]>;
  diffBetween(ref1: string, ref2: string): Promise<readonly Change[]>;
}

interface Commit {
  readonly hash: string;
  readonly parents: readonly string[];
  readonly commitDate?: Date;
  readonly authorDate?: Date;
}

interface Change {
  readonly uri: vscode.Uri;
  readonly originalUri: vscode.Uri;
  readonly renameUri?: vscode.Uri;
}

export type OldText =
  | {
      readonly known: true;
      readonly text: string;
      /** `3f2a91c` */
      readonly revision: string;
      /** What it is not, where it is the nearest there is. */
      readonly but?: string;
    }
  | { readonly known: false; readonly why: string };

/** One commit of the file, under the name that it had then. */
interface Version {
  readonly commit: Commit;
  readonly path: string;
}

const unknown = (why: string): OldText => ({ known: false, why });

const mostCommits = 1000;
const mostNames = 20;
/** So many texts are read at once, and so many in all. */
const batchOfTexts = 20;
const mostTexts = 400;
const patienceMs = 5000;

/** The file as it was last committed. */
export async function textOfLastCommit(file: vscode.Uri): Promise<OldText> {
  const repository = await repositoryOf(file);
  if (typeof repository === 'string') return unknown(repository);
  for await (const version of versionsOf(repository, file.fsPath)) return textOf(repository, version);
  return unknown('This file has not been committed yet.');
}

/**
 * The newest commit of the file that holds what a trial tested, as `whichTested` tells: it gives the place of the first among texts.
 * Where none does, or the trial carries no fingerprint, the last commit on or before its day: '2026-09-14'.
 */
export async function textOfTrial(
  file: vscode.Uri,
  day: string,
  whichTested: ((texts: readonly string[]) => Promise<number | null>) | undefined,
): Promise<OldText> {
  const repository = await repositoryOf(file);
  if (typeof repository === 'string') return unknown(repository);
  const versions: Version[] = [];
  for await (const version of versionsOf(repository, file.fsPath)) versions.push(version);
  if (whichTested !== undefined) {
    const tested = await testedText(repository, versions, whichTested);
    if (tested !== undefined) return tested;
  }
  const end = endOf(day);
  const last = versions.find(({ commit: { commitDate, authorDate } }) => {
    const when = (commitDate ?? authorDate)?.getTime();
    return when !== undefined && when < end;
  });
  if (last === undefined) return unknown(`Git has no version of this file from ${day} or before.`);
  const text = await textOf(repository, last);
  const why = whichTested === undefined ? 'the trial carries no fingerprint' : 'no commit holds what the trial tested';
  return text.known ? { ...text, but: `${why}, so this is the last commit of that day or before` } : text;
}

async function testedText(
  repository: Repository,
  versions: readonly Version[],
  whichTested: (texts: readonly string[]) => Promise<number | null>,
): Promise<OldText | undefined> {
  for (let from = 0; from < Math.min(versions.length, mostTexts); from += batchOfTexts) {
    const batch = versions.slice(from, from + batchOfTexts);
    const texts = await Promise.all(batch.map((version) => textOf(repository, version)));
    const known = texts.filter((text) => text.known);
    const at = await whichTested(known.map(({ text }) => text));
    if (at !== null) return known[at];
  }
  return undefined;
}

/** Midnight at the end of a day, where the editor is. */
function endOf(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(year, month - 1, date + 1).getTime();
}

/** The commits that changed a file, newest first, followed through its earlier names. */
async function* versionsOf(repository: Repository, file: string): AsyncGenerator<Version> {
  let path = file;
  let range: string | undefined;
  for (let names = 0; names < mostNames; names++) {
    // A repository without a commit has no log.
    const commits = await repository
      .log({ path, maxEntries: mostCommits, ...(range !== undefined && { range }) })
      .catch(() => []);
    for (const commit of commits) yield { commit, path };
    const oldest = commits.at(-1);
    const parent = oldest?.parents[0];
    if (oldest === undefined || parent === undefined) return;
    const changes = await repository.diffBetween(parent, oldest.hash).catch(() => []);
    const renamed = changes.find(
      ({ uri, renameUri, originalUri }) => (renameUri ?? uri).fsPath === path && originalUri.fsPath !== path,
    );
    if (renamed === undefined) return;
    path = renamed.originalUri.fsPath;
    range = parent;
  }
}

async function textOf(repository: Repository, { commit, path }: Version): Promise<OldText> {
  const revision = commit.hash.slice(0, 7);
  try {
    return { known: true, text: await repository.show(commit.hash, path), revision };
  } catch {
    return unknown(`Git could not show this file at ${revision}.`);
  }
}

async function repositoryOf(file: vscode.Uri): Promise<Repository | string> {
  if (file.scheme !== 'file' && file.scheme !== 'vscode-remote') return 'This recipe does not lie in a folder yet.';
  const extension = vscode.extensions.getExtension<{ getAPI(version: 1): GitApi }>('vscode.git');
  if (extension === undefined) return "The editor's own git extension is not there, so earlier versions are not known.";
  let api: GitApi;
  try {
    api = (await extension.activate()).getAPI(1);
  } catch {
    return "The editor's own git extension is switched off, so earlier versions are not known.";
  }
  await initialized(api);
  const folder = vscode.workspace.getWorkspaceFolder(file)?.uri;
  const found = api.getRepository(file) ?? (folder && (await api.openRepository?.(folder)));
  return found ?? 'This recipe does not lie in a git repository.';
}

/** Waits until git has looked for repositories, but not for ever. */
function initialized(api: GitApi): Promise<void> {
  if (api.state === 'initialized') return Promise.resolve();
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, patienceMs);
    const listening = api.onDidChangeState(() => {
      clearTimeout(timer);
      listening.dispose();
      resolve();
    });
  });
}
