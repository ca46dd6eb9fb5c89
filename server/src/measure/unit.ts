/**
 * Knows every unit of the notation by name and by spelling: what it measures and how much of the base unit it holds.
 * Refuses to know foods: turning a volume into grams is `food/`'s business.
 */
import type { Range } from './quantity.ts';
import { type MeasureSystem, type Measures, SYSTEMS } from './systems.ts';
import type { Dimension, Unit } from './unit-row.ts';
import type { UnitSymbol } from './unit-symbol.ts';
import { BY_HAND } from './units/by-hand.ts';
import { LITRES } from './units/litres.ts';
import { PINTS } from './units/pints.ts';
import { SCALES } from './units/scales.ts';
import { SPOONS_AND_CUPS } from './units/spoons-and-cups.ts';
import { WEIGHTS } from './units/weights.ts';

/** One row a unit. Volumes in ml, masses in g, lengths in mm, times in s. */
export const UNITS: readonly Unit[] = [...WEIGHTS, ...BY_HAND, ...LITRES, ...SPOONS_AND_CUPS, ...PINTS, ...SCALES];

const BY_SYMBOL = new Map(UNITS.map((u) => [u.symbol, u]));
const BY_SPELLING = new Map<string, Unit>();
const BY_PRINTED = new Map<string, Unit>();
for (const unit of UNITS) {
  for (const spelling of [unit.symbol, ...unit.spellings]) {
    BY_PRINTED.set(spelling, unit);
    if (unit.vessel === undefined) BY_SPELLING.set(spelling, unit);
  }
}
// What is printed goes before: a `C` of the list is a cup.
for (const unit of UNITS) for (const spelling of unit.printed ?? []) BY_PRINTED.set(spelling, unit);

/** The unit a word spells, or undefined. Single letters keep their case (`C` is not `c`); longer words do not. */
export const unitSpelled = (word: string): Unit | undefined => lookedUp(BY_SPELLING, word);

/** The same in the list of ingredients, as cooks print it: `T` is a tablespoon, `t` a teaspoon, `c` and `C` a cup. */
export const unitPrinted = (word: string): Unit | undefined => lookedUp(BY_PRINTED, word);

const lookedUp = (units: ReadonlyMap<string, Unit>, word: string): Unit | undefined =>
  units.get(word) ?? (word.length > 1 ? units.get(word.toLowerCase()) : undefined);

const FIRST_WORDS: ReadonlySet<string> = new Set(
  [...BY_PRINTED.keys()].flatMap((spelling) =>
    spelling.includes('-') ? [spelling.slice(0, spelling.indexOf('-'))] : [],
  ),
);

/** Whether the word is the first of a measure of two: `wine` of a `wine-glass`. Lower case. */
export const opensUnit = (word: string): boolean => FIRST_WORDS.has(word);

export function dimensionOf(symbol: UnitSymbol): Dimension {
  return unitOf(symbol).dimension;
}

export function unitOf(symbol: UnitSymbol): Unit {
  const unit = BY_SYMBOL.get(symbol);
  if (unit === undefined) throw new RangeError(`not a unit: ${symbol}`);
  return unit;
}

/** How many g, ml, mm or s one of the unit is in this house; undefined for temperatures and shares. */
export function baseOf(symbol: UnitSymbol, measures: Measures): number | undefined {
  const { base } = unitOf(symbol);
  if (typeof base !== 'object') return base;
  const system = systemOf(symbol, measures);
  return system && base[system];
}

/** Whose cup, pint or spoon the unit is in this house; undefined for what is the same everywhere. */
export function systemOf(symbol: UnitSymbol, measures: Measures): MeasureSystem | undefined {
  const { base } = unitOf(symbol);
  const systems: readonly MeasureSystem[] = SYSTEMS[measures];
  return typeof base === 'object' ? systems.find((system) => base[system] !== undefined) : undefined;
}

/** Where what it holds in this house is published. */
export function sourceOf(symbol: UnitSymbol, measures: Measures): string | undefined {
  const { source } = unitOf(symbol);
  const system = systemOf(symbol, measures);
  return typeof source === 'object' ? system && source[system] : source;
}

/** `US cup`, `imperial pint`, `ml`: the unit with the name of whose it is, where that differs. */
export function unitInFull(symbol: UnitSymbol, measures: Measures): string {
  const system = systemOf(symbol, measures);
  return system === undefined ? symbol : `${system} ${symbol}`;
}

/** How far one of the unit goes by hand and eye, as shares of its base; undefined for what a spoon, cup or scale measures. */
export const byHand = (symbol: UnitSymbol): Range | undefined => unitOf(symbol).byHand;
