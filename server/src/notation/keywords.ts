/**
 * Knows the words that open a line, and those of the composition of a food.
 */

/** The word that opens a line and says what it is. */
export const KEYWORDS = [
  'recipe',
  'by',
  'yield',
  'pan',
  'oven',
  'time',
  'serve',
  'tags',
  'note',
  'source',
  'picture',
  'from',
  'part',
  'optional',
  'do',
  'trial',
  'took',
  'started',
  'reached',
  'weighed',
  'used',
  'saw',
  'tested',
  'verdict',
  'swap',
  'drop',
  'add',
  'food',
  'like',
  'also',
  'trim',
  'price',
  'contains',
  'allow',
] as const;
export type Keyword = (typeof KEYWORDS)[number];

/** The composition lines of a food block. */
export const COMPONENTS = [
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
] as const;
export type Component = (typeof COMPONENTS)[number];
