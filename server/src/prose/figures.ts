/**
 * Knows which pieces are temperatures: figures with a scale, numbers without one where an oven's is expected, and figures that say another again.
 * Refuses to know of what they are.
 */
import type { Range } from '../measure/quantity.ts';
import { celsiusOf } from '../notation/celsius.ts';
import type { SentenceItem, TemperatureNode } from '../notation/tree.ts';
import type { TemperatureSaid } from './event.ts';
import { evidenceOf, isThermometer, jointOf, thingOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { adds } from './points.ts';
import { isNumber } from './time-amounts.ts';

/** No oven is colder or hotter on either scale, and no count of a recipe as high behind `at`. */
const BARE: Range = { low: 100, high: 550 };
/** Of other things it is more than an hour of the clock. */
const COOLEST_BARE = 30;
/** Of an oven, with a digit too few or too many: more than an hour of the clock or a gas mark. */
const SLIPPED: Range = { low: 13, high: 5500 };
/** A clock's hours and minutes. */
const CLOCK_DIGITS = 4;
const isOfClock = (digits: number): boolean => digits < 2400 && digits % 100 < 60;
/** Above it a figure is Fahrenheit. */
const HOTTEST_BARE_C = 275;

/** `Bake at 350`, `until it reads 165`: a number without a unit, where a temperature is expected, is one from here on. */
export function findBareFigures(pieces: readonly Piece[], items: readonly SentenceItem[]): void {
  let isOven = false;
  let isPlaced = false;
  let isRead = false;
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    const row = piece.part === 'thing' ? thingOf(piece.sense) : verbOf(piece.sense);
    isOven ||= row !== undefined && adds(row.figure, 'oven') >= OVEN;
    isPlaced ||= row?.figure.some((weight) => weight.adds >= OVEN) === true;
    // `it reads at least 165`
    const isReading = isRead;
    isRead =
      verbOf(piece.sense)?.act === 'read' ||
      (piece.sort !== 'mark' && isThermometer(piece.sense)) ||
      (isRead && (jointOf(piece.sense) !== undefined || BESIDE_IT.has(piece.word)));
    if (piece.sort !== 'amount') continue;
    const joint = jointOf(pieces[at - 1]?.sense ?? UNKNOWN);
    const next = pieces[at + 1];
    const isLast = next === undefined || next.sort !== 'word' || next.part !== 'thing';
    const isAt = adds(joint?.adds ?? [], 'oven') > 0;
    const node = isLast ? bareNode(items[piece.from], isOven && (isAt || joint?.is === 'to')) : undefined;
    if (node === undefined) continue;
    if (
      isReading ||
      isInMiddle(pieces, at, node) ||
      (isPlaced && isAt) ||
      (isOven && (isAt || joint?.is === 'to') && (node.lowDegrees >= BARE.low || node.lowDegrees < COOLEST_BARE))
    )
      piece.sort = 'temperature';
  }
}

/** `Prod it with a probe: 75` */
const BESIDE_IT: ReadonlySet<string> = new Set([':', ',', '-', '–']);

/** `165 in the thigh`, `75 at the core`: what is counted there is degrees. */
function isInMiddle(pieces: readonly Piece[], at: number, { lowDegrees, highDegrees }: TemperatureNode): boolean {
  const is = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is;
  if (!COOKED.some(([low, high]) => lowDegrees >= low && highDegrees <= high)) return false;
  // `74 inside`
  if (evidenceOf(pieces[at + 1]?.sense ?? UNKNOWN)?.inside) return true;
  if (is !== 'preposition' && is !== 'when' && is !== 'which') return false;
  for (let i = at + 2; i < at + 2 + AHEAD; i++) {
    const { sort, sense, part } = pieces[i] ?? {};
    if (sort === undefined || sense === undefined || sort === 'mark') return false;
    if (evidenceOf(sense)?.inside) return true;
    if (part !== 'joint') return false;
  }
  return false;
}
/** What is read in food that is cooked, in °C and in °F. */
const COOKED: readonly (readonly [number, number])[] = [
  [50, 100],
  [120, 212],
];
/** `in the thigh` */
const AHEAD = 3;

