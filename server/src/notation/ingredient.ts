/**
 * Knows how an ingredient is written and printed: an amount, the same in other measures, a name, what is done to it and what it is for.
 * Refuses to know foods, and what must be there: `statements.ts` says what is missing.
 */
import { type Amount, amountOf, dimensionIn, Free, type Measure, measuredOf } from './amounts.ts';
import { type Cursor, type Run, spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import { Item } from './item.ts';
import { takeAgain, takeEach, takePlus, takeStated, takeTerm, takeTerms } from './stated.ts';
import { isNamePart, isNumber, Kind, type Token } from './tokens.ts';
import type { BesideNode, Draft, IngredientNode, MeasuredNode, Span, SyntaxFault, TextNode } from './tree.ts';

/** Reads items of one line from left to right; what the cursor then stands on is none of it. */
export class ItemReader {
  readonly faults: SyntaxFault[];
  private readonly line: string;
  private readonly cursor: Cursor;
  /** Items begun behind the first. */
  private items = 0;

  constructor(line: string, cursor: Cursor, faults: SyntaxFault[]) {
    this.line = line;
    this.cursor = cursor;
    this.faults = faults;
  }

  /** The item that opens with its amount, or with what is taken out of one; undefined, and nothing read, where neither stands. */
  item(): IngredientNode | undefined {
    const { cursor } = this;
    const { at } = cursor;
    const takes = this.takes();
    const of = takes.length > 0 ? cursor.tokens[cursor.at - 1] : undefined;
    const amount = takeStated(cursor, this.line);
    if (amount === undefined) {
      cursor.at = at;
      return undefined;
    }
    const item = this.after(amount, takes);
    return of === undefined ? item : { ...item, taken: this.before(cursor.tokens[at], of) };
  }

  /** An item without an amount in front: a name, and perhaps its amount behind it. */
  bare(): IngredientNode | undefined {
    const node: Draft<IngredientNode> = { kind: 'ingredient' };
    const item = new Item(node);
    this.name(item);
    if (node.name === undefined) return undefined;
    this.amountBehind(item);
    this.tail(item);
    return item.done();
  }

  private after(amount: Amount, takes: readonly TextNode[]): IngredientNode {
    const { cursor, line, faults } = this;
    const node: Draft<IngredientNode> = { kind: 'ingredient' };
    const item = new Item(node);
    if (takes.length > 0) node.takes = takes;
    if (!(amount instanceof Free)) {
      if (amount.minus !== undefined)
        this.fault('bad-number', amount.minus, 'no amount is less than nothing: leave out the minus');
      item.measure = amount;
      this.besides(item);
    }
    if (!(amount instanceof Free) && takeEach(cursor)) node.eachOf = true;
    if (cursor.token?.written?.word === 'of' || cursor.kind === Kind.Colon) {
      const of = cursor.token;
      cursor.at++;
      if (!(amount instanceof Free) && dimensionIn(amount) === 'share' && of !== undefined) this.shareOf(node);
    }
    if (cursor.kind === Kind.LeftParen) this.filling(item);
    // `1 qt, meat stock`
    if (cursor.kind === Kind.Comma && item.measure?.unit !== undefined && cursor.kindAfter(1) === Kind.Word)
      cursor.at++;
    this.name(item);
    this.tail(item);
    const stated = amountOf(line, item.measure ?? amount, faults);
    if (stated !== undefined) node.amount = stated;
    return item.done();
  }

  /** `2 cups (packed) brown sugar`: how the measure is filled, or a note before the name. */
  private filling(item: Item): void {
    const { cursor } = this;
    const { at } = cursor;
    cursor.at++;
    const bias = this.biasWords();
    if (bias !== undefined && item.measure !== undefined && cursor.take(Kind.RightParen) !== undefined)
      item.measure = { ...item.measure, bias };
    else {
      cursor.at = at;
      this.note(item);
    }
  }

  /** The words before `of`, or `of the`. */
  private before(first: Token | undefined, last: Token): TextNode {
    const start = first?.start ?? 0;
    const text = this.line.slice(start, last.end).replace(/\s+(?:of|from)(?:\s+the)?$/i, '');
    return { start, end: start + text.length, text };
  }

  /** `1.5 % of the beef  salt`: two blanks part the two. */
  private shareOf(node: Draft<IngredientNode>): void {
    const { cursor, line } = this;
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
      this.fault(
        'missing-name',
        { start: first.start, end: last.end },
        first === last
          ? `say which food is measured so, with two blanks before it: \`2 % of the ${line.slice(first.start, first.end)}  fine salt\``
          : 'put two blanks before the food that is measured so: `2 % of the beef  fine salt`',
      );
  }

  /** `juice of`, `finely grated zest and juice of`, `the yolks of`. */
  private takes(): readonly TextNode[] {
    const { cursor, line } = this;
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

  /** The same amount in other measures, between the amount and the name. */
  private besides(item: Item): void {
    const { cursor, line } = this;
    for (;;) {
      const { at, token } = cursor;
      if (token === undefined || token.written?.special === false) return;
      if (token.kind === Kind.Equals) {
        cursor.at++;
        const amount = takeStated(cursor, line);
        if (amount === undefined || amount instanceof Free)
          this.fault('missing-value', token, 'write what the amount equals: `2 cups = 476 g`');
        else item.beside('=', token, this.measured(amount), 'same');
      } else if (token.kind === Kind.LeftParen) {
        const means = item.measure?.unit === undefined ? 'either' : 'same';
        if (!this.bracketed(item, means)) {
          cursor.at = at;
          return;
        }
      } else if (!this.another(item)) {
        cursor.at = at;
        return;
      }
    }
  }

  /** `/8 oz`, `or 1/2 ounce`. */
  private another(item: Item): boolean {
    const { cursor, line } = this;
    const { token } = cursor;
    const again = takeAgain(cursor, line);
    if (again !== undefined && token !== undefined) {
      const more = takeTerms(cursor, line, again);
      item.beside('/', token, this.measured(more.length === 0 ? again : { ...again, plus: more }), 'same');
      return true;
    }
    if (token?.written?.word !== 'or' || !isNumber(cursor.kindAfter(1))) return false;
    cursor.at++;
    const or = takeTerm(cursor, line);
    if (or === undefined || (or.unit === undefined && or.counted === undefined) || sameUnit(or, item.measure))
      return false;
    item.beside('or', token, this.measured(or), 'same');
    return true;
  }

  /** A bracket that holds only an amount, perhaps in several measures. */
  private bracketed(item: Item, means: BesideNode['means']): boolean {
    const { cursor, line } = this;
    const open = cursor.take(Kind.LeftParen);
    if (open === undefined) return false;
    while (
      /^(?:or|from|scant|just|total|weighing)$/.test(cursor.token?.written?.word ?? '') ||
      cursor.kind === Kind.Equals
    )
      cursor.at++;
    const found: { readonly measure: Measure; readonly token: Token }[] = [];
    for (;;) {
      const token = cursor.token;
      const stated = takeStated(cursor, line);
      if (stated === undefined || stated instanceof Free || token === undefined) return false;
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
    if (takeEach(cursor) || word === 'apiece') says = 'each';
    else if (word === 'total' || word === 'in' || word === 'altogether' || word === 'drained' || word === 'weight') {
      if (word !== 'drained' && word !== 'weight') says = 'same';
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
    for (const { measure, token } of found) item.beside('(', token, this.measured(measure), says);
    return true;
  }

  /** The name: all that may be one, up to a comma, a bracket, a purpose, an alternative with an amount, or another item. */
  private name(item: Item): void {
    const { cursor } = this;
    const first = cursor.token;
    if (first === undefined || !isNamePart(first.kind)) return;
    let last: Token | undefined;
    let before: Token | undefined;
    for (let token: Token | undefined = first; token !== undefined && isNamePart(token.kind); token = cursor.token) {
      if (token !== first && (this.endsName(token) || (item.isBare && this.opensAmountBehind(token)))) break;
      before = last;
      last = token;
      cursor.at++;
    }
    if (before !== undefined && cursor.token?.written?.word === 'with') {
      last = before;
      cursor.at--;
    }
    const name = this.trimmed(first, last ?? first);
    if (name !== undefined) item.node.name = name;
    if (item.node.eachOf) this.listed(item);
  }

  /** Whether the amount of a line that has none in front begins here, and the line or its next comma ends it: `flour 500 g`. */
  private opensAmountBehind(token: Token): boolean {
    if (!isNumber(token.kind) && token.kind !== Kind.About) return false;
    const { cursor, line } = this;
    const { at } = cursor;
    const stated = takeStated(cursor, line);
    const { kind } = cursor;
    cursor.at = at;
    const ends = kind === Kind.End || kind === Kind.Comma || kind === Kind.LeftParen;
    return ends && stated !== undefined && !(stated instanceof Free);
  }

  /** `Sugar: 1 cup`, `Flour ... 2 lb`, `Onions - 4`: the amount behind the name, and the marks between. */
  private amountBehind(item: Item): void {
    const { cursor, line } = this;
    const { at } = cursor;
    while (
      cursor.kind === Kind.Colon ||
      cursor.kind === Kind.Dash ||
      (cursor.kind === Kind.Other && LEADERS.has(line[cursor.token?.start ?? 0] ?? ''))
    )
      cursor.at++;
    const stated =
      cursor.token !== undefined && this.opensAmountBehind(cursor.token) ? takeStated(cursor, line) : undefined;
    if (stated === undefined || stated instanceof Free) {
      cursor.at = at;
      return;
    }
    this.setBehind(item, stated);
    this.besides(item);
  }

  private setBehind(item: Item, stated: Measure): void {
    item.measure = stated;
    item.node.amount = this.measured(stated);
  }

  /** `cinnamon, cloves and nutmeg` behind `each`: the commas are in the list. */
  private listed(item: Item): void {
    const { cursor, line } = this;
    while (cursor.kind === Kind.Comma && isNamePart(cursor.kindAfter(1)) && item.node.name !== undefined) {
      const { start } = item.node.name;
      cursor.at++;
      const run = takeWhile(cursor, isNamePart);
      if (run !== undefined) item.node.name = { start, end: run.last.end, text: line.slice(start, run.last.end) };
    }
  }

  /** Marks and points behind a name are none of it, nor the `or` of a line that goes on in the next: `salt.`, `flour*`. */
  private trimmed(first: Token, last: Token): TextNode | undefined {
    if (last.kind === Kind.Word && last.written?.word !== 'or') return textOf(this.line, first, last);
    const text = this.line
      .slice(first.start, last.end)
      .replace(/\s*[.*†‡;:…–-]+$/u, '')
      .replace(/\s+or$/i, '');
    return text === '' ? undefined : { start: first.start, end: first.start + text.length, text };
  }

  private endsName(token: Token): boolean {
    if (token.written?.special === false) return false;
    const { cursor, line } = this;
    const { tokens, at } = cursor;
    const next = tokens[at + 1];
    if (token.kind === Kind.Free) return true;
    if (token.kind === Kind.Other) {
      const mark = line[token.start];
      if (mark === '/' && isNumber(next?.kind ?? Kind.End)) return true;
      return (
        (mark === '+' || mark === '&') &&
        (this.opensMore(at + 1) || (mark === '+' && MORE.has(next?.written?.word ?? '')))
      );
    }
    if (token.kind === Kind.Dash)
      return token.start > (tokens[at - 1]?.end ?? 0) && next !== undefined && next.start > token.end;
    switch (token.written?.word) {
      // `onion stuck with 6 cloves`
      case 'with':
        return isNumber(next?.kind ?? Kind.End);
      // `yeast softened in 1/4 cup water`: what it is put in is an item of its own.
      case 'blended':
      case 'dissolved':
      case 'mixed':
      case 'soaked':
      case 'softened':
      case 'stirred':
        return this.putInto(at);
      // `suet crust No. 12`: another recipe of the book; one digit is a grade, as in `cure no. 1`.
      case 'no': {
        const number = tokens[at + 2];
        return (
          number !== undefined && isNumber(number.kind) && number.end > number.start + 1 && next?.kind === Kind.Other
        );
      }
      case 'plus':
        return this.opensMore(at + 1) || MORE.has(next?.written?.word ?? '');
      case 'and':
        return this.opensMore(at + 1) && tokens[at + 1]?.kind !== Kind.Fraction;
      case 'or':
        return (
          this.opensMore(at + 1) ||
          next?.kind === Kind.Free ||
          next?.written?.word === 'more' ||
          next?.written?.word === 'as'
        );
      case 'for':
        return next?.kind === Kind.Word && cursor.tokens[at - 1]?.written?.word !== 'all';
      case 'to':
        return next?.kind === Kind.Word && tokens[at - 1]?.written?.word !== 'ready';
      case 'weighing':
        return isNumber(next?.kind ?? Kind.End) || next?.kind === Kind.About;
      case 'each':
        return next === undefined || next.kind === Kind.Comma;
      default:
        return false;
    }
  }

  /** Whether it is put into so much of something: `dissolved in 2 tbsp water`. */
  private putInto(at: number): boolean {
    const { tokens } = this.cursor;
    const word = tokens[at + 1]?.written?.word;
    if (!PUT.has(tokens[at]?.written?.word ?? '')) return false;
    return (word === 'in' || word === 'with' || word === 'into') && this.opensMore(at + 2);
  }

  /** Whether an amount begins there: `plus 2 tbsp`, `or about 2 cups`. */
  private opensMore(at: number): boolean {
    const token = this.cursor.tokens[at];
    if (token === undefined) return false;
    if (token.kind === Kind.About || token.kind === Kind.NumberWord) return true;
    return isNumber(token.kind) || (token.kind === Kind.Bias && isNumber(this.cursor.tokens[at + 1]?.kind ?? Kind.End));
  }

  /** All that follows the name. */
  private tail(item: Item): void {
    const { cursor } = this;
    for (;;) {
      const { token, at } = cursor;
      // `used juice of 1 lemon in curd`: the part is none of it.
      if (token === undefined || token.kind === Kind.Joiner) return;
      if (token.kind === Kind.LeftParen) {
        if (!this.bracketed(item, item.measure?.unit === undefined ? 'either' : 'same')) {
          cursor.at = at;
          this.note(item);
        }
      } else if (token.kind === Kind.From) this.bought(item, token);
      else if (token.kind === Kind.Equals) this.besides(item);
      else if (token.kind === Kind.Comma) this.chunk(item, token);
      else if (!this.joint(item, token)) {
        if (cursor.at === at) return;
      }
      if (cursor.at === at) return;
    }
  }

  /** What ended the name or a chunk without a comma. */
  private joint(item: Item, token: Token): boolean {
    const { cursor, line } = this;
    const word = token.written?.word;
    const mark = token.kind === Kind.Other ? line[token.start] : undefined;
    if (word === 'plus' || word === 'and' || mark === '+' || mark === '&') return this.plus(item, token);
    if (this.putInto(cursor.at) && this.further(item, cursor.at + 2)) return true;
    if (mark === '/') return this.another(item);
    if (word === 'or') return this.or(item);
    if (word === 'each' || word === 'weighing') {
      cursor.at++;
      if (word === 'each' && item.node.amount === undefined && item.measure?.unit === undefined) return true;
      const beside = takeStated(cursor, line);
      if (beside !== undefined && !(beside instanceof Free))
        item.beside(',', token, this.measured(beside), takeEach(cursor) ? 'each' : 'either');
      return true;
    }
    if (mark === '.' || mark === '*' || mark === '†' || mark === '‡' || mark === ';') {
      cursor.at++;
      return true;
    }
    if (token.kind === Kind.Dash) cursor.at++;
    const first = cursor.token;
    if (first === undefined) return true;
    this.prepared(item, first);
    return true;
  }

  /** `, chopped`, `, plus more for dusting`, `, 3 lb each`, `, 4 oz` behind a name that had no amount. */
  private chunk(item: Item, comma: Token): void {
    const { cursor, line } = this;
    const { at } = cursor;
    cursor.at++;
    const first = cursor.token;
    if (first === undefined) return;
    if (first.kind === Kind.From) {
      this.bought(item, first);
      return;
    }
    const word = first.written?.word;
    const mark = first.kind === Kind.Other ? line[first.start] : undefined;
    if ((word === 'plus' || word === 'and' || mark === '+' || mark === '&') && this.plus(item, first)) return;
    if (word === 'or' && this.or(item)) return;
    if (mark === '#' && this.canSize(item)) return;
    const behind = takeStated(cursor, line);
    if (behind !== undefined && !(behind instanceof Free)) {
      const each = takeEach(cursor);
      const ends =
        cursor.token === undefined ||
        cursor.kind === Kind.Comma ||
        cursor.kind === Kind.LeftParen ||
        (cursor.kind === Kind.Other && line[cursor.token.start] === '.');
      if (ends && (behind.unit !== undefined || behind.counted !== undefined || item.measure === undefined)) {
        if (item.isBare) this.setBehind(item, behind);
        else if (!each && item.counts(behind)) return;
        else item.beside(',', comma, this.measured(behind), each ? 'each' : 'either');
        return;
      }
    }
    cursor.at = at + 1;
    if (behind !== undefined && this.listedBehind(item, first)) return;
    if (first.kind === Kind.Word && this.countedBehind(item, first)) return;
    this.prepared(item, first);
  }

  /** `8 oz flour, 4 oz lard, 1 tsp salt`: further items, if the book knows them; else they are told of the first. */
  private listedBehind(item: Item, first: Token): boolean {
    const { cursor, line } = this;
    const had = item.more?.length ?? 0;
    if (item.isBare || item.node.eachOf === true || !this.further(item, cursor.at)) return false;
    const last = cursor.tokens[cursor.at - 1] ?? first;
    item.more = item.more?.map((more, i) => (i < had ? more : { ...more, listed: true }));
    item.prepare(line, first, last);
    return true;
  }

  /** `40 bread, slices`: what is counted stands behind the comma. */
  private countedBehind(item: Item, word: Token): boolean {
    const { cursor } = this;
    const counts = item.measure !== undefined && item.measure.unit === undefined && item.measure.counted === undefined;
    const ends = cursor.kindAfter(1) === Kind.End || cursor.kindAfter(1) === Kind.Comma;
    if (!counts || !ends || word.written?.count === undefined || word.written.word === word.written.count) return false;
    if (item.measure !== undefined) item.measure = { ...item.measure, counted: word };
    cursor.at++;
    return true;
  }

  /** `4 corn, #2 cans`: what is counted are cans of a size that the trade numbers. */
  private canSize(item: Item): boolean {
    const { cursor, line } = this;
    const { at } = cursor;
    const first = cursor.token;
    cursor.at++;
    const term = takeTerm(cursor, line);
    if (item.measure?.unit !== undefined || term?.counted === undefined || first === undefined) {
      cursor.at = at;
      return false;
    }
    if (item.measure !== undefined) item.measure = { ...item.measure, counted: term.counted };
    item.prepare(line, first, term.counted);
    return true;
  }

  /** Words in a bracket that say how a measure is filled: no number stands before them. */
  private biasWords(): Run | undefined {
    const { cursor } = this;
    const first = cursor.token;
    let last: Token | undefined;
    for (; cursor.token?.written?.bias === true; cursor.at++) last = cursor.token;
    return first && last && { first, last };
  }

  /** Words to the next bracket or weight as bought: the preparation, with what it says of purpose and rest. */
  private prepared(item: Item, first: Token): void {
    const { cursor, line } = this;
    let last = first;
    while (cursor.token !== undefined && isPreparation(cursor.kind)) {
      if (item.isBare && this.opensAmountBehind(cursor.token)) break;
      last = cursor.token;
      this.meaning(item, last);
      cursor.at++;
    }
    item.prepare(line, first, last);
    if (item.isBare) this.amountBehind(item);
  }

  /** Notes what a word within the preparation opens: a purpose, a rest, a wish. */
  private meaning(item: Item, token: Token): void {
    const { cursor, line } = this;
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
      (word === 'if' && /^(?:desired|liked|wanted|using|you)$/.test(next?.written?.word ?? ''))
    ) {
      node.optional ??= spanOf(token, token);
      return;
    }
    if (word === 'plus' || word === 'more' || word === 'extra' || word === 'additional') {
      node.rest ??= { start: token.start, end: this.chunkEnd(at) };
      return;
    }
    const opens =
      (word === 'for' || (word === 'to' && tokens[at - 1]?.written?.word !== 'cut')) && next?.kind === Kind.Word;
    if (opens && node.purpose === undefined) {
      const end = this.chunkEnd(at);
      node.purpose = { start: token.start, end, text: line.slice(token.start, end) };
    }
  }

  /** Where the chunk ends that the token is in: at a comma, a bracket or the end. */
  private chunkEnd(at: number): number {
    const { tokens } = this.cursor;
    let i = at;
    while (i + 1 < tokens.length && isNamePart(tokens[i + 1]?.kind ?? Kind.End)) i++;
    return tokens[i]?.end ?? 0;
  }

  /** Behind `plus` or `and`: another term, a rest, or another item. */
  private plus(item: Item, sign: Token): boolean {
    const { cursor, line } = this;
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
        const amount = this.measured(stated);
        const end = this.chunkEnd(cursor.at - 1);
        item.node.rest = { start: sign.start, end, amount };
        cursor.at = at;
        while (cursor.token !== undefined && cursor.token.end <= end) cursor.at++;
        const last = cursor.tokens[cursor.at - 1] ?? sign;
        item.prepare(line, sign, last);
        return true;
      }
      if (this.further(item, begins)) return true;
    }
    cursor.at = at;
    if (item.node.name === undefined) return false;
    this.prepared(item, sign);
    return true;
  }

  /** Another item of the line that begins there. */
  private further(item: Item, at: number): boolean {
    const { cursor } = this;
    const { at: back } = cursor;
    if (this.items >= MOST_ITEMS) return false;
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

  /** Behind `or`: the same in another measure, an alternative with its amount, or words that are left to the preparation. */
  private or(item: Item): boolean {
    const { cursor, line } = this;
    const { at, token } = cursor;
    if (token === undefined) return false;
    cursor.at++;
    const stated = takeStated(cursor, line);
    if (stated !== undefined && !(stated instanceof Free)) {
      const amount = this.measured(stated);
      if (cursor.token?.written?.word === 'of') cursor.at++;
      const first = cursor.token;
      const run = takeWhile(cursor, isNamePart);
      if (run === undefined || first === undefined) item.beside('or', token, amount, 'same');
      else {
        const name = this.trimmed(run.first, run.last);
        if (name !== undefined) {
          item.others ??= [];
          item.others.push({ start: token.start, end: run.last.end, amount, name });
        }
      }
      return true;
    }
    cursor.at = at;
    this.prepared(item, token);
    return true;
  }

  private bought(item: Item, from: Token): void {
    const { cursor, line, faults } = this;
    cursor.at++;
    const amount = takeStated(cursor, line);
    const bought = amountOf(line, amount, faults);
    if (bought === undefined) this.fault('missing-value', from, 'write the weight as bought: `from 560 g`');
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
  private note(item: Item): void {
    const { cursor, line } = this;
    const open = cursor.take(Kind.LeftParen);
    if (open === undefined) return;
    const inside = takeWhile(cursor, isInside);
    const close = cursor.take(Kind.RightParen);
    if (close === undefined) this.fault('unclosed', spanOf(open, inside?.last ?? open), 'close the bracket with `)`');
    const text = textIn(line, inside);
    if (text === undefined) return;
    if (/^(?:optional|if desired|if liked)$/i.test(text.text))
      item.node.optional ??= { start: text.start, end: text.end };
    else if (item.node.note === undefined) item.node.note = text;
    else item.prepare(line, open, close ?? inside?.last ?? open);
  }

  private measured(measure: Measure): MeasuredNode {
    return measuredOf(this.line, measure, this.faults);
  }

  private fault(code: SyntaxFault['code'], { start, end }: Span, detail: string): void {
    this.faults.push({ code, start, end, detail });
  }
}

function sameUnit(a: Measure, b: Measure | undefined): boolean {
  return a.unit?.written?.printed?.dimension === b?.unit?.written?.printed?.dimension && a.unit !== undefined;
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
const MORE: ReadonlySet<string> = new Set(['more', 'extra', 'additional', 'some', 'a', 'enough', 'another']);

/** What is done to an item with another on its line. */
const PUT: ReadonlySet<string> = new Set(['blended', 'dissolved', 'mixed', 'soaked', 'softened', 'stirred']);
/** No line lists more. */
const MOST_ITEMS = 12;

/** What leads from a name to its amount. */
const LEADERS: ReadonlySet<string> = new Set(['.', '…', '=', '·']);

const isPreparation = (kind: Kind): boolean => isNamePart(kind) || kind === Kind.Comma;
const isInside = (kind: Kind): boolean => kind !== Kind.RightParen;
