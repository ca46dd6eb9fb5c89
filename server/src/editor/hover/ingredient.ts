/** A line of the list: its weight and why, its shares, what it holds, and which steps take it. */

import { termsOf } from '../../notation/item-amounts.ts';
import type { IngredientNode } from '../../notation/tree.ts';
import type { Ingredient, LedgerEntry, Part } from '../../recipe/model.ts';
import { capital } from '../../recipe/words.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import {
  allergenFacts,
  figure,
  foodFacts,
  ingredientComposition,
  overOf,
  sayPortion,
  sayUse,
  shareFacts,
  trimFact,
  weightFact,
} from '../facts.ts';
import { holds, ingredientAt, itemSpan, lineOfPart, placeOf, sayLine } from '../place.ts';
import type { Fact, HoverSource } from './fact.ts';
import { readingFacts } from './reading.ts';

export const hoverIngredient: HoverSource = (snapshot, cursor) => {
  const { line, part, at, character } = cursor;
  const found = ingredientAt(cursor);
  if (part === undefined || found === undefined) return undefined;
  const { ingredient } = found;
  const { node, nameNode } = ingredient;
  const item = itemSpan(node, line.text);
  if (!holds(item, character)) return undefined;
  const other = ingredient.others?.find(({ name }) => holds(name, character));
  if (other !== undefined)
    return {
      at: placeOf(at, other.name),
      title: other.name.text,
      subtitle: `may be taken in the place of ${nameNode.text}`,
      facts: other.match.kind === 'food' ? foodFacts(other.match.food) : [],
    };
  const alone = part.head.ingredients.filter((i) => i.node === node).length === 1;
  const span = !alone && holds(nameNode, character) ? nameNode : item;
  return {
    at: placeOf(at, span),
    title: line.text.slice(span.start, Math.min(span.end, Math.max(node.name?.end ?? span.end, amountEnd(node)))),
    ...subtitleOf(ingredient),
    facts: [
      ...readingFacts(line, ingredient, snapshot.house.world),
      ...ingredientFacts(part, ingredient),
      ...useFacts(snapshot, part, ingredient),
    ],
  };
};

/** Where the amount ends, in front of the name or behind it. */
function amountEnd({ amount }: IngredientNode): number {
  if (amount === undefined) return 0;
  return amount.kind === 'measured' ? Math.max(...termsOf(amount).map((term) => term.end)) : amount.end;
}

export function subtitleOf({ food, name, match }: Ingredient): { subtitle?: string } {
  if (food !== undefined && match.kind === 'food' && match.unread !== undefined)
    return { subtitle: `${food.name}; the book does not know \`${match.unread.join(' ')}\`` };
  if (food !== undefined && food.name.toLowerCase() !== name.toLowerCase()) return { subtitle: food.name };
  if (match.kind === 'ambiguous') return { subtitle: `could be ${match.foods.map((f) => f.name).join(' or ')}` };
  if (match.kind !== 'unknown') return {};
  return {
    subtitle: `a food that is not in the book${match.class === undefined ? '' : `; by its noun ${match.raw ? 'raw ' : ''}${match.class}`}`,
  };
}

/** Weight, shares, composition, trim and allergens. */
export function ingredientFacts(part: Part, ingredient: Ingredient): Fact[] {
  const { food, weighed, node } = ingredient;
  const facts: (Fact | undefined)[] = [weightFact(ingredient), ...shareFacts(part, ingredient)];
  facts.push(ingredientComposition(ingredient));
  if (food !== undefined) {
    const trim = trimFact(food);
    if (node.bought !== undefined || weighed.known) facts.push(trim);
    facts.push(...allergenFacts(food));
  }
  return facts.filter((f) => f !== undefined);
}

/** What each step takes, and what is left. */
function useFacts(snapshot: Snapshot, part: Part, ingredient: Ingredient): Fact[] {
  const entry = part.ledger.find((e) => e.ingredient === ingredient);
  if (entry === undefined) return [];
  if (entry.uses.length === 0) return ingredient.optional ? [] : [figure('Used', 'in no step')];
  const taken = entry.uses.filter((use) => use.taken.high > 0 || use.mention.portion.kind !== 'plain');
  const facts = (taken.length === 0 ? entry.uses : taken).map((use) => {
    const line = lineOfPart(snapshot, use.part, use.line);
    const where = use.part === part.index ? '' : ` (${snapshot.recipe.parts[use.part]?.head.name ?? ''})`;
    return figure(`${capital(sayLine(snapshot, line))}${where}`, `takes ${sayUse(ingredient, use)}`);
  });
  return [...facts, figure('Left at the end', sayLeft(entry))];
}

export function sayLeft(entry: LedgerEntry): string {
  const { left, ingredient, unsure, uses } = entry;
  if (left.high <= 0.001) {
    const over = uses.map(overOf).reduce((a, b) => ({ low: a.low + b.low, high: a.high + b.high }), left);
    return over.high <= 0.001 ? 'nothing' : `nothing: ${sayPortion(ingredient, over)} too little is listed`;
  }
  return unsure ? 'not known: a step takes an unmeasured portion' : sayPortion(ingredient, left);
}
