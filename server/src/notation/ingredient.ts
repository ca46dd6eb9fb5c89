/**
 * Knows how an ingredient is written and printed: an amount, the same in other measures, a name, what is done to it and what it is for.
 * Refuses to know foods, and what must be there: `statements.ts` says what is missing.
 */
import { type Amount, amountOf, dimensionIn, Free } from './amounts.ts';
import type { Cursor } from './cursor.ts';
import { Item } from './item.ts';
import { takeAnother, takeBesides, takeBracketed, takeDrained } from './item-again.ts';
import { takeCountedBehind, takeFilledBehind, takeFilling } from './item-filling.ts';
import { isLess, takeLess } from './item-less.ts';
import {
  endsBehind,
  intoFrom,
  MORE,
  opensRate,
  putInto,
  setBehind,
  takeAmountBehind,
  takeName,
  takeShareOf,
  tellTrade,
} from './item-name.ts';
import { takeOr, takeWeighedAs } from './item-or.ts';
import { takeBought, takeNote, takeRate, takeSaid } from './item-said.ts';
import { opensTakes, takenWords, takeTakes } from './item-takes.ts';
import { ListLine } from './list-line.ts';
import { takePlus, takeStated } from './stated.ts';
import { saysEach, takeEach } from './term.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Draft, IngredientNode, MeasuredNode, SyntaxFault, TextNode } from './tree.ts';

/** Reads items of one line from left to right; what the cursor then stands on is none of it. */
export class ItemReader {
  private readonly on: ListLine;
  /** Items begun behind the first. */
  private items = 0;

  constructor(line: string, cursor: Cursor, faults: SyntaxFault[]) {
    this.on = new ListLine(line, cursor, faults);
  }

  /** The item that opens with its amount, or with what is taken out of one; undefined, and nothing read, where neither stands. */
  item(): IngredientNode | undefined {
    const { cursor } = this.on;
    const { at } = cursor;
    const takes = takeTakes(this.on);
    const of = takes.length > 0 ? cursor.tokens[cursor.at - 1] : undefined;
    const amount = takeStated(cursor, this.on.line);
    if (amount === undefined) {
      cursor.at = at;
      return undefined;
    }
    const item = this.after(amount, takes);
    return of === undefined ? item : { ...item, taken: takenWords(this.on, cursor.tokens[at], of) };
  }

  /** An item without an amount in front: a name, and perhaps its amount behind it. */
  bare(): IngredientNode | undefined {
    const node: Draft<IngredientNode> = { kind: 'ingredient' };
    const item = new Item(node);
    takeName(this.on, item);
    if (node.name === undefined) return undefined;
    takeAmountBehind(this.on, item);
    this.tail(item);
    if (node.amount === undefined && node.preparation !== undefined && LIKENESS.test(node.preparation.text))
      node.amount = oneAt(node.name.start);
    return item.done();
  }

  private after(amount: Amount, takes: readonly TextNode[]): IngredientNode {
    const { cursor, line, faults } = this.on;
    const node: Draft<IngredientNode> = { kind: 'ingredient' };
    const item = new Item(node);
    if (takes.length > 0) node.takes = takes;
    if (!(amount instanceof Free)) {
      if (amount.minus !== undefined)
        this.on.fault('bad-number', amount.minus, 'no amount is less than nothing: leave out the minus');
      item.measure = amount;
      tellTrade(this.on, item);
      takeBesides(this.on, item);
    }
    if (!(amount instanceof Free) && takeEach(cursor)) node.eachOf = true;
    const { token } = cursor;
    if (token !== undefined && isLess(token)) takeLess(this.on, item, token);
    else if (token?.kind === Kind.Comma && isLess(cursor.tokens[cursor.at + 1])) {
      cursor.at++;
      takeLess(this.on, item, token);
      cursor.take(Kind.Comma);
    }
    if (cursor.token?.written?.word === 'of' || cursor.kind === Kind.Colon) {
      const of = cursor.token;
      cursor.at++;
      if (!(amount instanceof Free) && dimensionIn(amount) === 'share' && of !== undefined) takeShareOf(this.on, node);
    }
    if (cursor.kind === Kind.LeftParen) takeFilling(this.on, item);
    // `1 tablespoon, rounded, flour`
    const filled = cursor.tokens[cursor.at + 1];
    if (
      item.measure?.unit !== undefined &&
      cursor.kind === Kind.Comma &&
      filled?.written?.bias === true &&
      cursor.kindAfter(2) === Kind.Comma
    ) {
      item.measure = { ...item.measure, bias: { first: filled, last: filled } };
      cursor.at += 2;
    }
    // `1 qt, meat stock`
    if (cursor.kind === Kind.Comma && item.measure?.unit !== undefined && cursor.kindAfter(1) === Kind.Word)
      cursor.at++;
    takeName(this.on, item);
    this.tail(item);
    const stated = amountOf(line, item.measure ?? amount, faults);
    if (stated !== undefined) node.amount = stated;
    return item.done();
  }

