/**
 * Knows how an amount of a food becomes grams, how wide the answer is, and how to say why in one clause.
 * Refuses to invent: a measure that nobody has weighed has no grams.
 */

import type { Bias } from '../measure/bias.ts';
import { CAN_SOURCE } from '../measure/can-sizes.ts';
import { type CountWord, countedAlike, countWord, isPackage } from '../measure/count-words.ts';
import { writeFigure } from '../measure/figure.ts';
import { exactly, middle, type Quantity, type Range, type Size, scaleRange } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, byHand, dimensionOf, sourceOf, systemOf, unitInFull } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { type ClassWeight, classWeight } from './class-weights.ts';
import { DENSITY_SOURCE, densityOf } from './density.ts';
import { eggSize } from './egg-sizes.ts';
import type { Food, FoodClass, HouseholdMeasure, PieceWeight, Weighed, WeightReason } from './food.ts';
import { perCentimetre } from './shares.ts';

/** The source that marks a weight of the house's own. */
export const HOUSE_SOURCE = 'the house';

/** `about` in print: a tenth either way (common practice, no source). */
const ABOUT = 0.1;

/** What the quantity of the food weighs; `form` is the word that fits the measure (`chopped`, `packed`). */
export function weighFood(food: Food, quantity: Quantity, measures: Measures, form?: string): Weighed {
  const { low, high } = quantity;
  if (!(Number.isFinite(low) && Number.isFinite(high) && low >= 0 && high >= low))
    return unknown('the amount is not a number');
  const filled = fillOf(food, quantity);
  const one = weighOne(food, quantity, measures, form ?? filled?.form);
  if (!one.known) return one;
  const about = quantity.about ? ABOUT : 0;
  const fill = filled ?? LEVEL;
  const grams = {
    low: one.grams.low * low * (1 - about) * fill.low,
    high: one.grams.high * high * (1 + about) * fill.high,
  };
  const reason = fill.low === fill.high && !quantity.about ? one.reason : loosened(one.reason, fill, quantity.about);
  if (one.typical === undefined && fill.likely === 1) return { known: true, grams, reason };
  const typical = (likelyGrams(one) * fill.likely * (low + high)) / 2;
  const middle = (grams.low + grams.high) / 2;
  const apart = Math.abs(typical - middle) > 1e-9 * middle;
  return apart ? { known: true, grams, reason, typical } : { known: true, grams, reason };
}

type Fill = Pick<Bias, 'words' | 'low' | 'likely' | 'high'>;

/** The reason, with what widens it. */
function loosened(reason: WeightReason, fill: Fill, about: boolean): WeightReason {
  const why = [
    reason.words,
    ...(fill.low === fill.high ? [] : [`${fill.words[0]} is ${fill.low} to ${fill.high} of a level one`]),
    ...(about ? ['a tenth either way for about'] : []),
  ];
  return { ...reason, words: why.join('; ') };
}

const LEVEL: Fill = { words: [], low: 1, likely: 1, high: 1 };

/** How full the measure is said to be, where that means anything: nothing heaps that flows or is weighed. */
function fillOf(food: Food, { bias, unit }: Quantity): Bias | undefined {
  const heaps = unit !== undefined && dimensionOf(unit) === 'volume' && !FLOWING.has(food.class);
  return bias?.heaps && !heaps ? undefined : bias;
}

/** The likeliest single figure of a weight. */
export function likelyGrams(weighed: Extract<Weighed, { known: true }>): number {
  return weighed.typical ?? (weighed.grams.low + weighed.grams.high) / 2;
}

type Known = Extract<Weighed, { known: true }>;

const isLength = ({ unit }: Quantity): boolean => unit !== undefined && dimensionOf(unit) === 'length';

/** One of what the quantity counts; answered before for most lines of a folder. */
function weighOne(food: Food, quantity: Quantity, measures: Measures, form: string | undefined): Weighed {
  const { unit, size, each, count } = quantity;
  if (unit === undefined && each !== undefined) {
    // `8 6-inch tortillas`: where no length weighs anything, it tells of the piece.
    if (count !== undefined || !isLength(each) || perCentimetre(food) !== undefined)
      return weighPackage(food, count, each, measures, form);
  }
  if (unit !== undefined && dimensionOf(unit) === 'mass') return massOf(unit, measures);
  let ones = ONES.get(food);
  if (ones === undefined) {
    ones = [];
    ONES.set(food, ones);
  }
  for (const one of ones)
    if (one.unit === unit && one.form === form && one.count === count && one.size === size && one.measures === measures)
      return one.weighed;
  const weighed =
    unit === undefined ? weighPiece(food, quantity, measures, form) : weighUnit(food, unit, measures, form);
  if (ones.length >= MOST_ONES) ones.length = 0;
  ones.push({ unit, size, count, measures, form, weighed });
  return weighed;
}

