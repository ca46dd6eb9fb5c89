/**
 * Knows how much room all that goes into a pot takes at the most, and what of it runs through a sieve.
 * Refuses to know what the recipe says it makes.
 */
import type { Craft } from '../../prose/event.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
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
const strains = anyPart(({ steps }) => anyDoes(steps, STRAINS));
const STRAINS = deed(({ craft }) => craft === 'strain');

/** ml of all lists; undefined where air may be in it, or little of it is poured. */
export const mostLeftMl = onceFor((recipe: Recipe): number | undefined => {
  if (fills(recipe)) return undefined;
  const isStrained = strains(recipe);
  let [all, liquid, left] = [0, 0, 0];
  for (const { head } of recipe.parts)
    for (const each of head.ingredients) {
      if (each.free) continue;
      if (!each.weighed.known) return undefined;
      const { high } = each.weighed.grams;
      all += high;
      if (isIn(each, 'liquid')) liquid += high;
      left += high * (isStrained && isFlesh(each) ? OF_FLESH : 1);
    }
  return liquid < all * POURED ? undefined : left * ML_OF_G;
});

const isFlesh = (each: Ingredient): boolean => isIn(each, 'animal') && !isIn(each, 'liquid');
