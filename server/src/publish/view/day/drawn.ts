/**
 * Knows the pieces that drawings of a day are made of: bars, hour lines, ranges, with x in per cent and y in pixels.
 * Refuses to know what they mean.
 */
import type { PlanStep } from '../../plan-facts.ts';
import { lengthOf } from '../../plan-words.ts';
import type { Axis, Hour } from './axis.ts';

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

/** The hours over a drawing; `start` is lettered at its left end where there is one. */
export function hoursText(axis: Axis, serve: string, start?: string): string {
  const hour = ({ x, label, shown }: Hour) =>
    shown === 'never'
      ? ''
      : `<text class="soft${shown === 'wide' ? ' w' : ''}" x="${percent(x)}" y="12" text-anchor="middle">${label}</text>`;
  const cut = axis.cuts
    .map(
      ({ x, width, minutes }) =>
        `<text x="${percent(x + width / 2)}" y="12" text-anchor="middle" font-style="italic">${lengthOf(minutes)}</text>`,
    )
    .join('');
  const first = start === undefined ? '' : `<text class="soft" x="0" y="12">${start}</text>`;
  return `<svg class="draw" height="16" aria-hidden="true">${first}${axis.hours.map(hour).join('')}${cut}<text x="100%" y="12" text-anchor="end" font-weight="600">${serve}</text></svg>`;
}
