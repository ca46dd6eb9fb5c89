/**
 * Knows what kind a part plainly looks like, and what a kind that is written lacks.
 * Refuses to guess: a kind is named only where all its measures lie in the usual bands, its own signs are there, and no other kind fits.
 */
import type { FoodClass } from '../food/food.ts';
import { contentsOf } from './contents.ts';
import type { Ingredient } from './ingredient.ts';
import { type Kind, kindNamed, verdictOf } from './kinds.ts';
import { isGelatine } from './measures/gelling.ts';
import { isStarter, whiteShare, yolkShare } from './measures/shares.ts';
import { type MeasureName, measure } from './measures.ts';
import { meets, type Need } from './needs.ts';
import type { Part } from './recipe.ts';

const LOOKS = new WeakMap<Part, Kind | null>();

/** The one kind the part plainly is; undefined where it already has one, or where it is not plain. */
export function plainKind(part: Part): Kind | undefined {
  let kind = LOOKS.get(part);
  if (kind === undefined) {
    kind = part.head.kindNode === undefined ? (lookAt(part) ?? null) : null;
    LOOKS.set(part, kind);
  }
  return kind ?? undefined;
}

/** The kind the ingredients look like, whatever is written. */
export function lookAt(part: Part): Kind | undefined {
  const { ingredients, massG } = part.head;
  if (ingredients.length < 2 || !massG.complete || massG.low <= 0) return undefined;
  if (contentsOf(part) !== ingredients) return undefined;
  if (ingredients.some((i) => i.food === undefined && !i.free)) return undefined;
  const seen = new Seen(part);
  let only: Kind | undefined;
  for (const [name, sign] of SIGNS) {
    if (!sign(seen)) continue;
    const kind = kindNamed(name);
    if (kind === undefined || !isUsual(kind, ingredients)) continue;
    if (only !== undefined) return undefined;
    only = kind;
  }
  return only;
}

const LACKS = new WeakMap<Part, readonly Need[] | null>();

/** What the part's kind is made of and the part has nothing of, `['white', 'egg']` for either; undefined where all is there, or some food is not known. */
export function lacking(part: Part): readonly Need[] | undefined {
  let lacks = LACKS.get(part);
  if (lacks === undefined) {
    lacks = missing(part) ?? null;
    LACKS.set(part, lacks);
  }
  return lacks ?? undefined;
}

function missing(part: Part): readonly Need[] | undefined {
  const { kind, ingredients } = part.head;
  if (kind?.needs === undefined || ingredients.length < 2) return undefined;
  const all = [...contentsOf(part), ...part.includes.flatMap((head) => head.ingredients)];
  if (all.some((i) => i.food === undefined)) return undefined;
  return kind.needs.find((row) => !row.some((need) => all.some(({ food }) => food !== undefined && meets(need, food))));
}

/** Every measure that says something lies in its usual band, and one of them is more than the salt. */
function isUsual(kind: Kind, ingredients: readonly Ingredient[]): boolean {
  let telling = false;
  for (const held of kind.measures) {
    const worked = measure(held.measure, ingredients);
    if (!worked.known) continue;
    if (verdictOf(worked.value.low, worked.value.high, held) !== 'ok') return false;
    if (!SALT.has(held.measure)) telling = true;
  }
  return telling;
}

const SALT: ReadonlySet<MeasureName> = new Set(['salt', 'salt share']);

/** A part as its signs are looked for in it: shares of its weight, measures, words. */
class Seen {
  private readonly part: Part;
  private readonly total: number;
  private words: string | undefined;

  constructor(part: Part) {
    this.part = part;
    this.total = part.head.ingredients.reduce((sum, i) => sum + grams(i), 0);
  }

  /** The classes' share of the weight. */
  of(...classes: FoodClass[]): number {
    return this.where((i) => i.food !== undefined && classes.includes(i.food.class));
  }

  where(is: (i: Ingredient) => boolean): number {
    return this.part.head.ingredients.reduce((sum, i) => sum + (is(i) ? grams(i) : 0), 0) / this.total;
  }

