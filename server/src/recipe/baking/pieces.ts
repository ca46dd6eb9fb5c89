/** Knows into how many pieces what is baked is divided. Refuses to know how big they are. */
import { divisionsIn, numberSaid } from '../../prose/counts.ts';
import type { Part, Recipe } from '../model.ts';
import { pieceNoun, yieldNoun } from '../yield.ts';

/** What a whole is cut into once it is baked, and who eats it. */
const CUT_LATER = /\b(?:slice|portion|serving|square|wedge|bar|people|person|helping)s?\b/i;

/** As a step says it, else as the recipe's yield does; undefined where neither does. */
export function piecesIn(recipe: Recipe, { steps }: Part): number | undefined {
  for (const { sentence } of steps.toReversed()) {
    const division = divisionsIn(sentence.items).at(-1);
    if (division === undefined) continue;
    const item = sentence.items[division.number];
    return item?.kind === 'measured' ? item.low.value : numberSaid(item);
  }
  const made = recipe.yield?.node;
  const { amount } = made ?? {};
  if (made === undefined || made.serves || amount === undefined || amount.unit !== undefined) return undefined;
  if (CUT_LATER.test(pieceNoun(yieldNoun(made)))) return undefined;
  return amount.quantity.low === amount.quantity.high ? amount.quantity.low : undefined;
}
