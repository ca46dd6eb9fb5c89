/**
 * Knows how numbers, amounts, temperatures and times are written, and what they come to.
 * Refuses to know what is weighed or heated.
 */
import { VULGAR_FRACTIONS } from '../measure/number-text.ts';
import type { Quantity, Size } from '../measure/quantity.ts';
import { baseOf } from '../measure/unit.ts';
import { type Cursor, type Run, spanOf, takeWhile, textOf } from './cursor.ts';
import { isNumber, Kind, opensAmount, opensMeasure, Token } from './tokens.ts';
import type {
  AmountNode,
  Draft,
  DurationNode,
  LengthNode,
  MeasuredNode,
  NumeralNode,
  SyntaxFault,
  TemperatureNode,
  UnitNode,
} from './tree.ts';

/** The tokens of `about? number (- number)? (unit | size | count word (of measure)?)?`, or of gas and its mark. */
export interface Measure {
  readonly about: Token | undefined;
  readonly gas: Token | undefined;
  readonly minus: Token | undefined;
  readonly low: Run;
  readonly high: Run | undefined;
  readonly unit: Token | undefined;
  readonly fan: Token | undefined;
  readonly sizes: Run | undefined;
  readonly counted: Token | undefined;
  readonly each: Measure | undefined;
}

/** A measure, or the words of an amount that has no number. */
export type Amount = Measure | Token;

export function takeAmount(cursor: Cursor): Amount | undefined {
  const { token } = cursor;
  if (token === undefined || !opensAmount(token.kind)) return undefined;
  if (opensMeasure(token.kind)) return takeMeasure(cursor);
  cursor.at++;
  return token;
}

/** Reads a measure where one begins: `about`, gas and the minus are labelled so only before a number. */
export function takeMeasure(cursor: Cursor): Measure | undefined {
  const about = cursor.take(Kind.About);
  const gas = cursor.take(Kind.Gas);
  if (gas !== undefined) cursor.take(Kind.Word); // `gas mark 4`
  const minus = gas === undefined ? cursor.take(Kind.Minus) : undefined;
  const low = takeNumeral(cursor);
  if (low === undefined) return undefined;
  let high: Run | undefined;
  let unit: Token | undefined;
  let fan: Token | undefined;
  let sizes: Run | undefined;
  let counted: Token | undefined;
  let each: Measure | undefined;
  if (gas === undefined) {
    if (joinsNumbers(cursor.kind) && isNumber(cursor.kindAfter(1))) {
      cursor.at++;
      high = takeNumeral(cursor);
    }
    // `3-inch` is three inches; a degree sign belongs to the amount even when its unit is missing.
    const { kind } = cursor;
    if (kind === Kind.Degree || (kind === Kind.Dash && cursor.kindAfter(1) === Kind.UnitWord)) cursor.at++;
    unit = cursor.take(Kind.UnitWord);
    if (unit !== undefined) fan = cursor.take(Kind.Fan);
    else {
      sizes = takeWhile(cursor, isSize);
      counted = cursor.take(Kind.CountedWord);
      if (counted !== undefined && sizes === undefined && cursor.take(Kind.Of) !== undefined)
        each = takeMeasure(cursor);
    }
  }
  return { about, gas, minus, low, high, unit, fan, sizes, counted, each };
}

/** `1`, `1/2`, `1 1/2`, `1½`, and a number with the comma that should be a point. */
export function takeNumeral(cursor: Cursor): Run | undefined {
  const first = cursor.token;
  if (first === undefined || !isNumber(first.kind)) return undefined;
  cursor.at++;
  const part = first.kind === Kind.Numeral ? (cursor.take(Kind.Fraction) ?? cursor.take(Kind.Vulgar)) : undefined;
  return { first, last: part ?? first };
}

const joinsNumbers = (kind: Kind): boolean => kind === Kind.Dash || kind === Kind.To || kind === Kind.Minus;
const isSize = (kind: Kind): boolean => kind === Kind.SizeWord;

/** What an amount says; a temperature or time where an amount should be is still one, with its unit. */
export function amountOf(line: string, amount: Amount | undefined, faults: SyntaxFault[]): AmountNode | undefined {
  if (!(amount instanceof Token)) return amount && measuredOf(line, amount, faults);
  return amount.kind === Kind.Free ? { kind: 'free', start: amount.start, end: amount.end } : undefined;
}

