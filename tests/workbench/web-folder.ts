// A folder that lies on no disk, as an extension of the browser: `memfs:/kitchen`, with the files that the tests are given.
// It refuses to know what stands in them.

import * as vscode from 'vscode';

type Entry = { readonly type: vscode.FileType; bytes: Uint8Array; mtime: number };

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const answer = await fetch(vscode.Uri.joinPath(context.extensionUri, 'files.json').toString(true));
  const files = (await answer.json()) as Readonly<Record<string, string>>;
  const folder = new MemoryFolder();
  for (const [path, text] of Object.entries(files)) folder.put(`/kitchen/${path}`, new TextEncoder().encode(text));
  context.subscriptions.push(vscode.workspace.registerFileSystemProvider('memfs', folder, { isCaseSensitive: true }));
}

class MemoryFolder implements vscode.FileSystemProvider {
  private readonly entries = new Map<string, Entry>();
  private readonly changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.changed.event;

  put(path: string, bytes: Uint8Array): void {
    for (let at = path.indexOf('/', 1); at > 0; at = path.indexOf('/', at + 1)) {
      const type = vscode.FileType.Directory;
      if (!this.entries.has(path.slice(0, at)))
        this.entries.set(path.slice(0, at), { type, bytes: new Uint8Array(), mtime: 0 });
    }
    this.entries.set(path, { type: vscode.FileType.File, bytes, mtime: Date.now() });
  }

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }

  stat(uri: vscode.Uri): vscode.FileStat {
    const { type, bytes, mtime } = this.at(uri);
    return { type, size: bytes.length, mtime, ctime: 0 };
  }

  readDirectory({ path }: vscode.Uri): [string, vscode.FileType][] {
    const start = path === '/' ? path : `${path}/`;
    return [...this.entries].flatMap(([known, { type }]): [string, vscode.FileType][] =>
      known.startsWith(start) && !known.slice(start.length).includes('/') ? [[known.slice(start.length), type]] : [],
    );
  }

  readFile(uri: vscode.Uri): Uint8Array {
    return this.at(uri).bytes;
  }

  writeFile(uri: vscode.Uri, bytes: Uint8Array): void {
    const type = this.entries.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
    this.put(uri.path, bytes);
    this.changed.fire([{ type, uri }]);
  }

  delete(uri: vscode.Uri): void {
    for (const path of [...this.entries.keys()])
      if (path === uri.path || path.startsWith(`${uri.path}/`)) this.entries.delete(path);
    this.changed.fire([{ type: vscode.FileChangeType.Deleted, uri }]);
  }

  rename(from: vscode.Uri, to: vscode.Uri): void {
    this.writeFile(to, this.at(from).bytes);
    this.delete(from);
  }

  createDirectory(): void {
    // A folder is there once something lies in it.
  }

  private at(uri: vscode.Uri): Entry {
    const entry = this.entries.get(uri.path);
    if (entry === undefined) throw vscode.FileSystemError.FileNotFound(uri);
    return entry;
  }
}
