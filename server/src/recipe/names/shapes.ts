/**
 * Knows what steps call a food by how its line says it is cut: `venison, cubed` are the cubes.
 * Refuses to know foods.
 */
import text from '../../../data/shapes.tsv';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { wordsOf } from '../words.ts';

interface Shape {
  readonly noun: string;
  readonly cut: readonly string[];
}

const SHAPES: readonly Shape[] = rowsIn(text).map(([noun = '', cut]) => ({ noun, cut: wordsIn(cut) }));

const NOUNS: ReadonlySet<string> = new Set(SHAPES.map(({ noun }) => noun));
const CUT = new Map(SHAPES.flatMap(({ noun, cut }) => cut.map((word) => [word, noun] as const)));

/** Whether a word, as it is compared, is that of a shape. */
export const isShape = (word: string): boolean => NOUNS.has(word);

/** The shapes that the words behind a name give the food, as they are compared. */
export function shapesIn(preparation: string): readonly string[] {
  const shapes: string[] = [];
  let into = false;
  for (const word of wordsOf(preparation)) {
    if (word === 'in' || word === 'into') into = true;
    const shape = CUT.get(word) ?? (into && NOUNS.has(word) ? word : undefined);
    if (shape !== undefined && !shapes.includes(shape)) shapes.push(shape);
  }
  return shapes;
}
