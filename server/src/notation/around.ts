/**
 * Knows what stands around a token of a list slot: numbers, measures, gaps, marks, and whether one of its word is meant.
 * Refuses to give a token another kind.
 */
import type { CountWord } from '../measure/count-words.ts';
import { dimensionOf, unitPrinted } from '../measure/unit.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Written } from './words.ts';

/** Count words that a line may open with, one being meant; others want `of` behind them. */
const ONE_OF: ReadonlySet<CountWord> = new Set<CountWord>([
  'bunch',
  'handful',
  'knob',
  'pack',
  'package',
  'packet',
  'sachet',
  'sprig',
  'stick',
  'thumb',
  'tin',
]);
/** What opens a sentence and no name. */
const NOT_NAMES: ReadonlySet<string | undefined> = new Set([
  'the',
  'it',
  'them',
  'a',
  'an',
  'all',
  'until',
  'in',
  'on',
]);

/** The tokens of one list slot, and what stands beside each; those to the left of what is asked have their labels already. */
export class Around {
  readonly line: string;
  readonly tokens: readonly Token[];

  constructor(line: string, tokens: readonly Token[]) {
    this.line = line;
    this.tokens = tokens;
  }

  /** `breakfast` of `breakfast cup`. */
  isJoined(i: number): boolean {
    const [first, next] = [this.wordAt(i), this.wordAt(i + 1)];
    return first?.joint === 'measure' && next !== undefined && unitPrinted(`${first.word}-${next.word}`) !== undefined;
  }

  kindAt(i: number): Kind {
    return this.tokens[i]?.kind ?? Kind.End;
  }

  wordAt(i: number): Written | undefined {
    return this.tokens[i]?.written;
  }

  /** Whether an amount begins there that stands behind the name in a column of its own: behind a gap or a unit, or before a size. */
  opensColumn(i: number): boolean {
    const [before, { start, end }, after] = [this.tokens[i - 1], this.tokens[i] as Token, this.tokens[i + 1]];
    if (before === undefined) return false;
    if (/^(?:\s{2,}|\t)$/.test(this.line.slice(before.end, start))) return true;
    const isBehindUnit = this.kindAt(this.isPoint(i - 1) ? i - 2 : i - 1) === Kind.UnitWord;
    return isBehindUnit || (after?.kind === Kind.Numeral && after.start > end);
  }

  /** A dash with a blank on either side. */
  isApart(i: number): boolean {
    const [before, dash, after] = [this.tokens[i - 1], this.tokens[i], this.tokens[i + 1]];
    return (
      before !== undefined &&
      dash !== undefined &&
      dash.start > before.end &&
      after !== undefined &&
      after.start > dash.end
    );
  }

  /** `2#`: no blank stands between. */
  isBehindNumber(i: number): boolean {
    // A blank between is left by `2 # bacon` alone: what else follows one is a comment, or the size of a can.
    const isGlued = this.tokens[i - 1]?.end === this.tokens[i]?.start;
    return isNumber(this.kindAt(i - 1)) && (isGlued || !isNumber(this.kindAt(i + 1)));
  }

  isPoint(i: number): boolean {
    return this.isMark(i, '.');
  }

  isMark(i: number, mark: string): boolean {
    const token = this.tokens[i];
    return token?.kind === Kind.Other && this.line[token.start] === mark;
  }

  /** Whether a number begins there; its words are not labelled yet. */
  isNumeric(i: number): boolean {
    const written = this.wordAt(i);
    return isNumber(this.kindAt(i)) || written?.number !== undefined || written?.joint === 'number';
  }

  isMeasureWord(i: number): boolean {
    const written = this.wordAt(i);
    return (
      this.kindAt(i) === Kind.FluidOunce ||
      (written !== undefined &&
        (this.isJoined(i) ||
          written.printed !== undefined ||
          written.count !== undefined ||
          written.size !== undefined ||
          written.bias))
    );
  }

  /** Whether an amount may end there: in a unit, its point, a count word, or a number of no unit. */
  endsMeasure(i: number): boolean {
    const kind = this.kindAt(this.isPoint(i) ? i - 1 : i);
    return kind === Kind.UnitWord || kind === Kind.CountedWord || kind === Kind.NumberWord || kind === Kind.RightParen;
  }

  /** `half and half` is a food. */
  isHalfAnd(i: number): boolean {
    return this.wordAt(i)?.word === 'half' && this.kindAt(i) === Kind.Word && this.wordAt(i + 1)?.word === 'and';
  }

  /** Whether the line may open with this word, one of it being meant: `pinch of salt`, `small bunch parsley`. */
  isOneOf(i: number): boolean {
    const written = this.wordAt(i);
    const next = this.wordAt(i + 1)?.word;
    if (written === undefined || this.tokens.length <= i + 1 || /[.!?:]\s*$/.test(this.line)) return false;
    if (NOT_NAMES.has(next)) return false;
    if (written.count !== undefined)
      return next === 'of'
        ? written.count === written.word
        : ONE_OF.has(written.count) && (written.count === written.word || written.word.startsWith(`${written.count}-`));
    const { printed } = written;
    return (
      printed !== undefined &&
      (printed.verb === undefined || next === 'of') &&
      written.image.length > 2 &&
      dimensionOf(printed.symbol) === 'volume' &&
      !/[^s]s$/.test(written.word)
    );
  }
}
