import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import type { Composition, Food } from '../../server/src/food/food.ts';

const book = builtInBook();
function foodOf(words: string): Food {
  const found = book.find(words);
  if (found.kind !== 'food') throw new Error(`${words}: ${found.kind}`);
  return found.food;
}

describe('a strength that is written with a food', () => {
  test.each<[string, string, keyof Composition, number]>([
    ['vinegar, 3 % acidity', 'distilled-vinegar', 'acid', 3],
    ['vinegar (10% acetic acid)', 'distilled-vinegar', 'acid', 10],
    ['4 % cider vinegar', 'cider-vinegar', 'acid', 4],
    ['white wine vinegar, acidity 7 %', 'white-wine-vinegar', 'acid', 7],
    ['vodka 40 % vol', 'vodka', 'alcohol', 33.3],
    ['vodka, alc. 50 % vol.', 'vodka', 'alcohol', 42.43],
    ['100 proof vodka', 'vodka', 'alcohol', 42.43],
    ['80 % lean ground beef', 'beef-mince', 'fat', 20],
    ['ground beef, 93% lean', 'beef-mince', 'fat', 7],
    ['73/27 ground beef', 'beef-mince', 'fat', 27],
    ['minced pork, 20 % fat', 'pork-mince', 'fat', 20],
    ['ground turkey (93 % lean)', 'turkey-mince', 'fat', 7],
    ['cream 33 % fat', 'whipping-cream', 'fat', 33],
    ['cream, 12 % milk fat', 'single-cream', 'fat', 12],
    ['milk 1.5 %', 'whole-milk', 'fat', 1.5],
    ['yogurt 10 % fat', 'plain-yogurt', 'fat', 10],
    ['dark chocolate 85 %', 'dark-chocolate', 'sugars', 14],
    ['dark chocolate (55 % cocoa solids)', 'dark-chocolate', 'sugars', 44],
    ['bread flour, 13 % protein', 'bread-flour', 'protein', 13],
  ])('%s', (words, id, part, grams) => {
    const food = foodOf(words);
    expect(food.id).toBe(id);
    expect(food.per100[part]).toBeCloseTo(grams, 2);
    expect(food.source).toMatch(/as written$/);
    expect(book.find(words)).toBe(book.find(words));
  });

  test.each([
    ['70 % dark chocolate', 'dark-chocolate'],
    ['5% vinegar', 'distilled-vinegar'],
    ['80/20 ground beef', 'beef-mince'],
    ['35% cream', 'whipping-cream'],
  ])('of %s the book knows by name', (words, id) => {
    expect(foodOf(words)).toBe(book.byId(id));
  });

  test.each([
    ['milk chocolate, 40 % cocoa', 'milk chocolate'],
    ['parmesan, 32 % fat in dry matter', 'parmesan'],
    ['100 % rye flour', 'rye flour'],
    ['onions, 10 % off', 'onions'],
    ['vinegar, 5-6 % acidity', 'vinegar'],
  ])('is left alone where it is not understood: %s', (words, as) => {
    expect(foodOf(words).per100).toEqual(foodOf(as).per100);
  });
});

describe('what the food then holds is what others have weighed', () => {
  // USDA SR26, g in 100 g.
  test.each<[string, string, Composition, number]>([
    ['ground beef 95 % lean', 'NDB 23557', { water: 73.28, protein: 21.41, fat: 5 }, 0.06],
    ['ground beef 85 % lean', 'NDB 23567', { water: 65.72, protein: 18.59, fat: 15 }, 0.06],
    [
      'cream 11.5 % fat',
      'NDB 01049, half and half',
      { water: 80.57, protein: 2.96, fat: 11.5, carbohydrate: 4.3 },
      0.08,
    ],
    ['milk 1.98 % fat', 'NDB 01079', { water: 89.21, protein: 3.3, fat: 1.98, carbohydrate: 4.8 }, 0.05],
    ['100 proof vodka', 'NDB 14533', { water: 57.5, alcohol: 42.5 }, 0.01],
    ['dark chocolate 52 % cocoa', 'NDB 19902, 45 to 59 %', { fat: 31.28, sugars: 47.9 }, 0.06],
  ])('%s, as %s', (words, _, published, within) => {
    const { per100 } = foodOf(words);
    for (const [part, grams] of Object.entries(published) as [keyof Composition, number][])
      expect(Math.abs((per100[part] ?? Number.NaN) / grams - 1), `${part} ${per100[part]}`).toBeLessThan(within);
  });

  test('and adds up to no more than there is, whatever is written', () => {
    const foods = [
      'vinegar',
      'vodka',
      'ground beef',
      'cream',
      'whole milk',
      'dark chocolate',
      'bread flour',
      'plain flour',
    ];
    const words = ['', 'fat', 'lean', 'acidity', 'vol', 'cocoa', 'protein', 'proof', 'of the beef'];
    fc.assert(
      fc.property(
        fc.constantFrom(...foods),
        fc.integer({ min: 0, max: 999 }),
        fc.constantFrom(...words),
        (food, share, word) => {
          const found = book.find(`${food}, ${share} % ${word}`);
          if (found.kind !== 'food') return;
          const {
            water = 0,
            protein = 0,
            fat = 0,
            carbohydrate = 0,
            ash = 0,
            alcohol = 0,
            acid = 0,
          } = found.food.per100;
          expect(water + protein + fat + carbohydrate + ash + alcohol + acid).toBeLessThan(103);
          for (const grams of Object.values(found.food.per100)) expect(grams).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('no text makes it throw', () => {
    fc.assert(fc.property(fc.string(), (text) => void book.find(`${text} 5 % ${text}`)));
  });
});
