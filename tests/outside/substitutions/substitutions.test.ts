/**
 * Swaps proved by composition: what the part holds before and after, worked out anew from the texts. The table in
 * `substitutions.md` is read before it is committed. Compositions are those of USDA SR26, each food names its row.
 */
import { describe, expect, test } from 'vitest';
import { substitute } from '../../../server/src/edits/substitute.ts';
import { movesText } from '../../../server/src/edits/swap-moves.ts';
import { applyEdits } from '../../../server/src/edits/text-edit.ts';
import { type Component, compose } from '../../../server/src/food/composition.ts';
import { EQUIVALENTS, equivalentsFor } from '../../../server/src/food/equivalents.ts';
import { likelyGrams } from '../../../server/src/food/weigh.ts';
import { printDocument } from '../../../server/src/notation/document.ts';
import { open } from '../../support/harness.ts';

/** A list for each equivalent, the swapped food first; the steps take all of it. */
const LISTS: Readonly<Record<string, readonly string[]>> = {
  'unsalted-for-salted-butter': ['200 g  salted butter', '150 g  water', '2 g  fine salt'],
  'salted-for-unsalted-butter': ['200 g  unsalted butter', '150 g  water', '8 g  fine salt'],
  'oil-for-butter': ['200 g  unsalted butter', '150 g  water'],
  'ghee-for-butter': ['200 g  unsalted butter', '150 g  water'],
  'milk-powder-for-milk': ['500 g  whole milk', '100 g  caster sugar'],
  'skimmed-milk-powder-for-skimmed-milk': ['500 g  skimmed milk', '100 g  caster sugar'],
  'milk-for-milk-powder': ['60 g  milk powder', '600 g  water'],
  'skimmed-milk-for-skimmed-milk-powder': ['50 g  skimmed milk powder', '600 g  water'],
  'butter-and-milk-for-double-cream': ['300 g  double cream', '80 g  caster sugar'],
  'buttermilk-from-milk': ['300 g  buttermilk', '80 g  caster sugar'],
  'yolks-and-whites-for-eggs': ['4 large  eggs', '80 g  caster sugar'],
  'eggs-for-yolks-and-whites': ['4 large  egg yolks', '4 large  egg whites', '80 g  caster sugar'],
  'dried-for-fresh-egg': ['4 large  eggs', '80 g  caster sugar'],
  'plain-for-self-raising-flour': ['300 g  self-raising flour', '80 g  caster sugar'],
  'self-raising-for-plain-flour': ['300 g  plain flour', '16 g  baking powder', '8 g  fine salt'],
  'soda-and-tartar-for-baking-powder': ['12 g  baking powder', '80 g  caster sugar'],
  'honey-for-sugar': ['200 g  caster sugar', '150 g  water'],
  'maple-syrup-for-sugar': ['200 g  caster sugar', '250 g  water'],
  'sugar-for-honey': ['200 g  honey', '150 g  water'],
  'instant-for-fresh-yeast': ['21 g  fresh yeast', '300 g  water'],
  'active-dry-for-fresh-yeast': ['21 g  fresh yeast', '300 g  water'],
  'fresh-for-instant-yeast': ['7 g  instant yeast', '300 g  water'],
  'active-dry-for-instant-yeast': ['7 g  instant yeast', '300 g  water'],
  'fresh-for-active-dry-yeast': ['8 g  active dry yeast', '300 g  water'],
  'instant-for-active-dry-yeast': ['8 g  active dry yeast', '300 g  water'],
  'gelatine-powder-for-sheets': ['5 sheets  gelatine', '400 g  apple juice'],
  'gelatine-sheets-for-powder': ['10 g  powdered gelatine', '400 g  apple juice'],
};

type Opened = ReturnType<typeof open>;

function textFor(lines: readonly string[]): string {
  const names = lines.map((l) => l.split(/ {2,}/)[1]);
  return `recipe Test\npart mix\n${lines.map((l) => `  ${l}\n`).join('')}  do Mix the ${names.join(', the ')}.\n`;
}

const PARTS: readonly (readonly [string, Component])[] = [
  ['water', 'water'],
  ['fat', 'fat'],
  ['sugar', 'sugars'],
  ['salt', 'salt'],
];

/** Grams of each component, and of fresh egg, in the text's only part. */
function holds({ recipe }: Opened): Record<string, number> {
  const lines = recipe.parts.flatMap((p) => p.head.ingredients);
  const mix = compose(
    lines.map(({ food, weighed }) => ({ food, grams: weighed.known ? likelyGrams(weighed) : Number.NaN })),
  );
  const egg = lines.reduce((sum, { food, weighed }) => {
    const grams = weighed.known && food?.class === 'egg' ? likelyGrams(weighed) : 0;
    return sum + grams * (food?.id === 'dried-egg' ? (100 - 3.67) / (100 - 76.15) : 1);
  }, 0);
  return { ...Object.fromEntries(PARTS.map(([name, of]) => [name, mix.totals[of].grams])), egg };
}

function swapped(id: string): {
  readonly before: Opened;
  readonly after: Opened;
  readonly title: string;
  readonly moves: string[];
} {
  const before = open(textFor(LISTS[id] ?? []));
  const [part] = before.recipe.parts;
  const ingredient = part?.head.ingredients[0];
  const equivalent = EQUIVALENTS.find((e) => e.id === id);
  if (part === undefined || ingredient === undefined || equivalent === undefined)
    throw new Error(`no such swap: ${id}`);
  const swap = substitute(before.document, before.recipe, part, ingredient, equivalent);
  if (swap === undefined) throw new Error(`not offered: ${id}`);
  const after = open(printDocument(applyEdits(before.document, swap.edits)));
  return { before, after, title: swap.title, moves: movesText(swap.moves) };
}

