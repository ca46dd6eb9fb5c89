/**
 * Knows the page as HTML: one view in its frame, or all views after one another.
 * Refuses to know what a view shows, and who shows the page.
 */
import { dayView } from './day.ts';
import type { ViewFacts } from './facts.ts';
import { formulaView } from './formula.ts';
import { framed } from './frame.ts';
import { labelView } from './label.ts';
import { VIEWS, type ViewName } from './look.ts';
import { madeOfView } from './made-of.ts';
import { layoutOf } from './margin.ts';
import { recipeView } from './recipe.ts';
import { trialsView } from './trials.ts';

const BY_NAME: Readonly<Record<ViewName, (facts: ViewFacts) => string>> = {
  recipe: recipeView,
  formula: formulaView,
  'made-of': madeOfView,
  day: dayView,
  label: labelView,
  trials: trialsView,
};

const sectionOf = (facts: ViewFacts, view: ViewName): string =>
  `<section id="${view}" data-key="${view}">\n${BY_NAME[view](facts)}\n</section>`;

/** What stands in `<body>`: the frame and one view. */
export const viewPage = (facts: ViewFacts, view: ViewName): string =>
  framed(facts, view, sectionOf(facts, view), view === 'recipe' ? layoutOf(facts) : undefined);

/** The same with all views after one another. */
export const allViews = (facts: ViewFacts): string =>
  framed(facts, 'recipe', VIEWS.map((view) => sectionOf(facts, view)).join('\n'));
