/**
 * Knows how each ingredient of a recipe is cooked in the end, for what it then keeps of its minerals, salt and alcohol.
 * Refuses to guess where no step tells: such a thing keeps all.
 */
import { ALL_KEPT, alcoholLeft, type Kept, keptIn, type Way } from '../../food/retention.ts';
import type { FoodState } from '../journey/bodies.ts';
import { deed, does, isBaked } from '../journey/deeds.ts';
import { journeyOf } from '../journey/fold.ts';
import type { Ingredient, Part, Recipe } from '../model.ts';

export interface AsCooked {
  readonly way: Way;
  readonly kept: Kept;
  /** Share of its alcohol that is left. */
  readonly alcohol: number;
}

const RAW: AsCooked = { way: 'raw', kept: ALL_KEPT, alcohol: 1 };

/** By ingredient; of one that is cooked in several ways, the last that the steps tell of. */
export function cookedIn(recipe: Recipe): ReadonlyMap<Ingredient, AsCooked> {
  const found = new Map<Ingredient, AsCooked>();
  for (const { members } of journeyOf(recipe).bodies)
    for (const { of, state } of members) {
      const part = recipe.parts[of.part];
      const ingredient = part?.head.ingredients[of.ingredient];
      if (part === undefined || ingredient === undefined) continue;
      const way = wayOf(state, drainedIn(part).has(ingredient));
      const { food } = ingredient;
      found.set(
        ingredient,
        way === 'raw' || food === undefined
          ? RAW
          : {
              way,
              kept: keptIn(food, way),
              alcohol: Number.isFinite(state.heatedMin) ? alcoholLeft(state.heatedMin) : 1,
            },
      );
    }
  return found;
}

function wayOf({ cooked, heatedBy, boiledMin }: FoodState, isDrained: boolean): Way {
  const event = heatedBy?.event;
  if (cooked === 'raw' || event === undefined) return 'raw';
  const isWet = event.medium?.is === 'water' || boiledMin > 0;
  if (isWet && isDrained) return 'drained';
  if (isBaked(event)) return 'roasted';
  if (event.craft === 'fry' || event.craft === 'deep-fry' || event.medium?.is === 'fat' || event.medium?.is === 'metal')
    return 'fried';
  return 'pot';
}

/** What the steps that drain speak of, or the step before one that names nothing. */
function drainedIn({ index, head, steps }: Part): ReadonlySet<Ingredient> {
  const drained = new Set<Ingredient>();
  let last: readonly Ingredient[] = [];
  for (const step of steps) {
    const named = step.mentions
      .flatMap(({ ingredients }) => ingredients)
      .flatMap((ref) => (ref.part === index ? (head.ingredients[ref.ingredient] ?? []) : []));
    if (named.length > 0) last = named;
    if (does(step, DRAINED)) for (const each of last) drained.add(each);
  }
  return drained;
}

const DRAINED = deed(({ craft }) => craft === 'drain');
