/**
 * Knows where the name of an item begins and ends, and the amount of one that stands behind its name.
 * Refuses to know foods.
 */
import { type Amount, dimensionIn, Free, type Measure } from './amounts.ts';
import { type Cursor, takeWhile, textOf } from './cursor.ts';
import type { Item } from './item.ts';
import { takeBesides } from './item-again.ts';
import { opensTakes } from './item-takes.ts';
import type { ListLine } from './list-line.ts';
import { takeStated } from './stated.ts';
import { takeEach } from './term.ts';
import { isNamePart, isNumber, Kind, type Token } from './tokens.ts';
import { takeTrade } from './trade-terms.ts';
import type { Draft, IngredientNode, TextNode } from './tree.ts';
import { PUT_INTO } from './words.ts';

/** The name: all that may be one, up to a comma, a bracket, a purpose, an alternative with an amount, or another item. */
export function takeName(on: ListLine, item: Item): void {
  const { cursor } = on;
  const first = cursor.token;
  if (first === undefined || !isNamePart(first.kind)) return;
  let last: Token | undefined;
  let before: Token | undefined;
  for (let token: Token | undefined = first; token !== undefined && isNamePart(token.kind); token = cursor.token) {
    if (token !== first && (endsName(on, item, token) || (item.isBare && opensAmountBehind(on, token)))) break;
    before = last;
    last = token;
    cursor.at++;
  }
  if (before !== undefined && cursor.token?.written?.word === 'with' && DONE.test(last?.written?.word ?? '')) {
    last = before;
    cursor.at--;
  }
  const name = trimmedName(on, first, last ?? first);
  if (name !== undefined) item.node.name = name;
  if (item.node.eachOf) takeListed(on, item);
}

/** `cinnamon, cloves and nutmeg` behind `each`: the commas are in the list. */
function takeListed(on: ListLine, item: Item): void {
  const { cursor, line } = on;
  while (
    cursor.kind === Kind.Comma &&
    isNamePart(cursor.kindAfter(1)) &&
    !isNumber(cursor.kindAfter(1)) &&
    item.node.name !== undefined
  ) {
    const { start } = item.node.name;
    cursor.at++;
    const run = takeWhile(cursor, isNamePart);
    if (run !== undefined) item.node.name = { start, end: run.last.end, text: line.slice(start, run.last.end) };
  }
}

/** Marks and points behind a name are none of it, nor the `or` of a line that goes on in the next: `salt.`, `flour*`. */
export function trimmedName(on: ListLine, first: Token, last: Token): TextNode | undefined {
  if (last.kind === Kind.Word && last.written?.word !== 'or') return textOf(on.line, first, last);
  const text = on.line
    .slice(first.start, last.end)
    .replace(/\s*[.*†‡;:…–¹²³⁴⁵-]+$/u, '')
    .replace(/\s+or$/i, '');
  return text === '' ? undefined : { start: first.start, end: first.start + text.length, text };
}

