/**
 * Knows how numbers, amounts, temperatures, times and pans come out of the concrete tree.
 * Refuses to know what is weighed, heated or baked.
 */

import type { CstNode, IToken } from 'chevrotain';
import { VULGAR_FRACTIONS } from '../measure/number-text.ts';
import { countWord, type Quantity, type Size } from '../measure/quantity.ts';
import { baseOf, unitSpelled } from '../measure/unit.ts';
import { type Children, child, nodes, spanOf, token, tokens } from './concrete.ts';
import type {
  AmountNode,
  DurationNode,
  LengthNode,
  MeasuredNode,
  NumeralNode,
  PanNode,
  PanShape,
  SyntaxFault,
  TemperatureNode,
  TextNode,
  UnitNode,
} from './tree.ts';

/** The amount of an `amount` rule; a temperature or time where an amount should be is still one, with its unit. */
export function amountOf(node: CstNode | undefined, faults: SyntaxFault[]): AmountNode | undefined {
  if (node === undefined) return undefined;
  const c = node.children as Children;
  const free = token(c.Free);
  if (free !== undefined) return { kind: 'free', ...spanOf(free, free) };
  return measuredOf(child(c.measure), faults);
}

/** The amount of a `measure` rule, or undefined when its number is missing. */
export function measuredOf(node: CstNode | undefined, faults: SyntaxFault[]): MeasuredNode | undefined {
  if (node === undefined) return undefined;
  const c = node.children as Children;
  const [low, high] = numerals(c, faults);
  if (low === undefined) return undefined;
  const unit = unitIn(c);
  const sizes = tokens(c.SizeWord);
  const size = sizes.map((t) => t.image.toLowerCase()).join(' ') as Size | '';
  const counted = text(token(c.CountedWord));
  const each = measuredOf(child(c.each), faults);
  const about = token(c.About);
  const count = counted === undefined ? undefined : countWord(counted.text);
  const lastSize = sizes.at(-1);
  const quantity: Quantity = {
    low: Math.min(low.value, high?.value ?? low.value),
    high: Math.max(low.value, high?.value ?? low.value),
    about: about !== undefined,
    ...(unit && { unit: unit.symbol }),
    ...(size !== '' && { size }),
    ...(count && { count }),
    ...(each && { each: each.quantity }),
  };
  const end = Math.max(
    high?.end ?? low.end,
    unit?.end ?? 0,
    counted?.end ?? 0,
    each?.end ?? 0,
    lastSize ? spanOf(lastSize, lastSize).end : 0,
  );
  return {
    kind: 'measured',
    start: about?.startOffset ?? low.start,
    end,
    quantity,
    low,
    ...(high && { high }),
    ...(unit && { unit }),
    ...(counted && { counted }),
    ...(sizes[0] && lastSize && { sized: { ...spanOf(sizes[0], lastSize), text: size } }),
    ...(each && { each }),
  };
}

/** The temperature of an `amount` or `measure` rule; undefined when it is something else. */
export function temperatureOf(node: CstNode | undefined, faults: SyntaxFault[]): TemperatureNode | undefined {
  const c = (node?.name === 'amount' ? child((node.children as Children).measure) : node)?.children as
    | Children
    | undefined;
  if (c === undefined) return undefined;
  const gas = token(c.Gas);
  const unit = unitIn(c);
  if (gas === undefined && unit?.symbol !== 'C' && unit?.symbol !== 'F') return undefined;
  const [low, high] = numerals(c, faults);
  if (low === undefined) return undefined;
  const sign = token(c.Minus) !== undefined && token(c.Minus)?.startOffset === low.start - 1 ? -1 : 1;
  const fan = token(c.Fan);
  const about = token(c.About);
  const scale = gas !== undefined ? 'gas' : unit?.symbol === 'F' ? 'F' : 'C';
  const unitSpan = gas !== undefined ? spanOf(gas, gas) : { start: unit?.start ?? low.end, end: unit?.end ?? low.end };
  const start = about?.startOffset ?? gas?.startOffset ?? (sign < 0 ? low.start - 1 : low.start);
  const end = Math.max(high?.end ?? low.end, unitSpan.end, fan === undefined ? 0 : spanOf(fan, fan).end);
  return {
    kind: 'temperature',
    start,
    end,
    low,
    ...(high && { high }),
    lowDegrees: sign * low.value,
    highDegrees: sign * (high?.value ?? low.value),
    unit: scale,
    unitSpan,
    fan: fan !== undefined,
    about: about !== undefined,
  };
}

