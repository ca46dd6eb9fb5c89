/**
 * Knows which foods an item names that names several: a choice, an enumeration, what comes behind commas.
 * Refuses to know amounts.
 */
import { type FoodMatch, foodsOf } from '../../food/food.ts';
import { looksAdjective } from '../../food/modifiers.ts';
import { keyOf } from '../../food/names.ts';
import { takenBehind } from '../../notation/takes.ts';
import type { IngredientNode, MeasuredNode, TextNode } from '../../notation/tree.ts';
import type { Named, World } from '../model.ts';
import { findFood, type NamedFood } from './one-food.ts';

/** `cooked beans and liquid`, `diced celery and leaves`: one measure of two that weigh unlike; which share is which nobody says. */
export function togetherIn({ unit }: MeasuredNode, text: string, { book }: World): FoodMatch | undefined {
  const [, first, part = ''] = TOGETHER.exec(text) ?? [];
  if (first === undefined || unit === undefined) return undefined;
  const [main] = foodsOf(book.find(first));
  if (main === undefined) return undefined;
  const [other] = foodsOf(book.find(/^liq/i.test(part) ? 'water' : `${main.name} leaves`));
  return other === undefined || other === main ? undefined : { kind: 'ambiguous', foods: [main, other] };
}

const TOGETHER = /^(.+?),? (?:and|&) (?:the |its |their |some )?(liquid|liquor|leaves|tops)$/i;

interface Split {
  /** `or`, or all of them. */
  readonly kind: 'choice' | 'each';
  readonly foods: readonly Named[];
}

/** A name that joins several: taken apart where the book knows every one of them. */
export function splitName(node: IngredientNode, name: TextNode, free: boolean, world: World): Split | undefined {
  const choice = /\bor\b|\//i.test(name.text);
  const parts = piecesOf(name, choice ? /\s*(?:\bor\b|\/)\s*/gi : /\s*(?:,\s*and\b|,|\band\b|&)\s*/gi);
  // `½ each of lemon and orange, juiced`
  while (node.eachOf === true && parts.length > 2 && isSaidOf(parts.at(-1)?.text ?? '', world)) parts.pop();
  if (parts.length < 2 || parts.length > MOST_ON_A_LINE) return undefined;
  if (!choice && !free && node.amount !== undefined && node.eachOf !== true) return undefined;
  const last = parts.at(-1);
  const foods = parts.map((part, at): Named => {
    const own = findFood(node, part.text, node.preparation?.text, world);
    const next = parts[at + 1]?.text.trim().split(/\s+/) ?? [];
    const noun = next.at(-1) ?? '';
    if (part === last || part.text.includes(noun)) return { name: part, match: own };
    // `beef or pork mince`, `canned or fresh crab meat`: the noun comes behind the next.
    const names = next.slice(1).map((_, from) => `${part.text} ${next.slice(from + 1).join(' ')}`);
    const shared = (own.kind === 'unknown' ? names : names.slice(-1))
      .map((words) => ({ words, match: world.book.find(words) }))
      .find(({ match }) => match.kind !== 'unknown');
    // Of `soy sauce, honey, rice vinegar` the honey is none.
    const isOwn = own.kind !== 'unknown' && !choice && name.text.includes(',');
    const takes = own.kind === 'unknown' || (!isOwn && shared?.match.kind === 'food' && isName(shared.words, world));
    return { name: part, match: shared !== undefined && takes ? shared.match : own };
  });
  const one = foods.at(-1)?.match;
  if (last !== undefined && one !== undefined && foods.every(({ match }) => isSame(match, one)))
    return { kind: 'each', foods: [{ name: last, match: one }] };
  const known = foods.every(({ match }) => match.kind !== 'unknown');
  const listed =
    node.eachOf === true && (parts.length > 2 || findFood(node, name.text, undefined, world).kind === 'unknown');
  return known || listed || /\bor\b/i.test(name.text) ? { kind: choice ? 'choice' : 'each', foods } : undefined;
}

/** A name of the book, `light chicken stock` too. */
function isName(words: string, { book }: World): boolean {
  const all = words.split(/\s+/);
  const from = all.findIndex((word) => !looksAdjective(keyOf(word)));
  return book.knows(words) || (from > 0 && book.knows(all.slice(from).join(' ')));
}

/** Words that are told of foods, and name none. */
const isSaidOf = (text: string, { book }: World): boolean =>
  takenBehind(text).length > 0 || (!book.knows(text) && text.split(/\s+/).every((word) => looksAdjective(keyOf(word))));

/** Whether both may mean the same foods and no others. */
function isSame(a: FoodMatch, b: FoodMatch): boolean {
  if (a.kind === 'food') return b.kind === 'food' && a.food === b.food;
  return a.kind === 'ambiguous' && b.kind === 'ambiguous' && a.foods.every((food, i) => food === b.foods[i]);
}

/** More than so many names on one line are none. */
const MOST_ON_A_LINE = 8;

