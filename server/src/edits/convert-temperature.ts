/**
 * Knows how a temperature is written on another scale: Celsius, Fahrenheit, gas marks, a still oven and one with a fan.
 * Refuses to know sentences: what a temperature is of comes with it.
 */
import { trimmed } from '../measure/number-text.ts';
import { celsiusOf, gasToCelsius } from '../notation/celsius.ts';
import type { TemperatureNode } from '../notation/tree.ts';
import type { HeatRole } from '../recipe/heat.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export type TemperatureScale = 'C' | 'F' | 'gas';
export type Oven = 'fan' | 'still';

/** A fan oven is set lower by so many °C for the same bake (common practice, no source; appliance makers say 10 to 25). */
export const FAN_LOWER_C = 20;

export interface WrittenTemperature {
  readonly edit: TextEdit;
  readonly before: string;
  readonly after: string;
}

/**
 * The temperature on a scale, for a kind of oven; undefined where nothing changes, or where a gas mark cannot say it.
 * Ovens land on what their dials show; a temperature in the food or around it is to the degree, never on the unsafe side.
 */
export function convertTemperature(
  line: number,
  text: string,
  node: TemperatureNode,
  role: HeatRole,
  wish: { readonly scale?: TemperatureScale; readonly oven?: Oven },
): WrittenTemperature | undefined {
  // Of what scale it is, nobody said.
  if (node.unit === 'unsaid') return undefined;
  const isOven = role === 'oven';
  if (!isOven && (wish.scale === 'gas' || wish.scale === undefined)) return undefined;
  const fan = wish.oven === undefined ? node.fan && wish.scale !== 'gas' : wish.oven === 'fan' && isOven;
  const scale: TemperatureScale = wish.scale ?? (node.unit === 'gas' && fan ? 'C' : node.unit);
  if (scale === node.unit && fan === node.fan) return undefined;
  const shift = isOven ? (node.fan ? FAN_LOWER_C : 0) - (fan ? FAN_LOWER_C : 0) : 0;
  const { low, high } = celsiusOf(node);
  const ends = (node.high === undefined ? [low] : [low, high]).map((c) => degreesIn(c + shift, scale, role));
  if (ends.some((e) => e === undefined)) return undefined;
  const between = node.high === undefined ? '' : separator(text.slice(node.low.end, node.high.start));
  const degree = /°/.test(text.slice(node.start, node.end)) ? '°' : '';
  const numbers = ends.join(between);
  const about = node.about ? 'about ' : '';
  const written =
    scale === 'gas' ? `${about}gas ${numbers}` : `${about}${numbers} ${degree}${scale}${fan ? ' fan' : ''}`;
  const before = text.slice(node.start, node.end);
  return before === written ? undefined : { edit: replaceSpan(line, node, written), before, after: written };
}

const separator = (written: string): string => (/to/.test(written) ? ' to ' : '-');

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

/** Degrees of a scale as text, from degrees Celsius; undefined where no gas mark is near. */
export function degreesIn(celsius: number, scale: TemperatureScale, role: HeatRole): string | undefined {
  if (scale === 'gas') return gasMark(celsius);
  const exact = scale === 'C' ? celsius : celsius * 1.8 + 32;
  if (role === 'oven') return trimmed(dial(exact, scale), 0);
  const pair = PAIRS.find(([c, f]) => Math.abs(celsius - c) < 0.01 || Math.abs(celsius * 1.8 + 32 - f) < 0.01);
  if (pair !== undefined) return String(scale === 'C' ? pair[0] : pair[1]);
  const safe = role === 'food' || role === 'surroundings';
  if (!safe || (role === 'surroundings' && celsius >= COLD_C && celsius < HOT_C)) return String(Math.round(exact));
  return String(celsius < COLD_C ? Math.floor(exact + 0.01) : Math.ceil(exact - 0.01));
}

/** What the dial of an oven shows: tens of °C or 25s of °F where one is near, else fives. */
function dial(degrees: number, scale: 'C' | 'F'): number {
  const [step, near] = scale === 'C' ? [10, 4.5] : [25, 8];
  const rounded = Math.round(degrees / step) * step;
  return Math.abs(rounded - degrees) <= near ? rounded : Math.round(degrees / 5) * 5;
}

const MARKS: readonly (readonly [number, string])[] = [
  [0.25, '1/4'],
  [0.5, '1/2'],
  ...[1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((m): readonly [number, string] => [m, String(m)]),
];

/** The nearest gas mark; none is given further off than the marks are apart. */
function gasMark(celsius: number): string | undefined {
  const nearest = MARKS.map(([mark, text]) => ({ text, off: Math.abs(gasToCelsius(mark) - celsius) })).reduce((a, b) =>
    b.off < a.off ? b : a,
  );
  return nearest.off <= 10 ? nearest.text : undefined;
}
