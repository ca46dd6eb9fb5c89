/**
 * Knows where an ingredient goes from its first use on: the steps that are about it, through every part that takes it in, and which of them heat it.
 * Refuses to know what temperature is enough.
 */
import type { SentenceItem } from '../../notation/tree.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Mention } from '../../recipe/mentions.ts';
import { listedPart, type PartHead } from '../../recipe/part.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { asWritten, inAnyForm, inWords, isOn, says, wordList } from '../../recipe/step-words.ts';
import { baseForm, type VerbClass, verbClass } from '../../recipe/verbs.ts';
import { takesEverything } from '../everything.ts';
import { onceFor } from '../once.ts';
import { type Given, type Last, lent, overParts, type Stretch } from '../over-parts.ts';
import { type Group, groupOf } from './limits.ts';

/** A step that the ingredient goes through. */
export interface Stop {
  readonly part: Part;
  readonly step: Step;
}

export interface Journey {
  /** The part's index and the ingredient's in it. */
  readonly part: Part;
  readonly index: number;
  readonly ingredient: Ingredient;
  /** Steps about it, in order; those that name nothing, or bake all there is, count too. */
  readonly stops: readonly Stop[];
  /** Every step from its first use on, of the parts that hold it. */
  readonly all: readonly Stop[];
}

/** What is not safe raw of one part, followed. The same object for as long as no step it goes through has changed. */
export interface Followed {
  readonly part: Part;
  readonly journeys: readonly Journey[];
  /** The part, and every later one that takes it in, in order. */
  readonly holders: readonly Part[];
  /** How many takers each holder has on later lists: a new one lengthens the way. */
  readonly listed: number;
}

/** The parts with something not safe raw in them that a step takes; the same list for as long as each of them is the same. */
export const followedIn = (recipe: Recipe): readonly Followed[] => followedParts(recipe).list;

interface FollowedParts {
  readonly listers: Listers;
  /** By part. */
  readonly followed: readonly (Followed | undefined)[];
  /** The last part that each goes into, -1 where there is nothing to follow. */
  readonly ends: readonly number[];
  readonly list: readonly Followed[];
}

const followedParts = lent((recipe: Recipe, last?: Last<FollowedParts>): FollowedParts => {
  const { parts } = recipe;
  const listers = listersOf(listings(recipe));
  const before = last?.value.listers === listers && last.value.ends.length === parts.length ? last.value : undefined;
  const again = before === undefined ? parts.keys() : reaching(recipe, last?.changed ?? [], before);
  const followed = before?.followed.slice() ?? [];
  const ends = before?.ends.slice() ?? [];
  let same = before !== undefined;
  for (const index of again) {
    const now = followAgain(recipe, index, listers);
    const taken = now === undefined || now.journeys.length === 0 ? undefined : now;
    same &&= followed[index] === taken;
    followed[index] = taken;
    ends[index] = now?.holders.reduce((end, holder) => Math.max(end, holder.index), index) ?? -1;
  }
  const list = same ? before?.list : undefined;
  return { listers, followed, ends, list: list ?? followed.filter((f) => f !== undefined) };
});

/** The parts that have changed, and those before them that go into one of them. */
function reaching(
  recipe: Recipe,
  changed: readonly Stretch[],
  { listers, followed, ends }: FollowedParts,
): readonly number[] {
  const reach: number[] = [];
  for (const { from, to } of changed) for (let i = from; i < to; i++) reach.push(i);
  const [first, last] = [changed[0]?.from ?? 0, changed.at(-1)?.to ?? 0];
  for (let i = 0; i < last; i++) {
    if ((ends[i] ?? -1) <= i || (ends[i] ?? -1) < first) continue;
    const known = followed[i];
    if (known === undefined || !stillHolds(known, recipe, listers)) reach.push(i);
  }
  return reach;
}

function followAgain(recipe: Recipe, index: number, listers: Listers): Followed | undefined {
  const part = recipe.parts[index];
  if (part === undefined || risksIn(part.head).length === 0) return undefined;
  const last = followedLast(part);
  if (last.followed === undefined || !stillHolds(last.followed, recipe, listers))
    last.followed = follow(recipe, part, listers);
  return last.followed;
}

const followedLast = onceFor((_part: Part): { followed?: Followed } => ({}));

type Listers = ReadonlyMap<PartHead, readonly number[]>;

