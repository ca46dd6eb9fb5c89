import portionsText from '../../../data/portions.tsv';
import { gramsText, trimmed } from '../../measure/number-text.ts';
import { once } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { stepTimes } from '../../recipe/journey/durations.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { allListed, gramsOfAll, namedBy } from './foods-named.ts';
import { yieldOf } from './pieces-made.ts';

interface Row {
  readonly of: readonly string[];
  readonly when: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

interface Values {
  readonly name: string;
  readonly each: Range;
  readonly eaters: Range;
  readonly row: Row;
}

const ROWS = once((): readonly Row[] =>
  rowsIn(portionsText).map(([of, when = '', low, high, source = '']) => ({
    of: wordsIn(of),
    when,
    low: Number(low),
    high: high === '' ? Number.POSITIVE_INFINITY : Number(high),
    source,
  })),
);

/** Cooked for so many minutes it is a stew, a roast or a bake. */
const LONG_MIN = 40;
/** More of it that flows is a soup, of which meat and pasta are no main thing. */
const SOUP = 0.45;

export default defineCheck<Values>({
  code: 'portion-implausible',
  title: 'Far too little of the main food for so many, or far too much',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'from memory', title: '21 CFR 101.12(b): amounts customarily eaten at once' },
  explain: `**What it computes.** The raw weight of meat, fish, dry pasta or dry grain for each of those whom the recipe serves. Too much of it is told wherever it stands; too little only of the food that the title names first, and not of soups.

**Why it matters.** The number of people or the weight is a slip, and somebody goes hungry, or a pot runs over.

**What to do.** Mend the number or the weight.

**Silent** where the yield counts no people or portions, where a weight is not known, for pieces of a spread or a starter that are small on purpose within wide bounds (meat 25 g, pasta 27 g, grain 9 g), and for what was cooked before.`,
  find: ({ recipe }) => (recipe.inherits ? NONE : found(recipe)),
  say: ({ name, each, eaters, row }) => {
    const isLess = each.high < row.low;
    const edge = isLess ? `less than ${gramsText(row.low)}` : `more than ${gramsText(row.high)}`;
    return {
      message: `${gramsText((each.low + each.high) / 2)} g of ${name} for each of ${trimmed(eaters.low, 1)}: ${edge} g raw is hardly ever meant. Mend the amount, or the number of those who eat.`,
      value: (each.low + each.high) / 2,
      unit: 'g',
      band: [row.low, row.high],
      source: row.source,
    };
  },
  examples: {
    good: [
      'recipe Spaghetti with butter\n  serves  4\n  400 g     spaghetti\n  80 g      butter\n  do Boil the spaghetti for 9 min, drain, and toss with the butter.\n',
      'recipe Boiled rice\n  serves  4\n  300 g     long grain rice\n  450 ml    water\n  do Boil the rice in the water for 12 min.\n',
    ],
    bad: [
      'recipe Spaghetti with butter\n  serves  4\n  2 kg      spaghetti\n# "spaghetti" portion-implausible: 500 g of spaghetti for each of 4\n  80 g      butter\n  do Boil the spaghetti for 9 min, drain, and toss with the butter.\n',
      'recipe Boiled rice\n  serves  4\n  30 g      long grain rice\n# "long grain rice" portion-implausible: less than 9 g\n  45 ml     water\n  do Boil the rice in the water for 12 min.\n',
    ],
  },
});

const NONE: readonly never[] = [];

const found = onceFor((recipe: Recipe): readonly Found<Values>[] => {
  const eaters = yieldOf(recipe);
  if (eaters === undefined || eaters.serves !== true || eaters.low <= 0) return NONE;
  const all = allListed(recipe);
  const main = mainOf(recipe, all);
  for (const row of ROWS()) {
    const isOf = (each: Ingredient): boolean => row.of.includes(foodOf(each)?.class ?? '') && !isIn(each, 'organ');
    const those = all.filter((each) => isOf(each) && !each.optional);
    const [first] = those;
    const grams = gramsOfAll(those);
    if (first === undefined || grams === undefined) continue;
    const each = { low: grams.low / eaters.high, high: grams.high / eaters.low };
    const isNamed = main !== undefined && isOf(main) && (row.when !== 'long' || isLong(recipe));
    const isLess = isNamed && each.high < row.low && (row.of.includes('grain') || !isSoup(all));
    if (!isLess && each.low <= row.high) continue;
    const of = isLess && main !== undefined ? main : first;
    const part = recipe.parts.findIndex(({ head }) => head.ingredients.includes(of));
    const { start, end } = of.nameNode;
    return [{ at: { part, line: of.line, start, end }, values: { name: of.name, each, eaters, row } }];
  }
  return NONE;
});

/** What the first word of the title names that names anything listed. */
function mainOf({ name }: Recipe, all: readonly Ingredient[]): Ingredient | undefined {
  for (const word of wordsOf(name)) {
    const [first] = namedBy([word], all);
    if (first !== undefined) return first;
  }
  return undefined;
}

const isLong = (recipe: Recipe): boolean => stepTimes(recipe).cooking.high >= LONG_MIN;

function isSoup(all: readonly Ingredient[]): boolean {
  const of = (is: (each: Ingredient) => boolean): number =>
    gramsOfAll(all.filter((each) => each.weighed.known && is(each)))?.high ?? 0;
  return (
    of((each) => isIn(each, 'liquid')) > of(() => true) * SOUP || all.some((each) => isIn(each, 'liquid') && each.free)
  );
}
