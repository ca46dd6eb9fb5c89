/**
 * Knows measures of an open recipe's part brought to values, with what that would bring: nothing that could hurt somebody is written.
 * Needs findings. Refuses to know who asks.
 */
import { type AdjustResult, type AdjustWish, adjustPart } from '../edits/adjust/adjust.ts';
import { plainFinding } from '../publish/finding-json.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import type { MeasureName } from '../recipe/measures/kind.ts';
import type { Part } from '../recipe/model.ts';
import { broughtBy } from '../workspace/offered.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

export function adjusted(snapshot: Snapshot, part: Part, wish: AdjustWish): AdjustResult {
  const result = adjustPart(snapshot.document, snapshot.recipe, part, wish);
  if (!result.ok) return result;
  const harm = broughtBy(snapshot, snapshot.after(result.edits)).find(({ severity }) => severity === 'error');
  return harm === undefined
    ? result
    : { ok: false, why: `that is not written, since it would bring ${harm.code}: ${plainFinding(harm).message}` };
}

/** The part of a name, as the page carries it. */
export const partCalled = ({ recipe }: Snapshot, name: string): Part | undefined =>
  recipe.parts.find(({ head }) => head.name === name && head.ingredients.length > 0);

/** The measure of a name, which may be anything. */
export const measureCalled = (name: string): MeasureName | undefined =>
  Object.hasOwn(MEASURES, name) ? (name as MeasureName) : undefined;
