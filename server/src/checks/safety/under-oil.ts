/**
 * Knows when garlic, herbs or vegetables are kept in oil, where and for how long: botulism wants no air, and no cold.
 * Refuses to know recipes that keep without oil.
 */
import type { FoodClass } from '../../food/food.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inWords, says, wordList } from '../../recipe/step-words.ts';
import { baseForm } from '../../recipe/verbs.ts';
import { gramsOf } from '../formula/band.ts';
import { onceFor } from '../once.ts';
import { DAY_MIN, longestDays } from './longest-days.ts';
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
  readonly fat: 'oil' | 'fat';
}

/** Undefined where nothing of the kind is kept, or not for too long. */
export const keptUnderOil = onceFor((part: Part): KeptUnderOil | undefined => {
  const fat = part.head.ingredients.some(isOil) ? isOil : isButter;
  if (!part.head.ingredients.some(fat)) return undefined;
  const solid = part.head.ingredients.find(isSolid);
  if (solid === undefined || !isOily(part, fat)) return undefined;
  // Cold, butter keeps longer than oil does; where it is kept without a word, it is kept cold.
  if (fat === isButter) return part.steps.some(isLeftAbout) ? { solid, days: undefined, fat: 'fat' } : undefined;
  const drained = part.steps.some((step) => says(step, DRAINED) && DRAINED_ON.test(inWords(step.sentence)));
  for (const step of part.steps) {
    const kept = drained && !says(step, THE_OIL) ? undefined : keptFor(step);
    if (kept !== undefined) return { solid, days: kept === 'warm' ? undefined : kept, fat: 'oil' };
  }
  return !drained && isPutBy(part) ? { solid, days: undefined, fat: 'oil' } : undefined;
});

const FRESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'mushroom', 'leafy herb']);
const DRY = /\b(?:dried|dry|powder|flakes|granules)\b/i;

function isSolid(ingredient: Ingredient): boolean {
  const { node, free } = ingredient;
  const food = foodOf(ingredient);
  return (
    food !== undefined &&
    !free &&
    FRESH.has(food.class) &&
    !DRY.test([node.name?.text, node.preparation?.text, food.name].join(' '))
  );
}

export const isOil = (ingredient: Ingredient): boolean => foodOf(ingredient)?.class === 'oil';

export const isButter = (ingredient: Ingredient): boolean => foodOf(ingredient)?.class === 'fat';

export const isSour = (ingredient: Ingredient): boolean => {
  const food = foodOf(ingredient);
  return (
    food !== undefined &&
    (food.class === 'vinegar' ||
      (food.class === 'juice' && food.roles.includes('acid')) ||
      /lemon|lime/.test(food.name))
  );
};

/** What is laid in oil is shut off by less of it. */
export const COVERING = 0.2;
const COVERED = /\b(?:cover|submerg|immers|top)\w*\b.*\boil\b|\bunder (?:the )?oil\b|\boil over\b/;

function isOily(part: Part, isFat: (ingredient: Ingredient) => boolean): boolean {
  let whole = 0;
  let oil = 0;
  let sour = 0;
  for (const ingredient of part.head.ingredients) {
    if (foodOf(ingredient) === undefined) continue;
    const grams = gramsOf(ingredient);
    whole += grams;
    if (isFat(ingredient)) oil += grams;
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
  'lasts',
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
  'windowsill',
  'basement',
  'garage',
  'month',
  'months',
  'weeks',
  'year',
  'winter',
);
/** Where a sauce may wait for an hour, and no more. */
const ABOUT = asWritten('room', 'dark', 'worktop', 'counter', 'countertop');
const LONG_MIN = 240;

const isCold = (step: Step): boolean =>
  (says(step, COLD) && !isColdOnceOpen(step)) || step.heat.some((h) => h.celsius.high <= 5.5);

/** `warm` where it is kept out of the cold, or the days it is kept in it when they are too many. */
function keptFor(step: Step): 'warm' | number | undefined {
  if (says(step, FROZEN) || !says(step, KEEPING)) return undefined;
  const longest = longestDays(step);
  if (isCold(step)) return longest > MOST_DAYS ? Math.round(longest) : undefined;
  const waits = says(step, ABOUT) && (longest === 0 || longest * DAY_MIN >= LONG_MIN);
  return says(step, PLACES) || waits || longest >= 1 ? 'warm' : undefined;
}

/** For a day or more out of the cold, by what the step says. */
const isLeftAbout = (step: Step): boolean =>
  says(step, KEEPING) &&
  (says(step, ABOUT) || says(step, SHELVED)) &&
  !says(step, FROZEN) &&
  !isCold(step) &&
  (says(step, SHELVED) || longestDays(step) >= 1);
const SHELVED = asWritten('cupboard', 'larder', 'pantry', 'shelf', 'cellar', 'basement', 'unrefrigerated');

const DRAINED = asWritten('drain', 'drained');
/** Fried, and out of the oil again: what is kept then is dry. */
const DRAINED_ON = /\bdrain(?:ed)?\b[^;]*\b(?:paper|papers|towel|towels|rack)\b/;
const THE_OIL = asWritten('bottle', 'cover', 'covered', 'under');
const PUT_BY = asWritten('jar', 'jars', 'bottle', 'bottles', 'flask', 'cork', 'seal', 'store', 'stored', 'keep');
/** `Bottle the oil`, `keep the garlic in the oil`; not `keep the oil warm`. */
const STORED =
  /(?:^|[;.] ?|\b(?:and|then) )(?:bottle|jar|cork|seal|store)\b|\bstored\b|\bkeep [\w ]{0,40}\b(?:in|under) (?:the |its |their |this |more )?(?:\w+ )?(?:oil|jars?|bottles?|flask)\b/;
const POTTED =
  /\bfill (?:(?!and\b|then\b)\w+ ){0,4}(?:jars?|bottles?|flask)\b|\b(?:in|into) (?:(?!and\b|then\b)\w+ ){0,4}(?:jars?|bottles?|flask)\b/;
/** Eaten soon. */
const SOON =
  /\b(?:today|immediately|at once|straight away|same day|aside|while you|heat|(?:until|till|before|for) (?:you )?(?:serv|cook|fry|use)\w*)\b/;
/** What is in a jar may be shaken or blended in it, or go from it to the table. */
const ON_ITS_WAY = /\b(?:serv|shak|blend|whizz|blitz|toss|fry|cook(?!er)|drizzl|spread|stir)\w*\b/;

/** Put by in oil, with no word from then on of where, how long or how soon it is eaten. */
function isPutBy({ steps, usesByLater }: Part): boolean {
  if (usesByLater.length > 0 || !anySays(steps, PUT_BY)) return false;
  for (const [at, step] of steps.entries()) {
    if (!says(step, PUT_BY)) continue;
    const text = inWords(step.sentence);
    const stored = STORED.exec(text);
    const put = stored ?? POTTED.exec(text);
    if (put === null) continue;
    const from = steps.slice(at);
    if (from.some((s) => isCold(s) || says(s, FROZEN) || longestDays(s) > 0)) return false;
    const after = from
      .map((s) => inWords(s.sentence))
      .join(' ')
      .slice(put.index + put[0].length);
    return !SOON.test(after) && (stored !== null || !ON_ITS_WAY.test(after));
  }
  return false;
}
