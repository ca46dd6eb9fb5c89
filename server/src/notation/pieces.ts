/**
 * Knows what each character of an ingredient line belongs to: a leaf of what was understood, a joint between two, or nothing.
 * Refuses to know foods.
 */
import { termsOf } from './item-amounts.ts';
import type { IngredientNode, Line, MeasuredNode, Span } from './tree.ts';

export type PieceRole =
  | 'keyword'
  | 'number'
  | 'unit'
  | 'measure word'
  | 'take'
  | 'name'
  | 'said'
  | 'joint'
  | 'blank'
  | 'comment'
  /** Nobody's: a fault must lie on it. */
  | 'nothing';

export interface Piece extends Span {
  readonly role: PieceRole;
}

/**
 * The pieces of an ingredient line, from its first character to its last, without a gap; undefined for any other line.
 * Of a line without an amount in front, whoever knows it for an ingredient says as what it is `bare`.
 */
export function piecesOf(line: Line, bare?: IngredientNode): readonly Piece[] | undefined {
  const { statement, text } = line;
  const node = bare ?? (statement.kind === 'add' || statement.kind === 'swap' ? statement.ingredient : statement);
  if (node.kind !== 'ingredient') return undefined;
  const leaves: Piece[] = [];
  if (line.keyword !== undefined) leaves.push(leaf(line.keyword, 'keyword'));
  if (statement.kind === 'swap' && statement.old !== undefined) leaves.push(leaf(statement.old, 'name'));
  for (const item of [node, ...(node.more ?? [])]) leavesOfItem(item, leaves);
  if (line.comment !== undefined) leaves.push(leaf(line.comment, 'comment'));
  leaves.sort((a, b) => a.start - b.start || b.end - a.end);
  const pieces: Piece[] = [];
  let at = 0;
  for (const piece of leaves) {
    if (piece.start < at) continue;
    between(text, at, piece.start, pieces);
    pieces.push(piece);
    at = piece.end;
  }
  between(text, at, text.length, pieces);
  return pieces;
}

const leaf = ({ start, end }: Span, role: PieceRole): Piece => ({ start, end, role });

function leavesOfItem(item: IngredientNode, leaves: Piece[]): void {
  const { amount, beside = [], bought, rest, others = [], taken, name, preparation, note, optional, shareOf } = item;
  if (taken !== undefined) leaves.push(leaf(taken, 'take'));
  if (amount?.kind === 'free') leaves.push(leaf(amount, 'measure word'));
  else if (amount !== undefined) leavesOfAmount(amount, leaves);
  for (const again of beside) leavesOfAmount(again.amount, leaves);
  if (bought?.kind === 'measured') leavesOfAmount(bought, leaves);
  for (const other of others) {
    leavesOfAmount(other.amount, leaves);
    leaves.push(leaf(other.name, 'name'));
  }
  if (rest?.amount !== undefined && preparation === undefined) leavesOfAmount(rest.amount, leaves);
  for (const said of [shareOf, preparation, note, optional]) if (said !== undefined) leaves.push(leaf(said, 'said'));
  if (name !== undefined) leaves.push(leaf(name, 'name'));
}

function leavesOfAmount(amount: MeasuredNode, leaves: Piece[]): void {
  for (const { low, high, unit, counted, sized, each, bias, upTo } of termsOf(amount)) {
    for (const number of [low, high])
      if (number !== undefined && number.end > number.start) leaves.push(leaf(number, 'number'));
    if (unit !== undefined) leaves.push(leaf(unit, 'unit'));
    for (const word of [counted, sized, bias]) if (word !== undefined) leaves.push(leaf(word, 'measure word'));
    for (const inner of [each, upTo]) if (inner !== undefined) leavesOfAmount(inner, leaves);
  }
}

/** Words and marks that hold two leaves together. */
const JOINT =
  /^(?:about|between|up|at|least|most|approx|approximately|around|ca|circa|nearly|roughly|of|from|the|and|or|plus|to|for|each|apiece|x|in|all|total|altogether|weighing|just|scant|drained|weight|a|an|some|extra|more)$/i;

/** What stands between two leaves: blanks, joints, and what belongs to nothing. */
function between(text: string, from: number, to: number, pieces: Piece[]): void {
  for (const { 0: word, index } of text.slice(from, to).matchAll(PART)) {
    const start = from + index;
    const role = /^[\s\uFEFF]/.test(word) ? 'blank' : MARK.test(word) || JOINT.test(word) ? 'joint' : 'nothing';
    pieces.push({ start, end: start + word.length, role });
  }
}

const PART = /[\s\uFEFF]+|\p{L}+|./gsu;
const MARK = /^[,()=/+&.:;*†‡¹²³⁴⁵…·×°~\-–—−]$/u;
