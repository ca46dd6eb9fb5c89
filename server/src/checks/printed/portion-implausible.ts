import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { stepTimes } from '../../recipe/journey/durations.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { dishCalled } from '../../recipe/names/dishes.ts';
import { singular, wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { tooMuchBeside } from './beside-main.ts';
import { allListed, eitherNamed, gramsOfAll } from './foods-named.ts';
import { madeInAll } from './in-hand.ts';
import { isSameNoun, type Made, yieldOf } from './pieces-made.ts';
import { type PortionRow, portionRows } from './portion-rows.ts';

interface Values {
  readonly name: string;
  readonly each: Range;
  readonly eaters: Made;
  readonly row: PortionRow;
}

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
  explain: `**What it computes.** The raw weight of meat, fish, dry pasta or dry grain for each of those whom the recipe serves. Too much of it is told wherever it stands; too little only of the food that the title names first, and not of soups. So for what goes in beside it (fat, garlic, herbs, spices, eggs, cheese). All that is listed for each, by what it is: a dish that is sweet, a soup, any; and for each piece of a name (\`36 cookies\`), where one is never so small, or so large. And how many of what is bought by the piece (\`8 tortillas\`) each gets.

**Why it matters.** The number of people or the weight is a slip, and somebody goes hungry, or a pot runs over.

**What to do.** Mend the number or the weight.

**Silent** where the yield counts no people, portions or pieces that a table has, where they are called mini, small or large, where a weight is not known, for pieces of a spread or a starter that are small on purpose within wide bounds (meat 25 g, pasta 27 g, grain 9 g), and for what was cooked before.`,
  find: ({ recipe }) => (recipe.inherits ? NONE : found(recipe)),
  say: ({ name, each, eaters: { low, noun, serves }, row }) => {
    const isLess = each.high < row.low;
    const edge = isLess ? `less than ${gramsText(row.low)}` : `more than ${gramsText(row.high)}`;
    const mend = serves ? 'the amount, or the number of those who eat' : 'the amounts, or the number';
    if (row.when === 'count')
      return {
        message: `${trimmed(each.low, 1)} of the ${name} for each of ${trimmed(low, 1)} is hardly ever meant. Mend ${mend}.`,
        value: each.low,
        unit: '1',
        band: [row.low, row.high],
      };
    const value = name !== '' ? (each.low + each.high) / 2 : isLess ? each.high : each.low;
    const what = name === '' ? (isLess ? 'in all' : 'at the least') : `of ${name}`;
    return {
      message: `${gramsText(value)} g ${what} for each of ${trimmed(low, 1)}${serves ? '' : ` ${noun}`}: ${edge} g raw is hardly ever meant. Mend ${mend}.`,
      value,
      unit: 'g',
      band: [row.low, row.high],
      source: row.source,
    };
  },
  examples: {
    good: [
      'recipe Flapjacks\n  yield   12 bars\n  250 g     rolled oats\n  125 g     butter\n  100 g     caster sugar\n  60 g      golden syrup\n  do Melt the butter with the sugar and syrup and stir in the oats.\n  do Bake at 160 C for 25 min until golden.\n',
      'recipe Spaghetti with butter\n  serves  4\n  400 g     spaghetti\n  80 g      butter\n  do Boil the spaghetti for 9 min, drain, and toss with the butter.\n',
      'recipe Boiled rice\n  serves  4\n  300 g     long grain rice\n  450 ml    water\n  do Boil the rice in the water for 12 min.\n',
    ],
    bad: [
      'recipe Flapjacks\n  yield   120 bars\n#         ^^^^^^^^ portion-implausible: g in all for each of 120 bars\n  250 g     rolled oats\n  125 g     butter\n  100 g     caster sugar\n  60 g      golden syrup\n  do Melt the butter with the sugar and syrup and stir in the oats.\n  do Bake at 160 C for 25 min until golden.\n',
      'recipe Spaghetti with butter\n  serves  4\n  2 kg      spaghetti\n# "spaghetti" portion-implausible: 500 g of spaghetti for each of 4\n  80 g      butter\n  do Boil the spaghetti for 9 min, drain, and toss with the butter.\n',
      'recipe Boiled rice\n  serves  4\n  30 g      long grain rice\n# "long grain rice" portion-implausible: less than 9 g\n  45 ml     water\n  do Boil the rice in the water for 12 min.\n',
    ],
  },
});

