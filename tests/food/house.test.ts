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

describe('a block with the name of a known food', () => {
  const found = (name: string, ...foods: HouseFood[]) => {
    const match = lay(...foods).book.find(name);
    return match.kind === 'food' ? match.food : undefined;
  };
  const bookFood = (id: string) => builtInBook().byId(id);

  test.each([
    ['mayonnaise', ['eggs']],
    ['egg noodles', ['cereals containing gluten', 'eggs']],
    ['plain flour', ['cereals containing gluten']],
  ])('that says only a price of %s leaves what it contains', (name, allergens) => {
    expect(found(name, block(name))?.allergens.eu).toEqual(expect.arrayContaining(allergens));
  });

  test('takes the known one where it is silent, and stays that food', () => {
    const egg = found('whole eggs', block('egg', { measures: [{ of: amount(1), grams: amount(58, 'g') }] }));
    expect(egg).toMatchObject({ id: 'egg', class: 'egg', house: true, like: 'egg' });
    expect(egg?.per100).toEqual(bookFood('egg')?.per100);
    expect(egg?.pieces[0]?.grams).toEqual({ low: 58, high: 58 });
  });

  test('by another name it goes by, too, but not where those name several foods', () => {
    expect(found('dock flour', block('dock flour', { also: ['bread flour'] }))?.allergens.us).toEqual(['wheat']);
    expect(found('dock fat', block('dock fat', { also: ['butter', 'lard'] }))?.allergens.unsaid).toBe(true);
  });

  test('only by its exact name, and never an ambiguous one', () => {
    expect(found('quayside flour', block('quayside flour'))?.like).toBeUndefined();
    expect(builtInBook().find('cream').kind).toBe('ambiguous');
    expect(found('cream', block('cream'))).toMatchObject({ class: 'other', allergens: { unsaid: true } });
  });

  test('by one of its other names is a food beside it', () => {
    const butter = block('cultured butter', { like: 'unsalted butter', composition: { fat: 83 } });
    expect(found('cultured butter', butter)).toMatchObject({ id: 'house-cultured-butter', like: 'unsalted-butter' });
    expect(found('unsalted butter', butter)).toEqual(bookFood('unsalted-butter'));
  });

  test('leaves the names that other blocks describe', () => {
    const [plain, white] = ['plain flour', 'all-purpose flour'].map((name) =>
      found(
        name,
        block('plain flour', { composition: { protein: 9 } }),
        block('all-purpose flour', { composition: { protein: 12 } }),
      ),
    );
    expect([plain?.per100.protein, white?.per100.protein]).toEqual([9, 12]);
  });

  test('is the only food of its id', () => {
    const { book } = lay(block('butter'));
    expect(book.all().filter(({ id }) => id === 'butter')).toHaveLength(1);
    expect(book.byId('butter')?.house).toBe(true);
  });

  test("a cup of the house's own replaces the measures without a form", () => {
    const flour = found(
      'plain flour',
      block('plain flour', { measures: [{ of: amount(1, 'cup'), grams: amount(140, 'g') }] }),
    );
    expect(flour?.measures.filter(({ form }) => form === undefined).map(({ source }) => source)).toEqual(['the house']);
    expect(flour?.measures.some(({ form }) => form === 'sifted')).toBe(true);
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

  test('add to those of what it is like; `nothing` clears them', () => {
    expect(allergens({ like: 'bread flour', contains: ['milk'] })).toEqual({
      us: ['wheat', 'milk'],
      eu: ['cereals containing gluten', 'milk'],
    });
    expect(allergens({ like: 'bread flour', contains: ['nothing'] })).toEqual({ us: [], eu: [] });
    expect(allergens({ like: 'bread flour', contains: ['nothing', 'milk'] })).toEqual({ us: ['milk'], eu: ['milk'] });
  });

  test('are read in the singular, and from the food that a word names', () => {
    expect(allergens({ contains: ['almond', 'sulfite', 'prawns', 'Parmesan'] })).toEqual({
      us: ['milk', 'crustacean shellfish', 'tree nuts'],
      eu: ['milk', 'crustaceans', 'nuts', 'sulphites'],
      sorts: ['almond'],
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
      block('pelmeth', { also: ['Pear syrups'] }),
    );
    expect(problems).toEqual([{ food: 'pelmeth', words: 'Pear syrups is already a food of the house' }]);
    expect(book.find('pelmeth').kind).toBe('unknown');
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
