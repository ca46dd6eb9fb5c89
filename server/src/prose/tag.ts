/**
 * The first pass: knows where rows of the lexicon, names, figures and marks stand in a sentence; of rows that begin at a word the longest.
 * Refuses to know which of its rows a word is there.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { isRow, longerSense, senseOf, UNKNOWN } from './lexicon.ts';
import { type NameRun, Piece, type Sort } from './pieces.ts';

const SORTS: Readonly<Record<SentenceItem['kind'], Sort>> = {
  word: 'word',
  mark: 'mark',
  forced: 'name',
  temperature: 'temperature',
  duration: 'duration',
  measured: 'amount',
  length: 'length',
};

/** All items in pieces, in order. A name gives way to a longer row that begins with it: `ice bath`. */
export function tag(items: readonly SentenceItem[], runs: readonly NameRun[]): Piece[] {
  const pieces: Piece[] = [];
  let next = 0;
  for (let at = 0; at < items.length; ) {
    const item = items[at] as SentenceItem;
    while (next < runs.length && (runs[next] as NameRun).from < at) next++;
    const run = runs[next]?.from === at ? runs[next] : undefined;
    let sense = UNKNOWN;
    let to = at + 1;
    if (item.kind === 'word') {
      sense = senseOf(item.word);
      let longer = sense;
      for (let i = at + 1; longer !== UNKNOWN; i++) {
        const word = items[i];
        if (word?.kind !== 'word') break;
        longer = longerSense(longer, word.word);
        if (longer !== UNKNOWN && isRow(longer)) {
          sense = longer;
          to = i + 1;
        }
      }
    }
    let sort = SORTS[item.kind];
    if (run !== undefined && run.to >= to) {
      if (run.to > to) sense = UNKNOWN;
      sort = 'name';
      to = Math.min(run.to, items.length);
    }
    const { end } = items[to - 1] as SentenceItem;
    const word = to > at + 1 ? '' : item.kind === 'word' ? item.word : item.kind === 'mark' ? item.mark : '';
    pieces.push(new Piece(sort, { start: item.start, end }, at, to, sense, word));
    at = to;
  }
  return pieces;
}
