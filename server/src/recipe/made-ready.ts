/**
 * Knows which mention of an ingredient only makes it ready (`Melt the butter.`), so that all of it is still there for the portions that follow,
 * and how many times over one takes its amount.
 * Refuses to know amounts.
 */
import type { Range } from '../measure/quantity.ts';
import type { Act, Craft } from '../prose/event.ts';
import { roundsOf } from '../prose/rounds.ts';
import { type BoundEvent, boundEvents } from './journey/bind.ts';
import type { Mention, Step } from './model.ts';

/** How many times over the amount that it says is taken; `sentences` are those of its part, which may count the jars. */
export function timesTaken({ sentence }: Step, { portion, from, whole }: Mention, sentences: Sentences): Range {
  if (portion.kind !== 'amount' && portion.kind !== 'share') return ONCE;
  const { items } = sentence;
  // Where the amount stands: `each with 1 tsp of the sugar`.
  const at = items.findIndex(({ start }) => start === whole.start);
  const times = roundsOf(items, at < 0 ? from : at, sentences);
  // `Half on each`: of how many, nobody says.
  return portion.kind === 'share' && times.high === Number.POSITIVE_INFINITY ? ONCE : times;
}

type Sentences = NonNullable<Parameters<typeof roundsOf>[2]>;
const ONCE: Range = { low: 1, high: 1 };

/** Whether all that happens to it in its step happens to it alone; of a plain mention too where nobody can say what happens. */
export function isMadeReady(step: Step, mention: Mention): boolean {
  const events = boundEvents(step).filter(({ names }) => names.some((name) => name.mention === mention));
  return (events.length > 0 || mention.portion.kind === 'plain') && events.every((each) => readies(each, mention));
}

function readies({ event, names, into }: BoundEvent, mention: Mention): boolean {
  // `Slice the remaining onions`; what is put somewhere, or heated, is used.
  if (mention.portion.kind === 'rest' && !KNIFE.has(event.act)) return false;
  // `Cover the gelatine with cold water`: what it soaks in is poured away where portions of it follow.
  if (event.act === 'cover' && names.some((name) => name.mention === mention && name.role === 'with')) return true;
  // `Dip the peaches in boiling water`
  const isAlone = event.medium !== undefined || (event.craft !== undefined && ALONE.has(event.craft));
  // `Season the tomatoes with the salt`: they are still called so.
  if (event.craft !== undefined && ON_THE_OUTSIDE.has(event.craft))
    return names.every((name) => (name.role === 'with') === (name.mention !== mention));
  if (!READY.has(event.act) && !((event.act === 'combine' || event.act === 'unknown') && isAlone)) return false;
  if (into !== undefined) return false;
  // `Brown it in all the butter` uses the butter, and of the beef browned in it all is still there.
  const mayBeWith = event.act === 'heat' || event.act === 'steep';
  return names.every((name) =>
    name.role === 'with' ? mayBeWith && name.mention !== mention : name.mention === mention,
  );
}

/** What is done to one food, and puts nothing to it. */
const READY: ReadonlySet<Act> = new Set<Act>([
  'heat',
  'cut',
  'mince',
  'cool',
  'freeze',
  'thaw',
  'dry',
  'smoke',
  'steep',
  'stay',
  'ready',
  'read',
  'remove',
  'open',
  'shape',
  'divide',
  'pierce',
  'put',
  'discard',
]);
const KNIFE: ReadonlySet<Act> = new Set<Act>(['cut', 'mince', 'divide']);
/** A little is put to it, and changes no name. */
const ON_THE_OUTSIDE: ReadonlySet<Craft> = new Set<Craft>(['season', 'brush', 'dust']);
/** It may be beaten by itself. */
const ALONE: ReadonlySet<Craft> = new Set<Craft>(['whip', 'beat', 'sift', 'knead', 'roll']);
