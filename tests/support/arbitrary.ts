/**
 * Generators: hostile text, and recipes that are nearly or wholly in the notation.
 */
import fc from 'fast-check';

const FOODS = [
  'plain flour',
  'butter, cold and cubed',
  'whole milk',
  'eggs',
  'caster sugar',
  'fine salt',
  'crème fraîche',
  'garlic (crushed)',
  'plums, stoned from 560 g',
  '00 flour',
];
const amount = fc.oneof(
  fc
    .tuple(
      fc.integer({ min: 0, max: 2000 }),
      fc.constantFrom('g', 'grams', 'ml', ' g', 'kg', ' cups', ' tbsp', ' fl. oz', ' tsp', '%', ' °C'),
    )
    .map(([n, u]) => `${n}${u}`),
  fc.constantFrom(
    '1/2 cup',
    '1 1/2 cups',
    '½ tsp',
    '1½ cup',
    '40-45 g',
    '40 to 45 grams',
    'about 3 tbsp',
    '2 large',
    '3 cloves',
    '1 can of 400 g',
    'to taste',
    'as  needed',
    '2 cups = 476 g',
    '1,5 kg',
    '1/0 g',
  ),
);
const gap = fc.constantFrom(' ', '  ', '\t', '   ', '\u00a0');
const ingredient = fc
  .tuple(fc.constantFrom('', '  ', '\t', 'optional '), amount, gap, fc.constantFrom(...FOODS))
  .map((parts) => parts.join(''));
/** Lines as cooks print them: sums, sizes, brackets, points, words, further items. */
const printed = fc.constantFrom(
  '1 lb. 4  oz. beef',
  '1lb 2oz flour',
  '1 cup +  2 Tbsp. sugar',
  '1 cup sugar  plus 2 T',
  '1/2 cup 2-2/3 tbsp sugar',
  '1 1/4 cups  (156 g) flour',
  '225g/8oz sugar',
  '1 C. flour (120  grams)',
  '2 (8 oz) steaks',
  '1 14-oz.  can tomatoes',
  '400g tin  of tomatoes',
  '2 x 400g tins chickpeas',
  '1 can (14 ounces) tomatoes',
  '3 hams, 15 lbs.  each',
  '1 tsp to 1 tbsp. oil',
  'a few  drops of vanilla',
  'half a cup of sugar',
  'pinch of  salt',
  '2 dozen eggs',
  '2 eggs plus 1  yolk',
  '1 tsp each of ginger,  cloves and mace',
  'juice of 1/2 lemon (about 2  tbsp)',
  '1 heaping  T. flour',
  '3 tbsp flour, plus  more for dusting',
  'oil for  frying',
  'salt and  pepper',
  'Butter,  4 oz',
  '4 corn, #2  cans',
  '1.5 % of the beef  salt',
);
const step = fc
  .tuple(
    fc.constantFrom('do ', '  do ', '  do  '),
    fc.constantFrom(
      'Whisk half the milk into the flour',
      'Bake at 180 C fan for 35–40 min',
      'Rub the butter in',
      'Chill at 4 °C overnight',
      'Roll 3 mm thick',
      'Add 2 of the eggs',
      'Until the centre reads 74 C',
      'Pour [whole milk]',
      'Use \\butter',
    ),
    fc.constantFrom('.', '', ', then stand 10 min.', ' # note'),
  )
  .map((parts) => parts.join(''));
const other = fc.constantFrom(
  'recipe Plum slice',
  'recipe  Tart as sweet paste',
  '  yield  12  squares',
  '  pan round 24 x 3 cm',
  '  oven 160 C   fan',
  '  tags a,b , c',
  'part base as shortcrust',
  'part  filling',
  'part base from pastry.quern : paste',
  'trial 2026-09-14 by Ines',
  '  took 52 minutes to bake',
  '  reached 81C in the centre',
  '  verdict keep',
  '  used 90g sugar in custard',
  'food quay flour',
  '  like plain flour',
  '  water 12%',
  '  1 cup = 120g',
  '  price 1.40 per 1kg',
  '  allow dough-too-wet because  it is',
  '# a comment',
  '   # another',
  '',
  '  ',
  '<<<<<<< HEAD',
  'swap butter for 120 g margarine',
  '- 20 g flour',
  'Mix it all.',
  'note   two   spaces  # and a comment',
);
const wild = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.string({
    unit: fc.constantFrom(
      '½',
      '\ud800',
      '\udfff',
      '\u0000',
      '#',
      '\\',
      '[',
      '(',
      '1',
      '/',
      ',',
      '-',
      ' ',
      '\t',
      'g',
      'é',
      '\u202e',
      'א',
    ),
    maxLength: 20,
  }),
);

const eol = fc.constantFrom('\n', '\n', '\n', '\r\n', '\r');

/** Lines of the notation, some broken, with any line ends. */
export const quernText = fc
  .array(
    fc.tuple(
      fc.oneof(
        { weight: 4, arbitrary: ingredient },
        { weight: 2, arbitrary: printed.map((line) => `  ${line}`) },
        { weight: 3, arbitrary: step },
        { weight: 4, arbitrary: other },
        { weight: 1, arbitrary: wild },
      ),
      eol,
    ),
    { maxLength: 25 },
  )
  .map((lines) => lines.map(([text, end]) => text + end).join(''));

export const anyText = fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), quernText);

/** Lines of a list as somebody might break them: most are not understood. */
export const brokenLine = fc.oneof(
  fc.constantFrom(
    '3 T butter',
    '2 blobs olive oil',
    '500 grm bread flour',
    'Butter, 4 oz',
    'two eggs',
    'pinch of salt',
    'salt',
    '- 100 g butter',
    '250 g flour (sifted',
    '1/0 cup milk',
    '1,500 g flour',
    '1,5 kg flour',
    '1 cup = butter',
    '200 g butter =',
    '100 g',
    'optional butter',
    '1,5 kg flour (sifted',
    'Optional 20 g butter',
    'the strained juice of 2',
    '<<<<<<< HEAD',
    'Serves 4',
    'Serve warm with cream.',
    'yeild 12 slices',
  ),
  fc
    .tuple(amount, gap, fc.constantFrom(...FOODS), fc.constantFrom(' =', ' (', ' 1,5', ' ]', ' = 2'))
    .map((p) => p.join('')),
);
