/**
 * Knows how many pieces or portions of a name a recipe makes, from its yield, its notes and its steps.
 * Refuses to know what one weighs.
 */
import type { Range } from '../../measure/quantity.ts';
import { dividedIn, eachSaidIn, isPortion, makesIn } from '../../prose/printed-pieces.ts';
import type { Recipe } from '../../recipe/model.ts';
import { singular } from '../../recipe/words.ts';
import { pieceNoun, yieldNoun } from '../../recipe/yield.ts';
import { onceFor } from '../once.ts';
import { notesOf } from './notes.ts';

export interface Made extends Range {
  /** As written, in small letters; empty where nothing says of what. */
  readonly noun: string;
  /** Those who eat are counted. */
  readonly serves?: boolean;
}

/** `cookie` and `cookies`, `loaf` and `loaves` */
export const isSameNoun = (a: string, b: string): boolean =>
  singular(a) === singular(b) || `${a}s` === b || a === `${b}s`;

/** The yield's own number: of pieces, or of those who eat. */
export function yieldOf({ yield: made }: Recipe): Made | undefined {
  const amount = made?.node.amount;
  if (made === undefined || amount === undefined || amount.unit !== undefined) return undefined;
  const { low, high } = amount.quantity;
  const { counted } = amount;
  const noun = (counted?.text ?? pieceNoun(yieldNoun(made.node)).split(' ').at(-1) ?? '').toLowerCase();
  return { low, high, noun, serves: made.node.serves === true || isPortion(noun) };
}

/** All that the recipe says it makes, with its yield first. */
export const madeOf = onceFor((recipe: Recipe): readonly Made[] => {
  const own = yieldOf(recipe);
  const notes = notesOf(recipe).flatMap(({ items }) => [
    ...makesIn(items).filter(({ unit }) => unit === undefined),
    ...eachSaidIn(items).map(({ count, noun }) => ({ ...count, noun })),
  ]);
  const steps = recipe.parts.flatMap((part) =>
    part.steps.flatMap(({ sentence: { items } }) => [
      ...dividedIn(items),
      ...eachSaidIn(items).map(({ count, noun }) => ({ ...count, noun })),
    ]),
  );
  const of = [...notes, ...steps].map(({ low, high, noun }) => ({ low, high, noun }));
  return own === undefined ? of : [own, ...of];
});
