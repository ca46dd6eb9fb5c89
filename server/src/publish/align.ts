/**
 * Knows how two lists are laid side by side in order, so that as much as can be stands beside what it is like.
 */

export interface Pairing<T> {
  readonly both: readonly (readonly [T, T])[];
  /** Of the first list, with nothing beside it. */
  readonly left: readonly T[];
  readonly right: readonly T[];
}

/** Less alike than this, two things are no pair. */
const ALIKE = 0.5;
/** More cells than this are not weighed one by one: only what is the same is paired. */
const MOST_CELLS = 250_000;

/** Pairs by likeness, 0 to 1; pairs keep the order of both lists. */
export function align<T>(a: readonly T[], b: readonly T[], likeness: (a: T, b: T) => number): Pairing<T> {
  const score = a.length * b.length > MOST_CELLS ? (x: T, y: T) => (likeness(x, y) === 1 ? 1 : 0) : likeness;
  const best: number[][] = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  const at = (i: number, k: number): number => best[i]?.[k] ?? 0;
  const worth: number[][] = a.map((x) => b.map((y) => score(x, y)));
  for (let i = a.length - 1; i >= 0; i--) {
    for (let k = b.length - 1; k >= 0; k--) {
      const alike = worth[i]?.[k] ?? 0;
      const row = best[i] as number[];
      row[k] = Math.max(at(i + 1, k), at(i, k + 1), alike >= ALIKE ? alike + at(i + 1, k + 1) : 0);
    }
  }
  const both: (readonly [T, T])[] = [];
  const left: T[] = [];
  const right: T[] = [];
  let [i, k] = [0, 0];
  while (i < a.length && k < b.length) {
    const [x, y] = [a[i] as T, b[k] as T];
    const alike = worth[i]?.[k] ?? 0;
    if (alike >= ALIKE && at(i, k) === alike + at(i + 1, k + 1)) {
      both.push([x, y]);
      i++;
      k++;
    } else if (at(i + 1, k) >= at(i, k + 1)) {
      left.push(x);
      i++;
    } else {
      right.push(y);
      k++;
    }
  }
  return { both, left: [...left, ...a.slice(i)], right: [...right, ...b.slice(k)] };
}
