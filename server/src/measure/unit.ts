/**
 * Knows every unit of the notation: how it may be spelled, what it measures and how much of the base unit it holds.
 * Refuses to know foods: turning a volume into grams is `food/`'s business.
 */

import type { Range } from './quantity.ts';

export type Dimension = 'mass' | 'volume' | 'length' | 'temperature' | 'time' | 'share';

/** Whose cup, pint or spoon it is. */
export type MeasureSystem = 'US' | 'metric' | 'imperial' | 'Australian';

/** The systems a house measures by: of each unit it takes the first that has one. Where a cup is metric, a pint is imperial. */
const SYSTEMS = {
  us: ['US'],
  metric: ['metric', 'imperial'],
  british: ['metric', 'imperial'],
  australian: ['Australian', 'metric', 'imperial'],
  canadian: ['metric', 'imperial'],
  imperial: ['imperial', 'metric'],
} as const satisfies Readonly<Record<string, readonly MeasureSystem[]>>;

/** What a cup, pint or spoon holds depends on the house. */
export type Measures = keyof typeof SYSTEMS;

/** Every house there is, the default first. */
export const MEASURES_CHOICES = Object.keys(SYSTEMS) as readonly Measures[];

export type UnitSymbol =
  | 'mg'
  | 'g'
  | 'kg'
  | 'oz'
  | 'lb'
  | 'stone'
  | 'drop'
  | 'dash'
  | 'pinch'
  | 'saltspoon'
  | 'ml'
  | 'cl'
  | 'dl'
  | 'l'
  | 'tsp'
  | 'dessertspoon'
  | 'tbsp'
  | 'glug'
  | 'splash'
  | 'drizzle'
  | 'squeeze'
  | 'dollop'
  | 'shot'
  | 'pony'
  | 'jigger'
  | 'basting-spoon'
  | 'wineglass'
  | 'gill'
  | 'teacup'
  | 'coffee-cup'
  | 'ladle'
  | 'cup'
  | 'breakfast-cup'
  | 'tumbler'
  | 'mug'
  | 'fl oz'
  | 'pint'
  | 'quart'
  | 'gallon'
  | 'peck'
  | 'bushel'
  | 'mm'
  | 'cm'
  | 'in'
  | 'C'
  | 'F'
  | 'gas'
  | 's'
  | 'min'
  | 'h'
  | 'd'
  | '%';

export interface Unit {
  readonly symbol: UnitSymbol;
  readonly dimension: Dimension;
  /** Other ways to write it, lower case unless case matters (`C`, `F`). */
  readonly spellings: readonly string[];
  /** Ways to write it that only the list of ingredients reads, alike in case: `T`, `c`, `teaspoonful`. */
  readonly printed?: readonly string[];
  /** Its own name is read in the list alone: in a step it is a thing, to pour into or to take out. */
  readonly vessel?: true;
  /** A measure of older books: it is read, and offered to nobody who writes. */
  readonly old?: true;
  /** Nothing measures it but the hand and eye: how far one of it goes, as shares of its base. */
  readonly byHand?: Range;
  /** Its word orders something too: it opens a line of the list only before `of`. */
  readonly verb?: true;
  /** How much of the base unit (g, ml, mm, s) one of it is, by system where that differs; absent for temperatures and shares. */
  readonly base?: number | Readonly<Partial<Record<MeasureSystem, number>>>;
  /** Of the base; by system where that differs. */
  readonly source?: string | Readonly<Partial<Record<MeasureSystem, string>>>;
}

const NIST = 'NIST SP 811 (2008), appendix B; NIST HB 44, appendix C';
const UK =
  'UK Weights and Measures Act 1985, schedule 1, and Canadian Weights and Measures Act (R.S.C. 1985, c. W-6), schedule II: gallon 4.54609 l';
const METRIC =
  'metric kitchen measures: 5, 15, 250 ml; old British spoons, 14.2 or 17.8 ml by the table, are taken for such (from memory)';
