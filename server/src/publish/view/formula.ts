/**
 * Knows view 2, the measures of each part against what is usual, and the list in grams and shares.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';

/** The content of `<section id="formula">`. */
export const formulaView = (_facts: ViewFacts): string => '<h2>Formula</h2>';