/** What was asked of a food, and the answer. */
interface One {
  readonly unit: UnitSymbol | undefined;
  readonly size: Size | undefined;
  readonly count: CountWord | undefined;
  readonly measures: Measures;
  readonly form: string | undefined;
  readonly weighed: Weighed;
}

const ONES = new WeakMap<Food, One[]>();
const MOST_ONES = 30;

const MASSES = new Map<UnitSymbol, Weighed>();

/** A weight is the same of every food. */
function massOf(unit: UnitSymbol, measures: Measures): Weighed {
  let mass = MASSES.get(unit);
  if (mass === undefined) {
    const grams = exactly(baseOf(unit, measures) ?? Number.NaN);
    mass = known(grams, 'weight', 'a weight, as written', sourceOf(unit, measures) ?? 'SI');
    MASSES.set(unit, mass);
  }
  return mass;
}

function weighUnit(food: Food, unit: UnitSymbol, measures: Measures, form: string | undefined): Weighed {
  switch (dimensionOf(unit)) {
    case 'volume':
      return weighVolume(food, unit, measures, form);
    case 'share':
      return unknown('a percentage is of the flour in its part, not a weight of its own');
    case 'length':
      return weighLength(food, unit, measures);
    default:
      return unknown(`${unit} is not a measure of amount`);
  }
}

function weighPackage(
  food: Food,
  count: CountWord | undefined,
  each: Quantity,
  measures: Measures,
  form: string | undefined,
): Weighed {
  const inside = weighFood(food, each, measures, form);
  if (!inside.known) return inside;
  const holder = count ?? 'one';
  if (each.trade !== undefined) {
    const words = `a no. ${each.trade} ${holder} holds ${each.low} to ${each.high} oz, by what is put up in it`;
    return { ...inside, reason: { kind: 'package', words, source: CAN_SOURCE } };
  }
  return {
    ...inside,
    reason: {
      kind: 'package',
      words: `what the ${holder} holds: ${inside.reason.words}`,
      source: inside.reason.source,
    },
  };
}

// Volumes.

/** Classes that fill a spoon the same way every time. */
const FLOWING: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'oil',
  'milk',
  'cream',
  'water',
  'juice',
  'stock',
  'vinegar',
  'alcohol',
  'drink',
  'syrup',
  'sauce',
  'egg',
  'flavouring',
]);
/** How far a cup of anything else goes by cutting and filling, where no range is published (common practice, no source). */
const FILLING = 0.1;

function weighVolume(food: Food, unit: UnitSymbol, measures: Measures, form: string | undefined): Weighed {
  const ml = baseOf(unit, measures);
  if (ml === undefined) return unknown(`${unit} has no volume`);
  const broken = brokenUp(food, form);
  if (broken !== undefined) return byCup(food, unit, ml, measures, broken, form ?? '');
  const groups = measuresByForm(food, form);
  const chosen = groups.flatMap((group) => bestMeasure(group, ml, unit, measures));
  const [first] = chosen;
  if (first === undefined) return weighByClass(food, unit, ml, measures) ?? weighByDensity(food, unit, ml, measures);
  const perUnit = chosen.map(({ measure, measureMl }) => perUnitOf(food, measure, ml / measureMl));
  const spread = {
    low: Math.min(...perUnit.map((p) => p.grams.low)),
    high: Math.max(...perUnit.map((p) => p.grams.high)),
  };
  const grams = spreadBy(spread, handOf(unit));
  const typical = median(perUnit.map((p) => p.typical));
  const words = volumeWords(food, unit, first, measures, chosen.length > 1, { grams, typical });
  const kind = first.measure.source === HOUSE_SOURCE ? 'house' : 'measure';
  return { ...known(grams, kind, words, first.measure.source), typical };
}

interface Chosen {
  readonly measure: HouseholdMeasure;
  /** ml in one of the measure's unit. */
  readonly measureMl: number;
}