  /** All that follows the name. */
  private tail(item: Item): void {
    const { cursor } = this.on;
    for (;;) {
      const { token, at } = cursor;
      // `used juice of 1 lemon in curd`: the part is none of it.
      if (token === undefined || token.kind === Kind.Joiner) return;
      if (opensRate(cursor, at)) takeRate(this.on, item, token);
      else if (token.kind === Kind.LeftParen) {
        if (takeFilledBehind(this.on, item)) continue;
        if (!takeBracketed(this.on, item, item.measure?.unit === undefined ? 'either' : 'same')) {
          cursor.at = at;
          takeNote(this.on, item);
        }
      } else if (token.kind === Kind.From) takeBought(this.on, item, token);
      else if (token.kind === Kind.Equals) takeBesides(this.on, item);
      else if (token.kind === Kind.Comma) this.chunk(item, token);
      else if (!this.joint(item, token)) {
        if (cursor.at === at) return;
      }
      if (cursor.at === at) return;
    }
  }

  /** What ended the name or a chunk without a comma. */
  private joint(item: Item, token: Token): boolean {
    const { cursor, line } = this.on;
    const word = token.written?.word;
    const mark = token.kind === Kind.Other ? line[token.start] : undefined;
    if (word === 'plus' || word === 'and' || mark === '+' || mark === '&') return this.plus(item, token);
    if (this.putInto(item, token)) return true;
    if (word === 'with' && this.listedWith(item, token)) return true;
    if (mark === '/') return takeAnother(this.on, item);
    if (word === 'or') return takeOr(this.on, item);
    if (word === 'less' || word === 'minus') return takeLess(this.on, item, token);
    if (saysEach(token) || word === 'weighing' || word === 'of') {
      cursor.at++;
      if (saysEach(token) && item.node.amount === undefined && item.measure?.unit === undefined) return true;
      const beside = takeStated(cursor, line);
      if (beside !== undefined && !(beside instanceof Free))
        item.beside(',', token, this.on.measured(beside), takeEach(cursor) ? 'each' : 'either');
      return true;
    }
    if (mark !== undefined && ENDS.has(mark)) {
      cursor.at++;
      return true;
    }
    if (token.kind === Kind.Dash) cursor.at++;
    const first = cursor.token;
    if (first === undefined) return true;
    takeSaid(this.on, item, first);
    return true;
  }

  /** `, chopped`, `, plus more for dusting`, `, 3 lb each`, `, 4 oz` behind a name that had no amount. */
  private chunk(item: Item, comma: Token): void {
    const { cursor, line } = this.on;
    const { at } = cursor;
    cursor.at++;
    const first = cursor.token;
    if (first === undefined || opensRate(cursor, cursor.at)) return;
    if (first.kind === Kind.From) {
      takeBought(this.on, item, first);
      return;
    }
    const word = first.written?.word;
    const mark = first.kind === Kind.Other ? line[first.start] : undefined;
    if ((word === 'plus' || word === 'and' || mark === '+' || mark === '&') && this.plus(item, first)) return;
    if (word === 'or' && takeOr(this.on, item)) return;
    if (isLess(first) && takeLess(this.on, item, first)) return;
    if (this.putInto(item, first)) return;
    if (word === 'weighing' && this.joint(item, first)) return;
    if (word === 'weighed' && takeWeighedAs(this.on, item, comma)) return;
    if (!item.isBare && takeDrained(this.on, item, comma)) return;
    const behind = takeStated(cursor, line);
    if (behind !== undefined && !(behind instanceof Free)) {
      const each = takeEach(cursor);
      const ends = endsBehind(cursor, behind) || (cursor.kind === Kind.Other && line[cursor.token?.start ?? 0] === '.');
      if (
        ends &&
        (behind.unit !== undefined ||
          behind.counted !== undefined ||
          behind.can !== undefined ||
          item.measure === undefined)
      ) {
        if (item.isBare) setBehind(this.on, item, behind);
        else if (!each && item.counts(behind)) return;
        else item.beside(',', comma, this.on.measured(behind), each ? 'each' : 'either');
        return;
      }
    }
    cursor.at = at + 1;
    if (behind !== undefined && this.listedBehind(item, first)) return;
    if (first.kind === Kind.Word && takeCountedBehind(this.on, item, first)) return;
    takeSaid(this.on, item, first);
  }

  /** `8 oz flour, 4 oz lard, 1 tsp salt`: further items, if the book knows them; else they are told of the first. */
  private listedBehind(item: Item, first: Token): boolean {
    const { cursor, line } = this.on;
    const had = item.more?.length ?? 0;
    if (item.isBare || item.node.eachOf === true || !this.further(item, cursor.at)) return false;
    const last = cursor.tokens[cursor.at - 1] ?? first;
    item.more = item.more?.map((more, i) => (i < had ? more : { ...more, listed: true }));
    item.prepare(line, first, last);
    return true;
  }