test('every stated equivalent has its proof here, and names a source', () => {
  expect(EQUIVALENTS.map((e) => e.id)).toEqual(Object.keys(LISTS));
  for (const { source } of EQUIVALENTS) expect(source.length).toBeGreaterThan(20);
});

describe.each(EQUIVALENTS)('$id', ({ id, to, adjusts }) => {
  test('keeps what it says it keeps, within kitchen rounding', () => {
    const { before, after } = swapped(id);
    const [was, is] = [holds(before), holds(after)];
    const kept = [...to, ...adjusts].flatMap((x) =>
      x.keeps === undefined ? [] : [x.keeps === 'sugars' ? 'sugar' : x.keeps],
    );
    for (const component of kept.filter((k) => k in was))
      expect(Math.abs((is[component] ?? 0) - (was[component] ?? 0)), component).toBeLessThan(
        Math.max(0.12, 0.008 * (was[component] ?? 0)),
      );
  });

  test('the steps name what is listed, and use it all', () => {
    const { before, after } = swapped(id);
    const codes = (s: Opened) =>
      s.findings.open.map((f) => f.code).filter((c) => !/out-of-range|wont-set|firm/.test(c));
    expect(
      codes(after).filter((c) => !codes(before).includes(c)),
      after.text,
    ).toEqual([]);
    expect(
      after.recipe.parts.flatMap((p) => p.ledger.map((e) => e.left.high)).every((l) => l < 0.001),
      after.text,
    ).toBe(true);
  });
});

test('the table', async () => {
  const rows = EQUIVALENTS.map(({ id, source }) => {
    const { before, after, title } = swapped(id);
    const [was, is] = [holds(before), holds(after)];
    const cells = ['water', 'fat', 'sugar', 'salt', 'egg'].map(
      (c) => `${(was[c] ?? 0).toFixed(1)} → ${(is[c] ?? 0).toFixed(1)}`,
    );
    return `| ${title} | ${cells.join(' | ')} | ${source} |`;
  });
  const table = [
    '# Swaps, and what the part holds before and after',
    '',
    'Grams in the whole list of the test. Egg is fresh egg; yolk, white and what was dried count as what they were.',
    '',
    '| swap | water | fat | sugar | salt | egg | source |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
    '',
  ].join('\n');
  await expect(table).toMatchFileSnapshot('substitutions.md');
});

describe('held against published figures', () => {
  test('salted butter is four fifths fat, as is unsalted, and 100 g holds 1.6 g salt (USDA SR26, NDB 01001 and 01145)', () => {
    expect(swapped('unsalted-for-salted-butter').title).toBe(
      'Swap the salted butter for 200 g unsalted butter, with 3.3 g more fine salt and 4.2 g less water',
    );
  });

  test('a litre of milk is 125 to 130 g of whole milk powder in water (milk powder makers’ 12.5 to 13 %, from memory)', () => {
    const { after } = swapped('milk-powder-for-milk');
    const powder = after.recipe.parts[0]?.head.ingredients[0];
    expect(powder?.weighed.known && likelyGrams(powder.weighed) / 0.5).toBeGreaterThan(118);
    expect(powder?.weighed.known && likelyGrams(powder.weighed) / 0.5).toBeLessThan(132);
  });

  test('honey for sugar: about 1 1/4 of honey and a quarter less liquid of that (common practice, no source)', () => {
    const { after, before } = swapped('honey-for-sugar');
    const grams = (s: Opened, i: number) => {
      const line = s.recipe.parts[0]?.head.ingredients[i];
      return line?.weighed.known ? likelyGrams(line.weighed) : Number.NaN;
    };
    expect(grams(after, 0) / grams(before, 0)).toBeCloseTo(1.22, 1);
    expect((grams(before, 1) - grams(after, 1)) / grams(after, 0)).toBeCloseTo(0.17, 2);
  });

  test('four large eggs are four yolks and four whites', () => {
    expect(swapped('yolks-and-whites-for-eggs').after.text).toContain('  4 large  egg yolks\n  4 large  egg whites\n');
    expect(swapped('eggs-for-yolks-and-whites').after.text).toContain('  4 large  eggs\n  80 g');
  });
});

describe('what cannot be kept is not offered', () => {
  const offered = (text: string): string[] => {
    const { document, recipe } = open(text);
    return recipe.parts.flatMap((part) =>
      part.head.ingredients.flatMap((i) =>
        i.food === undefined
          ? []
          : equivalentsFor(i.food)
              .filter((e) => substitute(document, recipe, part, i, e) !== undefined)
              .map((e) => e.id),
      ),
    );
  };

  test.each<[string, string]>([
    ['honey where no liquid can give its water', 'recipe T\n  200 g  caster sugar\n  200 g  plain flour\n'],
    ['salted butter where there is no salt to leave out', 'recipe T\n  200 g  unsalted butter\n  20 g  milk\n'],
  ])('%s', (_, text) => {
    expect(offered(text)).not.toContain('honey-for-sugar');
    expect(offered(text)).not.toContain('salted-for-unsalted-butter');
  });

  test('nor for an amount that is not known, or written in percentages', () => {
    expect(offered('recipe T\n  to taste  honey\n  100 g  water\n')).toEqual([]);
    expect(offered('recipe T\n  100 %  plain flour\n  3 %  fresh yeast\n  60 %  water\n')).toEqual([]);
  });
});
