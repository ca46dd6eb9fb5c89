import { describe, expect, test } from 'vitest';
import { builtInBook, withHouseFoods } from '../../server/src/food/book.ts';
import type { HouseFood } from '../../server/src/food/food.ts';
import type { Quantity } from '../../server/src/measure/quantity.ts';

const amount = (low: number, unit?: Quantity['unit']): Quantity => ({
  low,
  high: low,
  about: false,
  ...(unit === undefined ? {} : { unit }),
});
const block = (name: string, more: Partial<HouseFood> = {}): HouseFood => ({
  name,
  also: [],
  measures: [],
  composition: {},
  contains: [],
  ...more,
});
const lay = (...foods: HouseFood[]) => withHouseFoods(builtInBook(), foods);

describe('a food of the house', () => {
  test('is like another, and says what differs', () => {
    const { book, problems } = lay(
      block('Harbour strong flour', {
        like: 'bread flour',
        also: ['house flour'],
        measures: [{ of: amount(1, 'cup'), grams: amount(132, 'g') }],
        composition: { protein: 12.9 },
      }),
    );
    expect(problems).toEqual([]);
    const match = book.find('house flour, sifted');
    expect(match.kind).toBe('food');
    if (match.kind !== 'food') return;
    const { food } = match;
    expect(food.id).toBe('house-harbour-strong-flour');
    expect(food.roles).toContain('baking flour');
    expect(food.per100.protein).toBe(12.9);
    expect(food.per100.water).toBe(builtInBook().byId('bread-flour')?.per100.water);
    expect(food.allergens.eu).toEqual(['cereals containing gluten']);
    const weighed = book.weigh(food, amount(2, 'cup'), 'us');
    expect(weighed).toMatchObject({ known: true, grams: { low: 264, high: 264 }, reason: { kind: 'house' } });
    expect(book.all()[0]).toBe(food);
    expect(book.byId(food.id)).toBe(food);
  });

  test("in the house's own cup, whatever that holds", () => {
    const { book } = lay(block('grain mix', { measures: [{ of: amount(1, 'cup'), grams: amount(150, 'g') }] }));
    const match = book.find('grain mix');
    if (match.kind !== 'food') throw new Error(match.kind);
    expect(book.weigh(match.food, amount(1, 'cup'), 'metric')).toMatchObject({ grams: { low: 150, high: 150 } });
    expect(book.weigh(match.food, amount(125, 'ml'), 'metric')).toMatchObject({ grams: { low: 75, high: 75 } });
  });

  test('takes a name from the book', () => {
    const { book } = lay(block('butter', { like: 'unsalted butter', composition: { fat: 84, water: 14 } }));
    const match = book.find('butter, melted');
    expect(match.kind === 'food' ? match.food.per100.fat : 0).toBe(84);
    expect(match.kind === 'food' ? match.food.per100.saturates : 0).toBeUndefined();
    expect(book.find('salted butter').kind).toBe('food');
  });

  test('may be like another of the house, in either order', () => {
    const { book, problems } = lay(
      block('rye sour', { like: 'old starter' }),
      block('old starter', { like: 'sourdough starter', composition: { water: 58 } }),
    );
    expect(problems).toEqual([]);
    const match = book.find('rye sour');
    expect(match.kind === 'food' ? match.food.per100.water : 0).toBe(58);
  });

  test('counts in pieces and salt in grams', () => {
    const { book } = lay(
      block('brine cake', {
        measures: [{ of: amount(2), grams: amount(90, 'g') }],
        composition: { salt: 2.5 },
        contains: ['wheat', 'milk'],
      }),
    );
    const match = book.find('brine cakes');
    if (match.kind !== 'food') throw new Error(match.kind);
    expect(book.weigh(match.food, amount(3), 'us')).toMatchObject({ grams: { low: 135, high: 135 } });
    expect(match.food.per100.sodium).toBe(1000);
    expect(match.food.allergens.us).toEqual(['wheat', 'milk']);
  });
});

