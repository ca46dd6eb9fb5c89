/**
 * Knows how to tell from the words of an ingredient line which food they name, and when they could be two or none.
 * Refuses to guess: a word that it cannot account for makes the food unknown.
 */
import { countWord } from '../measure/quantity.ts';
import type { Food, FoodClass, FoodMatch } from './food.ts';
import { CHANGES, FORMS, IGNORED, keyOf, MADE_AFTER, type Phrase, readPhrase, WASHED } from './names.ts';
import { nearFoods } from './near.ts';

/** Every name of a set of foods, and the foods it may mean. */
export interface NameIndex {
  get(key: string): Food | readonly Food[] | undefined;
  /** The food whose name has these words, sorted, in whatever order. */
  inAnyOrder(words: string): Food | undefined;
  /** All keys with their foods. */
  entries(): Iterable<readonly [string, Food | readonly Food[]]>;
  /** Words in the longest name. */
  readonly longest: number;
}

/** An index of foods by all their names; the earlier food wins a name, and `under` answers what these do not. */
export function indexNames(
  foods: readonly Food[],
  ambiguous: readonly { readonly word: string; readonly foods: readonly Food[] }[] = [],
  under?: NameIndex,
): NameIndex {
  const byKey = new Map<string, Food | readonly Food[]>();
  const byWords = new Map<string, Food | undefined>();
  let longest = under?.longest ?? 1;
  for (const food of foods) {
    for (const name of [food.name, ...food.names]) {
      const key = keyOf(name);
      if (key === '' || byKey.has(key)) continue;
      byKey.set(key, food);
      const words = key.split(' ');
      longest = Math.max(longest, words.length);
      if (words.length < 2) continue;
      const sorted = words.sort().join(' ');
      byWords.set(sorted, byWords.has(sorted) && byWords.get(sorted) !== food ? undefined : food);
    }
  }
  for (const { word, foods: meant } of ambiguous) {
    const key = keyOf(word);
    if (!byKey.has(key)) byKey.set(key, meant);
  }
  return {
    get: (key) => byKey.get(key) ?? under?.get(key),
    inAnyOrder: (words) => byWords.get(words) ?? under?.inAnyOrder(words),
    *entries() {
      yield* byKey;
      if (under !== undefined) yield* under.entries();
    },
    longest,
  };
}

/** The food that the words name; never throws, whatever the text. */
export function findFood(index: NameIndex, words: string): FoodMatch {
  const written = WRITTEN.get(words.trim().toLowerCase());
  const phrase = readPhrase(written ?? words);
  const found = findPhrase(index, phrase);
  if (found !== undefined) return found;
  return {
    kind: 'unknown',
    get near(): readonly Food[] {
      return nearFoods(index.entries(), [...phrase.head, ...phrase.tails.flat()].slice(0, 8));
    },
  };
}

/** Spellings whose plural or whose side of the ocean tells two foods apart. */
const WRITTEN: ReadonlyMap<string, string> = new Map([
  ['peppers', 'bell pepper'],
  ['chili powder', 'chili powder blend'],
  ['chile powder', 'chili powder blend'],
]);

function findPhrase(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head, tails, full } = phrase;
  if (head.length === 0) return undefined;
  const whole = full.length === head.length ? undefined : asFood(index.get(full.join(' ')));
  if (whole !== undefined) return withForm(whole, [], tails);
  const choice = findEither(index, phrase);
  if (choice !== undefined) return choice;
  const narrowed = findNarrowed(index, head, tails);
  if (narrowed !== undefined) return narrowed;
  const run = findRun(index, head);
  if (run === undefined) return undefined;
  if (!('class' in run.meant)) return settleAmbiguous(run.meant, run.left, tails);
  return tails.some((tail) => changesFood(run.meant as Food, tail)) ? undefined : withForm(run.meant, run.left, tails);
}

interface Run {
  readonly meant: Food | readonly Food[];
  /** The words of the head that are not its name. */
  readonly left: readonly string[];
}

/** The longest run of words that is a name and leaves nothing unaccounted for. */
function findRun(index: NameIndex, head: readonly string[]): Run | undefined {
  if (head.length > MOST_WORDS) return undefined;
  for (let length = Math.min(head.length, index.longest); length > 0; length--) {
    for (let start = head.length - length; start >= 0; start--) {
      const meant = index.get(length === 1 ? (head[start] ?? '') : head.slice(start, start + length).join(' '));
      if (meant === undefined) continue;
      const left = length === head.length ? NONE : [...head.slice(0, start), ...head.slice(start + length)];
      if (left.every((word) => saysNothing(word, meant))) return { meant, left };
    }
  }
  const kept = head.filter((word) => !IGNORED.has(word) && !FORMS.has(word) && !JOINERS.has(word));
  const food = kept.length > 1 ? index.inAnyOrder([...kept].sort().join(' ')) : undefined;
  if (food !== undefined) return { meant: food, left: head.filter((word) => !kept.includes(word)) };
  const close = kept.length > 0 && kept.length < head.length ? index.get(kept.join(' ')) : undefined;
  return close === undefined ? undefined : { meant: close, left: head.filter((word) => !kept.includes(word)) };
}

