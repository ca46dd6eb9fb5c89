/**
 * Knows how an amount stands on a page in two ways: as the scale shows it, and as spoons and cups or pieces.
 * Refuses to invent a measure that nobody has weighed.
 */

import { FLESH, type FoodClass } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { numberText } from '../measure/kitchen.ts';
import { fractionSign, gramsText, trimmed } from '../measure/number-text.ts';
import { exactly } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { totalOf } from '../measure/total.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { amountAsWritten, equalOf } from '../notation/item-amounts.ts';
import type { IngredientNode, MeasuredNode } from '../notation/tree.ts';
import type { Ingredient, World } from '../recipe/model.ts';

/** What stands first on the page; the other follows in brackets. */
export type MeasuresOrder = 'weight-first' | 'measure-first';

export interface PageAmount {
  /** Empty where no amount is written. */
  readonly first: string;
  readonly second?: string;
  /** It is counted, and what it weighs only helps: it stands behind the name. */
  readonly counted?: true;
}

/** Foods that nobody spoons out. */
const NEVER_SPOONED: ReadonlySet<FoodClass> = new Set<FoodClass>([
  ...FLESH,
  'cured meat',
  'bread',
  'pasta',
  'curing salt',
  'egg',
]);

/** The amount of an ingredient, both ways where both are known. `line` is its line as written. */
export function pageAmount(ingredient: Ingredient, line: string, world: World, order: MeasuresOrder): PageAmount {
  const { amount } = ingredient.node;
  const equals = equalOf(ingredient.node);
  // `1 tsp salt, pepper`: the spoon is the salt's.
  if (amount === undefined || (ingredient.free && amount.kind === 'measured')) return { first: '' };
  if (amount.kind === 'free') return { first: line.slice(amount.start, amount.end).trim() };
  const written = withSize(prettyAmount(amount, line), ingredient.node, line);
  const unit = amount.unit?.symbol;
  const other = equals && prettyAmount(equals, line);
  // Pieces are bought and counted; their weight only helps.
  if (unit === undefined)
    return { ...both(written, other ?? weightOf(ingredient, amount), 'weight-first'), counted: true };
  if (unit === '%') return both(weightOf(ingredient, amount) ?? written, measureOf(ingredient, amount, world), order);
  if (isMetric(unit)) return both(written, other ?? measureOf(ingredient, amount, world), order);
  if (isSpooned(amount, world)) return both(written, other ?? weightOf(ingredient, amount), 'weight-first');
  return both(other ?? weightOf(ingredient, amount), written, order);
}

/** `1 large or 2 small` onions. */
function withSize(written: string, { beside = [] }: IngredientNode, line: string): string {
  const sizes = beside.flatMap(({ amount, means }) =>
    means === 'same' && amount.unit === undefined && amount.sized !== undefined ? [prettyAmount(amount, line)] : [],
  );
  return [written, ...sizes].join(' or ');
}

function both(weight: string | undefined, measure: string | undefined, order: MeasuresOrder): PageAmount {
  const [first, second] = order === 'weight-first' ? [weight, measure] : [measure, weight];
  if (first === undefined || second === undefined) return { first: first ?? second ?? '' };
  return first === second ? { first } : { first, second };
}

const isMetric = (unit: UnitSymbol): boolean => ['mg', 'g', 'kg', 'ml', 'cl', 'dl', 'l'].includes(unit);

/** A cook takes a spoon or a pinch to less than a quarter of a cup, whatever stands first: `1 pinch`, not 0.4 g. */
function isSpooned({ quantity }: MeasuredNode, { measures }: World): boolean {
  const total = totalOf(quantity, measures);
  return total?.dimension === 'volume' && total.high < (baseOf('cup', measures) ?? 0) / 4;
}

/** Grams as a reader weighs them: in fives from 100 g and in halves below 10, unless the writer's own figure is exact. */
function weightOf({ weighed }: Ingredient, amount: MeasuredNode): string | undefined {
  if (!weighed.known) return undefined;
  const grams = likelyGrams(weighed);
  const exact =
    weighed.reason.kind === 'weight' || weighed.reason.kind === 'house' || weighed.reason.kind === 'package';
  const shown = exact ? gramsText(grams) : aboutText(grams);
  const about = exact || amount.quantity.about ? '' : 'about ';
  return grams >= 10_000 ? `${about}${trimmed(grams / 1000, 2)} kg` : `${about}${shown} g`;
}

function aboutText(grams: number): string {
  const step = grams < 2 ? 0.1 : grams < 10 ? 0.5 : grams < 100 ? 1 : 5;
  return trimmed(Math.max(0.1, Math.round(grams / step) * step), 1);
}

