/**
 * Knows the swaps offered on a list line: its equivalents, with what moves, and the water of an addition taken out.
 * Refuses a swap that does not keep the formula.
 */
import { keepWater } from '../../edits/keep-water.ts';
import { substitute } from '../../edits/substitute.ts';
import { movesText } from '../../edits/swap-moves.ts';
import { equivalentsFor } from '../../food/equivalents.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { listedAt, type Rewrite } from './rewrite.ts';

export function swapRewrites(snapshot: Snapshot, range: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  const at = listedAt(snapshot, range);
  if (at?.ingredient.food === undefined || recipe.inherits) return [];
  const { part, ingredient } = at;
  const swaps = equivalentsFor(at.ingredient.food).flatMap((equivalent): Rewrite[] => {
    const swap = substitute(document, recipe, part, ingredient, equivalent);
    if (swap === undefined) return [];
    const moves = movesText(swap.moves);
    const title = moves.length === 0 ? swap.title : `${swap.title} (moves ${moves.join(', ')})`;
    return [{ title, kind: 'refactor.rewrite', edits: () => swap.edits }];
  });
  const kept = keepWater(recipe, part, ingredient);
  if (kept !== undefined)
    swaps.push({
      title: `Take the water of the ${ingredient.name} out of the ${kept.liquid.name}: ${gramsText(kept.lessG)} g less, hydration kept`,
      kind: 'refactor.rewrite',
      edits: () => kept.edits,
    });
  return swaps;
}
