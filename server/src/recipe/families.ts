/**
 * Knows which foods stand together where food is kept, jarred or cooked, from `data/food-families.tsv`, and what a line says of a food as it is bought.
 * Refuses to know what is safe.
 */
import familiesText from '../../data/food-families.tsv';
import statesText from '../../data/listed-states.tsv';
import fruit from '../../data/low-acid-fruit.json' with { type: 'json' };
import type { Food } from '../food/food.ts';
import { bookIdOf } from '../food/food.ts';
import { keptOn } from '../notation/kept.ts';
import type { Ingredient } from './ingredient.ts';
import { foodOf } from './stand-in.ts';

export const FAMILIES = [
  'flesh',
  'egg',
  'mince',
  'animal',
  'cooks to spoil',
  'spoils when cut',
  'low acid',
  'low acid fruit',
  'tomato',
  'from the soil',
  'fat',
  'oil',
  'sugar',
  'flour',
  'dry',
  'juicy',
  'liquid',
  'water',
  'vinegar',
  'sour fruit',
  'plant',
  'yeast',
  'leavening',
  'culture',
  'milk',
  'curing',
  'wild',
  'ratite',
  'raw flour',
] as const;
export type Family = (typeof FAMILIES)[number];

interface Row {
  readonly classes: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  /** Nouns of foods that the book does not have. */
  readonly words: ReadonlySet<string>;
}

/** The rows of a table behind its remark and heading, as cells. */
const rowsIn = (text: string): readonly (readonly string[])[] =>
  text
    .split('\n')
    .slice(2)
    .filter((line) => line !== '')
    .map((line) => line.split('\t'));

const setOf = (cell = ''): ReadonlySet<string> => new Set(cell.split(';').filter((each) => each !== ''));

let families: ReadonlyMap<string, Row> | undefined;

const NOTHING: ReadonlySet<string> = new Set();
const idOf = (name: string): string => name.replaceAll(' ', '-');

const rowOf = (family: Family): Row | undefined => {
  families ??= new Map(
    rowsIn(familiesText).map(([name = '', classes, foods, words]) => [
      name,
      { classes: setOf(classes), foods: setOf(foods), words: setOf(words) },
    ]),
  ).set('low acid fruit', { classes: NOTHING, foods: new Set(fruit.foods.map(idOf)), words: NOTHING });
  return families.get(family);
};

/** Whether a food is of a family. */
export function isOf(food: Food | undefined, family: Family): boolean {
  const row = rowOf(family);
  return food !== undefined && row !== undefined && (row.classes.has(food.class) || row.foods.has(bookIdOf(food)));
}

const KEPT = keptOn<Ingredient, ReadonlySet<Family>>();

/** Whether an ingredient is, by its food or, where nobody knows that, by its noun. */
export function isIn(ingredient: Ingredient, family: Family): boolean {
  let kept = KEPT.get(ingredient);
  if (kept === undefined) {
    const food = foodOf(ingredient);
    const nouns = ingredient.name.toLowerCase().split(' ');
    kept = new Set(
      FAMILIES.filter((each) => isOf(food, each) || nouns.some((noun) => rowOf(each)?.words.has(noun) === true)),
    );
    KEPT.set(ingredient, kept);
  }
  return kept.has(family);
}

export type ListedState =
  | 'cooked'
  | 'treated'
  | 'cured'
  | 'frozen'
  | 'for raw'
  | 'minced'
  | 'dried'
  | 'wild'
  | 'pierced'
  | 'raw';

let words: ReadonlyMap<string, ListedState> | undefined;

const STATES = keptOn<Ingredient, ReadonlySet<ListedState>>();
const NONE: ReadonlySet<ListedState> = new Set();

/** What the line says of the food as it is bought or made ready: `frozen turkey`, `rice, cooked`. */
export function listedAs(ingredient: Ingredient): ReadonlySet<ListedState> {
  let states = STATES.get(ingredient);
  if (states === undefined) {
    words ??= new Map(
      rowsIn(statesText).flatMap(([state = '', word = '', also]) =>
        [word, ...setOf(also)].map((each) => [each, state as ListedState] as const),
      ),
    );
    const { node } = ingredient;
    const said = [node.name?.text, node.preparation?.text, node.note?.text].join(' ').toLowerCase();
    let found: Set<ListedState> | undefined;
    for (const [word] of said.matchAll(/[a-z]+(?:-[a-z]+)*/g)) {
      const state = words.get(word);
      if (state !== undefined) {
        found ??= new Set();
        found.add(state);
      }
    }
    states = found ?? NONE;
    STATES.set(ingredient, states);
  }
  return states;
}