function stillHolds({ holders, listed }: Followed, recipe: Recipe, listers: Listers): boolean {
  for (const holder of holders) if (recipe.parts[holder.index] !== holder) return false;
  return countListers(holders, listers) === listed;
}

function countListers(holders: readonly Part[], listers: Listers): number {
  let count = 0;
  if (listers.size > 0) for (const { head } of holders) count += listers.get(head)?.length ?? 0;
  return count;
}

/** Places in the list of what is not safe raw. */
const risksIn = onceFor((head: PartHead): readonly number[] =>
  head.ingredients.flatMap((i, at) => (!i.free && foodOf(i)?.roles.includes('raw risk') ? [at] : [])),
);

/** A hostile part may list thousands; no kitchen does. */
const MOST_FOLLOWED = 40;

function follow(recipe: Recipe, part: Part, listers: Listers): Followed {
  const risks = risksIn(part.head).slice(0, MOST_FOLLOWED);
  const union = new Set<Part>([part]);
  const journeys: Journey[] = [];
  for (const index of risks) {
    const holders = holdersOf(recipe, part, index, listers);
    for (const holder of holders) union.add(holder);
    const journey = journeyOf(part, index, holders);
    if (journey !== undefined) journeys.push(journey);
  }
  const holders = [...union];
  return { part, journeys, holders, listed: countListers(holders, listers) };
}

/** The part, the later ones that take the ingredient or the part itself, and those that take these in turn; in order. */
function holdersOf(recipe: Recipe, part: Part, ingredient: number, listers: Listers): readonly Part[] {
  if (part.usesByLater.length === 0 && listers.size === 0) return [part];
  const found = new Set<number>([part.index]);
  const queue = [part];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const own = next === part ? ingredient : undefined;
    for (const { ingredient: of, use } of next.usesByLater)
      if (of === undefined || of === own) visit(recipe.parts[use.part], found, queue);
    for (const index of listers.get(next.head) ?? []) visit(recipe.parts[index], found, queue);
  }
  return found.size === 1 ? [part] : [...found].sort((a, b) => a - b).flatMap((index) => recipe.parts[index] ?? []);
}

function visit(taker: Part | undefined, found: Set<number>, queue: Part[]): void {
  if (taker === undefined || found.has(taker.index)) return;
  found.add(taker.index);
  queue.push(taker);
}

/** The later parts that have a part on their list, as `200 g poolish`; a mention in a step is in `usesByLater`. */
const listersOf = onceFor((listed: readonly Given<readonly PartHead[]>[]): Listers => {
  const listers = new Map<PartHead, number[]>();
  for (const { part, value: heads } of listed) {
    for (const head of heads) {
      const list = listers.get(head);
      if (list === undefined) listers.set(head, [part.index]);
      else list.push(part.index);
    }
  }
  return listers;
});

const listings = overParts((part): readonly PartHead[] | undefined => {
  if (part.includes.length === 0) return undefined;
  const listed = part.includes.filter((head) => listedPart(part.head, head.name) !== undefined);
  return listed.length === 0 ? undefined : listed;
});

function journeyOf(part: Part, index: number, holders: readonly Part[]): Journey | undefined {
  const ingredient = part.head.ingredients[index];
  const first = part.ledger[index]?.uses[0];
  if (ingredient === undefined) return undefined;
  // `Rub with the salt and roast`: what the steps never name is in them all the same, if it is what they roast.
  const unnamed = first === undefined && !takesEverything(part.steps) && !isNameless(part);
  if (unnamed && !FLESH.has(foodOf(ingredient)?.class ?? 'other')) return undefined;
  const holds = new Set(holders.map((p) => p.index));
  const all: Stop[] = [];
  const stops: Stop[] = [];
  const self = { part, index };
  for (const where of holders) {
    if (first !== undefined && where.index < first.part) continue;
    const own = first !== undefined && where.index === first.part ? first.step : undefined;
    // What a later part heats before it takes the food is something else: the chicken that the mayonnaise is served with.
    const taken = own ?? where.steps.findIndex((step) => names(step, holds, part.index, index));
    for (let s = Math.max(taken, 0); s < where.steps.length; s++) {
      const step = where.steps[s] as Step;
      const stop = { part: where, step };
      all.push(stop);
      if (concerns(step, holds, part.index, index) || heats(step, where, self, 'oven')) stops.push(stop);
    }
  }
  if (unnamed && !stops.some(({ step }) => says(step, BAKING) || step.heat.some(isDoneness))) return undefined;
  return { part, index, ingredient, stops, all };
}

