/**
 * Knows which heats and times of a recipe lie outside all that a thing of its kind is ever heated to or for, how far, and which slip makes them so.
 * Refuses to know words.
 */
import type { HeatSpan } from '../../heat/spans.ts';
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { onceFor } from '../once.ts';
import type { Heated, WrittenHeat, WrittenTime } from './written-heat.ts';

export interface StrayHeat {
  readonly heat: WrittenHeat;
  readonly node: TemperatureNode;
  readonly isHigh: boolean;
  /** °C, least and most of all that fits. */
  readonly usual: Range;
  /** °C beyond it. */
  readonly by: number;
  /** The scale in which the same figure fits. */
  readonly meant: 'C' | 'F' | undefined;
}

export interface StrayTime {
  readonly time: WrittenTime;
  readonly isLong: boolean;
  /** Minutes, all that the thing is heated. */
  readonly totalMin: number;
  readonly usual: Range;
  /** How many times too long or too short. */
  readonly by: number;
  /** What fits instead, in minutes: another unit, another digit. */
  readonly meant: readonly number[];
}

const within = (value: Range, { celsius }: HeatSpan): boolean => value.low <= celsius.high && value.high >= celsius.low;

const hull = (ranges: readonly Range[]): Range => ({
  low: Math.min(...ranges.map(({ low }) => low)),
  high: Math.max(...ranges.map(({ high }) => high)),
});

export const strayHeats = onceFor(({ way, spans, heats }: Heated): readonly StrayHeat[] => {
  if (spans.length === 0) return [];
  const usual = hull(spans.map(({ celsius }) => celsius));
  return heats.flatMap((heat): readonly StrayHeat[] => {
    const { celsius, written } = heat.figure;
    const [node] = written;
    if (node === undefined || spans.some((span) => within(celsius, span))) return [];
    const isHigh = celsius.low > usual.high;
    if (!isHigh && heat.isOnTheWay === true) return [];
    const other = node.unit === 'C' || node.unit === 'F' ? (node.unit === 'C' ? 'F' : 'C') : undefined;
    // What is alive in it goes into whatever is cooler.
    const instead = way === 'live' ? undefined : other && celsiusOf({ ...node, unit: other });
    return [
      {
        heat,
        node,
        isHigh,
        usual,
        by: isHigh ? celsius.low - usual.high : usual.low - celsius.high,
        meant: instead && spans.some((span) => within(instead, span)) ? other : undefined,
      },
    ];
  });
});

export const strayTimes = onceFor(({ spans, times, totalMin }: Heated): readonly StrayTime[] => {
  const last = times.at(-1);
  if (spans.length === 0 || last === undefined) return [];
  const long = times.flatMap((time): readonly StrayTime[] => {
    const usual = usualAt(spans, time);
    return time.low > usual.high
      ? [{ time, isLong: true, totalMin, usual, by: time.low / usual.high, meant: slipsIn(time.low, usual) }]
      : [];
  });
  if (long.length > 0) return long;
  const usual = usualAt(spans, last);
  return totalMin > 0 && totalMin < usual.low
    ? [{ time: last, isLong: false, totalMin, usual, by: usual.low / totalMin, meant: slipsIn(last.high, usual) }]
    : [];
});

/** At the heats that it is, where they fit any. */
function usualAt(spans: readonly HeatSpan[], { at }: WrittenTime): Range {
  const fitting = spans.filter((span) => at.some((celsius) => within({ low: celsius, high: celsius }, span)));
  return hull((fitting.length > 0 ? fitting : spans).map(({ minutes }) => minutes));
}

const AN_HOUR = 60;
const A_DIGIT = 10;

/** Minutes for hours, or a digit too many or too few. */
function slipsIn(minutes: number, usual: Range): readonly number[] {
  const isLong = minutes > usual.high;
  const asUnit = isLong ? (minutes % AN_HOUR === 0 ? minutes / AN_HOUR : 0) : minutes * AN_HOUR;
  const asDigit = isLong ? minutes / A_DIGIT : minutes * A_DIGIT;
  return [asUnit, asDigit].filter((instead) => instead >= usual.low && instead <= usual.high);
}