/** The time of an `amount` or `measure` rule, in minutes; undefined when it is something else. */
export function durationOf(node: CstNode | undefined, faults: SyntaxFault[]): DurationNode | undefined {
  if (node === undefined) return undefined;
  const overnight = token((node.children as Children).Overnight);
  if (overnight !== undefined) return overnightNode(overnight);
  const measured = measuredOf(node.name === 'amount' ? child((node.children as Children).measure) : node, faults);
  return measured === undefined ? undefined : asDuration(measured);
}

/** Overnight is 8 to 16 hours (common practice, no source). */
export function overnightNode(token: IToken): DurationNode {
  return { kind: 'duration', ...spanOf(token, token), lowMin: 480, highMin: 960, overnight: true };
}

export function asDuration(measured: MeasuredNode): DurationNode | undefined {
  const { unit, quantity } = measured;
  if (unit === undefined) return undefined;
  const seconds = measured.unit && ['s', 'min', 'h', 'd'].includes(unit.symbol) ? baseOf(unit.symbol, 'us') : undefined;
  if (seconds === undefined) return undefined;
  const { start, end } = measured;
  return {
    kind: 'duration',
    start,
    end,
    lowMin: (quantity.low * seconds) / 60,
    highMin: (quantity.high * seconds) / 60,
    overnight: false,
  };
}

export function asLength(measured: MeasuredNode): LengthNode | undefined {
  const { start, end } = measured;
  return measured.unit && ['mm', 'cm', 'in'].includes(measured.unit.symbol)
    ? { kind: 'length', start, end, measured }
    : undefined;
}

const SIZES_OF: Readonly<Record<PanShape, number>> = { round: 2, square: 2, rectangle: 3, loaf: 3, ring: 3 };

/** The pan of a `pan` rule, with a fault when its shape or sizes are not as the notation wants them. */
export function panOf(node: CstNode, faults: SyntaxFault[]): PanNode | undefined {
  const c = node.children as Children;
  const countNode = numeralOf(child(c.count), faults);
  const shapeToken = token(c.shape);
  const sizes = nodes(c.size)
    .map((n) => numeralOf(n, faults))
    .filter((n): n is NumeralNode => n !== undefined);
  const unitToken = tokens(c.UnitWord).at(-1);
  const unit = unitNode(unitToken);
  const first = countNode?.start ?? shapeToken?.startOffset ?? sizes[0]?.start;
  if (first === undefined) return undefined;
  const end = Math.max(sizes.at(-1)?.end ?? 0, unit?.end ?? 0, shapeToken ? spanOf(shapeToken, shapeToken).end : 0);
  const [only] = sizes;
  if (shapeToken === undefined && sizes.length === 1 && only !== undefined && unit !== undefined && !isLength(unit)) {
    const quantity: Quantity = { low: only.value, high: only.value, about: false, unit: unit.symbol };
    const volume: MeasuredNode = { kind: 'measured', start: only.start, end: unit.end, quantity, low: only, unit };
    return { start: first, end, count: countNode?.value ?? 1, ...(countNode && { countNode }), sizes: [], volume };
  }
  const written = shapeToken?.image.toLowerCase() ?? '';
  const shape = Object.hasOwn(SIZES_OF, written) ? (written as PanShape) : undefined;
  const wanted = shape === undefined ? 0 : SIZES_OF[shape];
  if (shape === undefined) {
    faults.push({
      code: 'bad-pan',
      start: first,
      end,
      detail:
        'a pan is `round`, `square`, `rectangle`, `loaf` or `ring`, then its sizes: `pan round 24 x 3 cm`, or a volume: `pan 1.2 l`',
    });
  } else if (sizes.length !== wanted || unit === undefined || !isLength(unit)) {
    const example = {
      round: '24 x 3 cm',
      square: '20 x 5 cm',
      rectangle: '30 x 20 x 4 cm',
      loaf: '21 x 11 x 6 cm',
      ring: '24 x 8 x 10 cm',
    }[shape];
    faults.push({
      code: 'bad-pan',
      start: first,
      end,
      detail: `give its sizes and the unit, the depth last: \`pan ${shape} ${example}\``,
    });
  }
  return {
    start: first,
    end,
    count: countNode?.value ?? 1,
    ...(countNode && { countNode }),
    ...(shape && { shape }),
    sizes,
    ...(unit && { unit }),
  };
}

