/**
 * Knows the units of what is no amount of food: lengths in mm, times in s, temperatures, shares.
 */

import type { Unit } from '../unit-row.ts';
import { NIST } from './sources.ts';

export const SCALES: readonly Unit[] = [
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
  {
    symbol: 'm',
    dimension: 'length',
    base: 1000,
    spellings: [],
    printed: ['metre', 'metres', 'meter', 'meters'],
    vessel: true,
    source: 'SI',
  },
  {
    symbol: 'ft',
    dimension: 'length',
    base: 304.8,
    spellings: [],
    printed: ['foot', 'feet'],
    vessel: true,
    source: NIST,
  },
  {
    symbol: 'yd',
    dimension: 'length',
    base: 914.4,
    spellings: [],
    printed: ['yard', 'yards', 'yds'],
    vessel: true,
    source: NIST,
  },

  { symbol: 'C', dimension: 'temperature', spellings: ['celsius', 'centigrade'] },
  { symbol: 'F', dimension: 'temperature', spellings: ['fahrenheit', 'fahr'] },
  { symbol: 'gas', dimension: 'temperature', spellings: [] },

  { symbol: 's', dimension: 'time', base: 1, spellings: ['sec', 'secs', 'second', 'seconds'], source: 'SI' },
  { symbol: 'min', dimension: 'time', base: 60, spellings: ['mins', 'minute', 'minutes'], source: 'SI' },
  { symbol: 'h', dimension: 'time', base: 3600, spellings: ['hr', 'hrs', 'hour', 'hours'], source: 'SI' },
  { symbol: 'd', dimension: 'time', base: 86400, spellings: ['day', 'days'], source: 'SI' },

  { symbol: '%', dimension: 'share', spellings: ['percent', 'per cent'] },
];