  /** Whether the whole range of the measure lies between. */
  between(name: MeasureName, low: number, high: number): boolean {
    const worked = measure(name, this.part.head.ingredients);
    return worked.known && worked.value.low >= low && worked.value.high <= high;
  }

  /** The measure is not above; nothing of it is not above either. */
  under(name: MeasureName, high: number): boolean {
    const worked = measure(name, this.part.head.ingredients);
    return !worked.known || worked.value.high <= high;
  }

  /** Whether the steps, or the part's name, have the word. */
  says(pattern: RegExp): boolean {
    this.words ??= [
      this.part.head.name.toLowerCase(),
      ...this.part.steps.flatMap((s) => s.sentence.items.flatMap((i) => (i.kind === 'word' ? [i.word] : []))),
    ].join(' ');
    return pattern.test(this.words);
  }
}

const grams = (i: Ingredient): number => (i.weighed.known ? (i.weighed.grams.low + i.weighed.grams.high) / 2 : 0);
const isYolk = ({ food }: Ingredient): boolean => food !== undefined && yolkShare(food) === 1;
const isWhite = ({ food }: Ingredient): boolean => food !== undefined && whiteShare(food) > 0;
const isRaised = (s: Seen): boolean =>
  s.of('leavening', 'yeast') > 0 || s.where((i) => i.food !== undefined && isStarter(i.food)) > 0;
const gelatine = (s: Seen): number => s.where((i) => i.food !== undefined && isGelatine(i.food));
const dairy = (s: Seen): number => s.of('milk', 'cream', 'dairy');
const sweet = (s: Seen): number => s.of('sugar', 'syrup');

