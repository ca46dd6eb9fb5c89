/**
 * Knows the words for what is taken out of a whole thing, one row a word: how they are printed, and what comes of it.
 * Refuses to know foods.
 */

export interface Take {
  /** As foods are called by it: `lemon zest`. */
  readonly word: string;
  /** Other words for it before `of`. */
  readonly forms?: readonly string[];
  /** Words behind a comma that say as much: `1 lemon, juiced`. */
  readonly behind?: readonly string[];
  /** It is what is eaten of the whole, whose weight is that of what is eaten. */
  readonly eaten?: true;
  /** Nobody eats it. */
  readonly gone?: true;
}

const TAKES: readonly Take[] = [
  { word: 'juice', behind: ['juice', 'juiced'] },
  { word: 'zest', forms: ['rind', 'peel', 'skin'], behind: ['zest', 'zested', 'rind'] },
  { word: 'yolk', forms: ['yolks'] },
  { word: 'white', forms: ['whites'] },
  { word: 'pulp', eaten: true },
  { word: 'flesh', eaten: true },
  { word: 'meat', eaten: true },
  { word: 'kernels', eaten: true },
  { word: 'seeds', eaten: true },
  { word: 'leaves', eaten: true },
  { word: 'shells', forms: ['shell'], gone: true },
];

const BEFORE: ReadonlyMap<string, Take> = new Map(
  TAKES.flatMap((take) => [take.word, ...(take.forms ?? [])].map((word) => [word, take])),
);
const BEHIND: ReadonlyMap<string, Take> = new Map(
  TAKES.flatMap((take) => (take.behind ?? []).map((word) => [word, take])),
);

/** Every word that says it before `of`, lower case. */
export const TAKEN: readonly string[] = [...BEFORE.keys()];

/** What a word before `of` takes. */
export const takenBy = (word: string): Take | undefined => BEFORE.get(word.toLowerCase());

/** What the words behind a comma take, each once: `juice and grated rind`. */
export const takenBehind = (words: string): readonly Take[] => [
  ...new Set(
    words
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .flatMap((word) => BEHIND.get(word) ?? []),
  ),
];
