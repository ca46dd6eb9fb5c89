/**
 * Knows the passages of a recipe: each part folded, beside the parts of whose foods its steps speak or that lie before it.
 * Refuses to judge. A passage is the same object for as long as all of that is, so that what hangs on it alone is kept on it.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Part, Recipe } from '../model.ts';
import { sameItems } from '../steps.ts';
import { type Journey, journeysOf } from './fold.ts';
import { type FoldedPart, partsIn } from './folded-part.ts';

export interface Passage {
  readonly folded: FoldedPart;
  /** By index; it knows of those alone. */
  readonly parts: readonly Part[];
}

const PASSAGES = keptOn<Recipe, readonly (readonly Passage[])[]>();
const OF_JOURNEY = keptOn<Journey, readonly Passage[]>();

/** Those of each journey, in the order in which its parts are followed; the same list for as long as all of them are. */
export function passagesOf(recipe: Recipe): readonly (readonly Passage[])[] {
  let passages = PASSAGES.get(recipe);
  if (passages === undefined) {
    passages = journeysOf(recipe).map((journey) => passagesIn(journey, recipe.parts));
    PASSAGES.set(recipe, passages);
  }
  return passages;
}

function passagesIn(journey: Journey, parts: readonly Part[]): readonly Passage[] {
  const list = journey.pieces.map(({ folded }) => passageOf(folded, parts));
  const before = OF_JOURNEY.get(journey);
  if (before !== undefined && sameItems(before, list)) return before;
  OF_JOURNEY.set(journey, list);
  return list;
}

interface Kept {
  readonly passage: Passage;
  /** Parts of which it speaks. */
  readonly on: readonly number[];
}

const KEPT = keptOn<FoldedPart, Kept>();

function passageOf(folded: FoldedPart, parts: readonly Part[]): Passage {
  const kept = KEPT.get(folded);
  if (kept?.on.every((index) => kept.passage.parts[index] === parts[index])) return kept.passage;
  const passage = { folded, parts };
  KEPT.set(folded, { passage, on: kept?.on ?? partsSaid(folded) });
  return passage;
}

function partsSaid({ part, steps }: FoldedPart): readonly number[] {
  const said = new Set([part.index]);
  for (const { after, ended, events } of steps) {
    for (const index of partsIn(after.bodies)) said.add(index);
    for (const index of partsIn(ended)) said.add(index);
    for (const { names } of events)
      for (const { mention } of names) for (const of of mention.ingredients) said.add(of.part);
  }
  return [...said];
}
