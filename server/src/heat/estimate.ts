/**
 * Knows how long a thing of a kind takes in the oven until its coldest place is done, how far that is uncertain, and how much it rises
 * afterwards. Refuses to know recipes.
 */
import { Conduction, type Surface, type Wet } from './conduct.ts';
import type { HeatKind } from './kinds.ts';
import { at, type Material, materialOf } from './material.ts';
import { mainCelsius, type Oven, ovenAt, ovenCoefficient } from './oven.ts';
import type { DarkPan } from './pan-materials.ts';
import { type Extent, oneDimension, sidesShare } from './shapes.ts';
import type { Makeup } from './substances.ts';
import { untilHot } from './until.ts';

/** One piece, or what lies in one tin. */
export interface Load {
  readonly kind: HeatKind;
  readonly massKg: number;
  readonly makeup: Makeup;
  /** Of a pan, m²; of a brick or piece, what is known of its sides. */
  readonly form: Form;
  readonly startC: number;
  readonly targetC: number;
  readonly oven: Oven;
  /** What it lies in, where that takes more heat than bright metal. */
  readonly pan?: DarkPan;
  /** Foil or a lid lies on it. */
  readonly covered: boolean;
  /** °C of the water that it stands in. */
  readonly bathC?: number;
}

export type Form =
  | { readonly is: 'pan'; readonly area: number; readonly sides: readonly Extent[] }
  | { readonly is: 'body'; readonly extents: readonly Extent[] };

export interface HeatEstimate {
  /** Minutes in the oven: as likely longer as shorter. */
  readonly likely: number;
  /** Within these eight of ten times. */
  readonly low: number;
  readonly high: number;
  /** 1 sd of the logarithm of the time. */
  readonly spread: number;
  /** m from the coldest place to the surface; of a pan, how deep it is filled. */
  readonly depth: number;
  /** W/(m² K). */
  readonly coefficient: number;
  /** K by which the coldest place rises as the time grows by one unit of its logarithm, at the end. */
  readonly steepness: number;
  /** K by which the middle rises out of the oven, at the likely surface. */
  readonly rise: number;
}

/** Eight of ten lie within so many sd. */
export const EIGHTY = 1.2816;

/** Flesh gives off water as if a fifth of it stood under water, and takes more heat for it (fitted, n = 20: times, losses and the rise together). */
const WET_SHARE = 0.2;
const WET_MORE = 20 / 16.85;
const WET_CONVECTIVE = { still: 6, fan: 20 };
/** Pa in the air of an oven with flesh in it (from memory). */
const OVEN_VAPOUR = 4500;
/** m² K/W: the gap under foil or a lid (fitted, n = 1), and a metre of pastry. */
const COVER = 0.12;
const PASTRY = 0.015 / 0.004;
/** W/(m² K) around a cup that stands in water: free convection of liquids, 50 to 100 (Çengel, ranges of convection). */
const BATH = 80;
/** °C of food on its way, for its conductivity. */
const MIDDLE_C = 50;
const LONGEST_S = 24 * 3600;
const FIRST_S = 5;

/** Undefined where it would not get there in a day. */
export function estimate(load: Load): HeatEstimate | undefined {
  const { kind, makeup, form, startC, targetC } = load;
  const material = materialOf({ makeup, porosity: kind.porosity });
  const surface = surfaceOf(load);
  const conducts = surface.h / at(material.conductivity, MIDDLE_C);
  let body: Conduction;
  let factor: number;
  let depth: number;
  if (form.is === 'pan') {
    depth = load.massKg / material.density / form.area;
    const bottom = { ...surface, h: 1 / (1 / surface.h + PASTRY * kind.crust) };
    const top = load.covered ? { ...surface, h: 1 / (1 / surface.h + COVER) } : surface;
    body = new Conduction(material, { depth, exponent: 1 }, startC, top, bottom);
    factor = sidesShare(depth, form.sides, conducts);
  } else {
    const shape = oneDimension(form.extents, conducts);
    ({ depth } = shape);
    body = new Conduction(material, shape, startC, surface);
    factor = shape.longer;
  }
  const passing = untilHot(body, targetC, FIRST_S, LONGEST_S);
  if (passing === undefined) return undefined;
  const likely = (passing.seconds / 60) * factor;
  return {
    likely,
    low: likely * Math.exp(-EIGHTY * kind.spread),
    high: likely * Math.exp(EIGHTY * kind.spread),
    spread: kind.spread,
    depth,
    coefficient: surface.h,
    steepness: passing.rate * passing.seconds,
    rise: form.is === 'pan' ? 0 : riseOf(material, body, oneDimension(form.extents, conducts)),
  };
}

function surfaceOf({ kind, oven, bathC, pan }: Load): Surface {
  const own = ovenCoefficient(mainCelsius(oven), oven.fan);
  if (bathC !== undefined) return { ambientC: () => bathC, h: BATH * (kind.coefficient ?? 1) };
  const ambientC = ovenAt(oven);
  if (kind.coefficient !== undefined) return { ambientC, h: own * kind.coefficient * (pan?.times ?? 1) };
  const wet: Wet = {
    share: WET_SHARE,
    convective: oven.fan ? WET_CONVECTIVE.fan : WET_CONVECTIVE.still,
    airVapour: OVEN_VAPOUR,
  };
  return { ambientC, h: own * WET_MORE, wet };
}

/** A room, and how it takes heat from what is hot (reckoned, as in heat/places.tsv). */
const ROOM_C = 22;
const ROOM_H = 10;
const ROOM_VAPOUR = 1300;
const REST_S = 2 * 3600;
const REST_STEP_S = 30;

function riseOf(material: Material, hot: Conduction, shape: { depth: number; exponent: number }): number {
  const from = hot.coldestC;
  const rest = new Conduction(material, shape, hot.cells, {
    ambientC: () => ROOM_C,
    h: ROOM_H,
    wet: { share: WET_SHARE, convective: WET_CONVECTIVE.still, airVapour: ROOM_VAPOUR },
  });
  let highest = from;
  while (rest.seconds < REST_S) {
    rest.step(REST_STEP_S);
    const now = rest.cells[0] as number;
    if (now < highest) break;
    highest = now;
  }
  return highest - from;
}

/** How big a cylinder of the mass is whose length is so much of its diameter. */
export function joint(massKg: number, density: number, length: number): readonly Extent[] {
  const diameter = ((4 * massKg) / density / Math.PI / length) ** (1 / 3);
  return [
    { half: diameter / 2, round: true },
    { half: (diameter * length) / 2, round: false },
  ];
}

/** A bird of the mass: a ball-like cylinder, smaller for its cavity. */
export const bird = (massKg: number, density: number): readonly Extent[] =>
  joint(massKg, density, BIRD_LENGTH).map(({ half, round }) => ({ half: half * BIRD_SMALLER, round }));
const BIRD_LENGTH = 1.3;
const BIRD_SMALLER = 0.8;

/** With what trials taught: another likely time, and a narrower range. */
export function sharpened(found: HeatEstimate, factor: number, spread: number): HeatEstimate {
  const likely = found.likely * factor;
  return {
    ...found,
    likely,
    low: likely * Math.exp(-EIGHTY * spread),
    high: likely * Math.exp(EIGHTY * spread),
    spread,
  };
}
