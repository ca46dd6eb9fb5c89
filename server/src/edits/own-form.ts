/**
 * Knows how a line of the list that is printed as cooks print it is written in the notation's own form: the amount first, one food a line.
 * Refuses whatever would then be read otherwise: the foods, their grams and all that may be in them stay.
 */

import { numberText } from '../measure/kitchen.ts';
import { isEitherFraction } from '../measure/kitchen-fraction.ts';
import type { Document } from '../notation/document.ts';
import { isMass, termsOf } from '../notation/item-amounts.ts';
import { layoutLine } from '../notation/layout.ts';
import { readLine } from '../notation/statements.ts';
import type { IngredientNode, Line, MeasuredNode, NumeralNode, Span } from '../notation/tree.ts';
import { SEASONING } from '../recipe/list/bare-line.ts';
import { bindIngredients } from '../recipe/list/ingredient.ts';
import type { Ingredient, Named, Part, Recipe, World } from '../recipe/model.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface OwnForm {
  /** The lines without indent: `1 can of 411 g  diced tomatoes`. */
  readonly written: readonly string[];
  readonly edits: readonly TextEdit[];
}

/** A line of a part's list, counted in the part, written anew; undefined where that changes no more than blanks, or what it says. */
export function writeOwnForm(document: Document, recipe: Recipe, part: Part, inPart: number): OwnForm | undefined {
  const at = (recipe.partsAt[part.index] ?? 0) + inPart;
  const line = document.lines[at];
  const listed = part.head.ingredients.filter((i) => i.line === inPart);
  const isBare = listed.every((i) => i.bare === true);
  if (line === undefined || listed.length === 0 || (line.faults.length > 0 && !isBare)) return undefined;
  const code = line.text.slice(0, line.comment?.start ?? line.text.length).trimEnd();
  const written = listed.map((ingredient) => itemText(line, ingredient, listed));
  if (
    written.length === 1 &&
    [code, layoutLine(line)].some((text) => blanksAside(text) === blanksAside(written[0] ?? ''))
  )
    return undefined;
  if (!saysTheSame(written, listed, recipe.world)) return undefined;
  const indent = /^\s*/.exec(code)?.[0] ?? '';
  const span = { start: indent.length, end: code.length };
  return { written, edits: [replaceSpan(at, span, written.join(`\n${indent}`))] };
}

const blanksAside = (text: string): string => text.trim().replace(/\s+/g, ' ');

/** Names stand this far behind the amount's first character; a longer amount pushes its own on. */
const NAME_COLUMN = 10;

function itemText(line: Line, ingredient: Ingredient, listed: readonly Ingredient[]): string {
  const { node, nameNode } = ingredient;
  const alone = listed.filter((i) => i.node === node).length === 1;
  const amount = amountText(line, ingredient);
  const name = alone && node.name !== undefined ? node.name.text : nameNode.text;
  const taken = node.taken === undefined ? '' : `${node.taken.text} of `;
  const optional = node.optional !== undefined && line.keyword !== undefined ? `${textOf(line, line.keyword)} ` : '';
  const opens = `${optional}${taken}${amount}`;
  return `${opens.padEnd(Math.max(NAME_COLUMN, opens.length + 2))}${small(name, ingredient)}${alone ? behind(line, node) : ''}`;
}

/** `Butter, 4 oz`: no longer the first word of its line. */
function small(name: string, { bare, food }: Ingredient): string {
  const proper = food === undefined || /^\p{Lu}/u.test(food.name) || /^\p{Lu}{2}/u.test(name);
  return bare !== true || proper ? name : name.slice(0, 1).toLowerCase() + name.slice(1);
}

/** What follows the name, in the order of the line. */
function behind(line: Line, node: IngredientNode): string {
  const { bought, preparation, note, others = [] } = node;
  const said: (readonly [number, string])[] = [];
  if (bought?.kind === 'measured') said.push([bought.start, ` from ${ownAmount(line, bought)}`]);
  for (const other of others) said.push([other.start, `, or ${ownAmount(line, other.amount)} ${other.name.text}`]);
  if (preparation !== undefined) said.push([preparation.start, `, ${preparation.text}`]);
  if (note !== undefined) said.push([note.start, ` (${note.text})`]);
  const again = besideTexts(line, node, 'behind').map((text) => ` ${text}`);
  return (
    again.join('') +
    said
      .sort(([a], [b]) => a - b)
      .map(([, text]) => text)
      .join('')
  );
}

function amountText(line: Line, { node, match }: Ingredient): string {
  const { amount } = node;
  if (amount?.kind === 'measured') return [ownAmount(line, amount), ...besideTexts(line, node, 'front')].join(' ');
  const said = amount === undefined ? '' : textOf(line, amount).toLowerCase();
  if (/^(?:to taste|as needed|an? )/.test(said)) return said;
  const foods = match.kind === 'food' ? [match.food] : match.kind === 'ambiguous' ? match.foods : [];
  const seasons = foods.some((one) => SEASONING.has(one.class));
  return seasons && (node.purpose === undefined || TO_TASTE.test(node.purpose.text)) ? 'to taste' : 'as needed';
}

