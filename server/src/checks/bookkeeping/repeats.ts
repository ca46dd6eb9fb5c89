/**
 * Knows which lines of a part's list say the same food a second time, prepared alike.
 */
import type { Ingredient, Part } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';
import { onceFor } from '../once.ts';

export interface Repeat {
  readonly first: number;
  readonly second: number;
}

/** Pairs of lines of one food of which the second has no step of its own: lines that steps take in turn are meant. */
export const repeatsIn = onceFor((part: Part): readonly Repeat[] => {
  if (!hasAlike(part)) return NONE;
  const seen = new Map<string, number>();
  const repeats: Repeat[] = [];
  for (const [index, { ingredient, uses }] of part.ledger.entries()) {
    const key = keyOf(ingredient);
    if (key === undefined) continue;
    const first = seen.get(key);
    if (first === undefined) seen.set(key, index);
    else if (uses.length === 0 || sameSteps(part, first, index)) repeats.push({ first, second: index });
  }
  return repeats;
});

const NONE: readonly Repeat[] = [];

/** Whether two lines are of one food at all; mostly none are. */
function hasAlike({ head: { ingredients } }: Part): boolean {
  const foods = new Set<string>();
  for (const { food } of ingredients) {
    if (food === undefined) continue;
    if (foods.has(food.id)) return true;
    foods.add(food.id);
  }
  return false;
}

function keyOf({ food, name, node, free }: Ingredient): string | undefined {
  if (food === undefined || free || node.name === undefined) return undefined;
  const prepared = [node.preparation?.text ?? '', node.note?.text ?? ''].flatMap(wordsOf);
  return `${food.id} ${wordsOf(name).join(' ')} ${prepared.join(' ')} ${node.optional === undefined ? '' : 'optional'}`;
}

function sameSteps(part: Part, a: number, b: number): boolean {
  const steps = (i: number) => new Set((part.ledger[i]?.uses ?? []).map((u) => `${u.part} ${u.step}`));
  const first = steps(a);
  return [...steps(b)].every((s) => first.has(s));
}
