/**
 * Knows the facts of foods, weights and measures that several hovers show alike.
 * Refuses to know what was pointed at.
 */

import type { Allergens } from '../food/allergens.ts';
import { type Component, compose, type MixComposition } from '../food/composition.ts';
import type { Food } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { gramsText, percentRange, trimmed } from '../measure/number-text.ts';
import type { Range } from '../measure/quantity.ts';
import { contentsOf } from '../recipe/measures/contents.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import { flourSharesOf, massShareOf } from '../recipe/measures/flour-shares.ts';
import type { KindMeasure } from '../recipe/measures/kind.ts';
import type { Verdict } from '../recipe/measures/kinds.ts';
import { bandText, measureText, reachText, whatever } from '../recipe/measures/measure-text.ts';
import { isIncomplete, partMeasure, placeIn } from '../recipe/measures/part-measure.ts';
import type { Ingredient, Part, TakenUse } from '../recipe/model.ts';
import { capital } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Fact } from './hover/fact.ts';
import { lineOfPart, sayLine } from './place.ts';
import { listOf, sayGrams, sayOfFlour, sayShare, sayWeight } from './words.ts';

export const figure = (label: string, value: string, source?: string): Fact => ({
  kind: 'figure',
  label,
  value,
  ...(source !== undefined && { source }),
});

/** The weight and how it was come by, or why it is not known. */
export function weightFact(ingredient: Ingredient): Fact {
  const { weighed } = ingredient;
  if (!weighed.known) return figure('Weight', `not known: ${weighed.why}`);
  const plain = weighed.reason.kind === 'weight' && weighed.grams.low === weighed.grams.high;
  return figure(
    'Weight',
    plain ? sayWeight(weighed) : `${sayWeight(weighed)} (${weighed.reason.words})`,
    plain ? undefined : weighed.reason.source,
  );
}

/** The lines of the lists that are in no sum. */
export function incompleteFacts(snapshot: Snapshot, parts: readonly Part[]): Fact[] {
  const lines = parts.flatMap(({ head, index }) =>
    head.notUnderstood.map((line) => sayLine(snapshot, lineOfPart(snapshot, index, line))),
  );
  if (lines.length === 0) return [];
  return [figure('Incomplete', `${listOf(lines)} ${lines.length === 1 ? 'is' : 'are'} not understood, and in no sum`)];
}

/** Baker's percentage and share of the part's weight. */
export function shareFacts(part: Part, ingredient: Ingredient): Fact[] {
  const facts: Fact[] = [];
  const bakers = flourSharesOf(part.head, ingredient);
  if (bakers !== undefined) facts.push(figure("Baker's percentage", sayOfFlour(bakers)));
  const share = part.head.ingredients.length > 1 ? massShareOf(part.head, ingredient) : undefined;
  if (share !== undefined)
    facts.push(figure('Share', `${sayShare(share)} of the ${part.head.name === '' ? 'recipe' : part.head.name}`));
  return facts;
}

const SHOWN: readonly (readonly [Component, string])[] = [
  ['water', 'water'],
  ['fat', 'fat'],
  ['protein', 'protein'],
  ['carbohydrate', 'carbohydrate'],
  ['sugars', 'of which sugars'],
  ['salt', 'salt'],
];

export function ingredientComposition(ingredient: Ingredient): Fact | undefined {
  const { food, weighed } = ingredient;
  if (food === undefined || !weighed.known) return undefined;
  return figure('Holds', sayComposition(compose([{ food, grams: likelyGrams(weighed) }])), food.source);
}

export function partComposition(part: Part): Fact | undefined {
  const weighed = contentsOf(part).flatMap(({ food, weighed }) =>
    weighed.known ? [{ food, grams: likelyGrams(weighed) }] : [],
  );
  const known = weighed.some(({ food }) => food !== undefined);
  return known ? figure('Holds', sayComposition(compose(weighed), isIncomplete(part))) : undefined;
}

/** `incomplete`: something is in it beside the mix. */
function sayComposition(mix: MixComposition, incomplete = false): string {
  return SHOWN.map(([component, words]) => {
    const { grams, known } = mix.totals[component];
    return `${words} ${known && !incomplete ? `${gramsText(grams)} g` : grams > 0 ? `at least ${gramsText(grams)} g` : 'not known'}`;
  }).join(', ');
}

