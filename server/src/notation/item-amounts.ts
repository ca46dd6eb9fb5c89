/**
 * Knows the amounts that one item of the list states: its own, the same in other measures, what is bought, what is taken besides.
 * Refuses to know which of them is right.
 */
import { dimensionOf } from '../measure/unit.ts';
import type { IngredientNode, MeasuredNode, Span, TextNode } from './tree.ts';

/** The terms of a sum; an amount that is none is its only term. */
export const termsOf = (amount: MeasuredNode): readonly MeasuredNode[] =>
  amount.plus === undefined ? [amount] : [amount, ...amount.plus];

/** Every measured amount of an item, in no order; sums are one. */
export function measuresOf(node: IngredientNode): readonly MeasuredNode[] {
  const { amount, beside, bought, rest, others } = node;
  const found: MeasuredNode[] = [];
  if (amount?.kind === 'measured') found.push(amount);
  for (const { amount: again } of beside ?? []) found.push(again);
  if (bought?.kind === 'measured') found.push(bought);
  if (rest?.amount !== undefined) found.push(rest.amount);
  for (const { amount: other } of others ?? []) found.push(other);
  return found;
}

/** An amount without the terms that are added behind what says it again: of `1/2 cup (120 ml) water plus 2 tbsp` the half cup. */
export function saidAgain(amount: MeasuredNode, beside: readonly Span[]): MeasuredNode {
  const plus = amount.plus?.filter((term) => beside.every((b) => b.end > term.start));
  if (plus === undefined || plus.length === amount.plus?.length) return amount;
  const { plus: _, ...first } = amount;
  const { plus: __, ...quantity } = amount.quantity;
  return plus.length === 0
    ? { ...first, quantity }
    : { ...first, plus, quantity: { ...quantity, plus: plus.map((t) => t.quantity) } };
}

/** What the cook says that the amount equals: behind `=`, or a weight beside it. */
export function equalOf({ beside }: IngredientNode): MeasuredNode | undefined {
  if (beside === undefined) return undefined;
  const said = beside.find((b) => b.sign === '=') ?? beside.find((b) => b.means === 'same' && isMass(b.amount));
  return said?.amount;
}

export const isMass = ({ unit }: MeasuredNode): boolean => unit !== undefined && dimensionOf(unit.symbol) === 'mass';

/** What is taken out of it, where it may be. */
export const takesOf = ({ takes, takesToo }: IngredientNode): readonly TextNode[] | undefined => takes ?? takesToo;

/** One amount said once, of one food, and nothing taken besides. */
export const isPlain = (node: IngredientNode): boolean => {
  const { amount, beside, rest, more, others, eachOf } = node;
  const besides = [beside, rest, more, others, takesOf(node), eachOf];
  if (besides.some((said) => said !== undefined)) return false;
  return (
    amount?.kind !== 'measured' ||
    (amount.plus === undefined &&
      amount.upTo === undefined &&
      amount.bias === undefined &&
      amount.low.upTo === undefined)
  );
};

/** Where the terms of an amount stand: together in front, and behind the name. */
export interface Places {
  readonly front: Span;
  /** More than one stands in front. */
  readonly many: boolean;
  readonly behind: readonly MeasuredNode[];
}

const JOINT = /^\s*(?:[+&]|plus|and)?\s*$/i;

export function placesOf(text: string, amount: MeasuredNode): Places {
  const [first, ...rest] = termsOf(amount);
  const start = Math.min(amount.start, amount.low.start);
  let end = first?.end ?? amount.end;
  let many = false;
  const behind: MeasuredNode[] = [];
  for (const term of rest) {
    if (behind.length === 0 && JOINT.test(text.slice(end, term.start))) {
      end = term.end;
      many = true;
    } else behind.push(term);
  }
  return { front: { start, end }, many, behind };
}

/** An amount as it is written, all its terms. */
export function amountAsWritten(text: string, amount: MeasuredNode): string {
  const { front, behind } = placesOf(text, amount);
  return [front, ...behind].map((span) => text.slice(span.start, span.end)).join(' + ');
}

/** The amount as it stands in front of the name, with what says it again there; undefined where none does. */
export function statedSpan({ amount, beside, name }: IngredientNode): Span | undefined {
  if (amount === undefined) return undefined;
  const { start } = amount;
  let end = amount.kind === 'measured' ? togetherEnd(amount, name?.start) : amount.end;
  for (const again of beside ?? [])
    if (again.start >= end && (name === undefined || again.end <= name.start)) end = closing(again);
  return { start, end };
}

/** Where the amount ends with the terms of its sum that stand before a place: others may stand behind the name. */
function togetherEnd({ end, plus = [] }: MeasuredNode, before = Number.POSITIVE_INFINITY): number {
  return plus.reduce((last, term) => (term.end <= before ? Math.max(last, term.end) : last), end);
}

/** A bracket closes behind its amount. */
const closing = ({ sign, end }: { readonly sign: string; readonly end: number }): number =>
  sign === '(' ? end + 1 : end;
