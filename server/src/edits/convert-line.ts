/**
 * Knows how one line of the list is written in another measure: what it says already in that measure is kept, the rest is worked out.
 * Refuses to write what would be read as another food or another weight: such a line stays, and is said.
 */
import { likelyGrams } from '../food/weigh.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Quantity } from '../measure/quantity.ts';
import { timesOf } from '../measure/total.ts';
import { byHand } from '../measure/unit.ts';
import { isMass, takesOf } from '../notation/item-amounts.ts';
import { readLine } from '../notation/statements.ts';
import type { BesideNode, Line, MeasuredNode } from '../notation/tree.ts';
import { bindIngredients } from '../recipe/list/ingredient.ts';
import { isEach } from '../recipe/list/line-weight.ts';
import type { Ingredient, World } from '../recipe/model.ts';
import { amountSpan, grownBy, keepColumn } from './amount-text.ts';
import { isLeft, isWanted, type Work } from './conversion.ts';
import { type ConvertedAmount, convertAmount, doubtOf, gramsText, isIn, type Measure } from './convert-amount.ts';
import { dropped, saidBehind, termsBehind } from './said-behind.ts';
import { percentOff } from './scale-list.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';
import { amountText } from './written-sum.ts';

/** A weight off by more than this either way is said to be uncertain. */
const UNSURE = 0.15;

/** Writes an ingredient in another measure, or says why it stays. */
export function convertLine(work: Work, line: number, ingredient: Ingredient, to: Measure): void {
  const { amount } = ingredient.node;
  if (!isWanted(work, line) || amount?.kind !== 'measured' || amount.unit?.symbol === '%') return;
  const read = work.document.lines[line];
  if (read === undefined || isLeft(work, line)) return;
  const own =
    work.wish.both === true ? inBoth(amount, read.text, ingredient, to, work) : inOne(amount, ingredient, to, work);
  if (own === undefined) {
    if (work.wish.both !== true) sayWhy(work, ingredient, amount, to);
    work.edits.push(...others(work, line, ingredient, to));
    return;
  }
  const written = amountText(read.text, amount);
  const edits = firstRight(work, line, read, ingredient, own.text, to);
  if (edits === undefined) {
    work.said.push(
      `${ingredient.name} stays as written: in ${to === 'weight' ? 'weight' : 'other measures'} alone the line would be read otherwise.`,
    );
    return;
  }
  work.edits.push(...edits);
  const off = Math.abs(own.error) < 0.005 ? '' : ` (${percentOff(own.error)})`;
  work.changes.push(`${ingredient.name} ${written} → ${own.text}${off}`);
  if (own.doubt > UNSURE) work.uncertain.push(`${ingredient.name}, up to ${trimmed(own.doubt * 100, 0)} % either way`);
}

function sayWhy({ said }: Work, { name, weighed }: Ingredient, amount: MeasuredNode, to: Measure): void {
  if (to === 'weight' && !isMass(amount) && !weighed.known && !isByHand(amount))
    said.push(`${name} stays as written: ${weighed.why}.`);
}

const isByHand = ({ unit }: MeasuredNode): boolean =>
  unit !== undefined && (unit.symbol === '%' || byHand(unit.symbol) !== undefined);

/** Two weights further apart than this are not one said twice; `1 oz` beside `25 g` is. */
const SAME_WEIGHT = 0.15;

/** The measure that is wanted alone: one that stands there already, else worked out from what counts. */
function inOne(
  amount: MeasuredNode,
  ingredient: Ingredient,
  to: Measure,
  { recipe }: Work,
): ConvertedAmount | undefined {
  const { node, match, weighed } = ingredient;
  const { beside = [] } = node;
  const { world } = recipe;
  if (isIn(amount.quantity, to)) return undefined;
  const ofAll = beside.filter((b) => !isEach(amount, b, match, world));
  const kept = ofAll.find((b) => isIn(b.amount.quantity, to) && agrees(b, amount, world));
  if (kept !== undefined) return { text: keptText(kept.amount), error: 0, doubt: 0 };
  if (beside.length > 0 && to === 'weight' && weighed.known) {
    const { low, high } = amount.quantity;
    const about = beside.some((b) => b.amount.quantity.about);
    const range = low !== high && weighed.grams.low < weighed.grams.high && ofAll.length < beside.length;
    const grams = range ? [weighed.grams.low, weighed.grams.high] : [likelyGrams(weighed)];
    return { ...gramsText(grams, about || amount.quantity.about), doubt: doubtOf(weighed) };
  }
  return convertAmount(truthOf(amount, beside, ingredient, world), match, to, { world, sums: true });
}

