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
  log(options: { readonly path: string; readonly maxEntries: number }): Promise<readonly Commit[]>;
}

interface Commit {
  readonly hash: string;
  readonly commitDate?: Date;
  readonly authorDate?: Date;
}

export type OldText =
  | { readonly known: true; readonly text: string /** `3f2a91c` */; readonly revision: string }
  | { readonly known: false; readonly why: string };

const unknown = (why: string): OldText => ({ known: false, why });

const mostCommits = 1000;
const patienceMs = 5000;

/** The file as it was last committed. */
export async function textOfLastCommit(file: vscode.Uri): Promise<OldText> {
  return textAt(file, () => true, 'This file has not been committed yet.');
}

/** The file as the last commit on or before a day left it: '2026-09-14'. */
export async function textOfDay(file: vscode.Uri, day: string): Promise<OldText> {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const end = new Date(year, month - 1, date + 1).getTime();
  return textAt(
    file,
    ({ commitDate, authorDate }) => ((commitDate ?? authorDate)?.getTime() ?? Number.POSITIVE_INFINITY) < end,
    `Git has no version of this file from ${day} or before.`,
  );
}

async function textAt(file: vscode.Uri, fits: (commit: Commit) => boolean, none: string): Promise<OldText> {
  const repository = await repositoryOf(file);
  if (typeof repository === 'string') return unknown(repository);
  // A repository without a commit has no log.
  const commits = await repository.log({ path: file.fsPath, maxEntries: mostCommits }).catch(() => []);
  const commit = commits.find(fits);
  if (commit === undefined) return unknown(none);
  try {
    const text = await repository.show(commit.hash, file.fsPath);
    return { known: true, text, revision: commit.hash.slice(0, 7) };
  } catch {
    return unknown(`Git could not show this file at ${commit.hash.slice(0, 7)}: it may have had another name.`);
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
