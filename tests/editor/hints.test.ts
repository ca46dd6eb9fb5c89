import { describe, expect, it } from 'vitest';
import { hints } from '../../server/src/editor/hints.ts';
import { SHOWN_BY_DEFAULT, shownIn } from '../../server/src/editor/shown.ts';
import { heatsOf } from '../../server/src/recipe/journey/figures.ts';
import { fixture } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';
import { afterHint, hintedLines } from '../support/in-text.ts';

const SLICE = `recipe Oat slice
  oven    180 C

part base as shortcrust
  200 g     plain flour
  1/2 cup   whole milk
  2 large   eggs
  100 g     unsalted butter
  to taste  nutmeg

  do Rub half the butter into the flour.
  do Beat in the eggs and the milk.
  do Melt the rest of the butter, and brush with 20 g of it.
  do Bake at 180 C fan for 20 min, until the centre reads 74 C.
`;

describe('grams behind measures', () => {
  // 1/2 US cup is 118 ml; whole milk weighs 1.03 g/ml (USDA, 244 g a cup). A large egg is 50 g without its shell (USDA).
  it('stand where the line says no weight', () => {
    expect(hintedLines(SLICE, 'grams')).toEqual(['1/2 cup whole milk ⟨= 122 g⟩', '2 large eggs ⟨≈ 100 g⟩']);
  });

  it.each([
    ['a line that says its weight already', '1 cup = 240 g  whole milk'],
    ['a weight in ounces', '8 oz  plain flour'],
    ['a measure with its weight in brackets', '1 1/4 cups (156 g) plain flour'],
    ['an amount of no fixed weight', 'to taste  salt'],
    ['a food that nobody knows', '2 cups  zzyzx'],
    ['a line that is not understood', '2 blobs  of of flour'],
  ])('not behind %s', (_what, line) => {
    expect(hintedLines(`recipe A\n  ${line}\n  do Mix.\n`, 'grams')).toEqual([]);
  });

  it('as a range where nobody can say closer', () => {
    expect(hintedLines('recipe A\n  1  lemon\n  do Halve the lemon.\n', 'grams')[0]).toMatch(/⟨\d+ to \d+ g⟩/);
  });

  it('are written by a double click, and then no hint', () => {
    const after = afterHint(SLICE, '= 122 g');
    expect(after).toContain('1/2 cup = 122 g  whole milk');
    expect(hintedLines(after, 'grams')).toEqual(['2 large eggs ⟨≈ 100 g⟩']);
  });

  it('of a percentage say what it comes to', () => {
    const loaf = 'recipe Loaf as lean bread\n  500 g  bread flour\n  65 %  water\n  do Mix the flour and the water.\n';
    expect(hintedLines(loaf, 'grams')).toEqual(['65 % water ⟨= 325 g⟩']);
  });
});

describe("baker's percentages", () => {
  it('of the flour, behind the names of a dough', () => {
    expect(hintedLines(SLICE, 'percent').slice(0, 1)).toEqual(['200 g plain flour ⟨100 %⟩']);
    expect(hintedLines(SLICE, 'percent').at(-1)).toBe('100 g unsalted butter ⟨50 %⟩');
  });

  it.each([
    ['a sauce that flour only binds', '20 g  plain flour\n  20 g  butter\n  500 g  whole milk'],
    ['a list without flour', '300 g  double cream\n  80 g  caster sugar'],
    ['a list with a line in no sum', '200 g  plain flour\n  2 blobs of of butter'],
  ])('not in %s', (_what, list) => {
    expect(hintedLines(`recipe A\n  ${list}\n  do Mix all of it.\n`, 'percent')).toEqual([]);
  });
});

describe('what a mention takes', () => {
  it('and what is left then', () => {
    expect(hintedLines(SLICE, 'taken')).toEqual([
      'do Rub half the butter ⟨50 g, 50 g left⟩ into the flour ⟨200 g⟩.',
      'do Beat in the eggs ⟨100 g⟩ and the milk ⟨122 g⟩.',
      'do Melt the rest of the butter ⟨50 g⟩, and brush with 20 g of it.',
    ]);
  });

  it('writes the amount into the sentence, and the ledger stays closed', () => {
    const after = afterHint(SLICE, '50 g, 50 g left');
    expect(after).toContain('do Rub 50 g of the butter into the flour.');
    const codes = open(after).findings.open.map((f) => f.code);
    expect(codes).not.toContain('leftover-amount');
    expect(codes).not.toContain('overdrawn-amount');
  });

  it('is silent where the words could be two things, or take nobody knows how much', () => {
    const two = 'recipe A\n  100 g  plain flour\n  100 g  rye flour\n  50 g  butter\n';
    expect(hintedLines(`${two}  do Rub a little of the butter into the flour.\n`, 'taken')).toEqual([]);
  });
});

describe('the other scale', () => {
  it('behind the oven of the head and every heat of a step, as a dial has it or on the safe side', () => {
    // 180 °C is 350 °F on a dial (common practice); 74 °C is printed with 165 °F in the FDA Food Code 2022, 3-401.11.
    expect(hintedLines(SLICE, 'scale')).toEqual([
      'oven 180 C ⟨(350 F)⟩',
      'do Bake at 180 C fan ⟨(350 F fan)⟩ for 20 min, until the centre reads 74 C ⟨(165 F)⟩.',
    ]);
  });

  it('is written as one heat on two scales', () => {
    const after = open(afterHint(SLICE, '(165 F)'));
    const [part] = after.recipe.parts;
    const heats = part?.steps.flatMap((step) => heatsOf(step)) ?? [];
    expect(heats.map((h) => h.written.map((w) => `${w.lowDegrees} ${w.unit}`))).toEqual([['180 C'], ['74 C', '165 F']]);
    expect(after.findings.open.map((f) => f.code)).not.toContain('scales-disagree');
  });

  it.each([
    ['both scales', 'do Bake at 180 C (350 F) for 20 min.'],
    ['a gas mark', 'do Bake at gas 4 for 20 min.'],
    ['a change of heat', 'do Turn the oven down by 20 C.'],
  ])('not where there is %s', (_what, step) => {
    expect(hintedLines(`recipe A\n  100 g  butter\n  ${step}\n`, 'scale')).toEqual([]);
  });
});

describe('what is shown', () => {
  it('is what an editor sets; anything else counts as not set', () => {
    expect(SHOWN_BY_DEFAULT).toEqual({ grams: true, percent: false, taken: false, scale: false, lenses: 'all' });
    expect(shownIn({ inlayHints: { grams: false, scale: 'yes' }, codeLens: 'recipe' })).toEqual({
      ...SHOWN_BY_DEFAULT,
      grams: false,
      lenses: 'recipe',
    });
    for (const odd of [null, 'on', [], { inlayHints: 3, codeLens: {} }]) expect(shownIn(odd)).toEqual(SHOWN_BY_DEFAULT);
  });

  it('is of the wanted lines, and the same objects again for a part that did not change', () => {
    const { snapshot } = fixture(SLICE);
    const of = (at: typeof snapshot) => hints(at, 5, 5, SHOWN_BY_DEFAULT);
    expect(of(snapshot).map((h) => h.at)).toEqual([5]);
    const later = snapshot.edited(2, [
      { range: { start: { line: 0, character: 15 }, end: { line: 0, character: 15 } }, text: 's' },
    ]);
    expect(of(later)[0]?.hint).toBe(of(snapshot)[0]?.hint);
  });
});
