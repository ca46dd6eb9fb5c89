import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { FakeEditor, NODE, SERVER } from '../support/fake-editor.ts';

const URI = 'untitled:Untitled-1';

let editor: FakeEditor | undefined;
afterEach(() => editor?.kill());

async function start(...options: Parameters<typeof FakeEditor.start>): Promise<FakeEditor> {
  editor = await FakeEditor.start(...options);
  return editor;
}

describe('places are UTF-16', () => {
  const WIDE =
    'recipe Crème 🍞 brûlée\n  ½ cup     crème fraîche 🥛, cold\n  ½ blobs   olive oil\n  do Bake at 375 °C 🔥 with the crème fraîche.\n';
  it('after ½, °, é and emoji, in findings and in edits', async () => {
    const e = await start();
    await e.open(URI, WIDE);
    const find = async (code: string) => (await e.findings(URI)).find((d) => d.code === code);
    const hot = await find('implausible-temperature');
    expect(hot?.range).toEqual(e.rangeOf(URI, '375 °C'));
    const unit = await find('unknown-unit');
    expect(unit?.range.start).toEqual(e.rangeOf(URI, 'blobs').start);

    await e.type(URI, '🍞 ', '');
    await e.type(URI, '🔥', '🔥🔥');
    expect((await find('implausible-temperature'))?.range).toEqual(e.rangeOf(URI, '375 °C'));
    // A place inside a pair of surrogates is taken as it stands, and the text stays the client's.
    const { start: at } = e.rangeOf(URI, '🥛');
    await e.change(URI, [
      {
        range: { start: { ...at, character: at.character + 1 }, end: { ...at, character: at.character + 2 } },
        text: '',
      },
    ]);
    expect((await find('implausible-temperature'))?.range).toEqual(e.rangeOf(URI, '375 °C'));
  });
});

describe('line ends', () => {
  const CRLF =
    'recipe Crust\r\npart crust as shortcrust\r\n  200 g     plain flour\r\n  100 g     butter\r\n  10 g      honey\r\n  do Rub the butter into the flour.\r\n';
  it('stay as they are, in fixes and in formatting', async () => {
    const e = await start();
    await e.open(URI, CRLF);
    const unused = (await e.findings(URI)).find((d) => d.code === 'unused-ingredient');
    expect(unused?.range).toEqual(e.rangeOf(URI, 'honey'));
    if (unused === undefined) return;
    const [fix] = await e.codeActions(URI, unused.range, ['quickfix']);
    if (fix?.edit) await e.apply(fix.edit);
    expect(e.text(URI)).not.toMatch(/[^\r]\n/);
    expect(await e.codes(URI)).not.toContain('unused-ingredient');
    await e.type(URI, '  200 g     plain', ' 200g plain');
    const edits = await e.request<Parameters<FakeEditor['applyEdits']>[1]>('textDocument/formatting', {
      textDocument: { uri: URI },
      options: { tabSize: 2, insertSpaces: true },
    });
    await e.applyEdits(URI, edits);
    expect(e.text(URI)).toContain('\r\n  200 g     plain flour\r\n');
    // Half of a line end is typed, then the other half.
    await e.change(URI, [{ text: 'recipe A\r' }]);
    await e.change(URI, [
      { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: '\n  0,5 g  salt\n' },
    ]);
    expect((await e.findings(URI)).find((d) => d.code === 'decimal-comma')?.range.start.line).toBe(
      e.rangeOf(URI, '0,5').start.line,
    );
  });
});

describe('broken and hostile text', () => {
  it.each([
    ['nothing', ''],
    ['a NUL and half a pair of surrogates', 'recipe \0\n  200 g \ud83c flour\n  do Mix \udf5e.\n'],
    [
      'an unfinished merge',
      'recipe A\n<<<<<<< HEAD\n  200 g flour\n=======\n  250 g flour\n>>>>>>> b\n  do Sift the flour.\n',
    ],
    ['a line of a megabyte', `recipe A\n  do ${'butter and sugar '.repeat(62_000)}\n  100 g butter\n`],
    ['right to left', 'recipe לחם\n  ‏200 g קמח\n  do Mix.\n'],
    ['only keywords', 'recipe\npart\ndo\nallow\ntrial\nfood\nswap\n='],
    ['many brackets', `do ${'['.repeat(5000)}\n`],
  ])('%s is answered', async (_what, text) => {
    const e = await start();
    await e.open(URI, text);
    await e.findings(URI);
    const textDocument = { uri: URI };
    const lines = text.split('\n');
    for (const line of [0, 1, lines.length - 1]) {
      const position = { line, character: Math.min(lines[line]?.length ?? 0, 12) };
      const range = { start: { line: 0, character: 0 }, end: position };
      await e.request('textDocument/hover', { textDocument, position });
      await e.request('textDocument/completion', { textDocument, position });
      await e.request('textDocument/definition', { textDocument, position });
      await e.request('textDocument/prepareRename', { textDocument, position });
      await e.request('textDocument/selectionRange', { textDocument, positions: [position] });
      await e.codeActions(URI, range);
    }
    for (const method of ['documentSymbol', 'foldingRange', 'semanticTokens/full', 'formatting'])
      await e.request(`textDocument/${method}`, { textDocument, options: { tabSize: 2, insertSpaces: true } });
    expect(e.notified.filter((n) => n.method === 'window/logMessage')).toEqual([]);
    expect(await e.stop()).toBe(0);
  });
});

describe('a folder', () => {
  it('has its house, which changes while files are open', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'quern-house-'));
    try {
      writeFileSync(join(folder, 'quern.json'), '{ "measures": "metric" }');
      writeFileSync(join(folder, 'foods.quern'), 'food quayside flour\n  like    plain flour\n  1 cup = 140 g\n');
      const root = pathToFileURL(folder).href;
      const e = await start({ root });
      const uri = `${root}/loaf.quern`;
      await e.open(uri, 'recipe Loaf\n  2 cups    quayside flour\n  do Sift the flour.\n');
      expect(await e.codes(uri)).toEqual([]);
      expect(JSON.stringify(await e.hover(uri, 'quayside flour'))).toContain('Weight: 280 g');
      writeFileSync(join(folder, 'foods.quern'), 'food quayside flour\n  like    plain flour\n  1 cup = 150 g\n');
      await e.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: `${root}/foods.quern`, type: 2 }] });
      expect(JSON.stringify(await e.hover(uri, 'quayside flour'))).toContain('Weight: 300 g');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('the end', () => {
  it('is 1 without a shutdown, and when the client goes away', async () => {
    const codes = await Promise.all(
      ['exit', 'gone'].map((how) => {
        const child = spawn(NODE, [SERVER, '--stdio'], { stdio: ['pipe', 'ignore', 'ignore'] });
        const ended = new Promise((resolve) => child.on('exit', resolve));
        const body = JSON.stringify({ jsonrpc: '2.0', method: 'exit' });
        if (how === 'exit') child.stdin.write(`Content-Length: ${body.length}\r\n\r\n${body}`);
        else child.stdin.end();
        return ended;
      }),
    );
    expect(codes).toEqual([1, 1]);
  });
});
