/**
 * Knows by which foods one is reckoned that has no row of its own in a public table: two that it could be mixed of, several that it lies between
 * (`data/label/like.tsv`), or all of its class.
 * Refuses to liken what is of no class.
 */
import likeText from '../../data/label/like.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { bookIdOf, type Composition, type Food, type FoodClass } from './food.ts';
import { type FoodRow, readFoods } from './tables.ts';

export interface Likeness {
  /** `mixed` of two foods, `between` some, one of its `class`, or of what has nothing. */
  readonly how: 'mixed' | 'between' | 'class' | 'nothing';
  readonly foods: readonly Food[];
}

/** By the food: the foods of its row, and whether `+` mixes them. */
const ROWS = once(
  () =>
    new Map(
      rowsIn(likeText).flatMap(([ids, like = '']) =>
        wordsIn(ids).map((id) => [id, { mixes: like.includes('+'), like: like.split(/[+;]/) }] as const),
      ),
    ),
);

const BOOK = once(() => {
  const byId = new Map<string, FoodRow>();
  const byClass = new Map<FoodClass, FoodRow[]>();
  for (const row of readFoods()) {
    byId.set(row.id, row);
    byClass.set(row.class, [...(byClass.get(row.class) ?? []), row]);
  }
  return { byId, byClass };
});

/** How the food is reckoned; undefined where nothing is like it. */
export function likenessOf(food: Food): Likeness | undefined {
  const { byId, byClass } = BOOK();
  const row = ROWS().get(bookIdOf(food));
  if (row !== undefined)
    return {
      how: row.mixes ? 'mixed' : row.like[0] === '' ? 'nothing' : 'between',
      foods: row.like.flatMap((id) => byId.get(id)?.read() ?? []),
    };
  const foods = food.class === 'other' ? [] : (byClass.get(food.class) ?? []).map((each) => each.read());
  return foods.length === 0 ? undefined : { how: 'class', foods };
}

/** What 100 g hold at least and at most, by the foods that it is like; undefined where none of them says. */
export function likened(food: Food, of: (food: Food) => number | undefined): Range | undefined {
  const like = likenessOf(food);
  if (like === undefined) return undefined;
  if (like.how === 'nothing') return NOTHING;
  const known = like.foods.flatMap((each) => of(each) ?? []);
  const [first, second] = known;
  if (first === undefined) return undefined;
  if (like.how !== 'mixed') return { low: Math.min(...known), high: Math.max(...known) };
  const share = shareOfSecond(food, like.foods);
  if (second === undefined || share === undefined) return undefined;
  const mixed = first + (second - first) * share;
  return { low: mixed, high: mixed };
}

/** How much of the second of two foods makes, with the first, the food's own figures: by the one of them that sets the two furthest apart. */
function shareOfSecond({ per100 }: Food, [first, second]: readonly Food[]): number | undefined {
  if (first === undefined || second === undefined) return undefined;
  let [furthest, share]: [number, number | undefined] = [0, undefined];
  for (const component of TOLD_BY) {
    const [own, low, high] = [per100[component], first.per100[component], second.per100[component]];
    if (own === undefined || low === undefined || high === undefined || Math.abs(high - low) <= furthest) continue;
    furthest = Math.abs(high - low);
    share = Math.min(1, Math.max(0, (own - low) / (high - low)));
  }
  return share;
}

const NOTHING: Range = { low: 0, high: 0 };
const TOLD_BY: readonly (keyof Composition)[] = ['water', 'fat', 'protein', 'carbohydrate'];
