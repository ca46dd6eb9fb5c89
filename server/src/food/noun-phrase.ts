/**
 * Knows a name by its noun: which of the words before it make it another name of the book, and over which of them it stays what it is.
 * Refuses to fall back over a food, over a word that changes foods, or to a noun that is made of anything.
 */

import { FLESH, type Food, type FoodClass } from './food.ts';
import {
  AS_GROWN,
  COOKED_BY,
  FORMS,
  isIgnored,
  isNumber,
  isPart,
  JOINERS,
  mayPass,
  STATES,
  saysNothing,
  TRAILING,
} from './modifiers.ts';
import { type Meaning, type NameIndex, oneOf, type Run } from './name-index.ts';
import { keyOf } from './names.ts';
import { isNearName, isNoun } from './near.ts';
import { longestEnding, type Noun, nounOf } from './nouns.ts';
import type { FoodRow } from './tables.ts';

/** More adjectives than this nobody strings before a noun. */
const MOST_ADJECTIVES = 5;
/** Words of no meaning to the book that a noun may be fallen back to over. */
const MOST_UNREAD = 3;

/**
 * The words with the noun last: `boiled yolks of eggs` is a boiled egg yolk, `onions chopped fine` are onions. None where nobody knows
 * what it is of: `chicken of the woods`.
 */
export function nounLast(index: NameIndex, head: readonly string[]): readonly string[] {
  const of = head.indexOf('of');
  const behind = head.slice(of + 1);
  // `cheese of your choice`
  if (of > 0 && behind.every(isIgnored)) return nounLast(index, head.slice(0, of));
  const inside = of > 0 && of < head.length - 1;
  const last = head.lastIndexOf('of');
  if (inside && longestEnding(index, head.slice(last + 1)) === undefined && nounOf(head.at(-1) ?? '')?.is !== 'animal')
    return [];
  // `the scrag end of a neck of mutton`
  const turned = !inside
    ? head
    : last === of
      ? [...head.slice(0, of - 1), ...behind, ...head.slice(of - 1, of)]
      : [...head.slice(last + 1), ...head.slice(of + 1, last), ...head.slice(0, of)];
  const words = turned.filter((word) => !JOINERS.has(word));
  let end = words.length;
  while (end > 1 && isTrailing(words[end - 1] ?? '')) end--;
  return words.slice(0, end);
}

const isTrailing = (word: string): boolean => saysNothing(word, undefined) || TRAILING.has(word);

/**
 * The food of the noun, refined by what stands before it, and `behind` it after commas, where the book has that; the words before it that
 * say nothing to it are `unread`.
 */
export function findByNoun(index: NameIndex, head: readonly string[], behind: readonly string[] = []): Run | undefined {
  const words = nounLast(index, head);
  let best: Run | undefined;
  for (let end = words.length; end > 0 && words.length - end <= MOST_PARTS; end--) {
    const parts = words.slice(end);
    if (parts.length > 0 && !isCutOrPart(parts[0] ?? '')) break;
    for (let start = Math.max(0, end - index.longest); start < end; start++) {
      const named = words.slice(start, end);
      const meant = index.get(named.join(' '));
      if (meant === undefined) continue;
      const before = words.slice(0, start);
      const whole = generic(index, before, named, meant) ?? refined(index, before, named, meant, behind);
      const run = whole === undefined || parts.length === 0 ? whole : ofPart(index, whole, parts);
      if (run === undefined) continue;
      if (run.unread === undefined) return run;
      if (best === undefined || run.unread.length < (best.unread?.length ?? 0)) best = run;
    }
    if (best !== undefined) return best;
  }
  return best ?? withoutGeneric(index, words, behind);
}

