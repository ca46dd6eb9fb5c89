/**
 * Knows how a list of ingredients is written on a label: allergens in capitals, percentages of what the name stresses.
 */
import type { LabelIngredient } from './ingredients.ts';

/** Below so much the order is free behind the others (annex VII, part A, point 6). */
const LITTLE = 2;

export function ingredientsSaid(ingredients: readonly LabelIngredient[]): string {
  const said = ingredients.map(ingredientSaid).join(', ');
  const isFree = ingredients.filter(({ percent }) => percent !== null && percent < LITTLE).length > 1;
  return isFree ? `${said}. What is less than ${LITTLE} % may follow in any order.` : `${said}.`;
}

function ingredientSaid({ name, grams, declared, allergens, own_label }: LabelIngredient): string {
  const more = [
    declared ?? '',
    ...allergens.map((each) => each.toUpperCase()),
    own_label ? 'its own ingredients, from its label' : '',
    grams === null ? 'not weighed: its place is not known' : '',
  ].filter((each) => each !== '');
  return more.length === 0 ? name : `${name} (${more.join('; ')})`;
}
