/** A line that is not understood is told of once, takes its part out of judgement by formula, and leaves safety as it is. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { mended } from '../../server/src/workspace/unattended.ts';
import { brokenLine } from '../support/arbitrary.ts';
import { open } from '../support/harness.ts';

const DOUGH = (line: string): string =>
  `recipe Loaf\npart dough as pizza dough\n  100 g     bread flour\n  400 g     water\n  ${line}\n  do Mix all the ingredients and bake at 230 C for 40 min until the centre reads 96 C.\n`;
const AT = 4;

const ofReading = (snapshot: Snapshot, line = AT): string[] =>
  snapshot.findings.open
    .filter((f) => f.at.line === line && (f.check.family === 'reading' || f.check.family === 'bookkeeping'))
    .map((f) => f.code);
const ofFormula = ({ findings }: Snapshot): string[] =>
  findings.open.filter((f) => f.check.family === 'formula').map((f) => f.code);

describe('a line of the list that is not understood', () => {
  test.each([
    ['500 garms rye flour', 'unknown-unit'],
    ['4 F rye flour', 'syntax'],
    ['1 cup or 2 butter', 'syntax'],
    ['2 blobs olive oil', 'unknown-unit'],
    ['- 100 g butter', 'syntax'],
    ['250 g rye flour (sifted', 'syntax'],
    ['1/0 cup milk', 'syntax'],
    ['200 g butter =', 'syntax'],
    ['100 g', 'syntax'],
    ['butter', 'missing-amount'],
    ['optional butter', 'missing-amount'],
    ['1,500 g rye flour', 'decimal-comma'],
    ['1,5 kg rye flour (sifted', 'decimal-comma'],
    ['1.000 g rye flour', 'decimal-comma'],
    ['1.5 % of the flour fine salt', 'syntax'],
    ['1.5 % of the flour', 'syntax'],
    ['1/0 garms xyloquartz', 'syntax'],
    ['the strained juice of 2', 'syntax'],
    ['<<<<<<< HEAD', 'syntax'],
  ])('`%s` has one finding, and its part none of formula', (line, code) => {
    const snapshot = open(DOUGH(line));
    expect(ofReading(snapshot)).toEqual([code]);
    expect(ofFormula(snapshot)).toEqual([]);
    const { head } = snapshot.recipe.parts[0] ?? {};
    expect(head?.notUnderstood).toEqual([AT - 1]);
    expect(head?.massG.complete).toBe(false);
  });

  test('a gram or a thousand is in no sum, and no fix of it runs unattended', () => {
    const snapshot = open(DOUGH('1.000 g   rye flour'));
    expect(snapshot.recipe.parts[0]?.head.ingredients[2]?.weighed.known).toBe(false);
    expect(mended(snapshot)).toBe(snapshot);
  });

  test('two foods with one blank between them are not taken for one', () => {
    const text = (gap: string) =>
      `recipe Roast\n  2 kg      beef topside\n  1.5 % of the beef${gap}salt\n  do Rub the beef with the salt and roast until the centre reads 63 C.\n`;
    const [beef, salt] = open(text(' ')).recipe.parts[0]?.head.ingredients ?? [];
    expect(beef?.weighed.known).toBe(true);
    expect(salt?.weighed.known).toBe(false);
    expect(open(text(' ')).findings.open.filter((f) => f.at.line === 2)).toMatchObject([
      { code: 'syntax', said: { message: expect.stringContaining('two blanks') } },
    ]);
    expect(open(text('  ')).findings.open.filter((f) => f.at.line === 2)).toEqual([]);
  });

  test('the same part is judged where all its lines are understood', () => {
    expect(ofFormula(open(DOUGH('20 g      butter')))).toContain('dough-too-wet');
  });

  test.each(['Toast the flour.', 'Serves 4', 'oven 230 C', 'note Best eaten warm.'])(
    '`%s` is none of the list, which is judged',
    (line) => {
      const snapshot = open(DOUGH(line));
      expect(snapshot.recipe.parts[0]?.head.notUnderstood).toEqual([]);
      expect(ofFormula(snapshot)).toContain('dough-too-wet');
    },
  );

  test('a part is not judged either where an earlier one that it takes in has such a line', () => {
    const text = (line: string) =>
      `recipe Loaf\npart poolish\n  50 g      bread flour\n  ${line}\n  do Stir together and stand overnight.\npart dough as pizza dough\n  100 g     bread flour\n  400 g     water\n  do Knead the poolish with the flour and the water.\n`;
    expect(ofFormula(open(text('50 g      water')))).toContain('dough-too-wet');
    expect(ofFormula(open(text('1/0 g     water')))).toEqual([]);
  });

  test('what is accepted of a formula is not idle while the part is not judged', () => {
    const accepted = DOUGH('1/0 g butter').replace(
      'part dough as pizza dough\n',
      '$&  allow dough-too-wet because it is a batter\n',
    );
    expect(open(accepted).findings.open.map((f) => f.code)).toEqual(['syntax']);
  });

  test('safety goes on, by what is known', () => {
    const text =
      'recipe Pie\n  800 g     minced beef\n  1/0 g butter\n  do Fry the minced beef in the butter until the centre reads 50 C.\n';
    expect(open(text).findings.open.map((f) => f.code)).toEqual(['syntax', 'undercooked']);
  });

  test('a step may name what stands on it', () => {
    const text =
      'recipe Slab\n  200 g     rolled oats\n  40 g honey (warm\n  do Warm the oats and fold in the honey.\n';
    expect(open(text).findings.open.map((f) => [f.at.line, f.code])).toEqual([[2, 'syntax']]);
  });

  test('whatever is broken in a line, it has one finding of reading at most, and is not passed over', () => {
    fc.assert(
      fc.property(fc.array(brokenLine, { minLength: 1, maxLength: 4 }), (lines) => {
        const snapshot = open(DOUGH(lines.join('\n  ')));
        const unread = snapshot.recipe.parts[0]?.head.notUnderstood.map((line) => line + 1) ?? [];
        for (const line of unread) expect(ofReading(snapshot, line), snapshot.text).toHaveLength(1);
        if (unread.length > 0) expect(ofFormula(snapshot)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
