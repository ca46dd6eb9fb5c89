/**
 * Knows how a measure and its band are said to a cook.
 */
import { percentRange, significant } from '../../measure/number-text.ts';
import type { Ingredient } from '../model.ts';
import { MEASURES } from './definitions.ts';
import type { MeasureName } from './kind.ts';

/** A value of the measure as a cook reads it: `31 to 38 %`, `2.4 to 3`, `−2.6 °C`. */
export function measureText(name: MeasureName, low: number, high: number): string {
  const { unit } = MEASURES[name];
  if (unit === 'percent') return percentRange(low, high);
  const say = (value: number) => (unit === 'celsius' ? value.toFixed(1).replace('-', '−') : significant(value, 2));
  const [a, b] = [say(low), say(high)];
  const words = a === b ? a : unit === 'celsius' ? `${b} to ${a}` : `${a} to ${b}`;
  return unit === 'celsius' ? `${words} °C` : words;
}

/** `, whatever cream it is`: what the range allows for. */
export function whatever(open: readonly Ingredient[] = []): string {
  const [first, ...more] = open;
  if (first === undefined) return '';
  if (more.length > 0) return `, whatever ${open.map((i) => `\`${i.name}\``).join(', ')} are`;
  return first.match.kind === 'ambiguous'
    ? `, whatever \`${first.name}\` it is`
    : `, whatever \`${first.name}\` brings`;
}

/** A band of the measure as a cook reads it: `18 to 40 %`, `up to 2 %`, `from 1.3`. */
export function bandText(name: MeasureName, [low, high]: readonly [number | null, number | null]): string {
  if (high === null) return `from ${measureText(name, low ?? 0, low ?? 0)}`;
  return low === null || low === 0 ? `up to ${measureText(name, high, high)}` : measureText(name, low, high);
}
