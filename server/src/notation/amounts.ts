/**
 * Knows how numbers, amounts, temperatures and times are written, and what they come to.
 * Refuses to know what is weighed or heated.
 */
import { type Bias, biasOf } from '../measure/bias.ts';
import type { Quantity, Size } from '../measure/quantity.ts';
import { dimensionOf } from '../measure/unit.ts';
import type { Dimension, Unit } from '../measure/unit-row.ts';
import { type CanRun, canNode } from './can-size.ts';
import { type Cursor, type Run, takeWhile, textOf } from './cursor.ts';
import { type NumeralRun, numeralOf, takeNumeral } from './numerals.ts';
import { isNumber, Kind, opensAmount, opensMeasure, type Token } from './tokens.ts';
import type { AmountNode, Draft, MeasuredNode, NumeralNode, SyntaxFault, UnitNode } from './tree.ts';

/** The tokens of `about? number (- number)? (unit | size | count word (of measure)?)?`, or of gas and its mark. */
export interface Measure {
  readonly about: Token | undefined;
  readonly gas: Token | undefined;
  readonly minus: Token | undefined;
  /** Undefined where one is meant and no number stands: `pinch of salt`. */
  readonly low: NumeralRun | undefined;
  readonly high: NumeralRun | undefined;
  readonly bias: Run | undefined;
  readonly unit: Token | undefined;
  /** `350°`, `350 degrees`, before the unit or without one. */
  readonly degree: Token | undefined;
  readonly fan: Token | undefined;
  readonly sizes: Run | undefined;
  readonly counted: Token | undefined;
  readonly each: Measure | undefined;
  /** The size of the can that is counted, by the trade's own number. */
  readonly can: CanRun | undefined;
  /** The bracket that closes around what one holds, where it is the last: `1 can (14 oz)`. */
  readonly close: Token | undefined;
  /** Read as on a line of the list. */
  readonly list: boolean;
  /** The point behind a unit or count word: `tsp.` */
  readonly point: Token | undefined;
  /** The other end of a range in another unit: `1 tsp to 1 tbsp`. */
  readonly upTo: Measure | undefined;
  /** The further terms of a sum: `1 lb 4 oz`. */
  readonly plus: readonly Measure[];
}

/** The same with the point of its unit: `375 F.`, `10 min.` */
export const withPoint = (measure: Measure, point: Token): Measure => ({ ...measure, point });

export const NO_TERMS: readonly Measure[] = [];

/** A measure, or the words of an amount that has no number. */
export type Amount = Measure | Free;

/** `to taste`, `overnight`, or on a line of the list `a little`. */
export class Free {
  readonly first: Token;
  readonly last: Token;

  constructor(first: Token, last: Token) {
    this.first = first;
    this.last = last;
  }
}

export function takeAmount(cursor: Cursor): Amount | undefined {
  const { token } = cursor;
  if (token === undefined || !opensAmount(token.kind)) return undefined;
  if (opensMeasure(token.kind)) return takeMeasure(cursor);
  cursor.at++;
  return new Free(token, token);
}