/** From so much on a word expects an oven's figure. */
const OVEN = 3;

/** The temperature that a number is where it is one. */
function bareNode(item: SentenceItem | undefined, isOvens = true): TemperatureNode | undefined {
  if (item?.kind !== 'measured' || !isNumber(item)) return undefined;
  const { quantity, low, high, start, end } = item;
  const possible = isOvens ? SLIPPED : { low: COOLEST_BARE, high: BARE.high };
  if (quantity.low < possible.low || quantity.high > possible.high) return undefined;
  // `at 0500`, `at 1730`
  if (end - start === CLOCK_DIGITS && quantity.low === quantity.high && isOfClock(quantity.low)) return undefined;
  return {
    kind: 'temperature',
    start,
    end,
    low,
    ...(high && { high }),
    lowDegrees: quantity.low,
    highDegrees: quantity.high,
    unit: quantity.low > HOTTEST_BARE_C ? 'F' : 'unsaid',
    unitSpan: { start: end, end },
    fan: false,
    about: quantity.about === true,
  };
}

/** Scales beside each other agree within so much; by fan it is some 20 °C less. */
const SAME_C = 12;
const MOST_FAN_C = 35;

const nodeAt = (pieces: readonly Piece[], items: readonly SentenceItem[], at: number): TemperatureNode | undefined => {
  const piece = pieces[at];
  const item = piece?.sort === 'temperature' ? items[piece.from] : undefined;
  return item?.kind === 'temperature' ? item : bareNode(item);
};

const DASHES: ReadonlySet<string> = new Set(['-', '–', '—']);
const BETWEEN: ReadonlySet<string> = new Set(['/', '(', ',', '=']);
/** These say that what follows is the same, so far apart as a slip of the pen may be. */
const SAYS_AGAIN: ReadonlySet<string> = new Set(['/', '(', '=']);
const MOST_SLIP_C = 60;

/** The figure before this one that this one says again in another scale: `180 C/160 C fan/gas 4`, `350 F (180 C)`. */
export function againFrom(pieces: readonly Piece[], items: readonly SentenceItem[], at: number): number | undefined {
  const node = nodeAt(pieces, items, at);
  let before = at - 1;
  while (
    before >= 0 &&
    before > at - 3 &&
    (BETWEEN.has((pieces[before] as Piece).word) || jointOf((pieces[before] as Piece).sense)?.is === 'or')
  )
    before--;
  const first = nodeAt(pieces, items, before);
  if (node === undefined || first === undefined) return undefined;
  const is = isSame(first, node) || (isMeantSame(pieces, before, at) && isOtherScale(first, node));
  return is ? before : undefined;
}

/** `180 C/450 F`, `180 C (450 F)`; but not `110 C (60 C inside)`. */
function isMeantSame(pieces: readonly Piece[], before: number, at: number): boolean {
  if (!SAYS_AGAIN.has((pieces[before + 1] as Piece).word)) return false;
  const next = pieces[at + 1];
  return next === undefined || next.sort === 'mark' || next.sort === 'time' || jointOf(next.sense) !== undefined;
}

const isOtherScale = (a: TemperatureNode, b: TemperatureNode): boolean =>
  a.unit !== b.unit && Math.abs(celsiusOf(a).low - celsiusOf(b).low) <= MOST_SLIP_C;

function isSame(a: TemperatureNode, b: TemperatureNode): boolean {
  if (a.unit === b.unit && a.fan === b.fan) return false;
  const apart = celsiusOf(a).low - celsiusOf(b).low;
  if (a.fan === b.fan) return a.unit === 'unsaid' || b.unit === 'unsaid' || Math.abs(apart) <= SAME_C;
  return a.fan ? -apart <= MOST_FAN_C : apart <= MOST_FAN_C;
}

