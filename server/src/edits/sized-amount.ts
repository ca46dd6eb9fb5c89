/**
 * Knows how one written amount is written at another size: rounded to what a kitchen can measure, in the writer's manner,
 * in another unit where a cook would take that, and how far off that is.
 * Refuses to know which amounts follow.
 */

import { type CountWord, countWord } from '../measure/count-words.ts';
import {
  comesTo,
  figureIn,
  type KitchenFigure,
  kitchenCount,
  kitchenFigure,
  kitchenFigures,
  type NumberStyle,
  numberText,
  worst,
} from '../measure/kitchen.ts';
import { isEitherFraction } from '../measure/kitchen-fraction.ts';
import { trimmed } from '../measure/number-text.ts';
import { wordOfNumber } from '../measure/number-words.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, unitOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { termsOf } from '../notation/item-amounts.ts';
import type { MeasuredNode, NumeralNode, Span } from '../notation/tree.ts';
import { singular } from '../recipe/words.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';
import { amountText, writeFigures } from './written-sum.ts';

export interface Manner {
  readonly measures: Measures;
  /** No rounding, and no other unit. */
  readonly exact: boolean;
  /** Two measures may be written where one will not do: on a line of the list, where they are read. */
  readonly sums?: true;
}

export interface SizedAmount {
  readonly edits: readonly TextEdit[];
  /** As written before and after: `1/4 cup`, `2 tbsp`. */
  readonly before: string;
  readonly after: string;
  /** What is written over what it should be, less one: the worst of a range. */
  readonly error: number;
  /** The first number as written after, and its unit. */
  readonly value: number;
  readonly unit: UnitSymbol | undefined;
}

/** An amount of mass or volume, or a number of pieces, so many times as large. `near` is how far off a whole number of pieces may be. */
export function sizeAmount(
  line: number,
  text: string,
  amount: MeasuredNode,
  by: number,
  manner: Manner,
  near = 0.05,
): SizedAmount {
  const before = amountText(text, amount);
  const unit = amount.unit?.symbol;
  if (unit === '%' || by === 1) return { edits: [], before, after: before, error: 0, value: amount.low.value, unit };
  const { edits, error, ...first } =
    unit === undefined
      ? countEdits(line, text, amount, by, manner, near)
      : amount.plus === undefined
        ? unitEdits(line, text, amount, unit, by, manner)
        : sumEdits(line, text, amount, unit, by, manner);
  const { upTo, plus = [] } = amount;
  // `1 stick plus 2 tbsp`: terms of two kinds are sized each by itself.
  const others = [...(upTo === undefined ? [] : [upTo]), ...(unit === undefined ? plus : [])].map((term) =>
    sizeAmount(line, text, term, by, manner, near),
  );
  const all = others.length === 0 ? edits : [...edits, ...others.flatMap((o) => o.edits)];
  return {
    edits: all,
    error: worst([error, ...others.map((o) => o.error)]),
    ...first,
    before,
    after: amountText(text, amount, all),
  };
}

type Written = Pick<SizedAmount, 'edits' | 'error' | 'value' | 'unit'>;

function unitEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  unit: UnitSymbol,
  by: number,
  { measures, exact, sums }: Manner,
): Written {
  const ends = endsOf(amount);
  const wanted = ends.map((e) => e.value * by);
  if (exact)
    return { ...numberEdits(line, text, amount, ends, wanted.map(exactText)), error: 0, value: wanted[0] ?? 0, unit };
  const [lowest = 0] = wanted;
  const style = styleOf(amount.low);
  if (sums === true && ends.length === 1 && amount.upTo === undefined) {
    const figures = kitchenFigures(lowest, unit, measures, style);
    if (figures.length > 1) return written(line, text, amount, figures, lowest, unit, measures);
  }
  const first = kitchenFigure(lowest, unit, measures, style);
  const factor = (baseOf(unit, measures) ?? 1) / (baseOf(first.unit, measures) ?? 1);
  const figures = wanted.map((w, i) =>
    i === 0 ? first : figureIn(w * factor, first.unit, styleOf(ends[i]?.numeral ?? amount.low)),
  );
  const error = worst(figures.map((f, i) => f.value / ((wanted[i] ?? 0) * factor) - 1));
  const texts = figures.map((f) => f.text);
  const value = first.value;
  if (first.unit === unit || amount.unit === undefined)
    return { ...numberEdits(line, text, amount, ends, texts, figures.at(-1)?.value), error, value, unit };
  const between = amount.high === undefined ? '-' : text.slice(amount.low.end, amount.high.start);
  const end = Math.max(amount.unit.end, amount.high?.end ?? amount.low.end);
  const front = amount.bias !== undefined && amount.bias.start < end ? amount.bias : undefined;
  const anew = `${texts.join(between)} ${front === undefined ? '' : `${front.text} `}${first.unit}`;
  const span = { start: Math.min(amount.low.start, front?.start ?? amount.low.start), end };
  return { edits: [replaceSpan(line, span, anew)], error, value, unit: first.unit };
}

/** All terms together, as one or two figures; in the writer's own units where those are the same. */
function sumEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  unit: UnitSymbol,
  by: number,
  { measures, exact }: Manner,
): Written {
  const terms = termsOf(amount);
  const wanted = terms.map((t) => t.low.value * by);
  const total = wanted.reduce((sum, w, i) => sum + w * (baseOf(terms[i]?.unit?.symbol ?? unit, measures) ?? 0), 0);
  const value = total / (baseOf(unit, measures) ?? 1);
  if (exact || terms.some((t) => t.high !== undefined)) {
    const edits = terms.flatMap((t) => unitEdits(line, text, t, t.unit?.symbol ?? unit, by, { measures, exact }).edits);
    return { edits, error: 0, value, unit };
  }
  const largest = terms.reduce((a, b) => (sizeOf(b, measures) > sizeOf(a, measures) ? b : a)).unit?.symbol ?? unit;
  const inLargest = total / (baseOf(largest, measures) ?? 1);
  const figures = kitchenFigures(inLargest, largest, measures, styleOf(amount.low));
  const asBefore = figures.length === terms.length && figures.every((f, i) => f.unit === terms[i]?.unit?.symbol);
  if (!asBefore) return written(line, text, amount, figures, value, unit, measures);
  const edits = figures.flatMap((f, i) => {
    const term = terms[i];
    return term === undefined ? [] : numberEdits(line, text, term, endsOf(term), [f.text], f.value).edits;
  });
  return { edits, error: comesTo(figures, unit, measures) / value - 1, value: comesTo(figures, unit, measures), unit };
}

const sizeOf = ({ unit }: MeasuredNode, measures: Measures): number =>
  unit === undefined ? 0 : (baseOf(unit.symbol, measures) ?? 0);

function written(
  line: number,
  text: string,
  amount: MeasuredNode,
  figures: readonly KitchenFigure[],
  wanted: number,
  unit: UnitSymbol,
  measures: Measures,
): Written {
  const value = comesTo(figures, unit, measures);
  return { edits: writeFigures(line, text, amount, figures), error: value / wanted - 1, value, unit };
}

function countEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  by: number,
  { exact }: Manner,
  near: number,
): Written {
  const ends = endsOf(amount);
  const wanted = ends.map((e) => e.value * by);
  const cutting = SMALL.has(amount.quantity.count ?? 'piece') ? 'halves' : 'quarters';
  const counts = exact ? wanted : wanted.map((w) => kitchenCount(w, near, cutting));
  const texts = counts.map((c, i) => {
    const numeral = ends[i]?.numeral ?? amount.low;
    const word = isWord(text, numeral) ? wordOfNumber(c) : undefined;
    return word ?? (exact ? exactText(c) : numberText(c, styleOf(numeral)));
  });
  const error = exact ? 0 : worst(counts.map((c, i) => c / (wanted[i] ?? 1) - 1));
  return {
    ...numberEdits(line, text, amount, ends, texts, counts.at(-1)),
    error,
    value: counts[0] ?? 0,
    unit: undefined,
  };
}

