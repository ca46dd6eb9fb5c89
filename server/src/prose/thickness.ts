/** Knows how thick or deep a text says that something is: `in one piece 11 cm thick`, `in a layer 5 cm deep`. Refuses to know what. */
import { middle } from '../measure/quantity.ts';
import { baseOf } from '../measure/unit.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { Sentence, SentenceItem, Span } from '../notation/tree.ts';

/** m; the middle of a range, undefined where nothing is said. */
export const thicknessIn = (text: string): number | undefined =>
  text.includes('thick') ? lengthBefore(sentenceIn(text), THICK) : undefined;

/** The same of a step, how deep something lies in it. */
export const depthSaid = (sentence: Sentence): number | undefined => lengthBefore(sentence, DEEP);

const THICK: ReadonlySet<string> = new Set(['thick']);
const DEEP: ReadonlySet<string> = new Set(['deep', 'thick']);

function lengthBefore({ items }: Sentence, words: ReadonlySet<string>): number | undefined {
  for (const [at, item] of items.entries()) {
    const next = items[at + 1];
    if (item.kind !== 'length' || next?.kind !== 'word' || !words.has(next.word)) continue;
    const { quantity, unit } = item.measured;
    const mm = unit === undefined ? undefined : baseOf(unit.symbol, 'us');
    return mm === undefined ? undefined : (middle(quantity) * mm) / 1000;
  }
  return undefined;
}

/** What a step says of a sheet: how thick, and with what how many pieces are cut of it. */
export interface SheetSaid extends Span {
  readonly thickCm: number;
  /** Across. */
  readonly cutterCm?: number;
  readonly pieces: number;
}

/** The thin end of a range. */
export function sheetSaid({ items }: Sentence): SheetSaid | undefined {
  let thick: (Span & { readonly cm: number }) | undefined;
  let cutterCm: number | undefined;
  let pieces = 1;
  for (const [at, item] of items.entries()) {
    if (item.kind === 'measured' && item.unit === undefined && thick !== undefined && !isWord(items[at + 1], TIMES))
      pieces = Math.max(1, item.low.value);
    if (item.kind !== 'length') continue;
    const { quantity, unit } = item.measured;
    const mm = unit === undefined ? undefined : baseOf(unit.symbol, 'us');
    if (mm === undefined) continue;
    const cm = (quantity.low * mm) / 10;
    if (isWord(items[at + 1], THICK)) thick ??= { start: item.start, end: item.end, cm };
    else if (items.slice(at + 1, at + 1 + NEAR).some((each) => isWord(each, CUTTER))) cutterCm ??= cm;
  }
  return thick && { start: thick.start, end: thick.end, thickCm: thick.cm, pieces, ...(cutterCm && { cutterCm }) };
}

const isWord = (item: SentenceItem | undefined, words: ReadonlySet<string>): boolean =>
  item?.kind === 'word' && words.has(item.word);
/** Several of them: one is the sheet itself. */
const CUTTER: ReadonlySet<string> = new Set(['cutter', 'cutters', 'rounds', 'rings', 'circles', 'discs', 'disks']);
const TIMES: ReadonlySet<string> = new Set(['x', '×']);
/** `A 6 cm plain round cutter` */
const NEAR = 4;
