/**
 * Knows every name of many foods as one text, in which a start looks up the few names of a recipe: a table of them all takes longer to make,
 * and is made where many are asked for.
 * Refuses to know what a name means: a food is a number here.
 */
import { once } from '../measure/once.ts';

/** The keys of the names of foods, each once. */
export interface NameText {
  /** The number of the food that has the key. */
  get(key: string): number | undefined;
  keys(): readonly string[];
}

/** What stands between the keys of one food. */
export const BETWEEN_KEYS = ';';
/** So many are looked for in the text, each in some 20 µs. */
const MOST_SOUGHT = 500;

/** `keys`: those of each food in one, in capitals or small letters. */
export function nameText(keys: readonly string[]): NameText {
  const text = `;${keys.join(';\n;')};`.toLowerCase();
  const starts = new Int32Array(keys.length);
  let start = 0;
  keys.forEach((own, at) => {
    starts[at] = start;
    start += own.length + ';;\n'.length;
  });
  const lines = (): readonly (readonly string[])[] =>
    text.split('\n').map((line) => line.split(BETWEEN_KEYS).filter((key) => key !== ''));
  const table = once(() => new Map(lines().flatMap((own, at) => own.map((key): [string, number] => [key, at]))));
  let sought = 0;
  return {
    get(key) {
      if (sought++ >= MOST_SOUGHT) return table().get(key);
      if (key === '' || key.includes(BETWEEN_KEYS)) return undefined;
      const place = text.indexOf(`;${key};`);
      return place < 0 ? undefined : lastNotPast(starts, place);
    },
    keys: () => lines().flat(),
  };
}

/** Where the last of some ascending numbers stands that is not past one. */
function lastNotPast(numbers: Int32Array, most: number): number {
  let low = 0;
  let high = numbers.length;
  while (low + 1 < high) {
    const middle = (low + high) >>> 1;
    if ((numbers[middle] ?? 0) <= most) low = middle;
    else high = middle;
  }
  return low;
}
