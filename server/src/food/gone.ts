/**
 * Knows what the words behind the commas of a name say is taken off it: `skin removed`, `bones discarded`, `without rind`.
 * Refuses to know what is left then.
 */
import { JOINERS, looksAdjective } from './modifiers.ts';
import { wordSet } from './names.ts';
import type { Phrase } from './phrase.ts';

/** The phrase without those words, since what is gone is not the food: a chicken, skin removed, is no chicken skin. */
export function withoutGone(phrase: Phrase): Phrase {
  const { tails } = phrase;
  if (!tails.some((tail) => tail.some(saysGone))) return phrase;
  return { ...phrase, tails: tails.map(stays).filter((tail) => tail.length > 0) };
}

const saysGone = (word: string, at = 0, words: readonly string[] = []): boolean =>
  GONE_BEFORE.has(word) || GONE_BEHIND.has(word) || (word === 'of' && RID.has(words[at - 1] ?? ''));

/** `trimmed of fat`. */
const RID = wordSet('trimmed stripped cleared rid cleaned drained');

/** What stands before the word is gone. */
const GONE_BEFORE = wordSet(`
  removed discarded off out away reserved saved extracted stripped scraped scooped poured free omitted excluded left
`);
/** What stands behind it is. */
const GONE_BEHIND = wordSet(
  'without no less minus sans not never discard discarding remove removing omit omitting reserving reserve',
);

/** What a tail says of the food that stays, of the things that `and` joins. */
function stays(tail: readonly string[]): readonly string[] {
  const chunks: string[][] = [[]];
  for (const word of tail) {
    if (word === 'and' || word === 'then' || word === 'but') chunks.push([]);
    else chunks.at(-1)?.push(word);
  }
  const said = chunks.map(goneIn);
  return chunks
    .filter((chunk, at) => {
      if (said[at] !== undefined) return said[at] === 'stays';
      // `bones and skin removed`, `without skin and bones`
      return !isThing(chunk) || (said[at + 1] !== 'before' && said.slice(0, at).findLast(Boolean) !== 'behind');
    })
    .flat();
}

/** Which side of its word the thing stands that is gone; undefined where no word says so. */
function goneIn(chunk: readonly string[]): 'before' | 'behind' | 'stays' | undefined {
  const at = chunk.findIndex(saysGone);
  if (at < 0) return undefined;
  if (!GONE_BEFORE.has(chunk[at] ?? '')) return 'behind';
  return chunk.slice(0, at).every((word) => JOINERS.has(word)) ? 'stays' : 'before';
}

/** One word that is no adjective, though `fat` may be either. */
function isThing(chunk: readonly string[]): boolean {
  const [thing, more] = chunk.filter((word) => !JOINERS.has(word));
  return thing !== undefined && more === undefined && (thing === 'fat' || !looksAdjective(thing));
}
