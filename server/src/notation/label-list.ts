/**
 * Knows what a word of a line of the list stands for: number words, how a measure is filled, units and count words as they are printed.
 * Refuses to know foods: a word that may be a name stays one.
 */
import { biasOf } from '../measure/bias.ts';
import { type CountWord, isPackage } from '../measure/count-words.ts';
import { unitPrinted } from '../measure/unit.ts';
import { Around } from './around.ts';
import { freeWords, OPENS_FREE } from './free-words.ts';
import { isNumber, Kind, Token } from './tokens.ts';
import { type Written, wordOf } from './words.ts';

export const ABOUT: ReadonlySet<string> = new Set([
  'about',
  'approx',
  'approximately',
  'around',
  'ca',
  'circa',
  'nearly',
  'roughly',
]);
/** Behind these, which all can be more than words, an amount may stand again. */
const JOINTS: ReadonlySet<string> = new Set(['and', 'or', 'plus', 'to', 'from', 'about', 'no', 'between']);

/** What follows the preposition `in`, and not the unit. */
export const NOT_AN_INCH: ReadonlySet<string | undefined> = new Set([
  'the',
  'a',
  'an',
  'all',
  'each',
  'one',
  'two',
  'it',
  'its',
  'this',
  'cold',
  'hot',
  'water',
]);
/** What `stone` is a word of, and not the weight. */
const NOT_A_WEIGHT: ReadonlySet<string | undefined> = new Set(['fruit', 'fruits', 'crab', 'crabs', 'bass']);

/** The labels of one list slot; asked token by token, from left to right. */
export class ListLabels {
  private readonly line: string;
  private readonly tokens: Token[];
  private readonly start: number;
  private readonly around: Around;
  /** An amount may still stand here: no word of a name came yet. */
  private open = true;
  private outside = true;

  constructor(line: string, tokens: Token[], start: number) {
    this.line = line;
    this.tokens = tokens;
    this.start = start;
    this.around = new Around(line, tokens);
  }

  label(i: number, token: Token): void {
    const { written } = token;
    if (written === undefined) this.mark(i, token);
    // What can be nothing but a word is part of a name.
    else if (!written.special) this.open = false;
    else this.word(i, written);
  }

  private word(i: number, written: Written): void {
    if (written.joint !== undefined && this.open) {
      if (written.joint === 'number') this.parted(i);
      else this.joined(i);
    }
    const words = OPENS_FREE.has(written.word) ? freeWords(this.tokens, i) : 0;
    if (words > 0) this.free(i, words);
    this.mark(i, this.tokens[i] as Token);
  }

  private mark(i: number, token: Token): void {
    switch (token.kind) {
      case Kind.Word:
        if (token.written?.special !== true) this.open = false;
        else {
          token.kind = this.kindOf(i, token.written);
          const { word } = token.written;
          // `leaves of 1 bunch`
          if (token.kind === Kind.Word) this.open = JOINTS.has(word) || (word === 'of' && this.around.isNumeric(i + 1));
          else if (word === 'from') this.open = true;
        }
        break;
      case Kind.Numeral:
      case Kind.Fraction:
      case Kind.Vulgar:
        if (!this.open && this.around.opensColumn(i)) this.open = true;
        break;
      case Kind.Dash:
        if (i === this.start && isNumber(this.around.kindAt(i + 1)) && this.tokens[i + 1]?.start === token.end)
          token.kind = Kind.Minus;
        // `salt - a pinch`
        else if (this.around.isApart(i)) this.open = true;
        break;
      case Kind.FluidOunce:
      case Kind.Percent:
        token.kind = Kind.UnitWord;
        break;
      case Kind.LeftParen:
        this.outside = this.open;
        this.open = true;
        break;
      case Kind.RightParen:
        this.open = this.outside;
        break;
      case Kind.Comma:
      case Kind.Equals:
      case Kind.Colon:
        this.open = true;
        break;
      case Kind.Other: {
        const mark = this.line[token.start];
        if (mark === '×') token.kind = Kind.Times;
        else if (mark === '#' && this.around.isBehindNumber(i))
          this.tokens[i] = new Token(Kind.UnitWord, token.start, token.end, wordOf('lb'));
        else if (mark === '~' && this.around.isNumeric(i + 1)) token.kind = Kind.About;
        else if (mark === '/' || mark === '+' || mark === '&') this.open = true;
      }
    }
  }

  /** `two-inch`: a number, a hyphen and a unit. */
  private parted(i: number): void {
    const { start, end } = this.tokens[i] as Token;
    const hyphen = this.line.lastIndexOf('-', end - 1);
    this.tokens.splice(
      i,
      1,
      this.wordBetween(start, hyphen),
      new Token(Kind.Dash, hyphen, hyphen + 1, undefined),
      this.wordBetween(hyphen + 1, end),
    );
  }

  /** `tea spoons`, `coffee cupful`: one word of a measure, the blank for a hyphen. */
  private joined(i: number): void {
    const { start, end, written } = this.tokens[i] as Token;
    const next = this.tokens[i + 1];
    if (next?.kind !== Kind.Word || next.start !== end + 1) return;
    const name = `${written?.word}-${next.written?.word}`;
    if (unitPrinted(name) !== undefined) this.tokens.splice(i, 2, new Token(Kind.Word, start, next.end, wordOf(name)));
  }

  private free(i: number, words: number): void {
    const { start } = this.tokens[i] as Token;
    const { end } = this.tokens[i + words - 1] as Token;
    this.tokens.splice(i, words, new Token(Kind.Free, start, end, undefined));
  }

  private wordBetween(start: number, end: number): Token {
    return new Token(Kind.Word, start, end, wordOf(this.line.slice(start, end)));
  }

