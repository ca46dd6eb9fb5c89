/**
 * Knows whether an ice is churned: one that is whipped first, or scraped as it freezes, keeps to other figures.
 */
import type { Part } from '../../recipe/recipe.ts';
import { anySays, matching } from '../../recipe/step-words.ts';

/** Whether the steps whip it or scrape it, and none churns it. */
export function isFrozenStill(part: Part): boolean {
  return anySays(part.steps, WHIPPED) && !anySays(part.steps, CHURNED);
}

const WHIPPED = matching(/^(?:whip|scrap|fork|rake)/);
const CHURNED = matching(/^churn/);
