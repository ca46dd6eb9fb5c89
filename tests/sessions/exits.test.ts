/** The built command never passes by mistake: what it could not look at, say or use ends it with 2, in words. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { NODE, ROOT } from '../support/fake-editor.ts';

const CLI = `${ROOT}dist/cli.js`;
const GOOD =
  'recipe Oat slab\n  yield   8 bars\n\n  200 g     rolled oats\n  80 g      butter\n\n  do Rub the butter into the oats.\n  do Bake at 180 C for 20 min until golden.\n';
const isRoot = process.getuid?.() === 0;
/** One that owns nothing, has no home and no entry in the list of users. */
const NOBODY = 54321;

const top = mkdtempSync(join(tmpdir(), 'quern-exits-'));
const kitchen = join(top, 'kitchen');
const at = (name: string): string => join(kitchen, name);
afterAll(() => rmSync(top, { recursive: true }));
beforeEach(() => {
  rmSync(top, { recursive: true });
  mkdirSync(kitchen, { recursive: true });
  chmodSync(top, 0o755);
  writeFileSync(at('a.quern'), GOOD);
});

interface Ran {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

function quern(args: readonly string[], options: Parameters<typeof spawnSync>[2] = {}): Ran {
  const ran = spawnSync(NODE, [CLI, ...args], { cwd: kitchen, ...options, encoding: 'utf8' });
  return { exit: ran.status, out: ran.stdout, err: ran.stderr };
}

const inShell = (script: string, options: Parameters<typeof spawnSync>[2] = {}): Ran => {
  const env = { ...process.env, NODE, CLI };
  const ran = spawnSync('bash', ['-c', script], { cwd: kitchen, env, ...options, encoding: 'utf8' });
  return { exit: ran.status, out: ran.stdout, err: ran.stderr };
};

test('a good kitchen passes, and says nothing beside', () => {
  expect(quern(['check'])).toMatchObject({ exit: 0, err: '' });
});

describe('a house that cannot be used as it is written', () => {
  test.each([
    ['no JSON', '{ "measures": "metric"', 'quern.json is no JSON'],
    ['an unknown setting', '{ "measure": "metric" }', '`measure` is no setting'],
    ['a value that it does not have', '{ "foodSafety": "usda" }', '`foodSafety` is one of'],
    ['a list', '[]', 'quern.json holds one object'],
  ])('%s: every command that looks at it ends with 2', (_, json, words) => {
    writeFileSync(at('quern.json'), json);
    for (const args of [
      ['check'],
      ['check', '--format', 'json'],
      ['check', '--fix'],
      ['report', 'a.quern'],
      ['report', '.'],
      ['scale', 'a.quern', '--by', '2'],
      ['convert', 'a.quern', '--to', 'us'],
      ['format', '--check'],
      ['weigh', '1 cup water'],
      ['publish', 'a.quern', '--format', 'text'],
      ['diff', 'a.quern', 'a.quern'],
      ['config', '.'],
    ]) {
      const { exit, err } = quern(args);
      expect(err, args.join(' ')).toContain(words);
      expect(err.split(words)).toHaveLength(2);
      expect(exit, args.join(' ')).toBe(2);
    }
  });

  test('a folder of its name', () => {
    mkdirSync(at('quern.json'));
    expect(quern(['check'])).toMatchObject({ exit: 2, err: expect.stringContaining('quern.json cannot be read: ') });
  });

  test('a food of the house that is like none', () => {
    writeFileSync(at('foods.quern'), 'food quay flour\n  like    no such food at all\n');
    expect(quern(['check', 'a.quern'])).toMatchObject({ exit: 2, err: expect.stringContaining('quay flour') });
  });
});

describe.runIf(isRoot)('what may not be read', () => {
  test('a folder below: the rest is checked, and it is said', () => {
    mkdirSync(at('closed'));
    writeFileSync(at('closed/b.quern'), GOOD);
    chmodSync(at('closed'), 0o000);
    for (const args of [['check'], ['check', '--format', 'json'], ['format', '--check'], ['report', '.']]) {
      const { exit, err } = quern(args, { uid: NOBODY });
      expect(err).toContain('`closed` is left out: you may not read it');
      expect(exit, args.join(' ')).toBe(2);
    }
  });

  test('a recipe, quern.json, a base', () => {
    writeFileSync(at('v.quern'), 'recipe Slab with nuts\n  from    a.quern\n  add 20 g walnuts\n');
    chmodSync(at('a.quern'), 0o000);
    expect(quern(['check', 'a.quern'], { uid: NOBODY })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('`a.quern` cannot be read: you may not read it'),
    });
    const { exit, out } = quern(['check', 'v.quern'], { uid: NOBODY });
    expect(exit).toBe(1);
    expect(out).toContain('`a.quern` cannot be read: you may not read it');
    chmodSync(at('a.quern'), 0o644);
    writeFileSync(at('quern.json'), '{}');
    chmodSync(at('quern.json'), 0o000);
    expect(quern(['check', 'a.quern'], { uid: NOBODY })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('quern.json cannot be read: you may not read it'),
    });
  });
});

