/**
 * Knows where the name of a food or part is an order, and no name: `butter the pan`, `bake at 160 C`.
 * Refuses to know what names there are.
 */
import type { SentenceItem } from '../../notation/tree.ts';
import { isVerb } from '../../prose/verb-named.ts';
import { opensClause } from './portions.ts';

/** Foods whose name is an order as well: `butter the pan`. */
export const VERBS_OF_FOOD: ReadonlySet<string> = new Set([
  'butter',
  'flour',
  'oil',
  'salt',
  'sugar',
  'pepper',
  'egg',
  'cream',
  'water',
  'grease',
  'ice',
  'stock',
  'season',
  'honey',
  'crumb',
  'juice',
  'zest',
  'rice',
  'spice',
  'bread',
  'batter',
  'starch',
]);
/** Words that follow an order and open what it is done to. */
export const OBJECTS: ReadonlySet<string> = new Set([
  'the',
  'a',
  'an',
  'your',
  'each',
  'both',
  'it',
  'them',
  'and',
  'two',
  'lightly',
  'generously',
  'well',
  'all',
  'any',
]);

/** `Bake at 160 C` is no mention of the kale bake; `fill` may be one of the filling. */
export function isOrder(items: readonly SentenceItem[], at: number, words: number): boolean {
  const item = items[at];
  return (
    words === 1 && item?.kind === 'word' && isVerb(item.word) && opensClause(items, at) && !fillsByItself(items, at)
  );
}

/** `Roast at 325 F`, `roast for 20 min`, `roast until brown`: what is a thing as often is an order where a clause opens with it and heat, a time or an end follows. */
export function isOrderForLong(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  const next = items[at + 1];
  const follows =
    next?.kind === 'temperature' || next?.kind === 'duration' || (next?.kind === 'word' && SPANS.has(next.word));
  const isThing = item?.kind !== 'word' || VERBS_OF_FOOD.has(item.word);
  return follows && !isThing && isVerb(item.word) && opensClause(items, at);
}
const SPANS: ReadonlySet<string> = new Set(['at', 'for', 'until', 'till']);

/** `Fill and pleat` takes the filling; `fill the case with the custard` does not. */
function fillsByItself(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'word' || item.word !== 'fill') return false;
  for (let i = at + 1; i < items.length; i++) {
    const each = items[i];
    if (each?.kind === 'mark') break;
    if (each?.kind === 'word' && (each.word === 'with' || each.word === 'from')) return false;
  }
  return true;
}

/** `Butter the pan`, `flour the board`: the name opens a clause and an object follows. */
export function isVerbHere(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'word' || !VERBS_OF_FOOD.has(item.word)) return false;
  const next = items[at + 1];
  const before = items[at - 1];
  const opens =
    before === undefined ||
    (before.kind === 'mark' && /[.;,:]/.test(before.mark)) ||
    (before.kind === 'word' && ['and', 'then', 'lightly', 'to'].includes(before.word));
  // `Butter and flour the pan.` opens with verbs; `milk, butter and salt` is a list.
  const listed = next?.kind === 'word' && next.word === 'and' && before !== undefined && !isFullStop(before);
  return opens && next?.kind === 'word' && OBJECTS.has(next.word) && !listed;
}

const isFullStop = (item: SentenceItem): boolean => item.kind === 'mark' && /[.;:]/.test(item.mark);

/** Whether `with` follows before the clause ends. */
export function isDoneWith(items: readonly SentenceItem[], at: number): boolean {
  for (let i = at + 1; i < items.length; i++) {
    const item = items[i];
    if (item?.kind === 'mark' || (item?.kind === 'word' && isVerb(item.word))) return false;
    if (item?.kind === 'word' && item.word === 'with') return true;
  }
  return false;
}
