/**
 * Knows the units of mass, in grams.
 */

import type { Unit } from '../unit-row.ts';
import { NIST } from './sources.ts';

export const WEIGHTS: readonly Unit[] = [
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
];
