/**
 * The pass that settles what is done beside something else (`meanwhile`, `while it bakes`), and how many times over (`in three batches`).
 * Refuses to know what goes on by then in other sentences.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { Clause } from './clauses.ts';
import { jointOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { isNumber } from './time-amounts.ts';

export function settleBeside(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  // From `meanwhile` to the end of the line.
  let meanwhile = false;
  for (let at = 0; at < clauses.length; at++) {
    const clause = clauses[at] as Clause;
    meanwhile ||= saysMeanwhile(pieces, clause);
    if (meanwhile && clause.event !== undefined) clause.event.meanwhile = true;
    if (clause.opener !== 'while' || clause.event === undefined) continue;
    if (goesOn(pieces, clause)) {
      for (const { event } of sentenceOf(clauses, at))
        if (event !== undefined && event.as === 'ordered' && event !== clause.event) event.meanwhile = true;
    } else clause.event.meanwhile = true;
  }
}

function saysMeanwhile(pieces: readonly Piece[], { from, verb }: Clause): boolean {
  for (let at = from; at < verb; at++) if (jointOf((pieces[at] as Piece).sense)?.way === 'beside') return true;
  return false;
}

/** `While the cake bakes`; but not `while you make the sauce`. */
function goesOn(pieces: readonly Piece[], { from, verb }: Clause): boolean {
  const row = verbOf(pieces[verb]?.sense ?? UNKNOWN);
  return row?.lasts === 'waits' && !pieces.slice(from, verb).some(({ sense }) => jointOf(sense)?.is === 'person');
}

function sentenceOf(clauses: readonly Clause[], at: number): readonly Clause[] {
  let from = at;
  let to = at + 1;
  while (from > 0 && !(clauses[from] as Clause).first) from--;
  while (to < clauses.length && !(clauses[to] as Clause).first) to++;
  return clauses.slice(from, to);
}

/** Gives each event the batches that its clause counts. */
export function countBatches(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  senses: readonly number[],
  clauses: readonly Clause[],
): void {
  for (let at = 1; at < senses.length; at++) {
    if (timeOf(senses[at] ?? UNKNOWN)?.is !== 'batch') continue;
    const count = countBefore(items, senses, at);
    const offset = (items[at] as SentenceItem).start;
    const clause = clauses.find(({ from, to }) => {
      const [first, last] = [pieces[from], pieces[to - 1]];
      return first !== undefined && last !== undefined && first.start <= offset && offset < last.end;
    });
    if (count !== undefined && clause?.event !== undefined) clause.event.batches = count;
  }
}

/** `3`, `two or three`; undefined where no number stands there. */
function countBefore(items: readonly SentenceItem[], senses: readonly number[], at: number): Range | undefined {
  const last = numberAt(items[at - 1]);
  if (last === undefined) return undefined;
  const joint = jointOf(senses[at - 2] ?? UNKNOWN)?.is;
  const first = joint === 'or' || joint === 'to' ? numberAt(items[at - 3]) : undefined;
  return first === undefined ? last : { low: Math.min(first.low, last.low), high: last.high };
}

function numberAt(item: SentenceItem | undefined): Range | undefined {
  if (item?.kind === 'measured') return isNumber(item) ? item.quantity : undefined;
  const number = item?.kind === 'word' ? numberInWord(item.word) : undefined;
  return number === undefined || number.article || number.part ? undefined : { low: number.low, high: number.high };
}
