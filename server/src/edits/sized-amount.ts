/**
 * Knows how one written amount is written at another size: rounded to what a kitchen can measure, in the writer's manner,
 * in another unit where a cook would take that, and how far off that is.
 * Refuses to know which amounts follow.
 */

import { type CountWord, countWord } from '../measure/count-words.ts';
import { figureIn, kitchenCount, kitchenFigure, type NumberStyle, numberText, worst } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { wordOfNumber } from '../measure/number-words.ts';
import { baseOf, type Measures, type UnitSymbol, unitOf } from '../measure/unit.ts';
import type { MeasuredNode, NumeralNode, Span } from '../notation/tree.ts';
import { singular } from '../recipe/words.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface Manner {
  readonly measures: Measures;
  /** No rounding, and no other unit. */
  readonly exact: boolean;
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
  const before = text.slice(amount.start, amount.end);
  const unit = amount.unit?.symbol;
  if (unit === '%' || by === 1) return { edits: [], before, after: before, error: 0, value: amount.low.value, unit };
  const edits =
    unit === undefined
      ? countEdits(line, text, amount, by, manner, near)
      : unitEdits(line, text, amount, unit, by, manner);
  return { ...edits, before, after: patched(text, amount, edits.edits) };
}

type Written = Pick<SizedAmount, 'edits' | 'error' | 'value' | 'unit'>;

function unitEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  unit: UnitSymbol,
  by: number,
  { measures, exact }: Manner,
): Written {
  const numerals = numeralsOf(amount);
  const wanted = numerals.map((n) => n.value * by);
  if (exact)
    return {
      ...numberEdits(line, text, amount, numerals, wanted.map(exactText)),
      error: 0,
      value: wanted[0] ?? 0,
      unit,
    };
  const [lowest = 0] = wanted;
  const first = kitchenFigure(lowest, unit, measures, styleOf(amount.low));
  const factor = (baseOf(unit, measures) ?? 1) / (baseOf(first.unit, measures) ?? 1);
  const figures = wanted.map((w, i) =>
    i === 0 ? first : figureIn(w * factor, first.unit, styleOf(numerals[i] ?? amount.low)),
  );
  const error = worst(figures.map((f, i) => f.value / ((wanted[i] ?? 0) * factor) - 1));
  const texts = figures.map((f) => f.text);
  const value = first.value;
  if (first.unit === unit || amount.unit === undefined)
    return { ...numberEdits(line, text, amount, numerals, texts, figures.at(-1)?.value), error, value, unit };
  const between = amount.high === undefined ? '' : text.slice(amount.low.end, amount.high.start);
  const end = Math.max(amount.unit.end, amount.high?.end ?? amount.low.end);
  const written = `${texts.join(between)} ${first.unit}`;
  return { edits: [replaceSpan(line, { start: amount.low.start, end }, written)], error, value, unit: first.unit };
}

function countEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  by: number,
  { exact }: Manner,
  near: number,
): Written {
  const numerals = numeralsOf(amount);
  const wanted = numerals.map((n) => n.value * by);
  const cutting = SMALL.has(amount.quantity.count ?? 'piece') ? 'halves' : 'quarters';
  const counts = exact ? wanted : wanted.map((w) => kitchenCount(w, near, cutting));
  const texts = counts.map((c, i) => {
    const numeral = numerals[i] ?? amount.low;
    const word = isWord(text, numeral) ? wordOfNumber(c) : undefined;
    return word ?? (exact ? exactText(c) : numberText(c, styleOf(numeral)));
  });
  const error = exact ? 0 : worst(counts.map((c, i) => c / (wanted[i] ?? 1) - 1));
  return {
    ...numberEdits(line, text, amount, numerals, texts, counts.at(-1)),
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

/** New numbers in the places of the old, with the unit or count word in the number that fits. */
function numberEdits(
  line: number,
  text: string,
  amount: MeasuredNode,
  numerals: readonly NumeralNode[],
  texts: readonly string[],
  last?: number,
): { readonly edits: TextEdit[] } {
  const edits = numerals.map((n, i) => replaceSpan(line, n, texts[i] ?? ''));
  const word = last === undefined ? undefined : inNumber(text, amount, last);
  return { edits: word === undefined ? edits : [...edits, word(line)] };
}

/** `1 clove` but `2 cloves`, `1 teaspoon` but `2 teaspoons`; the short names have one form. */
function inNumber(text: string, amount: MeasuredNode, count: number): ((line: number) => TextEdit) | undefined {
  const many = count > 1 + 1e-9;
  const was = (amount.high ?? amount.low).value > 1 + 1e-9;
  if (many === was) return undefined;
  const span = amount.counted ?? amount.unit;
  if (span === undefined) return undefined;
  const word = text.slice(span.start, span.end);
  const symbol = amount.counted === undefined ? amount.unit?.symbol : undefined;
  if (symbol !== undefined && (word === symbol || !unitOf(symbol).spellings.includes(word.toLowerCase())))
    return undefined;
  const other = many ? pluralOf(word) : singularOf(word, symbol);
  return other === undefined || other === word ? undefined : (line) => replaceSpan(line, span, other);
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
  const words = MADE.exec(of)?.[0] ?? '';
  const last = /(?<!\p{L})\p{Ll}+$/u.exec(words)?.[0];
  if (last === undefined || was > 1 === count > 1 || last === 'dozen') return undefined;
  const text = count > 1 && singular(last) !== last ? last : nounFor(count, last);
  return text === last ? undefined : { start: words.length - last.length, end: words.length, text };
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

const numeralsOf = (amount: MeasuredNode): NumeralNode[] =>
  amount.high === undefined ? [amount.low] : [amount.low, amount.high];

/** A writer who wrote `1.5` gets a decimal point again, and one who wrote `1½` gets that. */
function styleOf(numeral: NumeralNode): NumberStyle {
  if (numeral.style === 'glyph') return 'glyph';
  return numeral.style === 'decimal' && !Number.isInteger(numeral.value) ? 'decimal' : 'plain';
}

const exactText = (value: number): string => trimmed(value, value < 1 ? 5 : 3);

/** The text of a span after edits within it. */
function patched(text: string, span: Span, edits: readonly TextEdit[]): string {
  let out = text.slice(span.start, span.end);
  for (const edit of [...edits].sort((a, b) => b.start.character - a.start.character)) {
    const [from, to] = [edit.start.character - span.start, edit.end.character - span.start];
    out = out.slice(0, from) + edit.text + out.slice(to);
  }
  return out;
}
