/**
 * Knows which tested recipe for jars holds the least acid over vegetables such as these, from `data/tested-preserves.json`.
 * Refuses to know how the jar is kept. Vegetables that none of them has, and more of one than it has, have none.
 */
import data from '../../../data/tested-preserves.json' with { type: 'json' };
import { bookIdOf } from '../../food/food.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient } from '../../recipe/model.ts';

export interface TestedRecipe {
  readonly name: string;
  /** Of the guide. */
  readonly page: string;
  /** Added acid in all but the sugar, as a share. */
  readonly acid: number;
}

export const TESTED_SOURCE = data.source;

interface Row extends TestedRecipe {
  /** The most that each group may be of the vegetables. */
  readonly of: ReadonlyMap<string, number>;
  readonly oil: number;
}

const GROUP_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(data.groups).flatMap(([group, foods]) => foods.map((food) => [food, group] as const)),
);

const ROWS: readonly Row[] = data.recipes
  .map(({ name, page, acid, of, ...more }) => ({
    name,
    page,
    acid: acid / 100,
    of: new Map(Object.entries(of)),
    oil: 'oil' in more ? more.oil : 0,
  }))
  .sort((a, b) => a.acid - b.acid);

/** How much of a food lies in the jar. */
export interface Weighed {
  readonly ingredient: Ingredient;
  readonly grams: number;
}

/** The one with the least acid of those that have these vegetables, none of them more of it than they do. */
export function testedFor(vegetables: readonly Weighed[], oil: number): TestedRecipe | undefined {
  const all = vegetables.reduce((sum, { grams }) => sum + grams, 0);
  if (!(all > 0)) return undefined;
  const shares = new Map<string, number>();
  for (const { ingredient, grams } of vegetables) {
    const food = foodOf(ingredient);
    const group = (food && GROUP_OF.get(bookIdOf(food))) ?? OTHER;
    shares.set(group, (shares.get(group) ?? 0) + grams / all);
  }
  return ROWS.find((row) => {
    let others = 0;
    for (const [group, share] of shares) {
      const most = row.of.get(group);
      if (most === undefined) others += share;
      else if (share > most) return false;
    }
    return others <= data.others && oil >= row.oil;
  });
}

const OTHER = '';
