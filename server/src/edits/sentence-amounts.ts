/**
 * Knows which amounts and numbers of pieces in a sentence follow when a recipe is made at another size, and which are of one piece and stay.
 * Refuses to know the new size.
 */

import { numberOfWord } from '../measure/number-words.ts';
import { dimensionOf } from '../measure/unit.ts';
import type { MeasuredNode, SentenceItem, Span } from '../notation/tree.ts';
import type { Part, Recipe, Step } from '../recipe/recipe.ts';
import { baseForm } from '../recipe/verbs.ts';
import { singular } from '../recipe/words.ts';

/** An amount that follows the part it is taken from, or the step's own part where it is of something unlisted. */
export interface FollowingAmount {
  readonly kind: 'amount';
  readonly node: MeasuredNode;
  readonly part: number;
  /** The line it is taken from, by its number in that part's list. */
  readonly ingredient?: number;
}

/** A number of pieces of the whole batch, in figures or in words. */
export interface FollowingCount {
  readonly kind: 'pieces';
  readonly span: Span;
  readonly count: number;
  readonly inWords: boolean;
  /** What is counted, where it stands right behind: `rolls`. */
  readonly noun?: Span;
}

/** The weight or measure of one piece. */
export interface OfOnePiece {
  readonly kind: 'each';
  readonly node: MeasuredNode;
}

/** An amount of what nobody listed: it cannot be told whether it follows. */
export interface UnclearAmount {
  readonly kind: 'unclear';
  readonly node: MeasuredNode;
}

export type SentenceAmount = FollowingAmount | FollowingCount | OfOnePiece | UnclearAmount;

export function sentenceAmounts(recipe: Recipe, part: Part, step: Step): SentenceAmount[] {
  const { items } = step.sentence;
  const found: SentenceAmount[] = [];
  const taken = new Set<Span>();
  for (const { portion, ingredients, part: named } of step.mentions) {
    if (portion.kind !== 'amount' || taken.has(portion.measured)) continue;
    const { measured } = portion;
    const at = items.findIndex((i) => i.start === measured.start && i.end === measured.end);
    taken.add(items[at] ?? measured);
    const of = ingredients[0]?.part ?? named;
    if (of === undefined) continue;
    if (isOfEach(items, at)) found.push({ kind: 'each', node: measured });
    else if (named !== undefined && measured.unit === undefined)
      found.push({
        kind: 'pieces',
        span: measured.low,
        count: measured.low.value,
        inWords: items[at]?.kind === 'word',
      });
    else {
      const [ref] = ingredients;
      found.push({ kind: 'amount', node: measured, part: of, ...(ref && { ingredient: ref.ingredient }) });
    }
  }
  const divided = dividedAt(items, step, part, recipe);
  items.forEach((item, at) => {
    if (taken.has(item)) return;
    if (item.kind === 'word') {
      const count = divided.has(at) ? numberOfWord(item.word) : undefined;
      if (count !== undefined)
        found.push({ kind: 'pieces', span: item, count, inWords: true, ...nounAfter(items, at) });
      return;
    }
    if (item.kind !== 'measured') return;
    const unit = item.unit?.symbol;
    if (unit === undefined) {
      const pieces = divided.has(at) || (isPieces(items, at) && !saysEach(items, at));
      if (pieces && item.quantity.size === undefined && item.high === undefined)
        found.push({ kind: 'pieces', span: item.low, count: item.low.value, inWords: false, ...nounAfter(items, at) });
      if (pieces && item.each !== undefined) found.push({ kind: 'each', node: item.each });
      return;
    }
    const dimension = dimensionOf(unit);
    if (dimension !== 'mass' && dimension !== 'volume') return;
    if (isOfEach(items, at)) found.push({ kind: 'each', node: item });
    else if (namesFood(recipe, items, at + 1)) found.push({ kind: 'amount', node: item, part: part.index });
    else found.push({ kind: 'unclear', node: item });
  });
  return found;
}

/** What a dough or batch is cut into. */
const PIECES = new Set([
  'piece',
  'ball',
  'roll',
  'bun',
  'portion',
  'round',
  'loaf',
  'slice',
  'square',
  'bar',
  'strip',
  'cake',
  'tart',
  'pie',
  'cookie',
  'biscuit',
  'scone',
  'puff',
  'eclair',
  'ramekin',
  'glass',
  'jar',
  'mould',
  'patty',
  'dumpling',
  'ravioli',
  'pancake',
  'crepe',
  'flatbread',
  'pot',
  'bowl',
  'serving',
  'finger',
  'wedge',
  'log',
  'disc',
  'bagel',
  'muffin',
  'nugget',
  'meatball',
]);

