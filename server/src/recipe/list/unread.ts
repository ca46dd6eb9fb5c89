/**
 * Knows when a line that could not be read is only an ingredient without its amount.
 */
import type { Line } from '../../notation/tree.ts';
import type { World } from '../model.ts';
import { isBareLine } from './bare-line.ts';

/** A line of a few words, without a number, that names a food of the book. */
export function lacksOnlyItsAmount(line: Line, world: World): boolean {
  const { statement } = line;
  if (statement.kind !== 'unread' || line.faults.some((f) => f.code !== 'not-a-statement' || f.write !== undefined))
    return false;
  const { text } = statement.words;
  if (text.length > 60 || /\d|[½⅓⅔¼¾]/.test(text)) return false;
  return world.book.findInText(text).kind !== 'unknown' && !isBareLine(line, world);
}
