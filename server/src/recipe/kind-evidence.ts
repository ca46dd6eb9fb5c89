/**
 * Knows what kind a part plainly looks like, and what a kind that is written lacks.
 * Refuses to guess: a kind is named only where all its measures lie in the usual bands, its own signs are there, and no other kind fits.
 */

import { bookIdOf } from '../food/food.ts';
import { keptOn } from '../notation/kept.ts';
import type { Topic } from '../prose/topics.ts';
import { anyDoes, nameSpeaksOf, speaksOf } from './journey/deeds.ts';
import {
  BAKED,
  BEATEN,
  BOILED,
  CHURNED,
  COOKED,
  CREAMED,
  CRUST,
  CUT,
  dairy,
  FERMENTED,
  FLAT,
  FOLDED,
  gelatine,
  isRaised,
  isWhite,
  isYolk,
  LOAF,
  NO_SAUCE,
  PICKLED,
  ROLLED,
  RUBBED,
  RUBBED_OR_ROLLED,
  Seen,
  type Sign,
  type Signs,
  STIRRED,
  sweet,
  THICKENED,
} from './kind-seen.ts';
import { contentsOf } from './measures/contents.ts';
import type { Kind, MeasureName, Need } from './measures/kind.ts';
import { kindNamed, verdictOf } from './measures/kinds.ts';
import { measure } from './measures/measures.ts';
import { meets } from './measures/needs.ts';
import { isIncomplete } from './measures/part-measure.ts';
import type { Ingredient, Part } from './model.ts';
import { SWEET_SIGNS } from './sweet-signs.ts';

const LOOKS = keptOn<Part, Kind | null>();

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
  let only: Kind | undefined;
  for (const { kind, signs } of possibleKinds(ingredients)) {
    const { says = NO_SIGNS, silent = NO_SIGNS } = signs;
    if (!says.every((sign) => saysSo(part, sign)) || silent.some((sign) => saysSo(part, sign))) continue;
    if (only !== undefined) return undefined;
    only = kind;
  }
  return only;
}

/**
 * What the kind that a part looks like is, seeing what it is called: `Onion chutney` is no pickle. The kind of its name where its measures are usual
 * for that; undefined where they are not.
 */
export function plainKindCalled(part: Part, looks: Kind, name: string): Kind | undefined {
  const words = name.split(' ');
  const called = words.map((_, i) => kindNamed(words.slice(i).join(' '))).find((kind) => kind !== undefined);
  if (called === undefined || called.group === looks.group) return looks;
  return isUsual(called, part.head.ingredients) ? called : undefined;
}

const NO_SIGNS: readonly Sign[] = [];

interface PossibleKind {
  readonly kind: Kind;
  readonly signs: Signs;
}

const POSSIBLE = keptOn<readonly Ingredient[], readonly PossibleKind[]>();

/** The kinds that a list may be by its foods and their weights, whatever is done with them. */
function possibleKinds(ingredients: readonly Ingredient[]): readonly PossibleKind[] {
  let possible = POSSIBLE.get(ingredients);
  if (possible === undefined) {
    const seen = new Seen(ingredients);
    possible = SIGNS.flatMap((signs) => {
      const kind = signs.list(seen) ? kindNamed(signs.kind) : undefined;
      return kind !== undefined && isUsual(kind, ingredients) ? [{ kind, signs }] : [];
    });
    POSSIBLE.set(ingredients, possible);
  }
  return possible;
}

/** Whether a step does it, or a step or the part's name speaks of it. */
const saysSo = ({ steps, head }: Part, { done, topics = NO_TOPICS }: Sign): boolean =>
  (done !== undefined && anyDoes(steps, done)) ||
  (topics.length > 0 && (steps.some((step) => speaksOf(step, ...topics)) || nameSpeaksOf(head.name, ...topics)));

const LACKS = keptOn<Part, readonly Need[] | null>();

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
  if (kind?.needs === undefined || ingredients.length < 2 || isIncomplete(part)) return undefined;
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
    if (!SALT.has(held.measure) && worked.open === undefined) telling = true;
  }
  return telling;
}

const SALT: ReadonlySet<MeasureName> = new Set(['salt', 'salt share']);

const NO_TOPICS: readonly Topic[] = [];

const isRipeTea = ({ food }: Ingredient): boolean => food !== undefined && bookIdOf(food) === 'kombucha';
const isPotato = ({ food }: Ingredient): boolean => food !== undefined && POTATOES.has(bookIdOf(food) ?? '');
const isTomato = ({ food }: Ingredient): boolean => food !== undefined && TOMATOES.has(bookIdOf(food) ?? '');
const isCabbage = ({ food }: Ingredient): boolean => food !== undefined && CABBAGES.has(bookIdOf(food) ?? '');

