/**
 * Knows how a temperature is said on a scale: to the mark of a dial, to the degree as rules of food safety print it and on the scale that
 * its author writes.
 * Refuses to know which temperature is right.
 */
import { trimmed } from '../../measure/number-text.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { gasMark, onDial } from '../dials.ts';
import type { HeatFigure } from './figures.ts';

export type TemperatureScale = 'C' | 'F' | 'gas';

/** Pairs by which food-safety rules print one limit on both scales: FDA Food Code 2022, chapter 3. */
const PAIRS: readonly (readonly [number, number])[] = [
  [-18, 0],
  [5, 41],
  [21, 70],
  [54, 130],
  [57, 135],
  [60, 140],
  [63, 145],
  [68, 155],
  [70, 158],
  [74, 165],
];

/** Below this a temperature in or around food is one to stay under, above it one to reach. */
const COLD_C = 20;
/** What is kept hot is kept at least so; between the two a place is only warm. */
const HOT_C = 50;

/** Degrees of a scale as text, from degrees Celsius; undefined where no gas mark is near. In food and around it never on the unsafe side. */
export function degreesIn(celsius: number, scale: TemperatureScale, of: HeatFigure['of']): string | undefined {
  if (scale === 'gas') return gasMark(celsius);
  if (of === 'oven') return trimmed(onDial(celsius, scale), 0);
  const exact = scale === 'C' ? celsius : celsius * 1.8 + 32;
  const pair = PAIRS.find(([c, f]) => Math.abs(celsius - c) < 0.01 || Math.abs(celsius * 1.8 + 32 - f) < 0.01);
  if (pair !== undefined) return String(scale === 'C' ? pair[0] : pair[1]);
  const safe = of === 'food' || of === 'around';
  if (!safe || (of === 'around' && celsius >= COLD_C && celsius < HOT_C)) return String(Math.round(exact));
  return String(celsius < COLD_C ? Math.floor(exact + 0.01) : Math.ceil(exact - 0.01));
}

/** A limit that is printed on both scales, the author's first: `74 °C, 165 °F`, to who writes Fahrenheit `165 °F, 74 °C`. */
export const bothDegrees = (
  { celsius, fahrenheit }: { readonly celsius: number; readonly fahrenheit: number },
  scale: 'C' | 'F',
): string => (scale === 'F' ? `${fahrenheit} °F, ${celsius} °C` : `${celsius} °C, ${fahrenheit} °F`);

/** A figure in °F as it is written; of degrees without a scale, where they were understood so. */
function fahrenheitAs(celsius: number, node: TemperatureNode | undefined): number | undefined {
  if (node?.unit === 'F') return node.lowDegrees;
  const isSame = node?.unit === 'unsaid' && Math.abs(celsius - (node.lowDegrees - 32) / 1.8) < 0.01;
  return isSame ? node.lowDegrees : undefined;
}

/** The scale that a figure is written on; Celsius where it has none of these. */
export const scaleIn = (celsius: number, node: TemperatureNode | undefined): 'C' | 'F' =>
  fahrenheitAs(celsius, node) === undefined ? 'C' : 'F';

/** A figure as its author has it: `150 °F`. */
export function ownDegrees(celsius: number, node: TemperatureNode | undefined): string {
  const fahrenheit = fahrenheitAs(celsius, node);
  return fahrenheit === undefined ? `${trimmed(celsius, 1)} °C` : `${trimmed(fahrenheit, 1)} °F`;
}