const MOST_WORDS = 24;
const NONE: readonly string[] = [];
const JOINERS: ReadonlySet<string> = new Set(['and', 'or', 'of', 'the', 'a', 'an']);

/** `butter (unsalted)`, `flour, strong white bread`: what stands after the comma makes the longer name. */
function findNarrowed(index: NameIndex, head: readonly string[], tails: Phrase['tails']): FoodMatch | undefined {
  if (tails.length === 0) return undefined;
  const name = head.filter((word) => !IGNORED.has(word));
  for (const tail of tails.slice(0, 4)) {
    if (tail.length > 8) continue;
    const kept = tail.filter((word) => !IGNORED.has(word) && !JOINERS.has(word));
    if (kept.length === 0) continue;
    for (const more of [kept, ...kept.map((word) => [word])]) {
      if (more.every((word) => FORMS.has(word) && !STATES.has(word))) continue;
      const food = asFood(index.get([...more, ...name].join(' '))) ?? asFood(index.get([...name, ...more].join(' ')));
      if (food !== undefined) return withForm(food, head, tails);
    }
    const among = index.get(name.join(' '));
    const alone = asFood(index.get(kept.join(' ')));
    if (among !== undefined && alone !== undefined && !('class' in among) && kept.length > 0) {
      if (among.includes(alone) || among.some((food) => food.class === alone.class))
        return withForm(alone, head, tails);
    }
  }
  return undefined;
}

/** Forms that the book keeps as foods of their own: `frozen peas`, `cooked ham`. */
const STATES: ReadonlySet<string> = new Set([
  'frozen',
  'cooked',
  'ground',
  'crushed',
  'minced',
  'mashed',
  'grated',
  'flaked',
  'shredded',
]);

/** `butter or margarine`, `salt and pepper`: two foods, unless both are one. */
function findEither(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head } = phrase;
  const at = head.findIndex((word, i) => (word === 'or' || word === 'and') && i > 0 && i < head.length - 1);
  if (at < 0 || head.length > MOST_WORDS || index.get(head.join(' ')) !== undefined) return undefined;
  const right = findRun(index, head.slice(at + 1));
  if (right === undefined) return undefined;
  const noun = head.at(-1) ?? '';
  const left = findRun(index, [...head.slice(0, at), noun]) ?? findRun(index, head.slice(0, at));
  if (left === undefined) return undefined;
  const foods = [...new Set([left.meant, right.meant].flat())];
  const [only] = foods;
  if (foods.length === 1 && only !== undefined) return withForm(only, [], phrase.tails);
  return { kind: 'ambiguous', foods };
}

/** A word for two foods is settled by what else is said: `ginger, grated` is the root, `smoked tuna` neither. */
function settleAmbiguous(foods: readonly Food[], left: readonly string[], tails: Phrase['tails']): FoodMatch {
  const form = [...left, ...tails.flat()].find((word) => FORMS.has(word) || CUT_LOOKS.has(word));
  const fresh = left.includes('fresh');
  if ((form !== undefined && form !== 'ground') || fresh) {
    const cut = foods.filter((food) => FRESH.has(food.class));
    const [only] = cut;
    if (cut.length === 1 && only !== undefined) return withForm(only, left, tails);
  }
  return { kind: 'ambiguous', foods };
}

const CUT_LOOKS: ReadonlySet<string> = new Set([
  'deseeded',
  'seeded',
  'peeled',
  'trimmed',
  'cored',
  'destemmed',
  'zested',
]);
const FRESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'leafy herb', 'fruit', 'mushroom']);

function withForm(food: Food, left: readonly string[], tails: Phrase['tails']): FoodMatch {
  const form = formOf(food, left, tails);
  return form === undefined ? { kind: 'food', food } : { kind: 'food', food, form };
}

