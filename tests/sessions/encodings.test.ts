/** Files that are not UTF-8: read where their mark says how, found where not, and never written back. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FakeEditor, NODE, PULLING, ROOT } from '../support/fake-editor.ts';

const TEXT =
  'recipe Crème slab\n  yield   8 bars\n\n  200 g rolled oats\n  80 g crème fraîche\n\n  do Stir the crème fraîche into the oats.\n  do Bake at 180 C for 20 min until golden.\n';
const utf16le = (text: string): Buffer => Buffer.from(text, 'utf16le');
const utf32le = (text: string): Buffer =>
  Buffer.concat([...text].map((c) => Buffer.from(Uint32Array.of(c.codePointAt(0) ?? 0).buffer)));

const BYTES = {
  'Windows-1252': Buffer.from(TEXT, 'latin1'),
  'UTF-16 with a mark': Buffer.concat([Buffer.from([0xff, 0xfe]), utf16le(TEXT)]),
  'UTF-16, the other way round': Buffer.concat([Buffer.from([0xfe, 0xff]), utf16le(TEXT).swap16()]),
  'UTF-16 without a mark': utf16le(TEXT.replaceAll(/[èî]/g, 'e')),
  'UTF-16 cut short': Buffer.concat([Buffer.from([0xff, 0xfe]), utf16le(TEXT).subarray(0, -1)]),
  'UTF-32': Buffer.concat([Buffer.from([0xff, 0xfe, 0, 0]), utf32le(TEXT)]),
  'UTF-8 cut short': Buffer.concat([Buffer.from(TEXT), Buffer.from([0xc3])]),
};
type Encoding = keyof typeof BYTES;
const READ: ReadonlySet<Encoding> = new Set(['UTF-16 with a mark', 'UTF-16, the other way round'] as const);
const ALL = Object.keys(BYTES) as Encoding[];

const kitchen = mkdtempSync(join(tmpdir(), 'quern-encodings-'));
const at = (name: string): string => join(kitchen, name);
afterAll(() => rmSync(kitchen, { recursive: true }));
beforeEach(() => {
  rmSync(kitchen, { recursive: true });
  mkdirSync(kitchen);
});

function quern(args: readonly string[], input?: Buffer): { exit: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(NODE, [`${ROOT}dist/cli.js`, ...args], {
    cwd: kitchen,
    encoding: 'utf8',
    ...(input && { input }),
  });
  return { exit: status, out: stdout, err: stderr };
}

interface Report {
  readonly files: readonly { readonly findings: readonly { code: string; severity: string; message: string }[] }[];
}
const reported = (out: string) => (JSON.parse(out) as Report).files.flatMap(({ findings }) => findings);

describe.each(ALL)('%s', (encoding) => {
  const bytes = BYTES[encoding];
  beforeEach(() => writeFileSync(at('a.quern'), bytes));

  test('has one finding that says the encoding', () => {
    const { exit, out, err } = quern(['check', 'a.quern', '--format', 'json']);
    const isRead = READ.has(encoding);
    const said = encoding.startsWith('UTF-8') || encoding === 'Windows-1252' ? 'not UTF-8' : encoding.slice(0, 6);
    expect(reported(out).filter(({ code }) => code === 'wrong-encoding')).toEqual([
      expect.objectContaining({ severity: isRead ? 'warning' : 'error', message: expect.stringContaining(said) }),
    ]);
    expect(reported(out).filter(({ code }) => code !== 'wrong-encoding')).toEqual([]);
    expect(exit).toBe(isRead ? 0 : 1);
    expect(err).toBe('');
  });

  test('is read by its mark, or by no command at all', () => {
    for (const args of [
      ['report', 'a.quern'],
      ['publish', 'a.quern', '--format', 'text'],
      ['diff', 'a.quern', 'a.quern'],
    ]) {
      const { exit, out, err } = quern(args);
      expect(out).not.toContain('\ufffd');
      if (READ.has(encoding)) expect(exit, err).toBe(0);
      else {
        expect(exit).toBe(2);
        expect(err).toMatch(/`a\.quern` is (?:not UTF-8|UTF-)/);
      }
    }
  });

  test('is not written, and nor is what would be written with it', () => {
    const good = TEXT.replace('Crème', 'Other');
    writeFileSync(at('b.quern'), good);
    for (const args of [
      ['format', '--write', '.'],
      ['scale', 'a.quern', '--by', '2', '--write'],
      ['convert', 'a.quern', '--to', 'us', '--write'],
      ['trial', 'a.quern', '--write'],
    ]) {
      const { exit, err } = quern(args);
      expect(exit, args.join(' ')).toBe(2);
      expect(err).toMatch(/`a\.quern`.* (?:not UTF-8|UTF-)/);
      expect(readFileSync(at('a.quern')).equals(bytes)).toBe(true);
      expect(readFileSync(at('b.quern'), 'utf8')).toBe(good);
    }
  });

  test('is not mended', () => {
    const allowed = TEXT.replace('  do Stir', '  allow dough-too-wet because it is a batter\n  do Stir');
    writeFileSync(at('b.quern'), allowed);
    if (READ.has(encoding)) writeFileSync(at('a.quern'), Buffer.concat([Buffer.from([0xff, 0xfe]), utf16le(allowed)]));
    const before = readFileSync(at('a.quern'));
    const { exit, err } = quern(['check', '--fix', '.']);
    expect(exit).toBe(2);
    expect(err).toMatch(/`a\.quern`.* (?:not UTF-8|UTF-)/);
    expect(readFileSync(at('a.quern')).equals(before)).toBe(true);
    expect(readFileSync(at('b.quern'), 'utf8')).toBe(allowed);
  });

  test('is read from standard input by its mark, or refused', () => {
    const { exit, out, err } = quern(['check', '--stdin', '--format', 'json'], bytes);
    if (READ.has(encoding)) expect(reported(out).map(({ code }) => code)).toEqual(['wrong-encoding']);
    else {
      expect(exit).toBe(2);
      expect(err).toMatch(/standard input is (?:not UTF-8|UTF-)/);
    }
  });
});

test('of bytes that are not UTF-8, the first is named with its line', () => {
  writeFileSync(
    at('a.quern'),
    Buffer.concat([Buffer.from('recipe \ufffd é\n# \n'), Buffer.from([0x41, 0x93, 0xe9, 0x20])]),
  );
  const { out } = quern(['check', 'a.quern']);
  expect(out).toMatch(/^a\.quern:1:1: error: .*byte 93 on line 3/);
});

test('a baseline takes up no file that was not read', () => {
  writeFileSync(at('a.quern'), BYTES['Windows-1252']);
  expect(quern(['check', '.', '--baseline', 'base.json', '--update-baseline']).exit).toBe(1);
  expect(JSON.parse(readFileSync(at('base.json'), 'utf8')).findings).toEqual([]);
});

describe('a byte order mark of UTF-8', () => {
  const MARK = Buffer.from([0xef, 0xbb, 0xbf]);
  const marked = Buffer.concat([MARK, Buffer.from(TEXT)]);
  beforeEach(() => writeFileSync(at('a.quern'), marked));

  test('is no finding, moves no place, and stays', () => {
    writeFileSync(at('b.quern'), TEXT);
    const [a, b] = ['a.quern', 'b.quern'].map((name) => quern(['report', name, '--format', 'json']).out);
    expect(a).toBe(b);
    expect(quern(['check', '.']).exit).toBe(0);
    expect(quern(['format', '--write', 'a.quern', 'b.quern']).exit).toBe(0);
    const laidOut = readFileSync(at('b.quern'));
    expect(laidOut.equals(Buffer.from(TEXT))).toBe(false);
    expect(readFileSync(at('a.quern')).equals(Buffer.concat([MARK, laidOut]))).toBe(true);
    expect(quern(['scale', 'a.quern', '--by', '2', '--write']).exit).toBe(0);
    expect(readFileSync(at('a.quern')).subarray(0, 3).equals(MARK)).toBe(true);
  });

  test('stays in what is laid out from standard input', () => {
    const { out } = quern(['format', '--stdin'], marked);
    expect(out).toBe(`\ufeff${quern(['format', '--stdin'], Buffer.from(TEXT)).out}`);
  });

  test('is allowed in quern.json, foods.quern and a baseline', () => {
    writeFileSync(at('quern.json'), Buffer.concat([MARK, Buffer.from('{ "measures": "metric" }')]));
    writeFileSync(
      at('foods.quern'),
      Buffer.concat([MARK, Buffer.from('food quay flour\n  like    plain flour\n  1 cup = 140 g\n')]),
    );
    expect(quern(['weigh', '1 cup quay flour'])).toMatchObject({ exit: 0, out: expect.stringMatching(/^140 g/) });
    expect(quern(['weigh', '1 cup water'])).toMatchObject({ out: expect.stringMatching(/^250 g/) });
    writeFileSync(at('base.json'), Buffer.concat([MARK, Buffer.from('{"version": 1, "findings": []}')]));
    expect(quern(['check', '.', '--baseline', 'base.json'])).toMatchObject({ exit: 0, err: '' });
  });
});

describe('what a recipe leans on', () => {
  const VARIANT = 'recipe Slab with nuts\n  from    base.quern\n  add 20 g walnuts\n';

  test('a base that is not UTF-8 is there, and not read', () => {
    writeFileSync(at('base.quern'), BYTES['Windows-1252']);
    writeFileSync(at('v.quern'), VARIANT);
    const { exit, out } = quern(['check', 'v.quern', '--format', 'json']);
    expect(exit).toBe(1);
    expect(reported(out)).toContainEqual(
      expect.objectContaining({ code: 'missing-file', message: expect.stringContaining('is not UTF-8') }),
    );
  });

  test.each(['quern.json', 'foods.quern'])('a %s that is not UTF-8 is said, with 2', (name) => {
    writeFileSync(at('a.quern'), TEXT);
    writeFileSync(at('quern.json'), '{}');
    writeFileSync(
      at(name),
      Buffer.from(name === 'quern.json' ? '{ "ignore": ["é"] }' : 'food é\n  like oats\n', 'latin1'),
    );
    const { exit, err } = quern(['check', 'a.quern']);
    expect(exit).toBe(2);
    expect(err).toContain(`${name} is not UTF-8`);
  });
});

describe('in the editor', () => {
  let editor: FakeEditor | undefined;
  afterEach(() => editor?.kill());

  test('a file on disk that is not UTF-8 has its finding, while it is open and when the folder is checked', async () => {
    writeFileSync(at('a.quern'), BYTES['Windows-1252']);
    const root = pathToFileURL(kitchen).href;
    const uri = `${root}/a.quern`;
    const e = await FakeEditor.start({ root, capabilities: PULLING });
    editor = e;
    const { items } = await e.request<{ items: { uri: string; items: { code: string }[] }[] }>('workspace/diagnostic', {
      previousResultIds: [],
    });
    expect(items.find((i) => i.uri === uri)?.items.map((d) => d.code)).toEqual(['wrong-encoding']);

    // As an editor has it that takes it for UTF-8.
    await e.open(uri, TEXT.replaceAll(/[èî]/g, '\ufffd'));
    const codes = async () => {
      const report = await e.pull(uri);
      return report.kind === 'full' ? report.items.map((d) => d.code) : [];
    };
    expect((await codes()).filter((code) => code === 'wrong-encoding')).toHaveLength(1);
    // As one that knows better.
    await e.change(uri, [{ text: TEXT }]);
    expect(await codes()).toEqual(['wrong-encoding']);
    writeFileSync(at('a.quern'), TEXT);
    await e.save(uri);
    await e.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
    expect(await codes()).toEqual([]);
  });

  test('a character that was lost is found in a text that lies nowhere', async () => {
    const e = await FakeEditor.start();
    editor = e;
    await e.open('untitled:Untitled-1', TEXT.replace('crème', 'cr\ufffdme'));
    const lost = (await e.findings('untitled:Untitled-1')).filter((d) => d.code === 'wrong-encoding');
    expect(lost.map((d) => d.range)).toEqual([{ start: { line: 4, character: 9 }, end: { line: 4, character: 10 } }]);
  });
});
