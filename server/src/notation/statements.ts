/**
 * Knows how one line becomes a statement of our tree, with a fault for everything that could not be read.
 * Refuses to know the lines around it: what stands where it may not is `outline.ts`'s to say.
 */
import type { CstNode, IToken } from 'chevrotain';
import { amountOf, durationOf, measuredOf, panOf, temperatureOf } from './amounts.ts';
import { type Children, child, nodes, spanOf, textOf, tokens } from './concrete.ts';
import { type Rule, readBy } from './grammar.ts';
import { sentenceOf } from './sentence.ts';
import { Blank, Comment, type Component, isNumber, type Keyword, label, scan, Word } from './tokens.ts';
import type { IngredientNode, Line, Span, Statement, SyntaxFault, TextNode } from './tree.ts';
import { unreadFault } from './unread-line.ts';

/** Longer than any line of a recipe; past it a line is kept but not read. */
export const LONGEST_LINE = 10_000;

/** Reads one line, without its line end. Any text is a line; nothing throws. */
export function readLine(text: string): Line {
  if (text.length > LONGEST_LINE) return tooLong(text);
  const all = scan(text);
  const tokens: IToken[] = [];
  let comment: TextNode | undefined;
  for (const token of all) {
    if (token.tokenType === Comment) comment = textOf(text, token, token);
    else if (token.tokenType !== Blank) tokens.push(token);
  }
  const commented = comment === undefined ? {} : { comment };
  if (tokens.length === 0) return { text, statement: { kind: 'blank' }, ...commented, faults: [] };
  const opened = label(tokens);
  const reading = new Reading(text, tokens, opened);
  const statement = reading.statement();
  const first = tokens[0];
  const keyword = opened === undefined || first === undefined ? {} : { keyword: spanOf(first, first) };
  return { text, ...keyword, statement, ...commented, faults: reading.faults };
}

const RULES: Readonly<Record<Keyword | 'component', Rule>> = {
  recipe: 'titled',
  part: 'titled',
  do: 'sentence',
  yield: 'amountThenText',
  pan: 'pan',
  oven: 'amountThenText',
  tags: 'list',
  also: 'list',
  contains: 'list',
  by: 'text',
  serve: 'text',
  note: 'text',
  source: 'text',
  from: 'text',
  saw: 'text',
  tested: 'text',
  verdict: 'text',
  drop: 'text',
  food: 'text',
  like: 'text',
  trial: 'dated',
  took: 'amountThenJoined',
  reached: 'amountThenJoined',
  weighed: 'amountThenJoined',
  used: 'amountThenJoined',
  swap: 'swap',
  add: 'ingredient',
  optional: 'ingredient',
  component: 'amountThenText',
  trim: 'amountThenText',
  price: 'amountThenJoined',
  allow: 'allow',
};

/** The reading of one line: the tokens, the concrete tree, and the faults found on the way. */
class Reading {
  readonly faults: SyntaxFault[] = [];
  private readonly text: string;
  private readonly tokens: readonly IToken[];
  private readonly opened: Keyword | 'component' | undefined;

  constructor(text: string, tokens: readonly IToken[], opened: Keyword | 'component' | undefined) {
    this.text = text;
    this.tokens = tokens;
    this.opened = opened;
  }