/** The form or count word that a measure of the food depends on, else the first form word there is. */
function formOf(food: Food, left: readonly string[], tails: Phrase['tails']): string | undefined {
  const candidates = [
    ...left.filter((word) => FORMS.has(word)),
    ...tails.flatMap((tail) => tail.filter((word) => FORMS.has(word) && !MADE_AFTER.has(word))),
  ];
  const counted = left.find((word) =>
    food.pieces.some((piece) => piece.word !== undefined && piece.word === countWord(word)),
  );
  return counted ?? candidates.find((form) => food.measures.some((measure) => measure.form === form)) ?? candidates[0];
}

/** Whether a word beside the name leaves the food what it is. */
function saysNothing(word: string, meant: Food | readonly Food[]): boolean {
  if (IGNORED.has(word) || /^\d+(?:x\d+)?(?:g|kg|oz|lb|ml|cm|mm)?$/.test(word)) return true;
  if (!('class' in meant)) return FORMS.has(word) && word !== 'ground';
  const kinds = HARMLESS.get(word);
  if (kinds !== undefined) return kinds.has(meant.class) || (kinds === WET && meant.roles.includes('raw risk'));
  if (FORMS.has(word)) return true;
  const counted = countWord(word);
  return (
    counted !== undefined && (meant.pieces.some((piece) => piece.word === counted) || COUNTED_ANYWHERE.has(counted))
  );
}

const COUNTED_ANYWHERE: ReadonlySet<string> = new Set([
  'bunch',
  'clove',
  'head',
  'leaf',
  'piece',
  'slice',
  'sprig',
  'stalk',
  'stem',
  'handful',
  'knob',
  'wedge',
  'strip',
  'cube',
  'fillet',
  'stick',
]);

const kindSet = (...kinds: FoodClass[]): ReadonlySet<FoodClass> => new Set(kinds);
const PLANTS = kindSet('vegetable', 'fruit', 'mushroom', 'leafy herb');
const WET = kindSet(
  'vegetable',
  'fruit',
  'mushroom',
  'leafy herb',
  'meat',
  'poultry',
  'ground meat',
  'ground poultry',
  'fish',
  'shellfish',
  'nut',
  'milk',
  'egg',
);

/** Words that leave the food what it is in some classes only. */
const HARMLESS: ReadonlyMap<string, ReadonlySet<FoodClass>> = new Map([
  ['raw', WET],
  [
    'frozen',
    kindSet(
      'vegetable',
      'fruit',
      'mushroom',
      'leafy herb',
      'meat',
      'poultry',
      'ground meat',
      'ground poultry',
      'fish',
      'shellfish',
      'juice',
      'bread',
    ),
  ],
  ['dried', kindSet('pasta', 'dried fruit', 'dried herb', 'spice')],
  ['dry', kindSet('pasta', 'dried herb', 'spice', 'grain', 'legume', 'bread')],
  ['ground', kindSet('spice', 'nut', 'seed', 'dried herb', 'grain')],
  ['crushed', kindSet('spice', 'seed', 'vegetable', 'nut', 'other', 'water', 'bread')],
  ['minced', PLANTS],
  ['mashed', PLANTS],
  ['pureed', PLANTS],
  [
    'whole',
    kindSet(
      'vegetable',
      'fruit',
      'mushroom',
      'spice',
      'nut',
      'seed',
      'egg',
      'poultry',
      'fish',
      'leafy herb',
      'dried fruit',
    ),
  ],
  ['toasted', kindSet('nut', 'seed', 'spice', 'bread', 'grain')],
  ['roasted', kindSet('nut', 'seed')],
  ['blanched', kindSet('nut', 'vegetable')],
  ['unsalted', kindSet('nut', 'seed')],
  ['unsweetened', kindSet('juice', 'drink', 'chocolate')],
  ['plain', kindSet('bread', 'dairy')],
  ['cooked', kindSet()],
  ['whipped', kindSet('cream', 'egg')],
  ['melted', kindSet('fat', 'chocolate', 'oil', 'other', 'cheese')],
  ['green', PLANTS],
  ['red', PLANTS],
  ['yellow', PLANTS],
  ['purple', PLANTS],
  ['black', PLANTS],
  ['golden', PLANTS],
  ['fullfat', kindSet('dairy', 'cheese', 'cream', 'milk')],
  ['wild', kindSet('fish', 'mushroom', 'fruit')],
]);

/** Whether what stands after the comma makes it another food than the name. */
function changesFood(food: Food, tail: readonly string[]): boolean {
  const washed = tail.some((word) => WASHED.has(word));
  return tail.some(
    (word) => CHANGES.has(word) && !(washed && word === 'dried') && !HARMLESS.get(word)?.has(food.class),
  );
}

function asFood(meant: Food | readonly Food[] | undefined): Food | undefined {
  return meant !== undefined && 'class' in meant ? meant : undefined;
}
