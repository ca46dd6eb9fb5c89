/**
 * Knows how the sentences of a step are written at another size: portions of the list, pieces, what each piece weighs.
 * Refuses to know the list.
 */
import { trimmed } from '../measure/number-text.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { Ingredient, Part, Step } from '../recipe/model.ts';
import { closingPortion, type Written } from './closing-portions.ts';
import { percentOff } from './scale-list.ts';
import { factorOf, lineIn, type Portion, type ScaleEvent, type ToScale, textOf } from './scaling.ts';
import { sentenceAmounts } from './sentence-amounts.ts';
import { countInWords, nounFor, sizeAmount } from './sized-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** A step at its new size: what it takes of scaled lines, and in a part that is scaled the pieces. */
export function* scaleStep(work: ToScale, part: Part, step: Step): Generator<ScaleEvent> {
  const { recipe, parts, sizes, manner } = work;
  const line = lineIn(work, part, step.line);
  const text = textOf(work, line);
  const scaled = parts.includes(part);
  for (const amount of sentenceAmounts(recipe, part, step)) {
    if (amount.kind === 'amount') {
      const by = factorOf(work, amount.part);
      const sized = sizeAmount(line, text, amount.node, by, manner);
      const ingredient =
        amount.ingredient === undefined ? undefined : recipe.parts[amount.part]?.head.ingredients[amount.ingredient];
      if (ingredient === undefined || by === 1) yield { kind: 'edits', edits: sized.edits };
      else yield { kind: 'portion', ingredient, portion: { ...sized, node: amount.node, part: amount.part } };
    } else if (!scaled) continue;
    else if (amount.kind === 'each') yield { kind: 'edits', edits: eachAtSize(work, line, text, amount.node) };
    else if (amount.kind === 'unclear') yield { kind: 'stays', words: text.slice(amount.node.start, amount.node.end) };
    else {
      const wanted = amount.count * sizes.pieces;
      const count = Math.max(1, Math.round(wanted));
      const said = saidOfPieces(wanted, count, text.slice(amount.span.start, amount.span.end));
      if (said !== undefined) yield { kind: 'said', words: said };
      const number = amount.inWords ? countInWords(count) : String(count);
      yield { kind: 'edits', edits: [replaceSpan(line, amount.span, number)] };
      const { noun } = amount;
      if (noun !== undefined && count > 1 !== amount.count > 1)
        yield {
          kind: 'edits',
          edits: [replaceSpan(line, noun, nounFor(count, text.slice(noun.start, noun.end)))],
        };
    }
  }
}

/** `balls of 60 g` stay, unless another weight was asked for. */
function eachAtSize(
  { sizes: { eachG }, manner }: ToScale,
  line: number,
  text: string,
  node: MeasuredNode,
): readonly TextEdit[] {
  const unit = node.unit?.symbol;
  if (eachG === undefined || unit === undefined || dimensionOf(unit) !== 'mass' || node.high !== undefined) return [];
  const by = eachG / (node.low.value * (baseOf(unit, 'us') ?? 1));
  return sizeAmount(line, text, node, by, manner).edits;
}

function saidOfPieces(wanted: number, count: number, written: string): string | undefined {
  const off = count / wanted - 1;
  if (count === 1 && written !== '1') return 'One piece is left: the step that divides can go.';
  if (Math.abs(off) <= 0.02) return undefined;
  return `The number of pieces, ${written}, becomes ${count} (exactly ${trimmed(wanted, 2)}), so each is ${percentOff(1 / (1 + off) - 1)}.`;
}

/** What the steps take of a line adds up to it still, when each portion is rounded: the edits of all portions. */
export function* closePortions(work: ToScale, events: readonly ScaleEvent[]): Generator<ScaleEvent> {
  const written = new Map<Ingredient, Written>();
  const taken = new Map<Ingredient, Portion[]>();
  for (const event of events) {
    if (event.kind === 'line') written.set(event.ingredient, event.written);
    else if (event.kind === 'portion')
      taken.set(event.ingredient, [...(taken.get(event.ingredient) ?? []), event.portion]);
  }
  for (const [ingredient, portions] of taken) {
    const closing = closingOf(work, ingredient, written.get(ingredient), portions);
    const last = portions.length - 1;
    for (const [i, { edits }] of portions.entries()) {
      const [number, ...rest] = edits;
      if (closing === undefined || i < last || number === undefined) yield { kind: 'edits', edits };
      else {
        const text = number.text.replace(/^[^\p{L}]*[\d\p{No}]/u, closing);
        yield { kind: 'edits', edits: [{ ...number, text }, ...rest] };
      }
    }
  }
}

function closingOf(
  { recipe, manner }: ToScale,
  ingredient: Ingredient,
  line: Written | undefined,
  portions: readonly Portion[],
): string | undefined {
  const entry = recipe.parts[portions[0]?.part ?? -1]?.ledger.find((e) => e.ingredient === ingredient);
  if (entry === undefined || line === undefined || manner.exact) return undefined;
  return closingPortion(entry, line, portions, manner.measures);
}
