/**
 * Knows which allergens the notes of a recipe tell, and which of those that its lists surely hold they leave out.
 * Refuses to take a word about one food (`contains a raw egg`, `contains nuts`) for a list of all.
 */
import { allergensOf, isOfUnionAlone } from '../../food/allergens.ts';
import { type Food, foodsOf } from '../../food/food.ts';
import { allergensListed, type BroughtAllergen } from '../../recipe/list/allergens.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import type { Place } from '../check.ts';
import { allergensToldIn } from './claims.ts';

export interface UntoldAllergens {
  readonly at: Place;
  readonly untold: readonly BroughtAllergen[];
  /** The law of who wrote it may not list them. */
  readonly isElsewhere: boolean;
}

/** Where it is a list of them, or tells two that the lists hold, it is read as telling all. */
export function untoldIn({ outline, parts, world }: Recipe): UntoldAllergens | undefined {
  let at: Place | undefined;
  let isList = false;
  const names: string[] = [];
  const beside: string[] = [];
  for (const { at: line, line: source } of outline.head) {
    const told = allergensToldIn(source.text);
    if (told === undefined) continue;
    at ??= { line, start: told.start, end: source.text.length };
    isList ||= told.isList;
    names.push(...told.names);
    beside.push(...told.beside);
  }
  if (at === undefined) return undefined;
  const known = allergensOf([...names, ...beside]);
  const foodsIn = (words: readonly string[]): readonly Food[] =>
    allergensOf(words).unknown.flatMap((name) => foodsOf(world.book.findInText(name)));
  // `Shellfish (clams)` tells of molluscs; `soy (soy sauce)` of no wheat.
  const foods = [...foodsIn(names), ...foodsIn(beside).filter(({ allergens: { eu } }) => eu.length <= 1)];
  const told = [known, ...foods.map(({ allergens }) => allergens)].flatMap(({ us, eu }) => [...us, ...eu]);
  const { brought } = allergensListed(parts.map(({ head }) => head));
  const silent = brought.filter((each) => !told.includes(each.us ?? '') && !told.includes(each.eu ?? ''));
  const untold = silent.filter(
    (each) => each.eu !== 'sulphites' || (told.some(isOfUnionAlone) && isOfWine(parts, each)),
  );
  const isAll = isList || isNothingElse(names) || brought.length - silent.length >= 2;
  if (!isAll || untold.length === 0) return undefined;
  // Who measures by the cup labels by another law than the Union's, but where the note tells what that alone lists.
  const isElsewhere =
    parts.some(({ head }) => head.ingredients.some(isByTheCup)) &&
    !known.eu.some(isOfUnionAlone) &&
    untold.every(({ eu }) => isOfUnionAlone(eu ?? ''));
  return { at, untold, isElsewhere };
}

const isByTheCup = ({ node: { amount } }: Ingredient): boolean =>
  amount?.kind === 'measured' && amount.quantity.unit === 'cup';

/** Who tells what only the Union's list has goes by that; of vinegar, mustard and dried fruit most leave the sulphites to the label. */
const isOfWine = (parts: Recipe['parts'], { by }: BroughtAllergen): boolean =>
  parts.some(({ head }) =>
    head.ingredients.some((each) => by.includes(each.name) && foodOf(each)?.class === 'alcohol'),
  );

/** `Contains milk.`; nuts are told of by themselves, to warn. */
function isNothingElse(names: readonly string[]): boolean {
  const { us, eu, unknown } = allergensOf(names);
  const isOfNuts = us.every((name) => name === 'tree nuts' || name === 'peanuts');
  return unknown.length === 0 && !(isOfNuts && (us.length > 0 || eu.every((name) => name === 'sulphites')));
}
