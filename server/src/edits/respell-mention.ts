/**
 * Knows how a mention in a sentence is given the list's own wording.
 * Refuses where it is not sure which line is meant.
 */
import type { Document } from '../notation/document.ts';
import type { Mention, Part, Recipe, Step } from '../recipe/model.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface Respelling {
  readonly name: string;
  readonly edits: readonly TextEdit[];
}

/** The mention in the words of its line; undefined where it has them, or could be several lines. */
export function respellMention(
  document: Document,
  recipe: Recipe,
  part: Part,
  step: Step,
  mention: Mention,
): Respelling | undefined {
  const line = (recipe.partsAt[part.index] ?? 0) + step.line;
  const said = (document.lines[line]?.text ?? '').slice(mention.start, mention.end);
  if (mention.verb || mention.forced || mention.every) return undefined;
  const name = nameOf(recipe, mention);
  if (name === undefined || said.toLowerCase() === name.toLowerCase()) return undefined;
  const capital = /^\p{Lu}/u.test(said) ? name.charAt(0).toUpperCase() + name.slice(1) : name;
  return { name, edits: [replaceSpan(line, mention, capital)] };
}

function nameOf(recipe: Recipe, { ingredients, part }: Mention): string | undefined {
  if (part !== undefined) return recipe.parts[part]?.head.name || undefined;
  const names = new Set(ingredients.map((r) => recipe.parts[r.part]?.head.ingredients[r.ingredient]?.name));
  const [name] = names;
  return names.size === 1 ? name : undefined;
}
