/**
 * Knows which figures of a page are others than the text has, while another size or other measures are looked at.
 * Refuses to know why.
 */
import type { PageIngredient, ReaderPage } from '../reader-page.ts';
import type { Piece } from '../step-text.ts';

/** The objects of the page that is shown whose figures differ. */
export interface Differences {
  readonly amounts: ReadonlySet<PageIngredient>;
  readonly pieces: ReadonlySet<Piece>;
  readonly makes: boolean;
  readonly pan: boolean;
}

/** Nothing differs of a page from itself. */
export function differencesOf(shown: ReaderPage, written: ReaderPage): Differences {
  const amounts = new Set<PageIngredient>();
  const pieces = new Set<Piece>();
  if (shown !== written)
    shown.sections.forEach((section, i) => {
      const text = written.sections[i];
      section.ingredients.forEach((ingredient, j) => {
        if (ingredient.first !== text?.ingredients[j]?.first) amounts.add(ingredient);
      });
      section.method.forEach((step, j) => {
        const before = text?.method[j]?.pieces ?? [];
        step.pieces.forEach((piece, k) => {
          if (piece.kind !== undefined && piece.text !== before[k]?.text) pieces.add(piece);
        });
      });
    });
  return { amounts, pieces, makes: shown.makes !== written.makes, pan: shown.pan !== written.pan };
}
