/**
 * Knows of what sort something is: a part of its kind, an ingredient of its food. A food of the house is where it is written; the rest are pages.
 * Refuses to know where pages are shown.
 */
import type { Position } from '../notation/document.ts';
import { foodPageName, kindPageName } from '../publish/type-pages.ts';
import type { Ingredient } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { houseFoodAt } from './across-files.ts';
import type { Kitchen } from './kitchen.ts';
import { foodName } from './navigation.ts';
import { cursorAt, holds, type Located, partAt, toWhole } from './place.ts';

export type TypeDefinition = { readonly page: string } | Located;

export function typeDefinition(snapshot: Snapshot, position: Position, kitchen: Kitchen): TypeDefinition | undefined {
  const { line, at, character } = cursorAt(snapshot, position);
  const { as } = titleOf(line.statement);
  if (as !== undefined && holds(as, character)) {
    const part = line.statement.kind === 'recipe' ? snapshot.recipe.parts[0] : partAt(snapshot, at);
    const kind = part?.head.kind;
    return kind && { page: kindPageName(kind) };
  }
  const { book } = snapshot.house.world;
  const name = foodName(snapshot, position);
  const match = name === undefined ? undefined : book.find(name);
  const food = match?.kind === 'food' ? match.food : mentioned(snapshot, position)?.food;
  if (food === undefined) return undefined;
  return (food.house === true ? houseFoodAt(snapshot, food.name, kitchen) : undefined) ?? { page: foodPageName(food) };
}

/** The one ingredient that a step names there; in a variant, of those it inherits too. */
function mentioned(snapshot: Snapshot, position: Position): Ingredient | undefined {
  const there = toWhole(snapshot, position);
  const { recipe } = there === undefined ? snapshot : snapshot.whole;
  const { part, inPart, character } = cursorAt(there === undefined ? snapshot : snapshot.whole, there ?? position);
  const step = part?.steps.find((each) => each.line === inPart);
  const mention = step?.mentions.find((each) => holds(each, character));
  const [ref, ...more] = mention?.ingredients ?? [];
  return ref === undefined || more.length > 0 ? undefined : recipe.parts[ref.part]?.head.ingredients[ref.ingredient];
}
