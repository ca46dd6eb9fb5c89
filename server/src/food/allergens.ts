/**
 * Knows the allergens that labels must name, in the United States and the European Union, and what a food's short word for one means in each.
 * Refuses to know which foods hold them.
 */

export interface Allergens {
  readonly us: readonly string[];
  readonly eu: readonly string[];
}

interface AllergenRow {
  readonly words: readonly string[];
  readonly us?: string;
  readonly eu?: string;
}

/**
 * US: FALCPA 2004 and the FASTER Act 2021. EU: Regulation 1169/2011, annex II. Coconut is not listed: the EU names eight nuts,
 * and FDA dropped it from the tree nuts in 2025. It still counts pine nuts (FDA, Edition 5 of its questions and answers on allergens, from
 * memory), which the EU does not name.
 */
const ROWS: readonly AllergenRow[] = [
  { words: ['wheat', 'spelt', 'durum'], us: 'wheat', eu: 'cereals containing gluten' },
  { words: ['gluten', 'rye', 'barley', 'cereals containing gluten'], eu: 'cereals containing gluten' },
  { words: ['oats', 'oat'], eu: 'cereals containing gluten' },
  { words: ['milk', 'dairy', 'lactose'], us: 'milk', eu: 'milk' },
  { words: ['egg', 'eggs'], us: 'eggs', eu: 'eggs' },
  { words: ['fish'], us: 'fish', eu: 'fish' },
  {
    words: ['crustacean', 'crustaceans', 'shellfish', 'crustacean shellfish'],
    us: 'crustacean shellfish',
    eu: 'crustaceans',
  },
  { words: ['mollusc', 'molluscs', 'mollusks'], eu: 'molluscs' },
  {
    words: [
      'nuts',
      'nut',
      'tree nuts',
      'almonds',
      'hazelnuts',
      'walnuts',
      'cashews',
      'pecans',
      'pistachios',
      'macadamias',
      'brazil nuts',
    ],
    us: 'tree nuts',
    eu: 'nuts',
  },
  { words: ['pine nuts', 'pine nut'], us: 'tree nuts' },
  { words: ['peanut', 'peanuts'], us: 'peanuts', eu: 'peanuts' },
  { words: ['soy', 'soya', 'soybeans'], us: 'soybeans', eu: 'soybeans' },
  { words: ['sesame'], us: 'sesame', eu: 'sesame' },
  { words: ['celery'], eu: 'celery' },
  { words: ['mustard'], eu: 'mustard' },
  { words: ['lupin'], eu: 'lupin' },
  { words: ['sulphites', 'sulfites', 'sulphur dioxide', 'sulfur dioxide'], eu: 'sulphites' },
];
/** All that labels must name, in the law's order. */
export const listedAllergens = (side: keyof Allergens): readonly string[] => [
  ...new Set(ROWS.flatMap((row) => row[side] ?? [])),
];

/** Whether only the list of the European Union has it. */
export const isOfUnionAlone = (name: string): boolean =>
  ROWS.some(({ eu }) => eu === name) && ROWS.every(({ us, eu }) => eu !== name || us === undefined);

/** A food of the house that holds none says so. */
const NOTHING: ReadonlySet<string> = new Set(['nothing', 'none']);
const BY_WORD = new Map(
  ROWS.flatMap((row) =>
    row.words.flatMap((word) => [word, word.replace(/s$/, '')].map((form) => [form, row] as const)),
  ),
);

/** What the labels of each side must name for these words, in the law's order; words that are no allergen come back in `unknown`; `nothing` where one says that there is none. */
export function allergensOf(
  words: readonly string[],
): Allergens & { readonly unknown: readonly string[]; readonly nothing: boolean } {
  const rows = new Set<AllergenRow>();
  const unknown: string[] = [];
  let nothing = false;
  for (const word of words) {
    const row = BY_WORD.get(word.trim().toLowerCase());
    if (NOTHING.has(word.trim().toLowerCase())) nothing = true;
    else if (row === undefined) unknown.push(word);
    else rows.add(row);
  }
  const named = (side: 'us' | 'eu'): string[] => [
    ...new Set(ROWS.filter((row) => rows.has(row)).flatMap((row) => row[side] ?? [])),
  ];
  return { us: named('us'), eu: named('eu'), unknown, nothing };
}

/** One allergen by the names of both sides; null where the law of that side does not name it. */
export interface AllergenPair {
  readonly us: string | null;
  readonly eu: string | null;
}

/** What a food has, each allergen once with the names of both sides, in the law's order: wheat is `cereals containing gluten` too, rye is that alone. */
export function pairsOf({ us, eu }: Allergens): AllergenPair[] {
  const pairs = new Map<string, AllergenPair>();
  const [leftUs, leftEu] = [new Set(us), new Set(eu)];
  for (const row of ROWS) {
    if (row.us === undefined || row.eu === undefined || !us.includes(row.us) || !eu.includes(row.eu)) continue;
    pairs.set(`${row.us}|${row.eu}`, { us: row.us, eu: row.eu });
    leftUs.delete(row.us);
    leftEu.delete(row.eu);
  }
  return [
    ...pairs.values(),
    ...[...leftUs].map((name): AllergenPair => ({ us: name, eu: null })),
    ...[...leftEu].map((name): AllergenPair => ({ us: null, eu: name })),
  ];
}

/** Words that name a sort by themselves, with what it is a sort of. */
export const SORTS: ReadonlyMap<string, readonly [of: string, name: string]> = new Map(
  [
    ['nuts', 'almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'pistachio', 'macadamia', 'brazil nut'],
    ['pine nuts', 'pine nut'],
    ['gluten', 'spelt', 'rye', 'barley', 'oat'],
  ].flatMap(([of = '', ...names]) =>
    names.flatMap((name) =>
      [name, `${name}s`].map((word): [string, [string, string]] => [word, [of, name === 'oat' ? 'oats' : name]]),
    ),
  ),
);

/** Those of the words that do, where any does. */
export function sortsAmong(words: readonly string[]): { readonly sorts?: readonly string[] } {
  const sorts = words.filter((word) => SORTS.has(word.trim().toLowerCase()));
  return sorts.length === 0 ? {} : { sorts };
}
