/**
 * Knows a sentence of the method as a reader sees it: temperatures in both scales, lengths in both, marks of the notation taken out.
 * Refuses to change what it says.
 */
import { trimmed } from '../measure/number-text.ts';
import { celsiusOf } from '../notation/celsius.ts';
import { readLine } from '../notation/statements.ts';
import type { PanNode, Sentence, SentenceItem, Span, TemperatureNode } from '../notation/tree.ts';
import { degreesIn } from '../recipe/journey/degrees.ts';
import { type HeatFigure, heatsOf } from '../recipe/journey/figures.ts';
import type { Step } from '../recipe/model.ts';
import { prettyFigures } from './two-measures.ts';

/** A run of a sentence as it is shown, and where it stands in its line. */
export interface Piece extends Span {
  readonly text: string;
  /** A figure that a cook looks for; `aside` says it again on other scales, in brackets. */
  readonly kind?: 'heat' | 'time' | 'amount' | 'aside';
}

/** `both`: Celsius and Fahrenheit, centimetres and inches. `written`: those that the line has. */
export type Scales = 'both' | 'written';

/** The step's sentence, from its line as written. */
export const stepText = (step: Step, line: string): string => textOf(stepPieces(step, line, 'both'));

/** The same in runs, of which one begins at each of `cuts` between figures; together they are one line that ends with a point. */
export const stepPieces = (step: Step, line: string, scales: Scales, cuts: readonly number[] = []): readonly Piece[] =>
  readerPieces(step.sentence, heatsOf(step), line, scales, cuts);

/** A piece of it, without the point at its end. */
export const clauseText = (step: Step, line: string, span: Span, scales: Scales): string =>
  textOf(readerPieces({ ...step.sentence, ...span }, heatsOf(step), line, scales)).replace(/[\s,;:.]+$/, '');

/** The same for the prose of a note, which has no kitchen of its own around its figures. */
export function proseText(text: string): string {
  const line = `do ${text}`;
  const { statement } = readLine(line);
  return statement.kind === 'step' ? textOf(readerPieces(statement.sentence, [], line, 'both')) : plain(text);
}

const textOf = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('');

function readerPieces(
  sentence: Sentence,
  heats: readonly HeatFigure[],
  line: string,
  scales: Scales,
  cuts: readonly number[] = [],
): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = sentence.start;
  const words = (end: number): void => {
    for (const cut of [...cuts.filter((c) => c > at && c < end).sort((a, b) => a - b), end]) {
      if (cut > at) pieces.push({ text: plain(line.slice(at, cut)), start: at, end: cut });
      at = cut;
    }
  };
  for (const item of sentence.items) {
    if (item.start < at) continue;
    if (item.end > sentence.end) break;
    const heat = heats.find(({ start, end }) => start <= item.start && item.end <= end);
    const shown = heat === undefined ? shownAs(item, line, scales) : heatShown(heat, scales);
    if (shown === undefined) continue;
    const { start, end } = heat ?? item;
    words(start);
    pieces.push({ text: shown.text, ...(shown.kind && { kind: shown.kind }), start, end });
    if (shown.aside) pieces.push({ text: ` (${shown.aside})`, kind: 'aside', start, end });
    at = end;
  }
  words(sentence.end);
  return asOneLine(pieces, sentence.end);
}

/** Blanks once, none at either end, and a point behind. */
function asOneLine(pieces: readonly Piece[], at: number): readonly Piece[] {
  const shown: Piece[] = [];
  for (const piece of pieces) {
    const blank = shown.length === 0 || shown.at(-1)?.text.endsWith(' ');
    const text = piece.text.replace(/\s+/g, ' ').replace(blank ? /^ / : /^$/, '');
    if (text !== '') shown.push({ ...piece, text });
  }
  const last = shown.pop();
  if (last === undefined) return [];
  const text = last.text.trimEnd();
  const isClosed = /[.!?…)]$/.test(text);
  if (isClosed || last.kind === undefined) return [...shown, { ...last, text: isClosed ? text : `${text}.` }];
  return [...shown, { ...last, text }, { text: '.', start: at, end: at }];
}

interface Shown {
  readonly text: string;
  readonly kind?: Piece['kind'];
  /** The same on other scales. */
  readonly aside?: string;
}

/** What stands for an item of the sentence; undefined where it stays as written. */
function shownAs(item: SentenceItem, line: string, scales: Scales): Shown | undefined {
  switch (item.kind) {
    case 'temperature':
      return { ...scalesShown([item], 'nothing', scales), kind: 'heat' };
    case 'forced':
      return { text: item.name.text };
    case 'duration':
      return { text: prettyFigures(line.slice(item.start, item.end)), kind: 'time' };
    case 'measured':
      return { text: prettyFigures(line.slice(item.start, item.end)), kind: 'amount' };
    case 'length': {
      const { quantity, unit } = item.measured;
      const text = prettyFigures(line.slice(item.start, item.end));
      const aside = scales === 'both' ? otherLength(quantity.low, quantity.high, unit?.symbol) : undefined;
      return { text, ...(aside && { aside }) };
    }
    default:
      return undefined;
  }
}

const plain = (text: string): string => text.replace(/\\(.)/g, '$1');

type HeatOf = HeatFigure['of'];

/**
 * One heat, on the scales that it is written in and on Celsius and Fahrenheit: `180 °C (160 °C fan, gas 4, 350 °F)`. What is only half on
 * the line, or a change by so much, is shown without another.
 */
function heatShown({ written, of, bound, isHalf, celsius }: HeatFigure, scales: Scales): Shown | undefined {
  if (isHalf) return undefined;
  const [first] = written;
  if (first === undefined) return undefined;
  if (bound === 'change')
    return { text: ownText(first), kind: 'heat', ...(scales === 'both' && { aside: changeText(first, celsius) }) };
  return { ...scalesShown(written, of, scales), kind: 'heat' };
}

