/**
 * Knows from which earlier parts the steps of a part may take something: those that they or its list name, and, where words point with no
 * name, whatever stands about.
 * Refuses to know what they take.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Part } from '../model.ts';
import type { Placed } from './ahead.ts';
import { boundEvents, clocksOf } from './bind.ts';
import { larderOf } from './larder.ts';

export interface Related {
  /** Indexes of other parts. */
  readonly parts: readonly number[];
  /** `The mixture`: it may be the last one made before. */
  readonly mixture: boolean;
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

const ALONE: Related = { parts: [], mixture: false, hot: false, clock: false };

function make({ part, steps }: Placed): Related {
  let others: Set<number> | undefined;
  let [mixture, hot, clock] = [false, false, false];
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
  for (const step of steps) {
    if (clocksOf(step).length > 0) clock = true;
    for (const { part: named, ingredients } of step.mentions) {
      see(named);
      for (const ref of ingredients) see(ref.part);
    }
    for (const { event, unnamed } of boundEvents(step)) {
      if (unnamed === 'mixture') mixture = true;
      if (event.act === 'adjust' && event.where.some(({ way }) => way === 'off')) hot = true;
    }
  }
  return others === undefined && !mixture && !hot && !clock
    ? ALONE
    : { parts: [...(others ?? [])], mixture, hot, clock };
}

/** Those parts, and the ones that their lists take in. */
export function reachedFrom(placed: Placed, parts: readonly Part[]): readonly number[] {
  const { parts: named } = relatedOf(placed);
  if (named.length === 0) return named;
  const reached = new Set(named);
  for (const index of reached) {
    const other = parts[index];
    if (other !== undefined) for (const takenIn of larderOf(other).takesIn) if (takenIn >= 0) reached.add(takenIn);
  }
  reached.delete(placed.part.index);
  return [...reached];
}
