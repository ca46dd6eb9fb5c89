/**
 * Knows the litre and its parts, in ml.
 */
import type { Unit } from '../unit-row.ts';

export const LITRES: readonly Unit[] = [
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
];
