/**
 * Knows which temperature of a step stands at a place, as it is written.
 */
import type { TemperatureNode } from '../notation/tree.ts';
import type { Journey } from '../recipe/journey/fold.ts';
import type { Place } from './check.ts';

export function temperatureAt(
  { parts }: Pick<Journey, 'parts'>,
  { part, line, start, end }: Place,
): TemperatureNode | undefined {
  const step = part === undefined ? undefined : parts[part]?.steps.find((each) => each.line === line);
  return step?.sentence.items.find(
    (item): item is TemperatureNode => item.kind === 'temperature' && item.start < end && item.end > start,
  );
}
