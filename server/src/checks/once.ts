/**
 * Knows how something worked out for a part, or for a recipe, is kept for as long as that is unchanged.
 */

/** The function, which works out each object's value once. */
export function onceFor<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    let kept = known.get(of);
    if (kept === undefined) {
      kept = { value: make(of) };
      known.set(of, kept);
    }
    return kept.value;
  };
}

/** The same for a pair: worked out once for both together. */
export function onceForBoth<A extends object, K extends object, V>(make: (a: A, of: K) => V): (a: A, of: K) => V {
  const by = onceFor((a: A) => onceFor((of: K) => make(a, of)));
  return (a, of) => by(a)(of);
}
