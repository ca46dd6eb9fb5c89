/**
 * Knows view 4, the day backwards.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';

/** The content of `<section id="day">`. */
export const dayView = (_facts: ViewFacts): string => '<h2>Day</h2>';
