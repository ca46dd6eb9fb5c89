/**
 * Knows how much a sentence says is left of what boils down: a share (`by half`, `to a third`, `to a glaze`) or an amount (`until 300 ml remain`).
 * Refuses to know what boils, and how much of it there was.
 */
import { numberWord } from '../measure/number-words.ts';
import type { Range } from '../measure/quantity.ts';
import { dimensionOf } from '../measure/unit.ts';
import type { MeasuredNode, SentenceItem, Span } from '../notation/tree.ts';
import { formOf, senseOf, verbOf } from './lexicon.ts';
import { isHard } from './pieces.ts';

export type Left = Span &
  (
    | { readonly share: Range; readonly amount?: undefined }
    | { readonly amount: MeasuredNode; readonly share?: undefined }
  );

type Items = readonly SentenceItem[];

/** A cook's eye takes a share for this much less or more; a glaze is so little of a stock (common practice, no source). */
const EYE = 0.2;
const GLAZE: Range = { low: 0.04, high: 0.35 };

const DOWN: ReadonlySet<string> = new Set(['down']);
const BY: ReadonlySet<string> = new Set(['by']);
const TO: ReadonlySet<string> = new Set(['to']);
const UNTIL: ReadonlySet<string> = new Set(['until', 'till']);
const ABOUT: ReadonlySet<string> = new Set(
  ['about', 'around', 'roughly', 'approximately', 'nearly', 'almost', 'just', 'only', 'some', 'the', 'its'], // before an amount
);
const REMAIN: ReadonlySet<string> = new Set(['remain', 'remains', 'remaining', 'left']);
const THICK: ReadonlySet<string> = new Set(['glaze']);

const isWord = (item: SentenceItem | undefined, words: ReadonlySet<string>): boolean =>
  item?.kind === 'word' && words.has(item.word);

/** The last that the sentence says. */
export function leftIn(items: Items): Left | undefined {
  let found: Left | undefined;
  for (let at = 0; at < items.length; at++) found = reducedAt(items, at) ?? remainsAt(items, at) ?? found;
  return found;
}

/** How far behind a verb what it comes to may stand: `reduce the strained stock by half`. */
const NEAR = 10;

/** `reduce … by half`, `boil down to 200 ml` */
function reducedAt(items: Items, at: number): Left | undefined {
  const verb = items[at];
  if (verb?.kind !== 'word') return undefined;
  const row = verbOf(senseOf(verb.word));
  if (row?.act !== 'heat' || formOf(senseOf(verb.word)) === undefined) return undefined;
  let isDown = row.craft === 'reduce';
  for (let i = at + 1; i < Math.min(items.length, at + NEAR); i++) {
    const item = items[i];
    if (item?.kind === 'mark' && (isHard(item.mark) || item.mark === ',')) return undefined;
    if (isWord(item, DOWN)) isDown = true;
    if (!isDown || !(isWord(item, BY) || isWord(item, TO))) continue;
    let from = i + 1;
    while (isWord(items[from], ABOUT)) from++;
    const left = said(items, from, isWord(item, BY));
    if (left !== undefined) return { start: verb.start, end: (items[from] ?? verb).end, ...left };
  }
  return undefined;
}

/** What stands at `at`, of which `by` says that it goes. */
function said(items: Items, at: number, by: boolean): { share: Range } | { amount: MeasuredNode } | undefined {
  const item = items[at];
  if (item?.kind === 'measured' && item.unit !== undefined && item.unit.symbol !== '%')
    return by || !isBulk(item) ? undefined : { amount: item };
  if (isWord(item, THICK) || isWord(items[at + 1], THICK)) return by ? undefined : { share: GLAZE };
  const share = shareAt(items, at);
  if (share === undefined || share <= 0 || share >= 1) return undefined;
  return { share: aboutShare(by ? 1 - share : share) };
}

const aboutShare = (share: number): Range => ({ low: share * (1 - EYE), high: Math.min(1, share * (1 + EYE)) });

/** `half`, `a third`, `two thirds`, `1/3`, `50 %` */
function shareAt(items: Items, at: number): number | undefined {
  const item = items[at];
  if (item?.kind === 'measured')
    return item.unit?.symbol === '%'
      ? item.quantity.low / 100
      : item.unit === undefined
        ? item.quantity.low
        : undefined;
  const first = item?.kind === 'word' ? numberWord(item.word) : undefined;
  if (first === undefined) return undefined;
  if (first.part === true) return first.low;
  const next = items[at + 1];
  const part = next?.kind === 'word' ? numberWord(next.word) : undefined;
  return part?.part === true ? first.low * part.low : undefined;
}

/** `until about 300 ml remain`, `until only 1 cup of liquid is left`, `till a quarter is left` */
function remainsAt(items: Items, at: number): Left | undefined {
  if (!isWord(items[at], UNTIL)) return undefined;
  let from = at + 1;
  while (isWord(items[from], ABOUT)) from++;
  const amount = items[from];
  const left = said(items, from, false);
  if (amount === undefined || left === undefined) return undefined;
  for (let i = from + 1; i < Math.min(items.length, from + NEAR); i++) {
    const item = items[i];
    if (item?.kind === 'mark') return undefined;
    if (isWord(item, REMAIN)) return { start: amount.start, end: amount.end, ...left };
  }
  return undefined;
}

const isBulk = ({ unit }: MeasuredNode): boolean =>
  unit !== undefined && (dimensionOf(unit.symbol) === 'mass' || dimensionOf(unit.symbol) === 'volume');
