/**
 * Knows what a page says of times: how long all of it takes, what rests or keeps.
 * Refuses to know how it is laid out.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { plannedTimes } from '../recipe/journey/durations.ts';
import { type TimeFigure, timesOf } from '../recipe/journey/figures.ts';
import { lastingOf } from '../recipe/journey/lasting.ts';
import type { Part, Recipe, Step } from '../recipe/model.ts';
import { capital } from '../recipe/words.ts';
import { stepText } from './step-text.ts';
import { prettyFigures } from './two-measures.ts';

export interface PageTimes {
  readonly totalMin: number | null;
  readonly handsOnMin: number | null;
  readonly waitingMin: number | null;
  /** In the oven or on the stove. */
  readonly cookingMin: number | null;
  /** By the recipe's head; else as far as its steps say. */
  readonly stated: boolean;
}

export function pageTimes(recipe: Recipe): PageTimes {
  const { total, handsOn, waiting, cooking, stated } = plannedTimes(recipe);
  return { totalMin: total, handsOnMin: handsOn, waitingMin: waiting, cookingMin: cooking, stated };
}

type Event = TimeFigure['event'];

/** A rest of a night is begun on the day before; a shorter one is part of the work. */
const LEAST_REST_MIN = 8 * 60;

/** What can be done ahead, in the order of the work: what rests overnight, and what keeps. */
export function aheadOf({ parts }: Recipe): readonly string[] {
  const steps = parts.flatMap((part) => part.steps.map((step) => ({ part, step })));
  const rests = steps.flatMap(({ part, step }) => restsIn(part, step));
  const keeps = steps.flatMap(({ part, step }) =>
    timesOf(step).some(({ said }) => said.kind === 'life')
      ? [stepText(step, lineOf(part, step)).replace(/\.$/, '')]
      : [],
  );
  return [...new Set([...rests, ...keeps])];
}

const lineOf = ({ head }: Part, { line }: Step): string => head.source.lines[line]?.text ?? '';

/** `Chill for 12 h (pastry)`, `Soak overnight`. */
function restsIn(part: Part, step: Step): readonly string[] {
  const line = lineOf(part, step);
  const whose = part.head.name === '' ? '' : ` (${part.head.name})`;
  const seen = new Set<Event>();
  return timesOf(step).flatMap(({ event }) => {
    const lasts = seen.has(event) ? undefined : lastingOf(event, undefined);
    seen.add(event);
    if (lasts === undefined || lasts.spent !== 'waiting' || lasts.likely < LEAST_REST_MIN) return [];
    const verb =
      event.as === 'ordered' && event.verb !== undefined ? line.slice(event.verb.start, event.verb.end) : undefined;
    return [`${capital(verb ?? RESTS[event.act] ?? 'rest')} ${timeText(step, event, line)}${whose}`];
  });
}

/** What is done by itself where no order says it. */
const RESTS: Readonly<Partial<Record<Event['act'], string>>> = {
  cool: 'cool',
  freeze: 'freeze',
  thaw: 'thaw',
  rise: 'rise',
  steep: 'steep',
  stay: 'leave',
  dry: 'dry',
};

/** The time of an event as it is written, all its choices. */
function timeText({ sentence }: Step, { times }: Event, line: string): string {
  const spans = times.filter(({ kind }) => kind === 'spent' || kind === 'until' || kind === 'limit');
  const texts = spans.map(({ start, end }) => {
    const figure = sentence.items.filter(isTime).find((item) => item.start >= start && item.end <= end);
    const isBare = figure !== undefined && figure.start === start && !figure.overnight;
    return `${isBare ? 'for ' : ''}${prettyFigures(line.slice(start, end).trim())}`;
  });
  return texts.join(' ');
}

const isTime = (item: SentenceItem): item is Extract<SentenceItem, { readonly kind: 'duration' }> =>
  item.kind === 'duration';
