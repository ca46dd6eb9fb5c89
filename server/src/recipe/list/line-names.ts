/**
 * Knows which foods one item of the list names: one, a choice, several that share an amount, what is taken out of a whole one.
 * Refuses to know amounts.
 */
import type { FoodBook } from '../../food/book.ts';
import type { FoodMatch } from '../../food/food.ts';
import { looksAdjective } from '../../food/modifiers.ts';
import { keyOf } from '../../food/names.ts';
import { isLikeness } from '../../food/shares.ts';
import { takesOf } from '../../notation/item-amounts.ts';
import { keptOn } from '../../notation/kept.ts';
import type { IngredientNode, TextNode } from '../../notation/tree.ts';
import type { World } from '../model.ts';
import { type NamedFood, oneFood, shareBeside, shareInBrackets, takenOf } from './one-food.ts';
import { behindCommas, listedCounts, listedFree, seasonings, splitName, togetherIn } from './several-foods.ts';

/**
 * The foods of an item, in the order of the line; none where it has no name. Most lines name one food and nothing besides: which it is,
 * is kept by what it hangs on.
 */
export function namedOn(line: IngredientNode, world: World): readonly NamedFood[] {
  const beside = besideName(line);
  const { name } = line;
  if (beside === undefined || name === undefined) return namesOn(line, world);
  const kept = keptIn(world.book);
  const one = kept.byName.get(name.text)?.get(beside);
  if (one !== undefined && one !== SEVERAL) return [{ name, called: name.text, match: one, free: false }];
  const found = namesOn(line, world);
  if (one === undefined) keep(kept, name.text, beside, isOne(found, name) ? found[0].match : SEVERAL);
  return found;
}

/** All of a measured item, beside its name, that says which food it is; undefined where more does. */
function besideName(node: IngredientNode): string | undefined {
  const { amount, name, preparation, note, others, eachOf, listed } = node;
  if (name === undefined || amount?.kind !== 'measured') return undefined;
  if ((others ?? takesOf(node) ?? eachOf ?? listed ?? shareBeside(node) ?? shareInBrackets(node)) !== undefined)
    return undefined;
  const { unit, each } = amount.quantity;
  if (each !== undefined) return undefined;
  const { counted } = amount;
  if (counted === undefined && preparation === undefined && note === undefined) return unit ?? '';
  const words = `${unit ?? ''}\t${counted?.text ?? ''}\t${preparation?.text ?? ''}\t${note?.text ?? ''}`;
  return name.text.length + words.length > LONGEST_KEPT ? undefined : words;
}

const isOne = (found: readonly NamedFood[], name: TextNode): found is readonly [NamedFood] => {
  const [one, more] = found;
  if (one === undefined || more !== undefined || one.name !== name || one.called !== name.text) return false;
  return !one.free && (one.others ?? one.mayHold ?? one.takes ?? one.counted) === undefined;
};

/** Stands for all that is not one food. */
const SEVERAL = Symbol();
const MOST_KEPT = 5000;
const LONGEST_KEPT = 120;

/** The food by the name of an item, and by what else says it: both are looked up as they stand in the line. */
interface Kept {
  readonly byName: Map<string, Map<string, FoodMatch | typeof SEVERAL>>;
  size: number;
}

const KEPT = keptOn<FoodBook, Kept>();

function keep(kept: Kept, name: string, beside: string, match: FoodMatch | typeof SEVERAL): void {
  if (kept.size >= MOST_KEPT) {
    kept.byName.clear();
    kept.size = 0;
  }
  const those = kept.byName.get(name);
  if (those === undefined) kept.byName.set(name, new Map([[beside, match]]));
  else those.set(beside, match);
  kept.size++;
}

function keptIn(book: FoodBook): Kept {
  let kept = KEPT.get(book);
  if (kept === undefined) {
    kept = { byName: new Map(), size: 0 };
    KEPT.set(book, kept);
  }
  return kept;
}