const AUSTRALIA = 'New South Wales Health, conversion chart, for the cups and spoons of Standards Australia';
const OLD_BOOKS = 'as cookery books of 1860 to 1920 count it (from memory)';
const BAR = 'bar measures (from memory)';
const PRACTICE = 'common practice, no source';
const BETWEEN_FINGERS: Range = { low: 0.7, high: 1.3 };

const US_TSP = 4.92892159375;

/** One row a unit. Volumes in ml, masses in g, lengths in mm, times in s. */
export const UNITS: readonly Unit[] = [
  { symbol: 'mg', dimension: 'mass', base: 0.001, spellings: ['milligram', 'milligrams'], source: 'SI' },
  {
    symbol: 'g',
    dimension: 'mass',
    base: 1,
    spellings: ['gram', 'grams', 'gramme', 'grammes'],
    printed: ['G', 'gr', 'gm', 'gms', 'grs', 'grm', 'grms', 'gs'],
    source: 'SI',
  },
  {
    symbol: 'kg',
    dimension: 'mass',
    base: 1000,
    spellings: ['kilogram', 'kilograms', 'kilo', 'kilos'],
    printed: ['kgs', 'kgr', 'kgrs'],
    source: 'SI',
  },
  {
    symbol: 'oz',
    dimension: 'mass',
    base: 28.349523125,
    spellings: ['ounce', 'ounces'],
    printed: ['ozs'],
    source: NIST,
  },
  {
    symbol: 'lb',
    dimension: 'mass',
    base: 453.59237,
    spellings: ['lbs', 'pound', 'pounds'],
    printed: ['pd', 'pds'],
    source: NIST,
  },
  {
    symbol: 'stone',
    dimension: 'mass',
    base: 6350.29318,
    spellings: [],
    printed: ['stones'],
    vessel: true,
    old: true,
    source: 'UK Weights and Measures Act 1985, schedule 1: 14 lb of 453.59237 g',
  },

  {
    symbol: 'drop',
    dimension: 'volume',
    base: 0.05,
    spellings: ['drops'],
    byHand: BETWEEN_FINGERS,
    source: PRACTICE,
  },
  {
    symbol: 'dash',
    dimension: 'volume',
    base: US_TSP / 8,
    spellings: ['dashes'],
    byHand: BETWEEN_FINGERS,
    source: PRACTICE,
  },
  {
    symbol: 'pinch',
    dimension: 'volume',
    base: US_TSP / 16,
    spellings: ['pinches'],
    byHand: BETWEEN_FINGERS,
    source: PRACTICE,
  },
  {
    symbol: 'squeeze',
    dimension: 'volume',
    base: 5,
    spellings: [],
    printed: ['squeezes', 'squirt', 'squirts'],
    vessel: true,
    old: true,
    byHand: { low: 0.4, high: 2 },
    verb: true,
    source: PRACTICE,
  },
  {
    symbol: 'splash',
    dimension: 'volume',
    base: 7.5,
    spellings: [],
    printed: ['splashes'],
    vessel: true,
    old: true,
    byHand: { low: 0.4, high: 2 },
    verb: true,
    source: PRACTICE,
  },
  {
    symbol: 'drizzle',
    dimension: 'volume',
    base: 7.5,
    spellings: [],
    printed: ['drizzles'],
    vessel: true,
    old: true,
    byHand: { low: 0.4, high: 2 },
    verb: true,
    source: PRACTICE,
  },
  {
    symbol: 'glug',
    dimension: 'volume',
    base: 20,
    spellings: [],
    printed: ['glugs', 'slug', 'slugs'],
    vessel: true,
    old: true,
    byHand: { low: 0.5, high: 1.75 },
    source: PRACTICE,
  },
  {
    symbol: 'dollop',
    dimension: 'volume',
    base: 22,
    spellings: [],
    printed: ['dollops'],
    vessel: true,
    old: true,
    byHand: { low: 0.6, high: 1.6 },
    source: PRACTICE,
  },
  {
    symbol: 'shot',
    dimension: 'volume',
    base: 30,
    spellings: [],
    printed: ['shots', 'shot-glass', 'shot-glasses'],
    vessel: true,
    old: true,
    byHand: { low: 0.8, high: 1.5 },
    source: `25 ml to 1 1/2 fl oz, ${BAR}`,
  },
  {
    symbol: 'pony',
    dimension: 'volume',
    base: { US: 29.5735295625, imperial: 28.4130625 },
    spellings: [],
    printed: ['ponies', 'pony-glass'],
    vessel: true,
    old: true,
    source: `1 fl oz, ${BAR}`,
  },
  {
    symbol: 'jigger',
    dimension: 'volume',
    base: { US: 44.36029434375, imperial: 42.61959375 },
    spellings: [],
    printed: ['jiggers', 'jiggerful', 'jiggerfuls'],
    vessel: true,
    old: true,
    source: `1 1/2 fl oz, ${BAR}`,
  },
  {
    symbol: 'ml',
    dimension: 'volume',
    base: 1,
    spellings: ['millilitre', 'millilitres', 'milliliter', 'milliliters'],
    printed: ['mls', 'cc'],
    source: 'SI',
  },
  {
    symbol: 'cl',
    dimension: 'volume',
    base: 10,
    spellings: ['centilitre', 'centilitres', 'centiliter', 'centiliters'],
    printed: ['cls'],
    source: 'SI',
  },
  {
    symbol: 'dl',
    dimension: 'volume',
    base: 100,
    spellings: ['decilitre', 'decilitres', 'deciliter', 'deciliters'],
    printed: ['dls'],
    source: 'SI',
  },
  {
    symbol: 'l',
    dimension: 'volume',
    base: 1000,
    spellings: ['litre', 'litres', 'liter', 'liters'],
    printed: ['L', 'ltr', 'ltrs'],
    source: 'SI',
  },
  {
    symbol: 'saltspoon',
    dimension: 'volume',
    base: { US: US_TSP / 4, metric: 1.25 },
    spellings: ['saltspoons'],
    printed: [
      'saltspoonful',
      'saltspoonfuls',
      'saltspoonsful',
      'salt-spoon',
      'salt-spoons',
      'salt-spoonful',
      'salt-spoonfuls',
    ],
    old: true,
    source: `a quarter of a teaspoon, ${OLD_BOOKS}`,
  },
  {
    symbol: 'tsp',
    dimension: 'volume',
    base: { US: US_TSP, metric: 5 },
    spellings: ['tsps', 'teaspoon', 'teaspoons'],
    printed: [
      't',
      'ts',
      'tspn',
      'tspns',
      'teas',
      'teasp',
      'teasps',
      'teaspoonful',
      'teaspoonfuls',
      'teaspoonsful',
      'tea-spoon',
      'tea-spoons',
      'tea-spoonful',
      'tea-spoonfuls',
    ],
    source: { US: NIST, metric: METRIC },
  },
  {
    symbol: 'dessertspoon',
    dimension: 'volume',
    base: { US: 2 * US_TSP, metric: 10 },
    spellings: ['dessertspoons'],
    printed: [
      'dsp',
      'dsps',
      'dstsp',
      'dessertspoonful',
      'dessertspoonfuls',
      'dessertspoonsful',
      'dessert-spoon',
      'dessert-spoons',
      'dessert-spoonful',
      'dessert-spoonfuls',
    ],
    old: true,
    source: `two teaspoons, ${OLD_BOOKS}`,
  },
  {
    symbol: 'tbsp',
    dimension: 'volume',
    base: { US: 14.78676478125, metric: 15, Australian: 20 },
    spellings: ['tbsps', 'tbs', 'tablespoon', 'tablespoons'],
    printed: [
      'T',
      'Ts',
      'tb',
      'Tb',
      'tbl',
      'tbls',
      'tblsp',
      'tblsps',
      'tbspn',
      'tbspns',
      'tbsn',
      'tablesp',
      'tablespoonful',
      'tablespoonfuls',
      'tablespoonsful',
      'table-spoon',
      'table-spoons',
      'table-spoonful',
      'table-spoonfuls',
    ],
    source: { US: NIST, metric: METRIC, Australian: AUSTRALIA },
  },
  {
    symbol: 'basting-spoon',
    dimension: 'volume',
    base: 30,
    spellings: [],
    printed: ['basting-spoons', 'basting-spoonful', 'basting-spoonfuls', 'basting-spoonsful'],
    vessel: true,
    old: true,
    byHand: { low: 0.7, high: 2 },
    source: 'two tablespoons to a gill (from memory)',
  },
  {
    symbol: 'wineglass',
    dimension: 'volume',
    base: { US: 59.147059125, imperial: 56.826125 },
    spellings: [],
    printed: [
      'wineglasses',
      'wineglassful',
      'wineglassfuls',
      'wineglassesful',
      'wine-glass',
      'wine-glasses',
      'wine-glassful',
      'wine-glassfuls',
      'wine-glassesful',
    ],
    vessel: true,
    old: true,
    source: `2 fl oz, ${OLD_BOOKS}`,
  },
  {
    symbol: 'gill',
    dimension: 'volume',
    base: { US: 118.29411825, imperial: 142.0653125 },
    spellings: ['gills'],
    old: true,
    source: { US: NIST, imperial: UK },
  },
  {
    symbol: 'teacup',
    dimension: 'volume',
    base: { US: 118.29411825, imperial: 142.0653125 },
    spellings: [],
    printed: [
      'teacups',
      'teacupful',
      'teacupfuls',
      'teacupsful',
      'tea-cup',
      'tea-cups',
      'tea-cupful',
      'tea-cupfuls',
      'tea-cupsful',
    ],
    vessel: true,
    old: true,
    source: `a gill, ${OLD_BOOKS}`,
  },
  {
    symbol: 'coffee-cup',
    dimension: 'volume',
    base: { US: 236.5882365, imperial: 71.03265625 },
    spellings: [],
    printed: ['coffee-cups', 'coffee-cupful', 'coffee-cupfuls', 'coffee-cupsful', 'coffeecup', 'coffeecupful'],
    vessel: true,
    old: true,
    source: {
      US: 'two gills, as American household tables of about 1890 count it (from memory)',
      imperial: 'half a gill, after dinner (from memory)',
    },
  },
  {
    symbol: 'ladle',
    dimension: 'volume',
    base: 120,
    spellings: [],
    printed: ['ladles', 'ladleful', 'ladlefuls', 'ladlesful'],
    vessel: true,
    old: true,
    byHand: { low: 0.6, high: 1.4 },
    source: PRACTICE,
  },
  {
    symbol: 'cup',
    dimension: 'volume',
    base: { US: 236.5882365, metric: 250, imperial: 284.130625 },
    spellings: ['cups'],
    printed: [
      'c',
      'C',
      'cupful',
      'cupfuls',
      'cupsful',
      'kitchen-cup',
      'kitchen-cups',
      'measuring-cup',
      'measuring-cups',
    ],
    source: { US: NIST, metric: METRIC, imperial: '10 fl oz, the old cup of Britain (from memory)' },
  },
  {
    symbol: 'breakfast-cup',
    dimension: 'volume',
    base: { US: 236.5882365, imperial: 284.130625 },
    spellings: [],
    printed: [
      'breakfast-cups',
      'breakfast-cupful',
      'breakfast-cupfuls',
      'breakfast-cupsful',
      'breakfastcup',
      'breakfastcups',
      'breakfastcupful',
      'breakfastcupfuls',
      'breakfastcupsful',
    ],
    vessel: true,
    old: true,
    source: `half a pint, ${OLD_BOOKS}`,
  },
  {
    symbol: 'tumbler',
    dimension: 'volume',
    base: { US: 236.5882365, imperial: 284.130625 },
    spellings: [],
    printed: ['tumblers', 'tumblerful', 'tumblerfuls', 'tumblersful'],
    vessel: true,
    old: true,
    source: `half a pint, ${OLD_BOOKS}`,
  },
  {
    symbol: 'mug',
    dimension: 'volume',
    base: 300,
    spellings: [],
    printed: ['mugs', 'mugful', 'mugfuls', 'mugsful'],
    vessel: true,
    old: true,
    byHand: { low: 0.8, high: 1.2 },
    source: PRACTICE,
  },
  {
    symbol: 'fl oz',
    dimension: 'volume',
    base: { US: 29.5735295625, imperial: 28.4130625 },
    spellings: ['fluid ounce', 'fluid ounces', 'fl. oz', 'fl oz.'],
    printed: ['floz'],
    source: { US: NIST, imperial: UK },
  },
  {
    symbol: 'pint',
    dimension: 'volume',
    base: { US: 473.176473, imperial: 568.26125 },
    spellings: ['pints', 'pt'],
    printed: ['pts'],
    source: { US: NIST, imperial: UK },
  },
  {
    symbol: 'quart',
    dimension: 'volume',
    base: { US: 946.352946, imperial: 1136.5225 },
    spellings: ['quarts', 'qt'],
    printed: ['qts'],
    source: { US: NIST, imperial: UK },
  },
  {
    symbol: 'gallon',
    dimension: 'volume',
    base: { US: 3785.411784, imperial: 4546.09 },
    spellings: ['gallons', 'gal'],
    printed: ['gals'],
    source: { US: NIST, imperial: UK },
  },
  {
    symbol: 'peck',
    dimension: 'volume',
    base: { US: 8809.76754172, imperial: 9092.18 },
    spellings: ['pecks'],
    old: true,
    source: { US: `${NIST}: the dry peck`, imperial: `${UK}; two gallons` },
  },
  {
    symbol: 'bushel',
    dimension: 'volume',
    base: { US: 35239.07016688, imperial: 36368.72 },
    spellings: ['bushels'],
    printed: ['bu'],
    old: true,
    source: { US: `${NIST}: the dry bushel`, imperial: `${UK}; eight gallons` },
  },

  {
    symbol: 'mm',
    dimension: 'length',
    base: 1,
    spellings: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
    source: 'SI',
  },
  {
    symbol: 'cm',
    dimension: 'length',
    base: 10,
    spellings: ['centimetre', 'centimetres', 'centimeter', 'centimeters'],
    source: 'SI',
  },
  { symbol: 'in', dimension: 'length', base: 25.4, spellings: ['inch', 'inches'], source: NIST },

  { symbol: 'C', dimension: 'temperature', spellings: ['celsius', 'centigrade'] },
  { symbol: 'F', dimension: 'temperature', spellings: ['fahrenheit', 'fahr'] },
  { symbol: 'gas', dimension: 'temperature', spellings: [] },

  { symbol: 's', dimension: 'time', base: 1, spellings: ['sec', 'secs', 'second', 'seconds'], source: 'SI' },
  { symbol: 'min', dimension: 'time', base: 60, spellings: ['mins', 'minute', 'minutes'], source: 'SI' },
  { symbol: 'h', dimension: 'time', base: 3600, spellings: ['hr', 'hrs', 'hour', 'hours'], source: 'SI' },
  { symbol: 'd', dimension: 'time', base: 86400, spellings: ['day', 'days'], source: 'SI' },

  { symbol: '%', dimension: 'share', spellings: ['percent', 'per cent'] },
];

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
