/**
 * Knows what lies in a jar once it is filled, and how much of it: no ice, and no water that a step drained off.
 * Refuses to know how the jar is kept.
 */
import { middle } from '../../measure/quantity.ts';
import { type Body, type Member, WAS } from '../../recipe/journey/bodies.ts';
import { isIn } from '../../recipe/list/families.ts';
import { addedAcidG, type Mixture, mixtureOf, type Portioned } from '../../recipe/measures/mixture.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { type Held, type Lists, membersIn, onceForBody } from './spoils.ts';

/** No jar is filled with ice: what lay under it is drained. Where something sour was drained with it, nobody knows what came back. */
function inJar(held: readonly Held[]): readonly Held[] {
  const isSour = held.some((each) => isDrained(each) && addedAcidG(each.ingredient, 1) > 0);
  return held.filter(
    (each) => !isIn(each.ingredient, 'ice') && (isSour || !isDrained(each) || !isIn(each.ingredient, 'water')),
  );
}

const isDrained = ({ member: { state } }: Held): boolean => (state.was & WAS.drained) !== 0;

/** What is said to be in each jar, and left nowhere else, is in them; `the first few`, and then `the rest`: together no more than their line has. */
export function portionsIn(lists: Lists, body: Body): readonly Portioned[] {
  const byAmounts = wasDrained(body);
  const left = new Map<Ingredient, number>();
  return inJar(membersIn(lists, body)).map(({ member, ingredient }) => {
    const said = byAmounts && isIn(ingredient, 'water') ? saidShare(lists, member, ingredient) : undefined;
    const share = said ?? Math.min(member.share.high, left.get(ingredient) ?? 1);
    left.set(ingredient, (left.get(ingredient) ?? 1) - share);
    return { ingredient, share };
  });
}

/** Less than this of a line is nothing (as for the ledger). */
const NOTHING_LEFT = 0.02;

/**
 * How much of it goes in by amounts that are said, where those of other steps account for the rest: 2 l of 10 l of water, of which 8 l were
 * a brine. A word that fits two lines is of the one that the amount is all of.
 */
function saidShare({ parts }: Lists, { taken, of }: Member, { weighed }: Ingredient): number | undefined {
  if (taken === undefined || !weighed.known) return undefined;
  let grams = 0;
  for (const mention of taken) {
    let said: number | undefined;
    for (const ref of mention.ingredients.length === 0 ? [of] : mention.ingredients) {
      const entry = parts[ref.part]?.ledger[ref.ingredient];
      if (entry === undefined || entry.unsure || entry.left.high > NOTHING_LEFT || !entry.ingredient.weighed.known)
        return undefined;
      const use = entry.uses.find((each) => each.mention === mention);
      if (use !== undefined && use.taken.high > 0)
        said = (said ?? 0) + middle(use.taken) * middle(entry.ingredient.weighed.grams);
    }
    if (said === undefined) return undefined;
    grams += said;
  }
  return grams / middle(weighed.grams);
}

/** All that is in the jar. What hangs on amounts in steps hangs on more than the body. */
export const fullest = (lists: Lists, body: Body): Mixture =>
  wasDrained(body) ? mixed(lists, body) : fullestKept(lists, body);

/** Something in it lay in what was drained off. */
const wasDrained = ({ members }: Body): boolean => members.some(({ state }) => (state.was & WAS.drained) !== 0);

const mixed = (lists: Lists, body: Body): Mixture => mixtureOf(portionsIn(lists, body));
const fullestKept = onceForBody(mixed);

/** What of these lies in the jar. */
export function portionsOf(lists: Lists, body: Body, those: readonly Held[]): readonly Portioned[] {
  const wanted = new Set(those.map(({ ingredient }) => ingredient));
  return portionsIn(lists, body).filter(({ ingredient }) => wanted.has(ingredient));
}
