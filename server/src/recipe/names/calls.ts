/**
 * Knows all that an ingredient or a part may be called by steps: its full name, what is left of it, the food's other names.
 * Refuses to know what else is listed.
 */
import type { Food, FoodClass } from '../../food/food.ts';
import { onceByText } from '../../measure/once.ts';
import { keptOn } from '../../notation/kept.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Kind } from '../measures/kind.ts';
import { callNames, kindNamed } from '../measures/kinds.ts';
import type { Ingredient, PartHead } from '../model.ts';
import { ADJECTIVES, FUNCTION_WORDS, wordsOf } from '../words.ts';
import { dishCalled } from './dishes.ts';
import { shapesIn } from './shapes.ts';
import { sortsOf } from './sorts.ts';
import { calledName } from './title.ts';

/** One way to call a thing. */
export interface Call {
  readonly words: readonly string[];
  /** All words of its name. */
  readonly full: boolean;
  readonly weak: boolean;
  readonly plural: boolean;
  /** A word for all that it fits. */
  readonly shared?: boolean;
  readonly borrowed?: boolean;
}

/** All ways to call a thing, by their first word. */
export type Calls = ReadonlyMap<string, readonly Call[]>;

const CALLS = keptOn<Ingredient, Calls>();
/** Lists of a folder repeat their names: by what tells how each is called. */
const callsBy = onceByText((_: string): { likeliest?: Food | undefined; calls?: Calls } => ({}), { texts: 2000 });

export function callsOf(ingredient: Ingredient): Calls {
  let calls = CALLS.get(ingredient);
  if (calls === undefined) {
    const { name, food, match } = ingredient;
    const yields = yieldedBy(ingredient);
    const others = othersOf(ingredient);
    const kept = callsBy(yields === undefined && others.length === 0 ? name : [name, yields, ...others].join('\t'));
    const likeliest = food ?? (match.kind === 'ambiguous' ? match.foods[0] : foodOf(ingredient));
    if (kept.calls === undefined || kept.likeliest !== likeliest) {
      kept.calls = callsOfIngredient(name, food, likeliest, yields, others);
      kept.likeliest = likeliest;
    }
    calls = kept.calls;
    CALLS.set(ingredient, calls);
  }
  return calls;
}

/** The alternatives of a line: the steps may name any of them. */
export const othersOf = ({ others }: Ingredient): readonly string[] => (others ?? []).map((other) => other.name.text);

/**
 * What is taken out of a fruit, and steps call it by: `4 oranges, peel only`; the juice of a lemon is the lemon too. And the shape that
 * something is cut to.
 */
export function yieldedBy({ food, name, nameNode, node: { preparation, takes } }: Ingredient): string | undefined {
  if (takes !== undefined)
    return [...takes, ...(name === nameNode.text ? [] : [nameNode])].map((t) => t.text.toLowerCase()).join(' ');
  if (preparation === undefined) return undefined;
  const taken = food === undefined || !YIELDING.has(food.class) ? null : preparation.text.match(YIELDED);
  const words = [...(taken ?? []).map((word) => word.toLowerCase()), ...shapesIn(preparation.text)];
  return words.length === 0 ? undefined : words.join(' ');
}

const YIELDING: ReadonlySet<Food['class']> = new Set(['fruit', 'juice', 'flavouring']);

const YIELDED = /\b(?:peel\b|zest|rind\b|juice)/gi;

/** All that a part may be called by steps of others. */
export const callsOfPart = ({ name, kind }: PartHead): Calls => partCallsBy(kind?.name ?? '')(name);

/** By kind, and by name. */
const partCallsBy = onceByText(
  (kind: string) => onceByText((name: string) => partCalls(name, kindNamed(kind)), { texts: 2000 }),
  { texts: 200 },
);

/** All ways to call a part by its own name, whatever it is. */
export const callsOfName = (name: string): Calls => partCallsBy('')(name);

function partCalls(name: string, kind: Kind | undefined): Calls {
  const called = wordsOf(calledName(name));
  const own = suffixes(called, { full: true, plural: false });
  const byKind = name === '' || kind === undefined ? [] : callNames(kind);
  // `Roll out the wrappers and fill them.`
  if (called.at(-1) === 'filling') own.push({ words: ['fill'], ...WEAKLY, plural: false });
  return byFirst([...own, ...byKind.map((other) => ({ words: wordsOf(other), ...WEAKLY, plural: false }))]);
}

const WEAKLY = { full: false, weak: true };