  statement(): Statement {
    const { opened } = this;
    if (opened === undefined) return this.opensWithAmount() ? this.amountLine() : this.unread();
    const body = this.tokens.slice(1);
    const { cst, rest } = readBy(RULES[opened], body);
    if (rest !== undefined && rest.image !== '') this.stray(rest);
    const c = cst.children as Children;
    switch (opened) {
      case 'recipe':
        return { kind: 'recipe', ...this.titled(c, 'recipe') };
      case 'part':
        return this.part(c);
      case 'do': {
        const sentence = sentenceOf(this.text, cst, this.bodySpan(body), this.faults);
        if (body.length === 0) this.missing('missing-value', 'a step is a sentence: `do Whisk the eggs.`');
        return { kind: 'step', sentence };
      }
      case 'yield': {
        const amount = this.measured(c);
        if (amount === undefined)
          this.missing('missing-value', 'say how many of what: `yield 12 slices`, or `yield 900 g`');
        const of = this.joinText([...(amount?.counted ? [amount.counted] : []), ...this.texts(c.Any)]);
        return { kind: 'yield', ...(amount && { amount }), ...(of && { of }) };
      }
      case 'pan': {
        const pan = panOf(cst, this.faults);
        if (pan === undefined) this.missing('bad-pan', PAN_HELP);
        return { kind: 'pan', ...(pan && { pan }) };
      }
      case 'oven': {
        const temperature = temperatureOf(child(c.amount), this.faults);
        if (temperature === undefined)
          this.missing('missing-value', 'write the temperature: `oven 180 C`, `oven 160 C fan` or `oven gas 4`');
        const rest = this.joinText(this.texts(c.Any));
        return { kind: 'oven', ...(temperature && { temperature }), ...(rest && { rest }) };
      }
      case 'tags':
        return { kind: 'tags', tags: this.names(c, 'name the tags, with commas between: `tags autumn, supper club`') };
      case 'also':
        return {
          kind: 'also',
          names: this.names(c, 'name the other words for the food: `also strong flour, bread flour`'),
        };
      case 'contains':
        return { kind: 'contains', names: this.names(c, 'name the allergens: `contains wheat, milk`') };
      case 'by':
      case 'serve':
      case 'note':
      case 'source': {
        const value = this.value(body, `write something after \`${opened}\``);
        return { kind: 'text', field: opened, ...(value && { value }) };
      }
      case 'from': {
        const file = this.value(body, 'name the file it builds on: `from base.quern`');
        return { kind: 'from', ...(file && { file }) };
      }
      case 'tested': {
        const value = this.value(body, 'this line is written by Quern when a trial is recorded: leave it out');
        return { kind: 'tested', ...(value && { value }) };
      }
      case 'saw': {
        const value = this.value(body, 'say what was seen: `saw Set to the middle.`');
        return { kind: 'saw', ...(value && { value }) };
      }
      case 'verdict':
        return this.verdict(body);
      case 'drop': {
        const name = this.value(body, 'name what is left out: `drop nutmeg`');
        return { kind: 'drop', ...(name && { name }) };
      }
      case 'food': {
        const name = this.value(body, 'name the food: `food stoneground flour`');
        return { kind: 'food', ...(name && { name }) };
      }
      case 'like': {
        const name = this.value(body, 'name the food it is like: `like wholemeal flour`');
        return { kind: 'like', ...(name && { name }) };
      }
      case 'trial':
        return this.trial(c);
      case 'took': {
        const duration = durationOf(child(c.amount), this.faults);
        if (duration === undefined) this.missing('missing-value', 'write the time: `took 52 min to bake`');
        const to = this.joined(c);
        return { kind: 'took', ...(duration && { duration }), ...(to && { to }) };
      }
      case 'reached': {
        const temperature = temperatureOf(child(c.amount), this.faults);
        if (temperature === undefined)
          this.missing('missing-value', 'write the temperature: `reached 81 C in the centre`');
        const place = this.joined(c);
        return { kind: 'reached', ...(temperature && { temperature }), ...(place && { place }) };
      }
      case 'weighed': {
        const amount = this.measured(c);
        if (amount === undefined) this.missing('missing-value', 'write the weight: `weighed 1385 g out of the oven`');
        const outOf = this.joined(c);
        return { kind: 'weighed', ...(amount && { amount }), ...(outOf && { outOf }) };
      }
      case 'used':
        return this.used(c);
      case 'swap':
        return this.swap(c);
      case 'add':
        return { kind: 'add', ingredient: this.ingredient(cst, { named: true }) };
      case 'optional':
        return this.ingredient(cst, { named: true });
      case 'component': {
        const amount = this.measured(c);
        if (amount?.unit?.symbol !== '%')
          this.missing('missing-value', `write the share of the weight: \`${this.tokens[0]?.image} 12 %\``);
        return { kind: 'component', component: this.tokens[0]?.image as Component, ...(amount && { amount }) };
      }
      case 'trim': {
        const amount = this.measured(c);
        if (amount?.unit?.symbol !== '%')
          this.missing('missing-value', 'write what share is trimmed away: `trim 41 %`');
        return { kind: 'trim', ...(amount && { amount }) };
      }
      case 'price':
        return this.price(c);
      case 'allow':
        return this.allow(c);
    }
  }

  private opensWithAmount(): boolean {
    const [first, second] = this.tokens;
    const type = first?.tokenType.name;
    return isNumber(first) || type === 'Free' || ((type === 'About' || type === 'Minus') && isNumber(second));
  }

  private amountLine(): IngredientNode {
    const { cst, rest } = readBy('ingredient', [...this.tokens]);
    if (rest !== undefined && rest.image !== '') this.stray(rest);
    return this.ingredient(cst, { named: false });
  }