/** Whether what stands beside is the same amount, where both are weights. */
function agrees({ amount: beside }: BesideNode, amount: MeasuredNode, world: World): boolean {
  if (!isMass(beside) || !isMass(amount)) return true;
  const inG = { world } as const;
  const [a, b] = [beside, amount].map((m) => gramsIn(m.quantity, inG.world));
  return a === undefined || b === undefined || Math.abs(a / b - 1) <= SAME_WEIGHT;
}

function gramsIn(quantity: Quantity, world: World): number | undefined {
  const water = world.book.byId('water');
  const weighed = water && world.book.weigh(water, quantity, world.measures);
  return weighed?.known ? likelyGrams(weighed) : undefined;
}

/** The first weight, else the first measure, else the pieces: of all that is written. */
function truthOf(amount: MeasuredNode, beside: readonly BesideNode[], { match }: Ingredient, world: World): Quantity {
  if (amount.unit !== undefined) return amount.quantity;
  const measured = beside.find((b) => isMass(b.amount)) ?? beside.find((b) => b.amount.unit !== undefined);
  if (measured === undefined) return amount.quantity;
  const { quantity } = measured.amount;
  return isEach(amount, measured, match, world) ? timesOf(quantity, amount.quantity) : quantity;
}

/** What stands beside, with the short name of its unit. */
function keptText({ quantity, low, high, unit, plus = [] }: MeasuredNode): string {
  const numbers = [low, ...(high === undefined ? [] : [high])].map((n) => trimmed(n.value, 3)).join('-');
  const first = `${quantity.about ? 'about ' : ''}${numbers} ${unit?.symbol ?? ''}`.trim();
  return [first, ...plus.map(keptText)].join(' + ');
}

/** Volume first, then the weight, whichever was written; nothing where the line says both. */
function inBoth(
  amount: MeasuredNode,
  text: string,
  { node, match }: Ingredient,
  to: Measure,
  { recipe: { world } }: Work,
): ConvertedAmount | undefined {
  if (node.beside !== undefined || takesOf(node) !== undefined) return undefined;
  const other = convertAmount(amount.quantity, match, isMass(amount) ? 'us' : 'weight', { world, sums: true });
  if (other === undefined || (isMass(amount) && to !== 'us')) return undefined;
  // Ounces beside grams are one weight said twice.
  if (/ (?:oz|lb)$/.test(other.text)) return undefined;
  const written = amountText(text, amount);
  return { ...other, text: isMass(amount) ? `${other.text} = ${written}` : `${written} = ${other.text}` };
}

/** The edits that write an amount anew, in the first way that is read as the same foods and as much; undefined where none is. */
function firstRight(
  work: Work,
  line: number,
  read: Line,
  ingredient: Ingredient,
  amount: string,
  to: Measure,
): readonly TextEdit[] | undefined {
  const { world } = work.recipe;
  const before = bound(read, world, ingredient);
  for (const edits of waysToWrite(work, line, read, ingredient, amount, to)) {
    const after = bound(readLine(edited(read.text, edits)), world, undefined);
    if (before === undefined || (after !== undefined && isSame(before, after, to))) return edits;
  }
  return undefined;
}

/** The ingredients of a line, of its own or a variant's. */
function bound({ statement }: Line, world: World, bare: Ingredient | undefined): readonly Ingredient[] | undefined {
  if (statement.kind === 'unread') return bare === undefined ? undefined : [bare];
  if (statement.kind === 'ingredient') return bindIngredients(statement, 0, world);
  return 'ingredient' in statement ? bindIngredients(statement.ingredient, 0, world) : undefined;
}

