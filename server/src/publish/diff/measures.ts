/**
 * Knows which measures of a part moved by more than a kitchen can tell.
 * Refuses to know which ingredient moved them.
 */
import { middle } from '../../measure/quantity.ts';
import { measureText } from '../../recipe/measures/measure-text.ts';
import type { Part } from '../../recipe/model.ts';
import { measuresOf } from '../report-part.ts';
import type { Change } from './change.ts';

export function measureChanges(a: Part, b: Part): Change[] {
  const was = new Map(measuresOf(a).map((m) => [m.name, m]));
  return measuresOf(b).flatMap((is): Change[] => {
    const before = was.get(is.name);
    if (before === undefined || before.value_low === null || before.value_high === null) return [];
    if (is.value_low === null || is.value_high === null) return [];
    const from = { low: before.value_low, high: before.value_high };
    const to = { low: is.value_low, high: is.value_high };
    // What rounds alike, or moves by less than a kitchen's scale shows, is no change.
    const same = measureText(is.name, from.low, from.high) === measureText(is.name, to.low, to.high);
    const slight = Math.abs(middle(to) - middle(from)) <= 0.015 * Math.abs(middle(from));
    return same || slight ? [] : [{ kind: 'measure', part: b.head.name, name: is.name, from, to }];
  });
}
