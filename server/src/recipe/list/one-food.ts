/**
 * Knows which one food a name of the list is, by the words beside it, and what is taken out of a whole one.
 * Refuses to know amounts.
 */
import type { FoodMatch } from '../../food/food.ts';
import { type Language, meantIn } from '../../food/language.ts';
import type { CountWord } from '../../measure/count-words.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import { takesOf } from '../../notation/item-amounts.ts';
import { type Take, takenBehind, takenBy } from '../../notation/takes.ts';
import type { IngredientNode, TextNode } from '../../notation/tree.ts';
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

export function oneFood(node: IngredientNode, name: TextNode, world: World): Named & { readonly called: string } {
  const match = findFood(node, name.text, node.preparation?.text, world);
  return { name, called: name.text, match: match.kind === 'unknown' ? (glossed(node, world) ?? match) : match };
}

/** `sasami (chicken tenderloin)`: what nobody knows by its name is what the brackets say, where all of that names one food. */
function glossed({ note }: IngredientNode, { book }: World): FoodMatch | undefined {
  const said = note === undefined ? undefined : book.find(note.text);
  return said?.kind === 'food' && said.unread === undefined ? said : undefined;
}

/** The food of a name, with a preparation that may change it (`plums, dried`). */
export function findFood(node: IngredientNode, name: string, preparation: string | undefined, world: World): FoodMatch {
  const narrowing = preparation === undefined ? '' : narrowingIn(preparation);
  // A strength may stand in brackets too: `vinegar (3 % acidity)`, and alone behind a comma: `chocolate, 70 %`.
  const strength = PER_CENT.test(node.note?.text ?? '') ? (node.note?.text ?? '') : (shareBeside(node) ?? '');
  const found = world.book.find([name, narrowing, strength].filter((words) => words !== '').join(', '));
  const match = found.kind === 'food' ? asSour(found, node, name, world) : found;
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
  if (match.kind === 'ambiguous') {
    const language = languageOf(world);
    const meant = language && meantIn(language, match.foods, unit !== undefined && SPOONS.has(unit));
    if (meant !== undefined) return { kind: 'food', food: meant };
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

/** What the house says, else what goes with its measures; none where its spoons and cups are everybody's. */
const languageOf = ({ language, measures }: World): Language | undefined =>
  language ?? (measures === 'british' || measures === 'imperial' ? 'british' : undefined);

const SPOONS: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['tsp', 'dessertspoon', 'tbsp']);

/** `chocolate, 70 %`. */
export function shareBeside({ beside }: IngredientNode): string | undefined {
  const share = beside?.find(({ sign, amount }) => sign === ',' && amount.quantity.unit === '%');
  return share && `${share.amount.quantity.low} %`;
}

const PER_CENT = /%|per ?cent/i;

/** `vinegar (5 %)`. */
export const shareInBrackets = ({ beside }: IngredientNode): number | undefined =>
  beside?.find(({ sign, amount }) => sign === '(' && amount.quantity.unit === '%')?.amount.quantity.low;

/** The vinegar of the strength in brackets; a number that no vinegar has is a baker's percentage. */
function asSour(found: FoodMatch & { kind: 'food' }, node: IngredientNode, name: string, world: World): FoodMatch {
  const share = shareInBrackets(node);
  if (found.food.class !== 'vinegar' || share === undefined || share > STRONGEST) return found;
  return world.book.find(`${name}, ${share} %`);
}

/** Per cent of acid in the essence that is sold for thinning (common practice, no source). */
const STRONGEST = 25;

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

/** What comes out of so many: `juice of 1 lemon`, `1 lemon, zest and juice`, `whites of 3 eggs`; several are one ingredient still. */
export function takenOf(node: IngredientNode, name: TextNode, world: World): NamedFood | undefined {
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
