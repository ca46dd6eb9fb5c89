/**
 * Knows the texts that cost most: one kind of line again and again, as a script, a paste or an attacker writes them.
 * Refuses to be like a cook's: that is `recipes.ts`.
 */

export interface Pattern {
  readonly name: string;
  /** A text of so many lines. */
  readonly text: (lines: number) => string;
  /** Its size at the limits: nothing above it is worked out. */
  readonly most: number;
}

/** So many lines, the first of which has the number 0. */
const rows = (count: number, row: (i: number) => string): string[] =>
  Array.from({ length: Math.max(0, count) }, (_, i) => row(i));

const text = (...lines: readonly (string | readonly string[])[]): string => `${lines.flat().join('\n')}\n`;

/** The halves of what is left beside the first lines. */
const halves = (lines: number): readonly [number, number] => [Math.floor(lines / 2) - 1, Math.ceil(lines / 2) - 1];

/** Lines of a part, of a file, of a file of parts of three lines, and letters of a line, at the limits. */
const PART = 1000;
const FILE = 20_000;
const PARTS = 6000;
const LINE = 4000;

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** Another word for each number: `zaab`. */
export function wordOf(i: number): string {
  let word = '';
  for (let n = i; word.length < 4; n = Math.floor(n / 26)) word = `${LETTERS[n % 26]}${word}`;
  return `z${word}`;
}

const FOODS = [
  'plain flour',
  'caster sugar',
  'butter',
  'eggs',
  'milk',
  'salt',
  'carrots',
  'onions',
  'olive oil',
  'rice',
];
const foodOf = (i: number): string => FOODS[i % FOODS.length] ?? '';

/** Of lines within one part, or outside all. */
export const PATTERNS: readonly Pattern[] = [
  {
    name: 'one food listed again and again',
    most: PART,
    text: (n) =>
      text(
        'recipe A',
        rows(n - 1, () => '  10 g plain flour'),
      ),
  },
  {
    name: 'one food listed, and a step for each',
    most: PART,
    text: (n) => {
      const [a, b] = halves(n);
      return text(
        'recipe A',
        rows(a, () => '  10 g plain flour'),
        rows(b, () => '  do Stir in the flour.'),
      );
    },
  },
  {
    name: 'foods that end in one word, and a step for each',
    most: PART,
    text: (n) => {
      const [a, b] = halves(n);
      return text(
        'recipe A',
        rows(a, (i) => `  10 g ${wordOf(i)} flour`),
        rows(b, () => '  do Stir in the flour.'),
      );
    },
  },
  {
    name: 'foods of other names, each with its step',
    most: PART,
    text: (n) => {
      const [a, b] = halves(n);
      return text(
        'recipe A',
        rows(a, (i) => `  10 g ${wordOf(i)}`),
        rows(b, (i) => `  do Stir in the ${wordOf(i)}.`),
      );
    },
  },
  {
    name: 'ten foods listed, their steps with amounts',
    most: PART,
    text: (n) =>
      text(
        'recipe A',
        rows(10, (i) => `  900 g ${foodOf(i)}`),
        rows(n - 11, (i) => `  do Add 5 g of the ${foodOf(i)} and cook at 90 C for ${1 + (i % 9)} min.`),
      ),
  },
  {
    name: 'steps alone',
    most: PART,
    text: (n) =>
      text(
        'recipe A',
        '  100 g carrots',
        rows(n - 2, (i) => `  do Simmer at ${60 + (i % 30)} C for ${1 + (i % 50)} min.`),
      ),
  },
  {
    name: 'steps that take all',
    most: PART,
    text: (n) => {
      const [a, b] = halves(n);
      return text(
        'recipe A',
        rows(a, (i) => `  10 g ${wordOf(i)} ${foodOf(i)}`),
        rows(b, () => '  do Mix everything, cover and chill for 2 h.'),
      );
    },
  },
  {
    name: 'steps that set aside and take again',
    most: PART,
    text: (n) =>
      text(
        'recipe A',
        rows(10, (i) => `  900 g ${foodOf(i)}`),
        rows(n - 11, (i) =>
          i % 2 === 0
            ? `  do Fry half the ${foodOf(i)} and set aside.`
            : `  do Return the ${foodOf(i - 1)} to the pan and stir in the rest of the ${foodOf(i)}.`,
        ),
      ),
  },
  {
    name: 'parts of two lines',
    most: PARTS,
    text: (n) =>
      text(
        'recipe A',
        rows(Math.floor((n - 1) / 3), (i) => `part ${wordOf(i)}\n  10 g ${foodOf(i)}\n  do Fry the ${foodOf(i)}.`),
      ),
  },
  {
    name: 'parts, each of the one above',
    most: PARTS,
    text: (n) =>
      text(
        'recipe A',
        'part zzzzz\n  10 g butter',
        rows(
          Math.floor((n - 3) / 3),
          (i) =>
            `part ${wordOf(i)}\n  10 g ${i === 0 ? 'zzzzz' : wordOf(i - 1)}\n  do Fry the ${i === 0 ? 'zzzzz' : wordOf(i - 1)}.`,
        ),
      ),
  },
  {
    name: 'parts, all taken by the last',
    most: PARTS,
    text: (n) => {
      const parts = Math.floor((n - 2) / 3);
      return text(
        'recipe A',
        rows(parts, (i) => `part ${wordOf(i)}\n  10 g ${foodOf(i)}`),
        'part all',
        rows(parts, (i) => `  do Add the ${wordOf(i)}.`),
      );
    },
  },
  {
    name: 'lines that are not understood',
    most: PART,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt',
        rows(n - 2, (i) => `  ${wordOf(i)} (( 7 )) / of ~`),
      ),
  },
  {
    name: 'notes',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        rows(n - 2, (i) => `  note    It is ${wordOf(i)}.`),
        '  10 g salt',
      ),
  },
  {
    name: 'fields',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        rows(n - 2, (i) => `  yield   ${i + 1} buns`),
        '  10 g salt',
      ),
  },
  {
    name: 'allows',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt',
        rows(n - 2, () => '  allow unused-ingredient: it is so'),
      ),
  },
  {
    name: 'trials',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt',
        rows(n - 2, (i) => `trial 2026-0${1 + (i % 9)}-1${i % 10}`),
      ),
  },
  {
    name: 'lines of one trial',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt\n  do Boil the salt for 10 min.',
        'trial 2026-01-10',
        rows(n - 4, (i) => (i % 2 === 0 ? '  took 10 min' : '  saw it was pale')),
      ),
  },
  {
    name: 'foods of the house',
    most: FILE,
    text: (n) => text(rows(Math.floor(n / 2), (i) => `food ${wordOf(i)}\n  like plain flour`)),
  },
  {
    name: 'blank lines',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt',
        rows(n - 2, () => ''),
      ),
  },
  {
    name: 'comments',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  10 g salt',
        rows(n - 2, () => '  # it is so'),
      ),
  },
  {
    name: 'swaps of a base that is not there',
    most: FILE,
    text: (n) =>
      text(
        'recipe A',
        '  from none.quern',
        rows(n - 2, (i) => `  swap ${wordOf(i)} for 10 g butter`),
      ),
  },
];