export function measuredOf(line: string, measure: Measure, faults: SyntaxFault[]): MeasuredNode {
  const { about, sizes } = measure;
  const [low, high] = numeralsOf(line, measure, faults);
  const unit = measure.unit && unitOf(measure.unit);
  const counted = measure.counted && textOf(line, measure.counted, measure.counted);
  const each = measure.each && measuredOf(line, measure.each, faults);
  const size = sizes && sizeOf(sizes);
  const count = measure.counted?.written?.count;
  const quantity: Draft<Quantity> = {
    low: high === undefined ? low.value : Math.min(low.value, high.value),
    high: high === undefined ? low.value : Math.max(low.value, high.value),
    about: about !== undefined,
  };
  if (unit !== undefined) quantity.unit = unit.symbol;
  if (size !== undefined) quantity.size = size;
  if (count !== undefined) quantity.count = count;
  if (each !== undefined) quantity.each = each.quantity;
  const last = measure.counted ?? sizes?.last ?? measure.unit;
  const node: Draft<MeasuredNode> = {
    kind: 'measured',
    start: about?.start ?? low.start,
    end: each?.end ?? last?.end ?? high?.end ?? low.end,
    quantity,
    low,
  };
  if (high !== undefined) node.high = high;
  if (unit !== undefined) node.unit = unit;
  if (counted !== undefined) node.counted = counted;
  if (sizes !== undefined && size !== undefined)
    node.sized = { start: sizes.first.start, end: sizes.last.end, text: size };
  if (each !== undefined) node.each = each;
  return node;
}

/** `extra large` is two words. */
function sizeOf({ first, last }: Run): Size {
  const words = first === last ? [first] : [first, last];
  return words.map((token) => token.written?.word).join(' ') as Size;
}

/** The temperature that an amount is; undefined when it is something else. */
export function temperatureOf(
  line: string,
  amount: Amount | undefined,
  faults: SyntaxFault[],
): TemperatureNode | undefined {
  if (amount === undefined || amount instanceof Token) return undefined;
  const { about, gas, minus, fan } = amount;
  const symbol = amount.unit?.written?.unit?.symbol;
  if (gas === undefined && symbol !== 'C' && symbol !== 'F') return undefined;
  const [low, high] = numeralsOf(line, amount, faults);
  const sign = minus === undefined ? 1 : -1;
  const named = gas ?? amount.unit;
  const unitSpan = named === undefined ? { start: low.end, end: low.end } : spanOf(named, named);
  return {
    kind: 'temperature',
    start: (about ?? gas ?? minus ?? low).start,
    end: Math.max(high?.end ?? low.end, unitSpan.end, fan?.end ?? 0),
    low,
    ...(high && { high }),
    lowDegrees: sign * low.value,
    highDegrees: sign * (high?.value ?? low.value),
    unit: gas !== undefined ? 'gas' : symbol === 'F' ? 'F' : 'C',
    unitSpan,
    fan: fan !== undefined,
    about: about !== undefined,
  };
}

/** The time that an amount is, in minutes; undefined when it is something else. */
export function durationOf(line: string, amount: Amount | undefined, faults: SyntaxFault[]): DurationNode | undefined {
  if (!(amount instanceof Token)) return amount && asDuration(measuredOf(line, amount, faults));
  return amount.kind === Kind.Overnight ? overnightNode(amount) : undefined;
}

/** Overnight is 8 to 16 hours (common practice, no source). */
export const overnightNode = ({ start, end }: Token): DurationNode => ({
  kind: 'duration',
  start,
  end,
  lowMin: 480,
  highMin: 960,
  overnight: true,
});

export function asDuration({ start, end, quantity }: MeasuredNode): DurationNode | undefined {
  const { unit, low, high } = quantity;
  if (unit !== 's' && unit !== 'min' && unit !== 'h' && unit !== 'd') return undefined;
  const seconds = baseOf(unit, 'us') ?? 0;
  return {
    kind: 'duration',
    start,
    end,
    lowMin: (low * seconds) / 60,
    highMin: (high * seconds) / 60,
    overnight: false,
  };
}

/** Days, hours and minutes, in minutes. */
const WHOLE_TIMES = [1440, 60, 1] as const;

