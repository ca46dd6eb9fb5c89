/**
 * Knows what a line takes out of whole things: `juice of`, `yolks of`.
 * Refuses to know what that gives.
 */
import { textOf } from './cursor.ts';
import type { ListLine } from './list-line.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { TextNode } from './tree.ts';

/** `juice of`, `finely grated zest and juice of`, `the yolks of`. */
export function takeTakes(on: ListLine): readonly TextNode[] {
  const { cursor, line } = on;
  const { at, tokens } = cursor;
  const takes: TextNode[] = [];
  if (cursor.kind !== Kind.Word) return takes;
  for (let i = at; i < Math.min(tokens.length, at + MOST_BEFORE_OF); i++) {
    const token = tokens[i] as Token;
    const word = token.written?.word ?? '';
    if (TAKEN.has(word)) takes.push(textOf(line, token, token));
    else if (takes.length > 0 && isNumber(token.kind) && tokens[i + 1]?.kind === Kind.Word) {
      // `Yolks 3 eggs`, `grated rind 1/2 lemon`
      cursor.at = i;
      return takes;
    } else if (takes.length > 0 && (word === 'of' || word === 'from')) {
      let next = i + 1;
      if (tokens[next]?.written?.word === 'the') next++;
      if (!isNumber(tokens[next]?.kind ?? Kind.End) && tokens[next]?.kind !== Kind.SizeWord) return [];
      cursor.at = next;
      return takes;
    } else if (token.kind !== Kind.Word && token.kind !== Kind.Comma && line[token.start] !== '&') return [];
  }
  return [];
}

/** The words before `of`, or `of the`. */
export function takenWords(on: ListLine, first: Token | undefined, last: Token): TextNode {
  const start = first?.start ?? 0;
  const text = on.line.slice(start, last.end).replace(/\s+(?:of|from)(?:\s+the)?$/i, '');
  return { start, end: start + text.length, text };
}

/** What is taken out of a whole thing. */
export const TAKEN: ReadonlySet<string> = new Set([
  'juice',
  'zest',
  'rind',
  'peel',
  'yolk',
  'yolks',
  'white',
  'whites',
  'pulp',
  'flesh',
  'seeds',
  'leaves',
]);
/** `strained juice and finely grated rind of`. */
const MOST_BEFORE_OF = 8;
