/**
 * Knows how one amount of a food is weighed by itself, and in which words that is told.
 * Refuses to know a recipe around it.
 */
import { likelyGrams } from '../food/weigh.ts';
import { likelyText } from '../measure/number-text.ts';
import { parseDocument } from '../notation/document.ts';
import { bindIngredient } from '../recipe/list/ingredient.ts';
import type { Ingredient, World } from '../recipe/model.ts';

/** The amount as an ingredient of a list of one line; undefined for words that are none. */
export function weighedLine(words: string, world: World): Ingredient | undefined {
  const statement = parseDocument(words).lines[0]?.statement;
  return statement?.kind === 'ingredient' ? bindIngredient(statement, 0, world) : undefined;
}

/** The grams, or that they are not known and why; each line of it by itself. */
export function weighingLines({ weighed, food, match, name }: Ingredient): readonly string[] {
  if (weighed.known) {
    const grams = likelyText(likelyGrams(weighed), weighed.grams.low, weighed.grams.high);
    return [`${grams} ${food?.name ?? name}`, `${weighed.reason.words} (${weighed.reason.source})`];
  }
  const near = match.kind === 'ambiguous' ? match.foods : match.kind === 'unknown' ? match.near : [];
  const names = near.map((f) => f.name).join(', ');
  return [
    `not known${food === undefined ? '' : `, ${food.name}`}: ${weighed.why}`,
    ...(near.length === 0 ? [] : [`${match.kind === 'ambiguous' ? 'it could be' : 'did you mean'} ${names}?`]),
  ];
}
