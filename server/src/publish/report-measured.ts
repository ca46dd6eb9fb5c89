/**
 * Knows what the trials of a recipe measured, one row a thing, beside what is written of it now, what is usual and what is estimated.
 * Refuses to judge a trial: what lies outside is told by the slack that the checks allow.
 */
import { AMOUNT_SLACK, usedAgainstList } from '../checks/testing/held-amounts.ts';
import { beyondUsual, piecesOf } from '../checks/testing/held-weights.ts';
import {
  distanceOf,
  type HeatAt,
  heatIn,
  namedIn,
  TEMPERATURE_SLACK_C,
  TIME_SLACK,
  type TimeAt,
  timesIn,
} from '../checks/testing/nearest-figures.ts';
import { middle, type Range } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { Recipe } from '../recipe/model.ts';
import { isOutOfOven, type OutOfOven, outOfOven } from '../recipe/trials/out-of-oven.ts';
import { isOutsideFood, type Trial } from '../recipe/trials/trials.ts';
import type { ReportMeasured, ReportMeasuredValue, ReportOvenTime } from './report-shape.ts';
import { round } from './rounded.ts';

type Row = Omit<ReportMeasured, 'values'> & { readonly values: ReportMeasuredValue[] };

/** In the order of the first trial that measured each: times, temperatures, weights, then what was used. `oven` are the estimates. */
export function measuredIn(
  recipe: Recipe,
  trials: readonly Trial[],
  oven: readonly ReportOvenTime[],
): readonly ReportMeasured[] {
  const usual = outOfOven(recipe);
  const times = timesIn(recipe).flatMap(({ value }) => value);
  const heats = heatIn(recipe).flatMap(({ value }) => value);
  const all = [
    trials.map((trial) => tookIn(recipe, times, trial, oven)),
    trials.map((trial) => reachedIn(recipe, heats, trial)),
    trials.map((trial) => weighedIn(recipe, trial, usual)),
    trials.map((trial) => usedIn(recipe, trial)),
  ];
  return all.flatMap((byTrial) => {
    const rows = new Map<string, Row>();
    byTrial.forEach((found, trial) => {
      for (const { key, of, value } of found) {
        const row = rows.get(key) ?? { ...of, values: [] };
        rows.set(key, row);
        row.values.push({ ...value, trial });
      }
    });
    return [...rows.values()];
  });
}

interface Found {
  /** The same for what is one row. */
  readonly key: string;
  readonly of: Omit<ReportMeasured, 'values'>;
  readonly value: Omit<ReportMeasuredValue, 'trial'>;
}

const NOTHING_SAID = { written: null, usual: null, estimate: null } as const;

const rangeOf = ({ low, high }: Range): { readonly low: number; readonly high: number } => ({
  low: round(low, 1),
  high: round(high, 1),
});

function tookIn(
  recipe: Recipe,
  times: readonly TimeAt[],
  { took }: Trial,
  oven: readonly ReportOvenTime[],
): readonly Found[] {
  return took.map(({ duration, verb }): Found => {
    const minutes = { low: duration.lowMin, high: duration.highMin };
    const near = nearestTime(times, middle(minutes), namedIn(verb));
    const said = verb === undefined ? 'in all' : `to ${verb.text}`;
    if (near === undefined)
      return {
        key: said.toLowerCase(),
        of: { what: 'took', said, unit: 'min', ...NOTHING_SAID },
        value: { ...rangeOf(minutes), outside: false },
      };
    const line = lineOf(recipe, near);
    const { low, high } = near.said.minutes;
    const estimate = oven.find((each) => each.line === line)?.estimate;
    return {
      key: `${line} ${near.node.start}`,
      of: {
        what: 'took',
        said,
        unit: 'min',
        written: { ...rangeOf({ low, high }), line },
        usual: null,
        estimate: estimate == null ? null : estimateOf(estimate),
      },
      // A range says how far it may go; one figure is about that.
      value: {
        ...rangeOf(minutes),
        outside: distanceOf(middle(minutes), low, high) > (low === high ? TIME_SLACK * high : 0),
      },
    };
  });
}

const estimateOf = (of: NonNullable<ReportOvenTime['estimate']>): NonNullable<ReportMeasured['estimate']> => ({
  likely: of.likely_min,
  low: of.low_min,
  high: of.high_min,
  trials: of.trials,
});

