/** Knows the sizes at which every egg of a list is whole. Refuses to weigh eggs. */
import { trimmed } from '../measure/number-text.ts';
import type { Part } from '../recipe/model.ts';
import { plainly, type Sizes } from './sizes.ts';

/** So much more or less than was asked for, a pan is still as full as it was (judgement). */
const NEAR = 0.15;

/** The size nearest to one that was asked for, where it is near; else that, and why. What lines a pan goes by the pan. */
export function nearWholeEggs(parts: readonly Part[], sizes: Sizes): Sizes {
  const counts = eggsIn(parts.filter(({ index }) => !sizes.lining.has(index)));
  if (counts.length === 0)
    return { ...sizes, said: [...sizes.said, 'No eggs are counted in what is scaled, so none can be kept whole.'] };
  const common = counts.reduce(commonPart);
  const by = Math.max(1, Math.round(sizes.by * common)) / common;
  const off = by / sizes.by;
  const eggs = (size: number) => counts.map((count) => trimmed(count * size, 2)).join(' and ');
  if (Math.abs(off - 1) > NEAR)
    return {
      ...sizes,
      said: [
        ...sizes.said,
        `No size near that has whole eggs: it wants ${eggs(sizes.by)}, and the nearest is ${trimmed(by, 2)} times the recipe, with ${eggs(by)}.`,
      ],
    };
  if (Math.abs(off - 1) < 1e-9) return sizes;
  const fills = sizes.pan === undefined ? '' : `, so the pan is filled ${trimmed(off, 2)} times as high`;
  return {
    ...sizes,
    by,
    pieces: sizes.pieces * off,
    said: [
      ...sizes.said,
      `For whole eggs ${eggs(by)} in the place of ${eggs(sizes.by)}: ${trimmed(off, 2)} times what was asked for${fills}.`,
    ],
  };
}

/** How many of each are counted. */
const eggsIn = (parts: readonly Part[]): readonly number[] =>
  parts
    .flatMap((p) => p.head.ingredients)
    .filter((i) => i.food?.class === 'egg' && !i.optional)
    .flatMap(({ node: { amount } }) =>
      amount?.kind === 'measured' && amount.unit === undefined && amount.quantity.low > 0 ? [amount.quantity.low] : [],
    );

/** The smallest size at which every egg is whole. */
export function wholeEggs(parts: readonly Part[]): Sizes | string {
  const counts = eggsIn(parts);
  if (counts.length === 0) return 'no eggs are counted in the list, so none can be kept whole';
  const common = counts.reduce(commonPart);
  const by = 1 / common;
  if (Math.abs(by - 1) < 1e-9) return 'this is the least that uses whole eggs';
  return plainly(by, [
    `This is the least that uses whole eggs: ${counts.map((c) => trimmed(c * by, 2)).join(' and ')}.`,
  ]);
}

/** The largest number that goes into both a whole number of times. */
function commonPart(a: number, b: number): number {
  let [x, y] = [a, b];
  for (let i = 0; y > 0.01 && i < 60; i++) [x, y] = [y, x % y < 0.01 || y - (x % y) < 0.01 ? 0 : x % y];
  return x;
}
