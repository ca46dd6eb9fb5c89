/** Knows what a line of flesh says of the shape that goes into the oven, from `data/heat/cuts.tsv`. Refuses to know its weight. */
import text from '../../../data/heat/cuts.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn } from '../../measure/table-rows.ts';
import { thicknessIn } from '../../prose/thickness.ts';
import type { Ingredient } from '../model.ts';
import { wordsOf } from '../words.ts';

export interface Cut {
  readonly is: 'joint' | 'small' | 'portion';
  /** Of a joint, by its diameter. */
  readonly length: number;
}

interface Row extends Cut {
  readonly words: readonly string[];
  /** What is told of it behind the name was taken out: `chicken, giblets removed`. */
  readonly isInName: boolean;
}

const OFFAL = 'offal';

const ROWS = once((): readonly Row[] =>
  rowsIn(text).map(([word = '', is, length]) => ({
    words: wordsOf(word),
    is: is === 'joint' ? is : is === 'portion' || is === OFFAL ? 'portion' : 'small',
    isInName: is === OFFAL,
    length: Number(length),
  })),
);

/** The first row that the line names. */
export function cutOf({ name, node }: Ingredient): Cut | undefined {
  const called = wordsOf(name).length;
  const words = wordsOf(`${name} ${node.preparation?.text ?? ''}`);
  return ROWS().find((row) =>
    words.some((_, at) => (at < called || !row.isInName) && row.words.every((word, i) => words[at + i] === word)),
  );
}

/** m, where its preparation or name says how thick a piece is. */
export const thicknessOf = ({ name, node }: Ingredient): number | undefined =>
  thicknessIn(`${name}, ${node.preparation?.text ?? ''}`);