const FLESH: ReadonlySet<string> = new Set(['meat', 'ground meat', 'poultry', 'ground poultry', 'fish']);

/** `Shape, bag and cook for 30 min.`: where no step names anything listed, all of them are about all of it. */
const isNameless = onceFor(
  ({ steps }: Part): boolean => steps.length > 0 && steps.every((s) => s.mentions.length === 0),
);

/** Whether a step is about the food: it mentions it, or a part that holds it, or nothing by name. */
function concerns(step: Step, holds: ReadonlySet<number>, part: number, index: number): boolean {
  return step.mentions.length === 0 || readsTheWhole(step) || names(step, holds, part, index);
}

/** Whether a step mentions the food, or a part that holds it. */
function names(step: Step, holds: ReadonlySet<number>, part: number, index: number): boolean {
  for (const mention of step.mentions) {
    if (mention.part !== undefined && holds.has(mention.part)) return true;
    for (const r of mention.ingredients) if (r.part === part && r.ingredient === index) return true;
  }
  return false;
}

/** `Add the hot milk and cook until the custard reads 82 C`: whatever else it names, the reading is of all that is in it. */
function readsTheWhole(step: Step): boolean {
  const reading = says(step, WHOLE) ? step.heat.find(isDoneness) : undefined;
  return (
    reading !== undefined &&
    step.sentence.items.some((i) => i.kind === 'word' && i.end < reading.node.start && isOn(WHOLE, i.word))
  );
}

const WHOLE = asWritten('sauce', 'custard', 'mixture', 'mix', 'filling');

/** A reading below this is a dough's or a syrup's, not a sign that something is cooked. */
const LEAST_DONENESS_C = 45;

/** Beside these a lower figure is meant as one too: `106 F` for `160 F`. */
const COOKING: ReadonlySet<string> = new Set(['bake', 'roast', 'cook', 'stir', 'whisk', 'fry', 'grill', 'poach']);
const LEAST_COOKED_C = 38;

/** A figure read in the food as a sign that it is cooked. */
export const isDoneness = (r: HeatReading): boolean =>
  r.role === 'food' &&
  r.verbClass !== 'cooling' &&
  r.celsius.low >= (COOKING.has(r.verb ?? '') ? LEAST_COOKED_C : LEAST_DONENESS_C);

/** These cook a food through. Browning and frying may not: there only a figure tells. */
const COOKS_THROUGH = inAnyForm(
  'boil',
  'simmer',
  'steam',
  'braise',
  'stew',
  'poach',
  'parboil',
  'scald',
  'blanch',
  'pressure-cook',
  'confit',
  'deep-fry',
);

export const cooksThrough = (step: Step): boolean =>
  (says(step, COOKS_THROUGH) &&
    step.sentence.items.some((i) => i.kind === 'word' && isOn(COOKS_THROUGH, i.word) && !isNamed(step, i))) ||
  isSunkInFat(step);

const FAT = asWritten('fat', 'oil', 'lard', 'dripping');
const SUNK =
  /\b(?:submerg\w*|immers\w*|sunk|cover\w*)\b.*\b(?:fat|oil|lard|dripping)\b|\bcook\w*\b[^.;]*\b(?:in|under) (?:the |its |their |melted |warm |hot |duck |goose |olive |pork |chicken )*(?:fat|oil|lard|dripping)\b/;
const LEAST_SUNK_C = 85;
const LEAST_SUNK_MIN = 120;

/** Under fat for hours at the simmer or over it, by whatever verb: longer than any published time asks. */
const isSunkInFat = (step: Step): boolean =>
  says(step, FAT) &&
  step.times.some(({ node }) => node.lowMin >= LEAST_SUNK_MIN) &&
  step.heat.some(({ role, celsius }) => role !== 'surroundings' && role !== 'food' && celsius.low >= LEAST_SUNK_C) &&
  SUNK.test(inWords(step.sentence));

/** Within the name of an ingredient: `the boiling water` orders nothing. */
const isNamed = (step: Step, { start, end }: SentenceItem): boolean =>
  step.mentions.some((m) => m.start <= start && m.end >= end);

/** The first step from its first use on that heats the ingredient, or may. */
export const heatOf = onceFor((journey: Journey): Stop | undefined => heatFrom(journey, 0));

