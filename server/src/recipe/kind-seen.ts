/**
 * Knows what signs of a kind are made of: what a list holds, and what steps do.
 * Refuses to know the kinds: `kind-evidence.ts` and `sweet-signs.ts` have their rows.
 */
import type { FoodClass } from '../food/food.ts';
import type { Range } from '../measure/quantity.ts';
import type { Craft, Event } from '../prose/event.ts';
import type { Topic } from '../prose/topics.ts';
import { deed, type Question } from './journey/deeds.ts';
import { isGelatine } from './measures/gelling.ts';
import type { MeasureName } from './measures/kind.ts';
import { measure } from './measures/measures.ts';
import { isStarter, whiteShare, yolkShare } from './measures/shares.ts';
import type { Ingredient } from './model.ts';

/** A list as signs are looked for in it: shares of its weight, measures. */
export class Seen {
  private readonly list: readonly Ingredient[];
  private readonly total: number;
  private readonly classes = new Set<FoodClass>();
  private readonly hasFlour: boolean;

  constructor(list: readonly Ingredient[]) {
    this.list = list;
    let total = 0;
    let hasFlour = false;
    for (const i of list) {
      total += grams(i);
      if (i.food === undefined) continue;
      this.classes.add(i.food.class);
      hasFlour ||= i.food.class === 'flour' || i.food.class === 'starch' || isStarter(i.food);
    }
    this.total = total;
    this.hasFlour = hasFlour;
  }

  /** The classes' share of the weight. */
  of(...classes: FoodClass[]): number {
    if (!classes.some((c) => this.classes.has(c))) return 0;
    return this.where((i) => i.food !== undefined && classes.includes(i.food.class));
  }

  where(is: (i: Ingredient) => boolean): number {
    let sum = 0;
    for (const i of this.list) if (is(i)) sum += grams(i);
    return sum / this.total;
  }

  /** Whether the whole range of the measure lies between. */
  between(name: MeasureName, low: number, high: number): boolean {
    const value = this.measured(name);
    return value !== undefined && value.low >= low && value.high <= high;
  }

  /** The measure is not above; nothing of it is not above either. */
  under(name: MeasureName, high: number): boolean {
    const value = this.measured(name);
    return value === undefined || value.high <= high;
  }

  private measured(name: MeasureName): Range | undefined {
    // Without flour nothing is per flour.
    if (!this.hasFlour && PER_FLOUR.has(name)) return undefined;
    const worked = measure(name, this.list);
    return worked.known ? worked.value : undefined;
  }
}

const PER_FLOUR: ReadonlySet<MeasureName> = new Set(['fat', 'sugar', 'egg', 'leavening']);

/** What a sign looks for, in what the steps do and in what they and the part's name speak of. */
export interface Sign {
  readonly done?: Question;
  readonly topics?: readonly Topic[];
}
export const crafts = (...names: readonly Craft[]): Sign => ({
  done: deed(({ craft }) => craft !== undefined && names.includes(craft)),
});
const isOnStove = ({ act, cooks, craft }: Event): boolean => act === 'heat' && cooks !== 'barely' && craft !== 'bake';

export const NO_SAUCE = { done: deed(({ act, craft }) => craft === 'bake' || act === 'freeze') };
export const CRUST = { ...crafts('line'), topics: ['case'] } as const;
export const LOAF = { topics: ['loaf'] } as const;
export const PICKLED = {
  done: deed(
    ({ act, medium, vessel }) => act === 'put' || act === 'pack' || medium?.is === 'acid' || vessel?.is === 'jar',
  ),
};
export const RUBBED_OR_ROLLED = crafts('rub', 'roll', 'line');
export const COOKED = { done: deed((event) => isOnStove(event) || event.until.some(({ is }) => is === 'thick')) };
/** Boiled down: a chutney or a relish, and no pickle in its liquor. */
export const THICKENED = { done: deed(({ until }) => until.some(({ is }) => is === 'thick')) };
export const STIRRED = { done: deed(({ craft, until }) => craft === 'stir' || until.some(({ is }) => is === 'thick')) };
export const BEATEN = crafts('whip', 'beat');
export const BAKED = crafts('bake');
/** Water boils at it. */
const BOILING_C = 100;
export const BOILED = {
  done: deed(
    ({ act, cooks, temperatures }) =>
      cooks === 'through' ||
      (act === 'heat' && temperatures.some(({ of, celsius }) => of === 'food' && celsius.low >= BOILING_C)),
  ),
};
export const CHURNED = crafts('churn');
export const CREAMED = crafts('cream');
export const CUT = { done: deed(({ act }) => act === 'cut') };
export const FERMENTED = crafts('ferment');
export const FOLDED = crafts('fold');
export const ROLLED = crafts('roll');
export const RUBBED = crafts('rub');
export const FLAT = {
  done: deed(({ craft, medium }) => craft === 'fry' || craft === 'deep-fry' || medium?.is === 'metal'),
  topics: ['flat'],
} as const;

const grams = (i: Ingredient): number => (i.weighed.known ? (i.weighed.grams.low + i.weighed.grams.high) / 2 : 0);
export const isYolk = ({ food }: Ingredient): boolean => food !== undefined && yolkShare(food) === 1;
export const isWhite = ({ food }: Ingredient): boolean => food !== undefined && whiteShare(food) > 0;
export const isRaised = (s: Seen): boolean =>
  s.of('leavening', 'yeast') > 0 || s.where((i) => i.food !== undefined && isStarter(i.food)) > 0;
export const gelatine = (s: Seen): number => s.where((i) => i.food !== undefined && isGelatine(i.food));
export const dairy = (s: Seen): number => s.of('milk', 'cream', 'dairy');
export const sweet = (s: Seen): number => s.of('sugar', 'syrup');

/** What sets a kind apart from its neighbours, beside its measures. */
export interface Signs {
  readonly kind: string;
  /** What the steps and the part's name say, all of it. */
  readonly says?: readonly Sign[];
  /** What they do not say. */
  readonly silent?: readonly Sign[];
  readonly list: (list: Seen) => boolean;
}
