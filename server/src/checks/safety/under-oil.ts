/**
 * Knows when garlic, herbs or vegetables are kept in oil, where and for how long: botulism wants no air, and no cold.
 * Refuses to know recipes that keep without oil.
 */
import type { FoodClass } from '../../food/food.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { anySays, asWritten, inWords, says, wordList } from '../../recipe/step-words.ts';
import { baseForm } from '../../recipe/verbs.ts';
import { gramsOf } from '../formula/band.ts';
import { onceFor } from '../once.ts';
import { isColdOnceOpen } from './once-open.ts';

/** Days in the fridge that extension services allow. */
export const MOST_DAYS = 4;
/** Oil of the whole from which it shuts the air out. */
export const OILY = 0.4;
/** Vinegar or lemon juice from this share on keeps the pH down (common practice, no source). */
export const SOUR = 0.08;

export interface KeptUnderOil {
  readonly solid: Ingredient;
  /** In the cold for so many days; out of it where undefined. */
  readonly days: number | undefined;
}

/** Undefined where nothing of the kind is kept, or not for too long. */
export const keptUnderOil = onceFor((part: Part): KeptUnderOil | undefined => {
  if (!part.head.ingredients.some(isOil)) return undefined;
  const solid = part.head.ingredients.find(isSolid);
  if (solid === undefined || !isOily(part)) return undefined;
  for (const step of part.steps) {
    const kept = keptFor(step);
    if (kept !== undefined) return { solid, days: kept === 'warm' ? undefined : kept };
  }
  return undefined;
});

const FRESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'mushroom', 'leafy herb']);
const DRY = /\b(?:dried|dry|powder|flakes|granules)\b/i;

function isSolid({ food, node, free }: Ingredient): boolean {
  return (
    food !== undefined &&
    !free &&
    FRESH.has(food.class) &&
    !DRY.test([node.name?.text, node.preparation?.text, food.name].join(' '))
  );
}

export const isOil = ({ food }: Ingredient): boolean => food?.class === 'oil';

export const isSour = ({ food }: Ingredient): boolean =>
  food !== undefined &&
  (food.class === 'vinegar' || (food.class === 'juice' && food.roles.includes('acid')) || /lemon|lime/.test(food.name));

/** What is laid in oil is shut off by less of it. */
export const COVERING = 0.2;
const COVERED = /\b(?:cover|submerg|immers|top)\w*\b.*\boil\b|\bunder (?:the )?oil\b|\boil over\b/;

function isOily(part: Part): boolean {
  let whole = 0;
  let oil = 0;
  let sour = 0;
  for (const ingredient of part.head.ingredients) {
    if (ingredient.food === undefined) continue;
    const grams = gramsOf(ingredient);
    whole += grams;
    if (isOil(ingredient)) oil += grams;
    else if (isSour(ingredient)) sour += grams;
  }
  const covered = anySays(part.steps, KEEPING) && part.steps.some((step) => COVERED.test(inWords(step.sentence)));
  return whole > 0 && oil > whole * (covered ? COVERING : OILY) && sour < whole * SOUR;
}

const KEEPS: ReadonlySet<string> = new Set([
  'keep',
  'keeps',
  'store',
  'bottle',
  'jar',
  'seal',
  'mature',
  'steep',
  'infuse',
  'stand',
  'leave',
  'cellar',
  'last',
  'decant',
  'bottles',
  'jars',
]);
const KEEPING = wordList((word) => KEEPS.has(word) || KEEPS.has(baseForm(word)));
const COLD = asWritten('fridge', 'refrigerator', 'refrigerate', 'chill', 'chilled', 'cold');
const FROZEN = asWritten('freeze', 'freezer', 'frozen');
const PLACES = asWritten(
  'cupboard',
  'larder',
  'pantry',
  'shelf',
  'cellar',
  'larders',
  'shelves',
  'sill',
  'month',
  'months',
  'weeks',
  'year',
  'winter',
);
/** Where a sauce may wait for an hour, and no more. */
const ABOUT = asWritten('room', 'dark', 'worktop', 'counter');
const LONG_MIN = 240;
const DAY_MIN = 1440;

/** `warm` where it is kept out of the cold, or the days it is kept in it when they are too many. */
function keptFor(step: Step): 'warm' | number | undefined {
  if (says(step, FROZEN) || !says(step, KEEPING)) return undefined;
  const longest = longestDays(step);
  const cold = (says(step, COLD) && !isColdOnceOpen(step)) || step.heat.some((h) => h.celsius.high <= 5.5);
  if (cold) return longest > MOST_DAYS ? Math.round(longest) : undefined;
  const waits = says(step, ABOUT) && (longest === 0 || longest * DAY_MIN >= LONG_MIN);
  return says(step, PLACES) || waits || longest >= 1 ? 'warm' : undefined;
}

/** Days in what is no unit of time in the notation. */
const CALENDAR: ReadonlyMap<string, number> = new Map([
  ['week', 7],
  ['weeks', 7],
  ['fortnight', 14],
  ['month', 30],
  ['months', 30],
  ['year', 365],
  ['years', 365],
]);

function longestDays({ sentence: { items } }: Step): number {
  const days = items.map((item, at) => {
    if (item.kind === 'duration') return item.highMin / DAY_MIN;
    const each = item.kind === 'word' ? CALENDAR.get(item.word) : undefined;
    const before = items[at - 1];
    return each === undefined ? 0 : each * (before?.kind === 'measured' ? before.quantity.high : 1);
  });
  return Math.max(0, ...days);
}
