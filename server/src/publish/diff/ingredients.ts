/**
 * Knows what differs in the lists of ingredients: amounts against the batch, preparations, what came, went, moved or was swapped.
 * Refuses to know the steps.
 */

import { statedSpan } from '../../notation/item-amounts.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { collapse } from '../../recipe/words.ts';
import { gramsOf, NEAR, sameAmount } from './batch.ts';
import type { Change } from './change.ts';
import { nameKey, type Paired, pairBy, pairIngredients } from './pair.ts';
import { sameWords } from './written.ts';

interface Loose {
  readonly part: Part;
  readonly ingredient: Ingredient;
}

export function ingredientChanges(parts: Paired<Part>, batch: number): Change[] {
  const changes: Change[] = [];
  const dropped: Loose[] = [];
  const added: Loose[] = [];
  for (const [a, b] of parts.both) {
    const pairs = pairIngredients(a, b);
    for (const [x, y] of pairs.both) changes.push(...amountChanges(a, b, x, y, batch));
    dropped.push(...pairs.dropped.map((ingredient) => ({ part: a, ingredient })));
    added.push(...pairs.added.map((ingredient) => ({ part: b, ingredient })));
  }
  const inPart = pairBy(
    dropped,
    added,
    (x, y) =>
      x.part.head.name === y.part.head.name &&
      x.ingredient.food !== undefined &&
      x.ingredient.food.class === y.ingredient.food?.class,
  );
  for (const [x, y] of inPart.both)
    changes.push({
      kind: 'ingredient-swapped',
      part: y.part.head.name,
      from: x.ingredient.name,
      to: y.ingredient.name,
      fromAmount: writtenAmount(x.part, x.ingredient),
      toAmount: writtenAmount(y.part, y.ingredient),
    });
  const moved = pairBy(
    [...inPart.dropped, ...parts.dropped.flatMap(looseOf)],
    [...inPart.added, ...parts.added.flatMap(looseOf)],
    (x, y) => nameKey(x.ingredient.name) === nameKey(y.ingredient.name),
  );
  for (const [x, y] of moved.both)
    changes.push({ kind: 'ingredient-moved', name: y.ingredient.name, from: x.part.head.name, to: y.part.head.name });
  for (const { part, ingredient } of moved.dropped.filter(({ part }) => !parts.dropped.includes(part)))
    changes.push({
      kind: 'ingredient-dropped',
      part: part.head.name,
      name: ingredient.name,
      amount: writtenAmount(part, ingredient),
    });
  for (const { part, ingredient } of moved.added.filter(({ part }) => !parts.added.includes(part)))
    changes.push({
      kind: 'ingredient-added',
      part: part.head.name,
      name: ingredient.name,
      amount: writtenAmount(part, ingredient),
    });
  return changes;
}

const looseOf = (part: Part): Loose[] => part.head.ingredients.map((ingredient) => ({ part, ingredient }));

function amountChanges(a: Part, b: Part, was: Ingredient, is: Ingredient, batch: number): Change[] {
  const changes: Change[] = [];
  const part = b.head.name;
  const { name } = is;
  const [from, to] = [writtenAmount(a, was), writtenAmount(b, is)];
  const [fromG, toG] = [gramsOf(was), gramsOf(is)];
  const expectedG = fromG === null ? null : fromG * batch;
  const known = expectedG !== null && toG !== null && (batch === 1 || expectedG > 0);
  const same = known
    ? Math.abs(toG - expectedG) <= (batch === 1 ? 0.001 : Math.max(NEAR * expectedG, rounding(toG)))
    : sameAmount(was.node.amount, is.node.amount, batch) || sameWords(from, to);
  if (!same) changes.push({ kind: 'amount', part, name, from, to, fromG, toG, expectedG });
  else if (batch === 1 && !sameAmount(was.node.amount, is.node.amount, 1) && !sameWords(from, to))
    changes.push({ kind: 'measured', part, name, from, to });
  const [prepared, prepares] = [was.node.preparation?.text ?? null, is.node.preparation?.text ?? null];
  if (!sameWords(prepared, prepares)) changes.push({ kind: 'preparation', part, name, from: prepared, to: prepares });
  if (was.optional !== is.optional) changes.push({ kind: 'optional', part, name, optional: is.optional });
  return changes;
}

/** A scale shows whole grams, and tenths below ten. */
const rounding = (grams: number): number => (grams < 10 ? 0.06 : 0.6);

function writtenAmount(part: Part, { node, line }: Ingredient): string {
  const stated = statedSpan(node);
  if (stated === undefined) return '';
  const text = part.head.source.lines[line]?.text ?? '';
  return collapse(text.slice(stated.start, stated.end));
}
