/**
 * Knows view 2, the measures of each part against what is usual, and the list in grams and shares.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';
import { ingredientsTable } from './formula/list.ts';
import { measuresTable } from './formula/measures.ts';

/** The content of `<section id="formula">`: the answer before the evidence. */
export const formulaView = (facts: ViewFacts): string => `<h2>Against what is usual</h2>
${measuresTable(facts)}
<h2>Ingredients</h2>
${ingredientsTable(facts)}`;
