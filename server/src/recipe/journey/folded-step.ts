/**
 * Knows a step folded, and keeps it: it is folded again only where what came before it, or a list that it takes from, is another.
 * Refuses to know what its events do.
 */
import { keptOn } from '../../notation/kept.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { Act } from '../../prose/event.ts';
import { topicBits, topicsAt } from '../../prose/topics.ts';
import type { Part, Step } from '../model.ts';
import { type BoundEvent, boundEvents, clocksOf } from './bind.ts';
import type { Body, Stay } from './bodies.ts';
import { Folder } from './folder.ts';
import { isSameLarder, type Larder, larderOf } from './larder.ts';
import { putsAway } from './passing.ts';
import { type FoldState, isSameFold } from './state.ts';

/** A step folded. */
export interface FoldedStep {
  /** Index of its part. */
  readonly part: number;
  /** Its line in the part, from 0. */
  readonly line: number;
  readonly events: readonly BoundEvent[];
  readonly after: FoldState;
  readonly stays: readonly Stay[];
  /** Bodies that it put somewhere, of those that are there or were at some time. */
  readonly put: ReadonlySet<number>;
  /** Bodies that nothing can happen to any more. */
  readonly ended: readonly Body[];
  /** Lists that it took from, by part. */
  readonly used: ReadonlyMap<number, Larder>;
}

interface Kept {
  readonly before: FoldState;
  readonly folded: FoldedStep;
}

const FOLDED = keptOn<Step, Kept>();

export function foldStep(before: FoldState, part: Part, step: Step, parts: readonly Part[]): FoldedStep {
  const kept = FOLDED.get(step);
  if (kept !== undefined && isSameFold(kept.before, before) && stillUsed(kept.folded.used, parts)) return kept.folded;
  const events = boundEvents(step);
  const folder = new Folder(before, part, step, parts, events.some(putsAway));
  const clocks = [...clocksOf(step)];
  events.forEach((event, i) => {
    // `Refrigerate after opening`: until then it lies as it lay.
    const isLater = KEPT_ONCE_OPEN.has(event.event.act) && [events[i - 1], events[i + 1]].some(isOpening);
    const isTried = isTestPiece(event, events[i + 1], step) || isTestPiece(events[i - 1], event, step);
    if (!isLater && !isTried && !isOpening(event)) folder.takeAt(event, clocks);
  });
  for (const clock of clocks) folder.passTo(clock, undefined);
  const eve = clocksOf(step).find((clock) => clock.eve);
  if (eve !== undefined) folder.endEve(eve);
  const { state: after, stays, put, ended, used } = folder.top;
  const folded: FoldedStep = {
    part: part.index,
    line: step.line,
    events,
    after,
    stays,
    put,
    ended,
    used,
  };
  FOLDED.set(step, { before, folded });
  return folded;
}

/** `After opening`. */
const isOpening = (by: BoundEvent | undefined): boolean => by?.event.act === 'open' && by.event.as === 'before';
const KEPT_ONCE_OPEN: ReadonlySet<Act> = new Set<Act>(['cool', 'stay', 'freeze', 'eat']);

/** `Fry a small piece and taste it`: the rest is as it was. */
const isTestPiece = (by: BoundEvent | undefined, next: BoundEvent | undefined, { sentence }: Step): boolean =>
  by?.event.act === 'heat' &&
  by.unnamed === 'name' &&
  next?.event.craft === 'taste' &&
  by.event.objects.some(
    ({ start, role }) => role === 'what' && isLump(sentence.items.find((item) => item.start === start)),
  );
const isLump = (item: SentenceItem | undefined): boolean => (topicsAt(item).one & LUMP) !== 0;
const LUMP = topicBits(['lump']);

/** Whether those lists are as they were. */
export function stillUsed(used: ReadonlyMap<number, Larder>, parts: readonly Part[]): boolean {
  for (const [index, larder] of used) {
    const part = parts[index];
    if (part === undefined || !isSameLarder(larderOf(part), larder)) return false;
  }
  return true;
}
