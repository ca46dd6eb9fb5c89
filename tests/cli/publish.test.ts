import { describe, expect, test } from 'vitest';
import { fingerprint } from '../../server/src/recipe/trials/trials.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const ROLLS =
  'recipe Rolls\n  by      Harbour Lane test kitchen\n  yield   8 rolls\n\n  500 g     bread flour\n  320 g     water\n  10 g      fine salt\n  5 g       instant yeast\n\n  do Mix the flour, water, salt and yeast and knead for 8 min.\n  do Prove at 24 C for 1 h 30 min, shape and prove for 40 min more.\n  do Bake at 220 C for 20 min, until the centre reads 96 C.\n';
const trial = (verdict: string) =>
  `\ntrial 2026-09-14 by Ines\n  tested  ${fingerprint(open(ROLLS).recipe)}\n  took    20 min to bake\n  verdict ${verdict}\n`;

describe('publish', () => {
  test.each([
    ['html', /^<!doctype html>/],
    ['markdown', /^# Rolls\n/],
    ['text', /^ROLLS\n/],
    ['json-ld', /^\{\n {2}"@context": "https:\/\/schema\.org"/],
  ])('as %s', async (format, want) => {
    const { out, exit } = await quern(['publish', 'a.quern', '--format', format], { 'a.quern': ROLLS });
    expect(out).toMatch(want);
    expect(exit).toBe(0);
  });

  test('by standard input, with measures first', async () => {
    const { out } = await quern(['publish', '--stdin', '--format', 'text', '--measures', 'measure-first'], {}, ROLLS);
    expect(out).toMatch(/- [\d½¼¾⅓⅔]+ cups \(500 g\) bread flour/);
  });

  test('prints no page of what builds on a file that is not there, and says so', async () => {
    const files = { 'v.quern': 'recipe V\n  from    gone.quern\n  yield   8 rolls\n' };
    const { out, err, exit } = await quern(['publish', 'v.quern', '--format', 'text'], files);
    expect([out, exit]).toEqual(['', 2]);
    expect(err).toMatch(/builds on what is not there/);
  });

  test('--proved takes what was cooked as written and kept', async () => {
    const ran = await quern(['publish', 'a.quern', '--format', 'text', '--proved'], {
      'a.quern': ROLLS + trial('keep'),
    });
    expect([ran.exit, ran.err]).toEqual([0, '']);
    expect(ran.out).toContain('Cooked as written on 14 September 2026 by Ines.');
  });

  test.each<[string, string, RegExp]>([
    ['never cooked', ROLLS, /no trial: nobody/],
    ['changed since', ROLLS.replace('320 g', '340 g') + trial('keep'), /no trial tested it as it stands now/],
    ['not kept', ROLLS + trial('change'), /verdict change/],
    ['not judged yet', ROLLS + trial('keep').replace('  verdict', '  # verdict'), /2026-09-14 has no verdict/],
    [
      'with what will fail',
      ROLLS.replace('recipe Rolls', 'recipe Rolls as lean bread').replace('320 g', '620 g'),
      /line \d+: .+\[/,
    ],
    ['without a yield', ROLLS.replace('  yield   8 rolls\n', ''), /no yield is written/],
  ])('--proved refuses what is %s, with a list, and prints no page', async (_, text, want) => {
    const ran = await quern(['publish', 'a.quern', '--format', 'text', '--proved'], { 'a.quern': text });
    expect([ran.exit, ran.out]).toEqual([1, '']);
    expect(ran.err).toMatch(want);
  });

  test('--proved of a variant names the file and line that say it, and what its base does not have', async () => {
    const files = {
      'a.quern': ROLLS.replace('recipe Rolls', 'recipe Rolls as lean bread').replace('320 g', '620 g'),
      'v.quern': 'recipe Seeded rolls\n  from    a.quern\n  swap rye flour for 20 g linseed\n  add 30 g poppy seeds\n',
    };
    const { err, exit } = await quern(['publish', 'v.quern', '--format', 'text', '--proved'], files);
    expect(exit).toBe(1);
    expect(err).toMatch(/^ {2}line 3: What this builds on lists no `rye flour`/m);
    expect(err).toMatch(/^ {2}line 4: .*poppy seeds.* \[unused-ingredient\]$/m);
    expect(err).toMatch(/^ {2}line 6 of a\.quern: .* \[dough-too-wet\]$/m);
  });

  test('a template of the house', async () => {
    const files = {
      'a.quern': ROLLS,
      'house.html': '<article><h1>{{title}}</h1>{{ingredients}}</article>',
      'bad.html': '{{rating}}',
    };
    const { out } = await quern(['publish', 'a.quern', '--template', 'house.html'], files);
    expect(out).toMatch(/^<article><h1>Rolls<\/h1><section[\s\S]*bread flour[\s\S]*<\/article>$/);
    const bad = await quern(['publish', 'a.quern', '--template', 'bad.html'], files);
    expect([bad.exit, bad.err]).toEqual([2, expect.stringContaining('{{rating}}')]);
    expect((await quern(['publish', 'a.quern', '--template', 'none.html'], files)).exit).toBe(2);
  });

  test('whose labels: the house’s measures say, unless asked', async () => {
    const files = { 'a.quern': ROLLS, 'quern.json': '{ "measures": "metric" }' };
    expect((await quern(['publish', 'a.quern', '--format', 'text'], files)).out).toMatch(
      /for 100 g, before cooking: energy \d+ kJ/,
    );
    expect((await quern(['publish', 'a.quern', '--format', 'text', '--label', 'us'], files)).out).toMatch(
      /for one of 8 rolls, before cooking: energy \d+0 kcal/,
    );
  });

  test('an unknown format is bad usage', async () => {
    expect((await quern(['publish', 'a.quern', '--format', 'pdf'], { 'a.quern': ROLLS })).exit).toBe(2);
  });
});
