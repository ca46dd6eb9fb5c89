import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { readTarget, type ScaleTarget } from '../../server/src/edits/scale-target.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { parseDocument, printDocument } from '../../server/src/notation/document.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

vi.setConfig({ testTimeout: 60_000 });

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
    expect(said(TART, 2)).toMatch(/Baking and roasting times that cannot be estimated stay/);
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

  test.each([
    ['1 tart', { kind: 'by', by: 4 }, '4 tarts'],
    ['1 lemon tart of 20 cm', { kind: 'by', by: 2 }, '2 lemon tarts of 20 cm'],
    ['1 loaf', { kind: 'by', by: 3 }, '3 loaves'],
    ['2 loaves', { kind: 'by', by: 0.5 }, '1 loaf'],
    ['1 berry pie (deep)', { kind: 'by', by: 2 }, '2 berry pies (deep)'],
    ['12 squares', { kind: 'yield', words: '1' }, '1 square'],
    ['1 batch', { kind: 'by', by: 0.5 }, '1/2 batch'],
    ['1 dozen', { kind: 'by', by: 2 }, '2 dozen'],
    ['1 Dundee', { kind: 'by', by: 2 }, '2 Dundee'],
  ] as const)('a yield of %s is made in its number', (made, target, want) => {
    expect(scaled(TART.replace('12 squares', made), target)).toContain(`  yield   ${want}\n`);
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

describe('what follows in the sentences', () => {
  const step = (
    line: string,
    target: ScaleTarget | number,
    list = '  240 g     butter\n  4 large   eggs\n',
  ): string => {
    const text = scaled(
      `recipe Rolls\n  yield   12 rolls\npart dough as enriched bread\n${list}  do ${line}\npart late\n  do Bake it all.\n`,
      target,
    );
    return /do (.*)\n/.exec(text)?.[1] ?? '';
  };

  test.each<[string, ScaleTarget | number, string]>([
    ['Divide in two and bake.', 2, 'Divide in four and bake.'],
    ['Divide in 16.', 1.5, 'Divide in 24.'],
    ['Shape into 12 balls of 60 g.', 2, 'Shape into 24 balls of 60 g.'],
    ['Cut into 12 pieces, 60 g each.', 0.5, 'Cut into 6 pieces, 60 g each.'],
    ['Form 2 rolls of 8 cm.', 0.5, 'Form 1 roll of 8 cm.'],
    ['Cut each in two and bake.', 2, 'Cut each in two and bake.'],
    ['Cut in half and fold in three.', 2, 'Cut in half and fold in three.'],
    ['Cut in 6 cm rounds.', 2, 'Cut in 6 cm rounds.'],
    ['Beat in two of the eggs, then the rest of the eggs.', 2, 'Beat in four of the eggs, then the rest of the eggs.'],
    ['Add 2 of the eggs, then the rest of the eggs.', 0.5, 'Add 1 of the eggs, then the rest of the eggs.'],
    ['Melt half the butter.', 3, 'Melt half the butter.'],
    ['Melt 200 g of the butter at 60 C for 10 min.', 1.5, 'Melt 300 g of the butter at 60 C for 10 min.'],
    ['Brush with 40-60 g of the butter.', 2, 'Brush with 80-120 g of the butter.'],
    ['Put 20 g of the butter in each tin.', 2, 'Put 20 g of the butter in each tin.'],
    ['Sprinkle with 2 tbsp water.', 2, 'Sprinkle with 4 tbsp water.'],
    ['Shape into 12 balls of 60 g.', { kind: 'yield', words: '24 rolls of 45 g' }, 'Shape into 24 balls of 45 g.'],
    ['Shape into 12 pieces of 60 g.', { kind: 'yield', words: '24 rolls of 45 g' }, 'Shape into 24 pieces of 45 g.'],
  ])('%s by %j', (line, target, after) => {
    expect(step(line, target)).toBe(after);
  });

  test('portions add up to their line again, when each is rounded', () => {
    const text = `recipe R
  1 1/2 tsp fine salt
  150 g     butter
  do Stir in 1 tsp of the salt, then 1/2 tsp of the salt.
  do Melt 140 g of the butter and brush with 10 g of the butter.
`;
    for (const by of [0.2, 0.3, 1 / 3, 0.7, 0.9, 1.3, 2.7]) {
      const after = open(scaled(text, by));
      const left = after.recipe.parts[0]?.ledger.map((e) => e.left) ?? [];
      for (const { low, high } of left) {
        expect(high, after.text).toBeLessThan(0.006);
        expect(low, after.text).toBeGreaterThanOrEqual(0);
      }
      expect(after.recipe.parts[0]?.ledger.flatMap((e) => e.uses.filter((u) => u.over))).toEqual([]);
    }
  });

  test('a later part’s share of a part follows it, and of an ingredient its own part', () => {
    const text = `recipe Tart
part base as sweet paste
  240 g     plain flour
  120 g     butter
  do Rub 100 g of the butter into the flour.
part fruit
  500 g     plums
  do Lay 300 g of the base in the tin, brush with 20 g of the butter and fill with 400 g of the plums.
`;
    expect(scaled(text, 2, 'base')).toContain(
      'Lay 600 g of the base in the tin, brush with 40 g of the butter and fill with 400 g of the plums.',
    );
    expect(scaled(text, 2)).toContain('fill with 800 g of the plums.');
  });

  test('an amount of what no list names stays, and that is said', () => {
    expect(said('recipe R\n  200 g  oats\n  do Press 40 g down and toast the oats.\n', 2)).toMatch(
      /stay as written: 40 g/,
    );
  });
});

describe('what a kitchen can measure', () => {
  const line = (written: string, by: number, exact = false): string => {
    const text = scaled(`recipe R\n  ${written}\n`, { kind: 'by', by, exact });
    return text.split('\n')[1]?.trim().replace(/ {2,}/, '  ') ?? '';
  };

  test.each<[string, number, string]>([
    ['2 tbsp  milk', 8, '1 cup  milk'],
    ['1 tsp  fine salt', 3, '1 tbsp  fine salt'],
    ['1/4 tsp  nutmeg', 0.5, '2 pinch  nutmeg'],
    ['1/8 tsp  nutmeg', 0.5, '1 pinch  nutmeg'],
    ['1½ cups  milk', 0.5, '¾ cup  milk'],
    ['1 teaspoon  vinegar', 2, '2 teaspoons  vinegar'],
    ['3 large  eggs', 0.5, '1 1/2 large = 75 g  eggs'],
    ['1 large  egg', 2, '2 large  eggs'],
    ['2 large  eggs', 0.5, '1 large  egg'],
    ['1 clove  garlic', 3, '3 cloves  garlic'],
    ['2 cloves  garlic', 0.4, '1 clove  garlic'],
    ['3 leaves  basil', 1 / 3, '1 leaf  basil'],
    ['1 onion, sliced', 1.5, '1 1/2 onions, sliced'],
    ['1 can of 400 g  tomatoes', 2, '2 cans of 400 g  tomatoes'],
    ['4 sheets  gelatine', 0.6, '2 1/2 sheets = 5.3 g  gelatine'],
    ['40-45 g  water', 0.5, '20-22.5 g  water'],
    ['about 100 g  water', 2, 'about 200 g  water'],
    ['1 kg  flour', 0.25, '250 g  flour'],
    ['600 g  flour', 20, '12 kg  flour'],
    ['1/2 lb  beef mince', 0.5, '4 oz  beef mince'],
    ['12 oz  beef mince', 2, '1 1/2 lb  beef mince'],
    ['500 g  plums, stoned from 560 g', 0.5, '250 g  plums, stoned from 280 g'],
    ['2 cups = 476 g  cream', 0.25, '1/2 cup = 119 g  cream'],
    ['70 %  water', 3, '70 %  water'],
    ['to taste  salt', 3, 'to taste  salt'],
  ])('%s by %f', (written, by, after) => {
    expect(line(written, by)).toBe(after);
  });

  test.each<[string, number, string]>([
    ['240 g  flour', 4 / 9, '106.6667 g  flour'],
    ['1 tsp  salt', 0.7, '0.7 tsp  salt'],
    ['3 large  eggs', 0.5, '1.5 large  eggs'],
  ])('exactly: %s by %f', (written, by, after) => {
    expect(line(written, by, true)).toBe(after);
  });

  test('the error of rounding stands beside the change', () => {
    const snapshot = open('recipe R\n  3 g  salt\n  400 g  flour\n');
    const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by: 1 / 3 });
    if (!result.ok) throw new Error(result.why);
    expect(result.scaling.changes).toEqual(['salt 3 g → 1 g', 'flour 400 g → 133 g']);
    const spoons = open('recipe R\n  1 tsp  salt\n');
    const rough = scaleRecipe(spoons.document, spoons.recipe, { kind: 'by', by: 0.4 });
    if (!rough.ok) throw new Error(rough.why);
    expect(rough.scaling.changes).toEqual(['salt 1 tsp → 3/8 tsp (6.3 % less)']);
    expect(rough.scaling.said.join(' ')).toMatch(/Rounded to what a kitchen can measure.*salt, 6\.3 % less/);
  });
});

