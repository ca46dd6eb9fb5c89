/**
 * Knows of what is said to take so long, with no verb that lasts, whether the food is left alone meanwhile.
 * Refuses to know where it then lies (`stays.ts`).
 */
import type { Range } from '../../measure/quantity.ts';
import type { Event } from '../../prose/event.ts';
import type { Body, Lying } from './bodies.ts';

/** `It wants a full day`, `they are picked at until the last guest goes`: so long it is where it is. */
export const isToldSoLong = ({ act, as, times, lasts }: Event, { band, lies }: Body, { low }: Range): boolean =>
  as === 'told' &&
  // `It murmurs there for six hours`, on the stove: nobody knows the word, and it may be heated.
  !(act === 'unknown' && lasts === 'waits' && band === 'hot' && lies.place === 'stove') &&
  (act === 'unknown' ||
    (PICKED.has(act) && low >= PICKED_MIN && times.some(({ kind }) => kind === 'spent' || kind === 'until')));
const PICKED: ReadonlySet<Event['act']> = new Set(['cut', 'eat', 'remove', 'open']);
/** So long nobody eats at a sitting (judgement). */
const PICKED_MIN = 120;

/** `Put the lid on and go to bed`: so long nothing else is done with it. */
export const isLeftClosed = ({ act, times, verb }: Event, { lies }: Body, { low }: Range): boolean =>
  CLOSES.has(act) &&
  low >= AWAY_MIN &&
  // `By noon tomorrow ladle it out`
  times.some(({ kind, start }) => (kind === 'spent' || kind === 'until') && start > (verb?.end ?? 0)) &&
  !isWorking(lies);
const CLOSES: ReadonlySet<Event['act']> = new Set(['close', 'cover', 'put', 'pack']);
/** Three hours: nobody stands by. */
const AWAY_MIN = 180;
/** Where what lies there is heated as long as it lies there. */
const isWorking = ({ place }: Lying): boolean => place === 'oven' || place === 'hot';
