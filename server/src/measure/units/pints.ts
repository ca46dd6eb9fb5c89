/**
 * Knows the fluid ounce, the pint and what is counted in pints, by whose they are, in ml.
 */

import type { Unit } from '../unit-row.ts';
import { NIST, UK } from './sources.ts';

export const PINTS: readonly Unit[] = [
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
];
