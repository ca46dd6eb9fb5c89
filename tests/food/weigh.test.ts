import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import type { Food, Weighed } from '../../server/src/food/food.ts';
import { likelyGrams } from '../../server/src/food/weigh.ts';
import { biasOf } from '../../server/src/measure/bias.ts';
import { COUNT_WORDS, type CountWord } from '../../server/src/measure/count-words.ts';
import type { Quantity } from '../../server/src/measure/quantity.ts';
import type { Measures } from '../../server/src/measure/systems.ts';
import { UNITS } from '../../server/src/measure/unit.ts';
import type { UnitSymbol } from '../../server/src/measure/unit-symbol.ts';

const book = builtInBook();

function foodOf(words: string): { readonly food: Food; readonly form: string | undefined } {
  const match = book.find(words);
  if (match.kind !== 'food') throw new Error(`${words} is ${match.kind}`);
  return { food: match.food, form: match.form };
}

function weigh(words: string, quantity: Partial<Quantity>, measures: Measures = 'us'): Weighed {
  const { food, form } = foodOf(words);
  return book.weigh(food, { low: 1, high: 1, about: false, ...quantity }, measures, form);
}

function known(weighed: Weighed): Extract<Weighed, { known: true }> {
  if (!weighed.known) throw new Error(weighed.why);
  return weighed;
}

const likely = (words: string, quantity: Partial<Quantity>, measures: Measures = 'us'): number =>
  likelyGrams(known(weigh(words, quantity, measures)));

describe('a weight', () => {
  test.each<[UnitSymbol, number]>([
    ['g', 150],
    ['kg', 150_000],
    ['oz', 150 * 28.349523125],
    ['lb', 150 * 453.59237],
  ])('in %s is itself', (unit, grams) => {
    const weighed = known(weigh('butter', { low: 150, high: 150, unit }));
    expect(weighed.grams.low).toBeCloseTo(grams, 6);
    expect(weighed.grams.high).toBeCloseTo(grams, 6);
    expect(weighed.reason.kind).toBe('weight');
    expect(weighed.typical).toBeUndefined();
  });

  test('written as a range stays one', () => {
    expect(known(weigh('butter', { low: 40, high: 45, unit: 'g' })).grams).toEqual({ low: 40, high: 45 });
  });

  test.each([
    ['plain flour', 'heaped', 1.25, 1.4, 1.6],
    ['plain flour', 'rounded', 1.1, 1.25, 1.4],
    ['plain flour', 'scant', 0.85, 0.92, 0.97],
    ['plain flour', 'level', 1, 1, 1],
    ['whole milk', 'generous', 1.02, 1.08, 1.15],
    ['whole milk', 'heaped', 1, 1, 1],
  ])('a tablespoon of %s, %s, is so much of a level one', (food, word, low, likelyShare, high) => {
    const bias = biasOf(word);
    if (bias === undefined) throw new Error(word);
    const level = known(weigh(food, { unit: 'tbsp' }));
    const filled = known(weigh(food, { unit: 'tbsp', bias }));
    expect(filled.grams.low / level.grams.low).toBeCloseTo(low, 6);
    expect(filled.grams.high / level.grams.high).toBeCloseTo(high, 6);
    expect(likelyGrams(filled) / likelyGrams(level)).toBeCloseTo(likelyShare, 6);
  });

  test('packed takes the measure of what is packed', () => {
    const bias = biasOf('firmly packed');
    if (bias === undefined) throw new Error('packed');
    expect(likely('light brown sugar', { unit: 'cup', bias })).toBe(220);
  });

  test('about widens by a tenth either way', () => {
    const weighed = known(weigh('butter', { low: 100, high: 100, unit: 'g', about: true }));
    expect(weighed.grams.low).toBeCloseTo(90, 9);
    expect(weighed.grams.high).toBeCloseTo(110, 9);
    expect(weighed.reason.words).toContain('about');
  });
});