function callsOfIngredient(
  name: string,
  food: Food | undefined,
  likeliest: Food | undefined,
  yields: string | undefined,
  others: readonly string[],
): Calls {
  const full = withoutFigures(wordsOf(name.replace(CONTENT, '')));
  const plural = isPlural(name);
  const calls = suffixes(full, { full: true, plural }).map((call) =>
    isBorrowed(call, full, food) ? { ...call, borrowed: true } : call,
  );
  const weakly = (words: readonly string[], shared = false) => calls.push({ words, ...WEAKLY, plural, shared });
  const of = full.indexOf('of');
  if (of > 0) calls.push({ words: full.slice(0, of), full: false, weak: false, plural });
  const joined = full.findIndex((word) => word === 'or' || word === 'and');
  if (joined > 0) calls.push(...suffixes(full.slice(0, joined), { full: false, plural }));
  for (const other of others) calls.push(...suffixes(wordsOf(other), { full: false, plural: isPlural(other) }));
  // `Eggs from Anna's hens` are the eggs.
  const behind = full.findIndex((word) => BEHIND.has(word));
  if (behind > 0) calls.push(...suffixes(full.slice(0, behind), { full: false, plural }));
  // Eggs are separated in the steps: their yolks and whites are still the eggs.
  if ((behind > 0 ? full[behind - 1] : full.at(-1)) === 'egg') for (const half of ['yolk', 'white']) weakly([half]);
  // Of a name that could be several foods, the likeliest stands for them: `pepper` is seasoned with; one that nobody knows is of its noun's sort.
  for (const sort of likeliest === undefined ? [] : sortsOf(likeliest)) weakly(sort, true);
  for (const word of yields?.split(' ') ?? []) weakly([word]);
  if (full.at(-1) === 'breadcrumb') weakly(['crumb']);
  // `The pork` is all the pork there is.
  const flesh = food !== undefined && FLESH.has(food.class);
  const vocabulary = new Set<string>();
  for (const other of food === undefined ? [] : [food.name, ...food.names]) {
    const run = wordsOf(other);
    for (const word of run) vocabulary.add(word);
    weakly(run, flesh);
  }
  // White peppercorns are the pepper.
  const head = food === undefined ? undefined : wordsOf(food.name).at(-1);
  if (head !== undefined) weakly([head], flesh);
  const made = MADE_OF.has(full.at(-1) ?? '');
  // Of a food that nobody knows any noun may be what it is called by: `chicken thighs and drumsticks` are the chicken.
  for (const word of made ? [] : full.slice(0, -1))
    if (
      (food === undefined || vocabulary.has(word)) &&
      !ADJECTIVES.has(word) &&
      !FUNCTION_WORDS.has(word) &&
      // `Loosen the cake`: no cake flour.
      !(food?.class === 'flour' && dishCalled(word) !== undefined)
    )
      weakly([word], flesh);
  // `2 litres of water` are no rose water.
  const isFlavoured = full.length > 1 && food !== undefined && food.class !== 'water';
  return byFirst(isFlavoured ? calls.filter(({ words }) => words.length > 1 || words[0] !== 'water') : calls);
}

/** Behind these a name tells where a food is from, or what it lies in. */
const BEHIND: ReadonlySet<string> = new Set(['from', 'off', 'by', 'in', 'with', 'at']);

/** Beside plain salt, `the salt` is no curing salt, and `the butter` no peanut butter. */
const isBorrowed = ({ words }: Call, full: readonly string[], food: Food | undefined): boolean =>
  words.length === 1 &&
  full.length > 1 &&
  ((words[0] === 'salt' && food?.class === 'curing salt') ||
    BORROWED.has(full.slice(-2).join(' ')) ||
    // The oil that tuna lies in.
    full.slice(0, -1).includes('in'));

const BORROWED: ReadonlySet<string> = new Set([
  'peanut butter',
  'almond butter',
  'cocoa butter',
  'coconut milk',
  'coconut cream',
  'condensed milk',
  'evaporated milk',
]);

const isPlural = (name: string): boolean => name.endsWith('s') && wordsOf(name).at(-1) !== lastWord(name);
const lastWord = (name: string): string => name.slice(name.lastIndexOf(' ') + 1).toLowerCase();

const FLESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['meat', 'ground meat', 'poultry', 'ground poultry', 'fish']);

/** What is made of a food is not it: `the chicken` is no chicken stock. */
const MADE_OF: ReadonlySet<string> = new Set([
  'stock',
  'broth',
  'bouillon',
  'cube',
  'consomme',
  'gravy',
  'dripping',
  'fat',
  'skin',
  'bone',
]);

/** `cream 35 % fat` is the cream. */
const CONTENT = /(?<=\S)\s+\d[\d.,]*\s*%\s+\S+$/;

/** `dark chocolate 70 %` is spoken of as the dark chocolate. */
function withoutFigures(words: readonly string[]): readonly string[] {
  const last = words.findLastIndex((word) => !/^\d+$/.test(word));
  return last < 0 ? words : words.slice(0, last + 1);
}

/** The name, then what is left of it from each later word on: `dark brown sugar`, `brown sugar`, `sugar`. */
const suffixes = (words: readonly string[], { full, plural }: { full: boolean; plural: boolean }): Call[] =>
  words.map((_, i) => ({ words: words.slice(i), full: full && i === 0, weak: false, plural }));

function byFirst(calls: readonly Call[]): Calls {
  const firsts = new Map<string, Call[]>();
  for (const call of calls) {
    const [first] = call.words;
    if (first === undefined) continue;
    const same = firsts.get(first);
    if (same === undefined) firsts.set(first, [call]);
    else same.push(call);
  }
  return firsts;
}
