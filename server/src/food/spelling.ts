/**
 * Knows where two words of a name are one elsewhere, or one is two: `butter milk`, `cashewnuts`; and what may be left out of it.
 * Refuses to know a misspelling: that is a suggestion.
 */
import { saysManner } from './modifiers.ts';
import { type NameIndex, oneOf } from './name-index.ts';
import { nounOf } from './nouns.ts';

/** The words with those in one that the book writes in one: `pine apple` is no apple. */
export function joined(index: NameIndex, words: readonly string[]): readonly string[] {
  for (let at = 0; at + 1 < words.length && at < MOST_READ; at++) {
    const [one = '', two = ''] = [words[at], words[at + 1]];
    if (one.length < 3 || two.length < 3 || index.get(`${one}${two}`) === undefined) continue;
    // Of hickory nut meats, hickory nuts are named.
    const named = at > 0 && index.get(`${words[at - 1]} ${one}`) !== undefined;
    if (!named && index.get(`${one} ${two}`) === undefined)
      return joined(index, [...words.slice(0, at), `${one}${two}`, ...words.slice(at + 2)]);
  }
  return words;
}

/** No name has more words. */
const MOST_READ = 12;

/** The same words where nothing is to be said more simply. */
export function simpler(index: NameIndex, words: readonly string[]): readonly string[] {
  if (words.length > MOST_READ) return words;
  const plain = asMeat(withoutOrigin(index, withoutStyle(words))).flatMap((word) => parted(index, word));
  return plain.length === words.length && plain.every((word, at) => word === words[at]) ? words : plain;
}

/** `deli-style ham` is ham; a crab-style stick is no crab. */
function withoutStyle(words: readonly string[]): readonly string[] {
  const manner = (at: number): boolean => MANNERS.has(words[at + 1] ?? '') && saysManner(words[at] ?? '');
  return words.filter((_, at) => !manner(at) && !(at > 0 && manner(at - 1)));
}

/** `sheep's kidneys`, `ox cheek`: the animal's name for its meat's. */
function asMeat(words: readonly string[]): readonly string[] {
  const isCut = (word: string): boolean => nounOf(word)?.is === 'cut' || nounOf(word)?.is === 'organ';
  return words.some(isCut) ? words.map((word) => MEAT_OF.get(word) ?? word) : words;
}

const MEAT_OF: ReadonlyMap<string, string> = new Map([
  ['ox', 'beef'],
  ['cow', 'beef'],
  ['steer', 'beef'],
  ['calf', 'veal'],
  ['sheep', 'lamb'],
  ['pig', 'pork'],
  ['hog', 'pork'],
  ['deer', 'venison'],
  ['hen', 'chicken'],
]);

/** `prosciutto di Parma`, `piment d'Espelette`: what stands before it is the food, where that is one. */
function withoutOrigin(index: NameIndex, words: readonly string[]): readonly string[] {
  const at = words.findIndex((word) => OF.has(word));
  const before = words.slice(0, at);
  return at > 0 && index.get(before.at(-1) ?? '') !== undefined ? before : words;
}

const OF: ReadonlySet<string> = new Set(['di', 'del', 'della', 'de', 'du', 'des']);

/** `Greek-style`, `mild-flavoured`. */
const MANNERS: ReadonlySet<string> = new Set(['style', 'styled', 'flavoured', 'tasting', 'type']);

/** `cashewnut`, `gingerroot`, `tunafish`. */
function parted(index: NameIndex, word: string): readonly string[] {
  const [, stem = '', ending = ''] = ENDING.exec(word) ?? [];
  if (stem === '' || index.get(word) !== undefined || nounOf(word) !== undefined) return [word];
  const isKnown = index.get(`${stem} ${ending}`) !== undefined || oneOf(index.get(stem)) !== undefined;
  return isKnown ? [stem, ending] : [word];
}

const ENDING =
  /^(.{3,})(nut|meat|fish|berry|flour|oil|juice|powder|seed|root|leaf|bean|pepper|sauce|cheese|bread|cream|milk|salt|sugar|butter|steak|crumb|kernel|corn|chip|paste|syrup|water|greens|sprout|mince)$/;