const isLength = (unit: UnitNode): boolean => ['mm', 'cm', 'in'].includes(unit.symbol);

/** Above this no kitchen amount is meant. */
const LARGEST = 1e9;

function numeralOf(node: CstNode | undefined, faults: SyntaxFault[]): NumeralNode | undefined {
  if (node === undefined) return undefined;
  const c = node.children as Children;
  const comma = token(c.DecimalComma);
  if (comma !== undefined) return withComma(comma, faults);
  const parts = [token(c.Numeral), token(c.Fraction), token(c.Vulgar)].filter((t): t is IToken => t !== undefined);
  const [first] = parts;
  const last = parts.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const span = spanOf(first, last);
  let value = 0;
  for (const part of parts) value += numberIn(part.image);
  if (!Number.isFinite(value) || value > LARGEST) {
    faults.push({
      code: 'bad-number',
      ...span,
      detail: 'no kitchen amount is this large, and nothing is divided by zero',
    });
    value = 0;
  }
  const style = token(c.Vulgar) !== undefined ? 'glyph' : token(c.Fraction) !== undefined ? 'fraction' : 'decimal';
  return { ...span, value, style };
}

function numberIn(image: string): number {
  const glyph = VULGAR_FRACTIONS[image];
  if (glyph !== undefined) return glyph;
  const [top, bottom] = image.split(/[/⁄]/);
  return bottom === undefined ? Number(image) : Number(top) / Number(bottom);
}

function withComma(comma: IToken, faults: SyntaxFault[]): NumeralNode {
  const span = spanOf(comma, comma);
  const groups = comma.image.split(',');
  const thousands = groups.slice(1).every((g) => g.length === 3);
  const write = thousands ? groups.join('') : `${groups[0]}.${groups.slice(1).join('')}`;
  const detail = thousands
    ? `write \`${write}\`, without the comma (or \`${groups.join('.')}\` if a decimal was meant)`
    : `write \`${write}\`, with a point`;
  faults.push({ code: 'decimal-comma', ...span, detail, write });
  const value = Number(write);
  return { ...span, value: Number.isFinite(value) && value <= LARGEST ? value : 0, style: 'decimal' };
}

function numerals(c: Children, faults: SyntaxFault[]): [NumeralNode | undefined, NumeralNode | undefined] {
  const [first, second] = nodes(c.numeral);
  const low = numeralOf(first, faults);
  const high = numeralOf(second, faults);
  if (low !== undefined && high !== undefined && high.value < low.value) {
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

function unitIn(c: Children): UnitNode | undefined {
  return unitNode(token(c.UnitWord));
}

function unitNode(found: IToken | undefined): UnitNode | undefined {
  if (found === undefined) return undefined;
  const unit =
    /^fl/i.test(found.image) && /oz|ounce/i.test(found.image)
      ? unitSpelled('fl oz')
      : (unitSpelled(found.image) ?? unitSpelled(found.image.toLowerCase()));
  return unit === undefined ? undefined : { ...spanOf(found, found), symbol: unit.symbol };
}

const text = (t: IToken | undefined): TextNode | undefined =>
  t === undefined ? undefined : { ...spanOf(t, t), text: t.image };
