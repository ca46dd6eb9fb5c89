/** Knows how long a frozen piece takes until its middle is thawed. Refuses to know what is safe. */
import type { Range } from '../measure/quantity.ts';
import { Conduction } from './conduct.ts';
import { at, materialOf } from './material.ts';
import type { ColdPlace } from './places.ts';
import { type Extent, oneDimension } from './shapes.ts';
import type { Makeup } from './substances.ts';
import { untilHot } from './until.ts';

/** Thawed through: its middle is just below its freezing point. */
const THAWED_C = -1;
const FREEZES_C = -1.5;
const STEP_S = 60;
const LONGEST_S = 30 * 24 * 3600;
/** Published times lie between so much under what is computed and so much over it: in the cold kitchens are told generous ones (USDA FSIS, The big thaw; n = 5). */
const UNDER = 1.3;
const OVER = 1.8;

/** Minutes. */
export function thawingTime(
  makeup: Makeup,
  extents: readonly Extent[],
  startC: number,
  { celsius, h }: ColdPlace,
): Range | undefined {
  const material = materialOf({ makeup, freezesC: FREEZES_C });
  const shape = oneDimension(extents, h / at(material.conductivity, 0));
  const body = new Conduction(material, shape, startC, { ambientC: () => celsius, h });
  const passing = untilHot(body, THAWED_C, STEP_S, LONGEST_S);
  if (passing === undefined) return undefined;
  const likely = (passing.seconds / 60) * shape.longer;
  return { low: likely / UNDER, high: likely * OVER };
}
