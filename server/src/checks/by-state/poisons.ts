/**
 * Knows which foods that hold a poison of their own are eaten with it, by how long they boil, cook or lie in water.
 * Refuses to know which foods those are, and how many eat of them.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { type FoodState, isSameRef, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { type Toxin, toxinOf } from '../../recipe/list/toxins.ts';
import type { Ingredient, IngredientRef } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, membersIn } from './spoils.ts';
import { type Level, worse } from './verdict.ts';

export interface Poisoned {
  readonly level: Level;
  readonly of: IngredientRef;
  readonly ingredient: Ingredient;
  readonly toxin: Toxin;
  /** Grams of what is safe in some, that all who eat share. */
  readonly grams: number | undefined;
  /** Something is done to it, and not enough. */
  readonly short: boolean;
}

/** Hot enough for what boiling destroys, read in the food. */
const BOILS_C = 95;
/** So long in an oven, what lies in water boils (judgement). */
const OVEN_MIN = 60;
/** Less of it is a taste, or what another body was given. */
const SOME = 0.05;

const those = overPieces((lists, { bodies, folded: { part } }) => {
  const inBodies = bodies.flatMap((body) =>
    membersIn(lists, body).flatMap((held) => {
      const toxin = toxinOf(held.ingredient);
      const minutes = body.coldMin.high + body.warmMin.high;
      return toxin === undefined || held.member.share.high < SOME ? [] : [{ held, toxin, minutes }];
    }),
  );
  // What must never be eaten is not to be on the list.
  const onList = part.head.ingredients.flatMap((ingredient, at): readonly Poisoned[] => {
    const toxin = toxinOf(ingredient);
    const of = { part: part.index, ingredient: at };
    return toxin?.safe === 'never' ? [{ level: toxin.raw, of, ingredient, toxin, grams: undefined, short: false }] : [];
  });
  return [{ inBodies, onList }];
});

/** Each ingredient once, by its gravest portion. */
export const poisoned = onceFor((journey: Journey): readonly Poisoned[] => {
  const found: Poisoned[] = [];
  const add = (each: Poisoned): void => {
    const at = found.findIndex(({ of }) => isSameRef(of, each.of));
    const other = found[at];
    if (other === undefined) found.push(each);
    else if (worse(each.level, other.level) > 0) found[at] = each;
  };
  for (const { inBodies, onList } of those(journey)) {
    onList.forEach(add);
    for (const { held, toxin, minutes } of inBodies) {
      const judged = judge(journey, held, toxin, minutes);
      if (judged !== undefined) add(judged);
    }
  }
  return found;
});

function judge(journey: Journey, held: Held, toxin: Toxin, minutes: number): Poisoned | undefined {
  const { member, ingredient } = held;
  const { state, of } = member;
  if (ingredient.optional && toxin.raw !== 'error') return undefined;
  const isRaw = state.cooked === 'raw' || state.cooked === 'outside';
  const said = (level: Level, short: boolean, grams?: number): Poisoned => ({
    level: isRaw && (state.was & WAS.implied) !== 0 && level === 'error' ? 'warning' : level,
    of,
    ingredient,
    toxin,
    grams,
    short,
  });
  switch (toxin.safe) {
    case 'never':
      return undefined;
    case 'peel':
      return isPeeled(journey, of) ? undefined : said(toxin.raw, false);
    case 'leach':
      return minutes >= toxin.leastMin ? undefined : said(isRaw ? toxin.raw : toxin.short, !isRaw);
    case 'dose': {
      const { weighed } = ingredient;
      return weighed.known ? said(isRaw ? toxin.raw : toxin.short, !isRaw, likelyGrams(weighed)) : undefined;
    }
    case 'cook':
      if (isRaw) return said(toxin.raw, false);
      return state.heatedMin >= toxin.leastMin ? undefined : said(toxin.short, true);
    case 'boil':
      if (isRaw) return said(toxin.raw, false);
      if (!isBoiled(state, toxin.leastMin)) return said(toxin.short, true);
      return state.heatedMin >= toxin.wholeMin || (state.was & WAS.pressed) !== 0 ? undefined : said('warning', true);
  }
}

const isBoiled = ({ boiledMin, was, reads, heatedBy, heatedMin }: FoodState, leastMin: number): boolean =>
  boiledMin >= leastMin ||
  (was & WAS.pressed) !== 0 ||
  reads.some(({ of, celsius }) => of === 'food' && celsius.low >= BOILS_C) ||
  (heatedMin >= OVEN_MIN && heatedBy?.event.where.some(({ is, not }) => is === 'oven' && !not) === true);

/** A step peels it, or what no step names. */
const isPeeled = ({ steps }: Journey, of: IngredientRef): boolean =>
  steps.some(({ events }) =>
    events.some(
      ({ event, names }) =>
        event.craft === 'peel' &&
        event.said === 'yes' &&
        (names.length === 0 || names.some(({ mention }) => mention.ingredients.some((ref) => isSameRef(ref, of)))),
    ),
  );
