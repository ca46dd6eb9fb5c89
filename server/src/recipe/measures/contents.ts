/**
 * Knows what a part is made of when its formula is judged: its own list, and earlier parts it takes in that are no kind of their own.
 * Refuses to judge it.
 */

import { likelyGrams, timesTheWeight } from '../../food/weigh.ts';
import { keptOn } from '../../notation/kept.ts';
import type { IngredientNode } from '../../notation/tree.ts';
import { isIn } from '../list/families.ts';
import { isFlour } from '../list/ingredient.ts';
import type { Ingredient, PartHead } from '../model.ts';
import { listedPart } from '../part.ts';
import type { ListedPart } from '../recipe.ts';

/** What a list comes to, and with which others it was put together. */
interface Gathered {
  readonly mixes: readonly PartHead[];
  readonly contents: readonly Ingredient[];
}

const CONTENTS = keptOn<readonly Ingredient[], Gathered>();

/**
 * A poolish or softened onions count as what they are made of; a crust that a filling is poured into does not. One list for one part, the
 * same for as long as no list of them changes.
 */
export function contentsOf({ head, mixes }: ListedPart): readonly Ingredient[] {
  let gathered = CONTENTS.get(head.ingredients);
  if (gathered === undefined || !areSameLists(gathered.mixes, mixes)) {
    gathered = { mixes, contents: gather(head, mixes) };
    CONTENTS.set(head.ingredients, gathered);
  }
  return gathered.contents;
}

/** Whether parts are those that they were, but for their steps. */
export const areSameLists = (a: readonly PartHead[], b: readonly PartHead[]): boolean =>
  a === b || (a.length === b.length && a.every((head, i) => head.ingredients === b[i]?.ingredients));

function gather(head: PartHead, mixes: readonly PartHead[]): readonly Ingredient[] {
  const all = head.ingredients;
  const own = all.some(isAside) ? all.filter((i) => !isAside(i)) : all;
  if (mixes.length === 0) return own;
  // `200 g poolish` on the list is so much of the part of that name.
  const weighed = new Map<PartHead, Ingredient>();
  for (const other of mixes) {
    const line = listedPart(head, other.name);
    if (line !== undefined) weighed.set(other, line);
  }
  const flourKind = own.some(isFlour) || THICKENED.has(head.kind?.group ?? '');
  // A crust that lies over its filling, and a dough that is filled, or eaten with a sauce.
  const isPastry = head.kind?.group === 'pastry';
  const isDough = isPastry || gramsAmong(own, isFlour) > gramsAmong(own, () => true) * DOUGH;
  const fills = (each: Ingredient): boolean => (isDough && isIn(each, 'flesh')) || (isPastry && isIn(each, 'juicy'));
  const lines = new Set(weighed.values());
  const taken = mixes.flatMap((other): readonly Ingredient[] => {
    const line = weighed.get(other);
    if (line !== undefined && line.ofPart === undefined) return shareOf(other, line);
    const counts =
      other.kind === undefined && !other.ingredients.some(fills) && (flourKind || !other.ingredients.some(isFlour));
    return counts ? sharesOf(other, line?.ofPart ?? 1) : [];
  });
  if (taken.length === 0 && lines.size === 0) return own;
  return [...own.filter((i) => !lines.has(i)), ...taken];
}

/** Flour of a list from which it is a dough (judgement). */
const DOUGH = 0.35;

const gramsAmong = (list: readonly Ingredient[], is: (each: Ingredient) => boolean): number =>
  list.reduce((sum, each) => (each.weighed.known && is(each) ? sum + likelyGrams(each.weighed) : sum), 0);

/** `1 egg, to glaze`, `water for boiling`, `2 l water (for the bath)`, `flour for dusting`: listed here, and not in the mixture. */
const ASIDE =
  /\b(?:for the (?:(?:water|ice|cooling|hot) )?(?:bath|pan|tins?|tray|board|glaze|bain-marie)\b|(?:for|to) (?:boil|poach|soak|steam|blanch|fry|(?:deep|shallow)[- ]fry|dust|glaz|brush|greas|serv|roll|garnish|decorat|sprinkl|scatter)(?:e|ing|y|ying)?\b)/i;

/** Whether a line of the list is not in the mixture; of one with `plus more for dusting` only what is more is not. */
export function isAside({ node }: Ingredient): boolean {
  let aside = ASIDES.get(node);
  if (aside === undefined) {
    aside =
      node.rest === undefined && ASIDE.test([node.name?.text, node.preparation?.text, node.note?.text].join(', '));
    ASIDES.set(node, aside);
  }
  return aside;
}

const ASIDES = keptOn<IngredientNode, boolean>();

/** In these an earlier part with flour in it is a roux or the like, and no crust. */
const THICKENED: ReadonlySet<string> = new Set(['sauce', 'savoury']);

/** What so much of a part is made of; the line itself where either weight is not known. */
function shareOf(head: PartHead, line: Ingredient): readonly Ingredient[] {
  const { weighed } = line;
  const { massG } = head;
  if (!weighed.known || !massG.complete || !(massG.low > 0)) return [line];
  return sharesOf(head, likelyGrams(weighed) / massG.likely);
}

/** The list of a part so many times over. */
function sharesOf(head: PartHead, by: number): readonly Ingredient[] {
  if (by === 1) return head.ingredients;
  return head.ingredients.map((i) => (i.weighed.known ? { ...i, weighed: timesTheWeight(i.weighed, by) } : i));
}