/** The same, from one of all its steps on. */
export function heatFrom(journey: Journey, from: number): Stop | undefined {
  const { all, stops } = journey;
  for (let i = from; i < all.length; i++) {
    const stop = all[i] as Stop;
    const { step, part } = stop;
    const read = (r: HeatReading) => isDoneness(r) && !isBefore(r.node.start, step, part, journey);
    if (step.heat.some(read) && stops.some((s) => s.step === step)) return stop;
    if (heats(step, part, journey)) return stop;
  }
  return undefined;
}

/** Hot on the stove or in the oven, but these only melt, warm or bring together. */
const TOO_GENTLE: ReadonlySet<string> = new Set([
  'melt',
  'dissolve',
  'bring',
  'infuse',
  'soften',
  'warm',
  'dry',
  'ice',
  'preheat',
  'thicken',
]);
const VESSELS: ReadonlySet<string> = new Set([
  'oven',
  'grill',
  'broiler',
  'pan',
  'griddle',
  'frying',
  'steamer',
  'oil',
]);
const NOUN_BEFORE: ReadonlySet<string> = new Set(['off', 'from', 'without', 'no']);

/** The ingredient that is followed. */
type Self = Pick<Journey, 'part' | 'index'>;

const NAMES_BEFORE: ReadonlySet<string> = new Set(['the', 'a', 'an', 'of', 'on', 'with']);
const OVEN = asWritten('oven');
/** Beside these an oven holds nothing that it cooks. */
const NO_BAKING: ReadonlySet<string> = new Set(['preheat', 'heat', 'keep', 'hold', 'warm', 'dry', 'cool']);
const LEAST_BAKING_C = 90;

/** `Slide the duck into the oven at 180 C`: it bakes, by whatever verb. */
const isInHotOven = (items: readonly SentenceItem[], i: number, heat: readonly HeatReading[]): boolean =>
  nearWords(items, i, -3).some((w) => w === 'in' || w === 'into') &&
  heat.some((r) => r.role === 'oven' && r.celsius.low >= LEAST_BAKING_C && !NO_BAKING.has(r.verb ?? ''));

const BESIDE: ReadonlySet<string> = new Set(['with', 'through', 'over', 'onto', 'on', 'alongside', 'beside', 'around']);
const BETWEEN_THEM: ReadonlySet<string> = new Set(['the', 'some', 'warm', 'hot', 'cold', 'freshly', 'your']);

/** `Toss through warm grilled lettuce`, `serve with the poached salmon`: cooked by itself. Hot milk poured on is another matter. */
function isBeside(items: readonly SentenceItem[], i: number): boolean {
  const [item, next] = [items[i], items[i + 1]];
  if (item?.kind !== 'word' || !item.word.endsWith('ed') || next?.kind !== 'word' || LIQUIDS.has(next.word))
    return false;
  const [before = '', earlier = ''] = nearWords(items, i, -2);
  return BESIDE.has(before) || (BETWEEN_THEM.has(before) && BESIDE.has(earlier));
}

const LIQUIDS: ReadonlySet<string> = new Set(['water', 'stock', 'syrup', 'milk', 'cream']);
const AROUND: ReadonlySet<string> = new Set(['over', 'in', 'into', 'of', 'gently', 'barely']);

function heats(step: Step, part: Part, self: Self, only?: 'oven'): boolean {
  if (!says(step, only === undefined ? HEATING : BAKING) && !says(step, OVEN)) return false;
  return heatWords(step).some(
    (h) => (only === undefined || h.oven) && heatsFood(h.object, step, part, self) && !isBefore(h.at, step, part, self),
  );
}

/** `Boil the sugar to 112 C. Whisk the whites …`: what an earlier sentence heats, in the step where the food first goes in, is not it. */
function isBefore(at: number, step: Step, part: Part, self: Self): boolean {
  const first = self.part.ledger[self.index]?.uses[0];
  if (first?.part !== part.index || first.line !== step.line) return false;
  const own = step.mentions.find((m) =>
    m.ingredients.some((r) => r.part === self.part.index && r.ingredient === self.index),
  );
  return (
    own !== undefined &&
    step.sentence.items.some((i) => i.kind === 'mark' && /[.;]/.test(i.mark) && i.start > at && i.end <= own.start)
  );
}

const heatsAs = (word: string, kind: VerbClass): boolean => verbClass(word) === kind && !TOO_GENTLE.has(baseForm(word));
const BAKING = wordList((word) => heatsAs(word, 'oven'));
const HEATING = wordList((word) => heatsAs(word, 'oven') || heatsAs(word, 'stove'));

