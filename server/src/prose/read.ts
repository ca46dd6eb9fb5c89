/**
 * Knows the order of the passes: tag, noun or verb, cut, frame, slots, polarity, others' ways, ellipsis. Each only adds.
 * Refuses to know where the words come from: a step, a note, a preparation.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { countBatches, settleBeside } from './beside.ts';
import { clockRunsIn } from './clock.ts';
import { cut } from './cut.ts';
import { share } from './ellipsis.ts';
import type { Event } from './event.ts';
import { findBareFigures } from './figures.ts';
import { frame } from './frame.ts';
import { tellRare } from './left-rare.ts';
import { sensesOf } from './lexicon.ts';
import { settle } from './nouns.ts';
import type { NameRun } from './pieces.ts';
import { settleSaying } from './polarity.ts';
import { fill } from './slots.ts';
import { giveTimes } from './spans.ts';
import { tag } from './tag.ts';
import { timesIn } from './times.ts';
import { tellOfOthers } from './told.ts';

/**
 * What the items say is done, in the order said. `runs` are the items that are somebody's name, in order, none over another.
 * Never throws, whatever the text; what is not understood is an `unread` slot or an event of an unknown act.
 */
export function read(items: readonly SentenceItem[], runs: readonly NameRun[]): readonly Event[] {
  const senses = sensesOf(items);
  const pieces = tag(items, runs, timesIn(items, runs, senses), senses, clockRunsIn(items, runs, senses));
  settle(pieces);
  findBareFigures(pieces, items);
  const clauses = cut(pieces);
  frame(pieces, items, clauses);
  fill(pieces, items, clauses);
  tellRare(pieces, items, clauses);
  giveTimes(pieces, clauses);
  settleSaying(pieces, clauses);
  tellOfOthers(pieces, items, clauses);
  settleBeside(pieces, clauses);
  countBatches(pieces, items, senses, clauses);
  share(pieces, clauses);
  const events: Event[] = [];
  for (const { event } of clauses) if (event !== undefined && isSaying(event)) events.push(event);
  return events;
}

/** `This is needed`, `it looks good` say nothing that happens; `it goes in the oven` does. */
const isSaying = ({ act, as, where, times, temperatures }: Event): boolean =>
  act !== 'unknown' || as === 'ordered' || where.length + times.length + temperatures.length > 0;
