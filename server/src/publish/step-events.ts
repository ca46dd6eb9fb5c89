/**
 * Knows what was understood of each step as facts of a report: what is done, where, how warm, how long and until what, with the words of
 * the line that say it.
 * Refuses to know how they are laid out. What is not said is absent, an open end null.
 */
import type { Range } from '../measure/quantity.ts';
import type { Span } from '../notation/tree.ts';
import { type BoundEvent, boundEvents } from '../recipe/journey/bind.ts';
import type { Part } from '../recipe/model.ts';

export interface ReportStep {
  /** From 1, in the file. */
  readonly line: number;
  readonly events: readonly ReportEvent[];
}

/** Closed words are those of `prose/event.ts`. */
export interface ReportEvent {
  /** The words of its clause, and of its verb; the latter null where none is said. */
  readonly words: string;
  readonly verb: string | null;
  readonly act: string;
  readonly cooks?: string;
  readonly as: string;
  readonly said: string;
  /** Choices of one step have the same number. */
  readonly either?: number;
  /** Names of the list, as the step says them. */
  readonly foods: readonly string[];
  readonly places?: readonly {
    readonly words: string;
    readonly is: string | null;
    readonly way: string;
    readonly sure: string;
  }[];
  readonly vessel?: string;
  readonly medium?: string;
  readonly celsius?: readonly {
    readonly of: string;
    readonly low: number | null;
    readonly high: number | null;
    readonly bound: string;
    readonly sure: string;
  }[];
  readonly minutes?: readonly {
    readonly kind: string;
    readonly low: number;
    readonly high: number | null;
    readonly per?: string;
  }[];
  readonly until?: readonly { readonly words: string; readonly tells: string | null }[];
  readonly fate?: string;
}

/** The steps of a part that say anything; `lineIn` says which line of the file, from 1, a line of the part is. */
export const reportSteps = ({ steps, head }: Part, lineIn: (line: number) => number): readonly ReportStep[] =>
  steps.map((step) => ({
    line: lineIn(step.line),
    events: boundEvents(step).map((bound) => reportEvent(bound, head.source.lines[step.line]?.text ?? '')),
  }));

function reportEvent({ event, names }: BoundEvent, line: string): ReportEvent {
  const words = ({ start, end }: Span): string => line.slice(start, end);
  const { verb, act, cooks, as, said, either, where, vessel, medium, temperatures, times, until, fate } = event;
  return {
    words: words(event),
    verb: verb === undefined ? null : words(verb),
    act,
    ...(cooks && { cooks }),
    as,
    said,
    ...(either > 0 && { either }),
    foods: names.map(({ mention }) => words(mention)),
    ...(where.length > 0 && {
      places: where.map((place) => ({
        words: words(place),
        is: place.is ?? null,
        way: place.not ? `not ${place.way}` : place.way,
        sure: place.sure,
      })),
    }),
    ...(vessel?.is && { vessel: vessel.is }),
    ...(medium?.is && { medium: medium.is }),
    ...(temperatures.length > 0 && {
      celsius: temperatures.map(({ of, celsius, bound, sure }) => ({ of, ...ends(celsius), bound, sure })),
    }),
    ...(times.length > 0 && {
      minutes: times.map(({ kind, minutes, per }) => ({
        kind,
        low: rounded(minutes.low),
        high: ends(minutes).high,
        ...(per && { per }),
      })),
    }),
    ...(until.length > 0 && { until: until.map((sign) => ({ words: words(sign), tells: sign.is ?? null })) }),
    ...(fate && { fate }),
  };
}

const rounded = (value: number): number => Math.round(value * 10) / 10;
const ends = ({ low, high }: Range): { low: number | null; high: number | null } => ({
  low: Number.isFinite(low) ? rounded(low) : null,
  high: Number.isFinite(high) ? rounded(high) : null,
});
