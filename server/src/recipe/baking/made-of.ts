/** Knows what lies in the oven in sums: its mass, and what it is made of. Refuses to know its shape. */

import { likelyGrams } from '../../food/weigh.ts';
import type { Makeup } from '../../heat/substances.ts';
import { middle } from '../../measure/quantity.ts';
import type { Body } from '../journey/bodies.ts';
import { nameSpeaksOf } from '../journey/deeds.ts';
import { type Family, familiesIn } from '../list/families.ts';
import { isAside } from '../measures/contents.ts';
import type { Ingredient, PartHead, Recipe } from '../model.ts';

export interface Filling {
  /** `PART.INGREDIENT` */
  readonly ref: string;
  readonly ingredient: Ingredient;
  readonly grams: number;
  /** Of the part that it is listed in. */
  readonly head: PartHead;
}

export interface MadeOf {
  readonly fillings: readonly Filling[];
  readonly grams: number;
  readonly makeup: Makeup;
  /** Grams by family. */
  readonly of: (family: Family) => number;
}

/** The most that may be of unknown composition. */
const UNKNOWN = 0.1;

/** Undefined where a weight is not known, or what too much of it is made of. */
export function madeOf({ parts }: Recipe, body: Body): MadeOf | undefined {
  const fillings: Filling[] = [];
  for (const { of, share } of body.members) {
    const head = parts[of.part]?.head;
    const ingredient = head?.ingredients[of.ingredient];
    if (head === undefined || ingredient === undefined || head.nominal) return undefined;
    // What it lay in is poured off.
    if (isAside(ingredient) || head.kind?.name === 'brine') continue;
    if (!ingredient.weighed.known) {
      if (ingredient.free) continue;
      return undefined;
    }
    fillings.push({
      ref: `${of.part}.${of.ingredient}`,
      head,
      ingredient,
      grams: likelyGrams(ingredient.weighed) * middle(share),
    });
  }
  return sumOf(fillings);
}

function sumOf(fillings: readonly Filling[]): MadeOf | undefined {
  const grams = fillings.reduce((sum, each) => sum + each.grams, 0);
  const makeup = grams > 0 ? makeupOf(fillings, grams) : undefined;
  if (makeup === undefined) return undefined;
  return {
    fillings,
    grams,
    makeup,
    of: (family) =>
      fillings.reduce((sum, { ingredient, grams: own }) => (familiesIn(ingredient).has(family) ? sum + own : sum), 0),
  };
}

/** What lies under or around the rest: bought, by its name; made, by its part's kind or name. */
export const isPastry = ({ ingredient: { name }, head }: Filling): boolean =>
  nameSpeaksOf(name, 'pastry') ||
  PASTRIES.has(head.kind?.name ?? '') ||
  nameSpeaksOf(head.name, 'pastry', 'case', 'bottom');
const PASTRIES: ReadonlySet<string> = new Set(['shortcrust', 'sweet paste', 'puff pastry']);

export const withoutPastry = ({ fillings }: MadeOf): MadeOf | undefined =>
  sumOf(fillings.filter((each) => !isPastry(each)));

/** Raw beef of 10 % fat (USDA SR26, NDB 23562): what flesh of no known make-up is taken for. */
const FLESH: Makeup = { water: 0.69, protein: 0.2, fat: 0.1, carbohydrate: 0, ash: 0.01 };
const isFlesh = ({ ingredient, grams }: Filling): boolean => grams < LITTLE_G || familiesIn(ingredient).has('flesh');
const LITTLE_G = 30;

const COMPONENTS = ['water', 'protein', 'fat', 'carbohydrate', 'ash'] as const;

function makeupOf(fillings: readonly Filling[], grams: number): Makeup | undefined {
  const sums = { water: 0, protein: 0, fat: 0, carbohydrate: 0, ash: 0 };
  let known = 0;
  for (const { ingredient, grams: own } of fillings) {
    const per100 = ingredient.food?.per100;
    if (per100?.water === undefined) continue;
    let all = 0;
    for (const each of COMPONENTS) all += per100[each] ?? 0;
    if (all <= 0) continue;
    known += own;
    for (const each of COMPONENTS) sums[each] += (own * (per100[each] ?? 0)) / all;
  }
  // Flesh differs little.
  if (known < grams * (1 - UNKNOWN)) return fillings.every(isFlesh) ? FLESH : undefined;
  for (const each of COMPONENTS) sums[each] /= known;
  return sums;
}
