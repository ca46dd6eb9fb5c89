/**
 * Knows the words that editors colour, from the tables that the server reads with: what opens a line, units and counts, numbers in words.
 * Refuses to know how an editor is told.
 */
import { COUNT_FORMS } from '../../server/src/measure/count-words.ts';
import { NUMBER_WORDS } from '../../server/src/measure/number-words.ts';
import { UNITS } from '../../server/src/measure/unit.ts';
import type { Dimension } from '../../server/src/measure/unit-row.ts';
import { TAKEN } from '../../server/src/notation/takes.ts';
import { OPENERS } from '../../server/src/notation/time.ts';
import { SIZE_WORDS } from '../../server/src/notation/words.ts';
import { SAYS } from '../../server/src/notation/yield.ts';

/** What opens a line. */
export const OPENS = {
  header: ['recipe', 'part', 'food'],
  step: ['do'],
  field: ['yield', 'pan', 'oven', 'time', 'from', 'picture'],
  trial: ['took', 'started', 'reached', 'weighed', 'used', 'verdict'],
  /** The rest is words, whatever stands in it. */
  text: ['by', 'serve', 'note', 'source', 'tags', 'saw', 'tested'],
  change: ['swap', 'drop', 'add'],
  food: ['like', 'also', 'contains'],
  optional: ['optional'],
} as const;

/** What a food is said to be made of. */
export const COMPOSITION = [
  'water',
  'fat',
  'protein',
  'carbohydrate',
  'sugar',
  'starch',
  'fibre',
  'salt',
  'ash',
  'alcohol',
];
/** With a number behind it, a line of a food. */
export const SHARES = [...COMPOSITION, 'trim', 'price'];

/** Open a line as a title does, in small letters or with a large one, where a number follows. */
export const SAID = [...SAYS.keys(), ...OPENERS];

const symbolsOf = (dimension: Dimension): readonly string[] =>
  UNITS.filter((unit) => unit.dimension === dimension).flatMap(({ symbol, spellings, printed = [] }) => [
    symbol,
    ...spellings,
    ...printed,
  ]);

/** Behind a number, longer ones first. */
export const UNIT_WORDS: readonly string[] = longerFirst([
  ...(['mass', 'volume', 'length', 'time'] as const).flatMap(symbolsOf),
  'extra large',
  ...SIZE_WORDS,
  ...COUNT_FORMS,
  '%',
]);

export const NUMBERS_IN_WORDS: readonly string[] = longerFirst(NUMBER_WORDS.filter((word) => word.length > 1));
export const TAKES: readonly string[] = longerFirst(TAKEN);
export const FREE = ['to taste', 'as needed', 'overnight'];
export const FRACTIONS = '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞';
export const SHAPES = ['round', 'square', 'rectangle', 'loaf', 'ring'];
export const VERDICTS = ['keep', 'change', 'reject'];

/** So that of two words of which one begins the other the whole is found. */
function longerFirst(words: Iterable<string>): readonly string[] {
  return [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
}
