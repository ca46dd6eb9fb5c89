/**
 * Knows how the sentence of a step is cut: words, amounts, temperatures, times and forced mentions, in order.
 * Refuses to know which words are ingredients.
 */
import type { CstNode, IToken } from 'chevrotain';
import { asDuration, asLength, measuredOf, overnightNode, temperatureOf } from './amounts.ts';
import { spanOf } from './concrete.ts';
import { Overnight, Word } from './tokens.ts';
import type { Sentence, SentenceItem, Span, SyntaxFault } from './tree.ts';

export function sentenceOf(line: string, cst: CstNode, span: Span, faults: SyntaxFault[]): Sentence {
  const items: SentenceItem[] = [];
  for (const element of Object.values(cst.children).flat()) {
    const item = 'image' in element ? tokenItem(element) : nodeItem(line, element, faults);
    if (item !== undefined) items.push(item);
  }
  items.sort((a, b) => a.start - b.start);
  return { ...span, items };
}

function tokenItem(token: IToken): SentenceItem | undefined {
  if (token.image === '') return undefined;
  if (token.tokenType === Overnight) return overnightNode(token);
  const first = token.image.charCodeAt(0);
  const wordLike = token.tokenType === Word || (token.image.length > 0 && isLetter(first));
  if (wordLike) return { kind: 'word', ...spanOf(token, token), word: token.image.toLowerCase().replaceAll('’', "'") };
  return { kind: 'mark', ...spanOf(token, token), mark: token.image };
}

const isLetter = (code: number): boolean => (code > 64 && code < 91) || (code > 96 && code < 123) || code > 191;

function nodeItem(line: string, node: CstNode, faults: SyntaxFault[]): SentenceItem | undefined {
  if (node.name === 'forced') return forced(line, node, faults);
  const temperature = temperatureOf(node, faults);
  if (temperature !== undefined) return temperature;
  const measured = measuredOf(node, faults);
  return measured === undefined ? undefined : (asDuration(measured) ?? asLength(measured) ?? measured);
}

function forced(line: string, node: CstNode, faults: SyntaxFault[]): SentenceItem | undefined {
  const c = node.children as Record<string, IToken[] | undefined>;
  const open = c.LeftBracket?.[0];
  const names = c.NamePart ?? [];
  const [first] = names;
  const last = names.at(-1);
  if (open === undefined) return undefined;
  const close = c.RightBracket?.find((t) => t.image !== '');
  const span = spanOf(open, close ?? last ?? open);
  if (close === undefined)
    faults.push({ code: 'unclosed', ...span, detail: 'close the bracket with `]`, around the name of one ingredient' });
  if (first === undefined || last === undefined) return undefined;
  const inner = spanOf(first, last);
  return { kind: 'forced', ...span, name: { ...inner, text: line.slice(inner.start, inner.end) } };
}
