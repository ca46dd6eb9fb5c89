/** Recipes that are wholly in the notation, of many sizes, foods and manners of writing, for properties of edits. */
import fc from 'fast-check';

const pick = <T>(...values: readonly T[]) => fc.constantFrom(...values);

const grams = fc.oneof(
  fc.integer({ min: 5, max: 900 }).map((n) => `${n} g`),
  fc.integer({ min: 10, max: 99 }).map((n) => `${n / 10} g`),
  pick('1 kg', '1.25 kg', '40-45 g', 'about 120 g', '8 oz', '1 1/2 lb', '250 ml', '1 l', '2.5 dl'),
);
const spoons = pick(
  '1/2 tsp',
  '1 tsp',
  '1 1/2 tsp',
  '2 tbsp',
  '1 tablespoon',
  '¼ cup',
  '1½ cups',
  '3/4 cup',
  '2 1/3 cup',
  '0.5 tsp',
);
const rows = [
  fc.tuple(
    fc.oneof(grams, spoons),
    pick('plain flour', 'caster sugar', 'whole milk', 'double cream', 'unsalted butter', 'water'),
  ),
  fc.tuple(spoons, pick('fine salt', 'baking powder', 'ground cinnamon', 'honey')),
  fc.tuple(pick('1 large', '2 large', '3 large', '5 medium'), pick('eggs', 'egg yolks')),
  fc.tuple(pick('1', '2', '3', '6'), pick('onions', 'lemons')),
  fc.tuple(pick('2 cloves', '1 clove', '5 cloves'), pick('garlic')),
  fc.tuple(pick('2 cups = 476 g', '1 cup = 120 g'), pick('double cream', 'plain flour')),
  fc.tuple(pick('to taste', 'as needed'), pick('nutmeg', 'olive oil')),
  fc.tuple(
    pick('400 g', '250 g'),
    pick('leeks, sliced from 460 g', 'plums, stoned from 300 g', 'carrots from 560 g, peeled'),
  ),
];
const tail = pick('', '', '', '   # weigh it', ', cold', ' (the good one)', ', sifted   # twice');

const line = fc.tuple(fc.oneof(...rows), tail, pick('', '', 'optional ')).map(([[amount, name], end, optional]) => ({
  text: `  ${optional}${amount}  ${name}${/[,(]|from/.test(name) && /^[,(]/.test(end) ? '' : end}`,
  amount,
  noun: name.replace(/[,(].*$/, '').replace(/ from .*$/, ''),
}));

const stepOf = (nouns: readonly string[]) =>
  nouns.length === 0
    ? fc.constant('  do Heat the oven to 180 C.')
    : fc
        .tuple(
          pick(...nouns),
          pick(
            (n: string) => `  do Whisk half the ${n}, then the rest of the ${n}.   # slowly`,
            (n: string) => `  do Stir in the ${n} and chill at 4 C for 45 min.`,
            (n: string) => `  do Bake the ${n} at 180 C fan for 35-40 min, until the centre reads 74 C.`,
            () => '  do Divide in two and shape into balls of 60 g.',
            () => '  do Divide into 12 pieces.',
            () => '# a line of its own',
            () => '',
          ),
        )
        .map(([n, make]) => make(n));

const part = pick('part base as shortcrust', 'part dough', 'part filling as quiche').chain((head) =>
  fc
    .uniqueArray(line, { minLength: 1, maxLength: 6, selector: (l) => l.noun })
    .chain((lines) =>
      fc
        .array(stepOf(lines.map((l) => l.noun)), { maxLength: 4 })
        .map((steps) => [head, ...lines.map((l) => l.text), '', ...steps].join('\n')),
    ),
);

/** The text of a recipe with one to three parts. */
export const recipeText = fc
  .tuple(
    pick('  yield   12 squares', '  yield   900 g', '  yield   2 loaves', '  yield   6'),
    pick('  pan     round 24 x 3 cm', '  pan     6 x round 8 x 5 cm', '  tags    lunch'),
    fc.uniqueArray(part, { minLength: 1, maxLength: 3, selector: (p) => p.split('\n')[0] }),
    pick('\n', '\r\n'),
  )
  .map(([yields, pan, parts, eol]) =>
    `# The first line\nrecipe Generated\n${yields}\n${pan}\n\n${parts.join('\n\n')}\n`.replaceAll('\n', eol),
  );
