/**
 * Knows flesh that is cooked already where the book has only the raw: `grilled swordfish`, `cooked crayfish tails`.
 * Refuses to know its composition, or that what is fried, smoked or only seared is the same.
 */
import { FLESH, type Food, type FoodMatch } from './food.ts';

/** Whether the words may say so: the pattern that tells takes longer to make than most lists to read. */
const MAY_SAY_COOKED = /cook|roast|grill|bake|boil|poach|steam|brais|stew|rotiss|broil|barbecue/i;
const COOKED =
  /\b(?:(?:pre|well|fully)[- ]?)?(?:cooked|roast(?:ed)?|grilled|baked|boiled|poached|steamed|braised|stewed|rotisserie|broiled|barbecued)\b/i;
/** Of these the inside is raw still, or not the cook's own to know. */
const HALF =
  /\b(?:un|half|par|partly|partially|lightly|to be)[- ]?(?:cooked|roasted|baked|boiled)|\b(?:before|until|when|if|for|or)\b/i;

/** The food of the name without those words, found by `find`, safe to eat and with its composition open; undefined where it is no raw flesh. */
export function cookedFood(words: string, find: (words: string) => FoodMatch): FoodMatch | undefined {
  const comma = words.indexOf(',');
  const head = comma < 0 ? words : words.slice(0, comma);
  if (!MAY_SAY_COOKED.test(head) || !COOKED.test(head) || HALF.test(words)) return undefined;
  const found = find(`${head.replace(COOKED, ' ')}${words.slice(head.length)}`.trim());
  if (found.kind !== 'food' || !isRaw(found.food)) return undefined;
  const roles = found.food.roles.filter((role) => role !== 'raw risk');
  const note = `What cooking made of its water and fat is not known.`;
  return { ...found, food: { ...found.food, roles, per100: {}, note } };
}

const isRaw = ({ class: kind, roles }: Food): boolean => FLESH.includes(kind) && roles.includes('raw risk');
