/**
 * Knows what stands above the line, and what below, in the measures of sweets, fillings, syrups, frying batters and of what is made of potato.
 * Refuses to work them out, and to judge them. The others are in `definitions.ts`.
 */
import type { MeasureName } from './kind.ts';
import { bakingSoda } from './leavening.ts';
import { flourLikeShare, grainShare, oilShare, preparedFruit, sugarSolids, thickenerShare } from './shares.ts';
import {
  addedFat,
  butterOrOil,
  juiceShare,
  nutShare,
  potatoShare,
  pouredShare,
  spiritShare,
  steepedIn,
  sweetenerShare,
  thinLiquid,
} from './sweet-shares.ts';
import type { Ratio } from './worked-ratio.ts';

export const SWEET = {
  'liquid per flour': {
    words: 'liquid and egg per flour',
    unit: 'percent',
    top: pouredShare,
    bottom: flourLikeShare,
    per: 'flour',
  },
  'sugar per juice': {
    words: 'sugar to sour juice',
    unit: 'times',
    top: sugarSolids,
    bottom: juiceShare,
    per: 'juice',
  },
  'sugar per liquid': {
    words: 'sugar to water and juice',
    unit: 'times',
    top: sugarSolids,
    bottom: steepedIn,
    per: 'water or juice',
  },
  'sugar per spirit': {
    words: 'sugar to spirit',
    unit: 'times',
    top: sugarSolids,
    bottom: spiritShare,
    per: 'spirit',
  },
  'sweetener per grain': {
    words: 'sugar and syrup to dry grain',
    unit: 'times',
    top: sweetenerShare,
    bottom: grainShare,
    per: 'dry grain',
  },
  'water per sugar': {
    words: 'liquid to sugar',
    unit: 'times',
    top: thinLiquid,
    bottom: sweetenerShare,
    per: 'sugar',
    without: 'liquid',
  },
  'fat per sugar': { words: 'fat per sugar', unit: 'percent', top: addedFat, bottom: sweetenerShare, per: 'sugar' },
  'butter per sugar': {
    words: 'butter and oil to sugar',
    unit: 'times',
    top: butterOrOil,
    bottom: sweetenerShare,
    per: 'sugar',
  },
  'oil per grain': {
    words: 'oil or butter per dry grain',
    unit: 'percent',
    top: oilShare,
    bottom: grainShare,
    per: 'dry grain',
  },
  'nuts per sugar': { words: 'nuts to sugar', unit: 'times', top: nutShare, bottom: sweetenerShare, per: 'sugar' },
  'soda per sugar': {
    words: 'baking soda per sugar',
    unit: 'percent',
    top: bakingSoda,
    bottom: sweetenerShare,
    per: 'sugar',
    without: 'baking soda',
  },
  'thickener per fruit': {
    words: 'thickener, as flour, per fruit',
    unit: 'percent',
    top: thickenerShare,
    bottom: preparedFruit,
    per: 'fruit',
    without: 'starch',
  },
  'flour per potato': {
    words: 'flour per potato',
    unit: 'percent',
    top: flourLikeShare,
    bottom: potatoShare,
    per: 'potato',
    without: 'flour',
  },
} satisfies Readonly<Partial<Record<MeasureName, Ratio>>>;
