/**
 * Knows how far the tokens of a line are read, and the line's own text between two of them.
 * Refuses to know any form.
 */
import { Kind, type Token } from './tokens.ts';
import type { Span, TextNode } from './tree.ts';

/** The tokens of a line, taken from left to right. */
export class Cursor {
  readonly tokens: readonly Token[];
  at: number;

  constructor(tokens: readonly Token[], at: number) {
    this.tokens = tokens;
    this.at = at;
  }

  /** The next token; undefined at the end of the line. */
  get token(): Token | undefined {
    return this.tokens[this.at];
  }

  /** What comes next. */
  get kind(): Kind {
    return this.kindAfter(0);
  }

  /** What comes so many tokens after the next. */
  kindAfter(count: number): Kind {
    const at = this.at + count;
    return at < this.tokens.length ? (this.tokens[at] as Token).kind : Kind.End;
  }

  /** The next token if it is of this kind, which is then read. */
  take(kind: Kind): Token | undefined {
    return this.kind === kind ? this.tokens[this.at++] : undefined;
  }
}

/** Some tokens that follow one another. */
export interface Run {
  readonly first: Token;
  readonly last: Token;
}

/** Tokens as long as their kinds are wanted; undefined when the first is not. */
export function takeWhile(cursor: Cursor, wanted: (kind: Kind) => boolean): Run | undefined {
  const first = cursor.token;
  if (first === undefined || !wanted(first.kind)) return undefined;
  let last = first;
  for (let token: Token | undefined = first; token !== undefined && wanted(token.kind); token = cursor.token) {
    last = token;
    cursor.at++;
  }
  return { first, last };
}

/** Wants whatever is left. */
export const isAny = (): boolean => true;

export const spanOf = (first: Token, last: Token): Span => ({ start: first.start, end: last.end });

/** The line's own text from one token to another. */
export const textOf = (line: string, first: Token, last: Token): TextNode => ({
  start: first.start,
  end: last.end,
  text: line.slice(first.start, last.end),
});

export const textIn = (line: string, run: Run | undefined): TextNode | undefined =>
  run === undefined ? undefined : textOf(line, run.first, run.last);
