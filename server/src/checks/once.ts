/**
 * Knows how something worked out for a part, a step or a recipe is kept for as long as that is unchanged.
 */

/** What is kept for one object, in the order in which the functions were made. */
type Kept = unknown[];

const KEPT = new WeakMap<object, Kept>();
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

/** The same for a pair: worked out again only when the first of the two is another than the last time. */
export function onceForBoth<A extends object, K extends object, V>(make: (a: A, of: K) => V): (a: A, of: K) => V {
  const last = onceFor((_of: K): { with?: { readonly a: A; readonly value: V } } => ({}));
  return (a, of) => {
    const kept = last(of);
    if (kept.with?.a !== a) kept.with = { a, value: make(a, of) };
    return kept.with.value;
  };
}
