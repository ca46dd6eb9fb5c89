/**
 * Knows things in the order in which they were put there, found by what tells them apart and by the parts that they are of.
 * Refuses to know what they are.
 */

interface Standing<T> {
  thing: T;
  isThere: boolean;
  /** Its place among all. */
  readonly at: number;
}

export class Shelf<T, K> {
  private readonly standing: Standing<T>[] = [];
  private readonly byPart: (Standing<T>[] | undefined)[] = [];
  private readonly byKey = new Map<K, Standing<T>>();
  private readonly keyOf: (thing: T) => K;

  /** `keyOf` gives what tells a thing from all others that are there. */
  constructor(keyOf: (thing: T) => K) {
    this.keyOf = keyOf;
  }

  put(thing: T, parts: readonly number[]): void {
    const standing = { thing, isThere: true, at: this.standing.length };
    this.standing.push(standing);
    this.byKey.set(this.keyOf(thing), standing);
    for (const part of parts) {
      const those = this.byPart[part];
      if (those === undefined) this.byPart[part] = [standing];
      else those.push(standing);
    }
  }

  take(key: K): void {
    const standing = this.byKey.get(key);
    if (standing !== undefined) standing.isThere = false;
  }

  /** In the place of what has the same key. */
  replace(now: T): void {
    const standing = this.byKey.get(this.keyOf(now));
    if (standing !== undefined) standing.thing = now;
  }

  /** What is of those parts, and what has one of those keys, in order. */
  of(parts: readonly number[], keys: readonly K[] = NONE): readonly T[] {
    let found: Set<Standing<T>> | undefined;
    for (const part of parts)
      for (const standing of this.byPart[part] ?? NONE)
        if (standing.isThere) {
          found ??= new Set();
          found.add(standing);
        }
    for (const key of keys) {
      const standing = this.byKey.get(key);
      if (standing === undefined || !standing.isThere) continue;
      found ??= new Set();
      found.add(standing);
    }
    return found === undefined ? NONE : [...found].sort((a, b) => a.at - b.at).map(({ thing }) => thing);
  }

  all(): readonly T[] {
    return this.standing.flatMap(({ thing, isThere }) => (isThere ? [thing] : []));
  }

  last(is: (thing: T) => boolean): T | undefined {
    return this.standing.findLast(({ thing, isThere }) => isThere && is(thing))?.thing;
  }
}

const NONE: readonly never[] = [];
