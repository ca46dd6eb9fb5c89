/**
 * Knows what the oven is set to above a part that bakes at it, and where the part would have to say so by itself.
 * Refuses to know why a part is taken out of its recipe.
 */

import type { Order } from '../checks/method/cues.ts';
import { firstInOven } from '../checks/method/first-oven.ts';
import type { Document } from '../notation/document.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { heatsOf } from '../recipe/journey/figures.ts';
import type { Part, Recipe } from '../recipe/model.ts';

export interface OvenBefore {
  /** The line of the part that bakes first. */
  readonly line: number;
  /** The character of that line behind what is baked. */
  readonly at: number;
  /** ` at 200 C` */
  readonly text: string;
}

/** Undefined where the part says it itself, has nothing in the oven, or none was set. */
export function ovenBefore(document: Document, recipe: Recipe, part: Part): OvenBefore | undefined {
  const { step, order } = firstInOven(part) ?? {};
  if (step === undefined || order === undefined) return undefined;
  const set = recipe.parts
    .slice(0, part.index)
    .flatMap((p) => p.steps.map((s) => ({ at: (recipe.partsAt[p.index] ?? 0) + s.line, step: s })))
    .flatMap(({ at, step }) =>
      heatsOf(step).flatMap(({ of, written: [node] }) => (of === 'oven' && node !== undefined ? [{ at, node }] : [])),
    )
    .at(-1);
  const oven = set ?? recipe.oven;
  if (oven === undefined) return undefined;
  const words = document.lines[oven.at]?.text.slice(oven.node.start, oven.node.end) ?? '';
  return { line: step.line, at: lastBefore(step.sentence.items, order), text: ` at ${words}` };
}

/** Where an order has named what it bakes, and has not yet said for how long: behind the last thing before that. */
function lastBefore(items: readonly SentenceItem[], { verb, end, times, temperatures, until }: Order): number {
  const limit = Math.min(end, ...[...times, ...temperatures, ...until].map(({ start }) => start));
  let last = verb.end;
  for (const item of items) {
    if (item.start < verb.end) continue;
    if (item.kind === 'mark' || item.end > limit) break;
    last = item.end;
  }
  return last;
}