  private ingredient(cst: CstNode, want: { named: boolean }): IngredientNode {
    const c = cst.children as Children;
    const amount = amountOf(child(c.amount), this.faults);
    const equals = amountOf(child(c.equals), this.faults);
    const bought = amountOf(
      child(nodes(c.bought)[0]?.children.amount as readonly (CstNode | IToken)[] | undefined),
      this.faults,
    );
    let name = this.nameIn(child(c.name));
    // `2 cloves` names the spice; `1 bunch` names nothing.
    const counted = amount?.kind === 'measured' ? amount.counted : undefined;
    if (name === undefined && counted !== undefined && c.Equals === undefined) name = counted;
    const preparation = this.textFrom(tokens(c.preparation));
    const note = this.note(child(c.note));
    if (name !== undefined && /^[.)]/.test(name.text)) {
      this.fault('not-a-statement', this.bodySpan(this.tokens), 'steps are not numbered: start each with `do`');
    }
    if (amount === undefined && (this.opened === 'optional' || this.opened === 'add')) {
      this.missing('missing-amount', `write the amount first: \`${this.opened} 20 g ${name?.text ?? 'butter'}\``);
    }
    if (want.named && name === undefined) this.missing('missing-name', 'name the ingredient after its amount');
    if (c.Equals !== undefined && equals === undefined)
      this.missing('missing-value', 'write what the amount equals: `2 cups = 476 g`');
    if (c.bought !== undefined && bought === undefined)
      this.missing('missing-value', 'write the weight as bought: `from 560 g`');
    const first = this.tokens[0];
    const optional = this.opened === 'optional' && first !== undefined ? { optional: spanOf(first, first) } : {};
    return {
      kind: 'ingredient',
      ...optional,
      ...(amount && { amount }),
      ...(equals && { equals }),
      ...(name && { name }),
      ...(bought && { bought }),
      ...(preparation && { preparation }),
      ...(note && { note }),
    };
  }

  private note(node: CstNode | undefined): TextNode | undefined {
    if (node === undefined) return undefined;
    const c = node.children as Children;
    const open = tokens(c.LeftParen)[0];
    const inside = tokens(c.Any);
    if (open !== undefined && tokens(c.RightParen).length === 0) {
      this.fault('unclosed', spanOf(open, inside.at(-1) ?? open), 'close the bracket with `)`');
    }
    return this.textFrom(inside);
  }

  private titled(c: Children, opened: 'recipe' | 'part') {
    const name = this.nameIn(child(c.name));
    const as = this.nameIn(child(c.kindName));
    const asToken = tokens(c.As)[0];
    if (name === undefined)
      this.missing('missing-name', `name the ${opened}: \`${opened} ${opened === 'recipe' ? 'Plum slice' : 'base'}\``);
    if (asToken !== undefined && as === undefined)
      this.fault('missing-value', spanOf(asToken, asToken), 'name the kind after `as`: `as shortcrust`');
    const asKeyword = asToken === undefined ? undefined : spanOf(asToken, asToken);
    return { ...(name && { name }), ...(as && { as }), ...(asKeyword && { asKeyword }) };
  }

  private part(c: Children): Statement {
    const titled = this.titled(c, 'part');
    const from = tokens(c.From)[0];
    const run = tokens(c.file);
    const colon = run.findIndex((t) => t.image === ':');
    const file = this.textFrom(colon < 0 ? run : run.slice(0, colon));
    const filePart = colon < 0 ? undefined : this.textFrom(run.slice(colon + 1));
    if (from !== undefined && file === undefined) {
      this.fault(
        'missing-value',
        spanOf(from, from),
        'name the file the part comes from: `part base from pastry.quern : sweet paste`',
      );
    }
    return { kind: 'part', ...titled, ...(file && { file }), ...(filePart && { filePart }) };
  }

  private verdict(body: readonly IToken[]): Statement {
    const value = this.value(body, 'write `verdict keep`, `verdict change` or `verdict reject`');
    if (value !== undefined && !['keep', 'change', 'reject'].includes(value.text)) {
      this.fault('bad-verdict', value, 'write `keep`, `change` or `reject`');
    }
    return { kind: 'verdict', ...(value && { value }) };
  }

  private trial(c: Children): Statement {
    const token = tokens(c.Date)[0];
    const date = token === undefined ? undefined : textOf(this.text, token, token);
    if (date === undefined) this.missing('bad-date', 'write the day as year, month, day: `trial 2026-09-14 by Ines`');
    else if (!isDay(date.text))
      this.fault('bad-date', date, 'there is no such day; write year, month, day: `2026-09-14`');
    const by = this.joined(c);
    return { kind: 'trial', ...(date && { date }), ...(by && { by }) };
  }

  private used(c: Children): Statement {
    const amount = amountOf(child(c.amount), this.faults);
    const name = this.nameIn(child(c.name));
    const part = this.joined(c);
    if (amount === undefined || name === undefined)
      this.missing('missing-value', 'write what was used: `used 90 g caster sugar in custard`');
    return { kind: 'used', ...(amount && { amount }), ...(name && { name }), ...(part && { part }) };
  }

  private swap(c: Children): Statement {
    const old = this.nameIn(child(c.name));
    const inner = child(c.ingredient);
    const ingredient: IngredientNode =
      inner === undefined ? { kind: 'ingredient' } : this.ingredient(inner, { named: true });
    if (old === undefined || inner === undefined || ingredient.amount === undefined) {
      this.missing('missing-value', 'write what goes and what comes: `swap butter for 120 g margarine`');
    }
    return { kind: 'swap', ...(old && { old }), ingredient };
  }

  private price(c: Children): Statement {
    const amount = this.measured(c);
    const per = measuredOf(
      child(nodes(c.per)[0]?.children.measure as readonly (CstNode | IToken)[] | undefined),
      this.faults,
    );
    if (amount === undefined || per === undefined)
      this.missing('missing-value', 'write the price and for how much: `price 1.40 per 1 kg`');
    return { kind: 'price', ...(amount && { price: amount.low }), ...(per && { per }) };
  }

  private allow(c: Children): Statement {
    const code = this.nameIn(child(c.name));
    const reason = this.joined(c);
    if (code === undefined)
      this.missing('missing-value', 'name the finding that is accepted: `allow dough-too-wet because …`');
    return { kind: 'allow', ...(code && { code }), ...(reason && { reason }) };
  }

  private unread(): Statement {
    const span = this.bodySpan(this.tokens);
    const words = { ...span, text: this.text.slice(span.start, span.end) };
    const [first] = this.tokens;
    const word = first?.tokenType === Word ? { ...spanOf(first, first), word: first.image } : undefined;
    this.faults.push(unreadFault(words.text, span, word));
    return { kind: 'unread', words };
  }

  private measured(c: Children) {
    const amount = amountOf(child(c.amount), this.faults);
    return amount?.kind === 'measured' ? amount : undefined;
  }

  private names(c: Children, help: string): TextNode[] {
    const names = nodes(c.name)
      .map((n) => this.nameIn(n))
      .filter((n): n is TextNode => n !== undefined);
    if (names.length === 0) this.missing('missing-value', help);
    return names;
  }

  private nameIn(node: CstNode | undefined): TextNode | undefined {
    return node === undefined ? undefined : this.textFrom(tokens((node.children as Children).NamePart));
  }

  /** Everything after the opening word, as it stands. */
  private value(body: readonly IToken[], help: string): TextNode | undefined {
    const value = this.textFrom(body);
    if (value === undefined) this.missing('missing-value', help);
    return value;
  }

  /** What follows `by`, `to`, `in`, `out of`, `because`. */
  private joined(c: Children): TextNode | undefined {
    const run = tokens(c.Any);
    return this.textFrom(run[0]?.image.toLowerCase() === 'of' ? run.slice(1) : run);
  }

  private texts(run: readonly (CstNode | IToken)[] | undefined): TextNode[] {
    const text = this.textFrom(tokens(run));
    return text === undefined ? [] : [text];
  }

  private joinText(parts: readonly TextNode[]): TextNode | undefined {
    const [first] = parts;
    const last = parts.at(-1);
    return first && last
      ? { start: first.start, end: last.end, text: this.text.slice(first.start, last.end) }
      : undefined;
  }

  private textFrom(run: readonly IToken[]): TextNode | undefined {
    const [first] = run;
    const last = run.at(-1);
    return first && last ? textOf(this.text, first, last) : undefined;
  }

  private bodySpan(run: readonly IToken[]): Span {
    const [first] = run;
    const last = run.at(-1);
    if (first && last) return spanOf(first, last);
    const end = this.tokens.at(-1);
    const at = end === undefined ? 0 : end.startOffset + end.image.length;
    return { start: at, end: at };
  }

  private missing(code: SyntaxFault['code'], detail: string): void {
    this.fault(code, this.bodySpan(this.tokens), detail);
  }

  private stray(from: IToken): void {
    const last = this.tokens.at(-1) ?? from;
    const span = spanOf(from, last);
    this.fault(
      'stray-text',
      span,
      `\`${shorten(this.text.slice(span.start, span.end))}\` cannot stand here; put it in a note with \`note\` or after \`#\``,
    );
  }

  private fault(code: SyntaxFault['code'], span: Span, detail: string, write?: string): void {
    this.faults.push({ code, start: span.start, end: span.end, detail, ...(write !== undefined && { write }) });
  }
}

const PAN_HELP =
  'write `pan round 24 x 3 cm`, `pan square 20 x 5 cm`, `pan rectangle 30 x 20 x 4 cm`, `pan loaf 21 x 11 x 6 cm`, `pan ring 24 x 8 x 10 cm` or `pan 1.2 l`';

function tooLong(text: string): Line {
  const detail = `the line has ${text.length} characters; a line holds one ingredient or one step, ${LONGEST_LINE} at most`;
  return {
    text,
    statement: { kind: 'unread', words: { start: 0, end: text.length, text } },
    faults: [{ code: 'line-too-long', start: 0, end: 60, detail }],
  };
}

function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
