/**
 * Knows how to take children out of the parser library's concrete tree, in which under recovery any may be missing.
 */
import type { CstNode, IToken } from 'chevrotain';
import type { Span, TextNode } from './tree.ts';

export type Children = Readonly<Record<string, readonly (CstNode | IToken)[] | undefined>>;

type Run = readonly (CstNode | IToken)[] | undefined;

export const nodes = (run: Run): CstNode[] => (run ?? []).filter((n): n is CstNode => 'children' in n);

export const child = (run: Run): CstNode | undefined => nodes(run)[0];

/** Tokens of the text; one that recovery made up has no image. */
export const tokens = (run: Run): IToken[] => (run ?? []).filter((n): n is IToken => 'image' in n && n.image !== '');

export const token = (run: Run): IToken | undefined => tokens(run)[0];

export function spanOf(first: IToken, last: IToken): Span {
  return { start: first.startOffset, end: last.startOffset + last.image.length };
}

/** The line's own text from one token to another. */
export function textOf(line: string, first: IToken, last: IToken): TextNode {
  const span = spanOf(first, last);
  return { ...span, text: line.slice(span.start, span.end) };
}
