/**
 * Knows view 5, allergens, nutrition and cost.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';

/** The content of `<section id="label">`. */
export const labelView = (_facts: ViewFacts): string => '<h2>Cost and label</h2>';
