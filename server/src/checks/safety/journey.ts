/**
 * Knows where an ingredient goes from its first use on: the steps that are about it, through every part that takes it in, and which of them heat it.
 * Refuses to know what temperature is enough.
 */
import type { SentenceItem } from '../../notation/tree.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { PartHead } from '../../recipe/part.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { baseForm, verbClass } from '../../recipe/verbs.ts';
import { takesEverything } from '../everything.ts';
import { onceFor } from '../once.ts';

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

/** The journeys of what is not safe raw and a step takes, part by part. */
export const journeysOf = onceFor((recipe: Recipe): readonly Journey[] => {
  const journeys: Journey[] = [];
  for (const part of recipe.parts) if (risksIn(part.head).length > 0) journeys.push(...journeysFrom(recipe, part));
  return journeys;
});

/** Places in the list of what is not safe raw. */
const risksIn = onceFor((head: PartHead): readonly number[] =>
  head.ingredients.flatMap((i, at) => (i.food?.roles.includes('raw risk') && !i.free ? [at] : [])),
);

const KEPT = new WeakMap<Part, { readonly holders: readonly Part[]; readonly journeys: readonly Journey[] }>();
/** A hostile part may list thousands; no kitchen does. */
const MOST_FOLLOWED = 40;

function journeysFrom(recipe: Recipe, part: Part): readonly Journey[] {
  const holders = holdersOf(recipe, part);
  let kept = KEPT.get(part);
  if (kept === undefined || kept.holders.length !== holders.length || kept.holders.some((p, i) => p !== holders[i])) {
    const followed = risksIn(part.head).slice(0, MOST_FOLLOWED);
    kept = { holders, journeys: followed.flatMap((index) => journeyOf(part, index, holders) ?? []) };
    KEPT.set(part, kept);
  }
  return kept.journeys;
}

function journeyOf(part: Part, index: number, holders: readonly Part[]): Journey | undefined {
  const ingredient = part.head.ingredients[index];
  const first = part.ledger[index]?.uses[0];
  if (ingredient === undefined || (first === undefined && !takesEverything(part.steps))) return undefined;
  const holds = new Set(holders.map((p) => p.index));
  const all: Stop[] = [];
  const stops: Stop[] = [];
  const self = { part, index };
  for (const where of holders) {
    if (first !== undefined && where.index < first.part) continue;
    for (const [s, step] of where.steps.entries()) {
      if (first !== undefined && where.index === first.part && s < first.step) continue;
      all.push({ part: where, step });
      if (concerns(step, holds, part.index, index) || heats(step, where, self, 'oven'))
        stops.push({ part: where, step });
    }
  }
  return { part, index, ingredient, stops, all };
}

/** The part, and every later part that takes it in, in order. */
function holdersOf(recipe: Recipe, part: Part): readonly Part[] {
  const into = partsInto(recipe);
  if (part.usesByLater.length === 0 && into.get(part.head) === undefined) return [part];
  const found = new Set<number>([part.index]);
  const queue = [part];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const later = [...next.usesByLater.map((u) => u.use.part), ...(into.get(next.head) ?? [])];
    for (const index of later) {
      const taker = recipe.parts[index];
      if (taker === undefined || found.has(index)) continue;
      found.add(index);
      queue.push(taker);
    }
  }
  return [...found].sort((a, b) => a - b).flatMap((index) => recipe.parts[index] ?? []);
}

/** By part, the later ones that list it or name it. */
const partsInto = onceFor((recipe: Recipe): ReadonlyMap<PartHead, readonly number[]> => {
  const into = new Map<PartHead, number[]>();
  for (const part of recipe.parts) {
    for (const head of part.includes) {
      const list = into.get(head);
      if (list === undefined) into.set(head, [part.index]);
      else list.push(part.index);
    }
  }
  return into;
});

