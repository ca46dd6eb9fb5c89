/**
 * Knows what a part is made of when its formula is judged: its own list, and earlier parts it takes in that are no kind of their own.
 * Refuses to judge it.
 */

import { scaleRange } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import { type Ingredient, isFlour } from './ingredient.ts';
import { listedPart, type PartHead } from './part.ts';
import type { Part } from './recipe.ts';

const CONTENTS = keptOn<Part, readonly Ingredient[]>();

/** A poolish or softened onions count as what they are made of; a crust that a filling is poured into does not. One list for one part. */
export function contentsOf(part: Part): readonly Ingredient[] {
  let contents = CONTENTS.get(part);
  if (contents === undefined) {
    contents = gather(part);
    CONTENTS.set(part, contents);
  }
  return contents;
}

function gather(part: Part): readonly Ingredient[] {
  const all = part.head.ingredients;
  const own = all.some(isAside) ? all.filter((i) => !isAside(i)) : all;
  if (part.includes.length === 0) return own;
  // `200 g poolish` on the list is so much of the part of that name.
  const weighed = new Map<PartHead, Ingredient>();
  for (const head of part.includes) {
    const line = listedPart(part.head, head.name);
    if (line !== undefined) weighed.set(head, line);
  }
  const flourKind = own.some(isFlour) || THICKENED.has(part.head.kind?.group ?? '');
  const lines = new Set(weighed.values());
  const taken = part.includes.flatMap((head): readonly Ingredient[] => {
    const line = weighed.get(head);
    if (line !== undefined) return shareOf(head, line);
    return head.kind === undefined && (flourKind || !head.ingredients.some(isFlour)) ? head.ingredients : [];
  });
  if (taken.length === 0 && lines.size === 0) return own;
  return [...own.filter((i) => !lines.has(i)), ...taken];
}

/** `1 egg, to glaze`, `water for boiling`, `2 l water (for the bath)`, `flour for dusting`: listed here, and not in the mixture. */
const ASIDE =
  /\b(?:for the (?:water )?(?:bath|pan|tins?|tray|board|glaze|bain-marie)\b|(?:for|to) (?:boil|poach|soak|steam|blanch|fry|(?:deep|shallow)[- ]fry|dust|glaz|brush|greas|serv|roll|garnish|decorat|sprinkl|scatter)(?:e|ing|y|ying)?\b)/i;

/** Whether a line of the list is not in the mixture; of one with `plus more for dusting` only what is more is not. */
export const isAside = ({ node }: Ingredient): boolean =>
  node.rest === undefined && ASIDE.test([node.name?.text, node.preparation?.text, node.note?.text].join(', '));

/** In these an earlier part with flour in it is a roux or the like, and no crust. */
const THICKENED: ReadonlySet<string> = new Set(['sauce', 'savoury']);

/** What so much of a part is made of; the line itself where either weight is not known. */
function shareOf(head: PartHead, line: Ingredient): readonly Ingredient[] {
  const { weighed } = line;
  const { massG } = head;
  if (!weighed.known || !massG.complete || !(massG.low > 0)) return [line];
  const by = (weighed.grams.low + weighed.grams.high) / (massG.low + massG.high);
  return head.ingredients.map((i) =>
    i.weighed.known ? { ...i, weighed: { ...i.weighed, grams: scaleRange(i.weighed.grams, by) } } : i,
  );
}