function endsName(on: ListLine, item: Item, token: Token): boolean {
  const { cursor, line } = on;
  const { tokens, at } = cursor;
  // `water at 28 C`
  if (token.written?.word === 'at') return opensHeat(cursor, at + 1);
  // `yeast softened in 1/4 cup water`: what it is put in is an item of its own.
  if (token.written?.special === false) return putInto(on, at);
  const next = tokens[at + 1];
  if (token.kind === Kind.Free) return true;
  if (token.kind === Kind.Other) {
    const mark = line[token.start];
    if (mark === '/' && isNumber(next?.kind ?? Kind.End)) return true;
    return (
      (mark === '+' || mark === '&') && (opensMore(on, at + 1) || (mark === '+' && MORE.has(next?.written?.word ?? '')))
    );
  }
  if (token.kind === Kind.Dash)
    return token.start > (tokens[at - 1]?.end ?? 0) && next !== undefined && next.start > token.end;
  switch (token.written?.word) {
    // `onion stuck with 6 cloves`
    case 'with':
      return isNumber(next?.kind ?? Kind.End);
    case 'in':
      return putInto(on, at);
    case 'mixed':
      // `wine and brandy mixed`
      return putInto(on, at) || next === undefined || next.kind === Kind.Comma;
    // `suet crust No. 12`: another recipe of the book; one digit is a grade, as in `cure no. 1`.
    case 'no': {
      const number = tokens[at + 2];
      return (
        number !== undefined && isNumber(number.kind) && number.end > number.start + 1 && next?.kind === Kind.Other
      );
    }
    case 'plus':
      return opensMore(on, at + 1) || MORE.has(next?.written?.word ?? '');
    case 'and':
      return opensMore(on, at + 1) && tokens[at + 1]?.kind !== Kind.Fraction;
    case 'or':
      return (
        opensMore(on, at + 1) ||
        next?.kind === Kind.Free ||
        next?.written?.word === 'more' ||
        next?.written?.word === 'as'
      );
    case 'for':
      return next?.kind === Kind.Word && cursor.tokens[at - 1]?.written?.word !== 'all';
    case 'to':
      return next?.kind === Kind.Word && tokens[at - 1]?.written?.word !== 'ready';
    // `a snapper of about four pounds`
    case 'of':
      return !item.isBare && item.measure?.unit === undefined && opensWeight(on, at + 1);
    case 'per':
      return opensRate(cursor, at);
    case 'weighing':
      return isNumber(next?.kind ?? Kind.End) || next?.kind === Kind.About;
    case 'each':
    case 'ea':
      return next === undefined || next.kind === Kind.Comma;
    // `tomatoes either canned or fresh`
    case 'either':
      return next?.kind === Kind.Word;
    // `flour enough to make a dough`
    case 'enough':
    case 'sufficient':
      return next?.written?.word === 'to' || next?.written?.word === 'for';
    case 'if':
      return next?.kind === Kind.Word;
    // `1 cup milk less 1 tbsp`
    case 'less':
    case 'minus':
      return opensMore(on, at + 1);
    case 'about':
    case 'the':
    case 'size':
    case 'as':
      return saysSize(on, at);
    default:
      return false;
  }
}

/** Whether a temperature begins there. */
function opensHeat({ tokens }: Cursor, at: number): boolean {
  let i = at;
  while (isNumber(tokens[i]?.kind ?? Kind.End) || tokens[i]?.kind === Kind.Dash || tokens[i]?.kind === Kind.About) i++;
  const scale = tokens[i];
  return i > at && (scale?.kind === Kind.Degree || /^(?:c|f|degrees?)$/.test(scale?.written?.word ?? ''));
}

/** Whether a weight begins there, and the line or its next comma ends it. */
function opensWeight(on: ListLine, at: number): boolean {
  const { cursor } = on;
  const { at: back } = cursor;
  cursor.at = at;
  const { token } = cursor;
  const opens = token !== undefined && opensAmountBehind(on, token);
  const stated = opens ? takeStated(cursor, on.line) : undefined;
  cursor.at = back;
  return stated !== undefined && !(stated instanceof Free) && dimensionIn(stated) === 'mass';
}

/** Whether what is there says of how much something else the amount is: `per quart`, `to each pound`, `for every pint`. */
export function opensRate({ tokens }: Cursor, at: number): boolean {
  const next = tokens[at + 1]?.written?.word;
  switch (tokens[at]?.written?.word) {
    case 'per':
      return tokens[at + 1] !== undefined && next !== 'cent';
    case 'to':
    case 'for':
      return next === 'each' || next === 'every';
    default:
      return false;
  }
}

/** Whether it is put into so much of something: `dissolved in 2 tbsp water`. */
export function putInto(on: ListLine, at: number): boolean {
  const { tokens } = on.cursor;
  const word = tokens[at + 1]?.written?.word;
  const done = tokens[at]?.written?.word ?? '';
  // `stuck with 6 cloves`
  if (word === 'with' && DONE.test(done) && opensMore(on, at + 2)) return true;
  // `2 drops rennet in 2 tbsp water`
  if (done === 'in') return opensVolume(on, at + 1);
  if (!PUT_INTO.has(done)) return false;
  return (word === 'in' || word === 'with' || word === 'into') && opensMore(on, at + 2);
}

