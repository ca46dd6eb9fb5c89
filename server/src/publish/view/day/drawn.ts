/**
 * Knows the pieces that drawings of a day are made of: bars, hour lines, ranges, with x in per cent and y in pixels.
 * Refuses to know what they mean.
 */
import type { PlanFacts, PlanStep } from '../../plan-facts.ts';
import { lengthOf } from '../../plan-words.ts';
import { type Axis, type Hour, NEAR } from './axis.ts';

/** Classes of the sheet: at work, on the hob, hot in the oven, waiting, of a length that nobody knows. */
export type BarKind = 'ink' | 'bar' | 'heat' | 'wait' | 'notknown';

export const percent = (x: number): string => `${Math.round(x * 10) / 10}%`;

/** What has no length of its own is drawn so wide, in per cent. */
const STUB = 2;

export interface Bar {
  readonly x: number;
  readonly width: number;
  readonly kind: BarKind;
}

export function barOf(step: PlanStep, axis: Axis): Bar {
  const [from, to] = [axis.at(step.from.min), axis.at(step.to.min)];
  if (isUnknown(step)) return { x: Math.min(from, 100 - STUB), width: STUB, kind: 'notknown' };
  return { x: from, width: Math.max(0.4, to - from), kind: kindOf(step) };
}

/** It takes time, and nobody knows how much. */
export const isUnknown = ({ minutes, minutes_from: from }: PlanStep): boolean => minutes === 0 && from === 'unsaid';

function kindOf({ oven_turns: turns, spent }: PlanStep): BarKind {
  if (turns.length > 0) return 'heat';
  return spent === 'work' ? 'ink' : spent === 'cooking' ? 'bar' : 'wait';
}

/** Over the whole height: the hours, the cuts, the table. */
export const gridOf = ({ hours }: Axis): string =>
  `${hours.map(({ x }) => upright('grid', x)).join('')}${upright('serve', 100)}`;

/** Over what is drawn, as nothing is seen of what is cut out. */
export const cutsOf = ({ cuts }: Axis): string =>
  cuts
    .map(
      ({ x, width }) =>
        `<rect class="gap" x="${percent(x)}" width="${percent(width)}" height="100%"/>${upright('axis', x)}${upright('axis', x + width)}`,
    )
    .join('');

const upright = (kind: string, x: number): string =>
  `<line class="${kind}" x1="${percent(x)}" x2="${percent(x)}" y1="0" y2="100%"/>`;

/** The hours over a wide drawing, with its beginning at the left. */
export function hoursText(axis: Axis, serve: string, start: string): string {
  const cuts = axis.cuts.map(
    ({ x, width, minutes }) =>
      `<text${x < NEAR.narrow ? ' class="w"' : ''} x="${percent(x + width / 2)}" y="12" text-anchor="middle" font-style="italic">${lengthOf(minutes)}</text>`,
  );
  return lettered(`<text class="soft" x="0" y="12">${start}</text>`, axis.hours.map(hourText), cuts, serve);
}

/** The same over one that is always narrow. */
export const narrowHoursText = (axis: Axis, serve: string): string =>
  lettered('', axis.hours.filter(({ shown }) => shown === 'always').map(hourText), [], serve);

const hourText = ({ x, label, shown }: Hour): string =>
  shown === 'never'
    ? ''
    : `<text class="soft${shown === 'wide' ? ' w' : ''}" x="${percent(x)}" y="12" text-anchor="middle">${label}</text>`;

const lettered = (first: string, hours: readonly string[], cuts: readonly string[], serve: string): string =>
  `<svg class="draw" height="16" aria-hidden="true">${[first, ...hours, ...cuts].join('')}<text x="100%" y="12" text-anchor="end" font-weight="600">${serve}</text></svg>`;

/** What waits too long, or is only earlier than it need be. */
export type ClashLevel = 'warning' | 'note';

/** The worst clash of a step; undefined where it has none. */
export function clashOf({ clashes }: PlanFacts, step: number): ClashLevel | undefined {
  const own = clashes.filter((clash) => clash.step === step || clash.other === step);
  return own.some((clash) => clash.too_long_min > 0) ? 'warning' : own.length > 0 ? 'note' : undefined;
}

const POINTS: Readonly<Record<ClashLevel, string>> = { warning: 'M0-5 5 4H-5z', note: 'M0-4.5 4.5 0 0 4.5-4.5 0z' };

/** The mark of a finding, with its middle there. */
export const pointAt = (level: ClashLevel, x: number, y: string): string =>
  `<svg class="point" x="${percent(x)}" y="${y}"><path class="${level}" d="${POINTS[level]}"/></svg>`;

/** From the earliest end to the latest, both in minutes before it is eaten. */
export function rangeOf(earliest: number, latest: number, axis: Axis): string {
  const [from, to] = [axis.at(earliest), axis.at(latest)];
  const tick = (x: number) => `<svg class="point" x="${percent(x)}" y="50%"><line class="thin" y1="-5" y2="5"/></svg>`;
  return `<line class="thin" x1="${percent(from)}" x2="${percent(to)}" y1="50%" y2="50%"/>${tick(from)}${tick(to)}`;
}
