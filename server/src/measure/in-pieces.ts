/**
 * Knows work that is done in pieces: whoever waits for it may look up between two of them, and leave it.
 * Refuses to know when that is.
 */

/** Work whose pieces end where it yields, and what comes of it. */
export type InPieces<T> = Generator<undefined, T, undefined>;

/** What comes of it, without looking up. */
export function atOnce<T>(work: InPieces<T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done === true) return value;
  }
}

/** The same of every item, each a piece of its own. */
export function* eachInPieces<T, R>(items: readonly T[], make: (item: T, index: number) => R): InPieces<R[]> {
  const made: R[] = [];
  for (let i = 0; i < items.length; i++) {
    made.push(make(items[i] as T, i));
    yield;
  }
  return made;
}