const DIVIDES = new Set([
  'divide',
  'cut',
  'split',
  'portion',
  'shape',
  'form',
  'roll',
  'pipe',
  'scoop',
  'make',
  'spoon',
  'press',
  'slice',
]);
const PER_PIECE = new Set(['each', 'every', 'per', 'apiece']);

/** Where a batch is divided: the numbers after `divide … in` or `into`, but not of one vegetable or of each piece. */
function dividedAt(items: readonly SentenceItem[], step: Step, part: Part, recipe: Recipe): ReadonlySet<number> {
  const found = new Set<number>();
  items.forEach((item, at) => {
    if (item.kind !== 'word' || !DIVIDES.has(baseForm(item.word))) return;
    for (let i = at + 1; i < items.length; i++) {
      const next = items[i];
      if (next?.kind === 'mark' && /[.;,:]/.test(next.mark)) return;
      if (next?.kind !== 'word' || (next.word !== 'in' && next.word !== 'into')) continue;
      const number = items[i + 1];
      const counted =
        (number?.kind === 'measured' &&
          number.unit === undefined &&
          number.high === undefined &&
          Number.isInteger(number.low.value)) ||
        (number?.kind === 'word' && numberOfWord(number.word) !== undefined);
      if (!counted || saysEach(items, i) || isProduce(step, part, recipe, at, i)) return;
      found.add(i + 1);
      return;
    }
  });
  return found;
}

/** `Cut the onions into 8 wedges`: of each, whatever the number of onions. */
function isProduce(step: Step, part: Part, recipe: Recipe, from: number, to: number): boolean {
  return step.mentions.some(
    (m) =>
      m.from > from &&
      m.from < to &&
      m.ingredients.some((r) => {
        const food = recipe.parts[r.part]?.head.ingredients[r.ingredient]?.food;
        return food !== undefined && PRODUCE.has(food.class) && part.head.ingredients.length > 0;
      }),
  );
}

const PRODUCE: ReadonlySet<string> = new Set([
  'vegetable',
  'fruit',
  'mushroom',
  'meat',
  'poultry',
  'fish',
  'cheese',
  'bread',
]);

/** The item after a bare number names pieces of a batch. */
function isPieces(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  const next = items[at + 1];
  if (item?.kind !== 'measured') return false;
  const counted = item.counted?.text ?? (next?.kind === 'word' ? next.word : '');
  return PIECES.has(singular(counted.toLowerCase()));
}

function nounAfter(items: readonly SentenceItem[], at: number): { readonly noun?: Span } {
  const item = items[at];
  if (item?.kind === 'measured' && item.counted !== undefined) return { noun: item.counted };
  const next = items[at + 1];
  return next?.kind === 'word' && PIECES.has(singular(next.word)) ? { noun: next } : {};
}

/** `each`, `every` or `per` in the same clause. */
function saysEach(items: readonly SentenceItem[], at: number): boolean {
  for (const step of [-1, 1] as const) {
    for (let i = at + step; i >= 0 && i < items.length; i += step) {
      const item = items[i];
      if (item?.kind === 'mark' && /[.;:,]/.test(item.mark)) break;
      if (item?.kind === 'word' && PER_PIECE.has(item.word)) return true;
    }
  }
  return false;
}

/** `balls of 60 g`, `60 g each`, `60 g pieces`: the amount of one. */
function isOfEach(items: readonly SentenceItem[], at: number): boolean {
  const before = items[at - 1];
  const earlier = items[at - 2];
  const next = items[at + 1];
  if (saysEach(items, at)) return true;
  if (next?.kind === 'word' && PIECES.has(singular(next.word))) return true;
  const ofPiece =
    before?.kind === 'word' &&
    (before.word === 'of' || before.word === 'at' || before.word === 'weighing') &&
    (earlier?.kind === 'measured' || (earlier?.kind === 'word' && PIECES.has(singular(earlier.word))));
  return ofPiece;
}

function namesFood(recipe: Recipe, items: readonly SentenceItem[], from: number): boolean {
  const words: string[] = [];
  for (const item of items.slice(from, from + 4)) {
    if (item.kind !== 'word') break;
    if (
      (item.word === 'of' || item.word === 'the' || item.word === 'more' || item.word === 'extra') &&
      words.length === 0
    )
      continue;
    words.push(item.word);
  }
  for (let n = words.length; n > 0; n--)
    if (recipe.world.book.findInText(words.slice(0, n).join(' ')).kind !== 'unknown') return true;
  return false;
}