/** Reads a measure where one begins: `about`, gas and the minus are labelled so only before a number. */
export function takeMeasure(cursor: Cursor): Measure | undefined {
  const about = cursor.take(Kind.About);
  const gas = cursor.take(Kind.Gas);
  if (gas !== undefined) cursor.take(Kind.Word); // `gas mark 4`
  const minus = gas === undefined ? cursor.take(Kind.Minus) : undefined;
  const from = cursor.at;
  const low = takeNumeral(cursor);
  if (low === undefined) return undefined;
  let high: NumeralRun | undefined;
  let unit: Token | undefined;
  let degree: Token | undefined;
  let fan: Token | undefined;
  let sizes: Run | undefined;
  let counted: Token | undefined;
  let each: Measure | undefined;
  if (gas === undefined) {
    // `60° to 70° F`
    if (cursor.kind === Kind.Degree && joinsNumbers(cursor.kindAfter(1)) && isNumber(cursor.kindAfter(2)))
      degree = cursor.take(Kind.Degree);
    if (joinsNumbers(cursor.kind) && isNumber(cursor.kindAfter(1)) && !isOfClock(cursor, from)) {
      cursor.at++;
      high = takeNumeral(cursor);
    }
    // `3-inch` is three inches; a degree sign belongs to the amount even when its unit is missing.
    degree = cursor.take(Kind.Degree) ?? degree;
    if (cursor.kind === Kind.Dash && cursor.kindAfter(1) === Kind.UnitWord) cursor.at++;
    unit = cursor.take(Kind.UnitWord);
    if (unit !== undefined) fan = cursor.take(Kind.Fan);
    else {
      sizes = takeWhile(cursor, isSize);
      counted = cursor.take(Kind.CountedWord);
      if (counted !== undefined && sizes === undefined && cursor.take(Kind.Of) !== undefined)
        each = takeMeasure(cursor);
    }
  }
  return {
    about,
    gas,
    minus,
    low,
    high,
    bias: undefined,
    unit,
    degree,
    fan,
    sizes,
    counted,
    each,
    can: undefined,
    close: undefined,
    list: false,
    point: undefined,
    upTo: undefined,
    plus: NO_TERMS,
  };
}

/** `22:00 to 07:00` are two points, and `00 to 07` is no range. */
function isOfClock({ tokens }: Cursor, low: number): boolean {
  const [before, colon, own] = [tokens[low - 2], tokens[low - 1], tokens[low]];
  return (
    colon?.kind === Kind.Colon &&
    before !== undefined &&
    isNumber(before.kind) &&
    before.end === colon.start &&
    own?.start === colon.end
  );
}

const joinsNumbers = (kind: Kind): boolean => kind === Kind.Dash || kind === Kind.To || kind === Kind.Minus;
const isSize = (kind: Kind): boolean => kind === Kind.SizeWord;

/** What a measure of a list line measures; undefined for a count. A per cent sign and `fl oz` are no words. */
export function dimensionIn({ unit }: Measure): Dimension | undefined {
  if (unit === undefined) return undefined;
  return unit.written?.printed?.dimension ?? (unit.end === unit.start + 1 ? 'share' : 'volume');
}

/** Whether pieces of no stated size are counted by a word; `cloves` may be the name. */
export const isCounted = ({ unit, counted, each, can }: Measure): boolean =>
  unit === undefined &&
  each === undefined &&
  can === undefined &&
  counted?.written?.count !== undefined &&
  counted.written.count !== 'clove';

/** What an amount says; a temperature or time where an amount should be is still one, with its unit. */
export function amountOf(line: string, amount: Amount | undefined, faults: SyntaxFault[]): AmountNode | undefined {
  if (!(amount instanceof Free)) return amount && measuredOf(line, amount, faults);
  const { first, last } = amount;
  return first.kind === Kind.Overnight ? undefined : { kind: 'free', start: first.start, end: last.end };
}

