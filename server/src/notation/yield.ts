/**
 * Knows how a yield is written: behind `yield`, and as cooks write it in a line of its own (`Serves 6-8`, `Makes about 24 cookies`,
 * `6 servings`).
 * Refuses to know what is made.
 */
import { numberOfWord, numberWord } from '../measure/number-words.ts';
import { amountOf, takeAmount } from './amounts.ts';
import { Cursor, isAny, takeWhile, textOf } from './cursor.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { MeasuredNode, NumeralNode, SyntaxFault, TextNode } from './tree.ts';

export interface YieldRead {
  readonly amount?: MeasuredNode;
  readonly of?: TextNode;
}

/** What the tokens from one on say of how much is made. */
export function yieldOf(line: string, tokens: readonly Token[], from: number, faults: SyntaxFault[]): YieldRead {
  const cursor = new Cursor(tokens, from);
  cursor.take(Kind.Colon);
  const amount = takeWorded(cursor) ?? inLots(measured(line, cursor, faults), cursor);
  const rest = takeWhile(cursor, isAny);
  const words = rest && textOf(line, rest.first, rest.last);
  const first = amount?.counted ?? words;
  const last = words ?? first;
  const of = first && last && { ...first, end: last.end, text: line.slice(first.start, last.end) };
  return { ...(amount && { amount }), ...(of && { of }) };
}

/** The words that say in a line of its own how much it makes, and whether they count those who eat. */
export const SAYS: ReadonlyMap<string, boolean> = new Map([
  ['serves', true],
  ['feeds', true],
  ['servings', true],
  ['portions', true],
  ['makes', false],
  ['yields', false],
  ['yield', false],
]);
const EATEN: ReadonlySet<string> = new Set(['serving', 'servings', 'portion', 'portions', 'people', 'persons']);

export interface SaidYield {
  /** The token after the word that says it. */
  readonly from: number;
  readonly serves: boolean;
}

/** Where a line without a keyword says how much it makes: `serves 8`, `Makes two loaves`, `6 servings`. */
export function saidYield(tokens: readonly Token[]): SaidYield | undefined {
  const [first, second, third] = tokens;
  const serves = first?.kind === Kind.Word ? SAYS.get(first.written?.word ?? '') : undefined;
  if (serves !== undefined) {
    let at = tokens[1]?.kind === Kind.Colon ? 2 : 1;
    if (tokens[at]?.kind === Kind.About || tokens[at]?.written?.word === 'about') at++;
    return isCount(tokens, at) ? { from: 1, serves } : undefined;
  }
  const last = tokens.at(-1);
  const counts = first !== undefined && first.written === undefined && isNumber(first.kind);
  const isAlone =
    tokens.length === 2 || (tokens.length === 4 && (second?.kind === Kind.Dash || second?.kind === Kind.To));
  if (!counts || !isAlone || last === undefined || (tokens.length === 4 && !isNumber(third?.kind ?? Kind.End)))
    return undefined;
  return EATEN.has(last.written?.word ?? '') ? { from: 0, serves: false } : undefined;
}

/** A number, one in words, or `a dozen`. */
function isCount(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  if (token === undefined) return false;
  if (token.written === undefined) return isNumber(token.kind);
  const word = token.written?.word ?? '';
  return numberOfWord(word) !== undefined || wordedAt(tokens, at) !== undefined;
}

function measured(line: string, cursor: Cursor, faults: SyntaxFault[]): MeasuredNode | undefined {
  const node = amountOf(line, takeAmount(cursor), faults);
  return node?.kind === 'measured' ? node : undefined;
}

/** `one`, `a dozen`, `half a dozen`, `about two`. */
function takeWorded(cursor: Cursor): MeasuredNode | undefined {
  const about = cursor.kind === Kind.Word && cursor.token?.written?.word === 'about' ? cursor.token : undefined;
  const at = cursor.at + (about === undefined ? 0 : 1);
  const found = wordedAt(cursor.tokens, at);
  const first = cursor.tokens[at];
  if (found === undefined || first === undefined) return undefined;
  cursor.at = found.next;
  const end = cursor.tokens[found.next - 1]?.end ?? first.end;
  const low: NumeralNode = { start: first.start, end, value: found.value, style: 'word' };
  const quantity = { low: found.value, high: found.value, about: about !== undefined };
  return { kind: 'measured', start: about?.start ?? low.start, end, quantity, low };
}

/** A number in words from one token on, and the token after it. */
function wordedAt(tokens: readonly Token[], at: number): { readonly value: number; readonly next: number } | undefined {
  let next = at;
  let value: number | undefined;
  for (let token = tokens[next]; token?.written !== undefined && next < at + 3; token = tokens[next]) {
    const number = numberWord(token.written.word);
    if (number === undefined || number.low !== number.high) break;
    // `a loaf` counts no lot, and `a` alone is no number here.
    if (number.article && numberWord(tokens[next + 1]?.written?.word ?? '')?.lot !== true) break;
    value = (value ?? 1) * number.low;
    next++;
  }
  return value === undefined || !Number.isInteger(value) || value < 1 ? undefined : { value, next };
}

/** `2 dozen` are twenty-four: the numeral stays what is written. */
function inLots(amount: MeasuredNode | undefined, cursor: Cursor): MeasuredNode | undefined {
  const lot =
    amount?.unit === undefined && amount?.counted === undefined
      ? numberWord(cursor.token?.written?.word ?? '')
      : undefined;
  if (amount === undefined || lot?.lot !== true || lot.low !== lot.high) return amount;
  const end = cursor.token?.end ?? amount.end;
  cursor.at++;
  const { low, high } = amount.quantity;
  return { ...amount, end, quantity: { ...amount.quantity, low: low * lot.low, high: high * lot.low } };
}
