/**
 * Knows what stands behind the name of an ingredient in print: what is done to it and what may stand for it, without the foods of its line
 * that are listed by themselves.
 * Refuses to know amounts that are worked out.
 */
import type { IngredientNode, Span } from '../notation/tree.ts';
import type { Ingredient, PartHead } from '../recipe/model.ts';

/** In one line, blanks as they come; empty where nothing is said. */
export function saidOf(ingredient: Ingredient, { ingredients, source }: PartHead): string {
  const { node } = ingredient;
  const line = source.lines[ingredient.line]?.text ?? '';
  const others = (node.others ?? []).map(({ start, end }) => line.slice(start, end));
  return [preparationOf(ingredient, ingredients, line), ...others]
    .map((text) => text.replace(/\s+/g, ' ').trim())
    .filter((text) => text !== '')
    .join(', ');
}

function preparationOf(ingredient: Ingredient, all: readonly Ingredient[], line: string): string {
  const { preparation } = ingredient.node;
  if (preparation === undefined) return '';
  let said = '';
  let at = preparation.start;
  const { end } = preparation;
  const listed = all
    .filter((other) => other.line === ingredient.line)
    .map((other) => ({ other, ...spanOn(ingredient, other) }));
  for (const { other, start, end: last } of listed.sort((a, b) => a.start - b.start)) {
    if (start < at || last > end) continue;
    said += line.slice(at, start);
    // `softened in water`
    said += INTO.test(said) ? other.name : GONE;
    at = last;
  }
  if (at === preparation.start) return preparation.text;
  return `${said}${line.slice(at, end)}`
    .replace(/\s+/g, ' ')
    .replace(WITH_GONE, '')
    .replace(/^[\s,]+|[\s,]+$/g, '');
}

/** All of another item of the line; of one that shares the amount its name alone. */
function spanOn({ node }: Ingredient, other: Ingredient): Span {
  if (other.node === node) return other.nameNode;
  return { start: startOf(other.node), end: Math.max(other.nameNode.end, other.node.preparation?.end ?? 0) };
}

const startOf = ({ taken, amount, name }: IngredientNode): number => (taken ?? amount ?? name)?.start ?? 0;

const INTO = /\b(?:in|into|with)\s*$/i;
/** Where a food stood that is listed by itself; no line has this character. */
const GONE = '\uE000';
/** With what joined it to the words before. */
const WITH_GONE = /[\s,]*(?:\b(?:and|plus)\b|[&+])?\s*\uE000/gi;
