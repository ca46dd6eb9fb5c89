/**
 * Knows when a step takes all that is listed without naming it.
 */
import type { Step } from '../recipe/recipe.ts';

const EVERYTHING =
  /\b(?:everything|all (?:of )?the (?:other |remaining |dry |wet )?ingredients|(?:the|remaining|other|dry|wet) ingredients|the rest of the ingredients|all together|the lot)\b/;

/** `mix all the ingredients` uses them all. */
export function takesEverything(steps: readonly Step[]): boolean {
  return steps.some(({ sentence }) =>
    EVERYTHING.test(sentence.items.map((i) => (i.kind === 'word' ? i.word : ';')).join(' ')),
  );
}
