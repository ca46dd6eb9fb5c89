/**
 * Knows how something worked out for a part, a step or a recipe is kept for as long as that is unchanged.
 */

import { keptOn } from '../notation/kept.ts';
import type { House } from './house.ts';

/** What is kept for one object, in the order in which the functions were made. */
type Kept = unknown[];

const KEPT = keptOn<object, Kept>();
/** Stands for what was worked out and is undefined. */
const NOTHING = Symbol();
let functions = 0;
/** The object asked about last is mostly the one asked about next. */
let lastAsked: object | undefined;
let lastKept: Kept = [];

function keptFor(of: object): Kept {
  if (of === lastAsked) return lastKept;
  let kept = KEPT.get(of);
  if (kept === undefined) {
    kept = [];
    KEPT.set(of, kept);
  }
  lastAsked = of;
  lastKept = kept;
  return kept;
}

/** The function, which works out each object's value once. */
export function onceFor<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const place = functions++;
  return (of) => {
    const kept = keptFor(of);
    const known = kept[place];
    if (known !== undefined) return (known === NOTHING ? undefined : known) as V;
    const value = make(of);
    kept[place] = value === undefined ? NOTHING : value;
    return value;
  };
}

/** The function, which gives its last value again while it is asked with the same; that is kept for the first of them. */
export function onceWith<A extends readonly [object, ...unknown[]], V>(make: (...of: A) => V): (...of: A) => V {
  const last = onceFor((_first: A[0]): { of?: A; value?: V } => ({}));
  return (...of) => {
    const kept = last(of[0]);
    if (kept.of === undefined || !kept.of.every((each, i) => each === of[i])) {
      kept.value = make(...of);
      kept.of = of;
    }
    return kept.value as V;
  };
}

/** An object that keeps for itself what is worked out for it. */
export interface Keeps {
  readonly kept: Kept;
}

/** As `onceFor`, where there are many of them to be asked at every edit. */
export function onceIn<K extends Keeps, V>(make: (of: K) => V): (of: K) => V {
  const place = functions++;
  return (of) => {
    const known = of.kept[place];
    if (known !== undefined) return (known === NOTHING ? undefined : known) as V;
    const value = make(of);
    of.kept[place] = value === undefined ? NOTHING : value;
    return value;
  };
}

/** The same for one of them and a house: worked out again only under another house than the last time. */
export function onceInHouse<K extends Keeps, V>(make: (house: House, of: K) => V): (house: House, of: K) => V {
  const last = onceIn((_of: K): { with?: { readonly house: House; readonly value: V } } => ({}));
  return (house, of) => {
    const known = last(of);
    if (known.with?.house !== house) known.with = { house, value: make(house, of) };
    return known.with.value;
  };
}
