// Knows which files of the open folders are handed to a server that cannot read them by itself, and hands on what becomes of them.
// It refuses to know what stands in them.

import * as vscode from 'vscode';
import type { HandedFile, HandedParams } from '../../server/src/lsp/messages.ts';
import { PICTURE_ENDINGS } from '../../server/src/notation/picture-endings.ts';

export type FilesHanded = vscode.Disposable & {
  /** What lies in the folders; undefined where the server reads all of them. */
  readonly all: () => Promise<HandedParams | undefined>;
};

/** A folder with more is somebody's whole disk, and each look at one may be a question to another machine. */
const mostEntries = 5000;
const mostDeep = 16;
const mostBytes = 4 * 2 ** 20;
/** So many are asked for at once. */
const atOnce = 16;
const neverEntered: ReadonlySet<string> = new Set(['.git', 'node_modules', '.hg', '.svn']);

export function handFiles(
  isHanded: (folder: vscode.Uri) => boolean,
  uriOf: (uri: vscode.Uri) => string,
  hand: (params: HandedParams) => void,
): FilesHanded {
  const folders = (): readonly vscode.Uri[] =>
    (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri).filter(isHanded);
  const isWithin = (uri: vscode.Uri): boolean => {
    const folder = vscode.workspace.getWorkspaceFolder(uri);
    return folder !== undefined && isHanded(folder.uri);
  };

  const gather = async (roots: readonly vscode.Uri[]): Promise<HandedParams> => {
    const files: HandedFile[] = [];
    const larger: string[] = [];
    for (const root of roots) {
      const { found, isWhole } = await walk(root);
      if (!isWhole) larger.push(uriOf(root));
      for (let at = 0; at < found.length; at += atOnce)
        files.push(...(await Promise.all(found.slice(at, at + atOnce).map((uri) => read(uri, uriOf)))));
    }
    return { files, gone: [], larger };
  };

  const changed = async (uri: vscode.Uri): Promise<void> => {
    if (!isWithin(uri)) return;
    if (isWanted(uri.path)) hand({ files: [await read(uri, uriOf)], gone: [], larger: [] });
    else if (await isFolder(uri)) hand(await gather([uri]));
  };
  const went = (uri: vscode.Uri): void => {
    if (isWithin(uri)) hand({ files: [], gone: [uriOf(uri)], larger: [] });
  };

  const watching = vscode.Disposable.from(
    ...(folders().length === 0 ? [] : [watch(changed, went)]),
    vscode.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
      const more = added.map(({ uri }) => uri).filter(isHanded);
      if (more.length > 0) hand(await gather(more));
      for (const { uri } of removed) if (isHanded(uri)) hand({ files: [], gone: [uriOf(uri)], larger: [] });
    }),
  );
  return {
    all: async () => {
      const roots = folders();
      return roots.length === 0 ? undefined : gather(roots);
    },
    dispose: () => watching.dispose(),
  };
}

function watch(changed: (uri: vscode.Uri) => Promise<void>, went: (uri: vscode.Uri) => void): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher('**/*');
  return vscode.Disposable.from(
    watcher,
    watcher.onDidCreate(changed),
    watcher.onDidChange(changed),
    watcher.onDidDelete(went),
  );
}

/** A recipe, the settings of a house, or a picture, of which only the name is told. */
const isWanted = (path: string): boolean => isText(path) || isPicture(path);
const isText = (path: string): boolean => path.endsWith('.quern') || path.endsWith('/quern.json');
const isPicture = (path: string): boolean =>
  PICTURE_ENDINGS.includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase());

/** All that is wanted below a folder, and whether there was no more to look at. */
async function walk(root: vscode.Uri): Promise<{ readonly found: readonly vscode.Uri[]; readonly isWhole: boolean }> {
  const found: vscode.Uri[] = [];
  let left = mostEntries;
  let isWhole = true;
  let level = [root];
  for (let deep = 0; level.length > 0; deep += 1) {
    if (deep > mostDeep || left <= 0) return { found, isWhole: false };
    const next: vscode.Uri[] = [];
    for (let at = 0; at < level.length; at += atOnce) {
      const listed = await Promise.all(level.slice(at, at + atOnce).map(entriesOf));
      for (const { folder, entries } of listed)
        for (const [name, type] of entries) {
          left -= 1;
          if (left < 0) {
            isWhole = false;
            break;
          }
          const uri = vscode.Uri.joinPath(folder, name);
          if ((type & vscode.FileType.Directory) !== 0) {
            if (!neverEntered.has(name)) next.push(uri);
          } else if (isWanted(uri.path)) found.push(uri);
        }
    }
    level = next;
  }
  return { found, isWhole };
}

async function entriesOf(folder: vscode.Uri) {
  try {
    return { folder, entries: await vscode.workspace.fs.readDirectory(folder) };
  } catch {
    return { folder, entries: [] };
  }
}

async function isFolder(uri: vscode.Uri): Promise<boolean> {
  try {
    return ((await vscode.workspace.fs.stat(uri)).type & vscode.FileType.Directory) !== 0;
  } catch {
    return false;
  }
}

async function read(file: vscode.Uri, uriOf: (uri: vscode.Uri) => string): Promise<HandedFile> {
  const uri = uriOf(file);
  if (!isText(file.path)) return { uri };
  let bytes: Uint8Array;
  try {
    const { size } = await vscode.workspace.fs.stat(file);
    if (size > mostBytes) return { uri, fault: { why: `it is larger than ${mostBytes / 2 ** 20} MB` } };
    bytes = await vscode.workspace.fs.readFile(file);
  } catch (error) {
    return { uri, fault: { why: error instanceof Error ? error.message : String(error) } };
  }
  try {
    return { uri, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { uri, fault: { encoding: true } };
  }
}
