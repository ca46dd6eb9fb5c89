/**
 * Knows how long work is done while messages are read: in slices, between which what was taken back is left.
 * Refuses to know what the work is.
 */
import type { InPieces } from '../measure/in-pieces.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Turn } from './schedule.ts';

/** The longest time, in ms, for which no message is read; a piece that is longer ends its slice. */
export const SLICE_MS = 10;

/** A text of fewer lines is worked out sooner than it is cut up. */
const LEAST_LINES = 300;

export interface Clock {
  readonly turn: Turn;
  /** Milliseconds. */
  readonly now: () => number;
}

/** Whether what is found in a text is better worked out in slices. */
export const isLong = (snapshot: Snapshot): boolean =>
  !snapshot.isWorkedOut && snapshot.document.lines.length >= LEAST_LINES;

/** Does work to its end; false where it was left, as it is wanted no more. */
export async function inSlices(
  work: InPieces<unknown>,
  { turn, now }: Clock,
  isWanted: () => boolean,
): Promise<boolean> {
  let started = now();
  while (work.next().done !== true) {
    if (now() - started < SLICE_MS) continue;
    await new Promise<void>((resolve) => turn(resolve));
    if (!isWanted()) return false;
    started = now();
  }
  return true;
}
