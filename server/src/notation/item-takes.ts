/**
 * Knows what a line takes out of whole things: `juice of`, `yolks of`.
 * Refuses to know what that gives.
 */
import { textOf } from './cursor.ts';
import type { ListLine } from './list-line.ts';
import { takenBy } from './takes.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { TextNode } from './tree.ts';

/** `juice of`, `finely grated zest and juice of`, `the yolks of`. */
export function takeTakes(on: ListLine): readonly TextNode[] {
  const { cursor, line } = on;
  const { at, tokens } = cursor;
  const takes: TextNode[] = [];
  let known = false;
  if (cursor.kind !== Kind.Word) return takes;
  for (let i = at; i < Math.min(tokens.length, at + MOST_BEFORE_OF); i++) {
    const token = tokens[i] as Token;
    const word = token.written?.word ?? '';
    const isTake = takenBy(word) !== undefined;
    known ||= isTake;
    if (isTake || (isOneOfMore(tokens, i, line) && !SAYS_HOW.test(word))) takes.push(textOf(line, token, token));
    else if (known && isNumber(token.kind) && tokens[i + 1]?.kind === Kind.Word) {
      // `Yolks 3 eggs`, `grated rind 1/2 lemon`
      cursor.at = i;
      return takes;
    } else if (known && (word === 'of' || word === 'from')) {
      let next = i + 1;
      if (tokens[next]?.written?.word === 'the') next++;
      if (!isNumber(tokens[next]?.kind ?? Kind.End) && tokens[next]?.kind !== Kind.SizeWord) return [];
      cursor.at = next;
      return takes;
    } else if (token.kind !== Kind.Word && token.kind !== Kind.Comma && line[token.start] !== '&') return [];
  }
  return [];
}

/** Whether something is taken out of another food from there on: the first few words say so. */
export function opensTakes(on: ListLine, from: number): boolean {
  const { cursor } = on;
  const { at, tokens } = cursor;
  const near = tokens.slice(from, from + MOST_BEFORE_TAKE);
  if (near.every(({ written }) => takenBy(written?.word ?? '') === undefined)) return false;
  cursor.at = from;
  const opens = takeTakes(on).length > 0;
  cursor.at = at;
  return opens;
}

/** Whether a word stands among those that are taken, with another behind it: `liver and heart of`. */
function isOneOfMore(tokens: readonly Token[], i: number, line: string): boolean {
  if (tokens[i]?.kind !== Kind.Word) return false;
  const next = tokens[i + 1];
  const joins = next?.kind === Kind.Comma || next?.written?.word === 'and' || line[next?.start ?? 0] === '&';
  const last = next?.kind === Kind.Comma && tokens[i + 2]?.written?.word === 'and' ? tokens[i + 3] : tokens[i + 2];
  return joins && last?.kind === Kind.Word;
}

/** `grated`, `finely`: how it is taken, and none of it. */
const SAYS_HOW = /(?:ed|en|ly|and|the|out|up)$/;

/** The words before `of`, or `of the`. */
export function takenWords(on: ListLine, first: Token | undefined, last: Token): TextNode {
  const start = first?.start ?? 0;
  const text = on.line.slice(start, last.end).replace(/\s+(?:of|from)(?:\s+the)?$/i, '');
  return { start, end: start + text.length, text };
}

/** `the finely grated zest of`. */
const MOST_BEFORE_TAKE = 4;
/** `strained juice and finely grated rind of`. */
const MOST_BEFORE_OF = 8;
