/**
 * Knows every unit of the notation: how it may be spelled, what it measures and how much of the base unit it holds.
 * Refuses to know foods: turning a volume into grams is `food/`'s business.
 */

export type Dimension = 'mass' | 'volume' | 'length' | 'temperature' | 'time' | 'share';

/** What a cup, pint or spoon holds depends on the house. */
export type Measures = 'us' | 'metric' | 'imperial';

export type UnitSymbol =
  | 'mg'
  | 'g'
  | 'kg'
  | 'oz'
  | 'lb'
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
  | 'wineglass'
  | 'gill'
  | 'teacup'
  | 'cup'
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
  /** Its own name is read in the list alone: in a step it is a thing to pour into. */
  readonly vessel?: true;
  /** How much of the base unit (g, ml, mm, s) one of it is, by house; absent for temperatures and shares. */
  readonly base?: number | Readonly<Record<Measures, number>>;
  readonly source?: string;
}

const NIST = 'NIST SP 811 (2008), appendix B; NIST HB 44, appendix C';
const UK = 'UK Weights and Measures Act 1985, schedule 1: gallon 4.54609 l';
const METRIC = 'metric kitchen measures: 5, 15, 250 ml (from memory)';
const OLD_BOOKS = 'as cookery books of 1860 to 1920 count it (from memory)';
const PRACTICE = 'common practice, no source';

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

  { symbol: 'drop', dimension: 'volume', base: 0.05, spellings: ['drops'], source: PRACTICE },
  { symbol: 'dash', dimension: 'volume', base: US_TSP / 8, spellings: ['dashes'], source: PRACTICE },
  { symbol: 'pinch', dimension: 'volume', base: US_TSP / 16, spellings: ['pinches'], source: PRACTICE },
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
    base: { us: US_TSP / 4, metric: 1.25, imperial: 1.25 },
    spellings: ['saltspoons'],
    printed: ['saltspoonful', 'saltspoonfuls', 'saltspoonsful', 'salt-spoonful', 'salt-spoonfuls'],
    source: `a quarter of a teaspoon, ${OLD_BOOKS}`,
  },
  {
    symbol: 'tsp',
    dimension: 'volume',
    base: { us: US_TSP, metric: 5, imperial: 5 },
    spellings: ['tsps', 'teaspoon', 'teaspoons'],
    printed: [
      't',
      'ts',
      'tspn',
      'tspns',
      'teasp',
      'teasps',
      'teaspoonful',
      'teaspoonfuls',
      'teaspoonsful',
      'tea-spoonful',
      'tea-spoonfuls',
    ],
    source: `${NIST}; ${METRIC}`,
  },
  {
    symbol: 'dessertspoon',
    dimension: 'volume',
    base: { us: 2 * US_TSP, metric: 10, imperial: 10 },
    spellings: ['dessertspoons'],
    printed: [
      'dsp',
      'dsps',
      'dstsp',
      'dessertspoonful',
      'dessertspoonfuls',
      'dessertspoonsful',
      'dessert-spoonful',
      'dessert-spoonfuls',
    ],
    source: `two teaspoons, ${OLD_BOOKS}`,
  },
  {
    symbol: 'tbsp',
    dimension: 'volume',
    base: { us: 14.78676478125, metric: 15, imperial: 15 },
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
      'table-spoonful',
      'table-spoonfuls',
    ],
    source: `${NIST}; ${METRIC}`,
  },
  {
    symbol: 'wineglass',
    dimension: 'volume',
    base: { us: 59.147059125, metric: 59.147059125, imperial: 56.826125 },
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
    source: `2 fl oz, ${OLD_BOOKS}`,
  },
  {
    symbol: 'gill',
    dimension: 'volume',
    base: { us: 118.29411825, metric: 118.29411825, imperial: 142.0653125 },
    spellings: ['gills'],
    source: `a quarter of a pint: ${NIST}; ${UK}`,
  },
  {
    symbol: 'teacup',
    dimension: 'volume',
    base: { us: 118.29411825, metric: 118.29411825, imperial: 142.0653125 },
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
    source: `a gill, ${OLD_BOOKS}`,
  },
  {
    symbol: 'cup',
    dimension: 'volume',
    base: { us: 236.5882365, metric: 250, imperial: 284.130625 },
    spellings: ['cups'],
    printed: ['c', 'C', 'cupful', 'cupfuls', 'cupsful'],
    source: `${NIST}; ${METRIC}; imperial: 10 fl oz, the old UK cup (from memory)`,
  },
  {
    symbol: 'fl oz',
    dimension: 'volume',
    base: { us: 29.5735295625, metric: 29.5735295625, imperial: 28.4130625 },
    spellings: ['fluid ounce', 'fluid ounces', 'fl. oz', 'fl oz.'],
    printed: ['floz'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'pint',
    dimension: 'volume',
    base: { us: 473.176473, metric: 473.176473, imperial: 568.26125 },
    spellings: ['pints', 'pt'],
    printed: ['pts'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'quart',
    dimension: 'volume',
    base: { us: 946.352946, metric: 946.352946, imperial: 1136.5225 },
    spellings: ['quarts', 'qt'],
    printed: ['qts'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'gallon',
    dimension: 'volume',
    base: { us: 3785.411784, metric: 3785.411784, imperial: 4546.09 },
    spellings: ['gallons', 'gal'],
    printed: ['gals'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'peck',
    dimension: 'volume',
    base: { us: 8809.76754172, metric: 8809.76754172, imperial: 9092.18 },
    spellings: ['pecks'],
    source: `${NIST}: the dry peck; ${UK}, two gallons`,
  },
  {
    symbol: 'bushel',
    dimension: 'volume',
    base: { us: 35239.07016688, metric: 35239.07016688, imperial: 36368.72 },
    spellings: ['bushels'],
    printed: ['bu'],
    source: `${NIST}: the dry bushel; ${UK}, eight gallons`,
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
  { symbol: 'F', dimension: 'temperature', spellings: ['fahrenheit'] },
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
  return typeof base === 'object' ? base[measures] : base;
}
