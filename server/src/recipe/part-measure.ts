/**
 * Knows a measure of what a part is made of, and that there is none where lines of its list are not understood.
 */
import { contentsOf } from './contents.ts';
import { type MeasureName, type MeasureValue, measure } from './measures.ts';
import type { Part } from './recipe.ts';

/** Whether the part's sums, or those of an earlier part that it takes in, lack what a line brings. */
export const isIncomplete = ({ head, includes }: Part): boolean =>
  head.notUnderstood.length > 0 || includes.some(({ notUnderstood }) => notUnderstood.length > 0);

export const partMeasure = (part: Part, name: MeasureName): MeasureValue =>
  isIncomplete(part) ? NOT_UNDERSTOOD : measure(name, contentsOf(part));

const NOT_UNDERSTOOD: MeasureValue = { known: false, why: 'a line of the list is not understood' };
