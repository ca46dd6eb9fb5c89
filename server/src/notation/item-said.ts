/**
 * Knows what a line says of an item besides its amount and name: what is done to it, what it is for, what is bought of it.
 * Refuses to know what it means for the food.
 */
import { amountOf } from './amounts.ts';
import { spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import type { Item } from './item.ts';
import { opensAmountBehind, opensRate, putInto, takeAmountBehind } from './item-name.ts';
import type { ListLine } from './list-line.ts';
import { takeStated } from './stated.ts';
import { isNamePart, Kind, type Token } from './tokens.ts';

/** Words to the next bracket or weight as bought: the preparation, with what it says of purpose and rest. */
export function takeSaid(on: ListLine, item: Item, first: Token): void {
  const { cursor, line } = on;
  let last = first;
  while (cursor.token !== undefined && isPreparation(cursor.kind)) {
    if (cursor.token !== first && opensRate(cursor, cursor.at)) break;
    if (item.isBare ? opensAmountBehind(on, cursor.token) : cursor.token !== first && putInto(on, cursor.at)) break;
    last = cursor.token;
    noteMeaning(on, item, last);
    cursor.at++;
  }
  item.prepare(line, first, last);
  if (item.isBare) takeAmountBehind(on, item);
}

/** Notes what a word within the preparation opens: a purpose, a rest, a wish. */
function noteMeaning(on: ListLine, item: Item, token: Token): void {
  const { cursor, line } = on;
  const { node } = item;
  const { tokens, at } = cursor;
  const next = tokens[at + 1];
  const word = token.written?.word;
  if (token.kind === Kind.Free) {
    if (item.isBare) node.purpose ??= textOf(line, token, token);
    return;
  }
  if (
    word === 'optional' ||
    (word === 'if' &&
      /^(?:desired|liked|wanted|wished|preferred|needed|necessary|available|obtainable|possible|using|you)$/.test(
        next?.written?.word ?? '',
      ))
  ) {
    node.optional ??= spanOf(token, token);
    return;
  }
  if (word === 'plus' || word === 'more' || word === 'extra' || word === 'additional') {
    node.rest ??= { start: token.start, end: on.chunkEnd(at) };
    return;
  }
  const opens =
    (word === 'for' || (word === 'to' && tokens[at - 1]?.written?.word !== 'cut')) && next?.kind === Kind.Word;
  if (opens && node.purpose === undefined) {
    const end = on.chunkEnd(at);
    node.purpose = { start: token.start, end, text: line.slice(token.start, end) };
  }
}

/** `to each quart (1⅓ pounds) prepared fruit`: all that is left is told of it, and no amount in it is of this item. */
export function takeRate(on: ListLine, item: Item, first: Token): void {
  const { cursor, line } = on;
  const last = cursor.tokens.at(-1) ?? first;
  item.prepare(line, first, last);
  cursor.at = cursor.tokens.length;
}

export function takeBought(on: ListLine, item: Item, from: Token): void {
  const { cursor, line, faults } = on;
  cursor.at++;
  const amount = takeStated(cursor, line);
  const bought = amountOf(line, amount, faults);
  if (bought === undefined) on.fault('missing-value', from, 'write the weight as bought: `from 560 g`');
  else item.node.bought = bought;
  // `juice from 1 lemon`
  if (cursor.token !== undefined && isNamePart(cursor.kind) && cursor.token.kind !== Kind.Other) {
    const first = from;
    const run = takeWhile(cursor, isNamePart);
    delete item.node.bought;
    item.prepare(line, first, run?.last ?? first);
  }
}

/** `(NOTE)`, in which anything may stand but the bracket that closes it. */
export function takeNote(on: ListLine, item: Item): void {
  const { cursor, line } = on;
  const open = cursor.take(Kind.LeftParen);
  if (open === undefined) return;
  const inside = takeWhile(cursor, isInside);
  const close = cursor.take(Kind.RightParen);
  if (close === undefined) on.fault('unclosed', spanOf(open, inside?.last ?? open), 'close the bracket with `)`');
  const text = textIn(line, inside);
  if (text === undefined) return;
  if (/^(?:optional|if desired|if liked)$/i.test(text.text))
    item.node.optional ??= { start: text.start, end: text.end };
  else if (item.node.note === undefined) item.node.note = text;
  else item.prepare(line, open, close ?? inside?.last ?? open);
}

const isPreparation = (kind: Kind): boolean => isNamePart(kind) || kind === Kind.Comma;
const isInside = (kind: Kind): boolean => kind !== Kind.RightParen;