describe('a measure', () => {
  test('of flour says how far it goes', () => {
    const weighed = known(weigh('plain flour', { unit: 'cup' }));
    expect(weighed.grams).toEqual({ low: 120, high: 150 });
    expect(weighed.typical).toBe(125);
    expect(weighed.reason.kind).toBe('measure');
    expect(weighed.reason.words).toBe('1 US cup of plain flour weighs 125 g (120 to 150 by how it is filled)');
    expect(weighed.reason.source).toContain('NDB 20081');
  });

  test('serves the other units of the food, and says from what', () => {
    const weighed = known(weigh('plain flour', { low: 3, high: 3, unit: 'tbsp' }));
    expect(likelyGrams(weighed)).toBeCloseTo((3 * 125) / 16, 6);
    expect(weighed.reason.words).toContain('from 1 US cup = 125 g');
  });

  test.each<[string, UnitSymbol, number, number]>([
    ['double cream', 'cup', 2, 476],
    ['whole milk', 'ml', 1000, 1031],
    ['honey', 'tbsp', 2, 42],
    ['table salt', 'tsp', 1, 6],
    ['water', 'l', 1, 1000],
    ['chopped onion', 'cup', 1, 150],
    ['sifted icing sugar', 'cup', 1, 100],
    ['brown sugar, packed', 'cup', 1, 220],
    ['vanilla extract', 'tsp', 1, 4.2],
    ['red wine', 'ml', 750, 745],
  ])('of %s in %s', (words, unit, amount, grams) => {
    expect(Math.abs(likely(words, { low: amount, high: amount, unit }) / grams - 1)).toBeLessThan(0.01);
  });

  test('with the cut unsaid spans the cuts', () => {
    const weighed = known(weigh('walnuts', { unit: 'cup' }));
    const chopped = known(weigh('chopped walnuts', { unit: 'cup' }));
    expect(weighed.grams.high).toBeGreaterThan(weighed.grams.low);
    expect(likelyGrams(chopped)).toBe(117);
    expect(chopped.reason.words).toContain('chopped');
  });

  test('is of what stands in the cup: sifted before is not sifted after', () => {
    expect(likely('sifted plain flour', { unit: 'cup' })).toBe(115);
    expect(likely('plain flour, sifted', { unit: 'cup' })).toBe(125);
  });

  test('depends on the house', () => {
    expect(likely('plain flour', { unit: 'cup' }, 'metric') / likely('plain flour', { unit: 'cup' })).toBeCloseTo(
      250 / 236.588,
      3,
    );
    expect(likely('whole milk', { unit: 'pint' }, 'imperial') / likely('whole milk', { unit: 'pint' })).toBeCloseTo(
      568.261 / 473.176,
      3,
    );
    expect(known(weigh('plain flour', { unit: 'cup' }, 'metric')).reason.words).toContain('US cup');
  });

  test('salts differ by the spoon', () => {
    const [table, kosher, flaky] = ['table salt', 'kosher salt', 'flaky sea salt'].map((salt) =>
      known(weigh(salt, { unit: 'tsp' })),
    );
    expect(table?.grams).toEqual({ low: 5.5, high: 6.5 });
    expect(kosher?.grams).toEqual({ low: 2.8, high: 4.8 });
    expect(flaky?.grams.high).toBeLessThan(4.5);
  });

  test('nobody has taken is not known', () => {
    const weighed = weigh('lasagne sheet', { unit: 'cup' });
    expect(weighed).toEqual({ known: false, why: 'nobody has weighed a cup of lasagne sheet: write a weight' });
  });
});

