/**
 * Knows whether a part is an ice by its kind, and whether it is churned: one that is whipped first, or scraped as it freezes, keeps to other figures.
 */
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import type { Part } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';

/** Whether its kind is balanced by all its solids, as an ice is. */
export const isIce = ({ head }: ListedPart): boolean =>
  head.kind?.measures.some((m) => m.measure === 'total solids') === true;

/** Whether the steps whip it or scrape it, and none churns it. */
export function isFrozenStill(part: Part): boolean {
  return anyDoes(part.steps, WHIPPED) && !anyDoes(part.steps, CHURNED);
}

const WHIPPED = deed(({ craft }) => craft === 'whip' || craft === 'scrape');
const CHURNED = deed(({ craft }) => craft === 'churn');
