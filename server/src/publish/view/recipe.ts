/**
 * Knows view 1, the recipe as a reader sees it.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';
import { checkWords, mark } from './marks.ts';

/** The content of `<section id="recipe">`. */
export const recipeView = ({ findings }: ViewFacts): string =>
  `<h2>Ingredients</h2>\n${findings.map(({ level, first }) => `<p>${mark(level, true)} ${checkWords(first)}</p>`).join('\n')}`;
