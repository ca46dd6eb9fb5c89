/**
 * Knows how one line becomes a statement of our tree, with a fault for everything that could not be read.
 * Refuses to know the lines around it: what stands where it may not is `outline.ts`'s to say.
 */
import { isDay } from '../measure/calendar.ts';
import { type Amount, amountOf, takeAmount } from './amounts.ts';
import { Cursor, isAny, spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import { nodes, pieces, readList, runOf } from './grammar.ts';
import { ItemReader } from './ingredient.ts';
import { itemFaults } from './item-faults.ts';
import { label, type Opened } from './label.ts';
import { PAN_HELP, panOf } from './pan.ts';
import { plainItem } from './plain-item.ts';
import { durationOf, joinedDuration, temperatureOf } from './readings.ts';
import { scan } from './scan.ts';
import { sentenceOf } from './sentence.ts';
import { saysTime, timesOf } from './time.ts';
import { fileOf, kindParted } from './title.ts';
import { type Component, isNamePart, Kind, type Token } from './tokens.ts';
import type {
  AmountNode,
  Draft,
  IngredientNode,
  Line,
  MeasuredNode,
  Span,
  Statement,
  SyntaxFault,
  TextField,
  TextNode,
  TitleNode,
} from './tree.ts';
import { unreadFault } from './unread-line.ts';
import { saidYield, yieldOf } from './yield.ts';

/** Words that count open a line of the list of at most so many words and marks; a longer one with a full stop is prose. */
const LONGEST_PRINTED = 10;
/** Longer than any line of a recipe; past it a line is kept but not read. */
const LONGEST_LINE = 10_000;

/** Reads one line, without its line end. Any text is a line; nothing throws. */
export function readLine(text: string): Line {
  if (text.length > LONGEST_LINE) return tooLong(text);
  const tokens = scan(text, 'without blanks');
  const last = tokens.at(-1);
  const comment = last?.kind === Kind.Comment ? textOf(text, last, last) : undefined;
  if (comment !== undefined) tokens.pop();
  const [first] = tokens;
  if (first === undefined) {
    const statement = { kind: 'blank' } as const;
    return comment === undefined ? { text, statement, faults: [] } : { text, statement, comment, faults: [] };
  }
  const opened = label(text, tokens);
  const reading = new Reading(text, tokens, opened);
  const statement = reading.statement();
  const { faults, keyword } = reading;
  if (comment !== undefined) return { text, ...(keyword && { keyword }), statement, comment, faults };
  return keyword === undefined ? { text, statement, faults } : { text, keyword, statement, faults };
}

/** The reading of one line, and the faults found on the way. */
class Reading {
  readonly faults: SyntaxFault[] = [];
  /** The word that says what the line is. */
  keyword: Span | undefined;
  private readonly text: string;
  private readonly tokens: readonly Token[];
  private readonly opened: Opened;

  constructor(text: string, tokens: readonly Token[], opened: Opened) {
    this.text = text;
    this.tokens = tokens;
    this.opened = opened;
    const [first] = tokens;
    if (opened !== undefined && first !== undefined) this.keyword = spanOf(first, first);
  }

  statement(): Statement {
    const { opened } = this;
    switch (opened) {
      case undefined:
        return this.unopened();
      case 'do':
        return this.step();
      case 'optional':
        return this.ingredientFrom(1, { named: true });
      case 'add':
        return { kind: 'add', ingredient: this.ingredientFrom(1, { named: true }) };
      case 'by':
      case 'serve':
      case 'note':
      case 'source':
        return this.field(opened);
      case 'from': {
        const file = this.value('name the file it builds on: `from base.quern`');
        return { kind: 'from', ...(file && { file }) };
      }
      case 'tested': {
        const value = this.value('this line is written by Quern when a trial is recorded: leave it out');
        return { kind: 'tested', ...(value && { value }) };
      }
      case 'saw': {
        const value = this.value('say what was seen: `saw Set to the middle.`');
        return { kind: 'saw', ...(value && { value }) };
      }
      case 'verdict':
        return this.verdict();
      case 'drop': {
        const name = this.value('name what is left out: `drop nutmeg`');
        return { kind: 'drop', ...(name && { name }) };
      }
      case 'food': {
        const name = this.value('name the food: `food stoneground flour`');
        return { kind: 'food', ...(name && { name }) };
      }
      case 'like': {
        const name = this.value('name the food it is like: `like wholemeal flour`');
        return { kind: 'like', ...(name && { name }) };
      }
      case 'yield':
        return this.yields(1);
      case 'time':
        return this.times(1);
      case 'oven': {
        const { amount, rest } = this.amountThenText();
        const temperature = temperatureOf(this.text, amount, this.faults);
        if (temperature === undefined)
          this.missing('missing-value', 'write the temperature: `oven 180 C`, `oven 160 C fan` or `oven gas 4`');
        return { kind: 'oven', ...(temperature && { temperature }), ...(rest && { rest }) };
      }
      case 'component': {
        const amount = this.share();
        const component = this.tokens[0]?.written?.component as Component;
        if (amount?.unit?.symbol !== '%')
          this.missing('missing-value', `write the share of the weight: \`${component} 12 %\``);
        return { kind: 'component', component, ...(amount && { amount }) };
      }
      case 'trim': {
        const amount = this.share();
        if (amount?.unit?.symbol !== '%')
          this.missing('missing-value', 'write what share is trimmed away: `trim 41 %`');
        return { kind: 'trim', ...(amount && { amount }) };
      }
      case 'trial':
        return this.trial();
      case 'took': {
        const { amount, more, joined: to } = this.amountThenJoined('or two');
        const first = durationOf(this.text, amount, this.faults);
        const second = durationOf(this.text, more, this.faults);
        const duration = (first && second && joinedDuration(first, second)) ?? first;
        if (duration === undefined) this.missing('missing-value', 'write the time: `took 52 min to bake`');
        return { kind: 'took', ...(duration && { duration }), ...(to && { to }) };
      }
      case 'reached': {
        const { amount, joined: place } = this.amountThenJoined();
        const temperature = temperatureOf(this.text, amount, this.faults);
        if (temperature === undefined)
          this.missing('missing-value', 'write the temperature: `reached 81 C in the centre`');
        return { kind: 'reached', ...(temperature && { temperature }), ...(place && { place }) };
      }
      case 'weighed': {
        const read = this.amountThenJoined();
        const amount = this.measured(read.amount);
        if (amount === undefined) this.missing('missing-value', 'write the weight: `weighed 1385 g out of the oven`');
        const outOf = read.joined;
        return { kind: 'weighed', ...(amount && { amount }), ...(outOf && { outOf }) };
      }
      case 'used':
        return this.used();
      case 'price':
        return this.price();
      case 'swap':
        return this.swap();
      case 'allow':
        return this.allow();
      case 'recipe':
        return this.recipe();
      case 'part':
        return this.part();
      case 'pan': {
        const pan = panOf(this.text, this.tokens, this.faults);
        if (pan === undefined) this.missing('bad-pan', PAN_HELP);
        return { kind: 'pan', ...(pan && { pan }) };
      }
      case 'tags':
        return { kind: 'tags', tags: this.names('name the tags, with commas between: `tags autumn, supper club`') };
      case 'also':
        return {
          kind: 'also',
          names: this.names('name the other words for the food: `also strong flour, bread flour`'),
        };
      case 'contains':
        return { kind: 'contains', names: this.names('name the allergens: `contains wheat, milk`') };
    }
  }

  private step(): Statement {
    const sentence = sentenceOf(this.text, this.tokens, 1, this.faults);
    if (this.tokens.length === 1) this.missing('missing-value', 'a step is a sentence: `do Whisk the eggs.`');
    return { kind: 'step', sentence };
  }

  private field(field: TextField): Statement {
    const value = this.value(`write something after \`${field}\``);
    return { kind: 'text', field, ...(value && { value }) };
  }

  /** A line of the list; undefined where its amount does not come first, or it is prose. */
  private listed(): IngredientNode | undefined {
    if (this.isProse()) return undefined;
    const cursor = new Cursor(this.tokens, 0);
    const faults: SyntaxFault[] = [];
    const item = new ItemReader(this.text, cursor, faults).item();
    if (item === undefined) return undefined;
    this.faults.push(...faults);
    return this.complete(item, cursor, { named: false });
  }

  /** `One by one add the eggs.`: words that count, and a sentence. */
  private isProse(): boolean {
    const [first] = this.tokens;
    if (first === undefined || first.kind === Kind.About) return false;
    if (first.kind <= Kind.DecimalComma) return this.isName();
    return this.tokens.length > LONGEST_PRINTED && /[.!?]$/.test(this.text.trimEnd());
  }

  /** `7-grain cereal`: the number is in the name. */
  private isName(): boolean {
    const [number, dash, word] = this.tokens;
    return (
      dash?.kind === Kind.Dash && word?.kind === Kind.Word && number?.end === dash.start && dash.end === word.start
    );
  }

  private ingredientFrom(at: number, want: { named: boolean }): IngredientNode {
    // `optional: 1/2 cup raisins`
    const cursor = new Cursor(this.tokens, this.tokens[at]?.kind === Kind.Colon ? at + 1 : at);
    const reader = new ItemReader(this.text, cursor, this.faults);
    return this.complete(reader.item() ?? reader.bare() ?? { kind: 'ingredient' }, cursor, want);
  }

  /** The item with what its line says of it, and a fault for each thing that is missing. */
  private complete(read: IngredientNode, cursor: Cursor, want: { named: boolean }): IngredientNode {
    const { text, faults, opened } = this;
    this.strayFrom(cursor);
    const item: Draft<IngredientNode> = read;
    const { amount } = item;
    if (item.name === undefined && item.beside === undefined) {
      const counted = countedIn(amount);
      if (counted !== undefined) item.name = counted;
    }
    const [first] = this.tokens;
    if (opened === 'optional' && first !== undefined) item.optional = spanOf(first, first);
    const { name } = item;
    if (name !== undefined && /^[.)]/.test(name.text)) {
      const { end } = this.whole();
      const said = text.slice(name.start + 1, end).trimStart();
      const write = /^[\d¼-¾⅐-⅞]/.test(said) ? said : `do ${said}`;
      this.fault('not-a-statement', this.whole(), 'lines are not numbered: start each step with `do`', write);
    }
    if (amount === undefined && (opened === 'optional' || opened === 'add')) {
      this.missing('missing-amount', `write the amount first: \`${opened} 20 g ${name?.text ?? 'butter'}\``);
    }
    if (want.named && name === undefined) this.missing('missing-name', 'name the ingredient after its amount');
    itemFaults(text, item, faults);
    return item;
  }

  private yields(from: number, serves = false): Statement {
    const { amount, of } = yieldOf(this.text, this.tokens, from, this.faults);
    if (amount === undefined)
      this.missing('missing-value', 'say how many of what: `yield 12 slices`, or `yield 900 g`');
    return { kind: 'yield', ...(amount && { amount }), ...(of && { of }), ...(serves && { serves: true as const }) };
  }

  private times(from: number): Statement {
    const { stated, stray } = timesOf(this.text, new Cursor(this.tokens, from), this.faults);
    if (stated.length === 0) this.missing('missing-value', TIME_HELP);
    else if (stray !== undefined) this.fault('stray-text', spanOf(stray, stray), TIME_HELP);
    return { kind: 'time', stated };
  }

  /** A line without a keyword: how much is made, an ingredient, or what could not be read. */
  private unopened(): Statement {
    const said = saidYield(this.tokens);
    if (said !== undefined) {
      const [first] = this.tokens;
      if (said.from > 0 && first !== undefined) this.keyword = spanOf(first, first);
      return this.yields(said.from, said.serves);
    }
    const plain = plainItem(this.text, this.tokens, this.faults);
    if (plain !== undefined) {
      itemFaults(this.text, plain, this.faults);
      return plain;
    }
    if (saysTime(this.tokens)) return this.times(0);
    return this.listed() ?? this.unread();
  }

  private recipe(): Statement {
    const title = textIn(this.text, takeWhile(new Cursor(this.tokens, 1), isAny));
    return { kind: 'recipe', ...this.titled(title, '`recipe Plum slice`') };
  }

  /** `TITLE [as KIND] [from FILE [: PART]]` */
  private part(): Statement {
    const all = textIn(this.text, takeWhile(new Cursor(this.tokens, 1), isAny));
    if (all === undefined) return { kind: 'part', ...this.titled(all, '`part base`') };
    const { title, from, file, filePart } = fileOf(all);
    if (from !== undefined && file === undefined) {
      this.fault(
        'missing-value',
        from,
        'name the file the part comes from: `part base from pastry.quern : sweet paste`',
      );
    }
    const titled = this.titled(title, '`part base`');
    return { kind: 'part', ...titled, ...(file && { file }), ...(filePart && { filePart }) };
  }

  private titled(title: TextNode | undefined, example: string): TitleNode {
    const parted = title && kindParted(title);
    if (title === undefined || (parted !== undefined && parted.name === undefined))
      this.missing('missing-name', `name the ${this.opened}: ${example}`);
    if (parted !== undefined && parted.kind === undefined)
      this.fault('missing-value', parted.as, 'name the kind after `as`: `as shortcrust`');
    const { name, kind } = parted ?? {};
    return { ...(title && { title }), ...(parted && { ofKind: { ...(name && { name }), ...(kind && { kind }) } }) };
  }

  private verdict(): Statement {
    const value = this.value('write `verdict keep`, `verdict change` or `verdict reject`');
    if (value !== undefined && !['keep', 'change', 'reject'].includes(value.text)) {
      this.fault('bad-verdict', value, 'write `keep`, `change` or `reject`');
    }
    return { kind: 'verdict', ...(value && { value }) };
  }

  private trial(): Statement {
    const cursor = new Cursor(this.tokens, 1);
    const token = cursor.take(Kind.DateMark);
    const by = this.joined(cursor);
    const date = token && textOf(this.text, token, token);
    if (date === undefined) this.missing('bad-date', 'write the day as year, month, day: `trial 2026-09-14 by Ines`');
    else if (!isDay(date.text))
      this.fault('bad-date', date, 'there is no such day; write year, month, day: `2026-09-14`');
    return { kind: 'trial', ...(date && { date }), ...(by && { by }) };
  }

  private used(): Statement {
    const cursor = new Cursor(this.tokens, 1);
    const ingredient = new ItemReader(this.text, cursor, this.faults).item();
    const { amount, name = countedIn(amount) } = ingredient ?? {};
    const part = this.joined(cursor);
    if (ingredient === undefined || amount === undefined || name === undefined) {
      this.missing('missing-value', 'write what was used: `used 90 g caster sugar in custard`');
      return { kind: 'used', ...(amount && { amount }), ...(name && { name }), ...(part && { part }) };
    }
    return { kind: 'used', amount, name, ...(part && { part }), ingredient: { ...ingredient, name } };
  }

  private price(): Statement {
    const read = this.amountThenJoined();
    const amount = this.measured(read.amount);
    const per = this.measured(read.per);
    if (amount === undefined || per === undefined)
      this.missing('missing-value', 'write the price and for how much: `price 1.40 per 1 kg`');
    return { kind: 'price', ...(amount && { price: amount.low }), ...(per && { per }) };
  }

  private swap(): Statement {
    const cursor = new Cursor(this.tokens, 1);
    const old = textIn(this.text, takeWhile(cursor, isNamePart));
    let ingredient: IngredientNode = { kind: 'ingredient' };
    if (cursor.take(Kind.Joiner) !== undefined) ingredient = this.ingredientFrom(cursor.at, { named: true });
    else this.strayFrom(cursor);
    if (old === undefined || ingredient.amount === undefined) {
      this.missing('missing-value', 'write what goes and what comes: `swap butter for 120 g margarine`');
    }
    return { kind: 'swap', ...(old && { old }), ingredient };
  }

  private allow(): Statement {
    const cursor = new Cursor(this.tokens, 1);
    const code = textIn(this.text, takeWhile(cursor, isNamePart));
    const reason = this.joined(cursor);
    if (code === undefined)
      this.missing('missing-value', 'name the finding that is accepted: `allow dough-too-wet because …`');
    return { kind: 'allow', ...(code && { code }), ...(reason && { reason }) };
  }

  private unread(): Statement {
    const span = this.whole();
    const words = { ...span, text: this.text.slice(span.start, span.end) };
    const [first] = this.tokens;
    const word =
      first?.kind === Kind.Word && first.written ? { ...spanOf(first, first), word: first.written.image } : undefined;
    // Behind a bullet, too, what it says tells what to write.
    const opens = this.tokens.findIndex(({ kind }) => kind !== Kind.Other && kind !== Kind.Dash);
    const said =
      this.tokens[opens]?.kind === Kind.Word
        ? new ItemReader(this.text, new Cursor(this.tokens, opens), []).bare()
        : undefined;
    this.faults.push(unreadFault(words.text, span, word, said));
    const bare = opens === 0 ? said : undefined;
    return bare === undefined ? { kind: 'unread', words } : { kind: 'unread', words, bare };
  }

  /** `AMOUNT TEXT` */
  private amountThenText(): { readonly amount: Amount | undefined; readonly rest: TextNode | undefined } {
    const cursor = new Cursor(this.tokens, 1);
    const amount = takeAmount(cursor);
    return { amount, rest: textIn(this.text, takeWhile(cursor, isAny)) };
  }

  /** `AMOUNT [NAME] [to|in|out|per [AMOUNT] TEXT]` */
  private amountThenJoined(count: 'one' | 'or two' = 'one'): {
    readonly amount: Amount | undefined;
    readonly more: Amount | undefined;
    readonly name: TextNode | undefined;
    readonly per: Amount | undefined;
    readonly joined: TextNode | undefined;
  } {
    const cursor = new Cursor(this.tokens, 1);
    const amount = takeAmount(cursor);
    const more = count === 'or two' ? takeAmount(cursor) : undefined;
    const name = textIn(this.text, takeWhile(cursor, isNamePart));
    const joiner = cursor.take(Kind.Joiner);
    const per = joiner && takeAmount(cursor);
    return { amount, more, name, per, joined: joiner ? this.textFrom(cursor) : this.strayFrom(cursor) };
  }

  /** A share of a weight, and whatever is said of it. */
  private share(): MeasuredNode | undefined {
    return this.measured(this.amountThenText().amount);
  }

  private measured(amount: Amount | undefined): MeasuredNode | undefined {
    const node = amountOf(this.text, amount, this.faults);
    return node?.kind === 'measured' ? node : undefined;
  }

  private names(help: string): TextNode[] {
    const { children, rest } = readList(new Cursor(this.tokens, 1));
    if (rest !== undefined) this.stray(rest);
    const names = nodes(children.name)
      .map((c) => textIn(this.text, runOf(pieces(c.NamePart))))
      .filter((n) => n !== undefined);
    if (names.length === 0) this.missing('missing-value', help);
    return names;
  }

  /** Everything after the opening word, as it stands. */
  private value(help: string): TextNode | undefined {
    const first = this.tokens[1];
    const last = this.tokens.at(-1);
    if (first && last) return textOf(this.text, first, last);
    this.missing('missing-value', help);
    return undefined;
  }

  /** What follows `by` or `because`; nothing else may stand there. */
  private joined(cursor: Cursor): TextNode | undefined {
    return cursor.take(Kind.Joiner) === undefined ? this.strayFrom(cursor) : this.textFrom(cursor);
  }

  /** All that is left, without the `of` of `out of`. */
  private textFrom(cursor: Cursor): TextNode | undefined {
    if (cursor.token?.written?.word === 'of') cursor.at++;
    return textIn(this.text, takeWhile(cursor, isAny));
  }

  /** From the first token to the last; there is at least one. */
  private whole(): Span {
    return { start: this.tokens[0]?.start ?? 0, end: this.tokens.at(-1)?.end ?? 0 };
  }

  private missing(code: SyntaxFault['code'], detail: string): void {
    this.fault(code, this.whole(), detail);
  }

  /** What no piece of the line took cannot stand there. */
  private strayFrom({ token }: Cursor): undefined {
    if (token !== undefined) this.stray(token);
  }

  private stray(from: Token): void {
    const { end } = this.whole();
    this.fault(
      'stray-text',
      { start: from.start, end },
      `\`${shorten(this.text.slice(from.start, end))}\` cannot stand here; put it in a note with \`note\` or after \`#\``,
    );
  }

  private fault(code: SyntaxFault['code'], { start, end }: Span, detail: string, write?: string): void {
    this.faults.push({ code, start, end, detail, ...(write !== undefined && { write }) });
  }
}

const TIME_HELP = 'write the times and what they are spent with: `time 20 min at work, 50 min in the oven`';

function tooLong(text: string): Line {
  const detail = `the line has ${text.length} characters; a line holds one ingredient or one step, ${LONGEST_LINE} at most`;
  return {
    text,
    statement: { kind: 'unread', words: { start: 0, end: text.length, text } },
    faults: [{ code: 'line-too-long', start: 0, end: 60, detail }],
  };
}

const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

/** `2 cloves` names the spice; `1 bunch` names nothing. */
const countedIn = (amount: AmountNode | undefined): TextNode | undefined =>
  amount?.kind === 'measured' ? amount.counted : undefined;
