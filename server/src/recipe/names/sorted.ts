/** Knows how to find a place in an ascending list. */

/** The index of the first number that is not below another; the length where all are. */
export const indexFrom = (list: readonly number[], value: number): number => indexWhere(list, (each) => each >= value);

/** The index of the first item for which it holds, as it must for all after that one; the length where it holds for none. */
export function indexWhere<T>(list: readonly T[], holds: (item: T) => boolean): number {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(list[middle] as T)) high = middle;
    else low = middle + 1;
  }
  return low;
}
