/**
 * Knows how a food block of the house becomes a food of the book: by what it is like, and what it says of itself.
 * Refuses to use a block that contradicts itself.
 */
import type { Range } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { allergensOf, sortsAmong } from './allergens.ts';
import {
  bookIdOf,
  type Composition,
  type Food,
  type HouseComponent,
  type HouseFood,
  type HouseholdMeasure,
  type PieceWeight,
} from './food.ts';
import { keyOf } from './names.ts';
import { HOUSE_SOURCE } from './weighed.ts';

export type HouseReading =
  | { readonly food: Food; readonly remarks: readonly string[] }
  | { readonly food?: undefined; readonly remarks: readonly string[] };

/** The foods that lie under a block. */
export interface Below {
  /** What these words name. */
  find(words: string): Food | undefined;
  /** The food of exactly this name. */
  named(name: string): Food | undefined;
}

/** The food of a block, completed by what it is like; without one, the remarks say why. */
export function readHouseFood(block: HouseFood, below: Below): HouseReading {
  const base = block.like === undefined ? known(block, below) : below.find(block.like);
  if (block.like !== undefined && base === undefined) return { remarks: [`no food is called ${block.like}`] };
  // By the name that the book gives it, it is the known food in all its names; by another it is one more.
  const same = base !== undefined && keyOf(base.name) === keyOf(block.name) ? base : undefined;
  const remarks: string[] = [];
  const per100 = compositionOf(block.composition, base?.per100);
  remarks.push(...contradictions(per100));
  if (block.trimShare !== undefined && !(block.trimShare >= 0 && block.trimShare < 1))
    remarks.push('trim is a share below 100 %');
  const measures: HouseholdMeasure[] = [];
  const pieces: PieceWeight[] = [];
  for (const { of, grams } of block.measures) {
    const weight = gramsOfOne(of, grams);
    if (weight === undefined) {
      remarks.push('a measure is an amount, `=` and a weight: `1 cup = 120 g`');
    } else if (of.unit === undefined) {
      pieces.push({
        ...(of.count === undefined ? {} : { word: of.count }),
        ...(of.size === undefined ? {} : { size: of.size }),
        grams: weight,
        source: HOUSE_SOURCE,
      });
    } else if (dimensionOf(of.unit) === 'volume') {
      measures.push({ unit: of.unit, grams: weight, source: HOUSE_SOURCE });
    } else {
      remarks.push(`${of.unit} needs no measure of the house`);
    }
  }
  if (remarks.length > 0) return { remarks };
  const { allergens, unknown } = allergensIn(block, base, below);
  return {
    food: {
      id: same?.id ?? `house-${idOf(block.name)}`,
      name: block.name,
      names: same === undefined ? block.also : [...block.also, same.name, ...same.names],
      house: true,
      ...(base !== undefined && { like: bookIdOf(base) }),
      class: base?.class ?? 'other',
      roles: base?.roles ?? [],
      per100,
      measures: [...measures, ...(base?.measures ?? []).filter(keepsForm(measures))],
      pieces: [
        ...pieces,
        ...(base?.pieces ?? []).filter(
          (piece) => !pieces.some((own) => own.word === piece.word && own.size === piece.size),
        ),
      ],
      allergens,
      source: base === undefined ? HOUSE_SOURCE : `${HOUSE_SOURCE}; else ${base.source}`,
      ...trimOf(block, base),
    },
    remarks: unknown.map((word) => `${word} is no allergen that labels must name`),
  };
}

/**
 * The known food of its name; where it has none of its own, the one that all its other names are names of, so that no price takes
 * a food out of what a page contains.
 */
function known({ name, also }: HouseFood, below: Below): Food | undefined {
  const own = below.named(name);
  if (own !== undefined) return own;
  const [other, ...more] = new Set(also.flatMap((word) => below.named(word) ?? []));
  return more.length === 0 ? other : undefined;
}

/**
 * Those of what it is like and those it says; of a word that the law does not have, those of the food it names. `contains nothing`
 * clears what it is like.
 */
