/**
 * Knows which foods stand together where food is kept, jarred or cooked, from `data/food-families.tsv`, and what a line says of a food as it is bought.
 * Refuses to know what is safe.
 */

import familiesText from '../../../data/food-families.tsv';
import statesText from '../../../data/listed-states.tsv';
import fruit from '../../../data/low-acid-fruit.json' with { type: 'json' };
import { bookIdOf, type Food } from '../../food/food.ts';
import { once, onceByText } from '../../measure/once.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Ingredient } from '../model.ts';
import { foodOf } from './stand-in.ts';

export const FAMILIES = [
  'flesh',
  /** Steaks and roasts of which the inside may be rare: by advisory, where they are whole. */
  'eaten rare',
  'egg',
  'mince',
  'animal',
  'cooks to spoil',
  'spoils when cut',
  'spoils raw',
  'steeped',
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
  'ice',
  'vinegar',
  /** It boils up where water is poured on it. */
  'caustic',
  'sour fruit',
  'plant',
  'yeast',
  'leavening',
  'rennet',
  'culture',
  'milk',
  'curing',
  'wild',
  'ratite',
  'raw flour',
  'bacon',
  'sausage',
  'organ',
  'potato',
  'rice',
  'pasta',
  'lentil',
  'pulse',
  'tender shellfish',
  'tough meat',
] as const;
export type Family = (typeof FAMILIES)[number];

/** Whether a cell of a table names one. */
export const isFamily = (name: string): name is Family => FAMILIES.some((each) => each === name);

interface Row {
  readonly classes: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  /** Nouns of foods that the book does not have. */
  readonly words: ReadonlySet<string>;
}

const setOf = (cell: string | undefined): ReadonlySet<string> => new Set(wordsIn(cell));

const NOTHING: ReadonlySet<string> = new Set();
const idOf = (name: string): string => name.replaceAll(' ', '-');

const ROWS = once(
  (): ReadonlyMap<string, Row> =>
    new Map(
      rowsIn(familiesText).map(([name = '', classes, foods, words]): [string, Row] => [
        name,
        { classes: setOf(classes), foods: setOf(foods), words: setOf(words) },
      ]),
    ).set('low acid fruit', { classes: NOTHING, foods: new Set(fruit.foods.map(idOf)), words: NOTHING }),
);

const rowOf = (family: Family): Row | undefined => ROWS().get(family);

const NONE_OF: ReadonlySet<Family> = new Set();
const OF_FOOD = keptOn<Food, ReadonlySet<Family>>();

/** All that a food is of. */
export function familiesOf(food: Food | undefined): ReadonlySet<Family> {
  if (food === undefined) return NONE_OF;
  let kept = OF_FOOD.get(food);
  if (kept === undefined) {
    const id = bookIdOf(food);
    const of = FAMILIES.filter((each) => rowOf(each)?.classes.has(food.class) || rowOf(each)?.foods.has(id));
    kept = of.length === 0 ? NONE_OF : new Set(of);
    OF_FOOD.set(food, kept);
  }
  return kept;
}

/** Whether a food is of a family. */
export const isOf = (food: Food | undefined, family: Family): boolean => familiesOf(food).has(family);

const BY_NOUN = once((): ReadonlyMap<string, readonly Family[]> => {
  const made = new Map<string, Family[]>();
  for (const family of FAMILIES)
    for (const word of rowOf(family)?.words ?? NOTHING) {
      const those = made.get(word);
      if (those === undefined) made.set(word, [family]);
      else those.push(family);
    }
  return made;
});

const KEPT = keptOn<Ingredient, ReadonlySet<Family>>();

/** All that an ingredient is of, by its food or, where nobody knows that, by its noun. */
export function familiesIn(ingredient: Ingredient): ReadonlySet<Family> {
  let kept = KEPT.get(ingredient);
  if (kept === undefined) {
    kept = familiesOf(foodOf(ingredient));
    let before = '';
    for (const noun of ingredient.name.toLowerCase().split(' ')) {
      const more = BY_NOUN().get(noun) ?? BY_NOUN().get(`${before} ${noun}`);
      before = noun;
      if (more !== undefined) kept = new Set([...kept, ...more]);
    }
    KEPT.set(ingredient, kept);
  }
  return kept;
}