/** What nobody cuts smaller than in half. */
const SMALL: ReadonlySet<CountWord> = new Set([
  'clove',
  'sprig',
  'leaf',
  'stalk',
  'stem',
  'rasher',
  'slice',
  'strip',
  'pod',
  'rib',
  'handful',
  'knob',
  'cube',
]);

/** One number that an amount gives, and where it stands; both of `a few` stand in one place. */
interface End {
  readonly numeral: NumeralNode;
  readonly value: number;
}

function endsOf({ low, high }: MeasuredNode): End[] {
  const last = high ?? low;
  const ends = [{ numeral: low, value: low.value }];
  if (high !== undefined) ends.push({ numeral: high, value: high.value });
  if (last.upTo !== undefined) ends.push({ numeral: last, value: last.upTo });
  return ends;
}

/** New numbers in the places of the old, with the unit or count word in the number that fits. */
function numberEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  ends: readonly End[],
  texts: readonly string[],
  last?: number,
): { readonly edits: TextEdit[] } {
  const places = [...new Set(ends.map((e) => e.numeral))];
  const edits = places.flatMap((numeral) => {
    const said = new Set(ends.flatMap((e, i) => (e.numeral === numeral ? [texts[i] ?? ''] : [])));
    return numberEdit(line, text, amount, numeral, [...said].join('-')) ?? [];
  });
  const word = last === undefined ? undefined : inNumber(text, amount, last);
  const joint = jointEdit(line, text, amount, texts);
  return { edits: [...edits, ...(joint === undefined ? [] : [joint]), ...(word === undefined ? [] : [word(line)])] };
}

/** `2-4 cup` by half is `1 to 2 cup`: with a hyphen it may be half a cup. */
function jointEdit(
  line: number,
  text: string,
  { low, high, unit }: MeasuredNode,
  [first = '', second = '']: readonly string[],
): TextEdit | undefined {
  if (high === undefined || unit === undefined) return undefined;
  const joint = { start: low.end, end: high.start };
  const isHyphen = /^[-–]$/.test(text.slice(joint.start, joint.end));
  if (!isHyphen || !isEitherFraction(first, second, text.slice(unit.start, unit.end))) return undefined;
  return replaceSpan(line, joint, ' to ');
}

