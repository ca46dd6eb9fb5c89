/**
 * Knows from which earlier parts the steps of a part may take something: those that they or its list name, and, where words point with no
 * name, whatever stands about.
 * Refuses to know what they take.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Act } from '../../prose/event.ts';
import type { Part } from '../model.ts';
import type { Placed } from './ahead.ts';
import { boundEvents, clocksOf } from './bind.ts';
import { WAS } from './bodies.ts';
import { larderOf } from './larder.ts';
import { isReadInside } from './readings.ts';

export interface Related {
  /** Indexes of other parts. */
  readonly parts: readonly number[];
  /** `The mixture`: it may be the last one made before. */
  readonly mixture: boolean;
  /** A figure is read in the middle of something, and nothing listed has one: it is of what is raw yet. */
  readonly raw: boolean;
  /** It begins with an order that names nothing, and lists nothing that is meant: it goes on with what was made ready before. */
  readonly goesOn: boolean;
  /** `Turn the oven off`: whatever is in it cools. */
  readonly hot: boolean;
  /** It is later by the clock: whatever was left has lain until then. */
  readonly clock: boolean;
}

const RELATED = keptOn<Placed, Related>();

export function relatedOf(placed: Placed): Related {
  let related = RELATED.get(placed);
  if (related === undefined) {
    related = make(placed);
    RELATED.set(placed, related);
  }
  return related;
}

const ALONE: Related = { parts: [], mixture: false, raw: false, goesOn: false, hot: false, clock: false };

function make({ part, steps }: Placed): Related {
  let others: Set<number> | undefined;
  let [mixture, raw, hot, clock] = [false, false, false, false];
  const see = (index: number | undefined) => {
    if (index === undefined || index < 0 || index === part.index) return;
    others ??= new Set();
    others.add(index);
  };
  const { takesIn, flesh } = larderOf(part);
  for (const index of takesIn) see(index);
  // `Grill until 75 C inside`: a part that lists no meat and begins so goes on with what was made ready before.
  const first = steps[0] && boundEvents(steps[0])[0];
  if (first?.event.act === 'heat' && first.names.length === 0 && flesh.length === 0) mixture = true;
  const goesOn = isGoingOn(part, steps);
  for (const step of steps) {
    if (clocksOf(step).length > 0) clock = true;
    for (const { part: named, ingredients } of step.mentions) {
      see(named);
      for (const ref of ingredients) see(ref.part);
    }
    for (const { event, unnamed } of boundEvents(step)) {
      if (unnamed === 'mixture') mixture = true;
      if (flesh.length === 0 && isReadInside(event)) raw = true;
      if (event.act === 'adjust' && event.where.some(({ way }) => way === 'off')) hot = true;
    }
  }
  return others === undefined && !mixture && !raw && !goesOn && !hot && !clock
    ? ALONE
    : { parts: [...(others ?? [])], mixture, raw, goesOn, hot, clock };
}

/** `Light the coals. Thread on skewers and grill`: what is threaded stands in no list of this part. */
function isGoingOn(part: Part, steps: Placed['steps']): boolean {
  const { was, unnamed, isNameless } = larderOf(part);
  if (was.length > 0 && (isNameless || unnamed.length > 0 || was.some((each) => (each & WAS.animal) !== 0)))
    return false;
  for (const step of steps)
    for (const { event, names, unnamed: said } of boundEvents(step)) {
      if (MOVES_NOTHING.has(event.act) || event.said !== 'yes' || event.as !== 'ordered') continue;
      return said !== 'vessel' && names.every(({ role }) => role === 'with');
    }
  return false;
}

/** A thing is made ready, or set otherwise. */
const MOVES_NOTHING: ReadonlySet<Act> = new Set<Act>(['ready', 'adjust', 'read', 'discard']);

/** Those parts, the ones that their lists take in, and those lists of `listsAlone` that stand above. */
export function reachedFrom(placed: Placed, parts: readonly Part[], alone: readonly number[]): readonly number[] {
  const { parts: named } = relatedOf(placed);
  const apart = alone.length === 0 ? alone : alone.filter((index) => index < placed.part.index);
  if (named.length === 0 && apart.length === 0) return named;
  const reached = new Set([...named, ...apart]);
  for (const index of reached) {
    const other = parts[index];
    if (other !== undefined) for (const takenIn of larderOf(other).takesIn) if (takenIn >= 0) reached.add(takenIn);
  }
  reached.delete(placed.part.index);
  return [...reached];
}

/** Indexes of parts that have no steps of their own, with meat that no step names. */
export const listsAlone = (parts: readonly Part[]): readonly number[] =>
  parts.filter(isListAlone).map(({ index }) => index);

function isListAlone(part: Part): boolean {
  if (part.steps.length > 0) return false;
  const { flesh, unnamed } = larderOf(part);
  return flesh.some((ingredient) => unnamed.includes(ingredient));
}
