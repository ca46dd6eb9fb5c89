/**
 * Knows the line that most lines of a list are, in one pass: a number, perhaps a unit or what is counted, a name, and what is done to it, of words
 * that can be nothing else. Refuses to know any other form: what `ingredient.ts` reads of such a line is the same.
 */
import { isPackage } from '../measure/count-words.ts';
import { measuredOf } from './amounts.ts';
import { type Run, textOf } from './cursor.ts';
import { measure } from './stated.ts';
import { isPlain, Kind, type Token } from './tokens.ts';
import type { Draft, IngredientNode, SyntaxFault } from './tree.ts';

/** The item that the whole line is; undefined, and nothing found wrong, where it is not all plain. */
export function plainItem(line: string, tokens: readonly Token[], faults: SyntaxFault[]): IngredientNode | undefined {
  const { length } = tokens;
  const first = tokens[0];
  if (first === undefined || first.kind > Kind.Vulgar) return undefined;
  let at = 1;
  let last = first;
  const second = kindAt(tokens, 1);
  if (first.kind === Kind.Numeral && (second === Kind.Fraction || second === Kind.Vulgar)) last = tokens[at++] as Token;
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
  if (nameEnd === name) return undefined;
  let said: Token | undefined;
  if (nameEnd < length) {
    if (kindAt(tokens, nameEnd) !== Kind.Comma) return undefined;
    said = tokens[nameEnd + 1];
    if (said !== undefined && !isPlain(said)) return undefined;
    for (at = nameEnd + 2; at < length; at++) {
      const token = tokens[at] as Token;
      if (token.kind !== Kind.Comma && !isPlain(token)) return undefined;
    }
  }
  const node: Draft<IngredientNode> = {
    kind: 'ingredient',
    name: textOf(line, tokens[name] as Token, tokens[nameEnd - 1] as Token),
    amount: measuredOf(line, measure({ low: { first, last } }, { unit, sizes, counted }), faults),
  };
  if (said !== undefined) node.preparation = textOf(line, said, tokens[length - 1] as Token);
  return node;
}

/** The first token from there on that is more than a word. */
function plainEnd(tokens: readonly Token[], from: number): number {
  let at = from;
  while (at < tokens.length && isPlain(tokens[at] as Token)) at++;
  return at;
}

const kindAt = (tokens: readonly Token[], at: number): Kind =>
  at < tokens.length ? (tokens[at] as Token).kind : Kind.End;
