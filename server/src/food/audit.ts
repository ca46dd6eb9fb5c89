/**
 * Knows what a cook reviewing the food tables would object to: names that clash, figures that cannot be, what is missing.
 * Refuses to mend any of it.
 */
import { baseOf } from '../measure/unit.ts';
import { allergensOf } from './allergens.ts';
import type { Composition, Food } from './food.ts';
import { keyOf } from './names.ts';
import { readAmbiguous, readFoods, readLabelled } from './tables.ts';

export interface FoodAudit {
  readonly foods: number;
  readonly names: number;
  readonly measures: number;
  readonly pieces: number;
  readonly trims: number;
  readonly ambiguousWords: number;
  /** Foods from USDA SR26, and from elsewhere. */
  readonly fromUsda: number;
  /** What cannot stand, one line each. */
  readonly objections: readonly string[];
  /** By class: how many foods, and in how many of them each component is missing. */
  readonly classes: readonly ClassCoverage[];
}

export interface ClassCoverage {
  readonly class: string;
  readonly foods: number;
  readonly unweighed: number;
  readonly missing: Readonly<Partial<Record<keyof Composition, number>>>;
}

const WATCHED = [
  'water',
  'protein',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'starch',
  'fibre',
  'ash',
  'sodium',
] as const satisfies readonly (keyof Composition)[];

/** The whole of the tables, examined. */
export function auditFoods(): FoodAudit {
  const foods = readFoods().map((row) => row.read());
  const ambiguous = readAmbiguous();
  return {
    foods: foods.length,
    names: foods.reduce((sum, food) => sum + 1 + food.names.length, 0),
    measures: foods.reduce((sum, food) => sum + food.measures.length, 0),
    pieces: foods.reduce((sum, food) => sum + food.pieces.length, 0),
    trims: foods.filter((food) => food.trim !== undefined).length,
    ambiguousWords: ambiguous.length,
    fromUsda: foods.filter((food) => food.source.startsWith('USDA')).length,
    objections: [...nameClashes(foods, ambiguous), ...labelFaults(foods), ...foods.flatMap(objectionsTo)],
    classes: coverageOf(foods),
  };
}

function nameClashes(foods: readonly Food[], ambiguous: ReturnType<typeof readAmbiguous>): string[] {
  const clashes: string[] = [];
  const owners = new Map<string, string>();
  const ids = new Set<string>();
  for (const food of foods) {
    if (ids.has(food.id)) clashes.push(`${food.id}: two foods have this id`);
    ids.add(food.id);
    for (const name of [food.name, ...food.names]) {
      const key = keyOf(name);
      const owner = owners.get(key);
      if (owner !== undefined && owner !== food.id) clashes.push(`${name}: names ${owner} and ${food.id}`);
      owners.set(key, food.id);
    }
  }
  for (const { word, ids: meant } of ambiguous) {
    const owner = owners.get(keyOf(word));
    if (owner !== undefined) clashes.push(`${word}: said to be ambiguous, and names ${owner}`);
    if (meant.length < 2) clashes.push(`${word}: ambiguous between fewer than two`);
    for (const id of meant) if (!ids.has(id)) clashes.push(`${word}: no food ${id}`);
  }
  return clashes;
}

/** Rows of what labels tell that are of no food, have no source, or say what no law names. */
function labelFaults(foods: readonly Food[]): string[] {
  const ids = new Set(foods.map(({ id }) => id));
  return readLabelled().flatMap(({ id, words, source }) => [
    ...(ids.has(id) ? [] : [`${id}: its label is told of, and it is no food`]),
    ...(source === '' ? [`${id}: no source for what its label may name`] : []),
    ...allergensOf(words).unknown.map((word) => `${id}: ${word} is no allergen that labels must name`),
  ]);
}

function objectionsTo(food: Food): string[] {
  const { per100 } = food;
  const found: string[] = [];
  const object = (words: string): void => void found.push(`${food.id}: ${words}`);
  if (food.source === '') object('no source');
  for (const [component, share] of Object.entries(per100)) {
    if (!(share >= 0)) object(`${component} ${share}`);
    if (component !== 'sodium' && share > 100.5) object(`${component} ${share} in 100`);
  }
  const sum = proximateSum(food);
  if (sum !== undefined && Math.abs(sum - 100) > 3 && food.note === undefined)
    object(`its parts add up to ${sum.toFixed(1)}`);
  const { carbohydrate, sugars, starch, fibre, fat, saturates } = per100;
  if (carbohydrate !== undefined) {
    if ((sugars ?? 0) + (starch ?? 0) > carbohydrate + 1.5) object('more sugars and starch than carbohydrate');
    if ((fibre ?? 0) > carbohydrate + 1.5) object('more fibre than carbohydrate');
  }
  if (fat !== undefined && (saturates ?? 0) > fat + 0.01) object('more saturates than fat');
  for (const { unit, form, grams, typical, source } of food.measures) {
    const perMl = grams.high / (baseOf(unit, 'us') ?? Number.NaN);
    const what = `1 ${unit}${form === undefined ? '' : ` ${form}`}`;
    if (!(grams.low > 0 && grams.high >= grams.low)) object(`${what}: ${grams.low} to ${grams.high}`);
    if (typical !== undefined && !(typical >= grams.low && typical <= grams.high))
      object(`${what}: ${typical} outside its range`);
    if (!(perMl > 0.01 && perMl < 1.7)) object(`${what}: ${perMl.toFixed(2)} g/ml`);
    if (source === '') object(`${what}: no source`);
  }
  for (const { grams, typical, source } of food.pieces) {
    if (!(grams.low > 0 && grams.high >= grams.low)) object(`a piece of ${grams.low} to ${grams.high}`);
    if (typical !== undefined && !(typical >= grams.low && typical <= grams.high))
      object(`a piece of ${typical} outside its range`);
    if (source === '') object('a piece without a source');
  }
  return found;
}

/** Water, protein, fat, carbohydrate, ash and alcohol, where all are known; of vinegar the acid too, which USDA leaves out. */
function proximateSum({ per100, class: foodClass }: Food): number | undefined {
  const { water, protein, fat, carbohydrate, ash, alcohol, acid } = per100;
  if (water === undefined || protein === undefined || fat === undefined) return undefined;
  if (carbohydrate === undefined || ash === undefined) return undefined;
  return water + protein + fat + carbohydrate + ash + (alcohol ?? 0) + (foodClass === 'vinegar' ? (acid ?? 0) : 0);
}

function coverageOf(foods: readonly Food[]): ClassCoverage[] {
  const classes = [...new Set(foods.map((food) => food.class))].sort();
  return classes.map((foodClass) => {
    const members = foods.filter((food) => food.class === foodClass);
    const missing: Partial<Record<keyof Composition, number>> = {};
    for (const component of WATCHED) {
      const without = members.filter((food) => food.per100[component] === undefined).length;
      if (without > 0) missing[component] = without;
    }
    const unweighed = members.filter((food) => food.measures.length === 0 && food.pieces.length === 0).length;
    return { class: foodClass, foods: members.length, unweighed, missing };
  });
}
