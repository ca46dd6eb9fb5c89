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
  | 'ml'
  | 'cl'
  | 'dl'
  | 'l'
  | 'tsp'
  | 'tbsp'
  | 'cup'
  | 'fl oz'
  | 'pint'
  | 'quart'
  | 'gallon'
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
  /** How much of the base unit (g, ml, mm, s) one of it is, by house; absent for temperatures and shares. */
  readonly base?: number | Readonly<Record<Measures, number>>;
  readonly source?: string;
}

const NIST = 'NIST SP 811 (2008), appendix B; NIST HB 44, appendix C';
const UK = 'UK Weights and Measures Act 1985, schedule 1: gallon 4.54609 l';
const METRIC = 'metric kitchen measures: 5, 15, 250 ml (from memory)';
const PRACTICE = 'common practice, no source';

const US_TSP = 4.92892159375;

/** One row a unit. Volumes in ml, masses in g, lengths in mm, times in s. */
export const UNITS: readonly Unit[] = [
  { symbol: 'mg', dimension: 'mass', base: 0.001, spellings: ['milligram', 'milligrams'], source: 'SI' },
  { symbol: 'g', dimension: 'mass', base: 1, spellings: ['gram', 'grams', 'gramme', 'grammes'], source: 'SI' },
  { symbol: 'kg', dimension: 'mass', base: 1000, spellings: ['kilogram', 'kilograms', 'kilo', 'kilos'], source: 'SI' },
  { symbol: 'oz', dimension: 'mass', base: 28.349523125, spellings: ['ounce', 'ounces'], source: NIST },
  { symbol: 'lb', dimension: 'mass', base: 453.59237, spellings: ['lbs', 'pound', 'pounds'], source: NIST },

  { symbol: 'drop', dimension: 'volume', base: 0.05, spellings: ['drops'], source: PRACTICE },
  { symbol: 'dash', dimension: 'volume', base: US_TSP / 8, spellings: ['dashes'], source: PRACTICE },
  { symbol: 'pinch', dimension: 'volume', base: US_TSP / 16, spellings: ['pinches'], source: PRACTICE },
  {
    symbol: 'ml',
    dimension: 'volume',
    base: 1,
    spellings: ['millilitre', 'millilitres', 'milliliter', 'milliliters'],
    source: 'SI',
  },
  {
    symbol: 'cl',
    dimension: 'volume',
    base: 10,
    spellings: ['centilitre', 'centilitres', 'centiliter', 'centiliters'],
    source: 'SI',
  },
  {
    symbol: 'dl',
    dimension: 'volume',
    base: 100,
    spellings: ['decilitre', 'decilitres', 'deciliter', 'deciliters'],
    source: 'SI',
  },
  { symbol: 'l', dimension: 'volume', base: 1000, spellings: ['litre', 'litres', 'liter', 'liters'], source: 'SI' },
  {
    symbol: 'tsp',
    dimension: 'volume',
    base: { us: US_TSP, metric: 5, imperial: 5 },
    spellings: ['tsps', 'teaspoon', 'teaspoons'],
    source: `${NIST}; ${METRIC}`,
  },
  {
    symbol: 'tbsp',
    dimension: 'volume',
    base: { us: 14.78676478125, metric: 15, imperial: 15 },
    spellings: ['tbsps', 'tbs', 'tablespoon', 'tablespoons'],
    source: `${NIST}; ${METRIC}`,
  },
  {
    symbol: 'cup',
    dimension: 'volume',
    base: { us: 236.5882365, metric: 250, imperial: 284.130625 },
    spellings: ['cups'],
    source: `${NIST}; ${METRIC}; imperial: 10 fl oz, the old UK cup (from memory)`,
  },
  {
    symbol: 'fl oz',
    dimension: 'volume',
    base: { us: 29.5735295625, metric: 29.5735295625, imperial: 28.4130625 },
    spellings: ['fluid ounce', 'fluid ounces', 'fl. oz', 'fl oz.'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'pint',
    dimension: 'volume',
    base: { us: 473.176473, metric: 473.176473, imperial: 568.26125 },
    spellings: ['pints', 'pt'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'quart',
    dimension: 'volume',
    base: { us: 946.352946, metric: 946.352946, imperial: 1136.5225 },
    spellings: ['quarts', 'qt'],
    source: `${NIST}; ${UK}`,
  },
  {
    symbol: 'gallon',
    dimension: 'volume',
    base: { us: 3785.411784, metric: 3785.411784, imperial: 4546.09 },
    spellings: ['gallons', 'gal'],
    source: `${NIST}; ${UK}`,
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
for (const unit of UNITS) {
  BY_SPELLING.set(unit.symbol, unit);
  for (const spelling of unit.spellings) BY_SPELLING.set(spelling, unit);
}

/** The unit a word spells, or undefined. Single letters keep their case (`C` is not `c`); longer words do not. */
export function unitSpelled(word: string): Unit | undefined {
  return BY_SPELLING.get(word) ?? (word.length > 1 ? BY_SPELLING.get(word.toLowerCase()) : undefined);
}

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
