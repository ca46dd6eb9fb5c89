/** Knows how an oven heats what stands in it. Refuses to know what that is. */
import { KELVIN } from './steam.ts';

export interface Oven {
  /** °C by the dial, each until so many minutes after it went in; the last to the end. */
  readonly stages: readonly { readonly untilMin: number; readonly celsius: number }[];
  readonly fan: boolean;
}

/** W/(m² K) by moving air; the rest is radiation (Baik et al. 1999, Journal of Food Science 64, 688: 75 to 80 % of the heat). */
const STILL = 5;
const FAN = 16;
/** Of food, glass and dark tin, which see walls as warm as the air. */
const EMISSIVITY = 0.85;
const STEFAN = 5.67e-8;
/** What a surface has, all the time taken together. */
const SURFACE_C = 80;

/** W/(m² K) between the oven at t °C and a surface, radiation included. */
export function ovenCoefficient(celsius: number, fan: boolean): number {
  const mean = (celsius + SURFACE_C) / 2 + KELVIN;
  return (fan ? FAN : STILL) + EMISSIVITY * 4 * STEFAN * mean ** 3;
}

/** °C after so many seconds. */
export const ovenAt =
  ({ stages }: Oven) =>
  (seconds: number): number =>
    (stages.find(({ untilMin }) => seconds <= untilMin * 60) ?? stages.at(-1))?.celsius ?? 0;

/** °C that most of the time has, for a coefficient. */
export const mainCelsius = ({ stages }: Oven): number => stages.at(-1)?.celsius ?? 0;
