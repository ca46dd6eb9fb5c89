/**
 * Knows which foods and parts the events of a step speak of: the reader of sentences gets names as runs, and its events get the mentions
 * that stand within them.
 * Refuses to know where those foods lie by then (`fold.ts`).
 */
import { keptOn } from '../../notation/kept.ts';
import type { Sentence, Span } from '../../notation/tree.ts';
import { type ClockSaid, clocksIn } from '../../prose/clock.ts';
import type { Act, Event, Slot } from '../../prose/event.ts';
import type { NameRun } from '../../prose/pieces.ts';
import { read } from '../../prose/read.ts';
import type { Mention, Step } from '../model.ts';

/** A name within an event, and what it is there. */
export interface BoundName {
  readonly mention: Mention;
  readonly role: Slot['role'];
  readonly already?: Slot['already'];
  /** It stands in a thought of its own before: `Bay, pepper, parsley. An hour at a simmer.` */
  readonly apart?: true;
}

export interface BoundEvent {
  readonly event: Event;
  /** From left to right. */
  readonly names: readonly BoundName[];
  /** What is acted on is said without a name: `it`, `the mixture`, a vessel, nothing, or a word that names nothing listed. */
  readonly unnamed: Slot['by'] | undefined;
  /** The same of what something goes into. */
  readonly into: Slot['by'] | undefined;
  /** What is looked at to tell when it is done: `until the fish flakes`. */
  readonly seen?: readonly Mention[];
  /** Somewhere in its step a time is told by words that nobody reads: `by the time we flip the sign`. */
  readonly horizon?: true;
}

/** By the mentions, which are those of one step alone: lines that say the same share their sentence. */
const BOUND = keptOn<Step['mentions'], readonly BoundEvent[]>();

/** What a step orders, bound. The same objects while its mentions are, and no other step's. */
export function boundEvents({ sentence, mentions }: Step): readonly BoundEvent[] {
  const kept = BOUND.get(mentions);
  if (kept !== undefined) return kept;
  const events: BoundEvent[] = [];
  let from = 0;
  for (const event of read(sentence.items, runsOf(mentions))) {
    const before = events.at(-1);
    from = Math.max(from, before === undefined ? 0 : reachOf(before.event, event, sentence));
    // `…, keeping it above 65 C`: the figure is that of the stay before.
    if (before?.event.act === 'stay' && isFigureOf(event))
      events[events.length - 1] = { ...before, event: { ...before.event, temperatures: event.temperatures } };
    else events.push(bind(event, mentions, from, sentence));
  }
  addLost(events, sentence, mentions);
  if (events.some(hasHorizon)) for (const [i, event] of events.entries()) events[i] = { ...event, horizon: true };
  BOUND.set(mentions, events);
  return events;
}

/** With its signs: `fill so that a finger of oil stands on top` says of the oil what the jar looks like. */
const endOf = ({ end, until }: Event): number => Math.max(end, ...until.map((sign) => sign.end));

/** `Add the milk, then the flour; let them lick it`: what stands before the mark goes in with the milk (`addLost`). */
function reachOf(before: Event, { start }: Event, { items }: Sentence): number {
  const end = endOf(before);
  if (!PUTS_IN.has(before.act) || before.said !== 'yes') return end;
  const mark = items.find(
    (item) => item.kind === 'mark' && ENDS.has(item.mark) && item.start >= end && item.end <= start,
  );
  return mark?.end ?? end;
}

const hasHorizon = ({ event }: BoundEvent): boolean =>
  !HAS_SIGNS.has(event.act) && event.until.some(({ is }) => is === undefined);
/** What goes on until the food is as it should be. */
const HAS_SIGNS: ReadonlySet<Act> = new Set<Act>(['heat', 'dry', 'smoke', 'rise', 'combine', 'cut', 'shape']);

/** `Beat in the milk, then the flour a scoop at a time`: what no verb takes goes where the one before it in the same sentence puts things. */
function addLost(events: BoundEvent[], { items }: Sentence, mentions: readonly Mention[]): void {
  for (const mention of mentions) {
    if (mention.verb || events.some(({ names }) => names.some((name) => name.mention === mention))) continue;
    const at = events.findLastIndex(({ event }) => event.end <= mention.start);
    const before = events[at];
    if (before === undefined || !PUTS_IN.has(before.event.act) || before.event.said !== 'yes') continue;
    // `Stir until the honey dissolves`: it is looked at.
    if (events.some(({ event }) => event.until.some((sign) => isWithin(mention, sign)))) continue;
    const isApart = items.some(
      (item) =>
        item.kind === 'mark' && ENDS.has(item.mark) && item.start >= before.event.end && item.end <= mention.start,
    );
    if (!isApart) events[at] = { ...before, names: [...before.names, { mention, role: 'what' }] };
  }
}

