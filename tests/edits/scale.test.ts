import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTarget, type ScaleTarget, scaleRecipe } from '../../server/src/edits/scale.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { parseDocument, printDocument } from '../../server/src/notation/document.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

function scaled(text: string, target: ScaleTarget | number, part?: string, snapshot = open(text)): string {
  const result = scaleRecipe(
    snapshot.document,
    snapshot.recipe,
    typeof target === 'number' ? { kind: 'by', by: target } : target,
    part,
  );
  if (!result.ok) throw new Error(result.why);
  return printDocument(applyEdits(snapshot.document, result.scaling.edits));
}

const said = (text: string, by: number): string => {
  const snapshot = open(text);
  const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by });
  return result.ok ? result.scaling.said.join(' ') : result.why;
};

const TART = `recipe Plum slice
  yield   12 squares
  pan     rectangle 30 x 20 x 4 cm

part base as sweet paste
  240 g     plain flour
  150 g     butter, cold
  1 1/2 tsp fine salt           # a comment stays
  40-45 g   ice water

  do Rub 140 g of the butter into the flour and salt at 18 C.
  do Add the ice water, chill at 4 C for 45 min and brush with 10 g of the butter.
  do Divide into 12 pieces and bake at 180 C for 20 min.

part fruit
  500 g     plums, stoned from 560 g
  2 cup = 476 g  double cream
  to taste  sugar
  do Toss the plums with half the cream, then the rest of the cream and the sugar.

trial 2026-09-14 by Ines
  used    90 g plums in fruit
`;

describe('the whole file', () => {
  test('doubles amounts in the list and in the sentences, yield and pieces, and nothing else', () => {
    expect(scaled(TART, 2)).toBe(`recipe Plum slice
  yield   24 squares
  pan     2 x rectangle 30 x 20 x 4 cm

part base as sweet paste
  480 g     plain flour
  300 g     butter, cold
  1 tbsp    fine salt           # a comment stays
  80-90 g   ice water

  do Rub 280 g of the butter into the flour and salt at 18 C.
  do Add the ice water, chill at 4 C for 45 min and brush with 20 g of the butter.
  do Divide into 24 pieces and bake at 180 C for 20 min.

part fruit
  1000 g    plums, stoned from 1120 g
  4 cup = 952 g  double cream
  to taste  sugar
  do Toss the plums with half the cream, then the rest of the cream and the sugar.

trial 2026-09-14 by Ines
  used    90 g plums in fruit
`);
  });

  test('says what does not scale by itself', () => {
    expect(said(TART, 1.5)).toMatch(/pan stays.*1.5 times/);
    expect(said(TART, 2)).toMatch(/Baking and roasting times stay/);
    expect(said(TART, 2)).toMatch(/trials stay/);
    expect(said(TART, 4)).toMatch(/cools from 57 to 21 °C within 2 h/);
    expect(said(TART, 1)).toBe('');
  });

  test.each<[string, ScaleTarget, string]>([
    ['a yield', { kind: 'yield', words: '18 squares' }, '360 g'],
    ['a yield without its word', { kind: 'yield', words: '6' }, '120 g'],
    ['what is at hand', { kind: 'have', words: '250 g plums' }, '120 g'],
    ['a pan of twice the volume', { kind: 'pan', words: 'rectangle 30 x 40 x 4 cm' }, '480 g'],
    // π r² h: 16 cm across holds (16/24)² of what 24 cm holds.
    ['a factor', { kind: 'by', by: 4 / 9 }, '107 g'],
  ])('to %s', (_, target, flour) => {
    expect(scaled(TART, target)).toContain(`${flour}     plain flour`);
  });

  test('one part alone', () => {
    const text = scaled(TART, 2, 'fruit');
    expect(text).toContain('240 g     plain flour');
    expect(text).toContain('1000 g    plums');
    expect(text).toContain('yield   12 squares');
  });

  test('a yield of another thing, an unknown part and nonsense are refused with what to write', () => {
    expect(() => scaled(TART, { kind: 'yield', words: '12 litres' })).toThrow(/squares/);
    expect(() => scaled(TART, 2, 'icing')).toThrow(/base, fruit/);
    expect(() => scaled(TART, { kind: 'mass', words: 'lots' })).toThrow(/900 g/);
    expect(() => scaled(TART, { kind: 'have', words: '2 lemons' })).toThrow(/no lemons/);
    expect(() => scaled('# nothing', 2)).toThrow(/nothing to scale/);
  });
});

describe('what a cook says', () => {
  test.each<[string, ScaleTarget | undefined]>([
    ['half', { kind: 'by', by: 0.5 }],
    ['double', { kind: 'by', by: 2 }],
    ['by 1.5', { kind: 'by', by: 1.5 }],
    ['1 1/2', { kind: 'by', by: 1.5 }],
    ['x 3', { kind: 'by', by: 3 }],
    ['to 12 slices', { kind: 'yield', words: '12 slices' }],
    ['to 900 g', { kind: 'yield', words: '900 g' }],
    ['to round 28 x 3 cm', { kind: 'pan', words: 'round 28 x 3 cm' }],
    ['for 230 g plums', { kind: 'have', words: '230 g plums' }],
    ['', undefined],
    ['by lots', undefined],
  ])('%s', (words, target) => {
    expect(readTarget(words)).toEqual(target);
  });
});

const scaledHere = (text: string, by: number): string => scaled(text, by, undefined, openInKitchen(text));

/** Recipes that stand alone. */
const WHOLE = EXAMPLES.filter(
  ([file, text]) =>
    file !== 'first-draft.quern' && !openInKitchen(text).recipe.inherits && openInKitchen(text).recipe.parts.length > 0,
);

/** Grams of the list, by the middle of each range. */
const grams = (text: string): number[] =>
  openInKitchen(text).recipe.parts.flatMap((p) =>
    p.head.ingredients.flatMap((i) => (i.weighed.known ? [(i.weighed.grams.low + i.weighed.grams.high) / 2] : [])),
  );

describe('the example kitchen', () => {
  test.each(WHOLE)('%s scaled by a factor and back is the same within kitchen rounding', (_, text) => {
    fc.assert(
      fc.property(fc.constantFrom(0.5, 1.5, 2, 3, 4), (by) => {
        const once = scaledHere(text, by);
        const factor = grams(once).map((g, i) => g / (grams(text)[i] ?? 1));
        for (const f of factor) expect(Math.abs(f / by - 1)).toBeLessThan(0.08);
        const back = grams(scaledHere(once, 1 / by));
        grams(text).forEach((g, i) => {
          expect(Math.abs((back[i] ?? 0) - g)).toBeLessThan(Math.max(0.08 * g, 0.06));
        });
      }),
      { numRuns: 5 },
    );
  });

  test.each(WHOLE)('%s doubled keeps its comments and lines, and is found no worse', (_, text) => {
    const twice = scaledHere(text, 2);
    const comments = (t: string) => parseDocument(t).lines.map((l) => l.comment?.text);
    expect(comments(twice)).toEqual(comments(text));
    // A trial cooked at the old size disagrees with the new one: that the new size really brings.
    const codes = (t: string) =>
      openInKitchen(t)
        .findings.open.map((f) => f.code)
        .filter((c) => c !== 'trial-disagrees' && c !== 'untested-change');
    expect(codes(twice)).toEqual(codes(text));
  });
});
