/**
 * Knows how what is worked out for an object is kept for as long as the object lives.
 * Not in a weak map: its table grows old, and whatever it holds of the young is then carried along until the whole memory is looked
 * through, which made a third of the time and half of the memory of a large run. Nor as a property, which a copy would take over.
 */

export interface Kept<K extends object, V> {
  readonly get: (of: K) => V | undefined;
  readonly set: (of: K, value: V) => void;
}

/** A place of its own on every object. */
export function keptOn<K extends object, V>(): Kept<K, V> {
  /** A private field of a class is given to whatever its base class returns. */
  class Place extends Itself {
    #value: V;

    constructor(of: K, value: V) {
      super(of);
      this.#value = value;
    }

    static get(of: object): V | undefined {
      return #value in of ? of.#value : undefined;
    }

    static set(of: K, value: V): void {
      if (#value in of) of.#value = value;
      else new Place(of, value);
    }
  }
  return Place;
}

function same(of: object): object {
  return of;
}
const Itself = same as unknown as new (of: object) => object;

/** Stands for what was worked out and is undefined. */
const NOTHING = Symbol();

/** The function, which works out each object's value once. */
export function onceFor<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const kept = keptOn<K, V | typeof NOTHING>();
  return (of) => {
    const known = kept.get(of);
    if (known !== undefined) return (known === NOTHING ? undefined : known) as V;
    const value = make(of);
    kept.set(of, value === undefined ? NOTHING : value);
    return value;
  };
}
