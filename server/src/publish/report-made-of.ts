/**
 * Knows of which substances each part and the whole are made, in grams, and of how many grams of food that is not known.
 * Refuses to know what cooking drives off.
 */

import { type Component, shareOf } from '../food/composition.ts';
import { likelyGrams } from '../food/weigh.ts';
import { withoutComment } from '../notation/without-comment.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { mixOf, totalG } from './nutrition.ts';
import { COMPOSITION, type ReportHolds, type ReportMadeOf, SUBSTANCES, type Substance } from './report-shape.ts';
import { round } from './rounded.ts';

/** Parts that list nothing of their own are left out. The whole is null where grams of one part say nothing beside another's. */
export function madeOf(recipe: Recipe): {
  readonly parts: readonly ReportMadeOf[];
  readonly whole: ReportMadeOf | null;
} {
  const listed = recipe.parts.filter((part) => counted(part).length > 0 || part.head.notUnderstood.length > 0);
  const isOneBatch = listed.length < 2 || !listed.some(({ head }) => head.nominal);
  return {
    parts: listed.map((part) => madeOfParts([part], part.head.name)),
    whole: isOneBatch ? madeOfParts(listed, null) : null,
  };
}

/** Grams of each substance in one line of the list; null where its weight, or its food, is not known. */
export function heldBy({ food, weighed }: Ingredient): ReportHolds | null {
  if (food === undefined || !weighed.known) return null;
  const grams = likelyGrams(weighed);
  return bySubstance((component) => {
    const share = shareOf(food.per100, component);
    return share === undefined ? null : round((share * grams) / 100, 2);
  });
}

/** A line that is not understood is in no sum, whatever of it was read. */
const counted = ({ head }: Part): readonly Ingredient[] =>
  head.ingredients.filter(
    ({ line, optional, ofPart }) => !optional && ofPart === undefined && !head.notUnderstood.includes(line),
  );

function madeOfParts(parts: readonly Part[], name: string | null): ReportMadeOf {
  const ingredients = parts.flatMap(counted);
  const mix = mixOf(ingredients);
  const unread = parts.flatMap(({ head }) => head.notUnderstood.map((line) => withoutComment(head.source.lines[line])));
  const unweighed = ingredients.flatMap((i) => (i.weighed.known || i.free ? [] : [i.name]));
  return {
    part: name,
    weighed_g: round(mix.massG, 1),
    relative: parts.some(({ head }) => head.nominal),
    not_weighed: [...unweighed, ...unread],
    holds: bySubstance((component) => ({
      grams: round(mix.totals[component].grams, 2),
      lacking_g: totalG(mix, component) === null ? round(mix.totals[component].lacking, 2) : 0,
    })),
  };
}

const bySubstance = <V>(of: (component: Component) => V): Readonly<Record<Substance, V>> =>
  Object.fromEntries(SUBSTANCES.map((substance) => [substance, of(COMPOSITION[substance])])) as Record<Substance, V>;