/** `1 h 30 min` as one time: so many of the larger unit, and less than one more. Undefined where the two are two. */
export function joinedDuration(a: DurationNode, b: DurationNode): DurationNode | undefined {
  const whole = WHOLE_TIMES.find((unit) => a.lowMin >= unit && a.lowMin % unit === 0);
  if (whole === undefined || a.lowMin !== a.highMin || a.overnight || b.overnight || b.highMin >= whole)
    return undefined;
  return { ...a, end: b.end, lowMin: a.lowMin + b.lowMin, highMin: a.highMin + b.highMin };
}

export function asLength(measured: MeasuredNode): LengthNode | undefined {
  if (measured.unit === undefined || !isLength(measured.unit)) return undefined;
  return { kind: 'length', start: measured.start, end: measured.end, measured };
}

export const isLength = ({ symbol }: UnitNode): boolean => symbol === 'mm' || symbol === 'cm' || symbol === 'in';

/** A per cent sign and `fl oz` are units that are no word. */
export const unitOf = ({ start, end, written }: Token): UnitNode => ({
  start,
  end,
  symbol: written?.unit?.symbol ?? (end === start + 1 ? '%' : 'fl oz'),
});

function numeralsOf(line: string, measure: Measure, faults: SyntaxFault[]): [NumeralNode, NumeralNode | undefined] {
  const low = numeralOf(line, measure.low, faults);
  if (measure.high === undefined) return [low, undefined];
  const high = numeralOf(line, measure.high, faults);
  if (high.value < low.value) {
    const mixed = high.value < 1 && high.style !== 'decimal';
    faults.push({
      code: 'bad-number',
      start: low.start,
      end: high.end,
      detail: mixed
        ? 'a whole number and a fraction have a space between: `1 1/2`'
        : 'write the smaller number of a range first',
    });
  }
  return [low, high];
}

/** Above this no kitchen amount is meant. */
const LARGEST = 1e9;

export function numeralOf(line: string, { first, last }: Run, faults: SyntaxFault[]): NumeralNode {
  if (first.kind === Kind.DecimalComma) return withComma(line, first, faults);
  const { start } = first;
  const { end } = last;
  let value = valueIn(line, first);
  if (last !== first) value += valueIn(line, last);
  if (!Number.isFinite(value) || value > LARGEST) {
    faults.push({
      code: 'bad-number',
      start,
      end,
      detail: 'no kitchen amount is this large, and nothing is divided by zero',
    });
    value = 0;
  }
  const style = last.kind === Kind.Vulgar ? 'glyph' : last.kind === Kind.Fraction ? 'fraction' : 'decimal';
  return { start, end, value, style };
}

function valueIn(line: string, { kind, start, end }: Token): number {
  if (kind === Kind.Numeral) return decimalIn(line, start, end);
  const image = line.slice(start, end);
  if (kind === Kind.Vulgar) return VULGAR_FRACTIONS[image] ?? 0;
  const [top, bottom] = image.split(/[/⁄]/);
  return Number(top) / Number(bottom);
}

/** So many digits are a whole number exactly, and dividing it by a power of ten rounds as reading it does. */
const EXACT = 15;

/** The value of digits with at most one point between them. */
function decimalIn(line: string, start: number, end: number): number {
  if (end - start > EXACT) return Number(line.slice(start, end));
  let digits = 0;
  let point = end;
  for (let at = start; at < end; at++) {
    const code = line.charCodeAt(at);
    if (code === 46) point = at + 1;
    else digits = digits * 10 + code - 48;
  }
  return point === end ? digits : digits / 10 ** (end - point);
}

function withComma(line: string, { start, end }: Token, faults: SyntaxFault[]): NumeralNode {
  const groups = line.slice(start, end).split(',');
  const thousands = groups.slice(1).every((g) => g.length === 3);
  const write = thousands ? groups.join('') : `${groups[0]}.${groups.slice(1).join('')}`;
  const detail = thousands
    ? `write \`${write}\`, without the comma (or \`${groups.join('.')}\` if a decimal was meant)`
    : `write \`${write}\`, with a point`;
  faults.push({ code: 'decimal-comma', start, end, detail, write });
  const value = Number(write);
  return { start, end, value: Number.isFinite(value) && value <= LARGEST ? value : 0, style: 'decimal' };
}
