/**
 * Knows what is looked at on a page while the text says otherwise: another number of pieces, other measures, a measure being turned.
 * Refuses to know how any of it is worked out.
 */

/** Plain data, kept by whoever shows the page; a field that is absent is as the text says. */
export interface Look {
  /** So many of what it makes. */
  readonly makes?: number;
  /** What the text said then: once it says otherwise, it is looked at as it is. */
  readonly makesOf?: number;
  readonly measures?: 'weight-first' | 'measure-first';
  readonly degrees?: 'C' | 'F';
  /** The measure of a part that is being turned, and its value so far; a ratio, or degrees Celsius. */
  readonly turn?: { readonly part: string; readonly measure: string; readonly value?: number };
  /** Where which substance of which part comes from; of the whole where no part is said. */
  readonly madeOf?: { readonly substance?: string; readonly part?: string };
  /** When it is to be on the table: `18:30`. */
  readonly serve?: string;
  /** The figures of a label as cooking leaves them. */
  readonly cooked?: true;
  /** The steps of the day: one part after the other, or as absent, by the clock. */
  readonly order?: 'clock' | 'part';
}

/** How what is looked at is said beside what the text says. */
export interface Looking {
  /** `12 slices`, `measures first`, `°F`. */
  readonly at: string;
  /** `The text says 10.` */
  readonly text: string;
  /** What does not follow, each a sentence. */
  readonly said: readonly string[];
  /** `Back to 10`. */
  readonly back: string;
  /** Why it cannot be written, in one sentence; absent where it can. */
  readonly refused?: string;
}

/** The six views, in their order, by the id of their section. */
export const VIEWS = ['recipe', 'formula', 'made-of', 'day', 'label', 'trials'] as const;
export type ViewName = (typeof VIEWS)[number];
