/**
 * Knows how the list of a part is written at another size: every amount of a line, its name in number, its column.
 * Refuses to know the steps.
 */
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { significant, trimmed } from '../measure/number-text.ts';
import { dimensionOf } from '../measure/unit.ts';
import { measuresOf, statedSpan, takesOf } from '../notation/item-amounts.ts';
import type { IngredientNode, MeasuredNode } from '../notation/tree.ts';
import { isEach } from '../recipe/list/line-weight.ts';
import type { Ingredient, Part, World } from '../recipe/model.ts';
import { wordsOf } from '../recipe/words.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { fileOf } from './scale-target.ts';
import { factorOf, lineIn, type ScaleEvent, type ToScale, textOf } from './scaling.ts';
import { type Manner, pluralOf, type SizedAmount, sizeAmount } from './sized-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** The list of a part at its new size; one that lies in another file stays there. */
export function* scaleList(work: ToScale, part: Part): Generator<ScaleEvent> {
  const by = factorOf(work, part.index);
  const file = fileOf(part);
  if (file !== undefined) {
    const words = `${part.head.name} comes from ${file}, and stays as it is there: make ${trimmed(by, 2)} times as much of it.`;
    yield { kind: 'said', words };
    return;
  }
  const errors: number[] = [];
  const done = new Map<IngredientNode, SizedAmount | undefined>();
  for (const ingredient of part.head.ingredients) {
    const { node, ofPart } = ingredient;
    // `1 batch of pastry`: the part is scaled where it stands.
    if (ofPart !== undefined) continue;
    // Several foods that share an amount are one on their line.
    const shared = done.get(node);
    if (shared !== undefined) yield { kind: 'line', ingredient, written: shared };
    if (done.has(node)) continue;
    const sized = yield* scaleIngredient(work, lineIn(work, part, ingredient.line), ingredient, by);
    done.set(node, sized);
    if (sized !== undefined && isMass(ingredient)) errors.push(sized.error);
  }
  if (errors.length > 1) yield { kind: 'ratio', by: (1 + Math.max(...errors)) / (1 + Math.min(...errors)) - 1 };
}

/** An error below this is not worth a word. */
const WORTH_A_WORD = 0.005;

/** One line of a list so many times as large: every amount of it, its name in number, its column. */
export function* scaleIngredient(
  work: ToScale,
  line: number,
  ingredient: Ingredient,
  by: number,
): Generator<ScaleEvent, SizedAmount | undefined> {
  const { node } = ingredient;
  const { amount } = node;
  const text = textOf(work, line);
  const manner: Manner = { ...work.manner, sums: true };
  const near = countTolerance(ingredient);
  const measured = amount?.kind === 'measured' && amount.unit?.symbol !== '%' ? amount : undefined;
  const sized = measured && sizeAmount(line, text, measured, by, manner, near);
  if (sized !== undefined) yield { kind: 'line', ingredient, written: sized };
  const edits: TextEdit[] = [...(sized?.edits ?? [])];
  for (const other of followers(ingredient, work.recipe.world))
    edits.push(...sizeAmount(line, text, other, by, manner, near).edits);
  const end = statedSpan(node)?.end ?? 0;
  const beaten = sized && measured && beatenGrams(ingredient, measured, by, sized.value, manner);
  if (beaten !== undefined) edits.push(replaceSpan(line, { start: end, end }, ` = ${beaten} g`));
  const before = edits.filter((e) => e.start.character <= end);
  const opens = text.slice(0, amount?.start ?? 0).trim() === '';
  yield {
    kind: 'edits',
    edits: [
      ...edits,
      ...(opens && measured !== undefined ? keepColumn(line, text, end, grownBy(before)) : []),
      ...(sized === undefined ? [] : nameInNumber(line, ingredient, sized.value)),
    ],
  };
  if (sized === undefined) return undefined;
  const error = beaten === undefined ? sized.error : 0;
  const off = Math.abs(error) < WORTH_A_WORD ? '' : ` (${percentOff(error)})`;
  const weight = beaten === undefined ? '' : `, ${beaten} g${ingredient.food?.class === 'egg' ? ' beaten' : ''}`;
  if (edits.length > 0)
    yield { kind: 'change', words: `${ingredient.name} ${sized.before} → ${sized.after}${weight}${off}` };
  yield { kind: 'rounded', name: ingredient.name, error };
  return { ...sized, error };
}