describe('a part from another file', () => {
  const TAKEN = `recipe Tart
  pan     round 20 x 3 cm
part case from pastry.quern : paste
part cream
  300 g     double cream
  do Fill the case with the cream.
`;

  test('stays, and it is said how much of it to make: a lining goes by its surface', () => {
    expect(scaled(TAKEN, 2)).toContain('600 g     double cream');
    expect(said(TAKEN, 2)).toMatch(/case comes from pastry\.quern.*make 2 times as much of it/);
    const snapshot = open(TAKEN);
    const pan = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'pan', words: 'round 28 x 4 cm' });
    expect(pan.ok && pan.scaling.said.join(' ')).toMatch(/make 1\.92 times as much/);
  });

  test('makes a size by weight impossible, and so does a recipe built on another', () => {
    expect(() => scaled(TAKEN, { kind: 'mass', words: '900 g' })).toThrow(/pastry\.quern.*in full/);
    expect(() => scaled(TAKEN, { kind: 'yield', words: '900 g' })).toThrow(/pastry\.quern/);
    expect(() => scaled('recipe T\n  from base.quern\n  add 20 g  honey\n', 2)).toThrow(/builds on another file/);
  });
});

describe('sizes', () => {
  test('a dough is weighed with the poolish it takes in, and that but once', () => {
    const text = `recipe Loaf
  yield   2 loaves
part poolish
  100 g     bread flour
  100 g     water
  1 g       instant yeast
  do Mix the flour, water and yeast.
part dough as lean bread
  201 g     poolish
  400 g     bread flour
  260 g     water
  9 g       fine salt
  do Mix the poolish with the flour, water and salt.
  do Divide in two.
`;
    expect(scaled(text, { kind: 'yield', words: '3 loaves of 580 g' })).toContain('  800 g     bread flour');
    expect(scaled(text, { kind: 'mass', words: '1740 g' })).toContain('  402 g     poolish\n  800 g     bread flour');
    expect(scaled(text, { kind: 'yield', words: '435 g of dough' })).toContain('Divide in one.');
  });

  test.each<[string, ScaleTarget, string]>([
    ['a mass of one part', { kind: 'yield', words: '1530 g of base' }, '306 g     butter'],
    ['a mass of all', { kind: 'mass', words: '3000 g' }, '200 g     butter'],
    ['what is at hand, by the scarcer', { kind: 'have', words: '250 g plums and 60 g butter' }, '50 g      butter'],
    ['what is at hand, as bought', { kind: 'have', words: '600 g plums as bought' }, '200 g     butter'],
    ['a pan of the same, twice', { kind: 'pan', words: '2 x round 20 x 4 cm' }, '200 g     butter'],
    ['another unit at hand', { kind: 'have', words: '1 kg plums' }, '200 g     butter'],
  ])('to %s', (_, target, butter) => {
    const text = `recipe T\n  yield   8 slices\n  pan     round 20 x 4 cm\npart base\n  100 g     butter\n  400 g     plain flour\n  do Rub the butter into the flour.\npart fruit\n  500 g     plums from 300 g\n  500 g     cream\n  do Mix the plums and cream.\n`;
    expect(scaled(text, target)).toContain(butter);
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
