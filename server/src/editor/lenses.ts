/**
 * Knows what stands above a recipe and above each of its parts: what they come to, worked out when it is looked at, and what one click does.
 * Refuses to know which commands an editor has. What is not known is not said; what is known in part says so.
 */
import { kitchenGrams } from '../measure/kitchen.ts';
import { addRanges, type Range } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import { costOf, type PriceList } from '../publish/cost.ts';
import { plannedTimes } from '../recipe/journey/durations.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import { bandText, measureText } from '../recipe/measures/measure-text.ts';
import { partMeasure, placeIn } from '../recipe/measures/part-measure.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import { sameName } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Shown } from './shown.ts';
import { listOf, sayGrams, sayMinutesRange } from './words.ts';

/** `facts` says what it comes to; each of the others does one thing. */
export interface Lens {
  /** The line of the document that it stands above. */
  readonly line: number;
  readonly does: 'facts' | 'scale' | 'trial' | 'page';
  /** The name of the part; undefined for the recipe. */
  readonly part?: string;
}

export function lenses({ outline, recipe, whole }: Snapshot, { lenses: shown }: Pick<Shown, 'lenses'>): Lens[] {
  if (shown === 'off' || outline.recipe === undefined) return [];
  const line = outline.recipe.at;
  const isListed = whole.recipe.parts.some(({ head }) => head.ingredients.length > 0);
  const own: Lens[] = isListed ? (['facts', 'scale', 'trial', 'page'] as const).map((does) => ({ line, does })) : [];
  if (shown === 'recipe') return own;
  const named = recipe.parts.filter(({ head }) => head.source.named && head.ingredients.length > 0 && head.name !== '');
  return [
    ...own,
    ...named.map(({ head, index }): Lens => ({ line: recipe.partsAt[index] ?? 0, does: 'facts', part: head.name })),
  ];
}

/** What a lens of facts says; undefined where nothing is known, or the part is gone. */
export function lensWords({ whole }: Snapshot, part: string | undefined, prices: PriceList): string | undefined {
  const { recipe } = whole;
  const of = part === undefined ? undefined : recipe.parts.find(({ head }) => sameName(head.name, part));
  const words = part === undefined ? recipeWords(recipe, prices) : of === undefined ? [] : partWords(recipe, of);
  return words.length === 0 ? undefined : words.join(' · ');
}

function recipeWords(recipe: Recipe, prices: PriceList): string[] {
  const sum = sumOf(recipe);
  const said = [massWords(recipe, sum), timeWords(recipe), costWords(recipe, prices), trialWords(recipe)];
  return said.filter((words) => words !== undefined);
}

type Sum = Range & { readonly complete: boolean };

function sumOf({ parts }: Recipe): Sum {
  const sum = parts.reduce<Range>((all, { head }) => addRanges(all, head.massG), { low: 0, high: 0 });
  return { ...sum, complete: parts.every(({ head }) => head.massG.complete && !head.nominal) };
}

/** `1440 g, 180 g each uncooked`: what goes in, before any of it is cooked away. */
function massWords({ yield: made }: Recipe, sum: Sum): string | undefined {
  if (sum.high <= 0) return undefined;
  const { amount } = made?.node ?? {};
  const pieces = amount?.unit === undefined ? amount?.quantity : undefined;
  if (made === undefined || pieces === undefined || !(pieces.low > 0) || !sum.complete) return sumWords(sum);
  return `${sumWords(sum)}, ${roughly({ low: sum.low / pieces.high, high: sum.high / pieces.low })} each uncooked`;
}

const sumWords = (sum: Sum): string =>
  sum.complete ? roughly(sum) : `at least ${sayGrams({ low: sum.low, high: sum.low })}`;

/** `about 1470 g` where the two ends are as good as one, else both. */
function roughly(grams: Range): string {
  const { low, high } = grams;
  const middle = (low + high) / 2;
  const isOne = low !== high && high - low <= ONE * middle;
  return isOne ? `about ${sayGrams({ low: kitchenGrams(middle), high: kitchenGrams(middle) })}` : sayGrams(grams);
}

/** Ends nearer to each other than this share are one figure at a glance; the hover has both. */
const ONE = 0.05;

function timeWords(recipe: Recipe): string | undefined {
  const { total, handsOn } = plannedTimes(recipe);
  const say = (minutes: number) => sayMinutesRange({ low: minutes, high: minutes });
  if (total === null) return undefined;
  return handsOn === null || handsOn === total ? say(total) : `${say(total)}, ${say(handsOn)} at work`;
}

function costWords(recipe: Recipe, prices: PriceList): string | undefined {
  const cost = costOf(recipe, prices);
  if (cost === null || cost.lines.length === 0) return undefined;
  // The water is free: that is no cost yet.
  if (!cost.complete && cost.total < LEAST_COST) return undefined;
  return `${cost.complete ? 'costs' : 'costs at least'} ${cost.total.toFixed(2)}`;
}

/** What two decimals would print as nothing. */
const LEAST_COST = 0.005;

function trialWords({ outline }: Recipe): string {
  const last = readTrials(outline).at(-1);
  if (last === undefined) return 'never tried';
  return `tried ${last.date}${last.verdict === undefined ? '' : `: ${last.verdict}`}`;
}

const BY_PART = keptOn<Part, readonly string[]>();

function partWords(recipe: Recipe, part: Part): string[] {
  let words = BY_PART.get(part);
  if (words === undefined) {
    const { massG, nominal } = part.head;
    words = [massG.high > 0 && !nominal ? sumWords(massG) : undefined, bandWords(part)].filter((w) => w !== undefined);
    BY_PART.set(part, words);
  }
  const takers = new Set(part.usesByLater.map(({ use }) => recipe.heads[use.part]?.name ?? ''));
  // A part may be called `to serve`.
  const names = [...takers].filter((name) => name !== '').map((name) => (/^to\s/i.test(name) ? `“${name}”` : name));
  return names.length === 0 ? [...words] : [...words, `goes into ${listOf(names)}`];
}

/** The measure of the kind that lies outside its band, else the first: `hydration 31 %, usual 18 to 53 %`. */
function bandWords(part: Part): string | undefined {
  const { kind } = part.head;
  const worked = (kind?.measures ?? []).map((held) => ({ held, of: partMeasure(part, held.measure) }));
  const placed = worked.map(({ held, of }) => ({ held, of, verdict: placeIn(of, held) }));
  const first = placed.find(({ verdict }) => verdict !== undefined && verdict !== 'ok') ?? placed[0];
  if (first === undefined || !first.of.known) return kind?.name;
  const { value } = first.of;
  const said = `${MEASURES[first.held.measure].words} ${measureText(first.held.measure, value.low, value.high)}`;
  return `${said}, ${sideOf(first.verdict)}usual ${bandText(first.held.measure, first.held.usual)}`;
}

function sideOf(verdict: ReturnType<typeof placeIn>): string {
  if (verdict === undefined || verdict === 'ok') return '';
  return verdict.endsWith('high') ? 'above the ' : 'below the ';
}
