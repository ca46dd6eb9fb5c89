/**
 * Knows what a kitchen can measure: the steps of a scale by the size of the weight, of spoons and cups, and of counted pieces.
 * Refuses to know foods. Every answer says the figure it stands for, so that its error can be told.
 */
import { fractionText, trimmed } from './number-text.ts';
import type { Quantity } from './quantity.ts';
import type { Measures } from './systems.ts';
import { totalOf } from './total.ts';
import { baseOf, byHand, dimensionOf } from './unit.ts';
import type { UnitSymbol } from './unit-symbol.ts';

/** How a number is written: with vulgar fractions `½`, plain ones `1/2`, or a decimal point. */
export type NumberStyle = 'plain' | 'glyph' | 'decimal';

export interface KitchenFigure {
  readonly value: number;
  readonly unit: UnitSymbol;
  readonly text: string;
}

/** A weight or volume may be off by this share before a finer step is taken, so that a ratio of two is off by at most 1 %. */
const TOLERANCE = 0.005;

/**
 * Grams as a scale shows them: 0.01 g below 1 g, 0.1 g below 10 g, then the coarsest of 1, 0.5 and 0.1 g that is off by
 * at most 0.5 %; 5 g steps from 2 kg, 50 g from 20 kg. Millilitres go alike.
 */
export function kitchenGrams(grams: number): number {
  for (const step of stepsFor(Math.abs(grams))) {
    const rounded = roundTo(grams, step);
    if (Math.abs(rounded - grams) <= TOLERANCE * Math.abs(grams) + 1e-9) return rounded;
  }
  const finest = stepsFor(Math.abs(grams)).at(-1) ?? 1;
  return Math.max(roundTo(grams, finest), grams > 0 ? finest : 0);
}

function stepsFor(grams: number): readonly number[] {
  if (grams < 1) return [0.01];
  if (grams < 10) return [0.1];
  if (grams < 100) return [1, 0.5, 0.1];
  return grams < 2000 ? [1] : grams < 20_000 ? [5] : [50];
}

const roundTo = (value: number, step: number): number => Number((Math.round(value / step + 1e-9) * step).toFixed(6));

/** An amount in the unit it is written in, or in the next one where that is what a cook would take. */
export function kitchenFigure(
  value: number,
  unit: UnitSymbol,
  measures: Measures,
  style: NumberStyle = 'plain',
): KitchenFigure {
  if (!(value > 0)) return { value: 0, unit, text: '0' };
  if (isDecimal(unit)) return metricFigure(value, unit);
  const ladder = ladderOf(unit);
  return ladder === undefined
    ? figure(Number(trimmed(value, 2)), unit, style)
    : best(value, unit, measures, ladder, style);
}

/** One alone that is further off is written as two. */
const ALONE = 0.02;

/**
 * An amount as a kitchen measures it: in one unit, or in two falling ones of a kind (`1 cup` and `2 tbsp`) where no single measure
 * is near enough (within 2 % where nothing else is said), so that nobody counts fifteen spoons.
 */
export function kitchenFigures(
  value: number,
  unit: UnitSymbol,
  measures: Measures,
  style: NumberStyle = 'plain',
  near = ALONE,
): readonly KitchenFigure[] {
  const one = kitchenFigure(value, unit, measures, style);
  const ladder = ladderOf(unit);
  if (!(value > 0) || ladder === undefined) return [one];
  const whole = value * (baseOf(unit, measures) ?? 1);
  const rungs = ladder.filter((r) => r.unit === unit || r.onlyFrom === undefined || r.onlyFrom.includes(unit));
  const alone = rungs.flatMap((rung) =>
    measurable(whole, rung, measures, style, rung.unit === unit ? rung.counted : undefined),
  );
  const single = cheapest(alone, unit, whole, near);
  if (single !== undefined) return single;
  const two = rungs.flatMap((large) =>
    large.sums === undefined ? [] : rungs.flatMap((small) => pairs(whole, large, small, measures, style)),
  );
  return cheapest(two, unit, whole, near) ?? [one];
}

/** One or two figures, what they come to in the base unit, and how awkward they are. */
interface Written {
  readonly figures: readonly KitchenFigure[];
  readonly base: number;
  readonly cost: number;
}

