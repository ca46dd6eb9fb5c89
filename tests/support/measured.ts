/**
 * Knows how a test reads a measure of a recipe's part.
 */
import { contentsOf } from '../../server/src/recipe/measures/contents.ts';
import type { MeasureName } from '../../server/src/recipe/measures/kind.ts';
import { measure } from '../../server/src/recipe/measures/measures.ts';
import { open } from './harness.ts';

/** The middle of a measure of a part, the last one unless it is named; throws with the reason where it is not known. */
export function measured(text: string, name: MeasureName, part?: string): number {
  const { low, high } = measuredRange(text, name, part);
  return (low + high) / 2;
}

export function measuredRange(text: string, name: MeasureName, part?: string): { low: number; high: number } {
  const { parts } = open(text).recipe;
  const of = part === undefined ? parts.at(-1) : parts.find((p) => p.head.name === part);
  if (of === undefined) throw new Error('no such part');
  const worked = measure(name, contentsOf(of));
  if (!worked.known) throw new Error(worked.why);
  return worked.value;
}
