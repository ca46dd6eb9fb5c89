/**
 * Knows what is usually left of a recipe that is mostly one food, by what its steps do with that: what boils in water grows, what is fried,
 * strained, dried or roasted shrinks (`data/cooking-yields.tsv`).
 * Refuses to know what the recipe says it makes.
 */
import text from '../../../data/cooking-yields.tsv';
import type { FoodClass } from '../../food/food.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { once } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn } from '../../measure/table-rows.ts';
import type { Event } from '../../prose/event.ts';
import { anyDoes, deed, isBaked, type Question } from '../../recipe/journey/deeds.ts';
import { isFamily, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';

export interface UsualYield {
  /** Grams. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

type Done = 'boiled' | 'deep-fried' | 'baked' | 'strained' | 'dried';

interface Row {
  readonly of: string;
  readonly needs: string;
  readonly done: Done;
  readonly times: Range;
  readonly source: string;
}

const ROWS = once((): readonly Row[] =>
  rowsIn(text).map(([of = '', needs = '', done = '', low, high, source = '']) => ({
    of,
    needs,
    done: done as Done,
    times: { low: Number(low), high: Number(high) },
    source,
  })),
);

/** It boils in water, or is steamed over it. */
const boils = ({ act, cooks, craft, medium }: Event): boolean =>
  act === 'heat' && medium?.is !== 'fat' && craft === undefined && (cooks === 'through' || cooks === 'as read');

const DONE: Readonly<Record<Done, Question>> = {
  boiled: deed((event) => boils(event) && !isBaked(event)),
  'deep-fried': deed(({ craft }) => craft === 'deep-fry'),
  baked: deed((event) => isBaked(event) && event.craft !== 'grill'),
  strained: deed(({ craft }) => craft === 'strain' || craft === 'drain' || craft === 'press'),
  dried: deed(({ act }) => act === 'dry'),
};
const DRAINED = deed(({ craft, act }) => craft === 'strain' || craft === 'drain' || act === 'discard');

/** Of all but water, fat, salt and spice, what a recipe is mostly made of. */
const MOSTLY = 0.85;
/** Water of what is dry, of its weight. */
const DRY = 20;

/** Of a recipe of one part; undefined where no row is of what it is made of and what is done. */
export const usualYield = onceFor((recipe: Recipe): UsualYield | undefined => {
  const [part, ...others] = recipe.parts;
  return part === undefined || others.length > 0 || !part.head.massG.complete ? undefined : yieldOf(part);
});

function yieldOf({ head: { ingredients }, steps }: Part): UsualYield | undefined {
  const solid = ingredients.filter((each) => !isBeside(each));
  const solidG = gramsOf(solid);
  for (const { of, needs, done, times, source } of ROWS()) {
    if (!anyDoes(steps, DONE[done])) continue;
    if (needs === 'sour' && !ingredients.some(isSour)) continue;
    const main = solid.filter((each) => isOf(each, of) && (needs !== 'dry' || isDry(each)));
    const mainG = gramsOf(main);
    if (mainG <= 0 || mainG < MOSTLY * solidG) continue;
    const isFried = done === 'deep-fried';
    // Water that is not poured off stays.
    const stays = ingredients.filter(
      (each) =>
        !main.includes(each) && !(isFried && isIn(each, 'fat')) && !(isIn(each, 'water') && goesAway(steps, done)),
    );
    return { low: mainG * times.low, high: mainG * times.high + gramsOf(stays), source };
  }
  return undefined;
}

/** The water that dry pulses, pasta and grain take up at the most, wherever they are boiled. */
export const drunkG = onceFor((recipe: Recipe): number =>
  recipe.parts.reduce((sum, { head, steps }) => sum + (anyDoes(steps, DONE.boiled) ? drunkOf(head.ingredients) : 0), 0),
);

const drunkOf = (list: readonly Ingredient[]): number =>
  ROWS()
    .filter(({ needs, done }) => needs === 'dry' && done === 'boiled')
    .reduce(
      (sum, { of, times }) => sum + gramsOf(list.filter((each) => isOf(each, of) && isDry(each))) * (times.high - 1),
      0,
    );

const goesAway = (steps: Part['steps'], done: Done): boolean => done !== 'boiled' || anyDoes(steps, DRAINED);

const gramsOf = (list: readonly Ingredient[]): number =>
  list.reduce((sum, { weighed }) => sum + (weighed.known ? likelyGrams(weighed) : 0), 0);

const BESIDE: ReadonlySet<FoodClass> = new Set(['water', 'fat', 'oil', 'salt', 'curing salt', 'spice', 'dried herb']);
function isBeside(ingredient: Ingredient): boolean {
  const kind = foodOf(ingredient)?.class;
  return kind !== undefined && BESIDE.has(kind);
}

const isOf = (ingredient: Ingredient, of: string): boolean =>
  isFamily(of) ? isIn(ingredient, of) : foodOf(ingredient)?.class === of;

const isDry = (ingredient: Ingredient): boolean => (foodOf(ingredient)?.per100.water ?? 100) < DRY;

const isSour = (ingredient: Ingredient): boolean =>
  isIn(ingredient, 'culture') || isIn(ingredient, 'vinegar') || isIn(ingredient, 'sour fruit');