const POTATOES: ReadonlySet<string> = new Set(['potato', 'boiled-potato']);
/** Of these with vinegar a salsa, a relish or a chutney is made. */
const TOMATOES: ReadonlySet<string> = new Set(['tomato', 'canned-tomato', 'crushed-tomato']);
const CABBAGES: ReadonlySet<string> = new Set(['cabbage', 'red-cabbage', 'savoy-cabbage']);

/** Common practice, no source. */
const SIGNS: readonly Signs[] = [
  ...SWEET_SIGNS,
  {
    kind: 'shortcrust',
    says: [RUBBED_OR_ROLLED],
    list: (s) => isPlainDough(s) && s.between('fat', 0.4, 0.7) && s.under('sugar', 0.06),
  },
  {
    kind: 'sweet paste',
    says: [CRUST],
    list: (s) => !isRaised(s) && s.between('sugar', 0.2, 0.5) && s.between('fat', 0.35, 0.62),
  },
  {
    kind: 'choux',
    list: (s) => s.between('egg', 1.2, 2.3) && s.between('fat', 0.45, 1) && s.under('sugar', 0.15) && !isRaised(s),
  },
  {
    kind: 'lean bread',
    says: [LOAF],
    silent: [FLAT],
    list: (s) => s.of('yeast') > 0 && s.under('fat', 0.03) && s.under('sugar', 0.03),
  },
  {
    kind: 'enriched bread',
    silent: [FLAT],
    list: (s) => s.of('yeast') > 0 && s.between('fat', 0.06, 0.6) && (s.of('egg') > 0 || s.between('sugar', 0.04, 0.3)),
  },
  {
    kind: 'pasta dough',
    says: [ROLLED],
    list: (s) => !isRaised(s) && s.of('egg') > 0.2 && s.under('fat', 0.15) && s.under('sugar', 0.01),
  },
  {
    kind: 'pound cake',
    says: [CREAMED],
    list: (s) => s.between('sugar', 0.85, 1.15) && s.between('fat', 0.68, 1.02) && s.between('egg', 0.8, 1.2),
  },
  {
    kind: 'sponge',
    says: [FOLDED],
    list: (s) => !isRaised(s) && s.between('egg', 1.2, 2.6) && s.between('sugar', 0.8, 1.2) && s.under('fat', 0.35),
  },
  {
    kind: 'scone',
    says: [RUBBED, CUT],
    list: (s) => s.between('leavening', 0.02, 0.08) && s.under('sugar', 0.3) && s.of('egg') < 0.12,
  },
  { kind: 'baked custard', says: [BAKED], silent: [CHURNED], list: (s) => isCustard(s) },
  { kind: 'stirred custard', says: [STIRRED], silent: [NO_SAUCE], list: (s) => isCustard(s) && s.where(isYolk) > 0 },
  {
    kind: 'pastry cream',
    list: (s) =>
      dairy(s) > 0.5 &&
      s.between('starch per dairy', 0.05, 0.11) &&
      s.between('yolk per dairy', 0.08, 0.4) &&
      sweet(s) > 0.05 &&
      s.of('fat', 'cheese', 'leavening') < 0.12,
  },
  { kind: 'set cream', list: (s) => gelatine(s) > 0 && dairy(s) > 0.6 && s.of('egg', 'cheese') === 0 },
  {
    kind: 'jelly',
    list: (s) =>
      gelatine(s) > 0 && s.of('milk', 'cream', 'dairy', 'egg', 'cheese', 'meat', 'stock') === 0 && sweet(s) > 0.02,
  },
  { kind: 'ice cream', says: [CHURNED], list: (s) => dairy(s) > 0.5 && sweet(s) > 0.05 },
  { kind: 'sorbet', says: [CHURNED], list: (s) => s.of('milk', 'cream', 'dairy', 'egg') === 0 && sweet(s) > 0.08 },
  { kind: 'ganache', list: (s) => s.of('chocolate') > 0.4 && s.of('chocolate', 'cream') > 0.9 },
  { kind: 'meringue', says: [BEATEN], list: (s) => s.where(isWhite) > 0.2 && s.where(isWhite) + s.of('sugar') > 0.97 },
  {
    kind: 'jam',
    says: [BOILED],
    silent: [CHURNED],
    list: (s) => s.of('fruit') > 0.4 && sweet(s) > 0.25 && s.of('fruit', 'sugar', 'juice') > 0.97,
  },
  {
    kind: 'lacto-ferment',
    says: [FERMENTED],
    list: (s) => s.of('vegetable', 'water', 'salt') > 0.95 && s.of('salt') > 0.015,
  },
  {
    kind: 'quick pickle',
    says: [PICKLED],
    silent: [THICKENED],
    list: (s) =>
      s.of('vinegar') > 0.12 &&
      s.of('vegetable') > 0.25 &&
      s.of('oil', 'meat', 'egg') === 0 &&
      s.of('fruit') === 0 &&
      s.where(isTomato) < 0.3,
  },
  {
    kind: 'chutney',
    says: [BOILED],
    list: (s) =>
      s.of('vinegar') > 0.08 &&
      sweet(s) > 0.1 &&
      s.of('fruit', 'dried fruit') > 0.2 &&
      s.of('fruit', 'dried fruit', 'vegetable') > 0.4 &&
      s.of('oil', 'fat', 'meat', 'egg') === 0,
  },
  {
    kind: 'brine',
    list: (s) =>
      s.of('water') > 0.6 &&
      s.of('salt') > 0.025 &&
      s.of('water', 'salt', 'sugar', 'syrup', 'spice', 'dried herb') > 0.96,
  },
  {
    kind: 'rub',
    list: (s) =>
      s.of('spice', 'dried herb', 'salt', 'sugar') > 0.97 && s.of('spice', 'dried herb') > 0.25 && s.of('salt') > 0.04,
  },
  {
    kind: 'yoghurt',
    says: [FERMENTED],
    list: (s) => s.of('milk', 'cream') > 0.7 && s.of('dairy') > 0.01 && s.of('milk', 'cream', 'dairy') > 0.97,
  },
  {
    kind: 'tea ferment',
    says: [FERMENTED],
    list: (s) => s.where(isRipeTea) > 0.04 && sweet(s) > 0.03 && s.of('water', 'drink') > 0.8,
  },
  {
    kind: 'fresh cheese',
    says: [COOKED],
    list: (s) =>
      s.of('milk') > 0.85 && s.of('vinegar', 'juice') > 0.01 && s.of('milk', 'vinegar', 'juice', 'salt') > 0.99,
  },
  {
    kind: 'risotto',
    says: [STIRRED],
    silent: [BAKED],
    list: (s) =>
      s.of('grain') > 0.12 && s.of('stock', 'water') > 0.4 && s.of('fat', 'oil') > 0.01 && s.of('cheese') > 0.02,
  },
  {
    kind: 'mash',
    silent: [BAKED],
    list: (s) =>
      s.where(isPotato) > 0.6 &&
      s.of('milk', 'cream') > 0.03 &&
      s.of('fat', 'cheese') > 0.01 &&
      s.of('stock', 'water', 'egg') === 0,
  },
  {
    kind: 'slaw',
    silent: [COOKED, BAKED, FERMENTED],
    list: (s) =>
      s.where(isCabbage) > 0.35 &&
      s.of('sauce', 'condiment', 'oil', 'cream', 'dairy') > 0.04 &&
      s.of('vinegar', 'juice', 'condiment') > 0.01,
  },
  {
    kind: 'mayonnaise',
    list: (s) =>
      s.of('oil') > 0.55 &&
      s.of('egg') > 0.02 &&
      s.of('egg', 'oil', 'vinegar', 'juice', 'condiment', 'salt', 'water') > 0.97,
  },
  {
    kind: 'vinaigrette',
    list: (s) =>
      s.of('oil') > 0.4 &&
      s.of('oil', 'vinegar', 'juice', 'condiment', 'salt', 'spice') > 0.97 &&
      s.of('vinegar', 'juice') > 0.08,
  },
  {
    kind: 'butter sauce',
    list: (s) => s.of('fat') > 0.6 && s.where(isYolk) > 0.06 && s.of('flour', 'sugar', 'starch') === 0,
  },
  {
    kind: 'roux sauce',
    says: [COOKED],
    list: (s) =>
      s.of('milk', 'stock', 'cream') > 0.7 &&
      s.between('thickener per liquid', 0.03, 0.12) &&
      s.of('fat') > 0.02 &&
      s.of('egg', 'sugar', 'leavening', 'yeast') === 0,
  },
];

const isPlainDough = (s: Seen): boolean => !isRaised(s) && s.of('egg') < 0.1 && s.of('cheese', 'nut', 'milk') < 0.03;

const isCustard = (s: Seen): boolean =>
  s.of('egg') > 0.08 &&
  dairy(s) > 0.4 &&
  sweet(s) > 0.03 &&
  s.of('egg', 'milk', 'cream', 'sugar', 'syrup', 'flavouring', 'salt', 'spice') > 0.97;
