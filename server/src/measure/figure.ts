/**
 * Knows how many figures of a number are worth printing, by how wide it is known.
 * Refuses to know units.
 */
import type { Range } from './quantity.ts';

/** The number with no more figures than its spread bears: whole from 100, two figures below, one more where it is exact. */
export function writeFigure(value: number, range?: Range): string {
  if (!Number.isFinite(value)) return '?';
  const spread = range === undefined ? 0 : range.high - range.low;
  if (spread > 0) {
    const place = 10 ** Math.max(0, Math.floor(Math.log10(spread)) - 1);
    if (place > 1) return String(Math.round(value / place) * place);
  }
  if (Math.abs(value) >= 100) return String(Math.round(value));
  return String(Number(value.toPrecision(2)));
}
