import { describe, expect, test } from 'vitest';
import type { Portion } from '../../server/src/recipe/model.ts';
import { open } from '../support/harness.ts';

const LIST = `recipe X
part base
  240 g  plain flour
  150 g  butter
part filling
  4 large  eggs
  80 g   caster sugar
  60 g   dark brown sugar
  300 ml  whole milk
  250 g  double cream
  2 tbsp  lemon juice
  120 g  mature cheddar, grated
  1 aubergine
  2 large  egg whites
`;

function portionText(portion: Portion): string {
  switch (portion.kind) {
    case 'share':
      return `${Number(portion.of.toFixed(3))}${portion.remaining ? ' of the rest' : ''}`;
    case 'amount':
      return `${portion.measured.quantity.low} ${portion.measured.quantity.unit ?? ''}`.trim();
    default:
      return portion.kind;
  }
}

/** The mentions of a sentence in the last part: `name: portion`. */
function mentionsIn(sentence: string): string[] {
  const { recipe } = open(`${LIST}  do ${sentence}\n`);
  const part = recipe.parts.at(-1);
  return (part?.steps[0]?.mentions ?? []).map((m) => {
    const names = m.ingredients.map((r) => recipe.parts[r.part]?.head.ingredients[r.ingredient]?.name);
    return `${m.part === undefined ? names.join('/') : `[${recipe.parts[m.part]?.head.name}]`}: ${m.verb ? 'verb' : m.every ? 'every' : portionText(m.portion)}`;
  });
}

describe('mentions and their portions', () => {
  test.each<[string, string[]]>([
    ['Whisk the eggs.', ['eggs: plain']],
    ['Whisk an egg.', ['eggs: plain']],
    ['Whisk 2 of the eggs.', ['eggs: 2']],
    ['Whisk two eggs with one more egg.', ['eggs: 2', 'eggs: some']],
    ['Warm half the milk.', ['whole milk: 0.5']],
    ['Warm half of the milk.', ['whole milk: 0.5']],
    ['Warm a third of the cold milk.', ['whole milk: 0.333']],
    ['Warm two thirds of the milk.', ['whole milk: 0.667']],
    ['Warm three quarters of the whole milk.', ['whole milk: 0.75']],
    ['Warm 2/3 of the milk.', ['whole milk: 0.667']],
    ['Warm 50 % of the milk.', ['whole milk: 0.5']],
    ['Warm 60 ml of the milk.', ['whole milk: 60 ml']],
    ['Warm 60 ml milk.', ['whole milk: 60 ml']],
    ['Add the rest of the milk.', ['whole milk: rest']],
    ['Add the remaining milk.', ['whole milk: rest']],
    ['Add half the remaining milk.', ['whole milk: 0.5 of the rest']],
    ['Add the other half of the milk.', ['whole milk: rest']],
    ['Add all the milk.', ['whole milk: all']],
    ['Add a little of the milk.', ['whole milk: some']],
    ['Add most of the milk.', ['whole milk: some']],
    ['Quarter the aubergine.', ['aubergine: plain']],
    ['Peel and quarter the aubergine.', ['aubergine: plain']],
    ['Add a quarter of the milk.', ['whole milk: 0.25']],
    ['Add half the milk and cream.', ['whole milk: 0.5', 'double cream: 0.5']],
    ['Add half the milk and the cream.', ['whole milk: 0.5', 'double cream: plain']],
    ['Add the dark brown sugar.', ['dark brown sugar: plain']],
    ['Add the brown sugar.', ['dark brown sugar: plain']],
    ['Add half the sugar.', ['caster sugar/dark brown sugar: 0.5']],
    ['Add the sugars.', ['caster sugar/dark brown sugar: every']],
    ['Add both sugars.', ['caster sugar/dark brown sugar: every']],
    ['Stir in the cheddar.', ['mature cheddar: plain']],
    ['Salt the eggplant.', ['aubergine: plain']],
    ['Butter the pan.', ['butter: verb']],
    ['Butter and flour the pan.', ['butter: verb', 'plain flour: verb']],
    ['Stir in the milk, butter and eggs.', ['whole milk: plain', 'butter: plain', 'eggs: plain']],
    ['Rub the butter into the flour.', ['butter: plain', 'plain flour: plain']],
    ['Pour into the base.', ['[base]: plain']],
    ['Stir the filling.', []],
    ['Add [whole milk].', ['whole milk: plain']],
    ['Add half the [milk].', ['whole milk: 0.5']],
    ['Serve with \\butter.', []],
    ['Squeeze in the lemon juice.', ['lemon juice: plain']],
    ['Beat until stiff.', []],
    ['Whisk the whites.', ['egg whites: plain']],
    ['Fold in the egg whites.', ['egg whites: plain']],
  ])('%s', (sentence, want) => {
    expect(mentionsIn(sentence)).toEqual(want);
  });
});

