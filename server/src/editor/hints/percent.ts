/** Baker's percentages behind the lines of a part that is reckoned by its flour. */

import { percentText } from '../../measure/number-text.ts';
import { flourSharesOf } from '../../recipe/measures/flour-shares.ts';
import type { Part } from '../../recipe/model.ts';
import { shareFacts } from '../facts.ts';
import { sayOfFlour } from '../words.ts';
import type { Hint } from './hint.ts';

/** Nothing is written by these: a line in per cent is another recipe, which a cook asks for by name. */
export function percentHints(part: Part): Hint[] {
  if (!part.head.massG.complete) return [];
  return part.head.ingredients.flatMap((ingredient) => {
    const { node, line, percent } = ingredient;
    const of = percent === undefined && !ingredient.free ? flourSharesOf(part.head, ingredient) : undefined;
    if (of === undefined || node.name === undefined || ingredient.shares === true) return [];
    const label =
      of.all === undefined ? percentText(of.listed.likely) : sayOfFlour(of, ({ likely }) => percentText(likely));
    return [{ line, of: ingredient.nameNode, label, facts: () => shareFacts(part, ingredient) }];
  });
}