/** The measures of the form asked for or the nearest to it; of the food as it comes; else of every form, for the spread. */
function measuresByForm(food: Food, form: string | undefined): (readonly HouseholdMeasure[])[] {
  const of = (wanted: string | undefined): HouseholdMeasure[] =>
    food.measures.filter((measure) => measure.form === wanted);
  for (const wanted of form === undefined ? [] : [form, ...(LIKE_FORMS[form] ?? [])]) {
    const found = of(wanted);
    if (found.length > 0) return [found];
  }
  const plain = of(undefined);
  if (plain.length > 0) return [plain];
  const cut = food.measures.filter(({ form: made }) => made !== 'cooked');
  return [...new Set((cut.length > 0 ? cut : food.measures).map((measure) => measure.form))].map(of);
}

/** A cup of a food of the class that is broken up or cooked soft, where the food itself was not measured so: it packs as no piece does. */
function brokenUp(food: Food, form: string | undefined): ClassWeight | undefined {
  const as = form === undefined ? undefined : SOFT[form];
  if (as === undefined || food.measures.some((m) => m.form === form || (as === 'mashed' && SOFT[m.form ?? ''] === as)))
    return undefined;
  return classWeight(food, `cup ${as}`);
}

const SOFT: Readonly<Record<string, 'mashed' | 'cooked'>> = {
  mashed: 'mashed',
  pureed: 'mashed',
  crushed: 'mashed',
  cooked: 'cooked',
};

/** Forms that lie in a cup much alike, nearest first (common practice, no source). */
const LIKE_FORMS: Readonly<Record<string, readonly string[]>> = {
  diced: ['cubed', 'chopped', 'pieces', 'sliced'],
  cubed: ['diced', 'chopped', 'pieces', 'sliced'],
  chopped: ['diced', 'cubed', 'pieces', 'sliced'],
  minced: ['chopped', 'diced', 'grated'],
  crushed: ['ground', 'crumbled', 'chopped', 'mashed'],
  sliced: ['chopped', 'halved', 'pieces'],
  julienned: ['shredded', 'grated', 'sliced'],
  spiralized: ['sliced'],
  grated: ['shredded', 'chopped'],
  shredded: ['grated', 'chopped', 'sliced'],
  halved: ['pieces', 'sliced', 'chopped'],
  quartered: ['pieces', 'chopped', 'halved', 'sliced'],
  torn: ['loose', 'chopped', 'shredded', 'leaves'],
  pureed: ['mashed'],
  mashed: ['pureed'],
  flaked: ['crumbled', 'chopped'],
  crumbled: ['crushed', 'grated', 'chopped'],
  slivered: ['sliced', 'chopped'],
};

/** Measured by the spoon; of anything else the biggest measure tells most, as a published spoon is rounded. */
const SPOONS: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['tsp', 'tbsp', 'pinch', 'dash', 'drop']);

/** The measure in the unit itself; else of a spoon the nearest in size, of anything bigger the biggest. */
function bestMeasure(group: readonly HouseholdMeasure[], ml: number, unit: UnitSymbol, measures: Measures): Chosen[] {
  let best: (Chosen & { readonly away: number }) | undefined;
  for (const measure of group) {
    // The book's measures are US customary; the house's own are in the house's cup.
    const measureMl = baseOf(measure.unit, measure.source === HOUSE_SOURCE ? measures : 'us');
    if (measureMl === undefined) continue;
    const away = SPOONS.has(unit) ? Math.abs(Math.log(ml / measureMl)) : 1000 - measureMl;
    const rank = measure.unit === unit ? Number.NEGATIVE_INFINITY : away;
    if (best === undefined || rank < best.away) best = { measure, measureMl, away: rank };
  }
  return best === undefined ? [] : [best];
}

function perUnitOf(
  food: Food,
  measure: HouseholdMeasure,
  times: number,
): { readonly grams: Range; readonly typical: number } {
  const { low, high } = measure.grams;
  const typical = measure.typical ?? (low + high) / 2;
  const spread = low === high && !FLOWING.has(food.class) && measure.source !== HOUSE_SOURCE ? FILLING : 0;
  return { grams: scaleRange({ low: low * (1 - spread), high: high * (1 + spread) }, times), typical: typical * times };
}

function volumeWords(
  food: Food,
  unit: UnitSymbol,
  { measure }: Chosen,
  measures: Measures,
  manyForms: boolean,
  { grams, typical }: { readonly grams: Range; readonly typical: number },
): string {
  const spread = spreadWords(grams, typical);
  const why = manyForms
    ? ' by how it is cut'
    : measure.form === undefined && spread !== ''
      ? ' by how it is filled'
      : '';
  const what = measure.form === undefined || manyForms ? food.name : `${food.name}, ${measure.form},`;
  const self = `1 ${unitInFull(unit, measures)} of ${what} weighs ${writeFigure(typical)} g${spread === '' ? '' : ` (${spread}${why})`}`;
  const house = measure.source === HOUSE_SOURCE ? measures : 'us';
  const sameSize = baseOf(unit, measures) === baseOf(measure.unit, house);
  if (measure.unit === unit && sameSize) return self;
  return `${self}, from 1 ${unitInFull(measure.unit, house)} = ${writeFigure(measure.typical ?? (measure.grams.low + measure.grams.high) / 2)} g`;
}