/** Whether an ingredient is of a family. */
export const isIn = (ingredient: Ingredient, family: Family): boolean => familiesIn(ingredient).has(family);

export type ListedState =
  | 'cooked'
  | 'treated'
  | 'cured'
  | 'frozen'
  | 'for raw'
  | 'minced'
  | 'chopped'
  | 'dried'
  | 'wild'
  | 'pierced'
  | 'raw'
  | 'thawed'
  | 'soaked'
  /** What is dried then is dry outside. */
  | 'washed'
  /** Milk that nobody has heated. */
  | 'from the animal';

const STATES = keptOn<Ingredient, ReadonlySet<ListedState>>();
const NONE: ReadonlySet<ListedState> = new Set();

const BEHIND = keptOn<Ingredient, ReadonlySet<ListedState>>();

/** The same of what stands behind the name alone: `milk, still warm from the cow`, which `cow's milk` is not. */
export function listedBehind(ingredient: Ingredient): ReadonlySet<ListedState> {
  let states = BEHIND.get(ingredient);
  if (states === undefined) {
    const { name, preparation, note } = ingredient.node;
    states = statesIn([behindFrom(name?.text ?? ''), preparation?.text, note?.text].join(' '));
    BEHIND.set(ingredient, states);
  }
  return states;
}

/** `Milk straight from the cow` */
function behindFrom(name: string): string {
  const at = name.indexOf(' from ');
  return at < 0 ? '' : name.slice(at);
}

/** What the line says of the food as it is bought or made ready: `frozen turkey`, `rice, cooked`. */
export function listedAs(ingredient: Ingredient): ReadonlySet<ListedState> {
  let states = STATES.get(ingredient);
  if (states === undefined) {
    const { node } = ingredient;
    states = statesIn([node.name?.text, node.preparation?.text, node.note?.text].join(' '));
    STATES.set(ingredient, states);
  }
  return states;
}

/** Lists of a folder say the same again and again. */
const MOST_SAID = 4096;
/** Latin, all that a state is written in: a pattern for the letters of all scripts is dear at a start. */
const WORDS = /[a-zß-öø-ſ]+(?:-[a-zß-öø-ſ]+)*|,/g;
const WORDS_OF = once(
  (): ReadonlyMap<string, ListedState> =>
    new Map(
      rowsIn(statesText).flatMap(([state = '', word = '', also]) =>
        [word, ...setOf(also)].map((each) => [each, state as ListedState] as const),
      ),
    ),
);

/** What a text says of a food, whichever. */
export const statesIn = onceByText(statesOf, { texts: MOST_SAID });

/** Right behind these it is not so; behind the others up to the next comma: `never needled or tenderised`. */
const PREFIXES: ReadonlySet<string> = new Set(['un', 'non']);
const DENIALS: ReadonlySet<string> = new Set(['not', 'never', 'nor', 'neither']);

function statesOf(text: string): ReadonlySet<ListedState> {
  const words = WORDS_OF();
  let found: Set<ListedState> | undefined;
  let before = '';
  let isDeniedOn = false;
  for (const [word] of text.toLowerCase().matchAll(WORDS)) {
    isDeniedOn = word !== ',' && (isDeniedOn || DENIALS.has(word));
    const state = words.get(word) ?? words.get(`${before} ${word}`);
    const isDenied = isDeniedOn || PREFIXES.has(before);
    before = word;
    // `Not pasteurised` is raw; `washed and dried` is as fresh as before.
    const meant = !isDenied ? state : state === 'treated' ? 'raw' : undefined;
    if (meant === undefined || (meant === 'dried' && found?.has('washed') === true)) continue;
    found ??= new Set();
    found.add(meant);
  }
  return found ?? NONE;
}
