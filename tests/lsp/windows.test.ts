/** Paths, names and line ends of Windows: what is told there is what is told elsewhere. */
import { posix, win32 } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { pathOfUri, uriOfPath } from '../../server/src/lsp/convert.ts';
import { PULLING } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

describe('the path of a URI', () => {
  it.each([
    ['file:///c%3A/Users/Ana%20Mar%C3%ADa/k.quern', 'c:\\Users\\Ana María\\k.quern'],
    ['file:///C:/Users/k.quern', 'c:\\Users\\k.quern'],
    ['file:///c%3A/100%25%20rye%20%231.quern', 'c:\\100% rye #1.quern'],
    ['file://oven/share/k.quern', '\\\\oven\\share\\k.quern'],
    ['file:///home/ana/k.quern', '/home/ana/k.quern'],
    ['file:///home/ana/a%5Cb.quern', '/home/ana/a\\b.quern'],
  ])('%s is %s', (uri, path) => expect(pathOfUri(uri)).toBe(path));

  it.each([
    'c:\\Users\\Ana María\\k.quern',
    'c:\\100% rye #1.quern',
    '\\\\oven\\share\\Küche\\k.quern',
    '/home/ana/k.quern',
    '/home/ana/a\\b.quern',
  ])('%s there and back', (path) => expect(pathOfUri(uriOfPath(path))).toBe(path));

  it('is the one that an editor there writes', () => {
    expect(uriOfPath('c:\\Küche\\k.quern')).toBe('file:///c%3A/K%C3%BCche/k.quern');
    expect(uriOfPath('\\\\oven\\share\\k.quern')).toBe('file://oven/share/k.quern');
  });
});

const KITCHEN: Readonly<Record<string, string>> = {
  'quern.json': '{ "ignore": ["old/**"], "severities": { "unknown-food": "off" } }',
  'foods.quern': 'food quay flour\n  like    bread flour\n',
  'bread.quern':
    'recipe Bread\npart dough\n  500 g     quay flour\n  325 g     water\n  do Mix the flour and the water.\n',
  'doughs/olive.quern': 'recipe Olive bread\n  from    ../bread.quern\n  add 80 g olives to dough\n',
  'doughs/lost.quern': 'recipe Lost\n  from    ../braed.quern\n',
  'old/left.quern': 'recipe Left\nthis is not read\n',
};

/** What is told of the kitchen on one machine, its own paths and URIs taken out. */
async function told(paths: typeof posix, root: string, end: string): Promise<unknown> {
  const path = (name: string) => paths.join(root, ...name.split('/'));
  const files = new Map(Object.entries(KITCHEN).map(([name, text]) => [path(name), text.replaceAll('\n', end)]));
  const uri = (name: string) => uriOfPath(path(name));
  const client = await Client.connect({ capabilities: PULLING, files, paths });
  await client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [{ uri: uriOfPath(root), name: 'k' }], removed: [] },
  });
  const found: unknown[] = [];
  for (const name of Object.keys(KITCHEN).filter((each) => each.endsWith('.quern'))) {
    await client.open(uri(name), files.get(path(name)) ?? '');
    const pulled = await client.request<{ items: Diagnostic[] }>('textDocument/diagnostic', {
      textDocument: { uri: uri(name) },
    });
    found.push([name, pulled.items.map(({ code, range, message }) => ({ code, range, message }))]);
  }
  // What is typed over the base is heard in the recipe that builds on it.
  await client.replace(
    uri('bread.quern'),
    2,
    `${KITCHEN['bread.quern']}  do Knead in the olives.\n`.replaceAll('\n', end),
  );
  await client.settled();
  const after = await client.request<{ items: Diagnostic[] }>('textDocument/diagnostic', {
    textDocument: { uri: uri('doughs/olive.quern') },
  });
  const base = await client.request<{ uri: string } | { uri: string }[] | null>('textDocument/definition', {
    textDocument: { uri: uri('doughs/olive.quern') },
    position: { line: 1, character: 14 },
  });
  client.close();
  return JSON.parse(
    JSON.stringify({ found, after: after.items.map(({ code, message }) => ({ code, message })), base }).replaceAll(
      uriOfPath(root),
      'k:',
    ),
  );
}

describe('a kitchen on Windows', () => {
  it.each([
    ['on a drive', 'c:\\Küche & Co'],
    ['on a share', '\\\\oven\\share\\kitchen'],
  ])('%s is told of as anywhere', async (_, root) => {
    const there = await told(win32, root, '\r\n');
    expect(there).toEqual(await told(posix, '/home/k', '\n'));
    expect(JSON.stringify(there)).toContain('../bread.quern');
    expect(there).toMatchObject({ after: [], base: [{ uri: 'k:/bread.quern' }] });
  });
});
