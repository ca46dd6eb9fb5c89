/**
 * Knows how a part that is taken out of its file keeps the oven that was set for it there.
 */
import { firstInOven } from '../checks/method/first-oven.ts';
import { parseTogether } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import type { SentenceItem, WordNode } from '../notation/tree.ts';
import { bindRecipe } from '../recipe/recipe.ts';
import type { World } from '../recipe/world.ts';
import type { Block, Blocks, WrittenLine } from './written.ts';

/** The lines of a part taken out of its file; the oven that was set before it there is written where it bakes first. */
export function withOven(taken: Block, { head, blocks }: Blocks, world: World): readonly WrittenLine[] {
  const upTo = blocks.slice(0, blocks.indexOf(taken) + 1);
  const document = parseTogether([...head, ...upTo.flatMap((b) => b.lines)].map((l) => l.text).join('\n'));
  const recipe = bindRecipe(outline(document), world);
  const part = recipe.parts.at(-1);
  const first = part === undefined ? undefined : firstInOven(part);
  if (part === undefined || first?.order === undefined) return taken.lines;
  const set = recipe.parts
    .flatMap((p) => p.steps.map((step) => ({ at: (recipe.partsAt[p.index] ?? 0) + step.line, step })))
    .flatMap(({ at, step }) => step.heat.flatMap(({ role, node }) => (role === 'oven' ? [{ at, node }] : [])))
    .at(-1);
  const oven = set ?? recipe.oven;
  if (oven === undefined) return taken.lines;
  const { step, order } = first;
  const words = document.lines[oven.at]?.text.slice(oven.node.start, oven.node.end) ?? '';
  const { end } = lastBefore(step.sentence.items, order);
  return taken.lines.map((line, i) =>
    i === step.line ? { ...line, text: `${line.text.slice(0, end)} at ${words}${line.text.slice(end)}` } : line,
  );
}

/** Where an order has named what it bakes, and has not yet said for how long: the last thing before that. */
function lastBefore(items: readonly SentenceItem[], order: WordNode): SentenceItem {
  let last: SentenceItem = order;
  for (const item of items.slice(items.indexOf(order) + 1)) {
    if (item.kind === 'mark' || item.kind === 'duration' || item.kind === 'temperature') break;
    if (item.kind === 'word' && AFTER_WHAT.has(item.word)) break;
    last = item;
  }
  return last;
}

const AFTER_WHAT: ReadonlySet<string> = new Set(['for', 'until', 'till', 'and', 'then', 'about', 'another']);