describe('the allergens of a block', () => {
  const allergens = (more: Partial<HouseFood>): unknown => {
    const match = lay(block('odd rub', more)).book.find('odd rub');
    return match.kind === 'food' ? match.food.allergens : undefined;
  };

  test('are not known where it says nothing and is like nothing', () => {
    expect(allergens({})).toEqual({ us: [], eu: [], unsaid: true });
    expect(allergens({ contains: ['nothing'] })).toEqual({ us: [], eu: [] });
    expect(allergens({ like: 'red lentils' })).not.toHaveProperty('unsaid');
  });

  test('are read in the singular, and from the food that a word names', () => {
    expect(allergens({ contains: ['almond', 'sulfite', 'prawns', 'Parmesan'] })).toEqual({
      us: ['milk', 'crustacean shellfish', 'tree nuts'],
      eu: ['milk', 'crustaceans', 'nuts', 'sulphites'],
    });
  });

  test('are to be read on the label of what it is like, until the house says what it contains', () => {
    expect(allergens({ like: 'margarine' })).toMatchObject({ us: [], label: { us: ['milk', 'soybeans'] } });
    expect(allergens({ like: 'margarine', contains: ['soy'] })).toEqual({ us: ['soybeans'], eu: ['soybeans'] });
  });

  test('may be more, where a word is not understood', () => {
    expect(allergens({ like: 'tahini', contains: ['moonbeam'] })).toEqual({
      us: ['sesame'],
      eu: ['sesame'],
      unsaid: true,
    });
  });
});

describe('a block that cannot be used says why and is left out', () => {
  test.each<[string, Partial<HouseFood>, RegExp]>([
    ['like nothing', { like: 'unobtainium' }, /no food is called unobtainium/],
    ['too much', { composition: { water: 60, fat: 50 } }, /add up to 110/],
    ['more sugar than carbohydrate', { composition: { carbohydrate: 20, sugar: 30 } }, /more sugar/],
    ['below nothing', { composition: { water: -4 } }, /below nothing/],
    [
      'a measure without a weight',
      { measures: [{ of: amount(1, 'cup'), grams: amount(2, 'tbsp') }] },
      /an amount, `=` and a weight/,
    ],
    ['a weight of a weight', { measures: [{ of: amount(1, 'oz'), grams: amount(28, 'g') }] }, /needs no measure/],
    ['trim of everything', { trimShare: 1 }, /below 100 %/],
  ])('%s', (_, more, words) => {
    const { book, problems } = lay(block('odd thing', more));
    expect(problems.map((problem) => problem.words).join()).toMatch(words);
    expect(book.find('odd thing').kind).toBe('unknown');
  });

  test('two of one name', () => {
    const { book, problems } = lay(
      block('pear syrup', { composition: { water: 30 } }),
      block('perry', { also: ['Pear syrups'] }),
    );
    expect(problems).toEqual([{ food: 'perry', words: 'Pear syrups is already a food of the house' }]);
    expect(book.find('perry').kind).toBe('unknown');
  });

  test('an allergen that labels do not know is remarked on, and the food kept', () => {
    const { book, problems } = lay(block('odd seeds', { contains: ['moonseed', 'sesame'] }));
    expect(problems[0]?.words).toMatch(/moonseed/);
    expect(book.find('odd seeds').kind).toBe('food');
  });

  test('like itself does not hang', () => {
    expect(lay(block('loop', { like: 'loop' })).problems).toHaveLength(1);
    expect(lay(block('a thing', { like: 'b thing' }), block('b thing', { like: 'a thing' })).problems).toHaveLength(2);
  });
});

test('a long chain of likeness is read in time', () => {
  const chain = Array.from({ length: 3000 }, (_, i) =>
    block(`relay ${i}x`, { like: i === 2999 ? 'plain flour' : `relay ${i + 1}x` }),
  );
  const { book, problems } = lay(...chain);
  expect(problems).toEqual([]);
  const match = book.find('relay 0x');
  expect(match.kind === 'food' ? match.food.per100.water : 0).toBe(11.92);
});

test('no foods of the house leave the book as it is', () => {
  expect(lay().book).toBe(builtInBook());
});
