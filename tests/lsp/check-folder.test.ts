import { describe, expect, it } from 'vitest';
import type { WorkspaceDiagnosticReport } from 'vscode-languageserver';
import type { CheckFolderAnswer } from '../../server/src/lsp/messages.ts';
import { PULLING, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const GOOD = 'recipe Oats\n  yield   2 bowls\n  200 g     rolled oats\n  do Toast the oats for 10 min until golden.\n';
const BAD = GOOD.replace('rolled oats\n', 'rolled oats\n  2 blobs   honey\n');
const VARIANT = 'recipe Late oats\n  from    a.quern\n  swap rolled oats for 180 g rolled oats\n';
const uri = (name: string) => `file:///k/${name}.quern`;
const kitchen = () =>
  new Map([
    ['/k/quern.json', '{ "ignore": ["drafts/**"] }'],
    ['/k/a.quern', GOOD],
    ['/k/b.quern', BAD],
    ['/k/c.quern', VARIANT],
    ['/k/drafts/d.quern', BAD],
  ]);

async function inKitchen(files: Map<string, string>, capabilities = RICH, initializationOptions?: unknown) {
  const client = await Client.connect({ capabilities, files, initializationOptions });
  await client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [{ uri: 'file:///k', name: 'k' }], removed: [] },
  });
  return client;
}
const check = (client: Client, more: object = {}) =>
  client.request<CheckFolderAnswer>('quern/checkFolder', { version: 1, ...more });
const changed = (client: Client, name: string, type: number) =>
  client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uri(name), type }] });

describe('checking the folder on request', () => {
  it('pushes what is found in closed files, with progress, without what the house leaves out', async () => {
    const client = await inKitchen(kitchen());
    const answer = await check(client, { workDoneToken: 'bar' });
    expect(answer).toMatchObject({ finished: true, files: 3 });
    expect(answer.findings.error).toBeGreaterThan(0);
    expect(client.codes(uri('b'))).toContain('unknown-unit');
    expect(client.codes('file:///k/drafts/d.quern')).toBeUndefined();
    const progress = client.heard.filter((h) => h.method === '$/progress').map((h) => h.params);
    expect(progress.at(-1)).toEqual({ token: 'bar', value: { kind: 'report', percentage: 100, message: '3 of 3' } });
  });

  it('forgets what lies in a folder that is closed, and knows one that is opened', async () => {
    const files = kitchen();
    files.set('/other/e.quern', BAD.replace('Oats', 'Rye'));
    const client = await inKitchen(files);
    const rye = async () => (await client.request<{ name: string }[]>('workspace/symbol', { query: 'rye' })).length;
    expect([(await check(client)).files, await rye()]).toEqual([3, 0]);
    const other = { uri: 'file:///other', name: 'other' };
    await client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [other], removed: [] } });
    expect([(await check(client)).files, await rye()]).toEqual([4, 1]);
    expect(client.codes('file:///other/e.quern')).toContain('unknown-unit');
    await client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [], removed: [other] } });
    await client.settled();
    expect([client.codes('file:///other/e.quern'), await rye()]).toEqual([[], 0]);
    expect(client.codes(uri('b'))).toContain('unknown-unit');
  });

  it('stays true: files that change, are mended, deleted, opened and closed', async () => {
    const files = kitchen();
    const client = await inKitchen(files);
    await check(client);
    files.set('/k/b.quern', GOOD);
    await changed(client, 'b', 2);
    await client.settled();
    expect(client.codes(uri('b'))).toEqual([]);
    // A base that is gone is missed by the file that builds on it, closed as it is.
    files.delete('/k/a.quern');
    await changed(client, 'a', 3);
    await client.settled();
    expect(client.codes(uri('c'))).toContain('missing-file');
    files.set('/k/a.quern', GOOD);
    await changed(client, 'a', 1);
    await client.settled();
    expect(client.codes(uri('c'))).not.toContain('missing-file');
    await client.open(uri('b'), BAD);
    await client.settled();
    expect(client.codes(uri('b'))).toContain('unknown-unit');
    files.set('/k/b.quern', BAD);
    await client.notify('textDocument/didClose', { textDocument: { uri: uri('b') } });
    await client.settled();
    expect(client.codes(uri('b'))).toContain('unknown-unit');
    files.set('/k/quern.json', '{ "severities": { "unknown-unit": "off" } }');
    await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 'file:///k/quern.json', type: 2 }] });
    await client.settled();
    expect(client.codes(uri('b'))).not.toContain('unknown-unit');
  });

  it('takes a folder that is deleted for the files in it, and says so where they are built on', async () => {
    const files = new Map([
      ['/k/sub/base.quern', GOOD],
      ['/k/sub/bad.quern', BAD],
      ['/k/own.quern', 'recipe Own\n  from    sub/base.quern\n'],
    ]);
    const client = await inKitchen(files);
    await check(client);
    await client.open(uri('own'), files.get('/k/own.quern') ?? '');
    await client.settled();
    expect(client.codes(uri('sub/bad'))).toContain('unknown-unit');
    expect(client.codes(uri('own'))).not.toContain('missing-file');
    files.delete('/k/sub/base.quern');
    files.delete('/k/sub/bad.quern');
    await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 'file:///k/sub', type: 3 }] });
    await client.settled();
    expect(client.codes(uri('sub/bad'))).toEqual([]);
    expect(client.codes(uri('own'))).toContain('missing-file');
  });

  it('keeps what is pushed of an open file true, for a client that shows it while the file is in no tab', async () => {
    const client = await inKitchen(kitchen(), PULLING, { checksFolderItself: true });
    expect(client.initialized.capabilities.diagnosticProvider).toMatchObject({ workspaceDiagnostics: false });
    await client.open(uri('b'), BAD);
    await client.settled();
    expect(client.codes(uri('b'))).toBeUndefined();
    await check(client);
    expect(client.codes(uri('b'))).toContain('unknown-unit');
    await client.replace(uri('b'), 2, GOOD);
    await client.settled();
    expect(client.codes(uri('b'))).toEqual([]);
  });

  it('never tells another client that pulls of one file twice', async () => {
    const client = await inKitchen(kitchen(), PULLING);
    await check(client);
    expect(client.codes(uri('b'))).toContain('unknown-unit');
    await client.open(uri('b'), BAD);
    await client.settled();
    expect(client.codes(uri('b'))).toEqual([]);
    await client.notify('textDocument/didClose', { textDocument: { uri: uri('b') } });
    await client.settled();
    expect(client.codes(uri('b'))).toContain('unknown-unit');
  });

  it('can be cancelled, and then says no more', async () => {
    const files = kitchen();
    for (let n = 0; n < 400; n++) files.set(`/k/more/${n}.quern`, BAD.replace('200 g', `${200 + n} g`));
    const client = await inKitchen(files);
    const { token, cancel } = client.cancellable();
    const asked = client.request('quern/checkFolder', { version: 1, workDoneToken: 'bar' }, token).then(
      () => 'answered',
      (error: { code: number }) => error.code,
    );
    while (!client.heard.some((h) => h.method === '$/progress')) await new Promise((resolve) => setImmediate(resolve));
    cancel();
    // RequestCancelled of the Language Server Protocol.
    expect(await asked).toBe(-32800);
    const told = await allTold(client);
    expect(told).toBeLessThan(400);
    await client.settled();
    expect(await allTold(client)).toBe(told);
  });
});

