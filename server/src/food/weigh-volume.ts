/**
 * Knows what a volume of a food weighs: by its own measures in the form that is asked for, by a cup of its class, by its density.
 * Refuses to know how full the measure is, and how many there are.
 */
import { writeFigure } from '../measure/figure.ts';
import { exactly, type Range, scaleRange } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, byHand, systemOf, unitInFull } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { type ClassWeight, classWeight } from './class-weights.ts';
import { DENSITY_SOURCE, densityOf } from './density.ts';
import type { Food, FoodClass, HouseholdMeasure, Weighed } from './food.ts';
import { HOUSE_SOURCE, known, spreadWords, unknown } from './weighed.ts';

/** Classes that fill a spoon the same way every time. */
export const FLOWING: ReadonlySet<FoodClass> = new Set<FoodClass>([
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

export function weighVolume(food: Food, unit: UnitSymbol, measures: Measures, form: string | undefined): Weighed {
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

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? Number.NaN) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}
