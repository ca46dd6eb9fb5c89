/**
 * Knows whether an ice is churned: one that is whipped first, or scraped as it freezes, keeps to other figures.
 */
import type { Part } from '../../recipe/recipe.ts';

/** Whether the steps whip it or scrape it, and none churns it. */
export function isFrozenStill(part: Part): boolean {
  const says = (pattern: RegExp) =>
    part.steps.some((s) => s.sentence.items.some((i) => i.kind === 'word' && pattern.test(i.word)));
  return says(/^(?:whip|scrap|fork|rake)/) && !says(/^churn/);
}