/** How many findings were pushed, once no more are on their way: an answer may overtake them. */
async function allTold(client: Client): Promise<number> {
  for (;;) {
    const told = client.published.length;
    for (let turn = 0; turn < 50; turn++) await new Promise((resolve) => setImmediate(resolve));
    if (client.published.length === told) return told;
  }
}

describe('a client that pulls the folder', () => {
  const pull = (client: Client, previousResultIds: { uri: string; value: string }[] = [], more: object = {}) =>
    client.request<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds, ...more });

  it('gets every file, open ones as typed, and what did not change as unchanged', async () => {
    const files = kitchen();
    const client = await inKitchen(files, PULLING);
    expect(client.initialized.capabilities.diagnosticProvider).toMatchObject({ workspaceDiagnostics: true });
    await client.open(uri('a'), BAD, 7);
    const first = await pull(client);
    expect(first.items.map((i) => [i.uri, i.kind, i.version])).toEqual([
      [uri('a'), 'full', 7],
      [uri('b'), 'full', null],
      [uri('c'), 'full', null],
    ]);
    const ids = first.items.map((i) => ({ uri: i.uri, value: i.resultId ?? '' }));
    expect((await pull(client, ids)).items.map((i) => i.kind)).toEqual(['unchanged', 'unchanged', 'unchanged']);
    await client.replace(uri('a'), 8, GOOD);
    const gone = { uri: uri('gone'), value: '1' };
    const next = await pull(client, [...ids, gone]);
    expect(next.items.map((i) => [i.uri, i.kind])).toEqual([
      [uri('a'), 'full'],
      [uri('b'), 'unchanged'],
      [uri('c'), expect.any(String)],
      [uri('gone'), 'full'],
    ]);
    expect(client.published.flatMap((p) => p.diagnostics)).toEqual([]);
  });

  it('may have it in parts', async () => {
    const client = await inKitchen(kitchen(), PULLING);
    const answer = await pull(client, [], { partialResultToken: 'part' });
    expect(answer.items).toEqual([]);
    const parts = client.heard.filter((h) => h.method === '$/progress').map((h) => h.params);
    expect(parts).toHaveLength(3);
    expect(parts[1]).toMatchObject({ token: 'part', value: { items: [{ uri: uri('b'), kind: 'full' }] } });
  });
});
