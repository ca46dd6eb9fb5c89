/**
 * Knows whether a text that is no sentence names a thing of the kitchen that is no food: `beech sawdust`, `muslin and string`.
 * Refuses to know what it is for.
 */
import { sentenceIn } from '../notation/sentence.ts';
import { jointOf, thingOf } from './lexicon.ts';
import { tag } from './tag.ts';
import { topicBits, topicsAt } from './topics.ts';

const GEAR = topicBits(['gear']);

/** By its noun, the last word before a comma, a bracket or a preposition. */
export function gearNamed(text: string): boolean {
  const { items } = sentenceIn(text);
  const pieces = tag(items, [], []);
  const end = pieces.findIndex(({ sort, sense }) => sort === 'mark' || jointOf(sense)?.is === 'preposition');
  const noun = (end < 0 ? pieces : pieces.slice(0, end)).at(-1);
  if (noun === undefined || noun.sort !== 'word') return false;
  const { one, several } = topicsAt(items[noun.to - 1]);
  return thingOf(noun.sense)?.sort === 'vessel' || ((one | several) & GEAR) !== 0;
}