function nearestTime(times: readonly TimeAt[], minutes: number, verb: string | undefined): TimeAt | undefined {
  const off = ({ said }: TimeAt): number => distanceOf(minutes, said.minutes.low, said.minutes.high);
  return times.filter((each) => verb !== undefined && each.verb?.key === verb).toSorted((a, b) => off(a) - off(b))[0];
}

function reachedIn(recipe: Recipe, heats: readonly HeatAt[], { reached }: Trial): readonly Found[] {
  return reached.map(({ celsius, place }): Found => {
    const said = place === undefined ? '' : `in ${place.text}`;
    // What the oven or the room had is not what the food had.
    const near = isOutsideFood(place) ? undefined : nearestHeat(heats, celsius.low);
    return {
      key: said.toLowerCase(),
      of: {
        what: 'reached',
        said,
        unit: 'C',
        ...NOTHING_SAID,
        ...(near !== undefined && { written: { ...rangeOf(near.celsius), line: lineOf(recipe, near) } }),
      },
      // Less than is promised may not be safe; a little more is what a thermometer is out by.
      value: {
        ...rangeOf(celsius),
        outside:
          near !== undefined &&
          (celsius.low < near.celsius.low || celsius.high > near.celsius.high + TEMPERATURE_SLACK_C),
      },
    };
  });
}

function nearestHeat(heats: readonly HeatAt[], degrees: number): HeatAt | undefined {
  const off = ({ celsius }: HeatAt): number => distanceOf(degrees, celsius.low, celsius.high);
  return heats.toSorted((a, b) => off(a) - off(b))[0];
}

/** From 1, in the file. */
const lineOf = ({ partsAt }: Recipe, { part, step }: Pick<TimeAt, 'part' | 'step'>): number =>
  (partsAt[part.index] ?? 0) + step.line + 1;

/** Grams; undefined of what was measured by volume. */
function gramsIn({ quantity, unit }: MeasuredNode): Range | undefined {
  const symbol = unit?.symbol;
  const base = symbol === undefined || dimensionOf(symbol) !== 'mass' ? undefined : baseOf(symbol, 'us');
  return base === undefined ? undefined : { low: quantity.low * base, high: quantity.high * base };
}

function weighedIn(recipe: Recipe, { weighed }: Trial, usual: OutOfOven | undefined): readonly Found[] {
  return weighed.flatMap((line): readonly Found[] => {
    const grams = gramsIn(line.amount);
    if (grams === undefined) return [];
    const said = line.outOf === undefined ? 'at the end' : `out of ${line.outOf.text}`;
    const held = isOutOfOven(line) ? usual : undefined;
    const pieces = piecesOf(recipe);
    const ofOne = held !== undefined && pieces.low > 1 && grams.high * Math.sqrt(pieces.low) < held.left.low;
    const left = held && (ofOne ? { low: held.left.low / pieces.high, high: held.left.high / pieces.low } : held.left);
    return [
      {
        key: `${said.toLowerCase()}${ofOne ? ' one' : ''}`,
        of: {
          what: 'weighed',
          said: ofOne ? `${said}, one of them` : said,
          unit: 'g',
          ...NOTHING_SAID,
          ...(left !== undefined && Number.isFinite(left.high) && { usual: rangeOf(left) }),
        },
        value: {
          ...rangeOf(grams),
          outside: held !== undefined && beyondUsual(grams, held, pieces) !== undefined,
        },
      },
    ];
  });
}

function usedIn(recipe: Recipe, { used }: Trial): readonly Found[] {
  return used.flatMap((line): readonly Found[] => {
    const meant = usedAgainstList(recipe, line);
    const own = line.amount.kind === 'measured' ? gramsIn(line.amount) : undefined;
    const grams = meant === undefined ? own : { low: meant.grams, high: meant.grams };
    if (grams === undefined) return [];
    const name = line.part === undefined ? line.name.text : `${line.name.text} in ${line.part.text}`;
    const weighed = meant?.listed.weighed;
    const listed = weighed?.known === true ? weighed.grams : undefined;
    const at = meant && (recipe.partsAt[meant.part.index] ?? 0) + meant.listed.line + 1;
    return [
      {
        key: name.toLowerCase(),
        of: {
          what: 'used',
          said: name,
          unit: 'g',
          ...NOTHING_SAID,
          ...(listed !== undefined && at !== undefined && { written: { ...rangeOf(listed), line: at } }),
        },
        value: {
          ...rangeOf(grams),
          outside:
            listed !== undefined && distanceOf(middle(grams), listed.low, listed.high) > AMOUNT_SLACK * listed.high,
        },
      },
    ];
  });
}