/** One number in its place; where none stood it is put before what it counts, and one before a size that begins with a number is told apart by `x`. */
function numberEdit(
  line: number,
  text: string,
  { each, counted, bias }: MeasuredNode,
  numeral: NumeralNode,
  figure: string,
): TextEdit | undefined {
  const { start, end } = numeral;
  // `1 scant half cup`
  const number = bias !== undefined && bias.start > start && bias.end < end ? `${figure} ${bias.text}` : figure;
  const sizeFirst = each !== undefined && (counted === undefined || each.start < counted.start) && each.start >= end;
  const glued = sizeFirst && text.slice(end, each.start).trim() === '';
  if (numeral.style !== 'implied')
    // `1 doz. eggs`: the point is the word's.
    return replaceSpan(
      line,
      numeral.style === 'word' && text[end] === '.' ? { start, end: end + 1 } : numeral,
      glued && !/^\d+$/.test(number) ? `${number} x` : number,
    );
  if (number === '1') return undefined;
  const before = /[^\s(]/.test(text[start - 1] ?? ' ') ? ' ' : '';
  const behind = /\s/.test(text[start] ?? ' ') ? '' : ' ';
  return replaceSpan(line, numeral, `${before}${glued ? `${number} x` : number}${behind}`);
}

/** `1 clove` but `2 cloves`, `1 teaspoon` but `2 teaspoons`; the short names have one form. */
function inNumber(text: string, amount: MeasuredNode, count: number): ((line: number) => TextEdit) | undefined {
  const many = count > 1 + 1e-9;
  const last = amount.high ?? amount.low;
  if (many === (last.upTo ?? last.value) > 1 + 1e-9) return undefined;
  const span = amount.counted ?? amount.unit;
  if (span === undefined) return undefined;
  const word = text.slice(span.start, span.end);
  const symbol = amount.counted === undefined ? amount.unit?.symbol : undefined;
  const other = many ? pluralOf(word) : singularOf(word, symbol);
  if (other === undefined || other === word) return undefined;
  if (symbol === undefined) {
    if (countWord(other) === undefined) return undefined;
    return (line) => replaceSpan(line, span, word === word.toUpperCase() ? other.toUpperCase() : other);
  }
  const { spellings } = unitOf(symbol);
  if (word === symbol || !spellings.includes(word.toLowerCase())) return undefined;
  const known = other === symbol || spellings.includes(other.toLowerCase());
  return known ? (line) => replaceSpan(line, span, other) : undefined;
}

const UNLIKE: Readonly<Record<string, string>> = { leaf: 'leaves', loaf: 'loaves' };

/** A noun in the number that fits a count. */
export function nounFor(count: number, noun: string): string {
  const one = singular(noun.toLowerCase());
  const now = count > 1 ? pluralOf(one) : one;
  return singular(now) === one ? now : noun;
}

export interface WordInNumber extends Span {
  readonly text: string;
}

/** `tart` becomes `tarts` in `1 lemon tart of 20 cm` made four times: the last word before what is said of one. */
export function madeInNumber(of: string, was: number, count: number): WordInNumber | undefined {
  // `1 (9-inch) pie`
  const from = /^\s*\([^()]*\)\s*/.exec(of)?.[0].length ?? 0;
  const words = MADE.exec(of.slice(from))?.[0] ?? '';
  const last = /(?<!\p{L})\p{Ll}+$/u.exec(words)?.[0];
  if (last === undefined || was > 1 === count > 1 || last === 'dozen') return undefined;
  const text = count > 1 && singular(last) !== last ? last : nounFor(count, last);
  const end = from + words.length;
  return text === last ? undefined : { start: end - last.length, end, text };
}

const MADE = /^[\p{L}' -]*?\p{L}(?=\s+(?:of|at|for|in|from|with)\s|\s*[^\p{L}\s'-]|\s*$)/u;

/** A text with a word of it in another number. */
export const withWord = (text: string, word: WordInNumber | undefined): string =>
  word === undefined ? text : text.slice(0, word.start) + word.text + text.slice(word.end);

/** The plural of an English noun of the kitchen. */
export function pluralOf(word: string): string {
  const known = UNLIKE[word];
  if (known !== undefined) return known;
  if (/(?:s|x|z|ch|sh)$/.test(word)) return word.endsWith('s') && !word.endsWith('ss') ? word : `${word}es`;
  if (/(?:tomat|potat|mang)o$/.test(word)) return `${word}es`;
  return /[^aeiou]y$/.test(word) ? `${word.slice(0, -1)}ies` : `${word}s`;
}

function singularOf(word: string, unit: UnitSymbol | undefined): string | undefined {
  if (unit === undefined) return countWord(word);
  const bare = word.replace(/s$/, '');
  return unitOf(unit).spellings.includes(bare.toLowerCase()) || bare === unit ? bare : undefined;
}

/** A number of pieces in words where it can be. */
export const countInWords = (count: number): string => wordOfNumber(count) ?? String(count);

const isWord = (text: string, { start, end }: Span): boolean => /^\p{L}+$/u.test(text.slice(start, end));

/** A writer who wrote `1.5` gets a decimal point again, and one who wrote `1½` gets that. */
function styleOf(numeral: NumeralNode): NumberStyle {
  if (numeral.style === 'glyph') return 'glyph';
  return numeral.style === 'decimal' && !Number.isInteger(numeral.value) ? 'decimal' : 'plain';
}

/** Three digits behind a point could be thousands, and are asked about. */
const exactText = (value: number): string => trimmed(value, value < 1 ? 5 : 4).replace(/(?<=[1-9]\d*\.\d{3})$/, '0');
