/**
 * Knows how a measure and its band are said to a cook.
 */
import { percentRange, significant } from '../../measure/number-text.ts';
import type { Ingredient } from '../model.ts';
import { MEASURES } from './definitions.ts';
import type { Band, MeasureName } from './kind.ts';

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

/** Where a range that lies in its band reaches out of it: ` or above it`. */
export function reachText(name: MeasureName, low: number, high: number, [least, most]: Band): string {
  const isPast = (at: number, edge: number | null, by: number): boolean =>
    edge !== null && (at - edge) * by > 0 && measureText(name, at, at) !== measureText(name, edge, edge);
  const [below, above] = [isPast(low, least, -1), isPast(high, most, 1)];
  if (below && above) return ' or to either side of it';
  return above ? ' or above it' : below ? ' or below it' : '';
}

/** A band of the measure as a cook reads it: `18 to 53 %`, `up to 2 %`, `from 1.3`. */
export function bandText(name: MeasureName, [low, high]: Band): string {
  if (high === null) return `from ${measureText(name, low ?? 0, low ?? 0)}`;
  return low === null || low === 0 ? `up to ${measureText(name, high, high)}` : measureText(name, low, high);
}
