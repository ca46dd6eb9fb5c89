/**
 * Knows which of what can be shown in the text itself is shown, and what is where nothing is set: the table of those settings.
 * Refuses to know the settings of a house. Of what moves the text, only that is shown unasked which the line does not say already: a list in
 * grams, on one scale, stays as it was typed.
 */

export interface Shown {
  readonly grams: boolean;
  readonly percent: boolean;
  readonly taken: boolean;
  readonly scale: boolean;
  readonly lenses: LensesShown;
}

const LENSES_SHOWN = ['all', 'recipe', 'off'] as const;
export type LensesShown = (typeof LENSES_SHOWN)[number];

interface Setting {
  /** Behind `quern.`, in the editor's settings. */
  readonly key: string;
  readonly default: boolean | LensesShown;
  /** A sentence in Markdown. */
  readonly words: string;
  readonly choices?: Readonly<Record<LensesShown, string>>;
}

export const SHOWN_SETTINGS: Readonly<Record<keyof Shown, Setting>> = {
  grams: {
    key: 'inlayHints.grams',
    default: true,
    words:
      'Grams behind the lines of a list whose amount is no weight: `2 cups  milk` _≈ 488 g_. A double click writes them beside the amount.',
  },
  percent: {
    key: 'inlayHints.percent',
    default: false,
    words: "Baker's percentages behind the lines of a dough or batter: of its flour.",
  },
  taken: {
    key: 'inlayHints.taken',
    default: false,
    words:
      'In a step, what it takes of each ingredient and what is left of it: `half the butter` _75 g, 75 g left_. A double click writes the amount.',
  },
  scale: {
    key: 'inlayHints.scale',
    default: false,
    words: 'The other scale behind a temperature: `180 C` _(350 F)_. A double click writes it.',
  },
  lenses: {
    key: 'codeLens',
    default: 'all',
    words:
      'What stands above a recipe and its parts: weights, measures, times, trials, and what can be done with one click.',
    choices: {
      all: 'Above the recipe and above each of its parts.',
      recipe: 'Above the recipe alone.',
      off: 'Nowhere.',
    },
  },
};

/** What is shown where nobody set anything. */
export const SHOWN_BY_DEFAULT = shownIn(undefined);

/** What an editor's settings say is shown, `{ "inlayHints": { "grams": false } }`; what is no setting counts as not set. */
export function shownIn(value: unknown): Shown {
  const said = (of: keyof Shown): unknown => {
    let at = value;
    for (const key of SHOWN_SETTINGS[of].key.split('.'))
      at = typeof at === 'object' && at !== null ? (at as Readonly<Record<string, unknown>>)[key] : undefined;
    return at;
  };
  const whether = (of: Exclude<keyof Shown, 'lenses'>): boolean => {
    const set = said(of);
    return typeof set === 'boolean' ? set : SHOWN_SETTINGS[of].default === true;
  };
  const lenses = said('lenses');
  return {
    grams: whether('grams'),
    percent: whether('percent'),
    taken: whether('taken'),
    scale: whether('scale'),
    lenses: LENSES_SHOWN.find((each) => each === lenses) ?? 'all',
  };
}
