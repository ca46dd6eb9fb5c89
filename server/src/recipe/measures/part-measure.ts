/**
 * Knows a measure of what a part is made of, where in its band it surely lies, and that there is none where lines of its list are not understood.
 */

import type { ListedPart } from '../recipe.ts';
import { contentsOf } from './contents.ts';
import type { KindMeasure, MeasureName } from './kind.ts';
import { type Verdict, verdictOf, verdictOn } from './kinds.ts';
import { measure } from './measures.ts';
import type { MeasureValue } from './worked-ratio.ts';

/** Whether the part's sums, or those of an earlier part that it takes in, lack what a line brings. */
export const isIncomplete = ({ head, mixes }: ListedPart): boolean =>
  head.notUnderstood.length > 0 || mixes.some(({ notUnderstood }) => notUnderstood.length > 0);

export const partMeasure = (part: ListedPart, name: MeasureName): MeasureValue =>
  isIncomplete(part) ? NOT_UNDERSTOOD : measure(name, contentsOf(part));

/** Where a measure lies; undefined where it is not known, or in its band by only some of what an open line could be. */
export function placeIn(worked: MeasureValue, held: KindMeasure): Verdict | undefined {
  if (!worked.known) return undefined;
  const { low, high } = worked.value;
  const verdict = verdictOn(worked, held);
  if (verdict !== 'ok' || worked.open === undefined) return verdict;
  const surely = [low, high].every((at) => verdictOf(at, at, held) === 'ok');
  return surely ? 'ok' : undefined;
}

const NOT_UNDERSTOOD: MeasureValue = { known: false, why: 'a line of the list is not understood' };
