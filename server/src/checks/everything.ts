/**
 * Knows when a step takes all that is listed without naming it.
 */
import type { Step } from '../recipe/recipe.ts';
import { anySays, inWords, matching, says } from '../recipe/step-words.ts';

const EVERYTHING =
  /\b(?:everything|all (?:of )?the (?:other |remaining |dry |wet )?ingredients|(?:the|remaining|other|dry|wet) ingredients|the rest of the ingredients|all together|the lot|(?:mix|toss|stir|combine) the (?:filling|topping|stuffing|salad|dressing|marinade|rub|cure) together)\b/;

/** `Stir together and leave overnight.`: mixed, and nothing is said of what. */
const BARE =
  /^(?:mix|stir|whisk|combine|blend|shake|knead|beat|toss|whizz|blitz|pulse|rub in|layer|cook|simmer|boil)(?: all)?(?: (?:well|gently|together|thoroughly|until|to|and|for|in)\b|;|$)/;

/** `mix all the ingredients` uses them all. */
export const takesEverything = (steps: readonly Step[]): boolean =>
  (anySays(steps, HINT) && steps.some((step) => says(step, HINT) && EVERYTHING.test(inWords(step.sentence)))) ||
  isBare(steps[0]);

/** One of these is in whatever says so. */
const HINT = matching(/everything|ingredients|together|lot/);

/** `Beat together, pour over the base`: no object follows, whatever else the step names. */
const TOGETHER =
  /^(?:mix|stir|whisk|combine|blend|shake|knead|beat|toss) (?:all )?together(?: (?:well|until|to|and|for|in|over)\b|;|$)/;

const isBare = (step: Step | undefined): boolean =>
  step !== undefined && (step.mentions.length === 0 ? BARE : TOGETHER).test(inWords(step.sentence));
