/**
 * Knows the recipe worked out: its parts with their steps, what each step mentions, and the ledger of every ingredient.
 * Refuses to judge. Whatever an edit did not reach is the same object as before, so that findings can hang on it.
 */
import { atOnce, eachInPieces, type InPieces } from '../measure/in-pieces.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { celsiusOf } from '../notation/celsius.ts';
import { keptOn } from '../notation/kept.ts';
import type { Outline, PartSource } from '../notation/outline.ts';
import type { TemperatureNode, TextNode } from '../notation/tree.ts';
import { type Bound, bindParts } from './binding.ts';
import { partNames, takesTheSame } from './list/part-line.ts';
import type { OvenSetting, Part, PartHead, Recipe, World } from './model.ts';
import { titleOf } from './names/title.ts';
import { bindPart, withSteps } from './part.ts';
import type { YieldNode } from './yield.ts';

/** A part as its list makes it: its steps are not in it. */
export type ListedPart = Pick<Part, 'index' | 'head' | 'mixes'>;

/** What the next edit goes on from. */
const BOUND = keptOn<Recipe, Bound>();

/** The recipe of a document's outline. `before` lends what has not changed. */
export const bindRecipe = (outline: Outline, world: World, before?: Recipe): Recipe =>
  atOnce(bindingRecipe(outline, world, before));

/** The same, in pieces of a part each. */
export function* bindingRecipe(outline: Outline, world: World, before?: Recipe): InPieces<Recipe> {
  const fields = headFields(outline);
  const old = before?.world === world ? before : undefined;
  const heads = yield* bindHeads(outline, world, fields.yield?.node, old);
  const bound = yield* bindParts(heads, settingOf(fields.oven?.node), world, old && BOUND.get(old));
  const recipe: Recipe = {
    outline,
    name: titleOf(outline.recipe?.line.statement).name?.text ?? '',
    parts: bound.parts,
    heads: bound.heads,
    byName: bound.byName,
    partsAt: partsAt(outline, old),
    ...fields,
    world,
    inherits: outline.head.some(({ line }) => line.statement.kind === 'from') || hasPartOfFile(outline, old),
  };
  BOUND.set(recipe, bound);
  return recipe;
}

/** The heads of all parts; those of `old` where neither their lines nor what fixes them from outside has changed. */
function* bindHeads(
  outline: Outline,
  world: World,
  yieldNode: YieldNode | undefined,
  old: Recipe | undefined,
): InPieces<readonly PartHead[]> {
  const [only, second] = outline.parts;
  const before = old?.heads ?? [];
  if (only !== undefined && second === undefined) {
    const [batchG, kindNode] = [yieldG(yieldNode), recipeKind(outline)];
    const [there] = before;
    const isFixedAlike =
      old !== undefined &&
      before.length === 1 &&
      yieldG(old.yield?.node) === batchG &&
      isSameText(recipeKind(old.outline), kindNode);
    if (isFixedAlike && there?.source === only.source) return before;
    const head = isFixedAlike && there !== undefined ? withSteps(there, only.source) : undefined;
    return [head ?? bindPart(only.source, world, { batchG, recipeKind: kindNode, before: before.at(-1) })];
  }
  // The head of an only part counts with the recipe's yield and kind.
  const lent = before.length === 1 ? [] : before;
  const placed = lent.length === 0 ? [] : (old?.outline.parts ?? []);
  const shift = outline.parts.length - lent.length;
  const names = partNames(outline.parts.map(({ source }) => source));
  const stands = ({ source, ingredients }: PartHead): boolean => takesTheSame(source, ingredients, names);
  return yield* eachInPieces(outline.parts, (part, i) => {
    const there = lent[i];
    if (there !== undefined && (placed[i] === part || there.source === part.source) && stands(there)) return there;
    const shifted = lent[i - shift];
    if (shifted?.source === part.source && stands(shifted)) return shifted;
    const head = there === undefined || !stands(there) ? undefined : withSteps(there, part.source);
    return head ?? bindPart(part.source, world, { before: there, names });
  });
}

function partsAt({ parts }: Outline, old: Recipe | undefined): readonly number[] {
  const before = old?.outline.parts;
  const isThere = parts.length === before?.length && parts.every((p, i) => p === before[i] || p.at === before[i]?.at);
  return isThere && old !== undefined ? old.partsAt : parts.map((p) => p.at);
}

function hasPartOfFile({ parts }: Outline, old: Recipe | undefined): boolean {
  const before = old === undefined || old.inherits ? [] : old.outline.parts;
  return parts.some((p, i) => p !== before[i] && p.source !== before[i]?.source && buildsOnFile(p.source));
}

function recipeKind({ recipe }: Outline): TextNode | undefined {
  return titleOf(recipe?.line.statement).as;
}

const isSameText = (a: TextNode | undefined, b: TextNode | undefined): boolean =>
  a === b || (a?.text === b?.text && a?.start === b?.start);

function buildsOnFile(source: PartSource): boolean {
  const first = source.lines[0]?.statement;
  return first?.kind === 'part' && first.file !== undefined;
}

type Fields = Pick<Recipe, 'yield' | 'pan' | 'oven'>;

function headFields(outline: Outline): Fields {
  let fields: Fields = {};
  for (const { at, line } of outline.head) {
    const { statement } = line;
    if (statement.kind === 'yield') fields = { ...fields, yield: { at, node: statement } };
    else if (statement.kind === 'pan' && statement.pan) fields = { ...fields, pan: { at, node: statement.pan } };
    else if (statement.kind === 'oven' && statement.temperature)
      fields = { ...fields, oven: { at, node: statement.temperature } };
  }
  return fields;
}

/** The yield in grams, when it is a weight. */
function yieldG(node: YieldNode | undefined): number | undefined {
  const unit = node?.amount?.unit?.symbol;
  if (node?.amount === undefined || unit === undefined || dimensionOf(unit) !== 'mass') return undefined;
  return node.amount.quantity.low * (baseOf(unit, 'us') ?? 1);
}

function settingOf(node: TemperatureNode | undefined): OvenSetting | undefined {
  return node === undefined ? undefined : { celsiusLow: celsiusOf(node).low, fan: node.fan };
}
