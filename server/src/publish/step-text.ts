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

/** The step's sentence, from its line as written. */
export const stepText = (step: Step, line: string): string => readerText(step.sentence, heatsOf(step), line);

/** A piece of it, without the point at its end. */
export const clauseText = (step: Step, line: string, span: Span): string =>
  readerText({ ...step.sentence, ...span }, heatsOf(step), line).replace(/[\s,;:.]+$/, '');

/** The same for the prose of a note, which has no kitchen of its own around its figures. */
export function proseText(text: string): string {
  const line = `do ${text}`;
  const { statement } = readLine(line);
  return statement.kind === 'step' ? readerText(statement.sentence, [], line) : plain(text);
}

function readerText(sentence: Sentence, heats: readonly HeatFigure[], line: string): string {
  let text = '';
  let at = sentence.start;
  const put = (span: Span, shown: string): void => {
    text += plain(line.slice(at, span.start)) + shown;
    at = span.end;
  };
  for (const item of sentence.items) {
    if (item.start < at) continue;
    if (item.end > sentence.end) break;
    const heat = heats.find(({ start, end }) => start <= item.start && item.end <= end);
    const shown = heat === undefined ? shownAs(item, line) : heatText(heat);
    if (shown !== undefined) put(heat ?? item, shown);
  }
  const whole = (text + plain(line.slice(at, sentence.end))).replace(/\s+/g, ' ').trim();
  return /[.!?…)]$/.test(whole) || whole === '' ? whole : `${whole}.`;
}

/** What stands for an item of the sentence; undefined where it stays as written. */
function shownAs(item: SentenceItem, line: string): string | undefined {
  switch (item.kind) {
    case 'temperature':
      return temperatureText(item, 'nothing');
    case 'forced':
      return item.name.text;
    case 'duration':
    case 'measured':
      return prettyFigures(line.slice(item.start, item.end));
    case 'length': {
      const { quantity, unit } = item.measured;
      return lengthText(line.slice(item.start, item.end), quantity.low, quantity.high, unit?.symbol);
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
function heatText({ written, of, bound, isHalf, celsius }: HeatFigure): string | undefined {
  if (isHalf) return undefined;
  const [first] = written;
  if (first === undefined) return undefined;
  if (bound === 'change') return `${ownText(first)} (${changeText(first, celsius)})`;
  return scalesText(written, of);
}

/** The same of a figure that stands by itself. */
export const temperatureText = (node: TemperatureNode, of: HeatOf): string => scalesText([node], of);

function scalesText(written: readonly TemperatureNode[], of: HeatOf): string {
  const [first, ...more] = written as readonly [TemperatureNode, ...TemperatureNode[]];
  if (first.unit === 'unsaid') return ownText(first);
  const others = more.map(ownText);
  for (const scale of ['C', 'F'] as const)
    if (!written.some(({ unit }) => unit === scale)) others.push(otherText(first, scale, of));
  return `${ownText(first)} (${others.join(', ')})`;
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

/** Lengths in both: `3 mm (⅛ in)`. */
function lengthText(written: string, low: number, high: number, unit: string | undefined): string {
  const shown = prettyFigures(written);
  if (unit === undefined || low !== high) return shown;
  return `${shown} (${unit === 'in' ? centimetres(low * 25.4) : inches(unit === 'cm' ? low * 10 : low)})`;
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
export function panText(pan: PanNode, line: string): string {
  const said = line.slice(pan.start, pan.end).trim();
  if (pan.shape === undefined || !OWN_FORM.test(said))
    return `${prettyFigures(said).replace(/(?<=[\d½⅓⅔¼¾]) ?x ?(?=\d)/g, ' × ')}${otherSizes(pan, said)}`;
  const count = pan.count > 1 ? `${pan.count} of ` : '';
  const written = `${pan.sizes.map((size) => trimmed(size.value, 2)).join(' × ')} ${pan.unit?.symbol ?? 'cm'}`;
  return `${count}${PAN_WORDS[pan.shape]}, ${written}${otherSizes(pan, '')}`;
}
