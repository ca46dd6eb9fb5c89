/**
 * Knows which foods one item of the list names: one, a choice, several that share an amount, what is taken out of a whole one.
 * Refuses to know amounts.
 */
import type { FoodBook } from '../../food/book.ts';
import { type FoodMatch, foodsOf } from '../../food/food.ts';
import { looksAdjective } from '../../food/modifiers.ts';
import { keyOf } from '../../food/names.ts';
import { isLikeness } from '../../food/shares.ts';
import type { CountWord } from '../../measure/count-words.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import { takesOf } from '../../notation/item-amounts.ts';
import { keptOn } from '../../notation/kept.ts';
import { type Take, takenBehind, takenBy } from '../../notation/takes.ts';
import type { IngredientNode, MeasuredNode, TextNode } from '../../notation/tree.ts';
import type { Named, World } from '../model.ts';

/** One food of an item. */
export interface NamedFood extends Named {
  /** What it is called where that is more than its name on the line: the juice of a `lemon` is lemon juice. */
  readonly called: string;
  readonly others?: readonly Named[];
  readonly mayHold?: readonly Named[];
  /** What is taken out of it, where that is more than one thing: all of it is weighed together. */
  readonly takes?: readonly FoodMatch[];
  /** The line with its count word in the name, where the name has it. */
  readonly counted?: IngredientNode;
  /** No amount is meant: `to taste`, `oil for frying`. */
  readonly free: boolean;
}

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
  if ((others ?? takesOf(node) ?? eachOf ?? listed ?? shareBeside(node)) !== undefined) return undefined;
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

/** `cooked beans and liquid`, `diced celery and leaves`: one measure of two that weigh unlike; which share is which nobody says. */
function togetherIn({ unit }: MeasuredNode, text: string, { book }: World): FoodMatch | undefined {
  const [, first, part = ''] = TOGETHER.exec(text) ?? [];
  if (first === undefined || unit === undefined) return undefined;
  const [main] = foodsOf(book.find(first));
  if (main === undefined) return undefined;
  const [other] = foodsOf(book.find(/^liq/i.test(part) ? 'water' : `${main.name} leaves`));
  return other === undefined || other === main ? undefined : { kind: 'ambiguous', foods: [main, other] };
}

const TOGETHER = /^(.+?),? (?:and|&) (?:the |its |their |some )?(liquid|liquor|leaves|tops)$/i;

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

function oneFood(node: IngredientNode, name: TextNode, world: World): Named & { readonly called: string } {
  return { name, called: name.text, match: findFood(node, name.text, node.preparation?.text, world) };
}

/** The food of a name, with a preparation that may change it (`plums, dried`). */
function findFood(node: IngredientNode, name: string, preparation: string | undefined, world: World): FoodMatch {
  const narrowing = preparation === undefined ? '' : narrowingIn(preparation);
  // A strength may stand in brackets too: `vinegar (3 % acidity)`, and alone behind a comma: `chocolate, 70 %`.
  const strength = node.note?.text.includes('%') ? node.note.text : (shareBeside(node) ?? '');
  const match = world.book.find([name, narrowing, strength].filter((words) => words !== '').join(', '));
  const { amount } = node;
  const count = amount?.kind === 'measured' ? amount.quantity.count : undefined;
  const unit = amount?.kind === 'measured' ? amount.quantity.unit : undefined;
  // A dash of red pepper is no piece of one.
  if (match.kind === 'food' && match.food.class === 'vegetable' && unit !== undefined && BY_HAND.has(unit)) {
    const ground = world.book.find(`ground ${name}`);
    if (ground.kind === 'food' && ground.food.class === 'spice') return ground;
  }
  // A squeeze of lemon is of its juice.
  if (match.kind === 'food' && match.food.class === 'fruit' && unit === 'squeeze') {
    const juice = world.book.find(`${match.food.name} juice`);
    if (juice.kind === 'food') return juice;
  }
  if (count === undefined) return match;
  // What holds it or how it grows tells two foods of one name apart: `1 can chickpeas`, `1 bunch coriander`.
  if (count === 'can' || count === 'tin') {
    const canned = world.book.find(`canned ${name}`);
    return canned.kind === 'food' ? canned : match;
  }
  if (match.kind !== 'ambiguous') return match;
  const herbs = GREEN.has(count) ? match.foods.filter((food) => food.class === 'leafy herb') : [];
  const counted = match.foods.filter((food) => food.pieces.some((piece) => piece.word === count));
  const [only, ...more] = herbs.length > 0 ? herbs : counted;
  return only !== undefined && more.length === 0 ? { kind: 'food', food: only } : match;
}

