/**
 * Knows the geometry of pans: what they hold to the brim, and the surface that a crust has to cover.
 * Refuses to know how full a pan should be.
 */
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { parseDocument } from '../notation/document.ts';
import type { PanNode } from '../notation/tree.ts';

export interface PanSize {
  /** All pans together. */
  readonly volumeMl: number;
  /** Bottoms and sides of all; not known where only the volume is. */
  readonly liningCm2?: number;
  /** Bottoms alone. */
  readonly bottomCm2?: number;
  readonly depthCm?: number;
}

/** A loaf tin's sides slope: it holds 0.92 of the box (common practice, no source). */
const LOAF = 0.92;

/** The size of a pan, or of all when there are several; undefined where a length is missing. */
export function panSize(pan: PanNode): PanSize | undefined {
  if (!(pan.count > 0)) return undefined;
  if (pan.volume !== undefined) {
    const unit = pan.volume.unit?.symbol;
    const ml = unit === undefined || dimensionOf(unit) !== 'volume' ? undefined : baseOf(unit, 'us');
    return ml === undefined ? undefined : sized({ volumeMl: pan.volume.quantity.low * ml }, pan.count);
  }
  const unit = pan.unit === undefined ? undefined : baseOf(pan.unit.symbol, 'us');
  if (unit === undefined) return undefined;
  const [a, b, c] = pan.sizes.map((s) => (s.value * unit) / 10);
  if (a === undefined || b === undefined) return undefined;
  switch (pan.shape) {
    case 'round': {
      const bottomCm2 = Math.PI * (a / 2) ** 2;
      return sized({ ...upright(bottomCm2, Math.PI * a, b) }, pan.count);
    }
    case 'square':
      return sized(upright(a * a, 4 * a, b), pan.count);
    case 'rectangle':
      return c === undefined ? undefined : sized(upright(a * b, 2 * (a + b), c), pan.count);
    case 'loaf': {
      const box = c === undefined ? undefined : upright(a * b, 2 * (a + b), c);
      return box === undefined ? undefined : sized({ ...box, volumeMl: LOAF * box.volumeMl }, pan.count);
    }
    case 'ring':
      return c === undefined
        ? undefined
        : sized(upright(Math.PI * ((a / 2) ** 2 - (b / 2) ** 2), Math.PI * (a + b), c), pan.count);
    default:
      return undefined;
  }
}

/** How that volume is worked out, as a cook would reckon it: `π × (24 cm ÷ 2)² × 3 cm`. */
export function panSum({ shape, sizes, volume, unit, count }: PanNode): string {
  const [a, b, c] = sizes.map(({ value }) => `${value} ${unit?.symbol ?? 'cm'}`);
  const each = {
    round: `π × (${a} ÷ 2)² × ${b}`,
    square: `${a} × ${a} × ${b}`,
    rectangle: `${a} × ${b} × ${c}`,
    loaf: `${a} × ${b} × ${c} × ${LOAF}, for its sloping sides`,
    ring: `π × ((${a} ÷ 2)² − (${b} ÷ 2)²) × ${c}`,
  };
  const one = volume !== undefined || shape === undefined ? 'as written' : each[shape];
  return count > 1 ? `${count} × ${one}` : one;
}

/** The volume of all pans together, in ml, brimful. */
export const panVolumeMl = (pan: PanNode): number | undefined => panSize(pan)?.volumeMl;

/** The pan that words name: `round 24 x 3 cm`, `12 x round 7 x 3 cm`, `1.2 l`. */
export function panIn(words: string): PanNode | undefined {
  const line = parseDocument(`pan ${words.trim().replace(/^an? /i, '')}`).lines[0];
  return line?.statement.kind === 'pan' && line.faults.length === 0 ? line.statement.pan : undefined;
}

function upright(bottomCm2: number, aroundCm: number, depthCm: number): Required<PanSize> {
  return { volumeMl: bottomCm2 * depthCm, bottomCm2, liningCm2: bottomCm2 + aroundCm * depthCm, depthCm };
}

function sized(one: PanSize, count: number): PanSize | undefined {
  if (!(one.volumeMl > 0)) return undefined;
  return {
    ...one,
    volumeMl: one.volumeMl * count,
    ...(one.liningCm2 !== undefined && { liningCm2: one.liningCm2 * count }),
    ...(one.bottomCm2 !== undefined && { bottomCm2: one.bottomCm2 * count }),
  };
}
