/**
 * Knows how a part that is taken out of its file keeps the oven that was set for it there.
 */
import { parseTogether } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import type { World } from '../recipe/model.ts';
import { bindRecipe } from '../recipe/recipe.ts';
import { ovenBefore } from './oven-before.ts';
import type { Block, Blocks, WrittenLine } from './written.ts';

/** The lines of a part taken out of its file; the oven that was set before it there is written where it bakes first. */
export function withOven(taken: Block, { head, blocks }: Blocks, world: World): readonly WrittenLine[] {
  const upTo = blocks.slice(0, blocks.indexOf(taken) + 1);
  const document = parseTogether([...head, ...upTo.flatMap((b) => b.lines)].map((l) => l.text).join('\n'));
  const recipe = bindRecipe(outline(document), world);
  const part = recipe.parts.at(-1);
  const oven = part === undefined ? undefined : ovenBefore(document, recipe, part);
  if (oven === undefined) return taken.lines;
  return taken.lines.map((line, i) =>
    i === oven.line ? { ...line, text: `${line.text.slice(0, oven.at)}${oven.text}${line.text.slice(oven.at)}` } : line,
  );
}
