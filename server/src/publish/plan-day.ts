/**
 * Knows the day of one recipe counted back from an hour, with the ovens of its house and one pair of hands; the last one asked for is kept.
 * Refuses to know who shows it.
 */
import { keptOn } from '../notation/kept.ts';
import type { Recipe } from '../recipe/model.ts';
import { readClock } from '../recipe/plan/clock-text.ts';
import { planOf } from '../recipe/plan/plan.ts';
import { EVERYDAY } from '../recipe/plan/task.ts';
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

const LAST = keptOn<Recipe, { readonly serve: number; readonly facts: PlanFacts }>();

export function recipeDay(
  recipe: Recipe,
  { serve: asked, sayLine = sayOwnLine, ownLine = itself }: DayAsked,
): PlanFacts {
  const serve = readClock(asked ?? USUAL_SERVE) ?? readClock(USUAL_SERVE) ?? 0;
  const last = LAST.get(recipe);
  if (last?.serve === serve) return last.facts;
  const ovens = ovenNames(recipe.world, undefined);
  const plan = planOf([{ recipe, given: new Map(), puts: true }], {
    ovens: ovens.length,
    pairsOfHands: 1,
    sharesOven: false,
    serve,
    awake: EVERYDAY,
  });
  const facts = planFacts(plan, [{ recipe, file: 'A recipe without a name', sayLine, ownLine }], {
    serve,
    date: null,
    ovens,
  });
  LAST.set(recipe, { serve, facts });
  return facts;
}

const itself = (line: number): number => line;