/** Whether a step is about the food: it mentions it, or a part that holds it, or nothing by name. */
function concerns(step: Step, holds: ReadonlySet<number>, part: number, index: number): boolean {
  if (step.mentions.length === 0) return true;
  return step.mentions.some(
    (m) =>
      (m.part !== undefined && holds.has(m.part)) ||
      m.ingredients.some((r) => r.part === part && r.ingredient === index),
  );
}

/** A reading below this is a dough's or a syrup's, not a sign that something is cooked. */
const LEAST_DONENESS_C = 45;

/** A figure read in the food as a sign that it is cooked. */
export const isDoneness = (r: HeatReading): boolean =>
  r.role === 'food' && r.verbClass !== 'cooling' && r.celsius.low >= LEAST_DONENESS_C;

/** These cook a food through. Browning and frying may not: there only a figure tells. */
const COOKS_THROUGH: ReadonlySet<string> = new Set([
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
]);

export const cooksThrough = (step: Step): boolean =>
  step.sentence.items.some((i) => i.kind === 'word' && COOKS_THROUGH.has(baseForm(i.word)));

/** Whether a step says one of these words. */
export const says = (step: Step, words: ReadonlySet<string>): boolean =>
  step.sentence.items.some((i) => i.kind === 'word' && words.has(i.word));

/** The first step from its first use on that heats the ingredient, or may. */
export const heatOf = onceFor((journey: Journey): Stop | undefined => {
  const read = (step: Step) => step.heat.some(isDoneness) && journey.stops.some((s) => s.step === step);
  return journey.all.find(({ part, step }) => read(step) || heats(step, part, journey));
});

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
const LIQUIDS: ReadonlySet<string> = new Set(['water', 'stock', 'syrup', 'milk', 'cream']);
const AROUND: ReadonlySet<string> = new Set(['over', 'in', 'into', 'of', 'gently', 'barely']);

function heats(step: Step, part: Part, self: Self, only?: 'oven'): boolean {
  const { items } = step.sentence;
  return items.some((item, i) => item.kind === 'word' && isHeating(items, i, step, part, self, only));
}

function isHeating(
  items: readonly SentenceItem[],
  i: number,
  step: Step,
  part: Part,
  self: Self,
  only?: 'oven',
): boolean {
  const item = items[i];
  if (item?.kind !== 'word') return false;
  const kind = verbClass(item.word);
  const verb = baseForm(item.word);
  if ((kind !== 'oven' && (kind !== 'stove' || only === 'oven')) || TOO_GENTLE.has(verb)) return false;
  // A name such as `boiling water` or `smoked paprika` heats nothing.
  if (step.mentions.some((m) => m.start <= item.start && m.end >= item.end && !m.verb)) return false;
  if (nearWords(items, i, -3).some((w) => NOUN_BEFORE.has(w)) || nearWords(items, i, 3).some((w) => VESSELS.has(w)))
    return false;
  const before = nearWords(items, i, -1)[0] ?? '';
  const noun = NAMES_BEFORE.has(before) && !COOKS_THROUGH.has(verb);
  // `loosen with boiling water` heats little; `over simmering water` does.
  const poured = item.word.endsWith('ing') && LIQUIDS.has(nearWords(items, i, 1)[0] ?? '') && !AROUND.has(before);
  if (noun || poured) return false;
  const object = step.mentions.find((m) => m.from > i && m.from <= i + 3 && !between(items, i, m.from));
  if (object === undefined || object.part !== undefined) return true;
  const own = (r: { part: number; ingredient: number }) => r.part === self.part.index && r.ingredient === self.index;
  if (object.ingredients.some(own) || step.mentions.some((m) => m.ingredients.some(own))) return true;
  // What is melted or toasted as it first goes in is still apart.
  return !object.ingredients.every((r) => {
    const first = r.part === part.index ? part.ledger[r.ingredient]?.uses[0] : undefined;
    return first !== undefined && first.part === part.index && first.line === step.line;
  });
}

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
export const isBoughtSafe = onceFor(({ node }: Ingredient): boolean =>
  BOUGHT_SAFE.test([node.name?.text, node.preparation?.text, node.note?.text].join(' ')),
);
