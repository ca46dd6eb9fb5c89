/** Knows the bottom of a tin as sides, from its area and the length around it. Refuses to know what lies in it. */
import { type DarkPan, darkPan } from '../../heat/pan-materials.ts';
import type { Extent } from '../../heat/shapes.ts';
import type { PanNode } from '../../notation/tree.ts';
import type { PanSize } from '../measures/pan-size.ts';

export interface TinShape {
  /** Of one. */
  readonly areaM2: number;
  /** m; one, from the middle, where it is round. */
  readonly sides: readonly Extent[];
  readonly isLoaf: boolean;
}

/** The sides of a loaf tin slope: where the loaf is, it is so much less long and wide (common practice, no source). */
const SLOPE = 0.92;
/** Around a circle it is 1, around a square 1.27. */
const ROUND = 1.1;

/** What holds more than a terrine is a dish, and so deep (common practice, no source). */
const CUP_ML = 1500;
const DISH_CM = 5.5;

/** Undefined where a length is not known. */
export function tinShape(
  node: PanNode,
  { bottomCm2, liningCm2, depthCm, count, volumeMl }: PanSize,
): TinShape | undefined {
  if (bottomCm2 === undefined || liningCm2 === undefined || depthCm === undefined) {
    // Of a cup only what it holds is known: as wide as high. A dish is no deeper than it is.
    const each = volumeMl / count;
    const across =
      each > CUP_ML ? Math.sqrt((4 * each) / Math.PI / DISH_CM) / 100 : ((4 * each) / Math.PI) ** (1 / 3) / 100;
    return node.volume === undefined && !node.cups
      ? undefined
      : { areaM2: (Math.PI * across ** 2) / 4, sides: [{ half: across / 2, round: true }], isLoaf: false };
  }
  // The size of a cup is that of its rim: what it holds tells how wide it is on the whole.
  const isCup = node.cups === true || node.volume !== undefined;
  const isLoaf = node.shape === 'loaf';
  const mean = isCup ? Math.min(bottomCm2, volumeMl / depthCm) : bottomCm2 * (isLoaf ? SLOPE ** 2 : 1);
  const area = mean / count / 1e4;
  const around = ((liningCm2 - bottomCm2) / count / depthCm / 100) * (isLoaf ? SLOPE : 1);
  if (around ** 2 / (4 * Math.PI * area) < ROUND)
    return { areaM2: area, sides: [{ half: Math.sqrt(area / Math.PI), round: true }], isLoaf };
  const half = around / 4;
  const apart = Math.sqrt(Math.max(0, half ** 2 - area));
  return {
    areaM2: area,
    sides: [
      { half: (half + apart) / 2, round: false },
      { half: (half - apart) / 2, round: false },
    ],
    isLoaf,
  };
}

/** Of what a pan is, where that takes more heat than bright metal. */
export const darkOf = ({ of }: PanNode): DarkPan | undefined => darkPan(of);
