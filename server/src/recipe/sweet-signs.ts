/**
 * Knows what sets cakes of foam and oil, toppings, puddings, fritters, dumplings, gnocchi and sweets apart from their neighbours, beside their measures.
 * Refuses to judge them. Common practice, no source.
 */
import { deed } from './journey/deeds.ts';
import {
  BAKED,
  BEATEN,
  BOILED,
  CHURNED,
  COOKED,
  CREAMED,
  CUT,
  crafts,
  dairy,
  FLAT,
  FOLDED,
  gelatine,
  isRaised,
  isWhite,
  NO_SAUCE,
  ROLLED,
  RUBBED,
  type Seen,
  type Signs,
  STIRRED,
  sweet,
} from './kind-seen.ts';

const PRESSED = crafts('press');
const FRIED = crafts('deep-fry');
const STEAMED = { done: deed(({ medium }) => medium?.is === 'steam') };
/** Cooked in water or over it. */
const POACHED = {
  done: deed(({ act, medium }) => act === 'heat' && (medium?.is === 'water' || medium?.is === 'steam')),
};
const STEEPED = { done: deed(({ act }) => act === 'steep') };
/** It is itself heated to so much; no figure of an oven. */
const boiledTo = (least: number) => ({
  done: deed(
    ({ act, temperatures }) =>
      act === 'heat' && temperatures.some(({ of, celsius }) => of !== 'oven' && celsius.low >= least),
  ),
});
/** A syrup that is thick, and one that cracks when it is cold, °C. */
const THICK = boiledTo(106);
const CRACKS = boiledTo(140);
const WHIPPED = crafts('whip', 'beat', 'cream');

