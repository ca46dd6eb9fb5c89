/**
 * Knows how the dials of ovens are marked, and which marks stand for one heat, from `data/dials.tsv`: 350 °F, 180 °C, gas 4.
 * Refuses to know of what a temperature is.
 */

import text from '../../data/dials.tsv';
import { once } from '../measure/once.ts';
import { rowsIn } from '../measure/table-rows.ts';
import { gasToCelsius } from '../notation/celsius.ts';

interface Mark {
  readonly fahrenheit: number;
  readonly celsius: number;
  readonly gas: string;
  /** °C by the sum, of each of its scales. */
  readonly exact: readonly number[];
}

const toCelsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

const allMarks = once((): readonly Mark[] =>
  rowsIn(text).map(([fahrenheit = '', celsius = '', gas = '']) => {
    const [f, c] = [Number(fahrenheit), Number(celsius)];
    const mark = gas.includes('/') ? 1 / Number(gas.slice(2)) : Number(gas);
    return { fahrenheit: f, celsius: c, gas, exact: [c, toCelsius(f), gasToCelsius(mark)] };
  }),
);

/** What the marks of a heat are off by in rounding, °C. */
const ROUNDED_C = 0.3;

/** The mark that a heat is written at, °C. */
const markAt = (celsius: number): Mark | undefined =>
  allMarks().find(({ exact }) => exact.some((each) => Math.abs(each - celsius) < ROUNDED_C));

/** A heat of so many °C as a dial is set: 180 °C is 350 °F, and 250 °F is 120 °C; what stands at no mark is to the nearest that is marked near it. */
export function onDial(celsius: number, scale: 'C' | 'F'): number {
  const mark = markAt(celsius);
  if (mark !== undefined) return scale === 'C' ? mark.celsius : mark.fahrenheit;
  const degrees = scale === 'C' ? celsius : celsius * 1.8 + 32;
  const [step, near] = scale === 'C' ? [10, 4.5] : [25, 8];
  const rounded = Math.round(degrees / step) * step;
  return Math.abs(rounded - degrees) <= near ? rounded : Math.round(degrees / 5) * 5;
}

/** No mark is nearer to a heat that is further off than so, °C. */
const MOST_OFF_C = 10;

/** The gas mark of a heat: `1/4` to `10`; none where none is near. */
export function gasMark(celsius: number): string | undefined {
  const at = markAt(celsius);
  if (at !== undefined) return at.gas;
  let best: Mark | undefined;
  let least = MOST_OFF_C;
  for (const mark of allMarks()) {
    const off = Math.abs(mark.celsius - celsius);
    if (off <= least) {
      best = mark;
      least = off;
    }
  }
  return best?.gas;
}

/** A fan oven is set lower by so many °C for the same bake (common practice, no source; appliance makers say 10 to 25). */
export const FAN_LOWER_C = 20;
/** On dials in °F by so many (common practice in the US, no source). */
export const FAN_LOWER_F = 25;