/** How far one of the unit goes where nothing but the hand measures it. */
const handOf = (unit: UnitSymbol): Range => byHand(unit) ?? BY_MEASURE;
const BY_MEASURE: Range = exactly(1);

const spreadBy = (grams: Range, by: Range): Range => ({ low: grams.low * by.low, high: grams.high * by.high });

/** By a cup of its class. */
function weighByClass(food: Food, unit: UnitSymbol, ml: number, measures: Measures): Weighed | undefined {
  const cup = classWeight(food, 'cup');
  return cup && byCup(food, unit, ml, measures, cup, 'cut up');
}

function byCup(food: Food, unit: UnitSymbol, ml: number, measures: Measures, cup: ClassWeight, how: string): Weighed {
  const times = ml / (baseOf('cup', 'us') ?? Number.NaN);
  const grams = spreadBy(scaleRange(cup.grams, times), handOf(unit));
  const typical = cup.typical * times;
  const spread = spreadWords(grams, typical);
  const words = `1 ${unitInFull(unit, measures)} of ${food.name}, ${how}, weighs ${writeFigure(typical)} g (${spread} by how it is filled)`;
  return { ...known(grams, 'measure', words, cup.source), typical };
}

function weighByDensity(food: Food, unit: UnitSymbol, ml: number, measures: Measures): Weighed {
  const density = densityOf(food);
  if (density === undefined) return unknown(`nobody has weighed a ${unit} of ${food.name}: write a weight`);
  const whose = systemOf(unit, measures) === undefined ? '' : `1 ${unitInFull(unit, measures)} is `;
  const hand = handOf(unit);
  const by = hand === BY_MEASURE ? '' : ` (${writeFigure(ml * hand.low)} to ${writeFigure(ml * hand.high)} ml by hand)`;
  const words = `${whose}${writeFigure(ml)} ml${by} at ${density.toFixed(2)} g/ml`;
  const grams = spreadBy({ low: ml * density * 0.97, high: ml * density * 1.03 }, hand);
  return { ...known(grams, 'density', words, DENSITY_SOURCE), typical: ml * density };
}

/** `1 inch of ginger`. */
function weighLength(food: Food, unit: UnitSymbol, measures: Measures): Weighed {
  const per = perCentimetre(food);
  const mm = baseOf(unit, measures);
  if (per === undefined || mm === undefined) return unknown(`${unit} is not a measure of amount`);
  const grams = scaleRange(per.range, mm / 10);
  const typical = (per.typical * mm) / 10;
  const words = `1 ${unitInFull(unit, measures)} of ${food.name} weighs ${writeFigure(typical)} g (${spreadWords(grams, typical)} by how thick it is)`;
  return { ...known(grams, 'piece', words, per.source), typical };
}

// Pieces.

/** How far pieces of one size go where no range is published (common practice, no source). */
const GROWING = 0.15;
const GROWN: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'vegetable',
  'fruit',
  'mushroom',
  'leafy herb',
  'poultry',
  'meat',
  'fish',
  'shellfish',
  'nut',
  'dried fruit',
]);

const PRACTICE = 'common practice, no source';
function weighPiece(food: Food, quantity: Quantity, measures: Measures, form: string | undefined): Weighed {
  const word = quantity.count ?? (form === undefined ? undefined : countedBy(food, form));
  const egg = word === undefined ? eggSize(food, quantity.size, measures) : undefined;
  if (egg !== undefined) {
    const words = pieceWords(food, undefined, egg.size, egg.grams, middle(egg.grams));
    return known(egg.grams, 'size', words, egg.source);
  }
  for (const asked of word === undefined ? [undefined] : [word, ...countedAlike(word)]) {
    const pieces = food.pieces.filter((piece) => piece.word === asked);
    if (pieces.length > 0) return weighSized(food, word ?? asked, pieces, quantity.size);
  }
  const common = word === undefined ? undefined : classWeight(food, word);
  if (common !== undefined) {
    const { grams, typical, source } = common;
    return { ...known(grams, 'piece', pieceWords(food, word, undefined, grams, typical), source), typical };
  }
  if (word !== undefined && isPackage(word))
    return unknown(`a ${word} has no fixed size: write \`1 ${word} of 400 g\``);
  return unknown(
    word === undefined
      ? `nobody has weighed one ${food.name}: write a weight`
      : `nobody has weighed a ${word} of ${food.name}: write a weight`,
  );
}

