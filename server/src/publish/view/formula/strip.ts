/**
 * Knows how a value is drawn against what is usual: the band is the middle third of every strip, so that the bands of all rows are one column.
 * Refuses to know which measure it is.
 */
import type { Band } from '../../../recipe/measures/kind.ts';
import type { Level } from '../finding.ts';

/** The band's edges in per cent of the width. */
const LEFT = 100 / 3;
const RIGHT = 200 / 3;

/** How the values of one measure lie on its strip. */
export interface Scale {
  readonly at: (value: number) => number;
  /** The values at its left and right end; `up to` begins at the band. */
  readonly ends: readonly [number, number];
  readonly isOpen: boolean;
  /** Nothing is less, so that the axis begins at the band. */
  readonly fromBand: boolean;
}

export function scaleOf([low, high]: Band): Scale {
  const least = low ?? 0;
  // `From 1.3` has no right edge: its band goes on, and twice its least is a third further.
  const most = high ?? (least === 0 ? 1 : least + Math.abs(least));
  const span = most - least;
  const fromBand = least === 0;
  return {
    at: (value) => LEFT + (LEFT * (value - least)) / span,
    ends: [least - span, most + span],
    isOpen: high === null,
    fromBand,
  };
}

/** What stands on a strip, each a value of its measure. */
export interface Drawn {
  readonly low: number;
  readonly high: number;
  /** The mark of what was found; absent within the band. */
  readonly level?: Level | undefined;
  /** It hangs on what nobody knows: it may be anywhere between, and nowhere rather than elsewhere. */
  readonly isOpen?: boolean;
  /** After the fix, or as it is turned. */
  readonly after?: number | undefined;
  /** It is turned: a slider's thumb stands for the value to come. */
  readonly turned?: boolean;
}

/** Height of the axis below the top of the row. */
const Y = 14;
/** Where a value stands that lies beyond the ends, in per cent; an arrow says that it goes on. */
const BEYOND = 5;

/** The band alone, for a row that has no value: it joins the column. */
export const emptyStrip = (): string => `<svg class="draw" aria-hidden="true">${bandOf(false)}${edges(false)}</svg>`;

export function strip(scale: Scale, drawn: Drawn): string {
  const { at } = scale;
  const middle = (drawn.low + drawn.high) / 2;
  const axis = `<line class="axis" x1="${scale.fromBand ? x(LEFT) : '0%'}" x2="100%" y1="${Y}" y2="${Y}"/>`;
  const to =
    drawn.after === undefined
      ? ''
      : `<line class="to" x1="${x(within(at(drawn.after)))}" x2="${x(within(at(middle)))}" y1="${Y}" y2="${Y}"/>`;
  const [from, until] = [within(at(drawn.low)), within(at(drawn.high))];
  const span = until - from > NARROW ? `<line class="span" x1="${x(from)}" x2="${x(until)}" y1="${Y}" y2="${Y}"/>` : '';
  const now =
    drawn.isOpen === true && span !== ''
      ? `${arrow(at(drawn.low))}${arrow(at(drawn.high))}`
      : `${arrow(at(middle))}${point(within(at(middle)), shapeOf(drawn.level))}`;
  const after =
    drawn.after === undefined || drawn.turned === true
      ? ''
      : point(within(at(drawn.after)), '<circle class="after" r="4.5"/>');
  return `<svg class="draw" aria-hidden="true">${bandOf(scale.isOpen)}${axis}${edges(scale.isOpen)}${to}${span}${now}${after}</svg>`;
}

/** Nobody knows where it lies: hatched as far as it could be. */
export const hatchedStrip = (scale: Scale): string =>
  `<svg class="draw" aria-hidden="true">${bandOf(scale.isOpen)}<rect class="notknown" x="${scale.fromBand ? x(LEFT) : '0%'}" width="${x(scale.fromBand ? 100 - LEFT : 100)}" y="${Y - 4.5}" height="9"/>${edges(scale.isOpen)}</svg>`;

/** A spread of less than this, in per cent of the strip, is a point. */
const NARROW = 1.5;

const x = (percent: number): string => `${Number(percent.toFixed(1))}%`;
const within = (percent: number): number => Math.min(100 - BEYOND, Math.max(BEYOND, percent));

const bandOf = (isOpen: boolean): string =>
  `<rect class="band" x="33.3%" width="${isOpen ? '66.7' : '33.4'}%" height="100%"/>`;

const edges = (isOpen: boolean): string =>
  (isOpen ? [LEFT] : [LEFT, RIGHT])
    .map((edge) => `<line class="edge" x1="${x(edge)}" x2="${x(edge)}" y1="0" y2="100%"/>`)
    .join('');

/** A point whose shape is in pixels, at a place in per cent. */
const point = (percent: number, shape: string): string =>
  `<svg class="point" x="${x(percent)}" y="${Y}">${shape}</svg>`;

const SHAPES: Readonly<Record<Level, string>> = {
  error: '<rect class="error" x="-5" y="-5" width="10" height="10"/>',
  warning: '<path class="warning" d="M0-5.5 5.7 5h-11.4z"/>',
  note: '<path class="note" d="M0-5.5 5.5 0 0 5.5-5.5 0z"/>',
};

const shapeOf = (level: Level | undefined): string =>
  level === undefined ? '<circle class="ink" r="4.5"/>' : SHAPES[level];

/** Open, at the end of a strip that the value lies beyond. */
function arrow(percent: number): string {
  if (percent > 100 - BEYOND) return `<svg class="point" x="100%" y="${Y}"><path class="way" d="M-5-4 0 0-5 4"/></svg>`;
  if (percent < BEYOND) return `<svg class="point" x="0%" y="${Y}"><path class="way" d="M5-4 0 0 5 4"/></svg>`;
  return '';
}
