/**
 * Knows view 3, where the water, the fat and the sugar sit.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';

/** The content of `<section id="made-of">`. */
export const madeOfView = (_facts: ViewFacts): string => '<h2>Made of</h2>';
