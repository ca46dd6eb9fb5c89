/**
 * Knows what a written temperature comes to in °C.
 * Refuses to know of what it is.
 */
import type { Range } from '../measure/quantity.ts';
import type { TemperatureNode } from './tree.ts';

/** Gas marks in °C, still oven: mark n from 1 is 250 + 25 n °F (UK practice, from memory); ¼ and ½ by the common table. */
export function gasToCelsius(mark: number): number {
  if (mark < 0.5) return 110;
  if (mark < 1) return 125;
  return Math.round(fahrenheitToCelsius(250 + 25 * mark));
}

const fahrenheitToCelsius = (degrees: number): number => (degrees - 32) / 1.8;

/** Degrees without a scale are anything from the one to the other. */
export function celsiusOf({ unit, lowDegrees, highDegrees }: TemperatureNode): Range {
  if (unit === 'unsaid') {
    const low = Math.min(lowDegrees, highDegrees);
    const high = Math.max(lowDegrees, highDegrees);
    return { low: Math.min(low, fahrenheitToCelsius(low)), high: Math.max(high, fahrenheitToCelsius(high)) };
  }
  const convert = (degrees: number) =>
    unit === 'C' ? degrees : unit === 'F' ? fahrenheitToCelsius(degrees) : gasToCelsius(degrees);
  const a = convert(lowDegrees);
  const b = convert(highDegrees);
  return { low: Math.min(a, b), high: Math.max(a, b) };
}