  /** `yeast, dissolved in 2 tbsp water`: what it is put into is an item of its own, if the book knows it. */
  private putInto(item: Item, from: Token): boolean {
    const { cursor, line } = this.on;
    const had = item.more?.length ?? 0;
    if (item.isBare || !putInto(this.on, cursor.at) || !this.further(item, intoFrom(this.on, cursor.at))) return false;
    item.more = item.more?.map((more, i) => (i < had ? more : { ...more, listed: true }));
    item.prepare(line, from, cursor.tokens[cursor.at - 1] ?? from);
    return true;
  }

  /** `1 cup milk with 1 tbsp vinegar`: an item of its own, if the book knows it. */
  private listedWith(item: Item, from: Token): boolean {
    const { cursor, line } = this.on;
    const had = item.more?.length ?? 0;
    if (item.isBare || !isNumber(cursor.kindAfter(1)) || !this.further(item, cursor.at + 1)) return false;
    item.more = item.more?.map((more, i) => (i < had ? more : { ...more, listed: true }));
    item.prepare(line, from, cursor.tokens[cursor.at - 1] ?? from);
    return true;
  }

  /** Behind `plus` or `and`: another term, a rest, or another item. */
  private plus(item: Item, sign: Token): boolean {
    const { cursor, line } = this.on;
    const { at } = cursor;
    takePlus(cursor, line);
    const begins = cursor.at;
    const stated = takeStated(cursor, line);
    if (stated !== undefined && !(stated instanceof Free)) {
      const { token } = cursor;
      const word = token?.written?.word;
      const ends = token === undefined || token.kind === Kind.Comma || token.kind === Kind.LeftParen;
      if (ends && item.adds(stated)) return true;
      if (word === 'for' || word === 'to' || MORE.has(word ?? '') || ends || token?.kind === Kind.Free) {
        const amount = this.on.measured(stated);
        const end = this.on.chunkEnd(cursor.at - 1);
        item.node.rest = { start: sign.start, end, amount };
        cursor.at = at;
        while (cursor.token !== undefined && cursor.token.end <= end) cursor.at++;
        const last = cursor.tokens[cursor.at - 1] ?? sign;
        item.prepare(line, sign, last);
        return true;
      }
      if (this.further(item, begins)) {
        if (sign.written?.word !== 'plus' && line[sign.start] !== '+') this.share(item);
        return true;
      }
    } else if (stated === undefined && opensTakes(this.on, begins)) {
      if (this.further(item, begins)) return true;
      const end = this.on.chunkEnd(begins);
      // `whites of 2 eggs and yolk of 1`
      this.on.fault('missing-name', { start: sign.start, end }, 'say of what: `yolk of 1 egg`');
    }
    cursor.at = at;
    if (item.node.name === undefined) return false;
    takeSaid(this.on, item, sign);
    return true;
  }

  /** `zest of 1 orange and 1 lemon`: what is taken out of the first is taken out of the next. */
  private share(item: Item): void {
    const { takes } = item.node;
    if (takes === undefined) return;
    item.more = item.more?.map((more) => (more.takes === undefined ? { ...more, takesToo: takes } : more));
  }

  /** Another item of the line that begins there. */
  private further(item: Item, at: number): boolean {
    const { cursor } = this.on;
    const { at: back } = cursor;
    if (this.items >= MOST_ITEMS || saysSize(this.on, at)) return false;
    this.items++;
    cursor.at = at;
    const more = this.item();
    if (more?.name === undefined) {
      cursor.at = back;
      return false;
    }
    // All items of a line stand side by side.
    const { more: inner = [], ...own } = more;
    item.more ??= [];
    item.more.push(own, ...inner);
    return true;
  }
}

/** `1 in thick`: how big a piece is, and nothing more of the list. */
function saysSize({ cursor, line }: ListLine, at: number): boolean {
  const { at: back } = cursor;
  cursor.at = at;
  const stated = takeStated(cursor, line);
  const next = cursor.token?.written?.word ?? '';
  cursor.at = back;
  return stated !== undefined && !(stated instanceof Free) && dimensionIn(stated) === 'length' && SIZES.has(next);
}

const SIZES: ReadonlySet<string> = new Set(['thick', 'thin', 'deep', 'wide', 'long', 'high', 'tall', 'across']);

/** `butter the size of an egg`: one lump is meant. */
const LIKENESS = /^(?:about )?(?:(?:the )?size of|as (?:big|large|small) as) /i;

const oneAt = (start: number): MeasuredNode => ({
  kind: 'measured',
  start,
  end: start,
  quantity: { low: 1, high: 1, about: false },
  low: { start, end: start, value: 1, style: 'implied' },
});

/** Points and marks of a footnote. */
const ENDS: ReadonlySet<string> = new Set(['.', '*', '†', '‡', ';', '¹', '²', '³', '⁴', '⁵']);

/** No line lists more. */
const MOST_ITEMS = 12;