/** Rounding moves a weight by less than a share: to grams, where other weights on the line may count, and to other measures. */
const ROUNDED = 0.05;
const IN_OTHERS = 0.025;
const LEAST_G = 0.06;

function isSame(before: readonly Ingredient[], after: readonly Ingredient[], to: Measure): boolean {
  if (before.length !== after.length) return false;
  return before.every((a, i) => {
    const b = after[i];
    if (b === undefined || a.match.kind !== b.match.kind || a.food?.id !== b.food?.id) return false;
    if (!a.weighed.known || !b.weighed.known) return true;
    const [was, is] = [likelyGrams(a.weighed), likelyGrams(b.weighed)];
    return Math.abs(is - was) <= Math.max((to === 'weight' ? ROUNDED : IN_OTHERS) * was, LEAST_G) + 1e-9;
  });
}

function* waysToWrite(
  work: Work,
  line: number,
  { text, statement }: Line,
  ingredient: Ingredient,
  amount: string,
  to: Measure,
): Generator<readonly TextEdit[]> {
  const { node, bare } = ingredient;
  const { name, takes } = node;
  const span = amountSpan(node);
  if (span === undefined || name === undefined) return;
  const more = others(work, line, ingredient, to);
  const behind = work.wish.both === true ? termsBehind(text, node) : saidBehind(text, node);
  if (bare === true) {
    const front = replaceSpan(line, { start: name.start, end: name.start }, `${amount.padEnd(WIDTH)}  `);
    // What is told of it before the amount stays; the marks that led to the amount do not.
    const told = text.slice(name.end, span.start).replace(/[\s,.:;…·=–—-]+$/u, '').length;
    yield [front, replaceSpan(line, { start: name.end + told, end: span.end }, ''), ...dropped(line, behind), ...more];
    return;
  }
  if (takes !== undefined) {
    // What is taken out is a food of its own: `45 g lemon juice`.
    if (takes.length > 1) return;
    const start = text.length - text.trimStart().length;
    yield [
      replaceSpan(line, { start, end: name.end }, `${amount.padEnd(WIDTH)}  ${ingredient.name}`),
      ...dropped(line, behind),
      ...more,
    ];
    return;
  }
  const front = replaceSpan(line, span, amount);
  const column = statement.kind === 'ingredient' && statement.amount === node.amount;
  const kept = column ? keepColumn(line, text, span.end, grownBy([front])) : [];
  yield [front, ...kept, ...dropped(line, behind), ...more];
  // The can is gone, and with it what told the food from a fresh one.
  const canned = replaceSpan(line, { start: name.start, end: name.start }, 'canned ');
  yield [front, ...kept, canned, ...dropped(line, behind), ...more];
}

const WIDTH = 8;

/** The amounts bought, taken besides, and of alternatives, in the measure too. */
function others({ recipe: { world }, wish }: Work, line: number, { node, match }: Ingredient, to: Measure): TextEdit[] {
  if (wish.both === true) return [];
  const { bought, rest, others: alternatives = [] } = node;
  const found: (readonly [MeasuredNode, ConvertedAmount | undefined])[] = [];
  if (bought?.kind === 'measured') found.push([bought, convertAmount(bought.quantity, undefined, to, { world })]);
  if (rest?.amount !== undefined)
    found.push([rest.amount, convertAmount(rest.amount.quantity, match, to, { world, sums: true })]);
  for (const { amount, name } of alternatives)
    found.push([amount, convertAmount(amount.quantity, world.book.find(name.text), to, { world, sums: true })]);
  return found.flatMap(([amount, converted]) =>
    converted === undefined ? [] : [replaceSpan(line, amount, converted.text)],
  );
}

/** The text of a line after edits in it. */
const edited = (text: string, edits: readonly TextEdit[]): string =>
  [...edits]
    .map((edit, i) => ({ edit, i }))
    .sort((a, b) => b.edit.start.character - a.edit.start.character || b.i - a.i)
    .reduce((out, { edit }) => out.slice(0, edit.start.character) + edit.text + out.slice(edit.end.character), text);
