/**
 * Knows what the words of a text mean, for colouring: ingredients, parts, foods, kinds, codes, amounts, times and temperatures by role.
 * Needs the bound recipe. Refuses to know colours. What hangs on a part is worked out once for it.
 */

import { keptOn } from '../notation/kept.ts';
import { piecesOf } from '../notation/pieces.ts';
import type { Line, MeasuredNode, Span } from '../notation/tree.ts';
import { type HeatFigure, heatsOf } from '../recipe/journey/figures.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { namesOn } from './place.ts';

export const TOKEN_TYPES = ['number', 'variable', 'namespace', 'type', 'property', 'enumMember'] as const;
export const TOKEN_MODIFIERS = ['declaration', 'time', 'temperature', 'oven', 'inside'] as const;
export type TokenType = (typeof TOKEN_TYPES)[number];
export type TokenModifier = (typeof TOKEN_MODIFIERS)[number];

/** `line` is the document's. */
export interface Token extends Span {
  readonly line: number;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

/** All tokens of some lines, in the order of the text; none overlaps another. */
export function tokens(snapshot: Snapshot, from = 0, to = Number.POSITIVE_INFINITY): Token[] {
  const { recipe, document } = snapshot;
  const found: Token[] = [];
  let line = 0;
  const outside = (until: number) => {
    for (; line < until; line++) {
      const here = document.lines[line];
      if (here === undefined || line < from || line > to) continue;
      for (const token of tokensOfLine(here)) found.push({ line, ...token });
    }
  };
  for (const part of recipe.parts) {
    const at = recipe.partsAt[part.index] ?? 0;
    const end = at + part.head.source.lines.length;
    outside(at);
    line = end;
    if (end <= from || at > to) continue;
    for (const token of tokensOfPart(part)) {
      const here = at + token.line;
      if (here >= from && here <= to) found.push(at === 0 ? token : { ...token, line: here });
    }
  }
  outside(document.lines.length);
  return found;
}

type Local = Omit<Token, 'line'>;

const BY_PART = keptOn<Part, readonly Token[]>();

function tokensOfPart(part: Part): readonly Token[] {
  let found = BY_PART.get(part);
  if (found === undefined) {
    const steps = new Map(part.steps.map((s) => [s.line, s]));
    const listed = new Map<number, Ingredient[]>();
    for (const i of part.head.ingredients) listed.set(i.line, [...(listed.get(i.line) ?? []), i]);
    found = part.head.source.lines.flatMap((line, at) => {
      const step = steps.get(at);
      const here = step === undefined ? (listed.get(at) ?? []) : [];
      const local = step === undefined ? (tokensOfList(line, here) ?? tokensOfLine(line)) : tokensOfStep(step);
      return local.map((t) => ({ line: at, ...t }));
    });
    BY_PART.set(part, found);
  }
  return found;
}

function tokensOfStep(step: Part['steps'][number]): Local[] {
  const found: Local[] = [];
  for (const mention of step.mentions)
    found.push(token(mention, mention.part === undefined ? 'variable' : 'namespace'));
  for (const { written, of } of heatsOf(step))
    for (const node of written) found.push(token(node, 'number', 'temperature', ...HEAT_OF[of]));
  for (const item of step.sentence.items) if (item.kind === 'duration') found.push(token(item, 'number', 'time'));
  for (const item of step.sentence.items) {
    if (item.kind === 'measured') found.push(...amount(item));
    else if (item.kind === 'length') found.push(...amount(item.measured));
  }
  return apart(found);
}

const HEAT_OF: Readonly<Record<HeatFigure['of'], readonly TokenModifier[]>> = {
  oven: ['oven'],
  food: ['inside'],
  around: [],
  medium: [],
  nothing: [],
};

/** A line of the list; of several foods on it each by its own name. Undefined for any other line. */
function tokensOfList(line: Line, listed: readonly Ingredient[]): Local[] | undefined {
  const pieces = piecesOf(line, line.statement.kind === 'unread' ? listed[0]?.node : undefined);
  if (pieces === undefined) return undefined;
  const names = listed.flatMap(namesOn);
  const found = names.map((name) => token(name, 'variable', 'declaration'));
  for (const piece of pieces) {
    if (piece.role === 'number') found.push(token(piece, 'number'));
    else if (piece.role === 'take') found.push(token(piece, 'variable'));
    else if (piece.role === 'name' && !names.some((n) => n.start < piece.end && piece.start < n.end))
      found.push(token(piece, 'variable', 'declaration'));
  }
  return apart(found);
}

function tokensOfLine(line: Line): Local[] {
  const { statement: node } = line;
  const list = tokensOfList(line, []);
  if (list !== undefined) return list;
  const found: (Local | undefined)[] = [];
  switch (node.kind) {
    case 'recipe':
      found.push(named(titleOf(node).as, 'type'));
      break;
    case 'part':
      found.push(named(titleOf(node).name, 'namespace', 'declaration'), named(titleOf(node).as, 'type'));
      break;
    case 'allow':
      found.push(named(node.code, 'enumMember'));
      break;
    case 'oven':
      found.push(named(node.temperature, 'number', 'temperature', 'oven'));
      break;
    case 'started':
    case 'reached':
      found.push(named(node.temperature, 'number', 'temperature', 'inside'));
      break;
    case 'time':
      for (const { duration } of node.stated) found.push(named(duration, 'number', 'time'));
      break;
    case 'took':
      found.push(named(node.duration, 'number', 'time'));
      break;
    case 'yield':
    case 'weighed':
    case 'component':
    case 'trim':
      if (node.amount !== undefined) found.push(...amount(node.amount));
      break;
    case 'used':
      if (node.amount?.kind === 'measured') found.push(...amount(node.amount));
      found.push(named(node.name, 'variable'), named(node.part, 'namespace'));
      break;
    case 'price':
      found.push(named(node.price, 'number'));
      if (node.per !== undefined) found.push(...amount(node.per));
      break;
    case 'pan':
      for (const size of node.pan?.sizes ?? []) found.push(named(size, 'number'));
      break;
    case 'food':
      found.push(named(node.name, 'property', 'declaration'));
      break;
    case 'like':
      found.push(named(node.name, 'property'));
      break;
    case 'also':
      for (const name of node.names) found.push(named(name, 'property'));
      break;
    case 'drop':
      found.push(named(node.name, 'variable'));
      break;
  }
  return apart(found);
}

/** The numbers of an amount; its unit keeps the colour of its grammar. */
function amount(node: MeasuredNode): Local[] {
  const numbers = [node.low, ...(node.high ? [node.high] : [])].map((n) => token(n, 'number'));
  return node.each === undefined ? numbers : [...numbers, ...amount(node.each)];
}

const named = (span: Span | undefined, type: TokenType, ...modifiers: TokenModifier[]): Local | undefined =>
  span === undefined ? undefined : token(span, type, ...modifiers);

const token = ({ start, end }: Span, type: TokenType, ...modifiers: TokenModifier[]): Local => ({
  start,
  end,
  type,
  modifiers,
});

/** In order, without empty ones and without what lies in another. */
function apart(tokens: readonly (Local | undefined)[]): Local[] {
  const sorted = tokens
    .filter((t): t is Local => t !== undefined && t.end > t.start)
    .sort((a, b) => a.start - b.start || b.end - a.end);
  const kept: Local[] = [];
  for (const next of sorted) if (next.start >= (kept.at(-1)?.end ?? 0)) kept.push(next);
  return kept;
}