/** `dried black trumpet mushrooms`, `smoked provolone cheese`: without the noun that says only what the food before it is. */
function withoutGeneric(index: NameIndex, words: readonly string[], behind: readonly string[]): Run | undefined {
  const last = words.at(-1) ?? '';
  const said = index.get(last);
  if (said === undefined || words.length < 3) return undefined;
  const run = findByNoun(index, words.slice(0, -1), behind);
  const row = run && oneOf(run.meant);
  if (row === undefined || run?.named.length === 0) return undefined;
  const kind = row.read().class;
  const isGeneric = kind === last || GENERIC.has(nounOf(last)?.is);
  return isGeneric && [said].flat().some((other) => other.read().class === kind) ? run : undefined;
}

const GENERIC: ReadonlySet<Noun['is'] | undefined> = new Set<Noun['is']>(['animal', 'made']);

/** `cauliflower florets`, `pork loin back ribs`: no more parts of parts than these. */
const MOST_PARTS = 3;

const isCutOrPart = (word: string): boolean => nounOf(word)?.is === 'cut' || PARTED.some((kind) => isPart(word, kind));

/** Classes of which there are parts that have no name in the book. */
const PARTED: readonly FoodClass[] = [
  'vegetable',
  'mushroom',
  'fruit',
  'fish',
  'shellfish',
  'meat',
  'cured meat',
  'bread',
];

/** The parts of a food are the food; a cut of an animal is the animal's meat, though which cut it is the book does not know. */
function ofPart(index: NameIndex, run: Run, parts: readonly string[]): Run | undefined {
  const row = oneOf(run.meant);
  if (row === undefined) return undefined;
  // `lamb rib chop`
  const cut = oneOf(index.get([...run.named, ...parts.slice(-1)].join(' ')));
  if (cut !== undefined) return { ...run, meant: cut, left: [...run.left, ...parts.slice(0, -1)] };
  const food = row.read();
  const cuts = parts.filter((word) => !saysNothing(word, food));
  if (cuts.length > 0 && !(isMeat(food) && cuts.every((word) => nounOf(word)?.is === 'cut'))) return undefined;
  const unread = [...(run.unread ?? []), ...cuts];
  return { ...run, left: [...run.left, ...parts], ...(unread.length > 0 && { unread }) };
}

const isMeat = ({ class: kind, roles }: Food): boolean => FLESH.includes(kind) && roles.includes('raw risk');

/** `provolone cheese`, `catfish fish`: the noun says only what the food before it is. */
function generic(
  index: NameIndex,
  before: readonly string[],
  named: readonly string[],
  meant: Meaning,
): Run | undefined {
  const noun = named.length === 1 ? nounOf(named[0] ?? '') : undefined;
  if (noun?.is !== 'animal' && noun?.is !== 'made') return undefined;
  const said = before.filter((word) => !saysNothing(word, undefined));
  const sort = index.get(said.join(' '));
  const kinds = new Set([meant].flat().map((row) => row.read().class));
  if (sort === undefined || ![sort].flat().every((row) => kinds.has(row.read().class))) return undefined;
  return { meant: sort, left: before.filter((word) => !said.includes(word)), named: [...said, ...named] };
}

function refined(
  index: NameIndex,
  before: readonly string[],
  named: readonly string[],
  meant: Meaning,
  behind: readonly string[],
): Run | undefined {
  const base = oneOf(meant);
  const more = refine(index, [...before, ...behind], named, base, before);
  const row = more?.food ?? base;
  const left = before.filter((word) => !(more?.used.includes(word) ?? false));
  if (row === undefined) return ofSeveral(index, left, named, [meant].flat());
  const food = row.read();
  const unread = left.filter((word) => !saysNothing(word, food));
  const run = { meant: row, left, named: [...(more?.used ?? []), ...named] };
  if (unread.length === 0) return run;
  return mayFall(index, unread, named, food) ? { ...run, unread } : undefined;
}

/** `Castelvetrano olives`: of a word for several foods the word before it does not say which. */
function ofSeveral(
  index: NameIndex,
  left: readonly string[],
  named: readonly string[],
  meant: readonly FoodRow[],
): Run | undefined {
  const foods = meant.map((row) => row.read());
  const unread = left.filter((word) => !foods.some((food) => saysNothing(word, food)));
  if (unread.length === 0 || !foods.every((food) => mayFall(index, unread, named, food))) return undefined;
  return { meant, left: left.filter((word) => !unread.includes(word)), named, unread };
}