const PUTS_IN: ReadonlySet<Event['act']> = new Set(['combine', 'put', 'pack', 'stuff']);
const ENDS: ReadonlySet<string> = new Set(['.', ';', ':', '(', ')']);

const CLOCKS = keptOn<Step['mentions'], readonly ClockSaid[]>();

/** The points of the clock that a step says; the same objects while its mentions are. */
export function clocksOf({ sentence, mentions }: Step): readonly ClockSaid[] {
  const kept = CLOCKS.get(mentions);
  if (kept !== undefined) return kept;
  const clocks = clocksIn(sentence.items, runsOf(mentions));
  CLOCKS.set(mentions, clocks);
  return clocks;
}

/** `Butter the pan` is left to the verbs. */
const runsOf = (mentions: readonly Mention[]): readonly NameRun[] =>
  mentions.flatMap(({ verb, from, to }) => (verb ? [] : [{ from, to: to + 1 }]));

const isFigureOf = ({ as, act, times, temperatures }: Event): boolean =>
  as === 'beside' && act === 'stay' && times.length === 0 && temperatures.length > 0;

/** Names between the event before, which ends at `from`, and this one are its own too: no verb was read beside them. */
function bind(event: Event, mentions: readonly Mention[], from: number, { items }: Sentence): BoundEvent {
  const { objects } = event;
  const names: BoundName[] = [];
  for (const mention of mentions) {
    if (mention.end <= event.start && isOfGear(event)) continue;
    if (mention.start < Math.min(from, event.start) || mention.end > event.end) {
      // What is shared with another clause has its slot there: `soak and drain the beans`.
      if (!objects.some((slot) => isWithin(mention, slot))) continue;
    }
    const slot = objects.find((each) => isWithin(mention, each));
    // What it stands beside is left there.
    if (slot === undefined && event.where.some((each) => isWithin(mention, each))) continue;
    // The oil it is fried in is what it lies in, and no object.
    const isAround =
      slot === undefined && [event.medium, event.vessel].some((each) => each !== undefined && isWithin(mention, each));
    const role = mention.verb || isAround ? 'with' : (slot?.role ?? measuredIn(objects, mention)?.role ?? 'what');
    const isApart = items.some(
      (item) => item.kind === 'mark' && item.mark === '.' && item.start >= mention.end && item.end <= event.start,
    );
    names.push({
      mention,
      role,
      ...(slot?.already !== undefined && { already: slot.already }),
      ...(isApart && { apart: true }),
    });
  }
  const bound = {
    event,
    names,
    unnamed: unnamedIn(objects, 'what', mentions),
    into: unnamedIn(objects, 'into', mentions),
  };
  const seen = event.act === 'heat' ? mentions.filter((mention) => isSeen(event, mention)) : [];
  return seen.length === 0 ? bound : { ...bound, seen };
}

/** In a sign that it goes on until, and not in what the sign is looked for in. */
const isSeen = ({ until }: Event, mention: Mention): boolean =>
  !mention.verb &&
  until.some((sign) => sign.from === 'until' && isWithin(mention, sign) && !(sign.at && isWithin(mention, sign.at)));

/** `Flour, egg, crumb; wash the board`: the board alone is washed. */
const isOfGear = ({ act, objects, vessel }: Event): boolean =>
  (act === 'remove' || act === 'ready') && vessel !== undefined && objects.every(({ by }) => by !== 'name');

/** `With a spoon of salt`: the salt is what the spoon was said to be. */
const measuredIn = (objects: readonly Slot[], { start }: Span): Slot | undefined =>
  objects.find(({ by, end }) => by === 'vessel' && start > end && start - end <= OF);
/** ` of ` */
const OF = 4;

function unnamedIn(objects: readonly Slot[], role: Slot['role'], mentions: readonly Mention[]): Slot['by'] | undefined {
  let found: Slot['by'] | undefined;
  for (const slot of objects) {
    if (slot.role !== role) continue;
    if (mentions.some((mention) => isWithin(mention, slot))) {
      if (slot.by === 'name') return undefined;
      continue;
    }
    // A word that points says more than one that nobody knows.
    if (found === undefined || found === 'name') found = slot.by;
  }
  return found;
}

const isWithin = (mention: Mention, slot: Span): boolean => mention.start < slot.end && slot.start < mention.end;
