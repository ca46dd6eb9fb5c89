/**
 * Knows the whole numbers that cooks write as words.
 * Refuses to know what is counted.
 */
/** From one to twelve, in order: those that prose writes out. */
export const NUMBERS_IN_PROSE = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

const VALUES: ReadonlyMap<string, number> = new Map([
  ...NUMBERS_IN_PROSE.map((word, i) => [word, i + 1] as const),
  ...(['fifteen', 'twenty', 'thirty', 'forty', 'fifty'] as const).map(
    (word, i) => [word, [15, 20, 30, 40, 50][i] ?? 0] as const,
  ),
]);

/** What a word counts; undefined when it is no number. */
export const numberOfWord = (word: string): number | undefined => VALUES.get(word.toLowerCase());

/** A number in words where prose has it so: from one to twelve. */
export const wordOfNumber = (count: number): string | undefined => NUMBERS_IN_PROSE[count - 1];