export function measuredOf(line: string, measure: Measure, faults: SyntaxFault[]): MeasuredNode {
  const { about, sizes, point, close } = measure;
  const sure = faults.length;
  const [low, high] = numeralsOf(line, measure, faults);
  const unit = measure.unit && (measure.list ? unitInList(measure.unit, point) : unitOf(measure.unit));
  if (!measure.list && isNotWeighed(unit)) acceptThousands(faults, sure);
  const counted = measure.counted && textOf(line, measure.counted, measure.counted);
  const { can } = measure;
  const each = measure.each === undefined ? can && canNode(can) : measuredOf(line, measure.each, faults);
  const upTo = measure.upTo && measuredOf(line, measure.upTo, faults);
  const size = sizes && sizeOf(sizes);
  const count = measure.counted?.written?.count ?? (can && 'can');
  const most = high === undefined ? (low.upTo ?? low.value) : (high.upTo ?? high.value);
  const quantity: Draft<Quantity> = {
    low: Math.min(low.value, most),
    high: Math.max(low.value, most),
    about: about !== undefined,
  };
  if (unit !== undefined) quantity.unit = unit.symbol;
  if (size !== undefined) quantity.size = size;
  if (count !== undefined) quantity.count = count;
  if (each !== undefined) quantity.each = each.quantity;
  if (upTo !== undefined) quantity.upTo = upTo.quantity;
  const last = measure.counted ?? sizes?.last ?? measure.unit;
  const node: Draft<MeasuredNode> = {
    kind: 'measured',
    start: about?.start ?? low.start,
    end: Math.max(upTo?.end ?? 0, close?.end ?? each?.end ?? 0, point?.end ?? 0, last?.end ?? high?.end ?? low.end),
    quantity,
    low,
  };
  if (high !== undefined) node.high = high;
  if (unit !== undefined) node.unit = unit;
  if (counted !== undefined) node.counted = counted;
  if (sizes !== undefined && size !== undefined)
    node.sized = { start: sizes.first.start, end: sizes.last.end, text: size };
  if (each !== undefined) {
    node.each = each;
    node.start = Math.min(node.start, each.start);
  }
  if (upTo !== undefined) node.upTo = upTo;
  if (measure.bias !== undefined) {
    node.bias = textOf(line, measure.bias.first, measure.bias.last);
    const bias = biasIn(node.bias.text);
    if (bias !== undefined) quantity.bias = bias;
  }
  if (measure.plus.length > 0) {
    node.plus = measure.plus.map((term) => measuredOf(line, term, faults));
    quantity.plus = node.plus.map((term) => term.quantity);
  }
  return node;
}

/** In a step, what has no unit or is a length: `above 2,000 ft`, which nobody could take for two feet. */
const isNotWeighed = (unit: UnitNode | undefined): boolean =>
  unit === undefined || dimensionOf(unit.symbol) === 'length';

function acceptThousands(faults: SyntaxFault[], from: number): void {
  const asked = faults.splice(from);
  faults.push(...asked.filter(({ code, write }) => code !== 'decimal-comma' || write?.includes('.') === true));
}

/** `firmly packed`, `good heaped`: two words, or the last that is known. */
function biasIn(text: string): Bias | undefined {
  const words = text.toLowerCase().split(/\s+/);
  return biasOf(words.slice(-2).join(' ')) ?? words.map(biasOf).findLast((b) => b !== undefined);
}

/** `extra large` is two words. */
function sizeOf({ first, last }: Run): Size {
  const words = first === last ? [first] : [first, last];
  return words.map((token) => token.written?.size ?? token.written?.word).join(' ') as Size;
}

/** A per cent sign and `fl oz` are units that are no word; a point behind one belongs to it. */
export const unitOf = (token: Token): UnitNode => unitNode(token, token.written?.unit, undefined);

/** The same on a line of the list, where `C` is a cup; a point behind it belongs to it. */
export const unitInList = (token: Token, point?: Token): UnitNode => unitNode(token, token.written?.printed, point);

const unitNode = ({ start, end }: Token, unit: Unit | undefined, point: Token | undefined): UnitNode => ({
  start,
  end: point?.end ?? end,
  symbol: unit?.symbol ?? (end === start + 1 ? '%' : 'fl oz'),
});

export function numeralsOf(
  line: string,
  measure: Measure,
  faults: SyntaxFault[],
): [NumeralNode, NumeralNode | undefined] {
  const low = measure.low === undefined ? impliedOne(measure) : numeralOf(line, measure.low, faults);
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

/** No number stands there and one is meant: a numeral of no width, before the first word. */
function impliedOne({ about, bias, sizes, unit, counted, each, can }: Measure): NumeralNode {
  const first = [bias?.first, sizes?.first, can?.first, unit, counted].find((t) => t !== undefined);
  const at =
    about?.end ??
    Math.min(first?.start ?? Number.MAX_SAFE_INTEGER, each === undefined ? Number.MAX_SAFE_INTEGER : startOf(each));
  return { start: at, end: at, value: 1, style: 'implied' };
}

const startOf = ({ about, low, unit, counted }: Measure): number =>
  (about ?? low?.first ?? unit ?? counted)?.start ?? 0;
