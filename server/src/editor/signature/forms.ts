/** The lines that have slots to fill: what stands in each, and what opens the next. */

export interface Slot {
  /** In capitals, what is written there; with the words that open it: `by NAME`. */
  readonly name: string;
  readonly words: string;
  /** Found in what is typed behind the keyword once this slot is reached; the first has none. */
  readonly opens?: RegExp;
}

export interface Form {
  /** What the line begins with. */
  readonly lead: string;
  readonly slots: readonly Slot[];
  /** What closes it: `cm`. */
  readonly tail?: string;
}

const pan = (shape: string, ...sizes: readonly (readonly [string, string])[]): Form => ({
  lead: `pan ${shape}`,
  tail: 'cm',
  slots: sizes.map(([name, words], i) => ({
    name: i === 0 ? name : `x ${name}`,
    words,
    ...(i > 0 && { opens: new RegExp(`^(?:\\s*\\d+\\s*x\\s)?\\s*${shape}(?:[^x]*x){${i}}`) }),
  })),
});

const DEPTH = ['DEPTH', 'how deep it is'] as const;

/** By what the line begins with; of `pan` one for each shape, the first where none is typed yet. */
export const FORMS: Readonly<Record<string, readonly Form[]>> = {
  pan: [
    pan('round', ['WIDTH', 'across'], DEPTH),
    pan('square', ['SIDE', 'of one side'], DEPTH),
    pan('rectangle', ['LENGTH', 'the longer side'], ['WIDTH', 'the shorter side'], DEPTH),
    pan('loaf', ['LENGTH', 'the longer side'], ['WIDTH', 'the shorter side'], DEPTH),
    pan('ring', ['WIDTH', 'across'], ['HOLE', 'across the hole'], DEPTH),
  ],
  trial: [
    {
      lead: 'trial',
      slots: [
        { name: 'DATE', words: 'the day, as 2026-09-14' },
        { name: 'by NAME', words: 'who cooked', opens: /\sby\s/ },
      ],
    },
  ],
  took: [
    {
      lead: 'took',
      slots: [
        { name: 'TIME', words: 'how long, as 52 min' },
        { name: 'to VERB', words: 'what was done so long: bake, set', opens: /\sto\s/ },
        { name: 'in OVEN', words: 'which oven, by the name the house has for it', opens: /\sin\s/ },
      ],
    },
  ],
  started: [{ lead: 'started', slots: [{ name: 'at TEMPERATURE', words: 'how warm it went in, as 8 C' }] }],
  reached: [
    {
      lead: 'reached',
      slots: [
        { name: 'TEMPERATURE', words: 'what the thermometer read, as 81 C' },
        { name: 'in PLACE', words: 'where it was read: the centre', opens: /\sin\s/ },
      ],
    },
  ],
  weighed: [
    {
      lead: 'weighed',
      slots: [
        { name: 'AMOUNT', words: 'what the scale read, as 1385 g' },
        { name: 'out of PLACE', words: 'what it came out of: the oven', opens: /\sout of\s/ },
      ],
    },
  ],
  used: [
    {
      lead: 'used',
      slots: [
        { name: 'AMOUNT', words: 'how much was taken' },
        { name: 'NAME', words: 'of what, as the list calls it', opens: /\d\s*\p{L}+\s/u },
        { name: 'in PART', words: 'of which part', opens: /\sin\s/ },
      ],
    },
  ],
  swap: [
    {
      lead: 'swap',
      slots: [
        { name: 'NAME', words: 'what the base lists' },
        { name: 'for AMOUNT', words: 'how much goes in its place', opens: /\sfor\s/ },
        { name: 'NAME', words: 'of what', opens: /\sfor\s.*\d\s*\p{L}+\s/u },
      ],
    },
  ],
  food: [{ lead: 'food', slots: [{ name: 'NAME', words: 'what the lists of the house call it' }] }],
  trim: [{ lead: 'trim', tail: '%', slots: [{ name: 'SHARE', words: 'of the weight as bought, trimmed away' }] }],
  price: [
    {
      lead: 'price',
      slots: [
        { name: 'MONEY', words: 'what is paid, as 1.40' },
        { name: 'per AMOUNT', words: 'for how much, as 1 kg', opens: /\sper\s/ },
      ],
    },
  ],
};

/** A measure of a food of the house, `1 cup = 120 g`. */
export const MEASURE: Form = {
  lead: '',
  slots: [
    { name: 'MEASURE', words: 'as 1 cup, or 1 large' },
    { name: '= GRAMS g', words: 'what that weighs', opens: /=/ },
  ],
};
