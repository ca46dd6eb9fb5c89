/**
 * Amounts as cooks print them, written at another size and in other measures: what is written is read again as much of the same foods.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convertRecipe } from '../../server/src/edits/convert.ts';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { likelyGrams } from '../../server/src/food/weigh.ts';
import { comesTo, figuresText, kitchenFigures } from '../../server/src/measure/kitchen.ts';
import { MEASURES_CHOICES, type Measures } from '../../server/src/measure/systems.ts';
import { totalOf } from '../../server/src/measure/total.ts';
import { baseOf } from '../../server/src/measure/unit.ts';
import type { UnitSymbol } from '../../server/src/measure/unit-symbol.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from '../support/harness.ts';

const INDENT = '  ';
const around = (line: string): string => `recipe Test\n\n  50 g      walnuts\n${INDENT}${line}\n\n  do Mix all.\n`;
const lineOf = (text: string): string => (text.split('\n')[3] ?? '').trim().replace(/ {2,}/g, ' ');

function scaled(line: string, by: number, measures: Measures = 'us'): string {
  const { document, recipe } = open(around(line), { measures });
  const result = scaleRecipe(document, recipe, { kind: 'by', by });
  if (!result.ok) throw new Error(result.why);
  return lineOf(printDocument(applyEdits(document, result.scaling.edits)));
}

function converted(line: string, to: 'weight' | 'us' | 'metric', both = false): string {
  const { document, recipe } = open(around(line));
  const { edits } = convertRecipe(document, recipe, { to, both });
  return lineOf(printDocument(applyEdits(document, edits)));
}

const VOLUMES: readonly UnitSymbol[] = ['tsp', 'tbsp', 'cup', 'fl oz', 'pint', 'quart', 'gallon', 'gill', 'teacup'];
const UNITS: readonly UnitSymbol[] = [...VOLUMES, 'oz', 'lb', 'g', 'kg', 'ml', 'l'];
const measures = fc.constantFrom(...MEASURES_CHOICES);
const size = fc.double({ min: 0.25, max: 60, noNaN: true });

describe('what a kitchen measures', () => {
  test('is read again as what it stands for, in every house', () => {
    fc.assert(
      fc.property(size, fc.constantFrom(...UNITS), measures, (value, unit, house) => {
        const figures = kitchenFigures(value, unit, house);
        expect(figures.length).toBeLessThanOrEqual(2);
        const { statement, faults } = readLine(`${INDENT}${figuresText(figures)} water`);
        expect(faults).toEqual([]);
        const amount = statement.kind === 'ingredient' ? statement.amount : undefined;
        const total = amount?.kind === 'measured' ? totalOf(amount.quantity, house) : undefined;
        const said = comesTo(figures, unit, house) * (baseOf(unit, house) ?? Number.NaN);
        expect(total?.low).toBeCloseTo(said, 6);
      }),
      { numRuns: 400 },
    );
  });

  test('is in two measures only where that is within 2 %, and the second is less than one of the first', () => {
    fc.assert(
      fc.property(size, fc.constantFrom(...UNITS), measures, (value, unit, house) => {
        const [first, second] = kitchenFigures(value, unit, house);
        if (first === undefined || second === undefined) return;
        expect(Math.abs(comesTo([first, second], unit, house) / value - 1)).toBeLessThanOrEqual(0.02 + 1e-9);
        const [large, small] = [baseOf(first.unit, house) ?? 0, second.value * (baseOf(second.unit, house) ?? 0)];
        expect(small).toBeLessThan(large);
      }),
      { numRuns: 400 },
    );
  });

  test.each<[number, UnitSymbol, string]>([
    [9.5, 'tsp', '3 tbsp + 1/2 tsp'],
    [15, 'tbsp', '3/4 cup + 3 tbsp'],
    [4 / 3, 'tbsp', '1 tbsp + 1 tsp'],
    [6, 'tbsp', '6 tbsp'],
    [1.125, 'cup', '1 cup + 2 tbsp'],
    [2.25, 'cup', '2 1/4 cup'],
    [17, 'oz', '1 lb 1 oz'],
    [40, 'oz', '2 1/2 lb'],
    [1200, 'g', '1200 g'],
  ])('%d %s is %s', (value, unit, text) => {
    expect(figuresText(kitchenFigures(value, unit, 'us'))).toBe(text);
  });
});

describe('scaling', () => {
  test.each<[string, number, string]>([
    ['1 cup plus 2 tbsp sugar', 2, '2 1/4 cup sugar'],
    ['1 cup plus 2 tbsp sugar', 3, '3 1/3 cup sugar'],
    ['1 cup sugar plus 2 tbsp', 2, '2 1/4 cup sugar'],
    ['1 lb 4 oz beef', 2, '2 1/2 lb beef'],
    ['1 lb 4 oz beef', 0.85, '1 lb 1 oz beef'],
    ['1 pound 2 ounces sugar', 2, '2 1/4 lb sugar'],
    ['1 cup sugar', 1.125, '1 cup + 2 tbsp sugar'],
    ['1 gal milk', 2, '2 gal milk'],
    ['1 tsp to 1 tbsp olive oil', 2, '2 tsp to 2 tbsp olive oil'],
    ['1 1/4 cups (156 g) flour', 2, '2 1/2 cups (312 g) flour'],
    ['225 g/8 oz sugar', 2, '450 g/1 lb sugar'],
    ['2 (8 oz) steaks', 2, '4 (8 oz) steaks'],
    ['3 hams, 15 lbs. each', 2, '6 hams, 15 lbs. each'],
    ['4 carrots (300 g)', 2, '8 carrots (600 g)'],
    ['2 x 400 g tins tomatoes', 2, '4 x 400 g tins tomatoes'],
    ['400g tin tomatoes', 2, '2 x 400g tins tomatoes'],
    ['1 14-oz can tomatoes', 1.5, '1 1/2 x 14-oz cans tomatoes'],
    ['pinch of salt', 2, '2 pinch of salt'],
    ['half a lemon', 2, '1 lemon'],
    ['two dozen eggs', 2, '48 eggs'],
    ['a few drops of vanilla extract', 2, '6-10 drops of vanilla extract'],
    ['2 eggs plus 1 yolk', 2, '4 eggs plus 2 yolks'],
    ['1 tsp each of ground ginger and cinnamon', 2, '2 tsp each of ground ginger and cinnamon'],
    ['juice of 1 lemon', 2, 'juice of 2 lemons'],
    ['1 heaped tbsp flour', 2, '2 heaped tbsp flour'],
    ['1 can peas, or 2 cups fresh peas', 2, '2 cans peas, or 4 cups fresh peas'],
    ['1 tsp salt plus 1/2 tsp for the glaze', 2, '2 tsp salt plus 1 tsp for the glaze'],
    ['Butter, 4 oz', 2, 'Butter, 8 oz'],
    ['1 egg', 2, '2 eggs'],
  ])('%s by %d', (line, by, text) => {
    expect(scaled(line, by)).toBe(text);
  });

  const PRINTED = [
    '1 cup plus 2 tbsp sugar',
    '1 cup sugar plus 2 tbsp',
    '1 lb 4 oz beef',
    '1/2 cup 2 tbsp flour',
    '1 1/4 cups (156 g) flour',
    '225 g/8 oz butter',
    '3 tbsp or 45 g honey',
    '2 x 400 g tins tomatoes',
    '400g tin tomatoes',
    '1 14-oz can tomatoes',
    '1 gal 2-1/2 qts milk',
    'half a cup of sugar',
    '1 tsp to 1 tbsp olive oil',
  ];
  const gramsOf = ({ recipe }: Snapshot): number | undefined => {
    const weighed = recipe.parts[0]?.head.ingredients[1]?.weighed;
    return weighed?.known ? likelyGrams(weighed) : undefined;
  };

  test('is read again as so many times as much, within the rounding that is said', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PRINTED),
        measures,
        fc.constantFrom(0.5, 0.75, 1.5, 2, 2.5, 3, 7),
        (line, house, by) => {
          const before = open(around(line), { measures: house });
          const result = scaleRecipe(before.document, before.recipe, { kind: 'by', by });
          if (!result.ok) throw new Error(result.why);
          const text = printDocument(applyEdits(before.document, result.scaling.edits));
          const after = open(text, { measures: house });
          const [was, is] = [gramsOf(before), gramsOf(after)];
          if (was === undefined || is === undefined) throw new Error(`not weighed: ${text}`);
          expect(after.recipe.parts[0]?.head.ingredients.map((i) => i.food?.id)).toEqual(
            before.recipe.parts[0]?.head.ingredients.map((i) => i.food?.id),
          );
          // A cup of a powder is not weighed in the book as so many spoons.
          const off = Math.abs(result.scaling.rounding.worst?.error ?? 0) + 0.035;
          expect(Math.abs(is / (was * by) - 1), lineOf(text)).toBeLessThanOrEqual(off);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('converting', () => {
  test.each<[string, 'weight' | 'us' | 'metric', string]>([
    ['1 1/4 cups (156 g) flour', 'weight', '156 g flour'],
    ['1 cup flour (120 g)', 'weight', '120 g flour'],
    ['8 oz (225 g) butter', 'metric', '225 g butter'],
    ['8 oz = 500 g butter', 'weight', '227 g butter'],
    ['1 lb 4 oz beef', 'weight', '567 g beef'],
    ['1 cup sugar plus 2 tbsp', 'weight', '225 g sugar'],
    ['2 x 400 g tins chickpeas', 'weight', '800 g canned chickpeas'],
    ['1 can (14 oz) tomatoes', 'weight', '397 g canned tomatoes'],
    ['4 carrots (300 g)', 'weight', '300 g carrots'],
    ['2 (8 oz) steaks', 'weight', '454 g steaks'],
    ['Butter, 4 oz', 'weight', '113 g Butter'],
    ['1 lemon, juiced', 'weight', '1 lemon, juiced'],
    ['1 tsp each of ground ginger and cinnamon', 'weight', '1 tsp each of ground ginger and cinnamon'],
    ['270 ml milk', 'us', '1 cup + 2 tbsp milk'],
  ])('%s to %s', (line, to, text) => {
    expect(converted(line, to)).toBe(text);
  });

  test('both measures of a sum stand before the name', () => {
    expect(converted('1 cup sugar plus 2 tbsp', 'weight', true)).toBe('1 cup + 2 tbsp = 225 g sugar');
    expect(converted('1 1/4 cups (156 g) flour', 'weight', true)).toBe('1 1/4 cups (156 g) flour');
  });
});