function countedBy(food: Food, form: string): CountWord | undefined {
  const word = countWord(form);
  return word !== undefined && food.pieces.some((piece) => piece.word === word) ? word : undefined;
}

function weighSized(
  food: Food,
  word: CountWord | undefined,
  pieces: readonly PieceWeight[],
  size: Size | undefined,
): Weighed {
  const kind = size === undefined ? 'piece' : 'size';
  const exact = pieces.find((piece) => piece.size === size);
  if (exact !== undefined) return pieceWeight(food, word, size, exact, pieceRange(food, exact), kind);
  if (size === undefined) {
    const usual = food.class === 'egg' ? 'large' : 'medium';
    const piece = pieces.find((p) => p.size === usual) ?? pieces[0];
    if (piece === undefined) return unknown(`nobody has weighed one ${food.name}: write a weight`);
    if (food.class === 'egg') return pieceWeight(food, word, usual, piece, pieceRange(food, piece), 'size');
    const ends = pieces
      .filter((p) => p.size === 'small' || p.size === 'medium' || p.size === 'large')
      .map((p) => pieceRange(food, p));
    const range = ends.length > 1 ? spanOf(ends) : pieceRange(food, piece);
    return pieceWeight(food, word, piece.size, piece, range, 'size');
  }
  const plain =
    pieces.find((piece) => piece.size === undefined) ?? pieces.find((piece) => piece.size === 'medium') ?? pieces[0];
  if (plain === undefined) return unknown(`nobody has weighed a ${size} ${food.name}: write a weight`);
  const [low, typical, high] = SIZED[size];
  const grams = plain.typical ?? (plain.grams.low + plain.grams.high) / 2;
  const sized: PieceWeight = { ...plain, typical: grams * typical, source: `${plain.source}; by size (${PRACTICE})` };
  return pieceWeight(food, word, size, sized, { low: grams * low, high: grams * high }, 'size');
}

/** Low, typical and high of a size against the plain piece (common practice, no source). */
const SIZED: Readonly<Record<Size, readonly [number, number, number]>> = {
  small: [0.5, 0.7, 0.9],
  medium: [0.8, 1, 1.2],
  large: [1.1, 1.35, 1.7],
  'extra large': [1.3, 1.6, 2],
  jumbo: [1.4, 1.8, 2.4],
};

function pieceRange(food: Food, piece: PieceWeight): Range {
  const { low, high } = piece.grams;
  if (low !== high || piece.source === HOUSE_SOURCE || !GROWN.has(food.class)) return piece.grams;
  return { low: low * (1 - GROWING), high: high * (1 + GROWING) };
}

function pieceWeight(
  food: Food,
  word: CountWord | undefined,
  size: Size | undefined,
  piece: PieceWeight,
  grams: Range,
  kind: 'piece' | 'size',
): Weighed {
  const typical = piece.typical ?? (piece.grams.low + piece.grams.high) / 2;
  const house = piece.source === HOUSE_SOURCE;
  return {
    ...known(grams, house ? 'house' : kind, pieceWords(food, word, size, grams, typical), piece.source),
    typical,
  };
}

function pieceWords(
  food: Food,
  word: CountWord | undefined,
  size: Size | undefined,
  grams: Range,
  typical: number,
): string {
  const spread = spreadWords(grams, typical);
  const what = [size, word === undefined ? food.name : `${word} of ${food.name}`]
    .filter((part) => part !== undefined)
    .join(' ');
  return `1 ${what} weighs ${writeFigure(typical)} g${spread === '' ? '' : ` (${spread})`}`;
}

// Answers.

function known(grams: Range, kind: WeightReason['kind'], words: string, source: string): Known {
  return { known: true, grams, reason: { kind, words, source } };
}

function unknown(why: string): Weighed {
  return { known: false, why };
}

function spanOf(ranges: readonly Range[]): Range {
  return { low: Math.min(...ranges.map((r) => r.low)), high: Math.max(...ranges.map((r) => r.high)) };
}

function spreadWords({ low, high }: Range, typical: number): string {
  return high - low < 0.02 * typical ? '' : `${writeFigure(low)} to ${writeFigure(high)}`;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? Number.NaN) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}
