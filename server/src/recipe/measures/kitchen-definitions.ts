/**
 * Knows what stands above the line, and what below, in the measures of savoury kinds, of pickles and of what is started with a culture.
 * Refuses to work them out, and to judge them. The others are in `definitions.ts`.
 */
import type { MeasureName } from './kind.ts';
import {
  addedSaltShare,
  crumbShare,
  cultureShare,
  curdlingAcid,
  dressedShare,
  dressingFat,
  fermentedLiquid,
  fermentingShare,
  mashedShare,
  meatShare,
  milkShare,
  produceShare,
  souringAcid,
  souringShare,
} from './kitchen-shares.ts';
import { liquidShare, sugarSolids, wholeShare } from './shares.ts';
import type { Ratio } from './worked-ratio.ts';

export const KITCHEN = {
  'acid share': {
    words: 'acid in the whole',
    unit: 'percent',
    top: souringAcid,
    bottom: wholeShare,
    per: 'mix',
    without: 'vinegar or sour juice',
  },
  'vinegar per produce': {
    words: 'vinegar and sour juice per vegetables and fruit',
    unit: 'percent',
    top: souringShare,
    bottom: produceShare,
    per: 'vegetables or fruit',
    without: 'vinegar or sour juice',
  },
  'sugar per produce': {
    words: 'sugar per vegetables and fruit',
    unit: 'percent',
    top: sugarSolids,
    bottom: produceShare,
    per: 'vegetables or fruit',
  },
  'fat per vegetable': {
    words: 'added fat per vegetables',
    unit: 'percent',
    top: dressingFat,
    bottom: dressedShare,
    per: 'vegetables',
  },
  'milk per potato': {
    words: 'milk per potatoes',
    unit: 'percent',
    top: milkShare,
    bottom: mashedShare,
    per: 'potatoes',
  },
  'crumbs per meat': {
    words: 'weight of crumbs per meat',
    unit: 'percent',
    top: crumbShare,
    bottom: meatShare,
    per: 'meat',
  },
  'mash salt': {
    words: 'salt of the chillies and the water',
    unit: 'percent',
    top: addedSaltShare,
    bottom: fermentingShare,
    per: 'mix',
  },
  'salt per water': {
    words: 'salt per water',
    unit: 'percent',
    top: addedSaltShare,
    bottom: liquidShare,
    per: 'water',
  },
  'culture per liquid': {
    words: 'culture per milk or tea',
    unit: 'percent',
    top: cultureShare,
    bottom: fermentedLiquid,
    per: 'milk or tea',
    without: 'culture',
  },
  'acid per milk': {
    words: 'acid per milk',
    unit: 'percent',
    top: curdlingAcid,
    bottom: milkShare,
    per: 'milk',
    without: 'acid',
  },
} satisfies Readonly<Partial<Record<MeasureName, Ratio>>>;
