/**
 * Knows where a trial used another amount than the list has.
 */
import { gramsText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { bindIngredient } from '../../recipe/list/ingredient.ts';
import { weighLine } from '../../recipe/list/line-weight.ts';
import type { Ingredient, Part, Recipe, World } from '../../recipe/model.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import { sameName, wordsOf } from '../../recipe/words.ts';
import type { Found } from '../check.ts';
import { onceWith } from '../once.ts';
import { type Given, overParts, type Worked, workedAgain } from '../over-parts.ts';
import type { Values } from './held-values.ts';
import { distanceOf, textAt } from './nearest-figures.ts';

/** A time, weight or amount within this share of what is written agrees. Common practice, no source. */
export const AMOUNT_SLACK = 0.05;

type Used = Trial['used'][number];

type Names = Given<readonly (readonly string[])[]>;

/** Of a part, the first on its list that a trial's line may mean, where both are amounts. */
function meantIn({ amount, part: inPart }: Used, wanted: readonly string[], { part, value: names }: Names) {
  const { head } = part;
  if (amount.kind !== 'measured' || (inPart !== undefined && !sameName(head.name, inPart.text))) return undefined;
  const ingredient = head.ingredients[names.findIndex((words) => endsWith(words, wanted))];
  return ingredient?.node.amount?.kind === 'measured' ? ingredient : undefined;
}

interface Meant {
  readonly wanted: readonly string[];
  now?: Worked<Names, Ingredient | undefined>;
}

/** The line as one of a list: the juice of a lemon is called lemon juice. */
const usedAs = onceWith((used: Used, world: World) => bindIngredient(used.ingredient, 0, world));

const lastMeant = onceWith(
  (used: Used, world: World): Meant => ({
    wanted: wordsOf(usedAs(used, world)?.name ?? used.name.text),
  }),
);

/** Where the first part that has it has what a trial used. */
function meantBy(
  line: Used,
  names: readonly Names[],
  world: World,
): { readonly part: Part; readonly listed: Ingredient } | undefined {
  const last = lastMeant(line, world);
  last.now = workedAgain(names, (each) => meantIn(line, last.wanted, each), last.now);
  const at = last.now.values.findIndex((ingredient) => ingredient !== undefined);
  const [part, listed] = [names[at]?.part, last.now.values[at]];
  return part === undefined || listed === undefined ? undefined : { part, listed };
}

/** Weighed as the ingredient it means. */
function gramsUsed(line: Used, { match }: Ingredient, world: World): number | undefined {
  const as = usedAs(line, world);
  const used = as?.takes === undefined ? weighLine(line.ingredient, match, world) : as.weighed;
  return used.known ? (used.grams.low + used.grams.high) / 2 : undefined;
}

/** What a line of a trial used, and what is listed of it; undefined where neither can be held against the other. */
export function usedAgainstList(
  recipe: Recipe,
  line: Used,
): { readonly part: Part; readonly listed: Ingredient; readonly grams: number } | undefined {
  const meant = meantBy(line, namesIn(recipe), recipe.world);
  const grams = meant && gramsUsed(line, meant.listed, recipe.world);
  return meant === undefined || grams === undefined ? undefined : { ...meant, grams };
}

const amountFound = onceWith(
  (line: Used, part: Part, ingredient: Ingredient, date: string, world: World): Found<Values> | undefined => {
    const { at, amount } = line;
    const listed = ingredient.node.amount;
    if (amount.kind !== 'measured' || listed?.kind !== 'measured') return undefined;
    const { weighed } = ingredient;
    const grams = gramsUsed(line, ingredient, world);
    if (grams === undefined || !weighed.known) return undefined;
    if (distanceOf(grams, weighed.grams.low, weighed.grams.high) <= AMOUNT_SLACK * weighed.grams.high) return undefined;
    const { takes } = ingredient.node;
    return {
      at: { part: part.index, line: ingredient.line, start: listed.start, end: listed.end },
      values: {
        what: 'amount',
        of: takes === undefined ? ingredient.name : ingredient.nameNode.text,
        written: textAt(part, ingredient.line, { start: takes?.[0]?.start ?? listed.start, end: listed.end }),
        measured: `${gramsText(grams)} g`,
        differs: differenceOf(grams, weighed.grams),
        date,
        trialAt: { line: at, start: amount.start, end: amount.end },
        ingredient: { part: part.index, ingredient, grams },
      },
    };
  },
);

/** `16 g more` than the range listed. */
const differenceOf = (grams: number, { low, high }: Range): string =>
  grams > high ? `${gramsText(grams - high)} g more` : `${gramsText(low - grams)} g less`;

export const amounts = (recipe: Recipe, { used, date }: Trial): readonly Found<Values>[] =>
  used.flatMap((line) => {
    const meant = meantBy(line, namesIn(recipe), recipe.world);
    return (meant && amountFound(line, meant.part, meant.listed, date, recipe.world)) ?? [];
  });

/** The words of every name on a part's list. */
const namesIn = overParts(({ head: { ingredients } }) =>
  ingredients.length === 0 ? undefined : ingredients.map((i) => wordsOf(i.name)),
);

function endsWith(words: readonly string[], end: readonly string[]): boolean {
  // No name is meant by no words.
  if (end.length === 0) return words.length === 0;
  for (let i = 1; i <= end.length; i++) if (words[words.length - i] !== end[end.length - i]) return false;
  return true;
}
