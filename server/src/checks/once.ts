/**
 * Knows how something worked out for a part, a step or a recipe is kept for as long as that is unchanged.
 */

import { onceFor } from '../notation/kept.ts';
import type { House } from './house.ts';

export { onceFor } from '../notation/kept.ts';

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

/** The same for an object and a house: worked out again only under another house than the last time. */
export function onceInHouse<K extends object, V>(make: (house: House, of: K) => V): (house: House, of: K) => V {
  const last = onceFor((_of: K): { with?: { readonly house: House; readonly value: V } } => ({}));
  return (house, of) => {
    const known = last(of);
    if (known.with?.house !== house) known.with = { house, value: make(house, of) };
    return known.with.value;
  };
}