/** Of one line of so many words, commas or brackets. */
export const LONG_LINES: readonly Pattern[] = [
  {
    name: 'one step of so many words',
    most: LINE / 12,
    text: (n) => text('recipe A', '  10 g butter', `  do Stir ${rows(n, () => 'the butter').join(' ')}.`),
  },
  {
    name: 'one step of so many clauses',
    most: LINE / 30,
    text: (n) =>
      text('recipe A', '  10 g butter', `  do ${rows(n, (i) => `stir the butter for ${i + 1} min`).join(', ')}.`),
  },
  {
    name: 'one step of so many sentences',
    most: LINE / 30,
    text: (n) =>
      text('recipe A', '  10 g butter', `  do ${rows(n, (i) => `Fry the butter at ${i % 300} C.`).join(' ')}`),
  },
  {
    name: 'one ingredient of so many words',
    most: LINE / 7,
    text: (n) => text('recipe A', `  10 g ${rows(n, wordOf).join(' ')}`),
  },
  {
    name: 'one ingredient of so many commas',
    most: LINE / 7,
    text: (n) => text('recipe A', `  10 g butter${rows(n, () => ', soft').join('')}`),
  },
  {
    name: 'one ingredient of so many ors',
    most: LINE / 10,
    text: (n) => text('recipe A', `  10 g butter${rows(n, (i) => ` or ${wordOf(i)}`).join('')}`),
  },
  {
    name: 'one ingredient of so many amounts',
    most: LINE / 9,
    text: (n) => text('recipe A', `  10 g${rows(n, () => ' + 1 tsp').join('')} butter`),
  },
  {
    name: 'one line of so many brackets',
    most: LINE / 3,
    text: (n) => text('recipe A', `  10 g butter ${'('.repeat(n)}${')'.repeat(n)}`),
  },
  { name: 'one line of so many figures', most: LINE / 2, text: (n) => text('recipe A', `  ${'1'.repeat(n)} g butter`) },
  {
    name: 'one word of so many letters',
    most: LINE / 2,
    text: (n) => text('recipe A', `  10 g ${'ab'.repeat(n / 2)}`, `  do Stir the ${'ab'.repeat(n / 2)}.`),
  },
  {
    name: 'one list of so many tags',
    most: LINE / 8,
    text: (n) => text('recipe A', `  tags    ${rows(n, wordOf).join(', ')}`, '  10 g butter'),
  },
  {
    name: 'blanks within one line',
    most: LINE / 3,
    text: (n) => text('recipe A', `  10 g${' '.repeat(n)}butter${' '.repeat(n)}x`),
  },
];
