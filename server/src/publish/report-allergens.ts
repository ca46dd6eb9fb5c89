/**
 * Knows which allergens a report names, by the lists of the United States and of the European Union.
 */
import { allergensListed } from '../recipe/list/allergens.ts';
import { linesNotUnderstood } from '../recipe/list/not-understood.ts';
import type { Recipe } from '../recipe/model.ts';
import type { Report } from './report-shape.ts';

/** What the labels of both sides must name; a food that is not known, or that nobody says it of, is named, for a false "none" could hurt someone. */
export function allergensOf(recipe: Recipe): Report['allergens'] {
  const { us, eu, mayContain, brought, mayBeBrought, labels, notKnown } = allergensListed(
    recipe.parts.map((p) => p.head),
  );
  // A name on one of these is named with its line.
  const unread = [...new Set(linesNotUnderstood(recipe).flatMap((l) => (l.part === undefined ? [] : l.text)))];
  // What another file brings is not read here, unless the recipe was written out in full.
  const elsewhere = recipe.inherits ? ['what it takes from another file'] : [];
  return {
    us,
    eu,
    may_contain: mayContain,
    brought,
    may_be_brought: mayBeBrought,
    check_label: labels.map(({ name, us, eu }) => ({ food: name, us, eu })),
    // What stands on a line that is not understood may be anything.
    not_known: [...elsewhere, ...notKnown.filter((name) => !unread.some((line) => line.includes(name))), ...unread],
  };
}

/** The names of both lists, once each: `fish, crustaceans, crustacean shellfish`. */
export const allergenNames = ({ us, eu }: { readonly us: readonly string[]; readonly eu: readonly string[] }): string =>
  [...new Set([...eu, ...us])].join(', ');