/** Whether the noun may be fallen back to over words that nobody knows. */
function mayFall(index: NameIndex, unread: readonly string[], named: readonly string[], food: Food): boolean {
  return (
    unread.length <= MOST_UNREAD &&
    !(named.length === 1 && CUT_ALONE.has(nounOf(named[0] ?? '')?.is)) &&
    (AS_GROWN.has(food.class) ? nounOf(named.at(-1) ?? '')?.is !== 'made' : isOneSort(named, food)) &&
    unread.every((word) => mayPass(word) && nounOf(word) === undefined && !isNoun(index, word)) &&
    !unread.some((word) => isNearName(index, word, named))
  );
}

/** Of which animal the steak is, only the word before it says. */
const CUT_ALONE: ReadonlySet<Noun['is'] | undefined> = new Set<Noun['is']>(['cut', 'organ']);

/**
 * Whether the name says already what the food is made of, so that a word more says only which of it: `olive oil`, `cheddar` and `soy sauce`,
 * but neither `oil` nor `white bread`.
 */
function isOneSort(named: readonly string[], { class: kind }: Food): boolean {
  if (DOSED.has(kind)) return false;
  if (nounOf(named.at(-1) ?? '')?.is !== 'made') return kind !== 'other';
  return named.slice(0, -1).some((word) => !isIgnored(word) && !FORMS.has(word) && !saysSort(word));
}

/** `white`, `plain`, `dark`: of whatever it is made. */
const saysSort = (word: string): boolean => NO_SORT.has(nounOf(word)?.is) || !mayPass(word) || word === 'plain';

const NO_SORT: ReadonlySet<Noun['is'] | undefined> = new Set<Noun['is']>(['changes', 'made']);

/** A little too much of these mars or hurts: none is taken for another. */
const DOSED: ReadonlySet<FoodClass> = new Set<FoodClass>(['salt', 'curing salt', 'leavening', 'yeast', 'gelling']);

/**
 * The food that the name is with as many of the words as make one: `wheat`, `bread` and `flour` are bread flour, since wheat flour is what
 * flour is anyhow. Undefined where none does, or where two of them make foods that differ. Of the words those of `before` stand before the name.
 */
export function refine(
  index: NameIndex,
  words: readonly string[],
  name: readonly string[],
  base: FoodRow | undefined,
  before: readonly string[] = [],
): { readonly food: FoodRow; readonly used: readonly string[] } | undefined {
  const adjectives = [...new Set(words)]
    .filter((word) => !JOINERS.has(word) && !isNumber(word) && (!FORMS.has(word) || STATES.has(word)))
    .slice(0, MOST_ADJECTIVES);
  const found = new Set<FoodRow>();
  const used = new Set<string>();
  for (const some of subsets(adjectives)) {
    if (some.every((word) => used.has(word))) continue;
    const said = some.filter((word) => !isIgnored(word));
    // `ripe` leaves a fruit what it is, though not an olive that may be green.
    if (said.length === 0 && base !== undefined) continue;
    const food = nameOf(index, some, name, before) ?? byOtherName(index, some, name, base);
    if (food === undefined) continue;
    found.add(food);
    for (const word of some) if (food !== base || !isMeasured(food, word)) used.add(word);
  }
  if (base !== undefined && found.size > 1) found.delete(base);
  // Of apricots, canned, juice pack, the juice is no apricot.
  const kept = found.size > 1 ? [...found].filter((row) => keepsNoun(row, name)) : [...found];
  const [food] = kept;
  if (food === undefined || kept.length > 1) return undefined;
  return { food, used: [...used] };
}

