/**
 * Knows which amounts are temperatures, times and lengths, and what they come to.
 * Refuses to know what is heated.
 */
import { baseOf } from '../measure/unit.ts';
import { type Amount, Free, measuredOf, numeralsOf } from './amounts.ts';
import { spanOf } from './cursor.ts';
import { Kind, type Token } from './tokens.ts';
import type { DurationNode, LengthNode, MeasuredNode, SyntaxFault, TemperatureNode, UnitNode } from './tree.ts';

/** The temperature that an amount is; undefined when it is something else. Only a sentence has one without a scale. */
export function temperatureOf(
  line: string,
  amount: Amount | undefined,
  faults: SyntaxFault[],
  bare: 'with a scale' | 'with or without' = 'with a scale',
): TemperatureNode | undefined {
  if (amount === undefined || amount instanceof Free) return undefined;
  const { about, gas, minus, fan, degree, point } = amount;
  const symbol = amount.unit?.written?.unit?.symbol;
  const isBare = bare === 'with or without' && degree !== undefined && amount.unit === undefined;
  if (gas === undefined && symbol !== 'C' && symbol !== 'F' && !isBare) return undefined;
  const [low, high] = numeralsOf(line, amount, faults);
  const sign = minus === undefined ? 1 : -1;
  const named = gas ?? amount.unit ?? degree;
  const unitSpan = named === undefined ? { start: low.end, end: low.end } : spanOf(named, named);
  return {
    kind: 'temperature',
    start: (about ?? gas ?? minus ?? low).start,
    end: Math.max(high?.end ?? low.end, unitSpan.end, fan?.end ?? 0, point?.end ?? 0),
    low,
    ...(high && { high }),
    lowDegrees: sign * low.value,
    highDegrees: sign * (high?.value ?? low.value),
    unit: gas !== undefined ? 'gas' : isBare ? scaleOf(low.value) : symbol === 'F' ? 'F' : 'C',
    unitSpan,
    fan: fan !== undefined,
    about: about !== undefined,
  };
}

/** No oven, fat or syrup is as hot on the scale of Celsius. */
const HOTTEST_C = 275;

const scaleOf = (degrees: number): 'F' | 'unsaid' => (degrees > HOTTEST_C ? 'F' : 'unsaid');

/** The time that an amount is, in minutes; undefined when it is something else. */
export function durationOf(line: string, amount: Amount | undefined, faults: SyntaxFault[]): DurationNode | undefined {
  if (!(amount instanceof Free)) return amount && asDuration(measuredOf(line, amount, faults));
  return amount.first.kind === Kind.Overnight ? overnightNode(amount.first) : undefined;
}

/** Overnight is 8 to 16 hours (common practice, no source). */
export const overnightNode = ({ start, end }: Token): DurationNode => ({
  kind: 'duration',
  start,
  end,
  lowMin: 480,
  highMin: 960,
  unitMin: 480,
  overnight: true,
});

export function asDuration({ start, end, quantity }: MeasuredNode): DurationNode | undefined {
  const { unit, low, high } = quantity;
  if (unit !== 's' && unit !== 'min' && unit !== 'h' && unit !== 'd') return undefined;
  const seconds = baseOf(unit, 'us') ?? 0;
  return {
    kind: 'duration',
    start,
    end,
    lowMin: (low * seconds) / 60,
    highMin: (high * seconds) / 60,
    unitMin: seconds / 60,
    overnight: false,
  };
}

/** Days, hours and minutes, in minutes. */
const WHOLE_TIMES = [1440, 60, 1] as const;

/** `1 h 30 min` as one time: so many of the larger unit, and less than one more. Undefined where the two are two. */
export function joinedDuration(a: DurationNode, b: DurationNode): DurationNode | undefined {
  const whole = WHOLE_TIMES.find((unit) => a.lowMin >= unit && a.lowMin % unit === 0);
  if (whole === undefined || a.lowMin !== a.highMin || a.overnight || b.overnight || b.highMin >= whole)
    return undefined;
  return { ...a, end: b.end, lowMin: a.lowMin + b.lowMin, highMin: a.highMin + b.highMin };
}

export function asLength(measured: MeasuredNode): LengthNode | undefined {
  if (measured.unit === undefined || !isLength(measured.unit)) return undefined;
  return { kind: 'length', start: measured.start, end: measured.end, measured };
}

const isLength = ({ symbol }: UnitNode): boolean => symbol === 'mm' || symbol === 'cm' || symbol === 'in';
