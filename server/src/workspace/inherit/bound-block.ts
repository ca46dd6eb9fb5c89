/**
 * Knows a block worked out alone, as a recipe of one part: what a line of its list weighs, and where its steps name it; and blocks worked out together.
 * Refuses to change it.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { type Document, parseTogether } from '../../notation/document.ts';
import { keptOn } from '../../notation/kept.ts';
import { outline } from '../../notation/outline.ts';
import type { Ingredient, Recipe, World } from '../../recipe/model.ts';
import { bindRecipe } from '../../recipe/recipe.ts';
import { type Block, ingredientName, namesIt, type WrittenLine } from '../written.ts';

interface BoundBlock {
  readonly document: Document;
  readonly recipe: Recipe;
}

const BOUND = keptOn<Block, BoundBlock>();

/** Where the steps of a block name an ingredient of its list; the block stands a line lower in the document. */
export function mentionsOf(block: Block, ingredientLine: number, world: World) {
  const { document, recipe } = boundAlone(block, world);
  const part = recipe.parts[0];
  const offset = recipe.partsAt[0] ?? 0;
  const ingredient = ingredientAt(recipe, ingredientLine);
  const mentions = (part?.ledger.find((e) => e.ingredient === ingredient)?.uses ?? []).map(({ line, mention }) => ({
    line: offset + line,
    mention,
    words: document.lines[offset + line]?.text.slice(mention.start, mention.end) ?? '',
  }));
  return { document, mentions };
}

/** What an ingredient line of a block weighs, likeliest. */
export function gramsIn(block: Block, line: number, world: World): number | undefined {
  const { recipe } = boundAlone(block, world);
  const weighed = ingredientAt(recipe, line)?.weighed;
  return weighed?.known === true && recipe.parts[0]?.head.nominal === false ? likelyGrams(weighed) : undefined;
}

/** A base's own block is bound once for all its variants. */
function boundAlone(block: Block, world: World): BoundBlock {
  const known = BOUND.get(block);
  if (known?.recipe.world === world) return known;
  const bound = boundIn(block.lines, world);
  BOUND.set(block, bound);
  return bound;
}

const TOGETHER = keptOn<readonly Block[], BoundBlock & { readonly lines: readonly WrittenLine[] }>();

/** Blocks as one recipe, whose lines stand one lower in the document; those of a base are bound once for all its variants. */
export function boundTogether(blocks: readonly Block[], world: World) {
  const known = TOGETHER.get(blocks);
  if (known?.recipe.world === world) return known;
  const lines = blocks.flatMap((b) => b.lines);
  const bound = { lines, ...boundIn(lines, world) };
  TOGETHER.set(blocks, bound);
  return bound;
}

function boundIn(lines: readonly WrittenLine[], world: World): BoundBlock {
  const document = parseTogether(['recipe x', ...lines.map((l) => l.text)].join('\n'));
  return { document, recipe: bindRecipe(outline(document), world) };
}

/** The line of a block that names an ingredient, or -1. */
export const lineOf = (block: Block, name: string): number =>
  block.lines.findIndex((l) => namesIt(ingredientName(l.text), name));

/** The ingredient of a block's line, in the recipe of that block alone, where it stands a line lower. */
function ingredientAt(recipe: Recipe, line: number): Ingredient | undefined {
  const offset = recipe.partsAt[0] ?? 0;
  return recipe.parts[0]?.head.ingredients.find((i) => offset + i.line - 1 === line);
}
