/**
 * Knows when a fridge's temperature must be Fahrenheit written as Celsius.
 */
import { celsiusOf, type HeatReading } from '../../recipe/heat.ts';
import type { Step } from '../../recipe/recipe.ts';
import { says } from './journey.ts';

const FRIDGE: ReadonlySet<string> = new Set(['fridge', 'refrigerator', 'refrigerate', 'chill', 'chiller']);

/** 30 to 45 °C beside a fridge: 40 °F is meant. */
export function isFridgeInWrongUnit(reading: HeatReading, step: Step): boolean {
  const { low } = celsiusOf(reading.node);
  return reading.role === 'surroundings' && reading.node.unit === 'C' && low >= 30 && low <= 45 && says(step, FRIDGE);
}
