/**
 * Knows the sizes offered beside those of the whole recipe: one part alone, and the least that uses whole eggs.
 * Refuses to scale: `edits/scale.ts` does, when one is chosen.
 */

import { scaleRecipe } from '../../edits/scale.ts';
import { type ScaleTarget, sizesFor } from '../../edits/scale-target.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { partAt, speaksOfSize } from '../place.ts';
import type { Rewrite } from './rewrite.ts';

export function sizeRewrites(snapshot: Snapshot, { start }: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  if (recipe.outline.head.some(({ line }) => line.statement.kind === 'from')) return [];
  const rewrite = (title: string, target: ScaleTarget): Rewrite => ({
    title,
    kind: 'refactor.rewrite',
    edits: () => {
      const scaled = scaleRecipe(document, recipe, target);
      return scaled.ok ? scaled.scaling.edits : [];
    },
  });
  const found: Rewrite[] = [];
  const eggs = speaksOfSize(snapshot, start.line) ? sizesFor(recipe, recipe.parts, { kind: 'whole eggs' }) : undefined;
  if (eggs !== undefined && typeof eggs !== 'string')
    found.push(rewrite('Scale the recipe to the least that uses whole eggs', { kind: 'whole eggs' }));
  const part = partAt(snapshot, start.line);
  const opens = part !== undefined && recipe.partsAt[part.index] === start.line && part.head.source.named;
  if (opens && recipe.parts.length > 1 && part.head.ingredients.length > 0) {
    const { name } = part.head;
    found.push(
      rewrite(`Scale ${name} alone by half`, { kind: 'by', by: 0.5, part: name }),
      rewrite(`Scale ${name} alone by two`, { kind: 'by', by: 2, part: name }),
    );
  }
  return found;
}
