/**
 * Knows which amounts and numbers of pieces in a sentence follow when a recipe is made at another size, and which are of one piece and stay.
 * Refuses to know the new size.
 */

import { dimensionOf } from '../measure/unit.ts';
import type { MeasuredNode, SentenceItem, Span } from '../notation/tree.ts';
import { divisionsIn, isOfOne, isOfPieces, nounOf, numberSaid, saysEach } from '../prose/counts.ts';
import { foodBehind } from '../recipe/journey/foods-said.ts';
import type { Part, Recipe, Step } from '../recipe/model.ts';

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
    if (isOfOne(items, at)) found.push({ kind: 'each', node: measured });
    else if (named !== undefined && measured.unit === undefined)
      found.push({
        kind: 'pieces',
        span: measured.low,
        count: measured.low.value,
        inWords: items[at]?.kind !== 'measured',
      });
    else {
      const [ref] = ingredients;
      found.push({ kind: 'amount', node: measured, part: of, ...(ref && { ingredient: ref.ingredient }) });
    }
  }
  const divided = dividedAt(items, step, part, recipe);
  items.forEach((item, at) => {
    if (taken.has(item)) return;
    if (item.kind !== 'measured') {
      const count = divided.has(at) ? numberSaid(item) : undefined;
      if (count !== undefined)
        found.push({ kind: 'pieces', span: item, count, inWords: true, ...nounAfter(items, at) });
      return;
    }
    const unit = item.unit?.symbol;
    if (unit === undefined) {
      const pieces = divided.has(at) || (isOfPieces(items, at) && !saysEach(items, at));
      if (pieces && item.quantity.size === undefined && item.high === undefined)
        found.push({ kind: 'pieces', span: item.low, count: item.low.value, inWords: false, ...nounAfter(items, at) });
      if (pieces && item.each !== undefined) found.push({ kind: 'each', node: item.each });
      return;
    }
    const dimension = dimensionOf(unit);
    if (dimension !== 'mass' && dimension !== 'volume') return;
    if (isOfOne(items, at)) found.push({ kind: 'each', node: item });
    else if (foodBehind(items, at, step, recipe.world.book) !== undefined)
      found.push({ kind: 'amount', node: item, part: part.index });
    else found.push({ kind: 'unclear', node: item });
  });
  return found;
}

/** Where a batch is divided: the numbers after `divide … in` or `into`, but not of one vegetable. */
const dividedAt = (items: readonly SentenceItem[], step: Step, part: Part, recipe: Recipe): ReadonlySet<number> =>
  new Set(
    divisionsIn(items).flatMap(({ verb, number }) => (isProduce(step, part, recipe, verb, number) ? [] : [number])),
  );

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

const nounAfter = (items: readonly SentenceItem[], at: number): { readonly noun?: Span } => {
  const noun = nounOf(items, at);
  return noun === undefined ? {} : { noun };
};
