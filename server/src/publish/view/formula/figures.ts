/**
 * Knows how a measure's name, value and band are written in the table of measures: per cent without its sign, as the head of the column says.
 * Refuses to know where they stand.
 */
import { significant, trimmed } from '../../../measure/number-text.ts';
import { MEASURES } from '../../../recipe/measures/definitions.ts';
import type { Band, MeasureName } from '../../../recipe/measures/kind.ts';

const unitOf = (name: MeasureName) => MEASURES[name].unit;

/** What is divided by what; with its unit where that is not per cent. */
export function measureWords(name: MeasureName): string {
  const { words, unit } = MEASURES[name];
  if (unit === 'percent') return words;
  return `${words}, ${unit === 'celsius' ? '°C' : 'times'}`;
}

/** A value as the table has it, without its unit. */
export const shown = (name: MeasureName, value: number): number => (unitOf(name) === 'percent' ? value * 100 : value);

/** The same the other way round, as a field sends it. */
export const meant = (name: MeasureName, value: number): number => (unitOf(name) === 'percent' ? value / 100 : value);

/** `41`, `0.4`, `0.02`, `−2.6`. */
export function valueText(name: MeasureName, value: number): string {
  const number = shown(name, value);
  const size = Math.abs(number);
  const text =
    unitOf(name) === 'times'
      ? significant(number, 2)
      : trimmed(number, unitOf(name) === 'celsius' ? 1 : size >= 9.95 ? 0 : size < 0.0999 ? 2 : 1);
  return text.replace('-', '−');
}

/** `41–42`, or one figure where both are written alike; `to` between what carries a sign. */
export function spanText(name: MeasureName, low: number, high: number): string {
  const [a, b] = [valueText(name, low), valueText(name, high)];
  if (a === b) return a;
  return a.includes('−') || b.includes('−') ? `${a} to ${b}` : `${a}–${b}`;
}

/** `5–30`, `up to 2`, `from 1.3`. */
export function bandShown(name: MeasureName, [low, high]: Band): string {
  if (high === null) return `from ${valueText(name, low ?? 0)}`;
  return low === null || low === 0 ? `up to ${valueText(name, high)}` : spanText(name, low, high);
}

/** The step of a dial in the table's figures: a point of per cent, finer where the band is narrow. */
export function stepOf(name: MeasureName, [low, high]: Band): number {
  const span = Math.abs(shown(name, (high ?? 2 * (low ?? 1)) - (low ?? 0)));
  return span >= 10 ? 1 : span >= 1 ? 0.1 : 0.01;
}
