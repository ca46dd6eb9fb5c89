/**
 * Knows one line while it is read: its tokens, what lines of several kinds read alike, and the faults found on the way.
 * Refuses to know which kind of line it is.
 */
import { type Amount, amountOf, takeAmount } from './amounts.ts';
import { Cursor, isAny, spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import { nodes, pieces, readList, runOf } from './grammar.ts';
import type { Opened } from './label.ts';
import { isNamePart, Kind, type Token } from './tokens.ts';
import type { MeasuredNode, Span, SyntaxFault, TextNode } from './tree.ts';

/** One line while it is read, and the faults found on the way. */
export class LineReading {
  readonly faults: SyntaxFault[] = [];
  /** The word that says what the line is. */
  keyword: Span | undefined;
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly opened: Opened;

  constructor(text: string, tokens: readonly Token[], opened: Opened) {
    this.text = text;
    this.tokens = tokens;
    this.opened = opened;
    const [first] = tokens;
    if (opened !== undefined && first !== undefined) this.keyword = spanOf(first, first);
  }

  /** `AMOUNT TEXT` */
  amountThenText(): { readonly amount: Amount | undefined; readonly rest: TextNode | undefined } {
    const cursor = new Cursor(this.tokens, 1);
    const amount = takeAmount(cursor);
    return { amount, rest: textIn(this.text, takeWhile(cursor, isAny)) };
  }

  /** `AMOUNT [NAME] [in|out|per [AMOUNT] TEXT]` */
  amountThenJoined(): {
    readonly amount: Amount | undefined;
    readonly name: TextNode | undefined;
    readonly per: Amount | undefined;
    readonly joined: TextNode | undefined;
  } {
    const cursor = new Cursor(this.tokens, 1);
    const amount = takeAmount(cursor);
    const name = textIn(this.text, takeWhile(cursor, isNamePart));
    const joiner = cursor.take(Kind.Joiner);
    const per = joiner && takeAmount(cursor);
    return { amount, name, per, joined: joiner ? this.textFrom(cursor) : this.strayFrom(cursor) };
  }

  /** A share of a weight, and whatever is said of it. */
  share(): MeasuredNode | undefined {
    return this.measured(this.amountThenText().amount);
  }

  measured(amount: Amount | undefined): MeasuredNode | undefined {
    const node = amountOf(this.text, amount, this.faults);
    return node?.kind === 'measured' ? node : undefined;
  }

  names(help: string): TextNode[] {
    const { children, rest } = readList(new Cursor(this.tokens, 1));
    if (rest !== undefined) this.stray(rest);
    const names = nodes(children.name)
      .map((c) => textIn(this.text, runOf(pieces(c.NamePart))))
      .filter((n) => n !== undefined);
    if (names.length === 0) this.missing('missing-value', help);
    return names;
  }

  /** Everything after the opening word, as it stands. */
  value(help: string): TextNode | undefined {
    const first = this.tokens[1];
    const last = this.tokens.at(-1);
    if (first && last) return textOf(this.text, first, last);
    this.missing('missing-value', help);
    return undefined;
  }

  /** What follows `by` or `because`; nothing else may stand there. */
  joined(cursor: Cursor): TextNode | undefined {
    return cursor.take(Kind.Joiner) === undefined ? this.strayFrom(cursor) : this.textFrom(cursor);
  }

  /** All that is left, without the `of` of `out of`. */
  textFrom(cursor: Cursor): TextNode | undefined {
    if (cursor.token?.written?.word === 'of') cursor.at++;
    return textIn(this.text, takeWhile(cursor, isAny));
  }

  /** From the first token to the last; there is at least one. */
  whole(): Span {
    return { start: this.tokens[0]?.start ?? 0, end: this.tokens.at(-1)?.end ?? 0 };
  }

  missing(code: SyntaxFault['code'], detail: string): void {
    this.fault(code, this.whole(), detail);
  }

  /** What no piece of the line took cannot stand there. */
  strayFrom({ token }: Cursor): undefined {
    if (token !== undefined) this.stray(token);
  }

  stray(from: Token): void {
    const { end } = this.whole();
    this.fault(
      'stray-text',
      { start: from.start, end },
      `\`${shorten(this.text.slice(from.start, end))}\` cannot stand here; put it in a note with \`note\` or after \`#\``,
    );
  }

  fault(code: SyntaxFault['code'], { start, end }: Span, detail: string, write?: string): void {
    this.faults.push({ code, start, end, detail, ...(write !== undefined && { write }) });
  }
}

const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
