/** Knows how much more heat food takes in a pan of a material than in bright metal. Refuses to know pans. */
import text from '../../data/heat/pan-materials.tsv';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';

const TIMES = once(
  (): ReadonlyMap<string, number> =>
    new Map(rowsIn(text).flatMap(([words, times]) => wordsIn(words).map((word) => [word, Number(times)] as const))),
);

export interface DarkPan {
  readonly word: string;
  /** Of the coefficient. */
  readonly times: number;
}

/** The first of the words that makes a difference. */
export function darkPan(words: readonly string[] = []): DarkPan | undefined {
  for (const word of words) {
    const times = TIMES().get(word);
    if (times !== undefined) return { word, times };
  }
  return undefined;
}
