/**
 * Knows the canonical layout: indents, the column of names, one blank between words, short unit names in amounts.
 * Refuses to touch comments, the prose of steps, and any line that could not be read whole.
 */

import { unitInList, unitOf } from './amounts.ts';
import type { Document } from './document.ts';
import { statedSpan } from './item-amounts.ts';
import { keptOn } from './kept.ts';
import { label } from './label.ts';
import { type Outline, outline } from './outline.ts';
import { scan } from './scan.ts';
import { readLine } from './statements.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Line, Span } from './tree.ts';

/** Names stand at this column of a part; longer amounts push theirs on. */
const AMOUNT_WIDTH = 8;
const KEYWORD_WIDTH = 7;
const INDENT = '  ';

/** The new text of every line, in order; a line that stays is the same string. */
export function layout(document: Document, of: Outline = outline(document)): string[] {
  const misplaced = new Set(of.misplaced.map((m) => m.at));
  return document.lines.map((line, at) => {
    const text = misplaced.has(at) ? trimEnd(line.text) : layoutLine(line);
    // Emptied, the line would let the CR before it and its own LF become one line end.
    return text === '' && document.eols[at - 1] === '\r' && document.eols[at] === '\n' ? line.text : text;
  });
}

/** The canonical text of one line; a line that would be read otherwise once laid out stays as it is. */
export function layoutLine(line: Line): string {
  let laidOut = LAID_OUT.get(line);
  if (laidOut === undefined) {
    laidOut = layoutRead(line);
    LAID_OUT.set(line, laidOut);
  }
  return laidOut;
}

/** Lines that no edit touched are laid out once. */
const LAID_OUT = keptOn<Line, string>();

function layoutRead(line: Line): string {
  const { statement, comment, text } = line;
  if (statement.kind === 'blank') return comment === undefined ? '' : trimEnd(text);
  if (statement.kind === 'unread' || line.faults.length > 0) return trimEnd(text);
  const code = comment === undefined ? text : text.slice(0, comment.start);
  const body = layoutCode(line, code.trim());
  const indent = ['recipe', 'part', 'trial', 'food'].includes(statement.kind) ? '' : INDENT;
  const laidOut = indent + body + (comment === undefined ? '' : gapBefore(code) + trimEnd(comment.text));
  return laidOut === text || saysTheSame(line, readLine(laidOut)) ? laidOut : trimEnd(text);
}

/** A last guard: `½#` with a blank in it would begin a comment. */
function saysTheSame(before: Line, after: Line): boolean {
  const bare = ({ statement, comment, faults }: Line) =>
    JSON.stringify([statement, comment?.text, faults.length], (key, value: unknown) => {
      if (POSITIONS.has(key)) return undefined;
      return typeof value === 'string' ? collapse(value) : value;
    });
  return bare(before) === bare(after);
}

const POSITIONS: ReadonlySet<string> = new Set(['start', 'end', 'unitSpan', 'optional']);

function layoutCode(line: Line, code: string): string {
  const { statement } = line;
  const offset = line.text.indexOf(code);
  const keyword = line.keyword === undefined ? '' : line.text.slice(line.keyword.start, line.keyword.end);
  const rest = code.slice(keyword.length).trim();
  // `Serves 8` stays as a cook wrote it.
  if (statement.kind === 'yield' && keyword !== 'yield') return collapse(code);
  if (statement.kind === 'time' && keyword !== 'time') return collapse(code);
  switch (statement.kind) {
    case 'ingredient':
      return layoutIngredient(line, statement, code, offset);
    case 'step':
      return `do ${rest}`;
    case 'text':
    case 'tags':
    case 'from':
    case 'picture':
    case 'saw':
    case 'tested':
    case 'verdict':
    case 'yield':
    case 'pan':
    case 'oven':
    case 'time':
    case 'took':
    case 'started':
    case 'reached':
    case 'weighed':
    case 'used':
    case 'component':
    case 'trim':
    case 'price':
    case 'like':
    case 'also':
    case 'contains':
      return `${keyword.padEnd(KEYWORD_WIDTH)} ${isProse(statement.kind) ? rest : spaced(rest)}`;
    default:
      return statement.kind === 'allow' || statement.kind === 'trial' ? code : `${keyword} ${collapse(rest)}`.trim();
  }
}

/** What is read aloud keeps its words: `yield 2 cups`. */
const isProse = (kind: string): boolean =>
  kind === 'text' || kind === 'saw' || kind === 'from' || kind === 'picture' || kind === 'yield' || kind === 'time';

function layoutIngredient(
  line: Line,
  node: Extract<Line['statement'], { kind: 'ingredient' }>,
  code: string,
  offset: number,
): string {
  const amountEnd = statedSpan(node)?.end ?? 0;
  // `2 cloves`: the count word is the name.
  const nameIsCount = node.name !== undefined && node.name.start < amountEnd;
  if (amountEnd === 0 || nameIsCount || node.name === undefined) return spaced(code, true);
  const amount = spaced(line.text.slice(offset, amountEnd), true);
  const tail = line.text.slice(amountEnd, offset + code.length);
  const shift = (span: Span): Span => ({ start: span.start - amountEnd, end: span.end - amountEnd });
  const bought = node.bought === undefined ? undefined : shift(node.bought);
  const rest =
    bought === undefined
      ? collapse(tail)
      : collapse(tail.slice(0, bought.start)) +
        ' ' +
        collapse(`${spaced(tail.slice(bought.start, bought.end), true)}${tail.slice(bought.end)}`);
  return `${amount.padEnd(AMOUNT_WIDTH)}  ${rest.trim()}`;
}

/** Blanks made one, a blank between number and unit, units by their short names. */
function spaced(text: string, list = false): string {
  const tokens = scan(text, 'without blanks').filter((t) => t.kind !== Kind.Comment);
  label(text, tokens, list ? 'line' : 'slot');
  let out = '';
  let last: Token | undefined;
  for (const [i, token] of tokens.entries()) {
    const isUnit = token.kind === Kind.UnitWord;
    if (token.kind === Kind.Degree && tokens[i + 1]?.kind === Kind.UnitWord) continue;
    const gap = last !== undefined && last.end < token.start;
    const glued = last !== undefined && isUnit && isNumber(last.kind);
    if (out !== '' && (gap || glued)) out += ' ';
    let end = token.end;
    if (isUnit && list && last?.kind !== Kind.Degree && tokens[i - 1]?.kind !== Kind.Degree) {
      const unit = unitInList(token);
      out += unit.symbol;
      const point = tokens[i + 1];
      if (point !== undefined && point.start === token.end && text[point.start] === '.') {
        tokens.splice(i + 1, 1);
        end = point.end;
      }
    } else out += isUnit ? unitOf(token).symbol : text.slice(token.start, token.end);
    last = end === token.end ? token : { ...token, end };
  }
  return out;
}

const BLANKS = /[\s\uFEFF]+/g;
const collapse = (text: string): string => text.replace(BLANKS, ' ').replace(/ ,/g, ',').trim();
const trimEnd = (text: string): string => text.replace(/[\s\uFEFF]+$/, '');

/** The blanks a writer left before a comment, two at least. */
function gapBefore(code: string): string {
  const gap = code.slice(code.trimEnd().length);
  return gap.length >= 2 || gap.includes('\t') ? gap : '  ';
}
