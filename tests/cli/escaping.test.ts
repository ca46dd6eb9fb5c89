/** Whatever a recipe says and however a file is called: it moves no caret, hides no line, and gives no order to who logs it. */
import { describe, expect, it } from 'vitest';
import { visible } from '../../server/src/publish/visible.ts';
import { quern, type Ran } from '../support/fake-io.ts';

const EVIL = '\u001b[2J\u001b]0;title\u0007 \u009b31m \u007f \u202etxet\u202c \u2066x\u2069';
const NAMES = [
  'a\nb.quern',
  '::set-env name=x::y.quern',
  '##vso[task.complete].quern',
  '\u001b[31mred\u202e.quern',
  'c\rd.quern',
];
const RECIPE = `recipe Slab ${EVIL}
  by      ${EVIL}
  yield   12 ${EVIL}
part base ${EVIL}
  200 g     plain flour, ${EVIL}
  100 g     butter
  3 blobs   ${EVIL}
  do Rub 150 g of the butter into the flour and ${EVIL}.
`;
const files = Object.fromEntries(NAMES.map((name) => [name, RECIPE]));
const file = { 'x.quern': RECIPE, 'y.quern': RECIPE.replace('200 g', '300 g') };
const COLOURS = /\u001b\[(?:0|2|31|33|36)m/g;

const run = (args: readonly string[], of: Readonly<Record<string, string>>, terminal: boolean): Promise<Ran> =>
  quern(args, of, '', undefined, terminal);

const WORDS: readonly (readonly string[])[] = [
  ['report', 'x.quern'],
  ['report', 'x.quern', '--format', 'json'],
  ['explain', 'overdrawn-amount', 'x.quern'],
  ['explain', 'unknown-unit', 'x.quern'],
  ['diff', 'x.quern', 'y.quern'],
  ['diff', 'x.quern', 'y.quern', '--format', 'json'],
  ['config', 'x.quern'],
  ['weigh', `3 g ${EVIL}`],
  ['check', 'x.quern', '--format', 'json'],
  ['check', 'x.quern', '--format', 'sarif'],
  ['check', 'x.quern', '--format', 'github'],
  ['check', 'x.quern', '--format', 'compact'],
];
const DOCUMENTS: readonly (readonly string[])[] = [
  ['scale', 'x.quern', '--by', '2'],
  ['scale', 'x.quern', '--by', '2', '--dry-run'],
  ['convert', 'x.quern', '--to', 'weight'],
  ['format', 'x.quern'],
  ['trial', 'x.quern'],
  ['publish', 'x.quern', '--format', 'text'],
  ['publish', 'x.quern', '--format', 'markdown'],
];

describe('what a command says', () => {
  it.each(WORDS)('%s %s %s %s', async (...args) => {
    for (const terminal of [false, true]) {
      const { out, err } = await run(
        args.filter((arg) => arg !== undefined),
        file,
        terminal,
      );
      expect(out + err).not.toBe('');
      expect([visible(out), visible(err)]).toEqual([out, err]);
    }
  });

  it.each(DOCUMENTS)('%s %s %s %s %s, to a terminal', async (...args) => {
    const given = args.filter((arg) => arg !== undefined);
    const shown = await run(given, file, true);
    const kept = await run(given, file, false);
    expect(kept.out).toContain('\u001b');
    expect(shown.out).toBe(visible(kept.out));
    expect(visible(kept.err)).toBe(kept.err);
  });

  it('has the colours of Quern alone', async () => {
    const { out } = await run(['check', 'x.quern'], file, true);
    expect(out).toMatch(COLOURS);
    const bare = out.replace(COLOURS, '');
    expect(visible(bare)).toBe(bare);
    expect(out).toContain('\\u001b[2J');
  });

  it('of a mistake is one line', async () => {
    for (const args of [
      ['check', 'no\nsuch\u001b[31m.quern'],
      ['no\nsuch'],
      ['explain', 'no\nsuch'],
      ['check', '--format', 'a\nb'],
      ['scale', 'a\nb.quern', '--by', 'x\ny'],
    ]) {
      const { err, exit } = await run(args, files, true);
      expect([args, exit, visible(err) === err, err.split('\n').length]).toEqual([args, 2, true, 2]);
    }
  });
});

describe('the names of files in lists', () => {
  it.each(['pretty', 'compact'])('are one line each, and no order: %s', async (format) => {
    const { out } = await run(['check', '--format', format], files, false);
    const lines = out.split('\n').filter((line) => / (?:error|warning|info|hint): /.test(line));
    const findings = JSON.parse((await run(['check', '--format', 'json'], files, false)).out).files.flatMap(
      (f: { readonly findings: readonly unknown[] }) => f.findings,
    );
    expect(lines).toHaveLength(findings.length);
    expect(lines.filter((line) => /^(?:::|##)/.test(line))).toEqual([]);
    expect(new Set(lines.map((line) => line.replace(/:\d+:\d+: .*/, '')))).toEqual(
      new Set([
        'a\\nb.quern',
        './::set-env name=x::y.quern',
        './##vso[task.complete].quern',
        '\\u001b[31mred\\u202e.quern',
        'c\\rd.quern',
      ]),
    );
  });

  it('are one command a finding for GitHub', async () => {
    const { out } = await run(['check', '--format', 'github'], files, false);
    for (const line of out.trimEnd().split('\n'))
      expect(line).toMatch(/^::(?:error|warning|notice) file=[^:,]+,line=\d+,/);
    expect(out).toContain('file=a%0Ab.quern,');
    expect(out).toContain('file=%3A%3Aset-env name=x%3A%3Ay.quern,');
  });

  it('are kept as they are in JSON', async () => {
    const { out } = await run(['check', '--format', 'json'], files, false);
    const paths = JSON.parse(out).files.map((f: { readonly path: string }) => f.path);
    expect(paths.toSorted()).toEqual(NAMES.toSorted());
  });
});

describe('a message in SARIF', () => {
  it('has no link of the recipe', async () => {
    const linked = RECIPE.replace('3 blobs   ', '3 g       [go](https://evil.example) ').replaceAll(EVIL, 'x');
    const { out } = await run(['check', 'x.quern', '--format', 'sarif'], { 'x.quern': linked }, false);
    const results: readonly { readonly message: { readonly text: string } }[] = JSON.parse(out).runs[0].results;
    const all = results.map(({ message }) => message.text).join('\n');
    expect(all).toContain('\\[go\\]');
    expect(all).not.toMatch(/(?<!\\)[[\]]/);
  });
});
