/**
 * Knows the day of one recipe counted back from an hour, with the ovens of its house and one pair of hands; the last one asked for is kept.
 * Refuses to know who shows it.
 */
import { keptOn } from '../notation/kept.ts';
import type { Recipe } from '../recipe/model.ts';
import { readClock } from '../recipe/plan/clock-text.ts';
import { type Plan, planOf } from '../recipe/plan/plan.ts';
import { EVERYDAY } from '../recipe/plan/task.ts';
import { minuteOf } from './clock.ts';
import { ovenNames, type PlanFacts, planFacts } from './plan-facts.ts';
import { sayOwnLine } from './report.ts';

/** When a meal is eaten where nobody says (judgement). */
const USUAL_SERVE = '19:30';

export interface DayAsked {
  /** `19:30`; the usual hour where none can be read. */
  readonly serve: string | undefined;
  readonly sayLine?: (line: number) => string;
  readonly ownLine?: (line: number) => number | undefined;
}

const LAST = keptOn<Recipe, { readonly serve: number; readonly plan: Plan }>();

export function recipeDay(
  recipe: Recipe,
  { serve: asked, sayLine = sayOwnLine, ownLine = itself }: DayAsked,
): PlanFacts {
  const serve = readClock(asked ?? USUAL_SERVE) ?? minuteOf(USUAL_SERVE);
  const ovens = ovenNames(recipe.world, undefined);
  const last = LAST.get(recipe);
  const plan = last?.serve === serve ? last.plan : planned(recipe, serve, ovens.length);
  LAST.set(recipe, { serve, plan });
  return planFacts(plan, [{ recipe, file: 'A recipe without a name', sayLine, ownLine, scales: 'written' }], {
    serve,
    date: null,
    ovens,
  });
}

const planned = (recipe: Recipe, serve: number, ovens: number): Plan =>
  planOf([{ recipe, given: new Map(), puts: true }], {
    ovens,
    pairsOfHands: 1,
    sharesOven: false,
    serve,
    awake: EVERYDAY,
  });

const itself = (line: number): number => line;
