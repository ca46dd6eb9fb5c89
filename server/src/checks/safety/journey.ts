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
  readonly holds: ReadonlySet<number>;
}

/** A hostile text may list thousands; no kitchen does. */
const MOST_FOLLOWED = 60;

/** The journeys of the ingredients that `wanted` picks and that a step takes. */
export function journeysOf(recipe: Recipe, wanted: (ingredient: Ingredient) => boolean): readonly Journey[] {
  const journeys: Journey[] = [];
  for (const part of recipe.parts) {
    let holds: ReadonlySet<number> | undefined;
    for (const [index, ingredient] of part.head.ingredients.entries()) {
      if (!wanted(ingredient)) continue;
      if (journeys.length >= MOST_FOLLOWED) return journeys;
      holds ??= partsHolding(recipe, part);
      const journey = journeyOf(recipe, part, index, ingredient, holds);
      if (journey !== undefined) journeys.push(journey);
    }
  }
  return journeys;
}

function journeyOf(
  recipe: Recipe,
  part: Part,
  index: number,
  ingredient: Ingredient,
  holds: ReadonlySet<number>,
): Journey | undefined {
  const first = part.ledger[index]?.uses[0];
  if (first === undefined && !takesEverything(part.steps)) return undefined;
  const all: Stop[] = [];
  const stops: Stop[] = [];
  const self = { part, index };
  for (const where of recipe.parts.slice(first?.part ?? part.index)) {
    if (!holds.has(where.index)) continue;
    for (const [s, step] of where.steps.entries()) {
      if (first !== undefined && where.index === first.part && s < first.step) continue;
      all.push({ part: where, step });
      if (concerns(step, holds, part.index, index) || heats(step, where, self, 'oven'))
        stops.push({ part: where, step });
    }
  }
  return { part, index, ingredient, stops, all, holds };
}

/** The part, and every later part that takes it in. */
function partsHolding(recipe: Recipe, part: Part): ReadonlySet<number> {
  const holds = new Set([part.index]);
  const heads = new Set<PartHead>([part.head]);
  for (const later of recipe.parts.slice(part.index + 1)) {
    if (later.includes.some((h) => heads.has(h)) || part.usesByLater.some((u) => u.use.part === later.index)) {
      holds.add(later.index);
      heads.add(later.head);
    }
  }
  return holds;
}

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
export function heatOf(journey: Journey): Stop | undefined {
  const read = (step: Step) => step.heat.some(isDoneness) && journey.stops.some((s) => s.step === step);
  return journey.all.find(({ part, step }) => read(step) || heats(step, part, journey));
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
export function isBoughtSafe({ node }: Ingredient): boolean {
  return BOUGHT_SAFE.test([node.name?.text, node.preparation?.text, node.note?.text].join(' '));
}