/** A food by its composition per 100 g. */
export function foodFacts(food: Food): Fact[] {
  const facts = [figure('In 100 g', sayComposition(compose([{ food, grams: 100 }])), food.source)];
  const [spoon] = food.measures;
  if (spoon !== undefined)
    facts.push(
      figure(
        `1 ${spoon.unit}${spoon.form === undefined ? '' : `, ${spoon.form}`}`,
        sayGrams(spoon.grams),
        spoon.source,
      ),
    );
  const trim = trimFact(food);
  if (trim !== undefined) facts.push(trim);
  facts.push(...allergenFacts(food));
  if (food.note !== undefined) facts.push({ kind: 'text', text: food.note });
  return facts;
}

export function trimFact(food: Food): Fact | undefined {
  const { trim } = food;
  return trim === undefined
    ? undefined
    : figure('Trim', `usually ${trimmed(trim.share * 100, 0)} % of the weight as bought (${trim.what})`, trim.source);
}

/** What it has for sure, and what its label tells. */
export function allergenFacts({ allergens }: Food): Fact[] {
  const { label } = allergens;
  const names = (of: Allergens): string => listOf([...new Set([...of.eu, ...of.us])]);
  const sure = names(allergens);
  const unsure = label === undefined ? '' : names(label);
  return [
    ...(sure === '' ? [] : [figure('Allergens', sure)]),
    ...(unsure === '' ? [] : [figure('Check the label', unsure, label?.source)]),
  ];
}

/** Where the part stands in the bands of its kind, one fact a measure. */
export function bandFacts(part: Part): Fact[] {
  const { kind } = part.head;
  if (kind === undefined) return [];
  const contents = contentsOf(part);
  return kind.measures.map((held) => {
    const label = capital(MEASURES[held.measure].words);
    const worked = contents.length === 0 ? undefined : partMeasure(part, held.measure);
    if (worked === undefined) return figure(label, `usual ${bandText(held.measure, held.usual)}`, held.source);
    if (!worked.known)
      return figure(label, `not known: ${worked.why}; usual ${bandText(held.measure, held.usual)}`, held.source);
    const { value, open } = worked;
    const said = `${measureText(held.measure, value.low, value.high)}${whatever(open)}`;
    return figure(
      label,
      `${said}; usual ${bandText(held.measure, held.usual)}${sayVerdict(placeIn(worked, held), held, value)}`,
      held.source,
    );
  });
}

function sayVerdict(verdict: Verdict | undefined, held: KindMeasure, { low, high }: Range): string {
  if (verdict === undefined) return ', perhaps within it';
  if (verdict === 'ok') return `, within it${reachText(held.measure, low, high, held.usual)}`;
  const outcome = verdict.endsWith('high') ? held.above : held.below;
  const words = { low: 'below it', high: 'above it', 'too low': 'far below it', 'too high': 'far above it' }[verdict];
  return `, ${words}${outcome === undefined || outcome === '' ? '' : `: ${outcome}`}`;
}

/** `all of it`, `half`, `75 g, half of it`. */
function sayTaken(ingredient: Ingredient, taken: Range): string {
  const share = `${percentRange(taken.low, taken.high)} of it`;
  const { weighed } = ingredient;
  if (taken.low >= 0.98 && taken.high <= 1.02) return 'all of it';
  return weighed.known ? `${sayPortion(ingredient, taken)}, ${share}` : share;
}

/** What a step takes: `75 g, half of it`, or `450 g, 50 g more than is left`. */
export function sayUse(ingredient: Ingredient, use: TakenUse): string {
  const over = overOf(use);
  if (over.high <= 0.001) return sayTaken(ingredient, use.taken);
  return `${sayPortion(ingredient, use.taken)}, ${sayPortion(ingredient, over)} more than is left`;
}

/** By what share of the whole a step takes more than was left. */
export const overOf = ({ over, taken, before }: TakenUse): Range =>
  over
    ? { low: Math.max(0, taken.low - before.high), high: Math.max(0, taken.high - before.low) }
    : { low: 0, high: 0 };

/** A share in grams, or of an ingredient of unknown weight in per cent. */
export function sayPortion({ weighed }: Ingredient, share: Range): string {
  if (!weighed.known) return percentRange(share.low, share.high);
  const grams = likelyGrams(weighed);
  return sayGrams({ low: share.low * grams, high: share.high * grams });
}