/** The same, worked out. */
export function namesOn(line: IngredientNode, world: World): readonly NamedFood[] {
  const counted = withCountWord(line, world) ?? withLikeness(line, world);
  if (counted !== undefined) return namesOn(counted, world).map((named) => ({ ...named, counted }));
  const node = withNoun(withOnly(line), world);
  const { name, amount } = node;
  if (name === undefined) return [];
  const free = amount?.kind !== 'measured' && (amount !== undefined || node.purpose !== undefined);
  if (amount?.kind !== 'measured' && SALT_AND_PEPPER.test(name.text))
    return ['salt', 'pepper'].map((called) => ({ name, called, match: world.book.find(called), free: true }));
  const taken = takenOf(node, name, world);
  if (taken !== undefined) return [taken];
  const list = amount?.kind === 'measured' ? undefined : listedFree(node, name, world);
  const each = list ?? listedCounts(node, name, world);
  if (each !== undefined) return each;
  const joined = JOINED.test(name.text) && !world.book.knows(name.text);
  const together = joined && amount?.kind === 'measured' ? togetherIn(amount, name.text, world) : undefined;
  if (together !== undefined) return [{ name, called: name.text, match: together, free: false }];
  const names = joined ? splitName(node, name, free, world) : undefined;
  const besides = behindCommas(node, world);
  if (names === undefined) return [{ ...oneFood(node, name, world), free, ...besides }, ...seasonings(node, world)];
  const [first, ...rest] = names.foods;
  if (first === undefined) return [];
  if (names.kind === 'choice') {
    const others = [...rest, ...(besides.others ?? [])];
    return [{ ...first, called: first.name.text, free, ...besides, others }];
  }
  return names.foods.map((food) => ({ ...food, called: food.name.text, free, ...besides }));
}

/** As cards shorten it. */
const SALT_AND_PEPPER = /^s ?(?:&|and|\+) ?p$/i;

const JOINED = /[,&/]|\b(?:or|and)\b/i;

/** `2 round steaks`, `1 stem ginger`: a count word gives way to a name of the book, unless it counts pieces of the food. */
function withCountWord(node: IngredientNode, world: World): IngredientNode | undefined {
  const { amount, name } = node;
  if (name === undefined || amount?.kind !== 'measured' || amount.quantity.unit !== undefined) return undefined;
  const { counted, quantity } = amount;
  const { count } = quantity;
  if (counted === undefined || count === undefined || quantity.each !== undefined) return undefined;
  const text = [`${counted.text} ${name.text}`, `${counted.text} of ${name.text}`].find((words) =>
    world.book.knows(words),
  );
  if (text === undefined) return undefined;
  const called = world.book.find(text);
  const plain = world.book.find(name.text);
  const isPiece = (match: FoodMatch): boolean =>
    match.kind === 'food' && match.food.pieces.some((piece) => piece.word === count);
  if (isPiece(plain) || (plain.kind === 'food' && called.kind === 'food' && plain.food === called.food))
    return undefined;
  const { counted: _, ...rest } = amount;
  const { count: __, ...number } = quantity;
  const bare = isPiece(called) ? { ...rest, quantity } : { ...rest, quantity: number };
  return { ...node, amount: bare, name: { start: counted.start, end: name.end, text } };
}

/** `a walnut of butter` is butter, the size of a walnut. */
function withLikeness(node: IngredientNode, world: World): IngredientNode | undefined {
  const { amount, name, preparation } = node;
  if (name === undefined || amount?.kind !== 'measured' || amount.unit !== undefined) return undefined;
  const [all, thing] = /^(\p{L}+?)s? of (?=\p{L})/u.exec(name.text) ?? [];
  if (all === undefined || thing === undefined || !isLikeness(thing) || world.book.knows(name.text)) return undefined;
  const { start, end } = name;
  const said = `size of a ${thing}${preparation === undefined ? '' : `, ${preparation.text}`}`;
  return {
    ...node,
    name: { start: start + all.length, end, text: name.text.slice(all.length) },
    preparation: { ...(preparation ?? name), text: said },
  };
}

/** `2 eggs (whites only)` is `2 eggs, whites only`. */
function withOnly(node: IngredientNode): IngredientNode {
  const { note, preparation } = node;
  return note !== undefined && preparation === undefined && /\bonly$/i.test(note.text)
    ? { ...node, preparation: note }
    : node;
}

/** `cooked, chopped chicken`: a comma between adjectives ends no name. */
function withNoun(node: IngredientNode, world: World): IngredientNode {
  const { name, preparation } = node;
  if (name === undefined || preparation === undefined || node.listed) return node;
  const words = name.text.trim().split(/\s+/);
  if (!words.every((word) => looksAdjective(keyOf(word)) && !world.book.knows(word))) return node;
  const comma = preparation.text.indexOf(',');
  const noun = comma < 0 ? preparation.text : preparation.text.slice(0, comma);
  const end = preparation.start + noun.length;
  const gap = ','.padEnd(preparation.start - name.end, ' ');
  const { preparation: _, ...bare } = node;
  const rest = preparation.text.slice(noun.length).replace(/^,\s*/, '');
  return {
    ...bare,
    name: { start: name.start, end, text: `${name.text}${gap}${noun}` },
    ...(rest !== '' && { preparation: { start: preparation.end - rest.length, end: preparation.end, text: rest } }),
  };
}
