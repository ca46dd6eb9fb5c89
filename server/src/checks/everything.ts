/**
 * Knows when a step takes all that is listed without naming it.
 */
import type { Sentence } from '../notation/tree.ts';
import type { Step } from '../recipe/recipe.ts';
import { onceFor } from './once.ts';

const EVERYTHING =
  /\b(?:everything|all (?:of )?the (?:other |remaining |dry |wet )?ingredients|(?:the|remaining|other|dry|wet) ingredients|the rest of the ingredients|all together|the lot)\b/;

/** `mix all the ingredients` uses them all. */
export const takesEverything = (steps: readonly Step[]): boolean => steps.some((step) => saysSo(step.sentence));

const saysSo = onceFor(({ items }: Sentence): boolean =>
  EVERYTHING.test(items.map((i) => (i.kind === 'word' ? i.word : ';')).join(' ')),
);