const NONE: readonly never[] = [];

const found = onceFor((recipe: Recipe): readonly Found<Values>[] => {
  const made = yieldOf(recipe);
  if (made === undefined || made.low <= 0) return NONE;
  const all = allListed(recipe);
  return (
    (made.serves === true && (ofFoods(recipe, made, all) ?? beside(recipe, made))) ||
    byPiece(recipe, made, all) ||
    ofAll(recipe, made, all)
  );
});

/** What weighs less is an anchovy, g. */
const PIECE = 40;
/** Of what is bought by the piece, and is left whole or shared out. */
function byPiece(recipe: Recipe, eaters: Made, all: readonly Ingredient[]): readonly Found<Values>[] | undefined {
  const isByHead = portionRows().some(
    ({ when, of }) => when === 'filled' && of.some((each) => isSameNoun(each, eaters.noun)),
  );
  if (eaters.serves !== true && !isByHead) return undefined;
  for (const { node, line, name, nameNode, weighed } of all) {
    const { amount } = node;
    if (amount?.kind !== 'measured' || amount.unit !== undefined || !weighed.known) continue;
    const { low, high } = amount.quantity;
    const words = [amount.counted?.text.toLowerCase() ?? '', ...name.toLowerCase().split(' ')].map(singular);
    const row = portionRows().find(({ when, of }) => when === 'count' && of.some((word) => words.includes(word)));
    if (row === undefined || weighed.grams.high < low * PIECE) continue;
    const each = { low: low / eaters.high, high: high / eaters.low };
    if (each.low <= row.high) continue;
    const part = recipe.parts.findIndex(({ head }) => head.ingredients.some((of) => of.node === node));
    const { start, end } = nameNode;
    return [{ at: { part, line, start, end }, values: { name, each, eaters, row } }];
  }
  return undefined;
}