/** `canned garbanzo`, `reduced-fat cheddar cheese`: the words before another name of the same food. */
function byOtherName(
  index: NameIndex,
  words: readonly string[],
  name: readonly string[],
  base: FoodRow | undefined,
): FoodRow | undefined {
  if (base === undefined || words.length === 0) return undefined;
  const said = name.join(' ');
  const keys = [base.name, ...base.names.slice(0, MOST_NAMES)].map(keyOf);
  if (keys.length === 1 || !keys.includes(said)) return undefined;
  for (const key of keys) {
    const food = key === said ? undefined : oneOf(index.get([...words, key].join(' ')));
    if (food !== undefined && food !== base && food.read().class === base.read().class) return food;
  }
  return undefined;
}

const MOST_NAMES = 12;

const keepsNoun = (row: FoodRow, name: readonly string[]): boolean =>
  [row.name, ...row.names].some((word) => keyOf(word).endsWith(name.at(-1) ?? ''));

/** A cup of it weighs otherwise in this form. */
const isMeasured = (row: FoodRow, form: string): boolean =>
  FORMS.has(form) && row.read().measures.some((measure) => measure.form === form);

/** The food of these words before the name or behind it, in whatever order; by the word of the book where theirs means the same. */
function nameOf(
  index: NameIndex,
  words: readonly string[],
  name: readonly string[],
  before: readonly string[],
): FoodRow | undefined {
  const found = nameAs(index, words, name, before);
  if (found !== undefined) return found;
  const kind = ofClass(index, words, name);
  if (kind !== undefined || !words.some((word) => alikeTo(word) !== undefined)) return kind;
  const alike = [...new Set(words.map((word) => alikeTo(word) ?? word))];
  const row = nameAs(index, alike, name, before);
  return row !== undefined && (!alike.includes('cooked') || COOKED.has(row.read().class)) ? row : undefined;
}

/** `fresh linguine`, `dried morels`: what the book has as fresh pasta and dried mushrooms, of whatever sort. */
function ofClass(index: NameIndex, words: readonly string[], name: readonly string[]): FoodRow | undefined {
  const sort = oneOf(index.get(name.join(' ')))?.read().class;
  const states = SORTED.filter(({ kind, state }) => kind === sort && words.includes(state));
  for (const { kind, state } of states) {
    const others = words.filter((word) => word !== state);
    const row = oneOf(index.get([state, ...others, kind].join(' ')));
    if (row?.read().class === kind) return row;
  }
  return undefined;
}

/** Classes whose sorts differ less than their states. */
const SORTED: readonly { readonly kind: FoodClass; readonly state: string }[] = [
  { kind: 'pasta', state: 'fresh' },
  { kind: 'mushroom', state: 'dried' },
];

/** The word of the book for one that comes to the same. A fried or smoked food is another. */
const alikeTo = (word: string): string | undefined =>
  word === 'powdered' ? 'ground' : COOKED_BY.has(word) ? 'cooked' : undefined;

const COOKED: ReadonlySet<FoodClass> = new Set<FoodClass>([...FLESH, 'cured meat', 'egg', 'legume', 'grain', 'pasta']);

/** Potatoes before a salad are no salad potatoes: `potatoes, salad` would be. */
function nameAs(
  index: NameIndex,
  words: readonly string[],
  name: readonly string[],
  before: readonly string[],
): FoodRow | undefined {
  const last = words.at(-1) ?? '';
  const turns = !before.includes(last);
  return (
    oneOf(index.get([...words, ...name].join(' '))) ??
    (turns ? oneOf(index.get([...name, ...words].join(' '))) : undefined) ??
    (words.length + name.length > 2 ? index.inAnyOrder([...words, ...name]) : undefined)
  );
}

/** All choices of the words, the longest first. */
function subsets(words: readonly string[]): readonly (readonly string[])[] {
  const all: string[][] = [];
  for (let bits = 1; bits < 1 << words.length; bits++) all.push(words.filter((_, at) => (bits >> at) & 1));
  return all.sort((a, b) => b.length - a.length);
}
