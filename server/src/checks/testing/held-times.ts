/**
 * Knows where a trial took another time than the steps say.
 */
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import { capital } from '../../recipe/words.ts';
import type { Found } from '../check.ts';
import { onceWith } from '../once.ts';
import type { Values } from './held-values.ts';
import { farTime, namedIn, TIME_SLACK, type TimeAt, type Took, textAt, timesIn } from './nearest-figures.ts';

const timeFound = onceWith(
  (
    { at, duration, verb }: Took,
    { part, step, node, said, verb: of }: TimeAt,
    date: string,
    trials: readonly Trial[],
  ): Found<Values> => {
    const named = namedIn(verb);
    const others = trials.flatMap(({ took }) =>
      took.filter((o) => o.verb !== undefined && namedIn(o.verb) === named).map((o) => o.duration.lowMin),
    );
    const agreeing = others.filter((m) => Math.abs(m - duration.lowMin) <= TIME_SLACK * duration.lowMin);
    return {
      at: { part: part.index, line: step.line, start: node.start, end: node.end },
      values: {
        what: 'time',
        of: capital(of?.base ?? 'it'),
        written: textAt(part, step.line, node),
        measured: minutesText({ low: duration.lowMin, high: duration.highMin }),
        differs: differenceOf(duration.lowMin, said.minutes),
        date,
        trialAt: { line: at, start: duration.start, end: duration.end },
        write: minutesText({
          low: Math.min(...agreeing, duration.lowMin),
          high: Math.max(...agreeing, duration.highMin),
        }),
      },
    };
  },
);

export const times = (recipe: Recipe, { took, date }: Trial, trials: readonly Trial[]): readonly Found<Values>[] =>
  took.flatMap((line) => {
    const far = farTime(line, timesIn(recipe));
    return far === undefined ? [] : [timeFound(line, far, date, trials)];
  });

/** `12 min longer` than the range said. */
function differenceOf(minutes: number, { low, high }: Range): string {
  const [by, way] = minutes > high ? [minutes - high, 'longer'] : [low - minutes, 'shorter'];
  return `${minutesText({ low: by, high: by })} ${way}`;
}

/** `52 min`, `5 h 30 min`, `1.5-2 h`: in hours where minutes would be many. */
function minutesText({ low, high }: Range): string {
  if (low < MANY_MINUTES || !Number.isInteger(low) || !Number.isInteger(high))
    return low === high ? `${trimmed(low, 1)} min` : `${trimmed(low, 1)}-${trimmed(high, 1)} min`;
  if (low !== high) return `${trimmed(low / 60, 2)}-${trimmed(high / 60, 2)} h`;
  return low % 60 === 0 ? `${low / 60} h` : `${Math.floor(low / 60)} h ${low % 60} min`;
}

const MANY_MINUTES = 120;
