/** Knows what is said of a size once it is worked out: by how much each part grows. Refuses to know how it was asked for. */

/** How much larger everything becomes. */
export interface Sizes {
  /** Of what fills the pan, and of everything where no part lines it. */
  readonly by: number;
  /** Of the parts that line the pan, by part. */
  readonly lining: ReadonlyMap<number, number>;
  /** Of the number of pieces, where that was asked for. */
  readonly pieces: number;
  /** What one piece is to weigh. */
  readonly eachG?: number;
  /** The yield as asked for: `24 rolls`. */
  readonly made?: { readonly count: number; readonly words: string };
  /** The pan as asked for. */
  readonly pan?: string;
  /** How much deeper the pan is. */
  readonly deeper?: number;
  readonly said: readonly string[];
}

export const plainly = (by: number, said: readonly string[] = []): Sizes => ({
  by,
  lining: new Map(),
  pieces: by,
  said,
});
