/**
 * Knows which steps order a bake, a roast or a fry, and whether a step says by what sign it is done.
 * Refuses to know what the sign should be.
 */
import type { SentenceItem, WordNode } from '../../notation/tree.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { asWritten, isOn, says, type WordList } from '../../recipe/step-words.ts';

export const BAKING = asWritten('bake', 'roast');
const FRYING = asWritten('fry', 'deep-fry', 'shallow-fry', 'pan-fry', 'grill', 'broil', 'griddle');
/** Both. */
export const COOKING = asWritten(
  'bake',
  'roast',
  'fry',
  'deep-fry',
  'shallow-fry',
  'pan-fry',
  'grill',
  'broil',
  'griddle',
);
const NOT_AN_ORDER: ReadonlySet<string> = new Set(['to', 'the', 'a', 'this', 'each', 'for', 'of', 'before', 'with']);

/** The verb of an order such as `Bake …`, and not of `ready to bake`. */
export function orderIn(step: Step, verbs: WordList): WordNode | undefined {
  if (!says(step, verbs)) return undefined;
  const { items } = step.sentence;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (item?.kind === 'word' && isOn(verbs, item.word) && mayBeOrder(items[i - 1]) && !isNamed(step, item))
      return item;
  }
  return undefined;
}

/** `The chuck roast` orders no roasting. */
const isNamed = (step: Step, { start, end }: WordNode): boolean =>
  step.mentions.some((m) => !m.verb && m.start <= start && m.end >= end);

const mayBeOrder = (before: SentenceItem | undefined): boolean =>
  before?.kind !== 'word' || !NOT_AN_ORDER.has(before.word);

export const isBakingOrder = (step: Step): boolean => orderIn(step, BAKING) !== undefined;
export const cookingOrder = (step: Step): WordNode | undefined => orderIn(step, BAKING) ?? orderIn(step, FRYING);

const CUES = asWritten(
  'until',
  'till',
  'when',
  'golden',
  'gold',
  'brown',
  'browned',
  'crisp',
  'tender',
  'firm',
  'done',
  'pick',
  'skewer',
  'springs',
  'set',
  'soft',
  'dry',
  'bubbling',
  'reads',
);

/** The step, or one of the two after it in its part, says how it looks or reads when done. */
export function hasCue({ steps }: Part, step: Step): boolean {
  if (saysCue(step, CUES)) return true;
  const at = steps.indexOf(step);
  // Of a later step only what tests it: `until` there may be of something else.
  return [steps[at + 1], steps[at + 2]].some((later) => later !== undefined && saysCue(later, TESTS));
}

const saysCue = (step: Step, cues: WordList): boolean =>
  says(step, cues) || step.heat.some((h) => h.role === 'food' && h.verbClass !== 'cooling');

const TESTS = asWritten('test', 'pick', 'skewer', 'springs', 'done', 'when', 'tester');