export const SWEET_SIGNS: readonly Signs[] = [
  {
    kind: 'angel food',
    says: [FOLDED],
    list: (s) => s.where(isWhite) > 0.3 && s.of('egg') - s.where(isWhite) < 0.01 && s.of('fat', 'oil') === 0,
  },
  {
    kind: 'chiffon',
    says: [FOLDED],
    list: (s) => s.of('oil') > 0.04 && s.of('egg') > 0.25,
  },
  {
    kind: 'oil cake',
    says: [BAKED],
    list: (s) =>
      s.of('oil') > 0.08 &&
      s.of('fat') === 0 &&
      s.of('leavening') > 0 &&
      s.between('sugar', 0.8, 1.7) &&
      s.between('fat', 0.35, 1.3) &&
      s.between('egg', 0.1, 0.8),
  },
  {
    kind: 'brownie',
    says: [BAKED],
    list: (s) =>
      s.of('chocolate') > 0.12 &&
      s.of('flour') > 0.04 &&
      s.of('flour') < 0.2 &&
      sweet(s) > 0.25 &&
      s.of('egg') > 0.08 &&
      s.of('leavening', 'milk', 'cream', 'dairy', 'water') < 0.01,
  },
  {
    kind: 'US biscuit',
    says: [CUT, BAKED],
    list: (s) => s.between('leavening', 0.081, 0.13) && s.under('sugar', 0.1) && s.of('egg') < 0.04,
  },
  {
    kind: 'steamed pudding',
    says: [STEAMED],
    silent: [BAKED],
    list: (s) => s.of('flour') > 0.2 && s.of('leavening') > 0 && sweet(s) > 0.08,
  },
  {
    kind: 'fritter batter',
    says: [FRIED],
    list: (s) =>
      s.of('flour', 'starch') > 0.2 &&
      s.of('flour', 'starch', 'milk', 'water', 'drink', 'alcohol', 'egg', 'leavening', 'salt', 'sugar') > 0.97,
  },
  {
    kind: 'crumble',
    says: [RUBBED],
    silent: [CUT, ROLLED, PRESSED, CREAMED],
    list: (s) =>
      !isRaised(s) &&
      s.of('flour') > 0.2 &&
      s.between('sugar', 0.3, 1.2) &&
      s.between('fat', 0.3, 1) &&
      s.of('flour', 'grain', 'sugar', 'fat', 'nut', 'spice', 'salt') > 0.98,
  },
  {
    kind: 'dumpling',
    says: [POACHED],
    silent: [BAKED, FLAT],
    list: (s) =>
      s.of('leavening') > 0 &&
      s.of('flour') > 0.4 &&
      s.under('sugar', 0.05) &&
      s.of('flour', 'fat', 'milk', 'water', 'egg', 'leavening', 'salt', 'leafy herb', 'dried herb') > 0.97,
  },
  {
    kind: 'gnocchi',
    says: [ROLLED],
    silent: [FLAT, BAKED],
    list: (s) =>
      s.of('vegetable') > 0.5 &&
      s.between('flour per potato', 0.12, 0.45) &&
      s.of('vegetable', 'flour', 'egg', 'salt', 'cheese', 'spice') > 0.97,
  },
  {
    kind: 'fruit curd',
    says: [STIRRED],
    silent: [NO_SAUCE],
    list: (s) =>
      s.of('egg') > 0.12 &&
      sweet(s) > 0.2 &&
      s.of('juice', 'fruit') > 0.08 &&
      s.of('fat') > 0.05 &&
      s.of('egg', 'sugar', 'juice', 'fruit', 'fat', 'flavouring', 'starch', 'salt') > 0.97,
  },
  {
    kind: 'starch pudding',
    says: [COOKED],
    silent: [NO_SAUCE, CHURNED],
    list: (s) =>
      dairy(s) > 0.6 && s.of('starch') > 0.02 && sweet(s) > 0.03 && s.of('egg') === 0 && s.of('gelling', 'fat') < 0.03,
  },
  {
    kind: 'fruit filling',
    silent: [CHURNED, BEATEN],
    list: (s) =>
      s.of('fruit') > 0.6 &&
      s.of('starch', 'flour') > 0.03 &&
      sweet(s) > 0.05 &&
      s.of('fruit', 'sugar', 'starch', 'flour', 'juice', 'spice', 'water', 'salt') > 0.97,
  },
  {
    kind: 'frosting',
    says: [WHIPPED],
    silent: [NO_SAUCE],
    list: (s) =>
      s.of('sugar') > 0.45 &&
      s.of('fat') > 0.15 &&
      s.of('sugar', 'fat', 'milk', 'cream', 'flavouring', 'salt', 'water', 'juice') > 0.98,
  },
  {
    kind: 'marshmallow',
    says: [BEATEN],
    list: (s) => gelatine(s) > 0.01 && sweet(s) > 0.45 && dairy(s) === 0,
  },
  {
    kind: 'brittle',
    says: [CRACKS],
    list: (s) => s.of('nut', 'seed') > 0.15 && sweet(s) > 0.35 && onlySweet(s),
  },
  {
    kind: 'granola',
    says: [BAKED],
    silent: [CUT, PRESSED],
    list: (s) =>
      s.of('grain') > 0.3 &&
      sweet(s) > 0.06 &&
      s.of('nut', 'seed') > 0.04 &&
      s.of('flour', 'egg', 'leavening', 'milk', 'cream', 'dairy') === 0,
  },
  {
    kind: 'syrup',
    says: [BOILED],
    silent: [CUT, THICK],
    list: (s) => sweet(s) > 0.25 && s.of('water') > 0.25 && sweet(s) + s.of('water') > 0.95,
  },
  {
    kind: 'infused spirit',
    says: [STEEPED],
    list: (s) =>
      s.of('alcohol') > 0.4 &&
      sweet(s) + s.of('fruit') > 0.05 &&
      s.of('alcohol', 'fruit', 'sugar', 'syrup', 'spice', 'water', 'nut', 'flavouring', 'juice') > 0.97,
  },
];

const onlySweet = (s: Seen): boolean =>
  sweet(s) + s.of('nut', 'seed', 'fat', 'water', 'salt', 'leavening', 'flavouring') > 0.97;