/** The same of a figure that stands by itself. */
export function temperatureText(node: TemperatureNode, of: HeatOf): string {
  const { text, aside } = scalesShown([node], of, 'both');
  return aside === undefined ? text : `${text} (${aside})`;
}

function scalesShown(written: readonly TemperatureNode[], of: HeatOf, scales: Scales): Shown {
  const [first, ...more] = written as readonly [TemperatureNode, ...TemperatureNode[]];
  if (first.unit === 'unsaid') return { text: ownText(first) };
  const others = more.map(ownText);
  if (scales === 'both')
    for (const scale of ['C', 'F'] as const)
      if (!written.some(({ unit }) => unit === scale)) others.push(otherText(first, scale, of));
  return { text: ownText(first), ...(others.length > 0 && { aside: others.join(', ') }) };
}

function ownText(node: TemperatureNode): string {
  const { about, fan, unit, lowDegrees, highDegrees } = node;
  const degrees = span([lowDegrees, highDegrees]);
  const said = unit === 'gas' ? `gas ${degrees}` : unit === 'unsaid' ? `${degrees}°` : `${degrees} °${unit}`;
  return `${about ? 'about ' : ''}${said}${fan ? ' fan' : ''}`;
}

/** Of what lies in fat or on a griddle to the nearest 5 degrees. */
const MEDIUM_STEP = 5;

function otherText(node: TemperatureNode, scale: 'C' | 'F', of: HeatOf): string {
  const { low, high } = celsiusOf(node);
  const degrees = [low, high].map((celsius) => {
    const shown = Number(degreesIn(celsius, scale, of));
    return of === 'medium' ? Math.round(shown / MEDIUM_STEP) * MEDIUM_STEP : shown;
  });
  return `${span(degrees)} °${scale}`;
}

/** By so many degrees of the other scale. */
function changeText({ unit }: TemperatureNode, { low, high }: { readonly low: number; readonly high: number }): string {
  const other = unit === 'C' ? 'F' : 'C';
  const each = other === 'F' ? 1.8 : 1;
  return `${span([Math.round(low * each), Math.round(high * each)])} °${other}`;
}

function span([low = 0, high = low]: readonly number[]): string {
  const text = (n: number) => trimmed(n, 1).replace('-', '−');
  return low === high ? text(low) : `${text(low)}–${text(high)}`;
}

/** Of `3 mm` it is `⅛ in`. */
function otherLength(low: number, high: number, unit: string | undefined): string | undefined {
  if (unit === undefined || low !== high) return undefined;
  return unit === 'in' ? centimetres(low * 25.4) : inches(unit === 'cm' ? low * 10 : low);
}

const centimetres = (mm: number): string =>
  mm < 10 ? `${Math.round(mm)} mm` : `${trimmed(Math.round(mm / 5) / 2, 1)} cm`;

function inches(mm: number): string {
  return `${inchFigure(mm)} in`;
}

/** The nearest quarter of an inch; eighths below one. */
function inchFigure(mm: number): string {
  const inch = mm / 25.4;
  const parts = inch < 1 ? 8 : 4;
  const units = Math.max(1, Math.round(inch * parts));
  const whole = Math.floor(units / parts);
  const rest = units - whole * parts;
  const fraction = rest === 0 ? '' : prettyFigures(lowest(rest, parts));
  return whole === 0 ? fraction : `${whole}${fraction}`;
}

function lowest(a: number, b: number): string {
  return a % 2 === 0 ? lowest(a / 2, b / 2) : `${a}/${b}`;
}

/** The sizes in the other lengths, where the line does not say them itself. */
function otherSizes({ sizes, unit, unitMeant }: PanNode, said: string): string {
  const symbol = unit?.symbol ?? unitMeant;
  if (symbol === undefined || sizes.length === 0 || /[(/]/.test(said)) return '';
  const mm = sizes.map((s) => s.value * (symbol === 'in' ? 25.4 : symbol === 'mm' ? 1 : 10));
  return symbol === 'in'
    ? ` (${mm.map((m) => trimmed(Math.round(m / 5) / 2, 1)).join(' × ')} cm)`
    : ` (${mm.map(inchFigure).join(' × ')} in)`;
}

const PAN_WORDS = {
  round: 'round',
  square: 'square',
  rectangle: 'rectangular',
  loaf: 'loaf',
  ring: 'ring',
} as const;

/** The notation's own form: a shape, its sizes and their unit. */
const OWN_FORM = /^(?:\d+ *[x×] *)?(?:round|square|rectangle|loaf|ring)[\d\s./x×½⅓⅔¼¾⅛⅜⅝⅞⁄]+(?:cm|mm|in)\.?$/;

/** The pan in both lengths: `round, 24 × 3 cm (9½ × 1¼ in)`; as it is written where a cook said it: `23 cm springform (9 in)`. */
export function panText(pan: PanNode, line: string, scales: Scales = 'both'): string {
  const said = line.slice(pan.start, pan.end).trim();
  const other = (of: string): string => (scales === 'both' ? otherSizes(pan, of) : '');
  if (pan.shape === undefined || !OWN_FORM.test(said))
    return `${prettyFigures(said).replace(/(?<=[\d½⅓⅔¼¾]) ?x ?(?=\d)/g, ' × ')}${other(said)}`;
  const count = pan.count > 1 ? `${pan.count} of ` : '';
  const written = `${pan.sizes.map((size) => trimmed(size.value, 2)).join(' × ')} ${pan.unit?.symbol ?? 'cm'}`;
  return `${count}${PAN_WORDS[pan.shape]}, ${written}${other('')}`;
}
