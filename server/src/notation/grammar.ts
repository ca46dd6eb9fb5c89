/**
 * Knows the grammar of what goes on for as long as it likes: lists of names, as Chevrotain rules with error recovery.
 * Refuses to know the tree that is made of it: the concrete tree it gives never leaves this folder.
 */

import { type CstNode, CstParser, createToken, type IToken, type TokenType } from 'chevrotain';
import { once } from '../measure/once.ts';
import type { Cursor, Run } from './cursor.ts';
import { Kind, type Token } from './tokens.ts';

declare const QUERN_BUNDLED: boolean | undefined;

/** Any token at all. */
const Any = createToken({ name: 'Any' });
/** What a name may be made of: everything but what ends a name. */
const NamePart = createToken({ name: 'NamePart', categories: Any });
const Comma = createToken({ name: 'Comma', categories: Any });

const VOCABULARY = [Any, NamePart, Comma];

/** A token as the grammar sees it. */
class Piece implements IToken {
  readonly image = '';
  readonly startOffset: number;
  readonly tokenType: TokenType;
  readonly tokenTypeIdx: number;
  readonly token: Token;

  constructor(tokenType: TokenType, token: Token) {
    this.startOffset = token.start;
    this.tokenType = tokenType;
    this.tokenTypeIdx = tokenType.tokenTypeIdx ?? 0;
    this.token = token;
  }
}

class LineParser extends CstParser {
  constructor(skipValidations: boolean) {
    super(VOCABULARY, {
      recoveryEnabled: true,
      maxLookahead: 1,
      nodeLocationTracking: 'none',
      skipValidations,
    });
    this.performSelfAnalysis();
  }

  readonly list = this.RULE('list', () => {
    this.MANY(() => this.OR([{ ALT: () => this.SUBRULE(this.name) }, { ALT: () => this.CONSUME(Comma) }]));
  });

  readonly name = this.RULE('name', () => {
    this.AT_LEAST_ONE(() => this.CONSUME(NamePart));
  });
}

/** Kinds that are not just a part of a name. */
const TYPES: Readonly<Partial<Record<Kind, TokenType>>> = {
  [Kind.Comma]: Comma,
  [Kind.From]: Any,
  [Kind.Equals]: Any,
  [Kind.LeftParen]: Any,
};

/** Recovery goes some calls deeper with each piece it goes on after; no line that means anything has as many. */
const MOST_RECOVERIES = 200;

/** The tokens as the grammar sees them, as far as a line that means anything goes. */
export function piecesOf(cursor: Cursor): Piece[] {
  const made: Piece[] = [];
  let recoveries = 0;
  for (let { token } = cursor; token !== undefined; { token } = cursor) {
    const type = TYPES[token.kind] ?? NamePart;
    if (type === Any && ++recoveries > MOST_RECOVERIES) break;
    cursor.at++;
    made.push(new Piece(type, token));
  }
  return made;
}

/** Made when the first line wants it. */
const PARSER = once(() => new LineParser(typeof QUERN_BUNDLED !== 'undefined'));

export interface Concrete {
  readonly children: Children;
  /** The first token that no rule took. */
  readonly rest: Token | undefined;
}

export type Children = Readonly<Record<string, readonly (CstNode | IToken)[] | undefined>>;

/** Reads all tokens that are left as a list. Never throws; what is missing is missing in the tree. */
export function readList(cursor: Cursor): Concrete {
  const read = piecesOf(cursor);
  // Most lists hold nothing to recover from, and to make the parser takes longer than to read a file.
  if (read.every(({ tokenType }) => tokenType !== Any)) return { children: plainList(read), rest: cursor.token };
  return recoveredList(read, cursor);
}

/** The same tree as the parser makes of names and commas alone. */
function plainList(read: readonly Piece[]): Children {
  const names: { readonly name: string; readonly children: { readonly NamePart: Piece[] } }[] = [];
  const commas: Piece[] = [];
  let isOpen = false;
  for (const piece of read) {
    const isComma = piece.tokenType === Comma;
    if (isComma) commas.push(piece);
    else if (isOpen) names.at(-1)?.children.NamePart.push(piece);
    else names.push({ name: 'name', children: { NamePart: [piece] } });
    isOpen = !isComma;
  }
  return { ...(names.length > 0 && { name: names }), ...(commas.length > 0 && { Comma: commas }) };
}

/** As the parser reads it, whatever stands in it; for a test, that of a plain list too. */
export function recoveredList(read: Piece[], cursor: Cursor): Concrete {
  const parser = PARSER();
  parser.input = read;
  const { children } = parser.list();
  const taken = parser.errors.find((e) => e.name === 'NotAllInputParsedException');
  const rest = taken?.token ?? parser.errors.flatMap((e) => e.resyncedTokens)[0];
  return { children, rest: rest instanceof Piece ? rest.token : cursor.token };
}

type Found = readonly (CstNode | IToken)[] | undefined;

/** The nodes of a rule; under recovery any may be missing. */
export const nodes = (found: Found): Children[] => (found ?? []).flatMap((n) => ('children' in n ? [n.children] : []));

/** Pieces of the text, without those that recovery made up. */
export const pieces = (found: Found): Piece[] => (found ?? []).filter((n) => n instanceof Piece);

/** The tokens from the first of the pieces to the last. */
export function runOf(found: readonly Piece[]): Run | undefined {
  const [first] = found;
  const last = found.at(-1);
  return first && last && { first: first.token, last: last.token };
}

/** For the test that holds the grammar against Chevrotain's own checks, which the bundles skip. */
export function validateGrammar(): void {
  new LineParser(false);
}
