/**
 * Knows the axis of a day in per cent of its width: where a minute stands, which hours are lettered, and where a long wait is cut out.
 * Refuses to know what is drawn on it. Minutes are those before it is eaten, negative.
 */
import { clockOf, minuteOf } from '../../clock.ts';
import type { PlanFacts } from '../../plan-facts.ts';

/** A wait without anything to do that is longer than this is cut, min. */
const LONGEST_WHOLE_MIN = 240;
/** So much of it stays on either side, min. */
const STAYS_MIN = 20;
/** Of the width: some 12 px. */
const CUT_PERCENT = 3;
/** Minutes from one hour line to the next, so that there are no more than so many. */
const STEPS_MIN = [15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880, 10_080];
const MOST_LINES = 6;
/** Two letterings nearer than this touch, in per cent: in a wide drawing, and in a narrow one. */
export const NEAR = { wide: 9, narrow: 16 };

/** The middle of what is lettered at either end, in per cent from there. */
const ENDS = { wide: 3, narrow: 8 };

export interface Hour {
  readonly x: number;
  readonly label: string;
  /** Lettered always, only where there is room, or never. */
  readonly shown: 'always' | 'wide' | 'never';
}

export interface Cut {
  readonly x: number;
  readonly width: number;
  readonly minutes: number;
}

export interface Axis {
  /** Per cent; what lies outside stands at the ends. */
  at(min: number): number;
  readonly hours: readonly Hour[];
  readonly cuts: readonly Cut[];
}

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly isCut: boolean;
}

export function axisOf(facts: PlanFacts): Axis {
  const pieces = piecesOf(facts);
  const cuts = pieces.filter(({ isCut }) => isCut).length;
  const whole = pieces.reduce((sum, { from, to, isCut }) => sum + (isCut ? 0 : to - from), 0);
  // However many there are, most of the width is drawn.
  const cutWidth = cuts === 0 ? 0 : Math.min(CUT_PERCENT, 40 / cuts);
  const perMin = (100 - cuts * cutWidth) / Math.max(1, whole);
  const widthOf = ({ from, to, isCut }: Piece) => (isCut ? cutWidth : (to - from) * perMin);
  const at = (min: number): number => {
    let x = 0;
    for (const piece of pieces) {
      if (min <= piece.from) return x;
      if (min < piece.to) return x + (widthOf(piece) * (min - piece.from)) / (piece.to - piece.from);
      x += widthOf(piece);
    }
    return 100;
  };
  const drawn = pieces.flatMap((piece): Cut[] =>
    piece.isCut ? [{ x: at(piece.from), width: cutWidth, minutes: piece.to - piece.from }] : [],
  );
  return { at, hours: hoursOf(facts, pieces, whole, at, drawn), cuts: drawn };
}

/** The day from its beginning to the table, long waits apart. */
function piecesOf(facts: PlanFacts): readonly Piece[] {
  const busy = [
    ...facts.preheats.map(({ from, to }) => [from.min, to.min] as const),
    ...facts.steps.filter(({ spent }) => spent !== 'waiting').map(({ from, to }) => [from.min, to.min] as const),
  ];
  // Where a wait ends nobody does anything, unless something begins.
  const times = [facts.start.min, 0, ...busy.flat(), ...facts.steps.map(({ from }) => from.min)];
  const inOrder = [...new Set(times)].filter((min) => min >= facts.start.min && min <= 0).sort((a, b) => a - b);
  return inOrder.slice(1).flatMap((to, i): Piece[] => {
    const from = inOrder[i] ?? to;
    const isIdle = !busy.some(([starts, ends]) => starts < to && ends > from);
    if (!isIdle || to - from <= LONGEST_WHOLE_MIN) return [{ from, to, isCut: false }];
    // Whole hours are cut out, so that their length is short to letter.
    const cut = Math.floor((to - from - 2 * STAYS_MIN) / 60) * 60;
    const first = from + STAYS_MIN;
    return [
      { from, to: first, isCut: false },
      { from: first, to: first + cut, isCut: true },
      { from: first + cut, to, isCut: false },
    ];
  });
}

function hoursOf(
  facts: PlanFacts,
  pieces: readonly Piece[],
  whole: number,
  at: (min: number) => number,
  cuts: readonly Cut[],
): readonly Hour[] {
  const serve = minuteOf(facts.serve);
  const each = STEPS_MIN.find((step) => whole / step <= MOST_LINES) ?? whole;
  const hours: Hour[] = [];
  // What is lettered anyway: the beginning, the table, the lengths of the cuts.
  const lengths = cuts.map(({ x, width }) => x + width / 2);
  const wide = [ENDS.wide, 100 - ENDS.wide, ...lengths];
  const narrow = [ENDS.narrow, 100 - ENDS.narrow, ...lengths];
  for (const { from, to, isCut } of pieces) {
    if (isCut) continue;
    for (let clock = Math.ceil((serve + from) / each) * each; clock <= serve + to; clock += each) {
      const x = at(clock - serve);
      if (x <= 0 || x >= 100 || hours.at(-1)?.x === x) continue;
      const isFree = (taken: readonly number[], room: number) => taken.every((other) => Math.abs(other - x) >= room);
      const shown = isFree(narrow, NEAR.narrow) ? 'always' : isFree(wide, NEAR.wide) ? 'wide' : 'never';
      if (shown === 'always') narrow.push(x);
      if (shown !== 'never') wide.push(x);
      hours.push({ x, label: clockOf(clock), shown });
    }
  }
  return hours;
}
