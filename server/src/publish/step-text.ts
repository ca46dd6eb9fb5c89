/**
 * Knows a sentence of the method as a reader sees it: temperatures in both scales, lengths in both, marks of the notation taken out.
 * Refuses to change what it says.
 */
import { trimmed } from '../measure/number-text.ts';
import { gasToCelsius } from '../notation/celsius.ts';
import { readLine } from '../notation/statements.ts';
import type { PanNode, Sentence, SentenceItem, TemperatureNode } from '../notation/tree.ts';
import type { HeatReading, HeatRole } from '../recipe/heat.ts';
import type { Step } from '../recipe/recipe.ts';
import { prettyFigures } from './two-measures.ts';

/** The step's sentence, from its line as written. */
export const stepText = (step: Step, line: string): string => readerText(step.sentence, step.heat, line);

/** The same for the prose of a note, which has no kitchen of its own around its figures. */
export function proseText(text: string): string {
  const line = `do ${text}`;
  const { statement } = readLine(line);
  return statement.kind === 'step' ? readerText(statement.sentence, [], line) : plain(text);
}

function readerText(sentence: Sentence, heat: readonly HeatReading[], line: string): string {
  let text = '';
  let at = sentence.start;
  for (const item of sentence.items) {
    const shown = shownAs(item, heat, line);
    if (shown === undefined || item.start < at) continue;
    text += plain(line.slice(at, item.start)) + shown;
    at = item.end;
  }
  const whole = (text + plain(line.slice(at, sentence.end))).replace(/\s+/g, ' ').trim();
  return /[.!?…)]$/.test(whole) || whole === '' ? whole : `${whole}.`;
}

/** What stands for an item of the sentence; undefined where it stays as written. */
function shownAs(item: SentenceItem, heat: readonly HeatReading[], line: string): string | undefined {
  switch (item.kind) {
    case 'temperature':
      return temperatureText(item, heat.find((h) => h.node === item)?.role ?? 'unknown');
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

/**
 * `180 °C (355 °F)`: the other scale of an oven to the nearest 5 degrees, of a reading to the nearest degree, as the Food Code pairs
 * them (74 °C and 165 °F, 63 °C and 145 °F); a gas mark in both.
 */
export function temperatureText(node: TemperatureNode, role: HeatRole): string {
  const about = node.about ? 'about ' : '';
  const fan = node.fan ? ' fan' : '';
  if (node.unit === 'unsaid') return `${about}${span([node.lowDegrees, node.highDegrees])}°`;
  const step = role === 'oven' || role === 'liquid' ? 5 : 1;
  const [low, high] = [node.lowDegrees, node.highDegrees];
  if (node.unit === 'gas') {
    const celsius = [low, high].map((d) => roundTo(gasToCelsius(d), 5));
    const fahrenheit = [low, high].map((d) => roundTo(gasToCelsius(d) * 1.8 + 32, 5));
    return `${about}gas ${span([low, high])} (${span(celsius)} °C, ${span(fahrenheit)} °F)`;
  }
  const other = node.unit === 'C' ? 'F' : 'C';
  const convert = (degrees: number) => roundTo(node.unit === 'C' ? degrees * 1.8 + 32 : (degrees - 32) / 1.8, step);
  return `${about}${span([low, high])} °${node.unit}${fan} (${span([convert(low), convert(high)])} °${other})`;
}

const roundTo = (value: number, step: number): number => Math.round(value / step) * step;

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
