/**
 * Knows how the sentence of a step is cut: words, amounts, temperatures, times and forced mentions, in order.
 * Refuses to know which words are ingredients.
 */
import { measuredOf, takeMeasure, withPoint } from './amounts.ts';
import { Cursor, takeWhile, textIn } from './cursor.ts';
import { label } from './label.ts';
import { asDuration, asLength, joinedDuration, overnightNode, temperatureOf } from './readings.ts';
import { scan } from './scan.ts';
import { isNamePart, Kind, opensMeasure, type Token } from './tokens.ts';
import type { Sentence, SentenceItem, SyntaxFault } from './tree.ts';

/** The sentence of a line from its token `from` on; an empty one stands at the end of the line. */
export function sentenceOf(line: string, tokens: readonly Token[], from: number, faults: SyntaxFault[]): Sentence {
  const cursor = new Cursor(tokens, from);
  const items: SentenceItem[] = [];
  for (let token = cursor.token; token !== undefined; token = cursor.token) {
    let item: SentenceItem | undefined;
    if (opensMeasure(token.kind)) item = measureItem(line, cursor, faults);
    else if (token.kind === Kind.LeftBracket) item = forcedItem(line, cursor, token, faults);
    else {
      cursor.at++;
      item = halfOfDay(line, cursor, token) ?? tokenItem(line, token);
    }
    if (item === undefined) continue;
    const before = items.at(-1);
    // `1 h 30 min` is one time.
    const whole = item.kind === 'duration' && before?.kind === 'duration' ? joinedDuration(before, item) : undefined;
    if (whole === undefined) items.push(item);
    else items[items.length - 1] = whole;
  }
  const end = tokens.at(-1)?.end ?? 0;
  return { start: tokens[from]?.start ?? end, end, items };
}

/** The sentence that a run of words is which stands on no line of its own: a note, a preparation. Faults in it are nobody's. */
export function sentenceIn(text: string): Sentence {
  const tokens = scan(text, 'without blanks').filter((token) => token.kind !== Kind.Comment);
  label(text, tokens, 'slot');
  return sentenceOf(text, tokens, 0, []);
}

function tokenItem(line: string, token: Token): SentenceItem {
  const { kind, start, end, written } = token;
  if (kind === Kind.Overnight) return overnightNode(token);
  if (written !== undefined) return { kind: 'word', start, end, word: written.word };
  const text = line.slice(start, end);
  const isMark = kind === Kind.Dash || kind === Kind.Minus || kind === Kind.Other;
  return !isMark && isLetter(text.charCodeAt(0))
    ? { kind: 'word', start, end, word: text.toLowerCase().replace('’', "'") }
    : { kind: 'mark', start, end, mark: text };
}

/** `6 a.m.`, `10 p.m`: one word; its last point is its own where the sentence goes on. */
function halfOfDay(line: string, cursor: Cursor, { start, end }: Token): SentenceItem | undefined {
  if (end !== start + 1) return undefined;
  const [point, half, last] = cursor.tokens.slice(cursor.at, cursor.at + 3);
  if (point?.start !== end || half?.start !== point.end || half.end !== half.start + 1) return undefined;
  const word = line.slice(start, half.end).toLowerCase();
  if (word !== 'a.m' && word !== 'p.m') return undefined;
  cursor.at += 2;
  const next = cursor.tokens[cursor.at + 1];
  const isPoint = last?.start === half.end && line.charCodeAt(last.start) === POINT;
  const own = isPoint && next !== undefined && goesOn(line.charAt(next.start)) ? last : half;
  if (own === last) cursor.at++;
  return { kind: 'word', start, end: own.end, word: word.replace('.', '') };
}

const isLetter = (code: number): boolean => (code > 64 && code < 91) || (code > 96 && code < 123) || code > 191;

function measureItem(line: string, cursor: Cursor, faults: SyntaxFault[]): SentenceItem | undefined {
  const taken = takeMeasure(cursor);
  if (taken === undefined) return undefined;
  const point = taken.unit === undefined ? undefined : takeUnitPoint(line, cursor, taken.unit);
  const measure = point === undefined ? taken : withPoint(taken, point);
  const temperature = temperatureOf(line, measure, faults, 'with or without');
  if (temperature !== undefined) return temperature;
  const measured = measuredOf(line, measure, faults);
  return asDuration(measured) ?? asLength(measured) ?? measured;
}

/** The point of `375 F.` and `10 min.`, where the sentence goes on behind it. */
function takeUnitPoint(line: string, cursor: Cursor, unit: Token): Token | undefined {
  const { token, tokens, at } = cursor;
  const next = tokens[at + 1];
  if (token?.kind !== Kind.Other || token.start !== unit.end || line.charCodeAt(token.start) !== POINT)
    return undefined;
  if (next === undefined || !goesOn(line.charAt(next.start))) return undefined;
  cursor.at++;
  return token;
}

const POINT = 46;
/** No capital, and no mark that could begin another sentence. */
const goesOn = (char: string): boolean => /[\p{Ll}\d,;:()]/u.test(char);

/** `[whole milk]`. */
function forcedItem(line: string, cursor: Cursor, open: Token, faults: SyntaxFault[]): SentenceItem | undefined {
  cursor.at++;
  const run = takeWhile(cursor, isForced);
  const close = cursor.take(Kind.RightBracket);
  const { start } = open;
  const { end } = close ?? run?.last ?? open;
  if (close === undefined)
    faults.push({
      code: 'unclosed',
      start,
      end,
      detail: 'close the bracket with `]`, around the name of one ingredient',
    });
  const name = textIn(line, run);
  return name && { kind: 'forced', start, end, name };
}

const isForced = (kind: Kind): boolean => isNamePart(kind) && kind !== Kind.RightBracket;
