/**
 * Formulas of lists with a food that could be several, or that nobody knows: what is certainly outside is said, and nothing else. The
 * shares are those of the food book (USDA SR26, by NDB number in `server/data/foods`); the bands are those of the kinds.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { builtInBook } from '../../server/src/food/book.ts';
import type { Brings, Food, FoodMatch } from '../../server/src/food/food.ts';
import type { Range } from '../../server/src/measure/quantity.ts';
import { contentsOf } from '../../server/src/recipe/measures/contents.ts';
import { MEASURES } from '../../server/src/recipe/measures/definitions.ts';
import type { MeasureName } from '../../server/src/recipe/measures/kind.ts';
import { workOut } from '../../server/src/recipe/measures/measures.ts';
import { flourShare } from '../../server/src/recipe/measures/shares.ts';
import type { MeasureValue } from '../../server/src/recipe/measures/worked-ratio.ts';
import type { Ingredient } from '../../server/src/recipe/model.ts';
import { RECIPES } from '../outside/faults/corpus.ts';
import { EXAMPLES, open } from '../support/harness.ts';
import { measuredRange } from '../support/measured.ts';

const formulas = (text: string) => open(text).findings.open.filter((f) => f.check.family === 'formula');

describe('a measure with a food that is not told', () => {
  // What is written, the measure, its least and its most.
  test.each<[string, string, MeasureName, number, number]>([
    // Single cream has 19.3 % of fat (NDB 01050), double cream as heavy whipping cream and more.
    ['cream in an ice', 'ice cream\n  500 g  whole milk\n  500 g  cream\n', 'fat share', 0.1, 0.27],
    ['butter, the first of a choice', 'shortcrust\n  200 g  plain flour\n  100 g  butter or xylo\n', 'fat', 0.4, 0.41],
    [
      'nothing known of 3 %',
      'lean bread\n  500 g  bread flour\n  330 g  water\n  25 g  xylo\n',
      'hydration',
      0.628,
      0.71,
    ],
    ['nor hinted at', 'lean bread\n  500 g  bread flour\n  5 g  instant yeast\n  50 g  xylo\n', 'yeast', 0.009, 0.0101],
    [
      'fish by its noun',
      'quiche\n  3 large  eggs\n  300 ml  single cream\n  300 g  xylo fish\n',
      'egg protein',
      0.037,
      0.045,
    ],
    ['salt where nothing hints', 'soup\n  900 g  water\n  100 g  xylo\n', 'salt share', 0, 0.0031],
    ['salt where a word hints', 'soup\n  900 g  water\n  100 g  xylo soy\n', 'salt share', 0, 0.1001],
    [
      'two under one amount',
      'pancake batter\n  200 g  plain flour\n  300 g  milk and water\n',
      'cake hydration',
      1.3,
      1.51,
    ],
    ['one of three yeasts', 'lean bread\n  500 g  bread flour\n  10 g  yeast\n', 'yeast', 0.0066, 0.0201],
    ['flour by its noun', 'shortcrust\n  200 g  xylo flour\n  100 g  lard\n', 'fat', 0.5, 0.5],
    [
      'a spoon of what nobody has weighed',
      'lean bread\n  500 g  bread flour\n  300 g  water\n  1 tsp  xylo\n',
      'salt',
      0,
      0.001,
    ],
  ])('%s', (_name, list, name, low, high) => {
    const range = measuredRange(`recipe X as ${list}`, name);
    expect(range.low).toBeGreaterThanOrEqual(low - 0.001);
    expect(range.high).toBeLessThanOrEqual(high + 0.001);
    expect(range.high).toBeGreaterThanOrEqual(range.low);
  });

  test('is as wide as what it could be', () => {
    const { low, high } = measuredRange('recipe X as ice cream\n  500 g  whole milk\n  500 g  cream\n', 'fat share');
    const of = (cream: string) =>
      measuredRange(`recipe X as ice cream\n  500 g  whole milk\n  500 g  ${cream}\n`, 'fat share');
    expect(low).toBeCloseTo(of('single cream').low, 6);
    expect(high).toBeCloseTo(of('double cream').high, 6);
  });
});

describe('findings', () => {
  const GANACHE = (cream: string) =>
    `recipe Truffles\npart centre as ganache\n  100 g     dark chocolate, chopped\n  400 g     ${cream}\n  do Boil the cream, pour on the dark chocolate and stir smooth.\n`;

  test('where every cream is cream, the finding and its fix are as with a known one', () => {
    const [vague, ...more] = formulas(GANACHE('cream'));
    const [known] = formulas(GANACHE('double cream'));
    expect(more).toEqual([]);
    expect(vague?.said.message).toBe(known?.said.message);
    expect(vague?.said.message).not.toContain('whatever');
    expect(fixesOf(vague as never, open(GANACHE('cream'))).map((f) => f.title)).toEqual(
      fixesOf(known as never, open(GANACHE('double cream'))).map((f) => f.title),
    );
  });

  const LOAF = (water: number, more: string) =>
    `recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  ${water} g     water\n  10 g      fine salt\n  5 g       instant yeast\n${more}  do Knead the flour, water, salt and yeast for 10 min.\n`;

  test.each<[string, number, string, string[]]>([
    ['3 % unknown cannot wet a dough of 40 %', 200, '  15 g      xylo\n', ['dough-too-dry']],
    ['a third unknown may', 200, '  170 g     xylo\n', []],
    ['nor dry one of 120 %', 600, '  15 g      xylo\n', ['dough-too-wet']],
    ['a sound loaf stays quiet', 330, '  15 g      xylo\n', []],
    ['whatever it is', 330, '  170 g     xylo\n', []],
  ])('%s', (_name, water, more, codes) => {
    expect(formulas(LOAF(water, more)).map((f) => f.code)).toEqual(codes);
  });

  test('say what they allow for, and offer no weight that is a guess', () => {
    const text = LOAF(150, '  50 g      xylo\n');
    const [finding] = formulas(text);
    expect(finding?.code).toBe('dough-too-dry');
    expect(finding?.said.message).toMatch(/is \d+ to \d+ %, whatever `xylo` brings; /);
    expect(fixesOf(finding as never, open(text))).toEqual([]);
  });

  test('tell of an ambiguous one which word it was', () => {
    const [finding] = formulas(
      'recipe Biscuits\npart dough as cookie\n  200 g     plain flour\n  100 g     butter\n  600 g     syrup\n  do Beat the butter and syrup into the flour.\n',
    );
    expect(finding?.said.message).toContain(', whatever `syrup` it is; ');
  });

  test.each([
    ['a jam with a setting powder of its own', 'jam\n  1 kg  plums\n  200 g  granulated sugar\n  15 g  xylo pectin\n'],
    ['a custard that something unknown may set', 'baked custard\n  1 large  egg\n  600 ml  whole milk\n  40 g  xylo\n'],
    ['a sauce that something unknown may bind', 'roux sauce\n  5 g  plain flour\n  600 g  whole milk\n  6 g  xylo\n'],
    [
      'a cake without egg',
      'creamed cake\n  200 g  plain flour\n  120 g  caster sugar\n  100 g  butter\n  150 g  whole milk\n  8 g  baking powder\n  60 g  xylo\n',
    ],
    [
      'apple butter, which is no fat',
      'shortcrust\n  200 g  plain flour\n  90 g  butter\n  40 g  water\n  200 g  apple xylo butter\n',
    ],
  ])('are not made of %s', (_name, list) => {
    expect(formulas(`recipe X as ${list}  do Mix everything.\n`).map((f) => f.said.message)).toEqual([]);
  });

  test('a recipe that is sound by its foods is sound by vaguer words for them', () => {
    const sound = [...EXAMPLES, ...RECIPES.map(({ file, text }) => [file, text] as const)].flatMap(([file, text]) => {
      const { recipe, findings } = open(text);
      const known = new Set(findings.open.map((f) => f.code));
      return recipe.parts.flatMap((part) =>
        part.head.ingredients.flatMap((i) => {
          const names = i.food === undefined || i.free ? [] : vaguely(i.food);
          const at = (recipe.partsAt[part.index] ?? 0) + i.line;
          return names.map((name) => ({ file, text, known, at, i, name }));
        }),
      );
    });
    expect(sound.length).toBeGreaterThan(500);
    fc.assert(
      fc.property(fc.constantFrom(...sound), ({ file, text, known, at, i, name }) => {
        const lines = text.split('\n');
        const line = lines[at] ?? '';
        lines[at] = line.slice(0, i.nameNode.start) + name + line.slice(i.nameNode.end);
        const more = formulas(lines.join('\n')).filter((f) => !known.has(f.code));
        expect(more.map((f) => `${file}: ${i.name} as ${name}: ${f.said.message}`)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

const NOUNS: Partial<Record<Food['class'], string>> = {
  flour: 'flour',
  milk: 'milk',
  cream: 'cream',
  stock: 'stock',
  fish: 'fish',
  sugar: 'sugar',
  oil: 'oil',
  cheese: 'cheese',
  fat: 'butter',
  starch: 'starch',
  yeast: 'yeast',
  leavening: 'leavening',
  gelling: 'gelatine',
  salt: 'salt',
};
const SMALL: ReadonlySet<Food['class']> = new Set<Food['class']>([
  'yeast',
  'leavening',
  'gelling',
  'salt',
  'curing salt',
]);

/** Words that tell less of it: its noun behind one that nobody knows, and, unless a little of it is much, such a word alone. */
function vaguely({ class: kind, roles }: Food): readonly string[] {
  const noun = NOUNS[kind];
  const alone = SMALL.has(kind) || roles.includes('leavening') ? [] : ['xyloquartz'];
  return noun === undefined ? alone : [...alone, `xylo ${noun}`];
}

