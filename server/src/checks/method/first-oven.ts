/**
 * Knows which step of a part is the first that needs an oven, and whether it or one before it says how hot.
 */
import type { WordNode } from '../../notation/tree.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { asWritten, says } from '../../recipe/step-words.ts';
import { orderIn } from './cues.ts';

const OVEN_VERBS = asWritten('bake', 'roast', 'blind-bake');
/** A bake on these needs no oven. */
const ELSEWHERE = asWritten(
  'griddle',
  'skillet',
  'coals',
  'embers',
  'campfire',
  'microwave',
  'stovetop',
  'bakestone',
  'fire',
  'barbecue',
);

/** The step that first says how hot the oven is, or else orders a bake without that, with the word that does; undefined where no oven is spoken of. */
export function firstInOven({ steps }: Part): { readonly step: Step; readonly order?: WordNode } | undefined {
  for (const step of steps) {
    if (step.heat.some((h) => h.role === 'oven')) return { step };
    const order = orderIn(step, OVEN_VERBS);
    if (order !== undefined && !says(step, ELSEWHERE)) return { step, order };
  }
  return undefined;
}