/** The text between the joints, each with its place on the line. */
function piecesOf({ text, start }: TextNode, joint: RegExp): TextNode[] {
  const pieces: TextNode[] = [];
  let from = 0;
  const push = (to: number): void => {
    const piece = text.slice(from, to);
    if (piece.trim() !== '') pieces.push({ start: start + from, end: start + to, text: piece });
  };
  for (const match of text.matchAll(joint)) {
    push(match.index);
    from = match.index + match[0].length;
  }
  push(text.length);
  return pieces;
}

const SAID_OF = /\b(?:of|the|like|as|in|with|for|until)\b/i;

/** `a sprig of parsley, thyme, and marjoram`: so many of each. */
export function listedCounts(node: IngredientNode, name: TextNode, world: World): readonly NamedFood[] | undefined {
  const { amount, preparation } = node;
  if (amount?.kind !== 'measured' || amount.unit !== undefined || preparation === undefined) return undefined;
  if (!/(?:^|,\s*)and\s/i.test(preparation.text) || preparation.text.length > LONGEST_SAID) return undefined;
  const rest = piecesOf(preparation, /\s*(?:,\s*and\b|,|^\s*and\b)\s*/gi);
  if (rest.length > MOST_ON_A_LINE || !rest.every(({ text }) => world.book.knows(text))) return undefined;
  return [name, ...rest].map((one) => ({ name: one, called: one.text, match: world.book.find(one.text), free: false }));
}

/** `salt, sugar and lime juice to taste`: several without amounts, the commas between them. */
export function listedFree(node: IngredientNode, name: TextNode, world: World): readonly NamedFood[] | undefined {
  const { preparation, purpose, optional } = node;
  if (preparation === undefined) return undefined;
  const ends = [purpose, optional].flatMap((span) =>
    span !== undefined && span.start > preparation.start && span.end <= preparation.end ? [span.start] : [],
  );
  const end = Math.min(preparation.end, ...ends);
  const said = preparation.text.slice(0, end - preparation.start).replace(/[\s,]+$/, '');
  if (said === '' || said.length > LONGEST_SAID) return undefined;
  const rest = piecesOf({ ...preparation, text: said }, /\s*(?:,\s*and\b|,|\band\b|&)\s*/gi);
  const all = [...piecesOf(name, /\s*(?:\band\b|&)\s*/gi), ...rest];
  // `the size of a walnut` names no nut.
  const known = (text: string): boolean =>
    world.book.knows(text) || (!SAID_OF.test(text) && world.book.find(text).kind !== 'unknown');
  if (all.length > MOST_ON_A_LINE || !all.every(({ text }) => known(text))) return undefined;
  // `oil, olive`
  if (rest.length === 1 && rest.some(({ text }) => world.book.knows(`${text} ${name.text}`))) return undefined;
  return all.map((one) => ({ name: one, called: one.text, match: world.book.find(one.text), free: true }));
}

/** What the line's commas bring: alternatives behind `or`, and other foods that may be in it. */
export function behindCommas(
  node: IngredientNode,
  world: World,
): { readonly others?: readonly Named[]; readonly mayHold?: readonly Named[] } {
  const { preparation, note, others = [], name: noun } = node;
  const named = others.map(({ name }): Named => ({ name, match: world.book.find(name.text) }));
  const may: Named[] = [];
  for (const said of [preparation, note]) {
    if (said === undefined || said.text.length >= LONGEST_SAID) continue;
    for (const chunk of piecesOf(said, /\s*,\s*/g)) {
      const or = /^\s*(?:or|preferably)\s+/i.exec(chunk.text)?.[0].length ?? 0;
      const name = { start: chunk.start + or, end: chunk.end, text: chunk.text.slice(or) };
      const says = or > 0 || (world.book.knows(name.text) && !narrows(name.text, noun, world));
      const match = says ? world.book.find(name.text) : undefined;
      if (match === undefined || match.kind === 'unknown') continue;
      (or > 0 ? named : may).push({ name, match });
    }
  }
  return { ...(named.length > 0 && { others: named }), ...(may.length > 0 && { mayHold: may }) };
}

const LONGEST_SAID = 200;

/** `pork, salt`: the word behind the comma says which food it is, and is none besides. */
const narrows = (chunk: string, noun: TextNode | undefined, { book }: World): boolean =>
  noun !== undefined && book.knows(`${chunk.trim()} ${noun.text}`);

/** `1 tsp salt, pepper`: a bare seasoning behind the comma is one of its own. */
export function seasonings(node: IngredientNode, world: World): readonly NamedFood[] {
  const { preparation, name } = node;
  if (preparation === undefined || !/pepper|salt/i.test(preparation.text)) return [];
  return piecesOf(preparation, /\s*(?:,|\band\b)\s*/gi).flatMap((chunk): readonly NamedFood[] => {
    if (
      !/^(?:(?:freshly )?ground )?(?:black |white |sea )?(?:pepper|salt)$/i.test(chunk.text) ||
      narrows(chunk.text, name, world)
    )
      return [];
    return [{ name: chunk, called: chunk.text, match: world.book.find(chunk.text), free: true }];
  });
}