/** A figure with all that says it again behind the piece `at`, and the piece of the last; a bracket that closes there is its own. */
export function writtenFrom(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  at: number,
  node: TemperatureNode,
): { readonly written: readonly TemperatureNode[]; readonly end: number } {
  const written = [node];
  let end = at;
  for (let next = end + 1; next < pieces.length && next <= end + 3; next++)
    if (againFrom(pieces, items, next) === end) {
      end = next;
      written.push(nodeAt(pieces, items, next) as TemperatureNode);
    }
  const isBracketed = pieces.slice(at, end).some(({ word }) => word === '(');
  return { written, end: isBracketed && pieces[end + 1]?.word === ')' ? end + 1 : end };
}

/** A difference has no zero. */
export function changeOf({ unit, lowDegrees, highDegrees }: TemperatureNode): Range {
  const each = unit === 'F' ? 1 / 1.8 : 1;
  return { low: lowDegrees * each, high: highDegrees * each };
}

/** The figure at a piece with both its ends, and the piece of its last: `between 78 F and 82 F`, `from 180 C to 190 C`, `between 60 and 65 C`. */
export function nodeWithEnds(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  at: number,
): { readonly node: TemperatureNode; readonly last: number } {
  const node = nodeAt(pieces, items, at) as TemperatureNode;
  const high = otherEnd(pieces, items, at, node);
  const low = lowEnd(pieces, items, at, node);
  return {
    node: {
      ...node,
      ...(low !== undefined && { lowDegrees: low }),
      ...(high && { highDegrees: high.highDegrees }),
    },
    last: high === undefined ? at : at + 2,
  };
}

/** The figure that ends what this one begins. */
function otherEnd(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  at: number,
  node: TemperatureNode,
): TemperatureNode | undefined {
  const joiner = pieces[at + 1];
  const high = nodeAt(pieces, items, at + 2);
  if (joiner === undefined || high === undefined || high.unit !== node.unit || high.lowDegrees < node.highDegrees)
    return undefined;
  const is = jointOf(joiner.sense)?.is;
  const isBetween = timeOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'between';
  return is === 'to' || (isBetween && is === 'conjunction') || DASHES.has(joiner.word) ? high : undefined;
}

/** The number whose scale stands behind the other. */
function lowEnd(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  at: number,
  { lowDegrees }: TemperatureNode,
): number | undefined {
  if (timeOf(pieces[at - 3]?.sense ?? UNKNOWN)?.is !== 'between') return undefined;
  if (jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is !== 'conjunction') return undefined;
  const piece = pieces[at - 2];
  const item = piece?.sort === 'amount' ? items[piece.from] : undefined;
  return item?.kind === 'measured' && isNumber(item) && item.quantity.low <= lowDegrees ? item.quantity.low : undefined;
}

/** Water boils away over it. */
const HOTTEST_LOGGED_C = 110;

/** `60 C at the start, 21 C at 9 h and 5 C at 14 h`: what is read in the food as it cools, each with its time. */
export function isLog(pieces: readonly Piece[], said: readonly TemperatureSaid[]): boolean {
  return said.every(({ celsius, end, of }, at) => {
    if (of === 'oven' || of === 'medium') return false;
    const before = said[at - 1];
    if (before === undefined) return celsius.high <= HOTTEST_LOGGED_C;
    const next = pieces.findIndex((piece) => piece.start >= end);
    return celsius.high < before.celsius.low && pieces[next]?.time !== undefined;
  });
}

/** `Not above 80 C`: what a bound is where it is denied. */
export const DENIED: Readonly<Record<TemperatureSaid['bound'], TemperatureSaid['bound']>> = {
  is: 'is',
  'at least': 'at most',
  'at most': 'at least',
  change: 'change',
};
