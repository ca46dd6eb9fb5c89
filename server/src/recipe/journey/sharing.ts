/**
 * Knows which parts share food: each set is of those that had food of each other in hand, at first or second hand.
 * Refuses to know what they do with it.
 */
import type { FoldedPart } from './folded-part.ts';

export interface Sharing {
  /** By set: places of its parts in the order in which they are followed. */
  readonly through: readonly (readonly number[])[];
  /** By place: the number of its set. */
  readonly of: readonly number[];
}

export function sharingOf(folded: readonly FoldedPart[]): Sharing {
  const under: number[] = [];
  const rootOf = (part: number): number => {
    let root = part;
    for (let next = under[root]; next !== undefined; next = under[root]) root = next;
    return root;
  };
  for (const { part, touches } of folded)
    for (const other of touches) {
      const [a, b] = [rootOf(part.index), rootOf(other)];
      if (a !== b) under[Math.max(a, b)] = Math.min(a, b);
    }
  const through: number[][] = [];
  const numbers: (number | undefined)[] = [];
  const of = folded.map(({ part }, at) => {
    const root = rootOf(part.index);
    const number = numbers[root] ?? through.length;
    numbers[root] = number;
    if (number === through.length) through.push([]);
    through[number]?.push(at);
    return number;
  });
  return { through, of };
}

/** Whether those share what they shared before. */
export const isSameSharing = (folded: readonly FoldedPart[], before: readonly FoldedPart[]): boolean =>
  folded.length === before.length &&
  folded.every((each, at) => {
    const old = before[at];
    return (
      each === old ||
      (each.part.index === old?.part.index &&
        each.touches.length === old.touches.length &&
        each.touches.every((part, i) => part === old.touches[i]))
    );
  });