describe('links', () => {
  beforeEach(() => {
    mkdirSync(join(top, 'elsewhere'));
    writeFileSync(join(top, 'elsewhere/raw.quern'), GOOD);
  });

  test.each<[string, () => void, string]>([
    ['to a recipe elsewhere', () => symlinkSync('../elsewhere/raw.quern', at('b.quern')), '`b.quern` is left out'],
    ['to a folder elsewhere', () => symlinkSync('../elsewhere', at('more')), '`more` is left out'],
    ['to nothing', () => symlinkSync('no-such.quern', at('b.quern')), '`b.quern` is left out'],
    ['to itself', () => symlinkSync('b.quern', at('b.quern')), '`b.quern` is left out'],
  ])('%s: it is not followed, and that is said', (_, link, words) => {
    link();
    const { exit, err } = quern(['check']);
    expect(err).toContain(words);
    expect(exit).toBe(2);
  });

  test('to what is checked all the same, to what is no recipe and to what is ignored are nothing to say', () => {
    mkdirSync(at('pies'));
    writeFileSync(at('pies/b.quern'), GOOD);
    writeFileSync(join(top, 'elsewhere.txt'), '');
    symlinkSync('pies', at('latest'));
    symlinkSync('a.quern', at('today.quern'));
    symlinkSync('.', at('pies/round'));
    symlinkSync('../elsewhere.txt', at('letter.txt'));
    symlinkSync('../elsewhere', at('left'));
    symlinkSync('../elsewhere', at('out'));
    writeFileSync(at('.gitignore'), 'left\n');
    writeFileSync(at('quern.json'), '{ "ignore": ["out"] }');
    expect(quern(['check'])).toMatchObject({ exit: 0, err: '', out: expect.stringContaining('2 files checked') });
  });

  test('one that is named is read', () => {
    symlinkSync('../elsewhere/raw.quern', at('b.quern'));
    expect(quern(['check', 'b.quern'])).toMatchObject({ exit: 0, err: '' });
  });
});

describe('a terminal that takes nothing', () => {
  test.each([
    [['check'], 'there is no room left'],
    [['report', 'a.quern'], 'there is no room left'],
    [['format', 'a.quern'], 'there is no room left'],
    [['explain'], 'there is no room left'],
    [['--version'], 'there is no room left'],
  ])('full: %j', (args, words) => {
    const { exit, err } = inShell(`"$NODE" "$CLI" ${args.join(' ')} >/dev/full`);
    expect(exit).toBe(2);
    expect(err).toContain(`standard output cannot be written: ${words}`);
    expect(err).not.toContain('    at ');
  });

  test('closed by whoever reads it', () => {
    for (let i = 0; i < 20; i++) writeFileSync(at(`n${i}.quern`), GOOD.replace('200 g', '200 blobs'));
    const { exit, err } = inShell('set -o pipefail; "$NODE" "$CLI" check | true');
    expect(exit).toBe(2);
    expect(err).toContain('standard output cannot be written: whoever reads it has closed it');
    expect(err).not.toContain('    at ');
  });

  test('standard error closed or full is no reason to pass, nor to fail otherwise', () => {
    writeFileSync(at('quern.json'), '{');
    expect(inShell('"$NODE" "$CLI" check 2>/dev/full').exit).toBe(2);
    expect(inShell('"$NODE" "$CLI" check 2> >(true); exit $?').exit).toBe(2);
  });
});

describe('where it is started', () => {
  test('in a folder that is gone, files are read by their whole names, and nothing else is looked at', () => {
    const script = (args: string) =>
      `mkdir "${top}/gone"; cd "${top}/gone"; rmdir "${top}/gone"; "$NODE" "$CLI" ${args}`;
    expect(inShell(script(`check "${at('a.quern')}"`))).toMatchObject({ exit: 0, err: '' });
    expect(inShell(script('weigh "150 g plain flour"'))).toMatchObject({ exit: 0, err: '' });
    for (const args of ['check', 'check .', 'check a.quern', 'check --since HEAD', 'config .', 'diff a b'])
      expect(inShell(script(args)), args).toMatchObject({
        exit: 2,
        err: expect.stringContaining('the folder that the command was started in is gone'),
      });
  });

  test.runIf(isRoot)('as a user without a home', () => {
    const { exit, out, err } = quern(['check'], { uid: NOBODY, gid: NOBODY, env: {} });
    expect(err).toBe('');
    expect(exit).toBe(0);
    expect(out).toContain('1 file checked');
  });

  test.runIf(isRoot)('as a user without a home, the server starts as well', async () => {
    const server = spawn(NODE, [`${ROOT}dist/server.js`, '--stdio'], {
      uid: NOBODY,
      gid: NOBODY,
      env: {},
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const text = JSON.stringify({
      jsonrpc: '2.0',
      id: 1,
      method: 'initialize',
      params: { processId: null, rootUri: null, capabilities: {} },
    });
    server.stdin.write(`Content-Length: ${text.length}\r\n\r\n${text}`);
    const [answer] = await Promise.race([once(server.stdout, 'data'), once(server, 'exit')]);
    server.kill();
    expect(String(answer)).toContain('"id":1,"result"');
  });
});

describe('an error that nobody caught', () => {
  const preload = (code: string): string => {
    const file = join(top, 'preload.cjs');
    writeFileSync(file, code);
    return file;
  };
  test.each([
    [
      'thrown within the command',
      "require('node:os').availableParallelism = () => { throw new TypeError('a slip'); };",
    ],
    ['thrown later', "setTimeout(() => { throw new TypeError('a slip'); }, 0);"],
    ['a promise that nobody waits for', "setTimeout(() => Promise.reject(new TypeError('a slip')), 0);"],
  ])('%s: 2, and said', (_, code) => {
    const { exit, err } = inShell(`sleep 1 | "$NODE" --require "${preload(code)}" "$CLI" check --stdin`);
    const later = code.includes('setTimeout');
    const ran = later ? { exit, err } : inShell(`"$NODE" --require "${preload(code)}" "$CLI" check`);
    expect(ran.err).toMatch(/a slip/);
    expect(ran.err).toContain('which is a bug of Quern');
    expect(ran.exit).toBe(2);
  });
});
