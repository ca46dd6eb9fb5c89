import type { MeasureName } from '../../recipe/measures/kind.ts';
import { acidLiquid, butterShare, oilShare, yolkShare } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, firstOut, ingredientPlace, isHigh, mostBringing, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'emulsion-unstable',
  title: 'An emulsion has more oil than its yolk or its vinegar can hold, or too little',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['oil share', 'oil per yolk', 'oil per acid', 'butter per yolk'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** For mayonnaise: oil as a share of the whole, and oil per egg yolk. For a vinaigrette or a dressing: oil to vinegar and sour juice, by weight. For a butter sauce: butter per yolk. A whole egg counts for the yolk in it, mustard for nothing.

**Why it matters.** An emulsion is drops of oil with just enough water between them, and yolk to coat them. Over 84 % of oil the drops touch and run together; the sauce splits. A butter sauce splits over about 110 g of butter to a yolk. A dressing of too much oil is flat, of too little sharp.

**What to do.** Use another yolk, a spoon of water or vinegar, or less oil.

**Silent** where there is no oil, no yolk or no acid to hold it against, and where a weight is not known.`,
  *find(part) {
    yield* firstOut(part, WATCHED, (name, side) => ingredientPlace(mainOf(name, side === 'high', part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) =>
    mendAmount(values, scene, (part) => mainOf(values.measure.measure, isHigh(values.verdict), part)),
  examples: {
    good: [
      'recipe Mayonnaise\npart sauce as mayonnaise\n  36 g      pasteurised egg yolk\n  20 g      lemon juice\n  3 g       fine salt\n  250 g     sunflower oil\n  do Whisk the egg yolk with the lemon juice and the salt.\n  do Whisk in the oil in a thin stream, and keep at 4 C.\n',
      'recipe Dressing\npart dressing as vinaigrette\n  40 g      red wine vinegar\n  110 g     olive oil\n  2 g       fine salt\n  do Whisk the red wine vinegar with the salt and then with the olive oil.\n',
    ],
    bad: [
      {
        text: 'recipe Mayonnaise\npart sauce as mayonnaise\n  18 g      pasteurised egg yolk\n  10 g      lemon juice\n  3 g       fine salt\n  900 g     sunflower oil\n# "sunflower oil" emulsion-unstable *: more oil than the rest can hold\n  do Whisk the egg yolk with the lemon juice and the salt.\n  do Whisk in the oil in a thin stream, and keep at 4 C.\n',
      },
      {
        text: 'recipe Dressing\npart dressing as vinaigrette\n  10 g      red wine vinegar\n  200 g     olive oil\n# "olive oil" emulsion-unstable *: oily and flat\n  2 g       fine salt\n  do Whisk the red wine vinegar with the salt and then with the olive oil.\n',
        after: {
          'Write 43 g olive oil, 157 g less':
            'recipe Dressing\npart dressing as vinaigrette\n  10 g      red wine vinegar\n  43 g      olive oil\n  2 g       fine salt\n  do Whisk the red wine vinegar with the salt and then with the olive oil.\n',
        },
      },
      'recipe Butter sauce\npart sauce as butter sauce\n  18 g      pasteurised egg yolk\n  10 g      lemon juice\n  300 g     unsalted butter, melted\n# "unsalted butter" emulsion-unstable *: it splits\n  do Whisk the egg yolk with the lemon juice over a low heat until it reads 65 C.\n  do Whisk in the butter in a thin stream.\n',
    ],
  },
});

const WATCHED = [
  ['oil share', 'high'],
  ['oil per yolk', 'high'],
  ['oil share', 'low'],
  ['oil per acid', 'high'],
  ['oil per acid', 'low'],
  ['butter per yolk', 'high'],
  ['butter per yolk', 'low'],
] as const;

/** What there is too much of, or too little. */
function mainOf(name: MeasureName, high: boolean, part: ListedPart): Ingredient | undefined {
  const share = name === 'butter per yolk' ? butterShare : name === 'oil per acid' && !high ? acidLiquid : oilShare;
  return mostBringing(part, share) ?? mostBringing(part, yolkShare);
}