const TO_TASTE = /^to taste$/i;

/** The same in other measures: `= 156 g` behind a measure, else a bracket, before or behind the name as it stands. */
function besideTexts(line: Line, node: IngredientNode, where: 'front' | 'behind'): string[] {
  const { amount, beside = [], name, bought } = node;
  if (amount?.kind !== 'measured') return [];
  return beside.flatMap(({ amount: again, means, sign, start }) => {
    const measure = amount.unit !== undefined && !isMass(amount);
    const equals =
      sign === '=' || (means === 'same' && isMass(again) && (measure || sign === 'or') && bought === undefined);
    const front = equals || name === undefined || start < name.start;
    if (front !== (where === 'front')) return [];
    const text = ownAmount(line, again);
    return equals ? [`= ${text}`] : [`(${text}${means === 'each' ? ' each' : ''})`];
  });
}

/** An amount with numbers in figures, ranges with a dash and units by their short names. */
export function ownAmount(line: Line, amount: MeasuredNode): string {
  const terms = termsOf(amount).map((term) => ownTerm(line, term));
  return terms.join(terms.length > 1 && termsOf(amount).every(isMass) ? ' ' : ' + ');
}

function ownTerm(line: Line, term: MeasuredNode): string {
  const { low, high, unit, counted, sized, each, bias, upTo, quantity } = term;
  const most =
    high === undefined ? (low.upTo === undefined ? undefined : numberText(low.upTo, 'plain')) : ownNumber(line, high);
  const least = ownNumber(line, low);
  const words = [
    ...(quantity.about ? ['about'] : []),
    most === undefined ? least : rangeText(least, most, unit?.symbol),
    ...(bias === undefined ? [] : [textOf(line, bias).toLowerCase()]),
    ...(unit === undefined ? [] : [unit.symbol]),
    ...(sized === undefined ? [] : [textOf(line, sized).toLowerCase()]),
    ...(counted === undefined ? [] : [textOf(line, counted).toLowerCase()]),
    ...(each === undefined ? [] : [eachText(line, term, each)]),
    ...(upTo === undefined ? [] : ['to', ownTerm(line, upTo)]),
  ];
  return words.join(' ');
}

/** With a dash, unless that may be read as a stroke. */
const rangeText = (low: string, high: string, unit = ''): string =>
  `${low}${isEitherFraction(low, high, unit) ? ' to ' : '-'}${high}`;

function eachText(line: Line, { low, counted }: MeasuredNode, each: MeasuredNode): string {
  const text = ownAmount(line, each);
  if (counted !== undefined) return `of ${text}`;
  return /[x×]/i.test(line.text.slice(low.end, each.start)) ? `x ${text}` : `(${text})`;
}

/** As it is written where that is figures. */
function ownNumber(line: Line, numeral: NumeralNode): string {
  const text = textOf(line, numeral);
  if (text === '' || /\p{L}/u.test(text)) return numberText(numeral.value, 'plain');
  return text
    .replace(/^\./, '0.')
    .replace(/\s*-\s*/g, ' ')
    .replace(/\s+/g, ' ');
}

const textOf = (line: Line, { start, end }: Span): string => line.text.slice(start, end);

/** Whether the lines, read, are the same ingredients in the same order. */
function saysTheSame(written: readonly string[], listed: readonly Ingredient[], world: World): boolean {
  const after = written.map((text) => {
    const { statement, faults } = readLine(text);
    return statement.kind !== 'ingredient' || faults.length > 0 ? [] : bindIngredients(statement, 0, world);
  });
  return after.every((found, i) => found.length === 1 && factsOf(found[0]) === factsOf(listed[i]));
}

function factsOf(ingredient: Ingredient | undefined): string | undefined {
  if (ingredient === undefined) return undefined;
  const { name, match, weighed, percent, free, optional, others = [], mayHold = [], takes = [], node } = ingredient;
  const foods = ({ match: m }: Pick<Named, 'match'>) =>
    m.kind === 'food' ? m.food.id : m.kind === 'ambiguous' ? m.foods.map((f) => f.id).join() : '?';
  return JSON.stringify([
    name.toLowerCase(),
    foods({ match }),
    weighed.known ? [weighed.grams.low, weighed.grams.high].map((g) => g.toFixed(6)) : 'not known',
    percent,
    free,
    optional,
    [others, mayHold].map((list) => list.map((named) => [named.name.text, foods(named)])),
    takes.map((taken) => foods({ match: taken })),
    TO_TASTE.test(node.purpose?.text ?? '') ? undefined : node.purpose?.text,
    node.rest === undefined ? undefined : (node.rest.amount?.quantity ?? true),
  ]);
}
