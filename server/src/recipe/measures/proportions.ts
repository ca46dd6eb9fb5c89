/**
 * Knows the shares that no recipe goes past, from `data/proportions.tsv`, and what of a list counts for each.
 * Refuses to know which of them hold for a part.
 */
import proportionsText from '../../../data/proportions.tsv';
import { bookIdOf } from '../../food/food.ts';
import { once } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import { type Family, isFamily, isIn } from '../list/families.ts';
import type { Ingredient } from '../model.ts';
import { wordsOf } from '../words.ts';
import { MEASURES } from './definitions.ts';
import type { MeasureName } from './kind.ts';

/**
 * What a part must be. `any`: of a kind, too. `dish`: made of foods that dishes are made of. `flour`: flour is a good part of it; `sweet bake`: sugar as well; `sweetened`: some
 * flour, and much sugar. `flesh`: meat or
 * fish is. `absorbed`: what it is held against stays in its liquid. `liquid`: most of it is liquid, without meat or flour of its own. `yeasted`: flour
 * and yeast. `kneaded`, `yeast dough`: by the steps. `leavened`, `raised`: powder or soda, or yeast, lifts some flour. `bound`: much flour, and something
 * wet. `custard`: milk with some egg, and nothing else that sets it. `set`: nothing but a gelling agent sets it. `soup`: the only part, and no step pours in what is on no list.
 */
const GUARDS = [
  'any',
  'dish',
  'flour',
  'sweet bake',
  'sweetened',
  'flesh',
  'absorbed',
  'liquid',
  'kneaded',
  'yeasted',
  'yeast dough',
  'leavened',
  'raised',
  'bound',
  'custard',
  'set',
  'braise',
  'soup',
] as const;
export type Guard = (typeof GUARDS)[number];

const OF_KINDS: ReadonlySet<string> = new Set<Guard>(['any', 'flesh', 'braise', 'sweet bake', 'soup']);

export interface Proportion {
  /** Of what; a measure has its own sums. */
  readonly top: Foods | MeasureName;
  /** The whole where absent. */
  readonly bottom?: Foods;
  readonly least?: number;
  readonly most?: number;
  readonly where: Guard;
  /** What it must be says enough, whatever its kind. */
  readonly isOfKinds: boolean;
  /** Words of the title: one of these where there are some, and none of those. */
  readonly title: ReadonlySet<string>;
  readonly not: ReadonlySet<string>;
}

/** Foods by id, class and family. */
export interface Foods {
  readonly ids: ReadonlySet<string>;
  readonly classes: ReadonlySet<string>;
  readonly families: readonly Family[];
}

/** What a list of foods may be the top of, in the order of the table; a measure may be of any. */
export function proportionsOf(list: readonly Ingredient[]): readonly Proportion[] {
  const is = new Set(list.flatMap(toppedBy));
  return proportions().filter((row) => typeof row.top === 'string' || is.has(row));
}

const TOPPED_BY = keptOn<Ingredient, readonly Proportion[]>();

function toppedBy(ingredient: Ingredient): readonly Proportion[] {
  let kept = TOPPED_BY.get(ingredient);
  if (kept === undefined) {
    kept = proportions().filter(({ top }) => typeof top !== 'string' && isAmong(top, ingredient));
    TOPPED_BY.set(ingredient, kept);
  }
  return kept;
}

export const isAmong = ({ ids, classes, families }: Foods, ingredient: Ingredient): boolean => {
  const { food } = ingredient;
  if (food === undefined) return false;
  return ids.has(bookIdOf(food) ?? '') || classes.has(food.class) || families.some((each) => isIn(ingredient, each));
};

const proportions = once((): readonly Proportion[] =>
  rowsIn(proportionsText).map(([food = '', of, least, most, where = '', title, not]): Proportion => {
    const measure = food.slice(1);
    return {
      top: isMeasure(measure) && food.startsWith('=') ? measure : foodsOf(food),
      ...(of !== '' && of !== 'whole' && { bottom: foodsOf(of) }),
      ...(least !== '' && { least: Number(least) }),
      ...(most !== '' && { most: Number(most) }),
      where: GUARDS.find((each) => each === where) ?? 'dish',
      isOfKinds: OF_KINDS.has(where),
      title: wordsOfCell(title),
      not: wordsOfCell(not),
    };
  }),
);

const isMeasure = (name: string): name is MeasureName => name in MEASURES;

const wordsOfCell = (cell: string | undefined): ReadonlySet<string> => new Set(wordsIn(cell).flatMap(wordsOf));

export function foodsOf(cell: string | undefined): Foods {
  const words = wordsIn(cell);
  const after = (sign: string): string[] => words.filter((w) => w.startsWith(sign)).map((w) => w.slice(1));
  return { ids: new Set(words), classes: new Set(after('~')), families: after('@').filter(isFamily) };
}

/** Grams of what is among them, over a list. */
export function gramsAmong(list: readonly Ingredient[], is: (ingredient: Ingredient) => boolean): Range {
  let [low, high] = [0, 0];
  for (const each of list) {
    if (!each.weighed.known || !is(each)) continue;
    low += each.optional ? 0 : each.weighed.grams.low;
    high += each.weighed.grams.high;
  }
  return { low, high };
}
