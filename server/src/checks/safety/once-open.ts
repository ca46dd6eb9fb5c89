/**
 * Knows when a step asks for the cold only once a jar is open: until then it stands on the shelf.
 */
import type { Step } from '../../recipe/recipe.ts';
import { asWritten, inWords, says } from '../../recipe/step-words.ts';

const OPEN = asWritten('opened', 'opening', 'open');
/** `Refrigerate once opened`, `once opened, keep in the fridge`; not `keep in the fridge, and use within a week once opened`. */
const COLD_ONCE_OPEN =
  /\b(?:fridge|refrigerator|refrigerate|chill|chilled|cold)\b[^;]{0,12}\b(?:once|after|when|upon) open|\b(?:once|after|when|upon) open\w*[;\s\w]{0,30}\b(?:fridge|refrigerator|refrigerate|chill|chilled|cold)\b/;

export const isColdOnceOpen = (step: Step): boolean => says(step, OPEN) && COLD_ONCE_OPEN.test(inWords(step.sentence));
