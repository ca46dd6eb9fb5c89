/**
 * Knows the words that say how full a measure is, and what share of a level one they come to.
 * Refuses to know which foods can be heaped: who weighs it says so.
 */

/** One row of the words: the share of a level measure from `low` to `high`, `likely` between. */
export interface Bias {
  /** Lower case, one or two words, the usual one first. */
  readonly words: readonly string[];
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** Of what stands above the rim alone; a liquid is taken level. */
  readonly heaps?: true;
  /** How the food lies in the measure, where the book has weighed it so. */
  readonly form?: 'packed';
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

export const BIASES: readonly Bias[] = [
  { words: ['heaped', 'heaping'], low: 1.25, likely: 1.4, high: 1.6, heaps: true, source: PRACTICE },
  { words: ['rounded', 'rounding'], low: 1.1, likely: 1.25, high: 1.4, heaps: true, source: PRACTICE },
  { words: ['generous', 'good', 'brimming'], low: 1.02, likely: 1.08, high: 1.15, source: PRACTICE },
  { words: ['big', 'healthy', 'fat'], low: 1, likely: 1.2, high: 1.5, source: PRACTICE },
  { words: ['tiny', 'little', 'wee'], low: 0.5, likely: 0.75, high: 1, source: PRACTICE },
  { words: ['scant', 'scanty', 'bare'], low: 0.85, likely: 0.92, high: 0.97, source: PRACTICE },
  {
    words: ['level', 'levelled', 'leveled', 'even', 'full', 'well-filled'],
    low: 1,
    likely: 1,
    high: 1,
    source: PRACTICE,
  },
  {
    words: ['packed', 'firmly packed', 'tightly packed', 'well packed', 'well-packed'],
    low: 1,
    likely: 1,
    high: 1,
    form: 'packed',
    source: PRACTICE,
  },
  { words: ['lightly packed', 'loosely packed'], low: 1, likely: 1, high: 1, source: PRACTICE },
];

const BY_WORDS: ReadonlyMap<string, Bias> = new Map(BIASES.flatMap((bias) => bias.words.map((word) => [word, bias])));

/** How full the words say a measure is: one or two of them, a blank between, any case. */
export const biasOf = (words: string): Bias | undefined => BY_WORDS.get(words.toLowerCase());
