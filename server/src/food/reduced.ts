/**
 * Knows foods that are made with less of something: `low-sodium chickpeas`, `fat-free feta`. They are the same food, and how much is left
 * of it nobody says.
 * Refuses what is made without milk, egg, gluten or meat: that is another food.
 */
import type { Composition, Food, FoodClass, FoodMatch } from './food.ts';

/** What a word for it takes out of the composition: itself, and what stands in its place or with it. */
const PARTS: Readonly<Record<string, readonly (keyof Composition)[]>> = {
  fat: ['fat', 'saturates', 'water'],
  light: ['fat', 'saturates', 'water'],
  salt: ['sodium'],
  sodium: ['sodium'],
  salted: ['sodium'],
  sugar: ['sugars', 'sucrose', 'glucose', 'fructose', 'carbohydrate', 'water'],
  sweet: ['sugars', 'sucrose', 'glucose', 'fructose', 'carbohydrate', 'water'],
  alcohol: ['alcohol', 'water'],
  calorie: ['fat', 'saturates', 'sugars', 'sucrose', 'carbohydrate', 'water'],
  carb: ['starch', 'sugars', 'carbohydrate', 'fibre', 'water'],
};

const WHAT = 'fat|salt|sodium|sugar|calorie|carb|alcohol';
/** Whether the words may say so: the pattern that tells takes longer to make than most lists to read. */
const MAY_SAY_LESS = /low|reduced|less|no[- ]|non|zero|half|light|free|un(?:salt|sweet|alcohol)|without|salted/i;
const LESS = new RegExp(
  [
    `\\b(?:(?:very|extra|ultra|naturally)[- ])?(?:low|lower|reduced|less|no|zero|half|light)[- ](?:in[- ])?(?:added[- ])?(${WHAT})s?(?:[- ]added)?\\b`,
    `\\b(${WHAT})[- ](?:reduced|free)\\b`,
    `\\b(?:un|lightly |non-?)(salt|sweet|alcohol)(?:ed|ened|ic)\\b`,
    `\\bwithout (?:added )?(${WHAT})\\b`,
    `\\b(?:non|low)(fat)\\b`,
    `\\b(sugar|salt|fat)less\\b`,
    `\\b(salted|light)\\b`,
  ].join('|'),
  'i',
);

/** Words that say of what there is less, and the name without them. */
interface Less {
  readonly of: string;
  readonly rest: string;
}

/** Undefined where the words say of nothing that there is less. */
function lessIn(words: string): Less | undefined {
  const found = MAY_SAY_LESS.test(words) ? LESS.exec(words) : null;
  if (found === null) return undefined;
  const of = found.slice(1).find((part) => part !== undefined);
  const rest = `${words.slice(0, found.index)} ${words.slice(found.index + found[0].length)}`
    .replace(/\s+/g, ' ')
    .trim();
  return of === undefined || rest === '' || /^[,;(]/.test(rest) ? undefined : { of: of.toLowerCase(), rest };
}

/** The food of the name without those words, found by `find`, with what nobody knows left open; undefined where there is none. */
export function reducedFood(words: string, find: (words: string) => FoodMatch): FoodMatch | undefined {
  const less = lessIn(words);
  if (less === undefined) return undefined;
  const found = find(less.rest);
  const parts = PARTS[less.of] ?? [];
  switch (found.kind) {
    case 'food':
      return hasSome(found.food, less.of) ? { ...found, food: without(found.food, parts, words) } : undefined;
    case 'ambiguous':
      return found.foods.every((food) => hasSome(food, less.of))
        ? { ...found, foods: found.foods.map((food) => without(food, parts, words)) }
        : undefined;
    case 'unknown':
      return undefined;
  }
}

/** Salted fish is another food, and so is a syrup without sugar; salted nuts are nuts. */
const hasSome = ({ class: kind }: Food, of: string): boolean =>
  ONLY_IN[of]?.includes(kind) ?? !(MADE_OF[of]?.includes(kind) ?? false);

const ONLY_IN: Readonly<Record<string, readonly FoodClass[]>> = {
  salted: ['nut', 'seed'],
  light: ['milk', 'cream', 'dairy', 'cheese', 'sauce', 'condiment'],
};

const MADE_OF: Readonly<Record<string, readonly FoodClass[]>> = {
  sugar: ['sugar', 'syrup'],
  sweet: ['sugar', 'syrup'],
  calorie: ['sugar', 'syrup', 'fat', 'oil'],
  carb: ['flour', 'starch', 'sugar', 'syrup', 'bread', 'pasta', 'grain'],
  fat: ['fat', 'oil'],
  salt: ['salt', 'curing salt'],
  sodium: ['salt', 'curing salt'],
  alcohol: ['alcohol'],
};

function without(food: Food, parts: readonly (keyof Composition)[], words: string): Food {
  const per100 = Object.fromEntries(Object.entries(food.per100).filter(([key]) => !parts.some((part) => part === key)));
  return { ...food, per100, note: `How much ${parts[0]} there is in \`${words}\` is not known.` };
}
