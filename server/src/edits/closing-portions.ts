/**
 * Knows how the portions that steps name are made to add up to the line they are taken from, once each is rounded: the last gives way.
 * Refuses where the steps did not use the line up before.
 */
import { type NumberStyle, numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { LedgerEntry } from '../recipe/model.ts';

/** An amount as it is now written: its first number and its unit. */
export interface Written {
  readonly value: number;
  readonly unit: UnitSymbol | undefined;
}

/** A miss below this is no miss: a scale does not show it. */
const CLOSED = 0.004;

/**
 * The number that the last portion must have, as text, so that all add up to the line; undefined where they do already,
 * or where it cannot be said.
 */
export function closingPortion(
  entry: LedgerEntry,
  line: Written,
  portions: readonly (Written & { readonly node: MeasuredNode })[],
  measures: Measures,
): string | undefined {
  const last = portions.at(-1);
  if (last === undefined || portions.length < 2 || last.node.high !== undefined) return undefined;
  const taking = entry.uses.filter((u) => u.taken.high > 0);
  const named = taking.every((u) => u.mention.portion.kind === 'amount' && u.mention.ingredients.length === 1);
  if (!named || taking.length !== portions.length || entry.unsure || entry.left.high > 0.02) return undefined;
  const sizes = [line, ...portions].map((w) => sizeOf(w, measures));
  const dimensions = new Set([line, ...portions].map(({ unit }) => (unit === undefined ? '' : dimensionOf(unit))));
  if (dimensions.size > 1) return undefined;
  const [whole = 0, ...taken] = sizes;
  const others = taken.slice(0, -1).reduce((a, b) => a + b, 0);
  if (Math.abs((others + (taken.at(-1) ?? 0)) / whole - 1) < CLOSED) return undefined;
  const value = (whole - others) / sizeOf({ value: 1, unit: last.unit }, measures);
  if (!(value > 0.05 * last.value)) return undefined;
  return textOf(value, last);
}

const sizeOf = ({ value, unit }: Written, measures: Measures): number =>
  unit === undefined ? value : value * (baseOf(unit, measures) ?? Number.NaN);

function textOf(value: number, { unit, node }: Written & { readonly node: MeasuredNode }): string {
  if (unit === 'g' || unit === 'ml' || unit === 'kg' || unit === 'l')
    return trimmed(value, unit === 'g' || unit === 'ml' ? 2 : 4);
  const style: NumberStyle = node.low.style === 'glyph' ? 'glyph' : 'plain';
  return numberText(Math.round(value * 48) / 48, style);
}