/** `chocolate, 70 %`. */
function shareBeside({ beside }: IngredientNode): string | undefined {
  const share = beside?.find(({ sign, amount }) => sign === ',' && amount.quantity.unit === '%');
  return share && `${share.amount.quantity.low} %`;
}

/** What behind the comma may narrow the name: `cream, or coconut milk` is no coconut cream, `oil, not butter` no butter oil. */
const narrowingIn = (preparation: string): string =>
  ASIDE.test(preparation)
    ? preparation
        .split(',')
        .filter((chunk) => !ASIDE.test(chunk))
        .join(',')
    : preparation;

const ASIDE = /(?:^|,)\s*(?:or|not|never|nor|no|without|plus|instead|rather)\b/i;
/** `tomatoes, in their own juice`, `with juice` are no juice, and a lemon with its rind is the whole one. */
const WITH_IT =
  /\b(?:in|with|incl(?:uding|udes)?\.?) (?:(?:its|their|own|natural|the) )*(?:juices?|rind|zest|peel)\b/gi;

const BY_HAND: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['pinch', 'dash', 'tsp']);

const GREEN: ReadonlySet<CountWord> = new Set<CountWord>(['bunch', 'sprig', 'handful', 'leaf', 'stem']);

interface Split {
  /** `or`, or all of them. */
  readonly kind: 'choice' | 'each';
  readonly foods: readonly Named[];
}

/** A name that joins several: taken apart where the book knows every one of them. */
function splitName(node: IngredientNode, name: TextNode, free: boolean, world: World): Split | undefined {
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
    const takes = own.kind === 'unknown' || (!isOwn && shared?.match.kind === 'food' && world.book.knows(shared.words));
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
function listedCounts(node: IngredientNode, name: TextNode, world: World): readonly NamedFood[] | undefined {
  const { amount, preparation } = node;
  if (amount?.kind !== 'measured' || amount.unit !== undefined || preparation === undefined) return undefined;
  if (!/(?:^|,\s*)and\s/i.test(preparation.text) || preparation.text.length > LONGEST_SAID) return undefined;
  const rest = piecesOf(preparation, /\s*(?:,\s*and\b|,|^\s*and\b)\s*/gi);
  if (rest.length > MOST_ON_A_LINE || !rest.every(({ text }) => world.book.knows(text))) return undefined;
  return [name, ...rest].map((one) => ({ name: one, called: one.text, match: world.book.find(one.text), free: false }));
}

/** `salt, sugar and lime juice to taste`: several without amounts, the commas between them. */
function listedFree(node: IngredientNode, name: TextNode, world: World): readonly NamedFood[] | undefined {
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
function behindCommas(
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
function seasonings(node: IngredientNode, world: World): readonly NamedFood[] {
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

/** What comes out of so many: `juice of 1 lemon`, `1 lemon, zest and juice`, `whites of 3 eggs`; several are one ingredient still. */
function takenOf(node: IngredientNode, name: TextNode, world: World): NamedFood | undefined {
  const { amount, preparation } = node;
  const takes = takesOf(node);
  const whole = amount?.kind === 'measured' && amount.unit === undefined;
  const said: readonly Take[] =
    takes?.map(({ text }) => takenBy(text) ?? { word: text.toLowerCase() }) ??
    (whole && preparation !== undefined ? takenBehind(preparation.text.replace(WITH_IT, '')) : []);
  const singular = wholeName(name.text, world);
  const found = said
    .filter((take) => take.gone !== true)
    .map((take) => {
      const called = `${singular} ${take.word}`;
      const known = world.book.knows(called);
      const match = world.book.find(take.eaten === true && !known ? name.text : called);
      return { called, match, known };
    });
  if (found.length === 0 || (node.takes === undefined && !found.every(({ known }) => known))) return undefined;
  const [only, ...more] = found;
  if (only === undefined) return undefined;
  if (more.length > 0)
    return {
      name,
      called: name.text,
      match: world.book.find(name.text),
      takes: found.map((f) => f.match),
      free: false,
    };
  return { name, called: takes === undefined ? name.text : only.called, match: only.match, free: false };
}

/** What the book calls one of them: `lemons` are lemon. */
function wholeName(name: string, world: World): string {
  const match = world.book.find(name);
  return match.kind === 'food' ? match.food.name : name;
}