describe('pieces', () => {
  test.each<[string, Partial<Quantity>, number]>([
    ['onions', { low: 2, high: 2 }, 220],
    ['eggs', { low: 3, high: 3, size: 'large' }, 150],
    ['eggs', { low: 3, high: 3 }, 150],
    ['eggs', { low: 2, high: 2, size: 'small' }, 76],
    ['egg yolk', {}, 17],
    ['garlic', { low: 2, high: 2, count: 'clove' }, 8],
    ['garlic cloves', { low: 2, high: 2 }, 8],
    ['butter', { count: 'stick' }, 113.4],
    ['gelatine', { low: 4, high: 4, count: 'sheet' }, 8.8],
    ['gelatine leaves', { low: 4, high: 4 }, 8.8],
    ['gelatine', { count: 'envelope' }, 7],
    ['chives', { count: 'bunch' }, 25],
    ['celery', { count: 'rib' }, 40],
    ['bacon', { low: 6, high: 6, count: 'rasher' }, 150],
    ['lemons, juice only', {}, 45],
    ['zest of 1 lemon', {}, 6],
    ['plums', { low: 6, high: 6 }, 396],
    ['instant yeast', { count: 'sachet' }, 7],
    ['salmon', { count: 'fillet' }, 150],
    ['apples', { size: 'large' }, 223],
  ])('%s %o', (words, quantity, grams) => {
    expect(likely(words, quantity)).toBeCloseTo(grams, 6);
  });

  test('a bunch of herbs has no fixed size', () => {
    const weighed = known(weigh('parsley', { count: 'bunch' }));
    expect(weighed.grams.high / weighed.grams.low).toBeGreaterThan(2);
    expect(weighed.reason.kind).toBe('piece');
  });

  test('with the size unsaid spans the sizes', () => {
    const { grams, reason } = known(weigh('onions', {}));
    expect(grams.low).toBeLessThan(75);
    expect(grams.high).toBeGreaterThan(145);
    expect(reason.kind).toBe('size');
  });

  test('European eggs follow the classes of the Union where the house does', () => {
    const { grams, reason } = known(weigh('eggs', { size: 'medium' }, 'metric'));
    expect(grams.low).toBeCloseTo(53 * 0.88, 6);
    expect(grams.high).toBeCloseTo(63 * 0.88, 6);
    expect(reason.source).toContain('589/2008');
    const whole = likely('eggs', {}, 'metric');
    expect(likely('egg yolk', {}, 'metric') + likely('egg white', {}, 'metric')).toBeCloseTo(whole, 6);
  });

  test('a package is what it holds', () => {
    const each: Quantity = { low: 400, high: 400, about: false, unit: 'g' };
    const weighed = known(weigh('canned tomatoes', { low: 2, high: 2, count: 'can', each }));
    expect(weighed.grams).toEqual({ low: 800, high: 800 });
    expect(weighed.reason.kind).toBe('package');
    const millilitres: Quantity = { ...each, unit: 'ml' };
    expect(likely('coconut milk', { count: 'can', each: millilitres })).toBeGreaterThan(380);
  });

  // USDA SR26: NDB 11546 170 g, 01017 the small one 85 g, 19177 7 g; a quarter pound of butter.
  test.each<[string, Partial<Quantity>, number]>([
    ['tomato paste', { count: 'can' }, 170],
    ['cream cheese', { count: 'package', size: 'small' }, 85],
    ['cream cheese', { count: 'package' }, 227],
    ['gelatine', { count: 'envelope' }, 7],
    ['butter', { count: 'stick' }, 113.4],
    ['active dry yeast', { count: 'package' }, 7.1],
    ['canned tomatoes', { count: 'tin' }, 411],
  ])('of one usual size has its weight: %s, %j', (food, quantity, grams) => {
    expect(likely(food, quantity)).toBe(grams);
  });

  test('a package of unsaid size has no weight', () => {
    for (const count of ['bag', 'jar', 'packet', 'glass'] as const) {
      const weighed = weigh('canned tomatoes', { count });
      expect(weighed).toEqual({ known: false, why: `a ${count} has no fixed size: write \`1 ${count} of 400 g\`` });
    }
  });
});

describe('what is no amount of food', () => {
  test.each<[UnitSymbol, RegExp]>([
    ['%', /percentage/],
    ['cm', /not a measure of amount/],
    ['C', /not a measure of amount/],
    ['min', /not a measure of amount/],
  ])('%s', (unit, why) => {
    const weighed = weigh('butter', { unit });
    expect(weighed.known ? '' : weighed.why).toMatch(why);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, -1])('%d of it', (low) => {
    expect(weigh('butter', { low, high: low, unit: 'g' }).known).toBe(false);
  });
});

test('any quantity of any food is weighed or says why, in order and with a source', () => {
  const foods = book.all();
  const quantity = fc.record(
    {
      unit: fc.constantFrom(...UNITS.map((unit) => unit.symbol)),
      size: fc.constantFrom(
        'small' as const,
        'medium' as const,
        'large' as const,
        'extra large' as const,
        'jumbo' as const,
      ),
      count: fc.constantFrom<CountWord>(...COUNT_WORDS),
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(
      fc.nat(foods.length - 1),
      quantity,
      fc.double({ min: 0.01, max: 500, noNaN: true }),
      fc.boolean(),
      fc.constantFrom<Measures>('us', 'metric', 'imperial'),
      fc.constantFrom(undefined, 'chopped', 'packed', 'sifted', 'nonsense'),
      (at, shape, amount, about, measures, form) => {
        const food = foods[at];
        if (food === undefined) return;
        const weighed = book.weigh(food, { low: amount, high: amount * 1.2, about, ...shape }, measures, form);
        if (!weighed.known) {
          expect(weighed.why.length).toBeGreaterThan(5);
          return;
        }
        const { grams, typical, reason } = weighed;
        expect(grams.low).toBeGreaterThan(0);
        expect(grams.high).toBeGreaterThanOrEqual(grams.low);
        if (typical !== undefined) {
          expect(typical).toBeGreaterThanOrEqual(grams.low * 0.999);
          expect(typical).toBeLessThanOrEqual(grams.high * 1.001);
        }
        expect(reason.words).not.toMatch(/NaN|undefined|Infinity/);
        expect(reason.source).not.toBe('');
      },
    ),
    { numRuns: 2000 },
  );
});

test('twice as much weighs twice as much', () => {
  for (const [words, unit] of [
    ['plain flour', 'cup'],
    ['honey', 'tbsp'],
    ['salt', 'pinch'],
    ['carrots', 'cup'],
  ] as const) {
    expect(likely(words, { low: 2, high: 2, unit })).toBeCloseTo(2 * likely(words, { unit }), 9);
  }
});