function allergensIn(
  { contains }: HouseFood,
  like: Food | undefined,
  below: Below,
): { readonly allergens: Food['allergens']; readonly unknown: readonly string[] } {
  const { us, eu, unknown, nothing } = allergensOf(contains);
  const base = nothing ? undefined : like;
  const foods = unknown.map((word) => below.find(word));
  const of = (side: 'us' | 'eu', said: readonly string[]): readonly string[] =>
    [base, ...foods].reduce((all, food) => union(food?.allergens[side], all), said);
  const unsaid = base === undefined ? contains.length === 0 : base.allergens.unsaid === true && contains.length === 0;
  return {
    allergens: {
      us: of('us', us),
      eu: of('eu', eu),
      ...sortsAmong([...contains, ...(base?.allergens.sorts ?? [])]),
      ...((unsaid || foods.includes(undefined)) && { unsaid: true }),
      // A house that says what it contains has read the label.
      ...(contains.length === 0 && base?.allergens.label !== undefined && { label: base.allergens.label }),
    },
    unknown: unknown.filter((_, at) => (foods[at]?.allergens.eu.length ?? 0) === 0),
  };
}

const FIELDS: Readonly<Record<HouseComponent, keyof Composition>> = {
  water: 'water',
  fat: 'fat',
  protein: 'protein',
  carbohydrate: 'carbohydrate',
  sugar: 'sugars',
  starch: 'starch',
  fibre: 'fibre',
  salt: 'sodium',
  ash: 'ash',
  alcohol: 'alcohol',
};
/** What is no longer known once the house says something else of the whole. */
const PARTS_OF: Readonly<Partial<Record<HouseComponent, readonly (keyof Composition)[]>>> = {
  fat: ['saturates'],
  sugar: ['sucrose', 'lactose', 'glucose', 'fructose'],
  carbohydrate: ['sugars', 'starch', 'sucrose', 'lactose', 'glucose', 'fructose'],
};
/** mg of sodium in 1 g of salt: salt is sodium × 2.5. */
const SODIUM_PER_SALT = 400;

function compositionOf(said: HouseFood['composition'], base: Composition = {}): Composition {
  const per100: { -readonly [key in keyof Composition]: number } = { ...base };
  const components = Object.entries(said) as [HouseComponent, number][];
  for (const [component, share] of components) {
    if (base[FIELDS[component]] === share) continue;
    for (const part of PARTS_OF[component] ?? []) delete per100[part];
  }
  for (const [component, share] of components)
    per100[FIELDS[component]] = component === 'salt' ? share * SODIUM_PER_SALT : share;
  return per100;
}

function contradictions(per100: Composition): string[] {
  const { water = 0, protein = 0, fat = 0, carbohydrate = 0, ash = 0, alcohol = 0, sugars = 0, starch = 0 } = per100;
  const sum = water + protein + fat + carbohydrate + ash + alcohol;
  const found: string[] = [];
  if (Object.values(per100).some((share) => !(share >= 0))) found.push('a share is below nothing');
  if (sum > 103) found.push(`its parts add up to ${Math.round(sum)} g in 100 g`);
  if (per100.carbohydrate !== undefined && sugars + starch > carbohydrate + 1)
    found.push('it has more sugar and starch than carbohydrate');
  return found;
}

function gramsOfOne(
  of: HouseFood['measures'][number]['of'],
  grams: HouseFood['measures'][number]['grams'],
): Range | undefined {
  if (grams.unit === undefined || dimensionOf(grams.unit) !== 'mass' || !(of.low > 0) || !(grams.low > 0))
    return undefined;
  const base = baseOf(grams.unit, 'us') ?? Number.NaN;
  return { low: (grams.low * base) / of.high, high: (grams.high * base) / of.low };
}

/** The house's cup speaks for every spoon of the food as it comes; measures of a form stay. */
function keepsForm(own: readonly HouseholdMeasure[]): (measure: HouseholdMeasure) => boolean {
  return (measure) => own.length === 0 || measure.form !== undefined;
}

function trimOf(block: HouseFood, base: Food | undefined): Pick<Food, 'trim'> {
  if (block.trimShare !== undefined) return { trim: { share: block.trimShare, what: 'trim', source: HOUSE_SOURCE } };
  return base?.trim === undefined ? {} : { trim: base.trim };
}

function union(a: readonly string[] = [], b: readonly string[] = []): readonly string[] {
  return [...new Set([...a, ...b])];
}

function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
}
