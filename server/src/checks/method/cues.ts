/**
 * Knows which steps order a bake, a roast or a fry, and whether a step says by what sign it is done.
 * Refuses to know what the sign should be.
 */
import type { SentenceItem, WordNode } from '../../notation/tree.ts';
import type { Part, Step } from '../../recipe/recipe.ts';

export const BAKING: ReadonlySet<string> = new Set(['bake', 'roast']);
const FRYING: ReadonlySet<string> = new Set(['fry', 'deep-fry', 'pan-fry', 'grill', 'broil', 'griddle']);
const NOT_AN_ORDER: ReadonlySet<string> = new Set(['to', 'the', 'a', 'this', 'each', 'for', 'of', 'before', 'with']);

/** The verb of an order such as `Bake …`, and not of `ready to bake`. */
export function orderIn(step: Step, verbs: ReadonlySet<string>): WordNode | undefined {
  const { items } = step.sentence;
  const at = items.findIndex((item, i) => isOrder(items, item, i, verbs));
  const item = items[at];
  return item?.kind === 'word' ? item : undefined;
}

function isOrder(items: readonly SentenceItem[], item: SentenceItem, i: number, verbs: ReadonlySet<string>): boolean {
  if (item.kind !== 'word' || !verbs.has(item.word)) return false;
  const before = items[i - 1];
  return before?.kind !== 'word' || !NOT_AN_ORDER.has(before.word);
}

export const isBakingOrder = (step: Step): boolean => orderIn(step, BAKING) !== undefined;
export const cookingOrder = (step: Step): WordNode | undefined => orderIn(step, BAKING) ?? orderIn(step, FRYING);

const CUES: ReadonlySet<string> = new Set([
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
]);

/** The step, or one of the two after it in its part, says how it looks or reads when done. */
export function hasCue(part: Part, step: Step): boolean {
  const at = part.steps.indexOf(step);
  return part.steps.slice(at, at + 3).some((s, i) => saysCue(s, i > 0));
}

function saysCue(step: Step, later: boolean): boolean {
  if (step.heat.some((h) => h.role === 'food' && h.verbClass !== 'cooling')) return true;
  // Of a later step only what tests it: `until` there may be of something else.
  return step.sentence.items.some((i) => i.kind === 'word' && (later ? TESTS : CUES).has(i.word));
}

const TESTS: ReadonlySet<string> = new Set(['test', 'pick', 'skewer', 'springs', 'done', 'when', 'tester']);
