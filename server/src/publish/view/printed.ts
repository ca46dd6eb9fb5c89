/**
 * Knows the report of a recipe as one HTML document: all views after one another, black on white.
 * Refuses to know a view.
 */
import { standingAlone } from './alone.ts';
import type { ViewFacts } from './facts.ts';
import { ON_PAPER } from './style.ts';
import { allViews } from './views.ts';

/** `facts` are those of the mode `print`. */
export const printedReport = (facts: ViewFacts): string =>
  standingAlone({ title: facts.page.title, body: allViews(facts), style: ON_PAPER });