/** The least awkward of those that are near enough. */
function cheapest(
  of: readonly Written[],
  unit: UnitSymbol,
  whole: number,
  near: number,
): Written['figures'] | undefined {
  let best: { readonly figures: Written['figures']; readonly cost: number } | undefined;
  for (const { figures, base, cost } of of) {
    const error = Math.abs(base / whole - 1);
    if (error > near) continue;
    const total = cost + PER_ERROR * error + (figures.some((f) => f.unit === unit) ? 0 : OTHER_UNIT);
    if (best === undefined || total < best.cost - 1e-9) best = { figures, cost: total };
  }
  return best?.figures;
}

/** What one measure of the rung holds of it, in parts that a kitchen has. */
function measurable(base: number, rung: Rung, measures: Measures, style: NumberStyle, counted = 0): Written[] {
  const each = baseOf(rung.unit, measures) ?? 1;
  const common = { ...rung, parts: rung.parts.filter(([, cost]) => cost < RARE || rung.unit === 'tsp') };
  return candidatesOf(base / each, common, style).flatMap(({ figure: f, cost }) =>
    f.value > (Number.isInteger(f.value) ? Math.max(rung.most, counted) : rung.most) + 1e-9 ||
    f.value < rung.least - 1e-9
      ? []
      : [{ figures: [f], base: f.value * each, cost }],
  );
}

/** Parts as awkward as this nobody has a measure for, but the smallest spoon. */
const RARE = 3;

/** So much of the larger measure as goes in, and the rest in the smaller. */
function pairs(whole: number, large: Rung, small: Rung, measures: Measures, style: NumberStyle): Written[] {
  const each = baseOf(large.unit, measures) ?? 1;
  if (small.sums === undefined || (baseOf(small.unit, measures) ?? 1) >= each) return [];
  return large.parts.flatMap(([part, cost]) => {
    const value = Math.floor(whole / each / part + 1e-9) * part;
    const inWholes = large.sums === 'wholes' && part !== 1;
    if (cost >= RARE || inWholes || value < large.least - 1e-9 || value > large.most + 1e-9) return [];
    return measurable(whole - value * each, small, measures, style).flatMap((rest) =>
      rest.base >= each
        ? []
        : [
            {
              figures: [figure(value, large.unit, style), ...rest.figures],
              base: value * each + rest.base,
              cost: cost + rest.cost,
            },
          ],
    );
  });
}

/** The nearest figure in exactly this unit. */
export function figureIn(value: number, unit: UnitSymbol, style: NumberStyle): KitchenFigure {
  if (isDecimal(unit)) {
    const perUnit = baseOf(unit, 'us') ?? 1;
    return figure(Number(trimmed(kitchenGrams(value * perUnit) / perUnit, 5)), unit, 'decimal');
  }
  const rung = ladderOf(unit)?.find((r) => r.unit === unit);
  if (rung === undefined) return figure(Number(trimmed(value, 2)), unit, style);
  return candidatesOf(value, rung, style).reduce((a, b) =>
    Math.abs(b.figure.value - value) + b.cost * 1e-6 < Math.abs(a.figure.value - value) + a.cost * 1e-6 ? b : a,
  ).figure;
}

type Decimal = 'mg' | 'g' | 'kg' | 'ml' | 'cl' | 'dl' | 'l';
const isDecimal = (unit: UnitSymbol): unit is Decimal => ['mg', 'g', 'kg', 'ml', 'cl', 'dl', 'l'].includes(unit);

function metricFigure(value: number, unit: Decimal): KitchenFigure {
  const base = value * (baseOf(unit, 'us') ?? 1);
  const rounded = kitchenGrams(base);
  const small = dimensionOf(unit) === 'mass' ? 'g' : 'ml';
  const large = dimensionOf(unit) === 'mass' ? 'kg' : 'l';
  const to: Decimal =
    rounded >= 10_000
      ? large
      : unit === large && rounded < 1000
        ? small
        : unit === 'mg' && rounded >= 1
          ? 'g'
          : unit === 'g' && rounded < 0.05
            ? 'mg'
            : unit;
  if (to === 'mg') return figure(Number((base * 1000).toPrecision(2)), 'mg', 'decimal');
  return figure(Number(trimmed(rounded / (baseOf(to, 'us') ?? 1), 5)), to, 'decimal');
}