/** The weight of pieces that are no whole number and matter to the formula: eggs, gelatine, sticks of fat. */
function beatenGrams(
  ingredient: Ingredient,
  amount: MeasuredNode,
  by: number,
  count: number,
  { exact }: Manner,
): string | undefined {
  const { weighed, food, node, bare } = ingredient;
  if (exact || amount.unit !== undefined || !weighed.known || !matters(ingredient)) return undefined;
  const wanted = amount.low.value * by;
  if (Number.isInteger(count) && Math.abs(count / wanted - 1) <= 0.02) return undefined;
  if (amount.high !== undefined || food === undefined || (node.name?.start ?? 0) < amount.end) return undefined;
  if (node.beside !== undefined || takesOf(node) !== undefined || bare === true) return undefined;
  return trimmed(kitchenGrams(likelyGrams(weighed) * by), 2);
}

/** The other amounts of a line that grow with its first: said again in another measure, bought, taken besides, or of an alternative. */
function followers({ node, match }: Ingredient, world: World): readonly MeasuredNode[] {
  const { amount } = node;
  const ofEach = (node.beside ?? []).filter((b) => amount?.kind === 'measured' && isEach(amount, b, match, world));
  return measuresOf(node).filter((m) => m !== amount && !ofEach.some((b) => b.amount === m));
}

const isMass = ({ node: { amount } }: Ingredient): boolean => {
  const unit = amount?.kind === 'measured' ? amount.unit?.symbol : undefined;
  return unit !== undefined && dimensionOf(unit) === 'mass';
};

/** `2.3 % more`, `0.8 % less`. */
export const percentOff = (error: number): string =>
  `${significant(Math.abs(error) * 100, 2)} % ${error < 0 ? 'less' : 'more'}`;

/** Pieces whose number is part of a formula: what a quarter off would change. */
function matters({ food, node: { amount } }: Ingredient): boolean {
  if (food === undefined) return false;
  const word = amount?.kind === 'measured' ? amount.quantity.count : undefined;
  return (
    food.class === 'egg' ||
    food.class === 'gelling' ||
    food.class === 'yeast' ||
    food.class === 'leavening' ||
    word === 'stick'
  );
}

/** How far off a whole number of pieces may be: little where it matters, more for an onion. */
const countTolerance = (ingredient: Ingredient): number => (matters(ingredient) ? 0.02 : 0.06);

/** `1 egg` becomes `2 eggs`: the name goes with the number, where nothing stands between them. */
function nameInNumber(line: number, { node, food }: Ingredient, count: number): TextEdit[] {
  const { amount, name } = node;
  if (
    amount?.kind !== 'measured' ||
    name === undefined ||
    amount.unit !== undefined ||
    amount.counted !== undefined ||
    food === undefined
  )
    return [];
  const last = /\p{L}+$/u.exec(name.text)?.[0];
  const was = amount.quantity.high;
  if (last === undefined || was > 1 === count > 1 || amount.each !== undefined) return [];
  const one = wordsOf(last)[0] ?? last;
  const [singularForm, pluralForm] = [one.toLowerCase() === last.toLowerCase() ? last : one, pluralOf(one)];
  const now = count > 1 ? pluralForm : singularForm;
  const known = [food.name, ...food.names].some((n) => {
    const words = wordsOf(n);
    // What is taken out of a lemon is lemon juice.
    return words.at(-1) === one || (node.takes !== undefined && words.includes(one));
  });
  if (!known || wordsOf(now)[0] !== one || now === last) return [];
  return [replaceSpan(line, { start: name.end - last.length, end: name.end }, now)];
}
