/**
 * Knows how a brick, a short cylinder or a disc is a body of one dimension: the real exponent by which its area grows that lets it warm
 * as fast. Refuses to know foods.
 *
 * By the first root of each shape's series, near ζ² = 1/(1/(E Bi) + 1/j(E)²); held against product solutions, whose times are 8 % longer.
 */

/** Half a dimension, m: between two planes, or from the axis of what is round. */
export interface Extent {
  readonly half: number;
  readonly round: boolean;
}

export interface OneDimension {
  readonly depth: number;
  readonly exponent: number;
  /** By which a computed time is multiplied. */
  readonly longer: number;
}

/** Of a body with more than one dimension, against product solutions of bricks, cylinders and discs (computed; fitted, n = 96). */
const LONGER = 1.08;

/** `conducts`: h/k, 1/m. */
export function oneDimension(extents: readonly Extent[], conducts: number): OneDimension {
  const depth = Math.min(...extents.map(({ half }) => half));
  let rate = 0;
  for (const { half, round } of extents) rate += rootSquared(round ? 2 : 1, half * conducts) * (depth / half) ** 2;
  const [only, ...others] = extents;
  if (only !== undefined && others.length === 0) return { depth, exponent: only.round ? 2 : 1, longer: 1 };
  let low = 1;
  let high = 3;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (rootSquared(middle, depth * conducts) < rate) low = middle;
    else high = middle;
  }
  return { depth, exponent: (low + high) / 2, longer: LONGER };
}

/** How much faster a flat pan is for the heat that its sides take: a share of the time of the slab, to 1. */
export function sidesShare(depth: number, sides: readonly Extent[], conducts: number): number {
  const rate = ({ half, round }: Extent) => rootSquared(round ? 2 : 1, half * conducts) / half ** 2;
  const slab = rate({ half: depth / 2, round: false });
  let all = slab;
  for (const each of sides) all += rate(each);
  return slab / all;
}

/** The square of the first root, nearly: exact at its ends (thin and thick). */
export function rootSquared(exponent: number, biot: number): number {
  const j = 1.5708 + 0.834 * (exponent - 1) - 0.0486 * (exponent - 1) * (exponent - 2);
  return 1 / (1 / (exponent * biot) + 1 / j ** 2);
}