/** What sets each kind apart from its neighbours, beside its measures. Common practice, no source. */
const SIGNS: readonly (readonly [string, (s: Seen) => boolean])[] = [
  [
    'shortcrust',
    (s) => isPlainDough(s) && s.between('fat', 0.4, 0.7) && s.under('sugar', 0.06) && s.says(/\b(?:rub|roll|line)/),
  ],
  [
    'sweet paste',
    (s) =>
      !isRaised(s) && s.between('sugar', 0.2, 0.5) && s.says(/\b(?:line|tart|crust)\b/) && s.between('fat', 0.35, 0.62),
  ],
  ['choux', (s) => s.between('egg', 1.2, 2.3) && s.between('fat', 0.45, 1) && s.under('sugar', 0.15) && !isRaised(s)],
  [
    'lean bread',
    (s) =>
      s.of('yeast') > 0 &&
      s.under('fat', 0.03) &&
      s.under('sugar', 0.03) &&
      s.says(/\b(?:loaf|loaves)\b/) &&
      !s.says(FLAT),
  ],
  [
    'enriched bread',
    (s) =>
      s.of('yeast') > 0 &&
      s.between('fat', 0.06, 0.6) &&
      (s.of('egg') > 0 || s.between('sugar', 0.04, 0.3)) &&
      !s.says(FLAT),
  ],
  [
    'pasta dough',
    (s) => !isRaised(s) && s.of('egg') > 0.2 && s.under('fat', 0.15) && s.under('sugar', 0.01) && s.says(/\broll/),
  ],
  [
    'pound cake',
    (s) =>
      s.between('sugar', 0.85, 1.15) && s.between('fat', 0.68, 1.02) && s.between('egg', 0.8, 1.2) && s.says(/\bcream/),
  ],
  [
    'sponge',
    (s) =>
      !isRaised(s) &&
      s.between('egg', 1.2, 2.6) &&
      s.between('sugar', 0.8, 1.2) &&
      s.under('fat', 0.35) &&
      s.says(/\bfold/),
  ],
  [
    'scone',
    (s) =>
      s.between('leavening', 0.02, 0.08) &&
      s.says(/\brub/) &&
      s.says(/\bcut\b/) &&
      s.under('sugar', 0.3) &&
      s.of('egg') < 0.12,
  ],
  ['baked custard', (s) => isCustard(s) && s.says(/\bbake\b/) && !s.says(/\bchurn/)],
  [
    'stirred custard',
    (s) => isCustard(s) && s.says(/\b(?:stir|thicken)/) && !s.says(/\b(?:bake|churn|freeze)\b/) && s.where(isYolk) > 0,
  ],
  [
    'pastry cream',
    (s) =>
      s.between('starch per dairy', 0.05, 0.11) &&
      s.between('yolk per dairy', 0.08, 0.4) &&
      dairy(s) > 0.5 &&
      sweet(s) > 0.05 &&
      s.of('fat', 'cheese', 'leavening') < 0.12,
  ],
  ['set cream', (s) => gelatine(s) > 0 && dairy(s) > 0.6 && s.of('egg', 'cheese') === 0],
  [
    'jelly',
    (s) => gelatine(s) > 0 && s.of('milk', 'cream', 'dairy', 'egg', 'cheese', 'meat', 'stock') === 0 && sweet(s) > 0.02,
  ],
  ['ice cream', (s) => s.says(/\bchurn/) && dairy(s) > 0.5 && sweet(s) > 0.05],
  ['sorbet', (s) => s.says(/\bchurn/) && s.of('milk', 'cream', 'dairy', 'egg') === 0 && sweet(s) > 0.08],
  ['ganache', (s) => s.of('chocolate') > 0.4 && s.of('chocolate', 'cream') > 0.9],
  [
    'meringue',
    (s) => s.where(isWhite) > 0.2 && s.where(isWhite) + s.of('sugar') > 0.97 && s.says(/\b(?:whisk|whip|beat)/),
  ],
  [
    'jam',
    (s) =>
      s.of('fruit') > 0.4 &&
      sweet(s) > 0.25 &&
      s.of('fruit', 'sugar', 'juice') > 0.97 &&
      s.says(/\bboil/) &&
      !s.says(/\bchurn/),
  ],
  ['lacto-ferment', (s) => s.of('vegetable', 'water', 'salt') > 0.95 && s.of('salt') > 0.015 && s.says(/\bferment/)],
  [
    'quick pickle',
    (s) =>
      s.of('vinegar') > 0.12 &&
      s.of('vegetable') > 0.25 &&
      s.of('oil', 'meat', 'egg') === 0 &&
      s.says(/\b(?:pickle|jar|pour)/),
  ],
  [
    'mayonnaise',
    (s) =>
      s.of('oil') > 0.55 &&
      s.of('egg') > 0.02 &&
      s.of('egg', 'oil', 'vinegar', 'juice', 'condiment', 'salt', 'water') > 0.97,
  ],
  [
    'vinaigrette',
    (s) =>
      s.of('oil') > 0.4 &&
      s.of('oil', 'vinegar', 'juice', 'condiment', 'salt', 'spice') > 0.97 &&
      s.of('vinegar', 'juice') > 0.08,
  ],
  ['butter sauce', (s) => s.of('fat') > 0.6 && s.where(isYolk) > 0.06 && s.of('flour', 'sugar', 'starch') === 0],
  [
    'roux sauce',
    (s) =>
      s.between('thickener per liquid', 0.03, 0.12) &&
      s.of('milk', 'stock', 'cream') > 0.7 &&
      s.of('fat') > 0.02 &&
      s.of('egg', 'sugar', 'leavening', 'yeast') === 0 &&
      s.says(/\b(?:simmer|cook|boil|thicken)/),
  ],
];

const FLAT = /\b(?:pizza|flatbread|flatbreads|naan|pitta|pita|focaccia|pretzel|bagel|doughnut|griddle|fry)\b/;

const isPlainDough = (s: Seen): boolean => !isRaised(s) && s.of('egg') < 0.1 && s.of('cheese', 'nut', 'milk') < 0.03;

const isCustard = (s: Seen): boolean =>
  s.of('egg') > 0.08 &&
  dairy(s) > 0.4 &&
  sweet(s) > 0.03 &&
  s.of('egg', 'milk', 'cream', 'sugar', 'syrup', 'flavouring', 'salt', 'spice') > 0.97;
