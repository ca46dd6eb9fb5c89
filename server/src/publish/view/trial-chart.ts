/**
 * Knows how one measured thing is drawn over the days of its trials, beside what is written of it now.
 * Refuses to know the recipe, and to draw more than its table says.
 */
import { middle } from '../../measure/quantity.ts';
import { shortDate } from '../date-text.ts';
import { escapeHtml } from '../escape-html.ts';
import type { ReportMeasured, ReportTrial } from '../report-shape.ts';
import { type MeasuredUnit, rangeText } from './trial-units.ts';

/** Per cent of the width: the first day, the last, and where what is written ends. */
const [FIRST, LAST, END] = [5, 85, 88];
/** Pixels: of the whole, of the highest and lowest point, of the foot of the dashed lines, and of the days. */
const [HEIGHT, TOP, BOTTOM, FOOT, DAYS] = [122, 24, 88, 100, 118];
/** Two trials stand at least this share of an even distance apart. */
const NEAREST = 0.45;
/** Up to so many points each is lettered. */
const ALL_LETTERED = 8;

/** `said` is its sentence for whoever does not see it. */
export function chartOf(
  trials: readonly ReportTrial[],
  measured: ReportMeasured,
  unit: MeasuredUnit,
  said: string,
): string {
  const across = placesOf(trials);
  const up = scaleOf(measured);
  const points = measured.values.map((value) => ({
    x: across[value.trial] ?? FIRST,
    y: up(middle(value)),
    filled: trials[value.trial]?.as_it_stands === true,
    text: rangeText(value, unit),
    value: middle(value),
  }));
  const letters = lettersOf(points);
  const joins = points.slice(1).map((to, i) => {
    const from = points[i] ?? to;
    return `<line class="grid" x1="${x(from.x)}" x2="${x(to.x)}" y1="${y(from.y)}" y2="${y(to.y)}"/>`;
  });
  const dots = points.map(
    (point) => `<circle class="${point.filled ? 'ink' : 'hollow'}" cx="${x(point.x)}" cy="${y(point.y)}" r="3.6"/>`,
  );
  const told = measured.values.map(
    (value) => `${rangeText(value, unit)} on ${shortDate(trials[value.trial]?.date ?? '', true)}`,
  );
  const label = escapeHtml(`${said}: ${told.join(', ')}.`);
  return `<svg class="draw" height="${HEIGHT}" role="img" aria-label="${label}">${written(measured, unit, up)}${changes(trials, across)}${joins.join('')}${dots.join('')}${letters.join('')}${days(trials, across)}</svg>`;
}

const x = (percent: number): string => `${Number(percent.toFixed(1))}%`;
const y = (pixels: number): string => String(Number(pixels.toFixed(1)));

/** By the day, but never so near that two cannot be told apart; the same in every chart. */
function placesOf(trials: readonly ReportTrial[]): readonly number[] {
  const all = trials.map(({ date }) => Date.parse(date) || 0);
  const gaps = all.slice(1).map((day, i) => Math.max(0, day - (all[i] ?? day)));
  const [first = 0, last = first] = [all[0], all.at(-1)];
  const least = (Math.max(1, last - first) / Math.max(1, gaps.length)) * NEAREST;
  const wide = gaps.map((gap) => Math.max(gap, least));
  const sum = wide.reduce((a, b) => a + b, 0);
  let at = 0;
  return [0, ...wide].map((gap) => {
    at += gap;
    return sum === 0 ? (FIRST + LAST) / 2 : FIRST + (at / sum) * (LAST - FIRST);
  });
}

/** From the least to the most of what was measured and what is written. */
function scaleOf({ values, written }: ReportMeasured): (value: number) => number {
  const all = [...values.map((value) => middle(value)), ...(written === null ? [] : [written.low, written.high])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return (value) => (high === low ? (TOP + BOTTOM) / 2 : BOTTOM - ((value - low) / (high - low)) * (BOTTOM - TOP));
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly value: number;
}

/** Each above its point; beneath it where another's would stand on it. */
function lettersOf(points: readonly Point[]): readonly string[] {
  const lettered = letteredOf(points.map(({ value }) => value));
  const placed: Point[] = [];
  for (const [i, point] of points.entries()) {
    if (!lettered.has(i)) continue;
    const [above, beneath] = [point.y - 8, point.y + 17].map((at) => ({ ...point, y: at }));
    if (above === undefined || beneath === undefined) continue;
    placed.push(placed.some((other) => isOver(above, other)) ? beneath : above);
  }
  return placed.map(
    (letter) => `<text class="halo" x="${x(letter.x)}" y="${y(letter.y)}" text-anchor="middle">${letter.text}</text>`,
  );
}

/** Per cent of the width that a character takes in the narrowest chart, and pixels that a line of lettering does. */
const [CHARACTER, LINE] = [2.7, 13];

const isOver = (a: Point, b: Point): boolean =>
  Math.abs(a.y - b.y) < LINE && Math.abs(a.x - b.x) < ((a.text.length + b.text.length) / 2) * CHARACTER;

/** Each of a few; of many the last, the least and the most. */
function letteredOf(values: readonly number[]): ReadonlySet<number> {
  if (values.length <= ALL_LETTERED) return new Set(values.keys());
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return new Set([values.length - 1, values.indexOf(least), values.indexOf(most)]);
}

/** What is written now: a band, or one line. */
function written(measured: ReportMeasured, unit: MeasuredUnit, up: (value: number) => number): string {
  if (measured.written === null) return '';
  const { low, high } = measured.written;
  const [bottom, top] = [up(low), up(high)];
  const edge = (value: number): string => {
    const at = up(value);
    const text = rangeText({ low: value, high: value }, unit);
    return `<line class="edge" x1="0" x2="${END}%" y1="${y(at)}" y2="${y(at)}"/><text class="soft" x="100%" y="${y(at + 4)}" text-anchor="end">${text}</text>`;
  };
  if (low === high) return edge(low);
  const isRoomy = bottom - top >= 12;
  return `<rect class="band" x="0" width="${END}%" y="${y(top)}" height="${y(bottom - top)}"/>${isRoomy ? edge(low) : ''}${edge(high)}`;
}

/** Between the two trials that the text was changed between, and after the last where it was changed since. */
const changes = (trials: readonly ReportTrial[], across: readonly number[]): string =>
  trials
    .flatMap(({ changed_after: change }, i) => {
      if (change === null) return [];
      const [from = FIRST, to = END + 4] = [across[i], across[i + 1]];
      const at = x((from + to) / 2);
      return [`<line class="serve" x1="${at}" x2="${at}" y1="4" y2="${FOOT}"/>`];
    })
    .join('');

/** The first and the last day; all others stand in the table. */
function days(trials: readonly ReportTrial[], across: readonly number[]): string {
  const [first, last] = [trials[0], trials.at(-1)];
  if (first === undefined || last === undefined) return '';
  const withYear = first.date.slice(0, 4) !== last.date.slice(0, 4);
  const text = (at: number | undefined, of: ReportTrial, anchor: string): string =>
    `<text class="soft" x="${x(at ?? FIRST)}" y="${DAYS}"${anchor}>${escapeHtml(shortDate(of.date, withYear))}</text>`;
  const end = text(across.at(-1), last, ' text-anchor="middle"');
  return first === last ? end : `${text(across[0], first, '')}${end}`;
}
