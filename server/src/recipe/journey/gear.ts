/**
 * Knows which events are about empty vessels alone, made ready for food: `wash the jars, put them in an oven at 140 C and keep them hot`.
 * Refuses to know what is put in them later.
 */
import type { Act } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import type { Body } from './bodies.ts';
import type { Worktop } from './worktop.ts';

/** With these nothing is filled. */
const HANDLES: ReadonlySet<Act> = new Set<Act>(['ready', 'heat', 'cool', 'freeze', 'stay', 'dry', 'remove', 'put']);

/** Whether it is done with vessels that nothing lies in, or with what the event before it in the step did that with. */
export function isOfEmpty(
  { event, names, unnamed }: BoundEvent,
  top: Worktop,
  before: BoundEvent['event'] | undefined,
): boolean {
  if (names.length > 0 || !HANDLES.has(event.act) || top.larder(top.part.index).isNameless) return false;
  const vessel = unnamed === 'vessel' ? event.vessel : unnamed === 'it' ? before?.vessel : undefined;
  if (vessel === undefined) return false;
  // `Fill the jars`, `put it in the tin`
  if (event.act === 'put' && event.where.length === 0) return false;
  if (unnamed === 'it' && event.vessel !== undefined && event.act !== 'ready') return false;
  const { bodies, left } = top.state;
  if (bodies.length === 0) return left.every((share) => share >= 1);
  return vessel.is === 'jar' && !bodies.some(isInJar);
}

const isInJar = ({ vessel, shut }: Body): boolean => vessel === 'jar' || vessel === 'airtight' || shut === 'jar';