/** The nearest spoons or cups, or pieces, of what is written by weight or in millilitres. */
function measureOf({ food, match, weighed }: Ingredient, amount: MeasuredNode, world: World): string | undefined {
  const { low, high, unit = 'g', upTo } = amount.quantity;
  if (low !== high || upTo !== undefined || food === undefined || NEVER_SPOONED.has(food.class)) return undefined;
  const form = match.kind === 'food' ? match.form : undefined;
  const cups =
    dimensionOf(unit) === 'volume'
      ? (totalOf(amount.quantity, world.measures)?.low ?? 0) / (baseOf('cup', world.measures) ?? 1)
      : perCup();
  if (cups === undefined || !(cups > 0)) return undefined;
  return spoonsOrCups(cups * (baseOf('cup', world.measures) ?? 1), world);

  function perCup(): number | undefined {
    if (food === undefined || !weighed.known) return undefined;
    const cup = world.book.weigh(food, { ...exactly(1), unit: 'cup', about: false }, world.measures, form);
    return cup.known ? likelyGrams(weighed) / likelyGrams(cup) : undefined;
  }
}

/** What a set of cups and spoons holds, the largest first, each in the parts that are sold; below a quarter cup, spoons. */
const LADDER = [
  { unit: 'cup', parts: [4, 3], least: 0.24, most: 100 },
  { unit: 'tbsp', parts: [2], least: 0.9, most: 8 },
  { unit: 'tsp', parts: [4], least: 0.2, most: 3 },
] as const;
/** Within this share a figure stands as it is; within the next, as `about`; beyond it another spoon is taken. */
const CLOSE = 0.04;
const FAIR = 0.12;

function spoonsOrCups(ml: number, { measures }: World): string | undefined {
  let fair: string | undefined;
  for (const { unit, parts, least, most } of LADDER) {
    const value = ml / (baseOf(unit, measures) ?? 1);
    if (value < least || value > most) continue;
    for (const part of parts) {
      const nearest = Math.max(1, Math.round(value * part)) / part;
      const off = Math.abs(nearest / value - 1);
      const text = `${numberText(nearest, 'glyph')} ${unitWord(unit, nearest)}`;
      if (off <= CLOSE) return text;
      if (off <= FAIR) fair ??= `about ${text}`;
    }
  }
  return cupAndSpoons(ml, measures) ?? fair;
}

/** `½ cup + 1½ tbsp`, with as few spoons as will do. */
function cupAndSpoons(ml: number, measures: Measures): string | undefined {
  const [cup = 1, tbsp = 1] = [baseOf('cup', measures), baseOf('tbsp', measures)];
  const cups = [3, 4].map((part) => Math.floor((ml / cup) * part) / part).filter((n) => n > 0);
  if (cups.length === 0) return undefined;
  const most = Math.max(...cups);
  const spoons = Math.round(((ml - most * cup) / tbsp) * 2) / 2;
  const off = Math.abs((most * cup + spoons * tbsp) / ml - 1);
  if (spoons <= 0 || off > CLOSE) return undefined;
  return `${numberText(most, 'glyph')} ${unitWord('cup', most)} + ${numberText(spoons, 'glyph')} tbsp`;
}

/** An amount as written, with real fractions and dashes, and the plural of cups. */
export function prettyAmount(amount: MeasuredNode, line: string): string {
  const text = prettyFigures(amountAsWritten(line, amount)).replace(/\s+/g, ' ').trim();
  const most = amount.quantity.high;
  return amount.unit?.symbol === undefined
    ? text
    : text.replace(/\b(cup|pint|quart|gallon|pinch|dash|drop)$/, (unit) => unitWord(unit as UnitSymbol, most));
}

/** `1 1/2` and `1-1/2` are `1½`, and `35-40` is `35–40`. */
export function prettyFigures(text: string): string {
  return text
    .replace(/(?<![\d/])(?:(\d+)[ -])?(\d)\/(\d)(?![\d/])/g, (all, whole: string | undefined, a: string, b: string) => {
      const glyph = fractionSign(`${a}/${b}`);
      return glyph === undefined ? all : `${whole ?? ''}${glyph}`;
    })
    .replace(/(\d|[½⅓⅔¼¾⅛⅜⅝⅞])\s?(?:-|–|\bto\b)\s?(?=\d|[½⅓⅔¼¾⅛⅜⅝⅞])/g, '$1–');
}

function unitWord(unit: UnitSymbol, value: number): string {
  if (value <= 1) return unit;
  switch (unit) {
    case 'pinch':
    case 'dash':
      return `${unit}es`;
    case 'cup':
    case 'pint':
    case 'quart':
    case 'gallon':
    case 'drop':
      return `${unit}s`;
    default:
      return unit;
  }
}
