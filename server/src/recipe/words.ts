/**
 * Knows how the words of a name are compared: lower case, no accents, hyphens as blanks, every word in the singular.
 * Refuses to know foods.
 */
import { onceByText } from '../measure/once.ts';

/** The words of a name as they are compared. One list for one text: do not change it. */
export const wordsOf = onceByText(cut, { texts: 20_000 });

/** Whether two names are one, however they are spelled. */
export const sameName = (a: string, b: string): boolean => wordsOf(a).join(' ') === wordsOf(b).join(' ');

/** A text with one blank between its words. */
export const collapse = (text: string): string => text.trim().replace(/\s+/g, ' ');

/** Words that open a sentence. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function cut(name: string): readonly string[] {
  if (ASCII.test(name)) return name.toLowerCase().split(NO_ASCII_WORD).filter(isWord).map(singular);
  return name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('’', "'")
    .split(/[^\p{L}\p{N}']+/u)
    .filter(isWord)
    .map(singular);
}

/** Most names, which are cut without the tables of all letters. */
const ASCII = /^[\x00-\x7f]*$/;
const NO_ASCII_WORD = /[^a-z0-9']+/;
const isWord = (cut: string): boolean => cut !== '';

/** The singular of an English noun; a word that is none comes back alike each time, which is all a comparison needs. */
export const singular = onceByText(
  (word: string): string => (word.length > 30 ? word : makeSingular(word.endsWith("'s") ? word.slice(0, -2) : word)),
  { texts: 20_000, letters: 30 },
);

function makeSingular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(?:ss|us|is|ous)$/.test(word)) return word;
  if (/(?:lea|loa|hal|cal|kni|shel|wol)ves$/.test(word))
    return word.endsWith('knives') ? 'knife' : `${word.slice(0, -3)}f`;
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(?:[sc]h|x|ss|z|[tdrgh]o)es$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}

/** Words that join others and never belong to a name's core. */
export const FUNCTION_WORDS: ReadonlySet<string> = new Set([
  'a',
  'an',
  'the',
  'and',
  'or',
  'of',
  'in',
  'into',
  'on',
  'onto',
  'over',
  'with',
  'to',
  'from',
  'for',
  'at',
  'by',
  'until',
  'till',
  'then',
  'if',
  'is',
  'are',
  'be',
  'it',
  'its',
  'them',
  'they',
  'this',
  'that',
  'these',
  'those',
  'your',
  'as',
  'up',
  'out',
  'off',
  'down',
  'through',
  'around',
  'about',
  'after',
  'before',
  'when',
  'while',
  'but',
  'not',
  'no',
  'so',
  'under',
  'each',
  'every',
  'plus',
  'without',
  'between',
  'against',
  'only',
]);

/** Adjectives of foods that name nothing alone. */
export const ADJECTIVES: ReadonlySet<string> = new Set([
  'plain',
  'white',
  'whole',
  'brown',
  'strong',
  'fine',
  'dry',
  'dried',
  'light',
  'dark',
  'red',
  'green',
  'black',
  'yellow',
  'sweet',
  'sour',
  'baking',
  'ground',
  'double',
  'single',
  'full',
  'hot',
  'cold',
  'warm',
  'cool',
  'fresh',
  'large',
  'small',
  'medium',
  'self',
  'raising',
  'raw',
  'bitter',
  'soft',
  'hard',
  'clear',
  'golden',
  'bread',
  'table',
  'sea',
  'cooking',
  'active',
  'instant',
  'quick',
  'all',
  'purpose',
  'extra',
  'virgin',
  'free',
  'range',
  'ripe',
  'young',
  'old',
  'mild',
  'salted',
  'unsalted',
  'skimmed',
  'heavy',
  'thick',
  'thin',
  'boneless',
  'skinless',
  'lean',
  'rolled',
  'icing',
  'caster',
  'granulated',
  'powdered',
  'boiling',
  'ice',
  'iced',
  'tap',
  'long',
  'grain',
  'round',
  'smooth',
  'spring',
  'pudding',
  'powder',
]);