/** Of a food that somebody eats. */
function ofFoods(recipe: Recipe, eaters: Made, all: readonly Ingredient[]): readonly Found<Values>[] | undefined {
  const main = mainOf(recipe, all);
  for (const row of portionRows()) {
    if (row.when === 'beside') continue;
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
  return undefined;
}

function beside(recipe: Recipe, eaters: Made): readonly Found<Values>[] | undefined {
  const found = tooMuchBeside(recipe, eaters);
  if (found === undefined) return undefined;
  const { part, of, each, row } = found;
  const { start, end } = of.nameNode;
  return [{ at: { part, line: of.line, start, end }, values: { name: of.name, each, eaters, row } }];
}

/** Of all that is listed: a piece of that name, or what somebody eats of such a dish. */
function ofAll(recipe: Recipe, made: Made, all: readonly Ingredient[]): readonly Found<Values>[] {
  const node = recipe.yield?.node;
  if (recipe.yield === undefined || node?.amount === undefined || recipe.parts.some(({ head }) => head.nominal))
    return NONE;
  const { serves, noun, low, high } = made;
  const is = serves ? sortsOf(recipe, all) : ['each'];
  const kinds = serves ? kindsOf(recipe) : [];
  const rows = portionRows().filter(({ of, when }) =>
    when === 'dish'
      ? of.some((each) => kinds.includes(each))
      : is.includes(when) && (serves || of.some((each) => isSameNoun(each, noun))),
  );
  const [size] = portionRows().filter(({ when }) => when === 'not');
  if (wordsOf(`${node.of?.text} ${recipe.name}`).some((word) => size?.of.includes(word))) return NONE;
  // Cream for buns, and jam for scones, may be made in plenty; one piece may be as large as it likes.
  const parts = recipe.parts.map(({ head }) => eatenG(head.ingredients));
  const least = serves ? parts.reduce((sum, grams) => sum + grams, 0) : high > 1 ? Math.max(...parts) : 0;
  for (const row of rows) {
    const each = { low: least / high, high: (madeInAll(recipe)?.grams.high ?? Number.POSITIVE_INFINITY) / low };
    if (each.high < row.low || each.low > row.high)
      return [
        {
          at: { line: recipe.yield.at, start: node.amount.start, end: node.amount.end },
          values: { name: '', each, eaters: made, row },
        },
      ];
  }
  return NONE;
}

/** Water runs off, oil stays in the pan, and a crust of salt is broken off. */
const eatenG = (list: readonly Ingredient[]): number =>
  gramsOfAll(list.filter((each) => each.weighed.known && !each.optional && isEaten(each)))?.low ?? 0;

const isEaten = (each: Ingredient): boolean =>
  !isIn(each, 'water') && !isIn(each, 'oil') && foodOf(each)?.class !== 'salt';

/** So much of it is sugar in what is sweet. */
const SWEET = 1 / 12;

function sortsOf({ name }: Recipe, all: readonly Ingredient[]): readonly string[] {
  const known = all.filter(({ weighed }) => weighed.known);
  const of = (is: (each: Ingredient) => boolean): number => gramsOfAll(known.filter(is))?.low ?? 0;
  const isSweet =
    of((each) => isIn(each, 'sugar')) > of((each) => !isIn(each, 'water')) * SWEET &&
    !all.some((each) => isIn(each, 'flesh'));
  const isASoup = dishCalled(name)?.kinds.some((kind) => kind.name === 'soup') === true;
  return ['whole', ...(isSweet ? ['sweet'] : []), ...(isASoup ? ['soup'] : [])];
}

/** What its title says that it is, and what its parts are. */
const kindsOf = ({ name, parts }: Recipe): readonly string[] => [
  ...(dishCalled(name)?.kinds.map((kind) => kind.name) ?? []),
  ...parts.flatMap(({ head }) => head.kind?.name ?? []),
];

/** What the first word of the title names that names anything listed; where none does, meat or fish that is a good part of it. */
function mainOf({ name, parts }: Recipe, all: readonly Ingredient[]): Ingredient | undefined {
  const named = parts.map((part) => namedIn(part, name));
  for (let at = 0; at < wordsOf(name).length; at++) {
    const of = (by: 'own' | 'kind') => named.find((words) => words[at]?.[by] !== undefined)?.[at]?.[by];
    const first = of('kind') ?? of('own');
    if (first !== undefined) return first;
  }
  const flesh = all.filter((each) => isIn(each, 'flesh'));
  const whole = gramsOfAll(all.filter(({ weighed }) => weighed.known))?.high ?? 0;
  return (gramsOfAll(flesh)?.low ?? 0) > whole * MAINLY ? flesh[0] : undefined;
}
/** Of all, what meat or fish is at the least in a dish of it (judgement). */
const MAINLY = 0.2;

/** By word of a title, what it names first of a part. */
const namedIn = onceWith((part: Part, title: string) =>
  wordsOf(title).map((word) => {
    const { own, kind } = eitherNamed([word], part.head.ingredients);
    return { own: own[0], kind: kind[0] };
  }),
);

const isLong = (recipe: Recipe): boolean => stepTimes(recipe).cooking.high >= LONG_MIN;

function isSoup(all: readonly Ingredient[]): boolean {
  const of = (is: (each: Ingredient) => boolean): number =>
    gramsOfAll(all.filter((each) => each.weighed.known && is(each)))?.high ?? 0;
  return (
    of((each) => isIn(each, 'liquid')) > of(() => true) * SOUP || all.some((each) => isIn(each, 'liquid') && each.free)
  );
}
