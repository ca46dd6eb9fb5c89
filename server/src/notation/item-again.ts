/**
 * Knows how a line says its amount again in other measures: `= 476 g`, `/8 oz`, `or 1/2 ounce`, `(120 g)`.
 * Refuses to know which of them is right.
 */
import { dimensionIn, Free, type Measure } from './amounts.ts';
import type { Cursor } from './cursor.ts';
import type { Item } from './item.ts';
import type { ListLine } from './list-line.ts';
import { takeStated, takeTerms } from './stated.ts';
import { takeAgain, takeEach, takeTerm } from './term.ts';
import { isNumber, isPlain, Kind, type Token } from './tokens.ts';
import { takeTrade } from './trade-terms.ts';
import type { BesideNode } from './tree.ts';

/** The same amount in other measures, between the amount and the name. */
export function takeBesides(on: ListLine, item: Item): void {
  const { cursor, line } = on;
  for (;;) {
    const { at, token } = cursor;
    if (token === undefined || token.written?.special === false) return;
    if (token.kind === Kind.Equals) {
      cursor.at++;
      const amount = takeStated(cursor, line);
      if (amount === undefined || amount instanceof Free)
        on.fault('missing-value', token, 'write what the amount equals: `2 cups = 476 g`');
      else item.beside('=', token, on.measured(amount), 'same');
    } else if (token.kind === Kind.LeftParen) {
      const means = item.measure?.unit === undefined ? 'either' : 'same';
      if (!takeBracketed(on, item, means)) {
        cursor.at = at;
        return;
      }
    } else if (!takeAnother(on, item)) {
      cursor.at = at;
      return;
    }
  }
}

/** `/8 oz`, `or 1/2 ounce`. */
export function takeAnother(on: ListLine, item: Item): boolean {
  const { cursor, line } = on;
  const { token } = cursor;
  const again = takeAgain(cursor, line);
  if (again !== undefined && token !== undefined) {
    const more = takeTerms(cursor, line, again);
    item.beside('/', token, on.measured(more.length === 0 ? again : { ...again, plus: more }), 'same');
    return true;
  }
  if (token?.written?.word !== 'or' || !isNumber(cursor.kindAfter(1))) return false;
  cursor.at++;
  const or = takeTerm(cursor, line);
  // `1 large or 2 small onions`
  const sized = or?.sizes !== undefined && item.measure?.sizes !== undefined;
  if (or === undefined || (or.unit === undefined && or.counted === undefined && !sized) || sameUnit(or, item.measure))
    return false;
  item.beside('or', token, on.measured(or), 'same');
  return true;
}

/** What may stand before the amount in a bracket. */
const BEFORE_AMOUNT: ReadonlySet<string | undefined> = new Set([
  'or',
  'from',
  'scant',
  'just',
  'total',
  'weighing',
  'each',
]);

/** A bracket that holds only an amount, perhaps in several measures. */
export function takeBracketed(on: ListLine, item: Item, means: BesideNode['means']): boolean {
  const { cursor, line } = on;
  const open = cursor.take(Kind.LeftParen);
  const within = cursor.token;
  const opens = within?.written?.word;
  if (open === undefined || within === undefined || (isPlain(within) && opens !== DRAINED)) return false;
  let drained = takeDrainedWords(cursor);
  while (cursor.kind === Kind.Equals || BEFORE_AMOUNT.has(cursor.token?.written?.word)) cursor.at++;
  const found: { readonly measure: Measure; readonly token: Token }[] = [];
  for (;;) {
    const token = cursor.token;
    const stated = takeStated(cursor, line);
    if (stated === undefined || stated instanceof Free || token === undefined) return false;
    // `12 lb E.P. (15 lb A.P.)`
    const trade = takeTrade(cursor, line);
    if (trade !== undefined) {
      if (trade.weighed === 'edible portion' || item.node.bought !== undefined || found.length > 0) return false;
      if (cursor.take(Kind.RightParen) === undefined) return false;
      item.node.bought = on.measured(stated);
      return true;
    }
    found.push({ measure: stated, token });
    const sign = cursor.token;
    const mark = sign?.kind === Kind.Other ? line[sign.start] : undefined;
    if (
      sign === undefined ||
      !(
        mark === '/' ||
        mark === ';' ||
        sign.kind === Kind.Comma ||
        sign.kind === Kind.Equals ||
        sign.written?.word === 'or'
      )
    )
      break;
    cursor.at++;
  }
  let says = means;
  const word = cursor.token?.written?.word;
  // `½ tin condensed milk (397 g tin)`, `2 cans corn (from 15-oz cans)`
  const holder = found[0]?.measure.each !== undefined && item.measure?.counted !== undefined;
  if (takeEach(cursor) || word === 'apiece' || opens === 'each' || holder) says = 'each';
  else if (opens === 'or') says = 'same';
  else if (word === 'total' || word === 'in' || word === 'altogether' || word === DRAINED || word === 'weight') {
    if (word === DRAINED) drained = true;
    else if (word !== 'weight') says = 'same';
    while (cursor.kind === Kind.Word) cursor.at++;
  }
  if (cursor.take(Kind.RightParen) === undefined) return false;
  const [first] = found;
  if (
    first === undefined ||
    (first.measure.unit === undefined &&
      first.measure.counted === undefined &&
      found.length === 1 &&
      first.measure.each === undefined &&
      first.measure.sizes === undefined)
  )
    return false;
  if (says === 'either' && (first.measure.about !== undefined || dimensionIn(first.measure) === 'volume'))
    says = 'same';
  if (says === 'either' && dimensionIn(first.measure) === 'length') return false;
  for (const { measure, token } of found) item.beside('(', token, on.measured(measure), says, drained);
  return true;
}

/** `drained weight`, before the weight; nothing is read where no amount stands behind it. */
function takeDrainedWords(cursor: Cursor): boolean {
  const { at } = cursor;
  if (!takeWord(cursor, DRAINED)) return false;
  takeWord(cursor, 'weight');
  if (cursor.kind === Kind.Colon || cursor.kind === Kind.Equals) cursor.at++;
  if (isNumber(cursor.kind) || cursor.kind === Kind.About) return true;
  cursor.at = at;
  return false;
}

const DRAINED = 'drained';

function takeWord(cursor: Cursor, word: string): boolean {
  if (cursor.token?.written?.word !== word) return false;
  cursor.at++;
  return true;
}

/** `, drained weight 240 g`, `, 240 g drained`. */
export function takeDrained(on: ListLine, item: Item, comma: Token): boolean {
  const { cursor, line } = on;
  const { at } = cursor;
  let drained = takeDrainedWords(cursor);
  const stated = drained || isNumber(cursor.kind) ? takeStated(cursor, line) : undefined;
  if (!drained && takeWord(cursor, DRAINED)) {
    drained = true;
    takeWord(cursor, 'weight');
  }
  const ends = cursor.kind === Kind.End || cursor.kind === Kind.Comma || cursor.kind === Kind.LeftParen;
  if (!drained || !ends || stated === undefined || stated instanceof Free || dimensionIn(stated) !== 'mass') {
    cursor.at = at;
    return false;
  }
  item.beside(',', comma, on.measured(stated), 'either', true);
  return true;
}

function sameUnit(a: Measure, b: Measure | undefined): boolean {
  return a.unit?.written?.printed?.dimension === b?.unit?.written?.printed?.dimension && a.unit !== undefined;
}