interface HeatWord {
  readonly at: number;
  readonly oven: boolean;
  /** What stands where its object would. */
  readonly object: Mention | undefined;
}

/** The words of a step that heat something, whatever it is. */
const heatWords = onceFor(({ sentence: { items }, mentions, heat }: Step): readonly HeatWord[] =>
  items.flatMap((item, i) => {
    if (item.kind !== 'word') return [];
    if (item.word === 'oven' && isInHotOven(items, i, heat))
      return [{ at: item.start, oven: true, object: mentions.findLast((m) => m.from < i) }];
    if (!isOn(HEATING, item.word)) return [];
    const verb = baseForm(item.word);
    // A name such as `boiling water` or `smoked paprika` heats nothing.
    if (mentions.some((m) => m.start <= item.start && m.end >= item.end && !m.verb)) return [];
    if (nearWords(items, i, -3).some((w) => NOUN_BEFORE.has(w)) || (verb === 'heat' && heatsVessel(items, i)))
      return [];
    const before = nearWords(items, i, -1)[0] ?? '';
    const noun = NAMES_BEFORE.has(before) && !isOn(COOKS_THROUGH, item.word);
    // `loosen with boiling water` heats little; `over simmering water` does.
    const poured = item.word.endsWith('ing') && LIQUIDS.has(nearWords(items, i, 1)[0] ?? '') && !AROUND.has(before);
    if (noun || poured || isBeside(items, i)) return [];
    const object = mentions.find((m) => m.from > i && m.from <= i + 3 && !between(items, i, m.from));
    return [{ at: item.start, oven: isOn(BAKING, item.word), object }];
  }),
);

function heatsFood(object: Mention | undefined, step: Step, part: Part, self: Self): boolean {
  if (object === undefined || object.part !== undefined) return true;
  const own = (r: { part: number; ingredient: number }) => r.part === self.part.index && r.ingredient === self.index;
  if (object.ingredients.some(own) || step.mentions.some((m) => m.ingredients.some(own))) return true;
  // What is melted or toasted as it first goes in is still apart.
  return !object.ingredients.every((r) => {
    const first = r.part === part.index ? part.ledger[r.ingredient]?.uses[0] : undefined;
    return first !== undefined && first.part === part.index && first.line === step.line;
  });
}

/** `Heat the oven`, `Heat a frying pan`. */
const heatsVessel = (items: readonly SentenceItem[], i: number): boolean => {
  const after = nearWords(items, i, 3);
  const preposition = after.findIndex((w) => w === 'in' || w === 'on' || w === 'with');
  return (preposition < 0 ? after : after.slice(0, preposition)).some((w) => VESSELS.has(w));
};

/** Whether something other than an article or a portion stands between a verb and what it is done to. */
const between = (items: readonly SentenceItem[], from: number, to: number): boolean =>
  items
    .slice(from + 1, to)
    .some((item) => item.kind === 'word' && ['in', 'on', 'with', 'over', 'until', 'at', 'for'].includes(item.word));

function nearWords(items: readonly SentenceItem[], at: number, most: number): string[] {
  const run = most < 0 ? items.slice(Math.max(0, at + most), at) : items.slice(at + 1, at + 1 + most);
  const words: string[] = [];
  for (const item of most < 0 ? run.reverse() : run) {
    if (item.kind !== 'word') break;
    words.push(item.word);
  }
  return words;
}

const BOUGHT_SAFE =
  /\b(?:cooked|pasteuri[sz]ed|canned|tinned|smoked|leftover|roasted|cured|hard-boiled|boiled|poached|precooked|rotisserie)\b/i;

/** Bought cooked or pasteurised, by its own line. */
export const isBoughtSafe = onceFor(({ ingredient }: Journey): boolean => saysBoughtSafe(ingredient));

const saysBoughtSafe = ({ node }: Ingredient): boolean =>
  BOUGHT_SAFE.test([node.name?.text, node.preparation?.text, node.note?.text].join(' '));

const MINCED = /\b(?:minced?|ground)\b/i;

/** What an ingredient counts as: meat that its own line has minced is minced meat. */
export function groupIn(ingredient: Ingredient): Group | undefined {
  const { node } = ingredient;
  const food = foodOf(ingredient);
  const group = food && groupOf(food);
  if (group !== 'meat') return group;
  return MINCED.test([node.name?.text, node.preparation?.text].join(' ')) ? 'ground meat' : group;
}