test('a small word of a name mentions nothing', () => {
  const list = 'recipe X\n  6 large   egg whites\n  1 tsp     cream of tartar\n  200 g     caster sugar\n';
  const step = '  do Whisk the egg whites with the cream of tartar, then the rest of the sugar.\n';
  const mentions = open(`${list}${step}`).recipe.parts[0]?.steps[0]?.mentions ?? [];
  expect(mentions.map((m) => step.slice(m.start, m.end))).toEqual(['egg whites', 'cream of tartar', 'sugar']);
});

/** What a step says of the list above it, mention by mention. */
function namesSaid(list: string, step: string): readonly string[] {
  const { recipe } = open(`${list}  do ${step}\n`);
  return (recipe.parts[0]?.steps[0]?.mentions ?? []).map((m) =>
    m.ingredients.map((r) => recipe.parts[0]?.head.ingredients[r.ingredient]?.name).join('/'),
  );
}

test('what is not in the food book is called by any noun of its name', () => {
  const list =
    'recipe X\n  8         chicken thighs and drumsticks\n  500 g     corn-fed zebra pieces\n  1 l       chicken stock\n';
  const namesIn = (step: string) => namesSaid(list, step);
  expect(namesIn('Roast the chicken.')).toEqual(['chicken thighs and drumsticks']);
  expect(namesIn('Turn the thighs.')).toEqual(['chicken thighs and drumsticks']);
  expect(namesIn('Brown the zebra, add the stock.')).toEqual(['corn-fed zebra pieces', 'chicken stock']);
});

test('what is made of a food is not it', () => {
  const list =
    'recipe X\n  600 g     chicken thighs\n  1 l       chicken stock\n  500 g     beef shin\n  300 ml    beef stock\n';
  const namesIn = (step: string) => namesSaid(list, step);
  expect(namesIn('Simmer the chicken in the chicken stock.')).toEqual(['chicken thighs', 'chicken stock']);
  expect(namesIn('Cover the beef with the beef stock.')).toEqual(['beef shin', 'beef stock']);
});

test('one listed alone and several of the same name are told apart by number', () => {
  const list =
    'recipe X\n  4 medium  eggs\n  1         egg, beaten, to glaze\n  100 g     white sugar\n  50 g      brown sugar\n';
  const namesIn = (step: string) => namesSaid(list, step);
  expect(namesIn('Mix in the 4 eggs.')).toEqual(['eggs']);
  expect(namesIn('Brush with the beaten egg.')).toEqual(['egg']);
  expect(namesIn('Beat the eggs.')).toEqual(['eggs/egg']);
  expect(namesIn('Stir in the sugar.')).toEqual(['white sugar/brown sugar']);
});

test('a part is also called by what its kind is', () => {
  const head =
    'recipe X\npart base as shortcrust\n  200 g     plain flour\n  100 g     butter\npart filling as quiche\n  4 large   eggs\n  400 ml    double cream\npart assembly\n';
  const partsIn = (rest: string) => {
    const { recipe } = open(`${head}${rest}`);
    return (recipe.parts.at(-1)?.steps[0]?.mentions ?? []).map((m) => m.part ?? 'ingredient');
  };
  expect(partsIn('  do Pour the custard into the pastry.\n')).toEqual([1, 0]);
  // What is on the list is meant first.
  expect(partsIn('  200 g     custard powder\n  do Strew with the custard powder.\n')).toEqual(['ingredient']);
  expect(partsIn('  1 l       bought custard\n  do Pour over the custard.\n')).toEqual(['ingredient']);
});

test('a cook says what sort of thing it is', () => {
  const list =
    'recipe X\n  700 g     pork shoulder, minced\n  300 g     pork belly, minced\n  80 g      mature cheddar\n  60 g      fresh breadcrumbs\n  12 sheets  lasagne\n  2         onions\n  1         carrot\n  1 l       vegetable stock\n';
  const namesIn = (step: string) => namesSaid(list, step);
  expect(namesIn('Mix the pork with the crumbs and the cheese.')).toEqual([
    'pork shoulder/pork belly',
    'fresh breadcrumbs',
    'mature cheddar',
  ]);
  expect(namesIn('Layer the pasta.')).toEqual(['lasagne']);
  expect(namesIn('Soften the vegetables in the stock.')).toEqual(['onions/carrot', 'vegetable stock']);
});

