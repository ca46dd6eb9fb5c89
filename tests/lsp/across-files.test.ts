import { describe, expect, it } from 'vitest';
import type { DocumentLink, Location, SymbolInformation, WorkspaceEdit } from 'vscode-languageserver';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const PASTE_URI = 'file:///k/pastry/paste.quern';
const TART_URI = 'file:///k/tart.quern';
const PASTE =
  'part paste as shortcrust\n  200 g     plain flour\n  100 g     butter\n  do Rub the butter into the flour.\n';
const TART = 'recipe Tart\r\npart paste from pastry/paste.quern : paste\r\npart top\r\n  do Fill the paste.\r\n';
const files = () =>
  new Map([
    ['/k/quern.json', '{}'],
    ['/k/pastry/paste.quern', PASTE],
    ['/k/tart.quern', TART],
  ]);
const at = (uri: string, line: number, character: number) => ({
  textDocument: { uri },
  position: { line, character },
});
const range = (line: number, from: number, to: number) => ({
  start: { line, character: from },
  end: { line, character: to },
});
const MOVING = {
  ...RICH,
  workspace: { ...RICH.workspace, fileOperations: { willRename: true, didDelete: true } },
};

describe('across files', () => {
  it('definition, references and links lead to files that are not open', async () => {
    const client = await Client.connect({ capabilities: RICH, files: files() });
    await client.open(TART_URI, TART);
    expect(await client.request<Location[]>('textDocument/definition', at(TART_URI, 1, 42))).toEqual([
      { uri: PASTE_URI, range: range(0, 5, 10) },
    ]);
    expect(
      await client.request<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri: TART_URI } }),
    ).toEqual([{ range: range(1, 16, 34), target: PASTE_URI, tooltip: 'Open paste.quern' }]);
    await client.open(PASTE_URI, PASTE);
    expect(
      await client.request<Location[]>('textDocument/references', {
        ...at(PASTE_URI, 0, 7),
        context: { includeDeclaration: false },
      }),
    ).toEqual([{ uri: TART_URI, range: range(1, 16, 34) }]);
    expect(await client.request<Location[]>('textDocument/implementation', at(PASTE_URI, 0, 7))).toEqual([
      { uri: TART_URI, range: range(1, 16, 34) },
    ]);
    expect(await client.request<Location[]>('textDocument/implementation', at(TART_URI, 2, 6))).toEqual([]);
    expect(await client.request<Location[]>('textDocument/declaration', at(TART_URI, 1, 42))).toEqual([
      { uri: PASTE_URI, range: range(0, 5, 10) },
    ]);
  });

  it('a file that builds on itself is told so where it is open', async () => {
    const own = 'recipe Round\n  from    r.quern\n';
    const client = await Client.connect({ capabilities: RICH, files: new Map([['/k/r.quern', own]]) });
    const uri = 'file:///k/r.quern';
    await client.open(uri, own);
    await client.settled();
    expect(client.published.at(-1)?.diagnostics.map((d) => d.message)).toEqual([
      expect.stringContaining('`r.quern` is this file, and a recipe cannot build on itself'),
    ]);
  });

  it('a rename changes open files at their version and closed ones as they are', async () => {
    const client = await Client.connect({ capabilities: RICH, files: files() });
    await client.open(PASTE_URI, PASTE, 4);
    const renamed = await client.request<WorkspaceEdit>('textDocument/rename', {
      ...at(PASTE_URI, 0, 7),
      newName: 'short paste',
    });
    expect(renamed.documentChanges).toMatchObject([
      { textDocument: { uri: PASTE_URI, version: 4 }, edits: [{ newText: 'short paste', range: range(0, 5, 10) }] },
      { textDocument: { uri: TART_URI, version: null }, edits: [{ newText: 'short paste', range: range(1, 37, 42) }] },
    ]);
  });

  it('a client without document changes gets the same by URI', async () => {
    const client = await Client.connect({ capabilities: {}, files: files() });
    await client.open(PASTE_URI, PASTE);
    const renamed = await client.request<WorkspaceEdit>('textDocument/rename', {
      ...at(PASTE_URI, 0, 7),
      newName: 'short paste',
    });
    expect(Object.keys(renamed.changes ?? {})).toEqual([PASTE_URI, TART_URI]);
  });

  it('a file that moves takes the lines that name it along', async () => {
    const client = await Client.connect({ capabilities: MOVING, files: files() });
    expect(client.initialized.capabilities.workspace?.fileOperations?.willRename).toBeDefined();
    await client.open(TART_URI, TART);
    const edit = await client.request<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: 'file:///k/pastry', newUri: 'file:///k/bases' }],
    });
    expect(edit.documentChanges).toMatchObject([
      {
        textDocument: { uri: TART_URI, version: 1 },
        edits: [{ newText: 'bases/paste.quern', range: range(1, 16, 34) }],
      },
    ]);
    expect(
      await client.request('workspace/willRenameFiles', {
        files: [{ oldUri: 'file:///k/notes.txt', newUri: 'file:///k/b.txt' }],
      }),
    ).toBeNull();
  });

  it('symbols of the folder are matched by the server', async () => {
    const client = await Client.connect({ capabilities: RICH, files: files() });
    await client.notify('workspace/didChangeWorkspaceFolders', {
      event: { added: [{ uri: 'file:///k', name: 'k' }], removed: [] },
    });
    const found = await client.request<SymbolInformation[]>('workspace/symbol', { query: 'past' });
    expect(found.map((s) => [s.name, s.location.uri, s.containerName])).toEqual([
      ['paste', PASTE_URI, undefined],
      ['paste', TART_URI, 'Tart'],
    ]);
    await client.notify('workspace/didChangeWorkspaceFolders', {
      event: { added: [], removed: [{ uri: 'file:///k', name: 'k' }] },
    });
    expect(await client.request('workspace/symbol', { query: 'past' })).toEqual([]);
  });

  it('a deleted folder is missed by those who build on what lay in it', async () => {
    const texts = files();
    const client = await Client.connect({ capabilities: MOVING, files: texts });
    await client.open(TART_URI, TART);
    await client.settled();
    expect(client.codes(TART_URI)).not.toContain('missing-file');
    texts.delete('/k/pastry/paste.quern');
    await client.notify('workspace/didDeleteFiles', { files: [{ uri: 'file:///k/pastry' }] });
    await client.settled();
    expect(client.codes(TART_URI)).toContain('missing-file');
  });
});
