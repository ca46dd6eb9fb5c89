/**
 * Knows when a step takes all that is listed without naming it.
 */
import type { Sentence } from '../notation/tree.ts';
import type { Step } from '../recipe/recipe.ts';
import { onceFor } from './once.ts';

const EVERYTHING =
  /\b(?:everything|all (?:of )?the (?:other |remaining |dry |wet )?ingredients|(?:the|remaining|other|dry|wet) ingredients|the rest of the ingredients|all together|the lot)\b/;

/** `Stir together and leave overnight.`: mixed, and nothing is said of what. */
const BARE =
  /^(?:mix|stir|whisk|combine|blend|shake|knead|beat)(?: (?:well|together|thoroughly|until|to|and|for|in)\b|;|$)/;

/** `mix all the ingredients` uses them all. */
export const takesEverything = (steps: readonly Step[]): boolean =>
  steps.some((step, at) => {
    const words = wordsIn(step.sentence);
    return EVERYTHING.test(words) || (at === 0 && step.mentions.length === 0 && BARE.test(words));
  });

const wordsIn = onceFor(({ items }: Sentence): string =>
  items
    .map((i) => (i.kind === 'word' ? i.word : ';'))
    .join(' ')
    .replaceAll(' ;', ';'),
);