test('a figure behind a name is not said again', () => {
  const text = 'recipe X\n  200 g     dark chocolate 70 %\n  250 g     cream 36 %\n';
  const { recipe } = open(`${text}  do Melt the chocolate with the cream.\n`);
  const mentions = recipe.parts[0]?.steps[0]?.mentions ?? [];
  expect(mentions.map((m) => m.ingredients.map((r) => r.ingredient))).toEqual([[0], [1]]);
});

test('a verb is no part that is called alike', () => {
  const head = 'recipe X\npart kale bake\n  200 g     kale\npart dough\n  200 g     plain flour\n';
  const partsIn = (step: string) => {
    const { recipe } = open(`${head}  do ${step}\n`);
    return (recipe.parts.at(-1)?.steps[0]?.mentions ?? []).map((m) => m.part);
  };
  expect(partsIn('Bake at 160 C for 20 min.')).toEqual([]);
  expect(partsIn('Cover, then bake for 20 min.')).toEqual([]);
  expect(partsIn('Set beside the bake.')).toEqual([0]);
  expect(partsIn('Serve with the kale bake.')).toEqual([0]);
});

describe('a word that is something else as a rule', () => {
  const mentioned = (own: string): string | undefined => {
    const { recipe } = open(`recipe X
part base
  100 ml    semi-skimmed milk
  do Warm the milk.
part cream
${own}
  do Pour on half the milk.
`);
    const ref = recipe.parts[1]?.steps[0]?.mentions[0]?.ingredients;
    return ref?.map((r) => `${r.part} ${recipe.parts[r.part]?.head.ingredients[r.ingredient]?.name}`).join(', ');
  };

  test.each([
    ['is this where its part lists no other', '  150 ml    evaporated milk', '1 evaporated milk'],
    ['is the plain one beside it', '  150 ml    evaporated milk\n  150 ml    whole milk', '1 whole milk'],
    ['in whichever order', '  150 ml    whole milk\n  150 ml    evaporated milk', '1 whole milk'],
    ['is either of two', '  150 ml    coconut milk\n  150 ml    evaporated milk', '1 coconut milk, 1 evaporated milk'],
    ['is that of an earlier part where there is none', '  150 ml    water', '0 semi-skimmed milk'],
  ])('%s', (_, own, want) => expect(mentioned(own)).toBe(want));
});

describe('a word before a name that several have, told by how their lines say they are', () => {
  const LINES =
    '  100 g  cold unsalted butter, cubed\n  28 g  unsalted butter, melted\n  90 g  toasted almonds\n  60 g  almonds, ground\n';
  test.each([
    ['Cut in the cold butter.', 'cold unsalted butter'],
    ['Brush with the melted butter.', 'unsalted butter'],
    ['Cut in the cubed butter.', 'cold unsalted butter'],
    ['Brush with the butter.', 'cold unsalted butter/unsalted butter'],
    ['Brush with the browned butter.', 'cold unsalted butter/unsalted butter'],
    ['Fold in the ground almond.', 'almonds'],
  ])('%s', (sentence, names) => {
    const { recipe } = open(`recipe X\n${LINES}  do ${sentence}\n`);
    const [part] = recipe.parts;
    const [mention] = part?.steps[0]?.mentions ?? [];
    expect(mention?.ingredients.map((r) => part?.head.ingredients[r.ingredient]?.name).join('/')).toBe(names);
  });
});

test.each([
  ['cream 35 % fat', 'pastry cream', 'Heat the cream.', 'cream 35 % fat'],
  ['milk 3.5 % fat', 'almond milk', 'Boil the milk.', 'milk 3.5 % fat'],
  ['ground beef 20 % fat', 'filling', 'Fry the beef.', 'ground beef 20 % fat'],
  ['dark chocolate 70 %', 'pastry cream', 'Fold in the cream.', '[pastry cream]'],
])('%s below a part %s: %s is %s', (food, above, step, named) => {
  const { recipe } = open(
    `recipe X\npart ${above}\n  1 l water\n  do Boil the water.\npart top\n  200 g ${food}\n  do ${step}\n`,
  );
  const [mention] = recipe.parts.at(-1)?.steps[0]?.mentions ?? [];
  const of = mention?.ingredients.map((r) => recipe.parts[r.part]?.head.ingredients[r.ingredient]?.name).join();
  expect(mention?.part === undefined ? of : `[${recipe.parts[mention.part]?.head.name}]`).toBe(named);
});
