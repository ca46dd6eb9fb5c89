/**
 * Knows the line that most lines of a list are, in one pass: a number or a range, perhaps a unit or what is counted, a name, what is done
 * to it and a note, of words that can be nothing else. Refuses to know any other form: what `ingredient.ts` reads of such a line is the same.
 */
import { isPackage } from '../measure/count-words.ts';
import { measuredOf } from './amounts.ts';
import { type Run, textOf } from './cursor.ts';
import { measure } from './term.ts';
import { isPlain, Kind, type Token } from './tokens.ts';
import type { Draft, IngredientNode, SyntaxFault } from './tree.ts';

/** The item that the whole line is; undefined, and nothing found wrong, where it is not all plain. */
export function plainItem(line: string, tokens: readonly Token[], faults: SyntaxFault[]): IngredientNode | undefined {
  const first = tokens[0];
  if (first === undefined || first.kind > Kind.Vulgar) return undefined;
  let at = 1;
  let last = first;
  let high: Token | undefined;
  if (first.kind === Kind.Numeral) {
    const second = kindAt(tokens, 1);
    if (second === Kind.Fraction || second === Kind.Vulgar) last = tokens[at++] as Token;
    else if (joinsRange(tokens)) {
      high = tokens[2];
      at = 3;
    }
  }
  let unit: Token | undefined;
  let sizes: Run | undefined;
  let counted: Token | undefined;
  if (kindAt(tokens, at) === Kind.UnitWord) unit = tokens[at++];
  else {
    if (kindAt(tokens, at) === Kind.SizeWord) {
      const size = tokens[at++] as Token;
      sizes = { first: size, last: size };
    }
    if (kindAt(tokens, at) === Kind.CountedWord) counted = tokens[at++];
    // A package may be of the size that its number says.
    const count = counted?.written?.count;
    if (count !== undefined && isPackage(count)) return undefined;
  }
  const name = at;
  const nameEnd = plainEnd(tokens, name);
  if (nameEnd === name || counts(tokens[name] as Token)) return undefined;
  const said = kindAt(tokens, nameEnd) === Kind.Comma ? nameEnd + 1 : nameEnd;
  const saidEnd = said === nameEnd ? said : toldEnd(tokens, said);
  const note = kindAt(tokens, saidEnd) === Kind.LeftParen ? saidEnd + 1 : undefined;
  if (note !== undefined && said > nameEnd && saidEnd === said) return undefined;
  if (note === undefined ? saidEnd < tokens.length : !isNote(tokens, note)) return undefined;
  const range = { low: { first, last }, high: high && { first: high, last: high } };
  const node: Draft<IngredientNode> = {
    kind: 'ingredient',
    name: textOf(line, tokens[name] as Token, tokens[nameEnd - 1] as Token),
    amount: measuredOf(line, measure(range, { unit, sizes, counted }), faults),
  };
  if (saidEnd > said) node.preparation = textOf(line, tokens[said] as Token, tokens[saidEnd - 1] as Token);
  if (note !== undefined) node.note = textOf(line, tokens[note] as Token, tokens[tokens.length - 2] as Token);
  return node;
}

/** `40-45`, `2 to 3`, and no fraction behind it. */
function joinsRange(tokens: readonly Token[]): boolean {
  const [low, joint, high] = tokens;
  if (low === undefined || joint === undefined || high?.kind !== Kind.Numeral || kindAt(tokens, 3) <= Kind.NumberWord)
    return false;
  if (joint.kind === Kind.To) return true;
  return joint.kind === Kind.Dash && joint.start === low.end && high.start === joint.end;
}

/** The first token from there on that is more than a word. */
function plainEnd(tokens: readonly Token[], from: number): number {
  let at = from;
  while (at < tokens.length && isPlain(tokens[at] as Token)) at++;
  return at;
}

/** The first token from there on that is not told of the item; none is where one stands first that may be more than told. */
function toldEnd(tokens: readonly Token[], from: number): number {
  const first = tokens[from];
  if (first === undefined || !isPlain(first) || counts(first)) return from;
  let at = from + 1;
  while (at < tokens.length && isTold(tokens[at] as Token)) at++;
  return at;
}

const isTold = ({ kind, written }: Token): boolean =>
  kind === Kind.Comma || (kind === Kind.Word && written?.tells === false && written.number === undefined);

/** It may be what the number counts. */
const counts = ({ written }: Token): boolean => written?.count !== undefined;

/** Whether a bracket that opens with a word holds all the rest, and no other. */
function isNote(tokens: readonly Token[], from: number): boolean {
  const first = tokens[from];
  if (first === undefined || !isPlain(first)) return false;
  for (let at = from + 1; at < tokens.length; at++)
    if ((tokens[at] as Token).kind === Kind.RightParen) return at === tokens.length - 1;
  return false;
}

const kindAt = (tokens: readonly Token[], at: number): Kind =>
  at < tokens.length ? (tokens[at] as Token).kind : Kind.End;