/** Where the item begins that it is put into. */
export const intoFrom = ({ cursor: { tokens } }: ListLine, at: number): number =>
  tokens[at]?.written?.word === 'in' ? at + 1 : at + 2;

/** Whether so much by volume begins there, of something: no pieces, and no inches. */
function opensVolume(on: ListLine, at: number): boolean {
  const { cursor } = on;
  const { at: back } = cursor;
  cursor.at = at;
  const opens = cursor.token !== undefined && isNumber(cursor.kind);
  const stated = opens ? takeStated(cursor, on.line) : undefined;
  const isOfMore = cursor.kind === Kind.Word;
  cursor.at = back;
  return isOfMore && stated !== undefined && !(stated instanceof Free) && dimensionIn(stated) === 'volume';
}

/** `the size of an egg`, `about the size of`, `size of`, `as big as`. */
function saysSize(on: ListLine, at: number): boolean {
  const word = (i: number): string => on.cursor.tokens[i]?.written?.word ?? '';
  let i = at;
  if (word(i) === 'about') i++;
  if (word(i) === 'the') i++;
  if (word(i) === 'size') return word(i + 1) === 'of';
  return word(i) === 'as' && /^(?:big|large|small)$/.test(word(i + 1)) && word(i + 2) === 'as';
}

/** Whether an amount begins there: `plus 2 tbsp`, `or about 2 cups`, `and the juice of 1 lemon`. */
function opensMore(on: ListLine, at: number): boolean {
  const token = on.cursor.tokens[at];
  if (token === undefined) return false;
  if (token.kind === Kind.Word) return opensTakes(on, at);
  if (token.kind === Kind.About || token.kind === Kind.NumberWord) return true;
  return isNumber(token.kind) || (token.kind === Kind.Bias && isNumber(on.cursor.tokens[at + 1]?.kind ?? Kind.End));
}

/** Whether the amount of a line that has none in front begins here, and the line or its next comma ends it: `flour 500 g`. */
export function opensAmountBehind(on: ListLine, token: Token): boolean {
  const { cursor, line } = on;
  const opensCan = token.written?.word === 'no' || line[token.start] === '#';
  if (!isNumber(token.kind) && token.kind !== Kind.About && !opensCan) return false;
  const { at } = cursor;
  const stated = takeStated(cursor, line);
  takeEach(cursor);
  if (stated !== undefined && !(stated instanceof Free)) {
    takeTrade(cursor, line);
    if (takeColumn(on, stated) !== undefined) takeTrade(cursor, line);
  }
  const ends = endsBehind(cursor, stated);
  cursor.at = at;
  return ends && stated !== undefined && !(stated instanceof Free);
}

/** Whether an amount behind a name may end where the cursor is; of `syrup, 40 percent, 1 cup` the share is none. */
export function endsBehind(cursor: Cursor, stated: Amount | undefined): boolean {
  const { kind, at } = cursor;
  if (kind === Kind.Comma) return !isShare(stated) || !hasNumber(cursor);
  return kind === Kind.End || kind === Kind.LeftParen || opensRate(cursor, at);
}

const isShare = (stated: Amount | undefined): boolean =>
  stated !== undefined && !(stated instanceof Free) && dimensionIn(stated) === 'share';

const hasNumber = ({ tokens, at }: Cursor): boolean => tokens.some(({ kind }, i) => i > at && isNumber(kind));

