/**
 * Knows how much room all that goes into a pot takes at the most, and what of it runs through a sieve.
 * Refuses to know what the recipe says it makes.
 */
import type { Craft } from '../../prose/event.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { isAside } from '../../recipe/measures/contents.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { anyPart } from '../over-parts.ts';

/** ml of a gram, at the most: fat (Choi and Okos 1986). */
const ML_OF_G = 1 / 0.917;
/** Of all that goes in, what is poured: below that it lies in heaps, with air between (judgement). */
const POURED = 0.4;
/** Of bones and flesh, what is in the stock when they are lifted out (judgement: gelatine, fat and juice, rather too much). */
const OF_FLESH = 0.25;

const AIRY: ReadonlySet<Craft | undefined> = new Set<Craft>(['whip', 'beat', 'cream', 'churn', 'knead']);
const fills = anyPart(({ steps }) => anyDoes(steps, FILLS));
const FILLS = deed(
  ({ act, craft, medium, either, times }) =>
    AIRY.has(craft) ||
    act === 'rise' ||
    act === 'pack' ||
    // Turned in a freezer, and not kept there.
    medium?.is === 'ice' ||
    (act === 'freeze' && either === 0 && times.every(({ minutes }) => minutes.high < A_DAY)),
);
const A_DAY = 1440;
/** How many times as much room as what goes in: an ice takes up as much air again at the most, jars have gaps (common practice, no source). */
const CHURNED = 2.1;
const PACKED = 1.7;
const churns = anyPart(({ steps }) => anyDoes(steps, CHURNS));
const CHURNS = deed(({ craft }) => craft === 'churn');
const whips = anyPart(({ steps }) => anyDoes(steps, WHIPS));
const WHIPS = deed(({ craft, act }) => craft === 'whip' || act === 'rise');
const packs = anyPart(({ steps }) => anyDoes(steps, PACKS));
const PACKS = deed(({ act }) => act === 'pack');
const beats = anyPart(({ steps }) => anyDoes(steps, BEATS));
const BEATS = deed(({ craft, act, medium }) => AIRY.has(craft) || act === 'freeze' || medium?.is === 'ice');

/** Undefined where nobody knows. */
function airIn(recipe: Recipe): number | undefined {
  if (!fills(recipe)) return 1;
  if (whips(recipe)) return undefined;
  if (churns(recipe)) return CHURNED;
  return packs(recipe) && !beats(recipe) ? PACKED : undefined;
}

const strains = anyPart(({ steps }) => anyDoes(steps, STRAINS));
const STRAINS = deed(({ craft }) => craft === 'strain');

/** ml of all lists; undefined where air may be in it, or little of it is poured. */
export const mostLeftMl = onceFor((recipe: Recipe): number | undefined => {
  const airy = airIn(recipe);
  if (airy === undefined) return undefined;
  const isStrained = strains(recipe);
  let [all, liquid, left] = [0, 0, 0];
  for (const { head } of recipe.parts)
    for (const each of head.ingredients) {
      // Water as needed may be any.
      if (each.free && isIn(each, 'liquid') && !isAside(each)) return undefined;
      if (each.free) continue;
      if (!each.weighed.known) return undefined;
      const { high } = each.weighed.grams;
      all += high;
      if (isIn(each, 'liquid')) liquid += high;
      left += high * (isStrained && isFlesh(each) ? OF_FLESH : 1);
    }
  return liquid < all * POURED ? undefined : left * ML_OF_G * airy;
});

const isFlesh = (each: Ingredient): boolean => isIn(each, 'animal') && !isIn(each, 'liquid');
