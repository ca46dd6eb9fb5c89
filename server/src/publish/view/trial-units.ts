/**
 * Knows in which unit a measured thing is told: minutes, hours or days by how long it took, degrees by the scale that is looked at.
 * Refuses to know what was measured.
 */
import type { ReportMeasured } from '../report-shape.ts';

export interface MeasuredUnit {
  /** `min`, `h`, `d`, `°C`, `g`. */
  readonly sign: string;
  readonly of: (value: number) => number;
}

const [HOUR, DAY] = [60, 1440];
/** From so many of the smaller unit on, the larger is told. */
const [MANY_MINUTES, MANY_HOURS] = [5 * HOUR, 2 * DAY];

const CELSIUS: MeasuredUnit = { sign: '°C', of: (value) => value };
const FAHRENHEIT: MeasuredUnit = { sign: '°F', of: (value) => value * 1.8 + 32 };
const GRAMS: MeasuredUnit = { sign: 'g', of: (value) => value };
const MINUTES: MeasuredUnit = { sign: 'min', of: (value) => value };
const HOURS: MeasuredUnit = { sign: 'h', of: (value) => value / HOUR };
const DAYS: MeasuredUnit = { sign: 'd', of: (value) => value / DAY };

/** One unit for all that is told of it. */
export function unitOf({ unit, written, values }: ReportMeasured, degrees: 'C' | 'F'): MeasuredUnit {
  if (unit === 'C') return degrees === 'F' ? FAHRENHEIT : CELSIUS;
  if (unit === 'g') return GRAMS;
  const least = Math.min(...[...values, ...(written === null ? [] : [written])].map(({ low }) => low));
  return least >= MANY_HOURS ? DAYS : least >= MANY_MINUTES ? HOURS : MINUTES;
}

/** `35–40`; one figure where both ends are told alike. */
export function rangeText(
  { low, high }: { readonly low: number; readonly high: number },
  { of }: MeasuredUnit,
): string {
  const [from, to] = [figure(of(low)), figure(of(high))];
  return from === to ? from : `${from}–${to}`;
}

/** As a clock, a thermometer or a scale shows it: no more than one decimal, and none of a large number. */
const figure = (value: number): string => String(Number(value.toFixed(Math.abs(value) < 100 ? 1 : 0)));
