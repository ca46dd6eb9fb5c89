/** Which ingredients one line makes, and what each is: the name, the food, whether an amount is meant. */
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

function read(line: string): string {
  const { recipe } = open(`recipe Trial\npart p\n  100 g     butter\n  ${line}\n  do Mix.\n`);
  return (recipe.parts[0]?.head.ingredients ?? [])
    .filter((i) => i.line === 2)
    .map(({ name, match, free, optional, weighed, others = [], mayHold = [] }) => {
      const food = match.kind === 'food' ? match.food.name : match.kind;
      const grams = weighed.known
        ? ` ${Math.round(weighed.typical ?? (weighed.grams.low + weighed.grams.high) / 2)} g`
        : '';
      return [
        name.toLowerCase() === food ? food : `${name}: ${food}`,
        free ? ' free' : grams,
        optional ? ' optional' : '',
        ...others.map((o) => ` or ${o.name.text}`),
        ...mayHold.map((m) => ` with ${m.name.text}`),
      ].join('');
    })
    .join(' + ');
}

test.each([
  ['100 g butter or margarine', 'butter 100 g or margarine'],
  ['200 ml double cream, or coconut milk', 'double cream 201 g or coconut milk'],
  ['2 eggs plus 1 egg yolk', 'eggs: egg 100 g + egg yolk 17 g'],
  ['salt and black pepper', 'salt: table salt free + black pepper free'],
  ['oil for frying', 'oil: vegetable oil free'],
  ['a little olive oil', 'olive oil free'],
  ['juice of 1 lemon', 'lemon juice 45 g'],
  ['whites of 3 eggs', 'egg white 99 g'],
  [
    '1 tsp each ground cinnamon, ground ginger and grated nutmeg',
    'ground cinnamon: cinnamon 3 g + ground ginger 2 g + grated nutmeg: nutmeg 2 g',
  ],
  ['Butter, 4 oz', 'butter 113 g'],
  ['sugar: 1 cup', 'sugar: granulated sugar 200 g'],
  ['flour 500g', 'flour: plain flour 500 g'],
  ['1 tsp salt, black pepper', 'salt: table salt 6 g with black pepper + black pepper free'],
  ['half a lemon', 'lemon 29 g'],
  ['walnuts (optional)', 'walnuts: walnut free optional'],
  ['50 g walnuts (optional)', 'walnuts: walnut 50 g optional'],
  ['¼ cup chopped or grated onion', 'grated onion: onion 38 g'],
])('%s', (line, expected) => {
  expect(read(line)).toBe(expected);
});

test('flour for dusting leaves the flour of the dough in it, and is never overdrawn', () => {
  const { recipe, findings } = open(
    'recipe Loaf\npart dough as lean bread\n  500 g     bread flour, plus more for dusting\n  330 g     water\n  10 g      fine salt\n  5 g       instant yeast\n  do Mix the flour, water, salt and yeast and knead for 10 min.\n  do Dust the board with the flour and shape.\n',
  );
  expect(recipe.parts[0]?.head.flourG).toEqual({ low: 500, high: 500 });
  expect(findings.open.map((f) => f.code)).not.toContain('overdrawn-amount');
});

test('what is taken for the glaze is in no mixture', () => {
  const { recipe } = open('recipe Buns\n  500 g     bread flour\n  1 tsp salt plus 1/2 tsp for the glaze\n  do Mix.\n');
  const salt = recipe.parts[0]?.head.ingredients[1];
  expect(salt?.weighed.known && Math.round(salt.weighed.grams.low)).toBe(6);
  expect(salt?.node.rest?.amount?.quantity.low).toBe(0.5);
});

test('a step may name either alternative', () => {
  const { findings } = open(
    'recipe Rub\n  200 g     plain flour\n  100 g     butter or margarine\n  do Rub the margarine into the flour.\n',
  );
  expect(findings.open.map((f) => f.code)).not.toContain('unused-ingredient');
  expect(findings.open.map((f) => f.code)).not.toContain('unlisted-ingredient');
});

test('a size that is told by a nut brings no nut', () => {
  expect(read('as needed butter, the size of a walnut')).toBe('butter free');
});

test.each([
  ['8 oz flour, 4 oz lard, 1 tsp salt', 'flour: plain flour 227 g + lard 113 g + salt: table salt 6 g'],
  ['3 onions, 1 sliced, 2 diced', 'onions: onion 330 g'],
  ['2 tsp cornflour mixed with 1 tbsp cold water', 'cornflour 5 g + cold water: water 15 g'],
  ['1 cup water plus 2 fl oz', 'water 296 g'],
])('%s: several items of one line', (line, expected) => {
  expect(read(line)).toBe(expected);
});
