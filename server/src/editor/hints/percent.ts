/** Baker's percentages behind the lines of a part that is a dough or a batter. */
import type { Part } from '../../recipe/model.ts';
import { shareFacts } from '../facts.ts';
import { sayShare } from '../words.ts';
import type { Hint } from './hint.ts';

/** With less flour than this share of all, it binds a sauce and is no 100 %; from memory: a choux paste has a sixth. */
const LEAST_FLOUR = 0.12;

/** Nothing is written by these: a line in per cent is another recipe, which a cook asks for by name. */
export function percentHints(part: Part): Hint[] {
  const { flourG, massG, notUnderstood, ingredients } = part.head;
  if (notUnderstood.length > 0 || !massG.complete || flourG.low < LEAST_FLOUR * massG.high || flourG.low <= 0)
    return [];
  return ingredients.flatMap((ingredient) => {
    const { weighed, node, line, percent } = ingredient;
    const label =
      weighed.known && percent === undefined && !ingredient.free ? sayShare(weighed.grams, flourG) : undefined;
    if (label === undefined || node.name === undefined || ingredient.shares === true) return [];
    return [{ line, of: ingredient.nameNode, label, facts: () => shareFacts(part, ingredient) }];
  });
}
