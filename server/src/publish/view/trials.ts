/**
 * Knows view 6, what the trials measured.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';

/** The content of `<section id="trials">`. */
export const trialsView = (_facts: ViewFacts): string => '<h2>Trials</h2>';
