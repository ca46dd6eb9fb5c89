/**
 * Knows how long a pan, a pot or a jar of food takes to cool through, by its depth and by where it stands. Refuses to know what is safe.
 */
import type { Range } from '../measure/quantity.ts';
import { Conduction, type Surface } from './conduct.ts';
import { at, materialOf } from './material.ts';
import type { ColdPlace } from './places.ts';
import { oneDimension } from './shapes.ts';
import type { Makeup } from './substances.ts';
import { untilCold } from './until.ts';

export interface Cooling {
  readonly makeup: Makeup;
  /** Air in it, by volume; and °C at which it begins to freeze, where it does. */
  readonly porosity?: number;
  readonly freezesC?: number;
  /** m */
  readonly depth: number;
  /** m across, of a pot or jar that gives heat off at its sides too. */
  readonly across?: number;
  readonly startC: number;
  readonly place: ColdPlace;
  readonly covered: boolean;
  /** It moves by itself: a soup or stock, and nothing thick. */
  readonly thin: boolean;
}

/** Minutes. */
export interface Cooled {
  readonly likely: number;
  readonly range: Range;
}

/** So far either way do measured pots and pans lie from what is computed (judgement; `tests/outside/heat` holds published ones within it). */
const SPREAD = 1.35;
/** m² K/W: the gap under a lid or film. */
const LID = 0.05;
/** What stands on a shelf is cooled so much less from below. */
const BELOW = 0.8;
const STEP_S = 20;
const LONGEST_S = 10 * 24 * 3600;

/** Until the warmest place in it is at `toC`; undefined where the place is not colder than that. */
export function coolingTime(cooling: Cooling, toC: number): Cooled | undefined {
  const { place, thin } = cooling;
  if (place.celsius >= toC) return undefined;
  const still = conducted(cooling, toC);
  if (still === undefined) return undefined;
  if (!thin) return { likely: still, range: { low: still / SPREAD, high: still * SPREAD } };
  const mixed = Math.min(still, mixedTime(cooling, toC));
  return { likely: Math.sqrt(still * mixed), range: { low: mixed / SPREAD, high: still * SPREAD } };
}

function conducted(cooling: Cooling, toC: number): number | undefined {
  const { depth, across, startC, place, covered } = cooling;
  const material = materialOf(cooling);
  const open: Surface = {
    ambientC: () => place.celsius,
    h: place.h,
    ...(place.convective > 0 && { wet: { share: 1, convective: place.convective, airVapour: place.vapour } }),
  };
  const shut: Surface = { ambientC: () => place.celsius, h: 1 / (1 / place.h + LID) };
  if (across !== undefined) {
    const extents = [
      { half: across / 2, round: true },
      { half: depth / 2, round: false },
    ];
    const shape = oneDimension(extents, place.h / at(material.conductivity, 40));
    const body = new Conduction(material, shape, startC, { ambientC: open.ambientC, h: place.h });
    return minutes(untilCold(body, toC, STEP_S, LONGEST_S)?.seconds, shape.longer);
  }
  const below = { ambientC: open.ambientC, h: place.h * BELOW };
  const body = new Conduction(material, { depth, exponent: 1 }, startC, covered ? shut : open, below);
  return minutes(untilCold(body, toC, STEP_S, LONGEST_S)?.seconds, 1);
}

const minutes = (seconds: number | undefined, factor: number): number | undefined =>
  seconds === undefined ? undefined : (seconds / 60) * factor;

/** As if it were as cold everywhere. */
function mixedTime({ depth, across, startC, place, covered, ...of }: Cooling, toC: number): number {
  const material = materialOf(of);
  const top = covered ? 1 / (1 / place.h + LID) : place.h;
  // m²/m³
  const each =
    across === undefined ? (top + BELOW * place.h) / depth : (top + BELOW * place.h) / depth + (4 * place.h) / across;
  const stored = (at(material.enthalpy, startC) - at(material.enthalpy, toC)) / (startC - toC);
  return ((stored / each) * Math.log((startC - place.celsius) / (toC - place.celsius))) / 60;
}