/** One unit of a ladder: the parts of it that can be measured, and the figures a cook would leave to its neighbours. */
interface Rung {
  readonly unit: UnitSymbol;
  /** Parts of one, with how awkward each is. */
  readonly parts: readonly (readonly [number, number])[];
  readonly least: number;
  /** Up from here the next unit is the better one. */
  readonly most: number;
  /** Nobody counts more than this. */
  readonly never?: number;
  /** Taken only by one who wrote in one of these. */
  readonly onlyFrom?: readonly UnitSymbol[];
  /** So many wholes are still counted by one who wrote in this unit: `6 tbsp butter`. */
  readonly counted?: number;
  /** It stands in sums: in any parts, or in wholes where it is the larger. */
  readonly sums?: 'parts' | 'wholes';
}

const WHOLES: Rung['parts'] = [[1, 0]];
const HALVES: Rung['parts'] = [...WHOLES, [1 / 2, 1]];
const QUARTERS: Rung['parts'] = [...HALVES, [1 / 4, 2]];
const THIRDS: Rung['parts'] = [...QUARTERS, [1 / 3, 2]];
const EIGHTHS: Rung['parts'] = [...QUARTERS, [1 / 8, 5]];

/** The old measures among them are read, and written in those that a kitchen has. */
const LARGE: readonly UnitSymbol[] = ['pint', 'quart', 'gallon', 'peck', 'bushel'];
const SPOONS_AND_CUPS: readonly Rung[] = [
  { unit: 'drop', parts: WHOLES, least: 1, most: 20, onlyFrom: ['drop'] },
  { unit: 'pinch', parts: WHOLES, least: 1, most: 2, never: 3, onlyFrom: ['pinch', 'dash', 'tsp'] },
  { unit: 'dash', parts: WHOLES, least: 1, most: 3, onlyFrom: ['dash'] },
  { unit: 'tsp', parts: EIGHTHS, least: 1 / 4, most: 2.99, sums: 'parts' },
  // No set of spoons has a third or a quarter of a tablespoon: those are teaspoons.
  { unit: 'tbsp', parts: HALVES, least: 1, most: 4, counted: 8, sums: 'parts' },
  { unit: 'fl oz', parts: QUARTERS, least: 1 / 2, most: 32, onlyFrom: ['fl oz'] },
  { unit: 'cup', parts: [...THIRDS, [1 / 8, 5]], least: 1 / 4, most: 16, sums: 'parts' },
  { unit: 'pint', parts: QUARTERS, least: 1 / 4, most: 8, onlyFrom: LARGE },
  { unit: 'quart', parts: QUARTERS, least: 1 / 4, most: 8, onlyFrom: LARGE, sums: 'wholes' },
  { unit: 'gallon', parts: QUARTERS, least: 1 / 4, most: 1000, onlyFrom: LARGE, sums: 'wholes' },
];
const AVOIRDUPOIS: readonly Rung[] = [
  { unit: 'oz', parts: [...QUARTERS, [1 / 8, 3], [1 / 20, 6]], least: 1 / 4, most: 15.99, sums: 'parts' },
  { unit: 'lb', parts: [...QUARTERS, [1 / 8, 3], [1 / 100, 6]], least: 1, most: 1000, sums: 'wholes' },
];

function ladderOf(unit: UnitSymbol): readonly Rung[] | undefined {
  if (isDecimal(unit)) return undefined;
  if (unit === 'oz' || unit === 'lb') return AVOIRDUPOIS;
  if (dimensionOf(unit) !== 'volume') return undefined;
  // What the hand measures is counted, as nothing else comes to the same.
  return byHand(unit) === undefined || SPOONS_AND_CUPS.some((rung) => rung.unit === unit) ? SPOONS_AND_CUPS : undefined;
}

/** What a hundredth of error, and another unit than the writer's, weigh against an awkward fraction. */
const PER_ERROR = 150;
const OTHER_UNIT = 1.5;
/** An eighth beside whole spoons or cups is one more thing to measure. */
const BESIDE_WHOLES = 2;