/** `Sugar: 1 cup`, `Flour ... 2 lb`, `Onions - 4`: the amount behind the name, and the marks between. */
export function takeAmountBehind(on: ListLine, item: Item): void {
  const { cursor, line } = on;
  const { at } = cursor;
  while (
    cursor.kind === Kind.Colon ||
    cursor.kind === Kind.Dash ||
    (cursor.kind === Kind.Other && LEADERS.has(line[cursor.token?.start ?? 0] ?? ''))
  )
    cursor.at++;
  const stated =
    cursor.token !== undefined && opensAmountBehind(on, cursor.token) ? takeStated(cursor, line) : undefined;
  if (stated === undefined || stated instanceof Free) {
    cursor.at = at;
    return;
  }
  setBehind(on, item, stated);
  takeEach(cursor);
  tellTrade(on, item);
  const { token } = cursor;
  const again = takeColumn(on, stated);
  if (again !== undefined && token !== undefined) {
    item.beside(',', token, on.measured(again), 'same');
    tellTrade(on, item);
  }
  takeBesides(on, item);
}

/** The second column of a card, the same in another measure: `Flour  2 lb 2 oz  2 qt`, `Bread  5 lb  100 slices`. */
function takeColumn(on: ListLine, first: Measure): Measure | undefined {
  const { cursor, line } = on;
  const { at } = cursor;
  while (cursor.kind === Kind.Other && LEADERS.has(line[cursor.token?.start ?? 0] ?? '')) cursor.at++;
  const opensCan = cursor.token?.written?.word === 'no' || line[cursor.token?.start ?? 0] === '#';
  const again = isNumber(cursor.kind) || opensCan ? takeStated(cursor, line) : undefined;
  if (again !== undefined && !(again instanceof Free)) {
    const [a, b] = [columnOf(first), columnOf(again)];
    if (a !== undefined && b !== undefined && a !== b) return again;
  }
  cursor.at = at;
  return undefined;
}

/** What a column of a card is in. */
function columnOf(stated: Measure): 'mass' | 'volume' | 'count' | undefined {
  const dimension = dimensionIn(stated);
  if (dimension === 'mass' || dimension === 'volume') return dimension;
  return stated.unit === undefined && (stated.counted !== undefined || stated.can !== undefined) ? 'count' : undefined;
}

/** `A.P.` behind an amount is told as a note in brackets is. */
export function tellTrade({ cursor, line }: ListLine, item: Item): void {
  const trade = takeTrade(cursor, line);
  if (trade !== undefined) item.node.note ??= textOf(line, trade.first, trade.last);
}

export function setBehind(on: ListLine, item: Item, stated: Measure): void {
  item.measure = stated;
  item.node.amount = on.measured(stated);
}

/** `1.5 % of the beef  salt`: two blanks part the two. */
export function takeShareOf(on: ListLine, node: Draft<IngredientNode>): void {
  const { cursor, line } = on;
  const the = cursor.token?.written?.word === 'the';
  if (the) cursor.at++;
  const { at } = cursor;
  const first = cursor.token;
  let last = first;
  while (cursor.token !== undefined && isNamePart(cursor.kind)) {
    const gap =
      last !== undefined && last !== cursor.token && /\s{2,}|\t/.test(line.slice(last.end, cursor.token.start));
    if (gap && first !== undefined && last !== undefined) {
      node.shareOf = textOf(line, first, last);
      return;
    }
    last = cursor.token;
    cursor.at++;
  }
  cursor.at = at;
  // Nobody can say where the beef ends: it may not pass for a food `beef salt`.
  if (the && first !== undefined && last !== undefined)
    on.fault(
      'missing-name',
      { start: first.start, end: last.end },
      first === last
        ? `say which food is measured so, with two blanks before it: \`2 % of the ${line.slice(first.start, first.end)}  fine salt\``
        : 'put two blanks before the food that is measured so: `2 % of the beef  fine salt`',
    );
}

export const MORE: ReadonlySet<string> = new Set(['more', 'extra', 'additional', 'some', 'a', 'enough', 'another']);

/** A participle. */
const DONE = /.(?:ed|en|ck)$/;

/** What leads from a name to its amount. */
const LEADERS: ReadonlySet<string> = new Set(['.', '…', '=', '·']);
