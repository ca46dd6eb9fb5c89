/**
 * Knows how lines of the list become items: an ingredient by itself or behind a keyword, and what could not be read.
 * Refuses to know the list around it.
 */
import { Cursor, spanOf, takeWhile, textIn } from './cursor.ts';
import { ItemReader } from './ingredient.ts';
import { itemFaults } from './item-faults.ts';
import type { LineReading } from './line-reading.ts';
import { isNamePart, Kind } from './tokens.ts';
import type { AmountNode, Draft, IngredientNode, Statement, SyntaxFault, TextNode } from './tree.ts';
import { unreadFault } from './unread-line.ts';

/** Words that count open a line of the list of at most so many words and marks; a longer one with a full stop is prose. */
const LONGEST_PRINTED = 10;

/** A line of the list; undefined where its amount does not come first, or it is prose. */
export function listedItem(line: LineReading): IngredientNode | undefined {
  if (isProse(line)) return undefined;
  const cursor = new Cursor(line.tokens, 0);
  const faults: SyntaxFault[] = [];
  const item = new ItemReader(line.text, cursor, faults).item();
  if (item === undefined) return undefined;
  line.faults.push(...faults);
  return complete(line, item, cursor, { named: false });
}

/** `One by one add the eggs.`: words that count, and a sentence. */
function isProse(line: LineReading): boolean {
  const [first] = line.tokens;
  if (first === undefined || first.kind === Kind.About) return false;
  if (first.kind <= Kind.DecimalComma) return isName(line);
  return line.tokens.length > LONGEST_PRINTED && /[.!?]$/.test(line.text.trimEnd());
}

/** `7-grain cereal`: the number is in the name. */
function isName(line: LineReading): boolean {
  const [number, dash, word] = line.tokens;
  return dash?.kind === Kind.Dash && word?.kind === Kind.Word && number?.end === dash.start && dash.end === word.start;
}

export function itemFrom(line: LineReading, at: number, want: { named: boolean }): IngredientNode {
  // `optional: 1/2 cup raisins`
  const cursor = new Cursor(line.tokens, line.tokens[at]?.kind === Kind.Colon ? at + 1 : at);
  const reader = new ItemReader(line.text, cursor, line.faults);
  return complete(line, reader.item() ?? reader.bare() ?? { kind: 'ingredient' }, cursor, want);
}

/** The item with what its line says of it, and a fault for each thing that is missing. */
function complete(line: LineReading, read: IngredientNode, cursor: Cursor, want: { named: boolean }): IngredientNode {
  const { text, faults, opened } = line;
  line.strayFrom(cursor);
  const item: Draft<IngredientNode> = read;
  const { amount } = item;
  if (item.name === undefined && item.beside === undefined) {
    const counted = countedIn(amount);
    if (counted !== undefined) item.name = counted;
  }
  const [first] = line.tokens;
  if (opened === 'optional' && first !== undefined) item.optional = spanOf(first, first);
  const { name } = item;
  if (name !== undefined && /^[.)]/.test(name.text)) {
    const { end } = line.whole();
    const said = text.slice(name.start + 1, end).trimStart();
    const write = /^[\d¼-¾⅐-⅞]/.test(said) ? said : `do ${said}`;
    line.fault('not-a-statement', line.whole(), 'lines are not numbered: start each step with `do`', write);
  }
  if (amount === undefined && (opened === 'optional' || opened === 'add')) {
    line.missing('missing-amount', `write the amount first: \`${opened} 20 g ${name?.text ?? 'butter'}\``);
  }
  if (want.named && name === undefined) line.missing('missing-name', 'name the ingredient after its amount');
  itemFaults(text, item, faults);
  return item;
}

export function swapLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  const old = textIn(line.text, takeWhile(cursor, isNamePart));
  let ingredient: IngredientNode = { kind: 'ingredient' };
  if (cursor.take(Kind.Joiner) !== undefined) ingredient = itemFrom(line, cursor.at, { named: true });
  else line.strayFrom(cursor);
  if (old === undefined || ingredient.amount === undefined) {
    line.missing('missing-value', 'write what goes and what comes: `swap butter for 120 g margarine`');
  }
  return { kind: 'swap', ...(old && { old }), ingredient };
}

export function unreadLine(line: LineReading): Statement {
  const span = line.whole();
  const words = { ...span, text: line.text.slice(span.start, span.end) };
  const [first] = line.tokens;
  const word =
    first?.kind === Kind.Word && first.written ? { ...spanOf(first, first), word: first.written.image } : undefined;
  // Behind a bullet, too, what it says tells what to write.
  const opens = line.tokens.findIndex(({ kind }) => kind !== Kind.Other && kind !== Kind.Dash);
  const said =
    line.tokens[opens]?.kind === Kind.Word || (opens === 0 && isName(line))
      ? new ItemReader(line.text, new Cursor(line.tokens, opens), []).bare()
      : undefined;
  line.faults.push(unreadFault(words.text, span, word, said));
  const bare = opens === 0 ? said : undefined;
  return bare === undefined ? { kind: 'unread', words } : { kind: 'unread', words, bare };
}

/** `2 cloves` names the spice; `1 bunch` names nothing. */
export const countedIn = (amount: AmountNode | undefined): TextNode | undefined =>
  amount?.kind === 'measured' ? amount.counted : undefined;