  private kindOf(i: number, written: Written): Kind {
    const { word, number, size, bias } = written;
    const { open, tokens } = this;
    const before = this.around.kindAt(i - 1);
    const counted = isNumber(before);
    if (ABOUT.has(word) && this.around.isNumeric(this.around.isPoint(i + 1) ? i + 2 : i + 1)) return Kind.About;
    switch (word) {
      case 'x':
        return this.around.isNumeric(i + 1) ||
          this.around.wordAt(i + 1)?.word === 'no' ||
          this.around.isMark(i + 1, '#')
          ? Kind.Times
          : Kind.Word;
      case 'to':
      case 'or':
        if ((counted || before === Kind.Dash) && this.around.isNumeric(i + 1)) return Kind.To;
        break;
      case 'from':
        return this.around.isNumeric(i + 1) || this.around.wordAt(i + 1)?.word === 'about' ? Kind.From : Kind.Word;
      case 'of':
        return open && this.around.endsMeasure(i - 1) ? Kind.Of : Kind.Word;
      case 'each':
      case 'ea':
        return Kind.Word;
    }
    if (number !== undefined && this.isNumberHere(i, word)) return Kind.NumberWord;
    const first = i === this.start;
    // `scant 1/2 cup`
    if (first && bias && isNumber(this.around.kindAt(i + 1))) return Kind.Bias;
    if (
      open &&
      bias &&
      (counted || first || before === Kind.Bias || before === Kind.SizeWord) &&
      this.isFilled(i, word)
    )
      return Kind.Bias;
    // `a small teacupful`: how a measure is filled, and no size of a piece.
    const fills = this.around.wordAt(i + 1);
    if (open && size !== undefined && fills?.printed !== undefined && fills.count === undefined && counted)
      return Kind.Bias;
    if (open && (size !== undefined || (word === 'extra' && this.around.wordAt(i + 1)?.word === 'large'))) {
      if (
        counted ||
        (before === Kind.SizeWord && size !== undefined) ||
        ((first || before === Kind.Bias) && this.around.isOneOf(i + 1))
      )
        return Kind.SizeWord;
    }
    if (open && written.count !== undefined && this.isCounted(i, written.count)) return Kind.CountedWord;
    const { printed } = written;
    if (printed === undefined) return Kind.Word;
    const measures = counted || before === Kind.Bias || (before === Kind.Degree && isNumber(this.around.kindAt(i - 2)));
    const hyphened =
      before === Kind.Dash && isNumber(this.around.kindAt(i - 2)) && tokens[i - 1]?.end === tokens[i]?.start;
    if (printed.symbol === 'stone' && NOT_A_WEIGHT.has(this.around.wordAt(i + 1)?.word)) return Kind.Word;
    if (word === 'in' && !hyphened && NOT_AN_INCH.has(this.around.wordAt(i + 1)?.word)) return Kind.Word;
    return measures || hyphened || (first && this.around.isOneOf(i)) ? Kind.UnitWord : Kind.Word;
  }

  private isNumberHere(i: number, word: string): boolean {
    const before = this.around.kindAt(i - 1);
    const last = this.around.wordAt(i - 1)?.word;
    if (word === 'half' && (this.around.wordAt(i + 1)?.word === 'and' || this.around.isHalfAnd(i - 2))) return false;
    const article = word === 'a' || word === 'an';
    if (i === this.start) return this.tokens.length > i + 1;
    // `½ an onion`
    if (article && (before === Kind.Fraction || before === Kind.Vulgar)) return true;
    if (isNumber(before))
      return !article || this.around.wordAt(i - 1)?.number?.part === true || before !== Kind.NumberWord;
    if (before === Kind.About || before === Kind.From || before === Kind.LeftParen) return true;
    if (before === Kind.Of || (before === Kind.Word && (last === 'of' || last === 'from'))) return true;
    if (before === Kind.To || before === Kind.Times) return true;
    const joined =
      last !== undefined ? JOINTS.has(last) : before === Kind.Other || before === Kind.Comma || before === Kind.Dash;
    // `plus one yolk`, `plus a little more`
    if (joined && this.open)
      return !article || this.around.isMeasureWord(i + 1) || this.around.wordAt(i + 1)?.number?.part === true;
    return this.open && this.around.isMeasureWord(i + 1);
  }

  /** Whether a bias fills something: a measure, with other such words between. */
  private isFilled(i: number, word: string): boolean {
    let at = i + 1;
    while (this.around.wordAt(at)?.bias) at++;
    const likened = /.-sized?$/.test(word);
    if (biasOf(word) === undefined && !likened && this.around.wordAt(i + 1)?.word !== 'packed') return false;
    const next = this.around.wordAt(at);
    if (next?.size !== undefined || next?.number?.part === true) at++;
    return this.around.isMeasureWord(at);
  }

  private isCounted(i: number, count: CountWord): boolean {
    const before = this.around.kindAt(i - 1);
    if (i === this.start || (i === this.start + 1 && (before === Kind.SizeWord || before === Kind.Bias)))
      return this.around.isOneOf(i);
    if (isNumber(before) || before === Kind.SizeWord || before === Kind.Bias) return true;
    const behindUnit = before === Kind.UnitWord || this.around.isPoint(i - 1) || before === Kind.RightParen;
    const several = before === Kind.RightParen && count !== this.around.wordAt(i)?.word;
    if (behindUnit)
      return (
        several ||
        isPackage(count) ||
        count === 'piece' ||
        count === 'knob' ||
        count === 'thumb' ||
        this.around.wordAt(i + 1)?.word === 'of'
      );
    return before === Kind.Dash && isNumber(this.around.kindAt(i - 2));
  }
}
