/**
 * Knows which tasks of a recipe wait for which: in a part one for the other, a part for the parts that it names.
 * Refuses to know how long anything takes.
 */
import type { Part, Recipe } from '../model.ts';
import type { Drafted } from './plan-task.ts';

export interface Linked {
  readonly tasks: readonly Drafted[];
  /** By task. */
  readonly after: readonly (readonly number[])[];
}

export function linked({ parts }: Recipe, drafted: readonly (readonly Drafted[])[]): Linked {
  const tasks = drafted.flat();
  const after: number[][] = tasks.map(() => []);
  const ranges = new Map<number, { readonly first: number; readonly last: number }>();
  let from = 0;
  for (const own of drafted) {
    const [first] = own;
    if (first !== undefined) ranges.set(first.part, { first: from, last: from + own.length - 1 });
    own.forEach((_, i) => {
      for (const before of beforeIn(own, i)) after[from + i]?.push(from + before);
    });
    from += own.length;
  }
  for (const part of parts) {
    const own = ranges.get(part.index);
    if (own === undefined) continue;
    for (const { other, line } of takenIn(part, parts)) {
      const before = ranges.get(other);
      if (before === undefined) continue;
      const task = tasks.findIndex((each, i) => i >= own.first && i <= own.last && each.line >= line);
      // `Serve with the sauce`: both are there when it is eaten.
      if (task >= 0 && !reaches(after, before.last, task)) after[task]?.push(before.last);
    }
  }
  return { tasks, after };
}

/** What a task of a part waits for: the one before it; what goes on meanwhile waits for what that waits for, and both are waited for. */
function beforeIn(own: readonly Drafted[], i: number): readonly number[] {
  const meanwhile = own[i]?.meanwhile === true;
  let at = i - 1;
  const beside: number[] = [];
  while (own[at]?.meanwhile === true) {
    beside.push(at);
    at--;
  }
  const main = own[at];
  if (meanwhile) {
    // One pair of hands does one after the other.
    if (beside[0] !== undefined) return [beside[0]];
    return main === undefined || main.hands ? (at < 0 ? [] : [at]) : beforeIn(own, at);
  }
  return at < 0 ? beside.slice(0, 1) : [at, ...beside.slice(0, 1)];
}

interface Taken {
  readonly other: number;
  /** Of the step that takes it; the first where the list does. */
  readonly line: number;
}

function takenIn({ index, head, steps }: Part, parts: readonly Part[]): readonly Taken[] {
  const found: Taken[] = [];
  for (const { ofPart } of head.ingredients) if (ofPart !== undefined) found.push({ other: ofPart, line: 0 });
  for (const { line, mentions } of steps)
    for (const { part, ingredients } of mentions) {
      if (part !== undefined && part !== index) found.push({ other: part, line });
      // What an earlier part lists and has in hand.
      for (const ref of ingredients) if (ref.part < index) found.push({ other: ref.part, line });
    }
  // A part without a list goes on with what the one before it made.
  const before = parts[index - 1];
  if (found.length === 0 && head.ingredients.length === 0 && before !== undefined)
    found.push({ other: before.index, line: 0 });
  return found;
}

/** Whether the task waits for the other already, so that the other cannot wait for it. */
function reaches(after: readonly (readonly number[])[], task: number, other: number): boolean {
  const seen = new Set<number>();
  const look = (at: number): boolean => {
    if (at === other) return true;
    if (seen.has(at)) return false;
    seen.add(at);
    return (after[at] ?? []).some(look);
  };
  return look(task);
}
