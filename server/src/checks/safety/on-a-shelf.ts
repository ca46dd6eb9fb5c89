/**
 * Knows whether a step puts food by where it is neither hot nor cold: in a larder, a cupboard, a cellar.
 * Refuses to know whether the food needs to be.
 */
import type { FoodClass } from '../../food/food.ts';
import type { WordNode } from '../../notation/tree.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inAnyForm, inWords, isOn, matching, says } from '../../recipe/step-words.ts';
import { gramsOf } from '../formula/band.ts';
import { onceFor } from '../once.ts';
import { KEPT_COLD } from './cold-words.ts';
import { isColdOnceOpen } from './once-open.ts';

const PUTTING_BY = inAnyForm('keep', 'store', 'last', 'put', 'leave', 'stand', 'mature');
const SHELVES = asWritten('larder', 'cupboard', 'pantry', 'shelf', 'shelves', 'cellar', 'larders', 'cupboards');
const COLD = asWritten(...KEPT_COLD, 'pressure');
const DRYING = matching(/^(?:dry|dried|dries|dehydrat\w*|brittle|crisp|crumbles?)$/);
const SMOKING = matching(/^smoke[ds]?$/);
/** `a cool dry place`, `dry the jars`: not the food. */
const DRY_PLACES =
  /\bdry;? (?:(?:and|airy|cool|dark|clean|sterilised|sterilized|the|warm);? )*(?:place|spot|room|larder|cupboard|pantry|shelf|shelves|cellar|jars?|bottles?|lids)\b/g;
const JARS = asWritten('jar', 'jars', 'jarred', 'bottle', 'bottles', 'cans');

/** The place where a step puts by what the part makes; undefined where it is kept cold, or dried first. */
export function shelfIn(step: Step, part: Part): WordNode | undefined {
  if (!says(step, SHELVES) || !says(step, PUTTING_BY)) return undefined;
  if (isDried(part) || (says(step, COLD) && !isColdOnceOpen(step))) return undefined;
  if (step.heat.some((h) => h.celsius.high <= 8)) return undefined;
  // Jars of meat and vegetables are `low-acid-preserve`'s to speak of.
  if (anySays(part.steps, JARS) && !isMostlyDairyOrEgg(part)) return undefined;
  const { items } = step.sentence;
  const verb = items.findIndex((i) => i.kind === 'word' && isOn(PUTTING_BY, i.word));
  const place = items.findIndex((i) => i.kind === 'word' && isOn(SHELVES, i.word));
  const found = items[place];
  return verb < place && found?.kind === 'word' ? found : undefined;
}

const FISH: ReadonlySet<FoodClass> = new Set<FoodClass>(['fish', 'shellfish']);

/** Dried, or smoked as ham and sausage are that hang; smoked fish wants the cold. */
const isDried = ({ steps, head }: Part): boolean =>
  (anySays(steps, SMOKING) && !head.ingredients.some((i) => FISH.has(foodOf(i)?.class ?? 'other'))) ||
  steps.some((step) => says(step, DRYING) && DRIED.test(inWords(step.sentence).replaceAll(DRY_PLACES, '')));
const DRIED = /\b(?:dry|dried|dries|dehydrat\w*|brittle|crisp|crumbles?)\b/;

const SET: ReadonlySet<FoodClass> = new Set<FoodClass>(['egg', 'milk', 'cream', 'dairy']);
/** Of a curd or a custard in its jar (judgement). */
const LEAST_SHARE = 0.15;

const isMostlyDairyOrEgg = onceFor(({ head: { ingredients } }: Part): boolean => {
  let [whole, set] = [0, 0];
  for (const ingredient of ingredients) {
    const grams = gramsOf(ingredient);
    whole += grams;
    if (SET.has(foodOf(ingredient)?.class ?? 'other')) set += grams;
  }
  return whole > 0 && set >= whole * LEAST_SHARE;
});