describe('the range with a food that is not told holds the range with any food in its place', () => {
  const FOODS = builtInBook().all();
  const NAMES = Object.keys(MEASURES) as MeasureName[];
  const PARTS = RECIPES.flatMap(({ snapshot }) => snapshot.recipe.parts.map(contentsOf)).filter((c) => c.length > 2);
  const EVERYTHING: readonly Brings[] = ['salt', 'yeast', 'leavening', 'gelling'];

  const holds = (wide: MeasureValue, narrow: MeasureValue): boolean =>
    !wide.known || !narrow.known || within(narrow.value, wide.value);

  const place = (contents: readonly Ingredient[], at: number, match: FoodMatch): Ingredient[] =>
    contents.map((i, n) => {
      if (n !== at) return i;
      const { food: _, takes: __, ...rest } = i;
      return { ...rest, match, ...(match.kind === 'food' && { food: match.food }) };
    });

  const check = (contents: readonly Ingredient[], at: number, vague: FoodMatch, food: Food): void => {
    const wide = place(contents, at, vague);
    const narrow = place(contents, at, { kind: 'food', food });
    const broken = NAMES.filter((name) => !holds(workOut(name, wide), workOut(name, narrow)));
    expect(broken, food.name).toEqual([]);
  };

  const cases = fc
    .constantFrom(...PARTS)
    .chain((contents) => fc.record({ contents: fc.constant(contents), at: fc.nat(contents.length - 1) }));

  test('several foods', () => {
    fc.assert(
      fc.property(
        cases,
        fc.uniqueArray(fc.constantFrom(...FOODS), { minLength: 2, maxLength: 5 }),
        ({ contents, at }, foods) => {
          for (const food of foods) check(contents, at, { kind: 'ambiguous', foods }, food);
        },
      ),
    );
  });

  test('all of a class', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...FOODS), ({ contents, at }, food) => {
        const range = FOODS.filter((one) => one.class === food.class);
        // By nouns of what is made of anything nothing is told but the hints.
        check(contents, at, { kind: 'unknown', near: [], class: food.class, range, brings: EVERYTHING }, food);
      }),
    );
  });

  test('no food counts for more flour than it weighs, as nothing that is not known does', () => {
    expect(FOODS.filter((food) => (flourShare(food) ?? 0) > 1).map(({ name }) => name)).toEqual([]);
  });

  test('nothing at all', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...FOODS.filter((food) => food.class !== 'egg')), ({ contents, at }, food) => {
        check(contents, at, { kind: 'unknown', near: [], brings: EVERYTHING }, food);
      }),
    );
  });
});

const within = (inner: Range, outer: Range): boolean =>
  inner.low >= outer.low - 1e-9 * Math.abs(outer.low) - 1e-12 &&
  inner.high <= outer.high + 1e-9 * Math.abs(outer.high) + 1e-12;