function best(
  value: number,
  unit: UnitSymbol,
  measures: Measures,
  ladder: readonly Rung[],
  style: NumberStyle,
): KitchenFigure {
  const whole = value * (baseOf(unit, measures) ?? 1);
  let chosen: { readonly figure: KitchenFigure; readonly cost: number } | undefined;
  for (const rung of ladder) {
    if (rung.unit !== unit && rung.onlyFrom !== undefined && !rung.onlyFrom.includes(unit)) continue;
    const each = baseOf(rung.unit, measures) ?? 1;
    for (const { figure: f, cost } of candidatesOf(whole / each, rung, style)) {
      if (f.value > (rung.never ?? Number.POSITIVE_INFINITY)) continue;
      const error = Math.abs((f.value * each) / whole - 1);
      const total = cost + PER_ERROR * error + range(f.value, rung) + (rung.unit === unit ? 0 : OTHER_UNIT);
      if (chosen === undefined || total < chosen.cost - 1e-9) chosen = { figure: f, cost: total };
    }
  }
  return chosen?.figure ?? figure(Number(trimmed(value, 2)), unit, style);
}

/** The more a figure is beyond what the unit is used for, the worse. */
function range(value: number, { least, most }: Rung): number {
  if (value > most + 1e-9) return 2 + 2 * Math.log2(value / most);
  return value < least - 1e-9 ? 1 + 2 * Math.log2(least / value) : 0;
}

function candidatesOf(
  value: number,
  { unit, parts }: Rung,
  style: NumberStyle,
): { readonly figure: KitchenFigure; readonly cost: number }[] {
  return parts.map(([part, cost]) => {
    const rounded = Math.max(1, Math.round(value / part)) * part;
    const beside = part === 1 / 8 && rounded > 1 ? BESIDE_WHOLES : 0;
    return { figure: figure(rounded, unit, part < 0.11 ? 'decimal' : style), cost: cost + beside };
  });
}

function figure(value: number, unit: UnitSymbol, style: NumberStyle): KitchenFigure {
  return { value, unit, text: numberText(value, style) };
}

/** One or two figures as they are written: `1 cup + 2 tbsp`, `1 lb 4 oz`. */
export const figuresText = (figures: readonly KitchenFigure[]): string =>
  figures
    .map(({ text, unit }) => `${text} ${unit}`)
    .join(figures.some(({ unit }) => dimensionOf(unit) === 'volume') ? ' + ' : ' ');

/** What figures of one kind come to, in another of its units. */
export const comesTo = (figures: readonly KitchenFigure[], unit: UnitSymbol, measures: Measures): number =>
  figures.reduce((sum, f) => sum + f.value * (baseOf(f.unit, measures) ?? 1), 0) / (baseOf(unit, measures) ?? 1);

/** A number in the writer's manner; a fraction that no kitchen writes has a decimal point. */
export function numberText(value: number, style: NumberStyle): string {
  if (style !== 'decimal') {
    const fraction = fractionText(value, style === 'glyph', 1e-4);
    if (fraction !== undefined) return fraction;
  }
  return trimmed(value, value < 0.1 ? 4 : 3);
}

/** Parts into which a piece is cut: an onion in quarters and thirds, a clove of garlic in halves at most. */
export type Cutting = 'quarters' | 'halves';

/** Pieces that a cook can count: whole ones where that is near enough, else halves, quarters and thirds. */
export function kitchenCount(value: number, near: number, cutting: Cutting = 'quarters'): number {
  if (!(value > 0)) return 0;
  for (const part of cutting === 'halves' ? [1, 1 / 2] : [1, 1 / 2, 1 / 4, 1 / 3]) {
    const rounded = Math.round(value / part) * part;
    if (rounded > 0 && Math.abs(rounded / value - 1) <= near) return rounded;
  }
  const part = cutting === 'halves' && value > 0.375 ? 1 / 2 : 1 / 4;
  return Math.max(1, Math.round(value / part)) * part;
}

/** The error that is furthest off, either way; 0 of none. */
export const worst = (errors: readonly number[]): number =>
  errors.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);

/**
 * What is left of an amount when another of its kind is taken from it, as a kitchen measures that: `3/4 cup + 3 tbsp`. Spoons and cups are
 * counted as those of the US, which fit into one another; undefined where nothing certain is left.
 */
export function kitchenLeft(whole: Quantity, taken: Quantity): string | undefined {
  const { unit } = whole;
  const [from, less] = [totalOf(whole, 'us'), totalOf(taken, 'us')];
  const base = unit && baseOf(unit, 'us');
  if (unit === undefined || base === undefined || from === undefined || less === undefined) return undefined;
  const left = (from.low - less.low) / base;
  if (from.low !== from.high || less.low !== less.high || !(left > 0)) return undefined;
  return kitchenFigures(left, unit, 'us')
    .map((figure) => `${figure.text} ${figure.unit}`)
    .join(' + ');
}
