/**
 * Knows one part of a recipe as a report shows it: its list with percentages, its composition, its steps and measures.
 * Refuses to know the other parts.
 */
import type { Component, MixComposition } from '../food/composition.ts';
import { likelyGrams } from '../food/weigh.ts';
import { statedSpan } from '../notation/item-amounts.ts';
import type { UnreadLine } from '../recipe/list/not-understood.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import { flourGramsOf, isByFlour } from '../recipe/measures/flour-shares.ts';
import { partMeasure, placeIn } from '../recipe/measures/part-measure.ts';
import { likelyOf } from '../recipe/measures/worked-ratio.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import { mixOf, totalG as wholeG } from './nutrition.ts';
import { heldBy } from './report-made-of.ts';
import {
  COMPOSITION,
  type CompositionField,
  type ReportIngredient,
  type ReportMeasure,
  type ReportPart,
} from './report-shape.ts';
import { round, sum } from './rounded.ts';
import { reportSteps } from './step-events.ts';

/** What a part is shown among. */
export interface PartAmong {
  readonly unread: readonly UnreadLine[];
  readonly sayLine: (line: number) => string;
  /** Grams of flour in all parts; 0 where there is none, or nobody knows. */
  readonly flourG: number;
}

/** `lineIn` says which line of the writer's file, from 1, a line of the part is. */
export function reportPart(
  part: Part,
  lineIn: (line: number) => number,
  { unread, sayLine, flourG }: PartAmong,
): ReportPart {
  const { head } = part;
  const mix = mixOf(head.ingredients);
  const { massG: mass } = mix;
  const byFlour = isByFlour(head);
  return {
    name: head.name,
    kind: head.kind?.name ?? null,
    mass_g: head.massG.complete && !head.nominal && head.ingredients.length > 0 ? round(mass, 1) : null,
    relative: head.nominal,
    composition_g: compositionOf((component) => (head.massG.complete ? totalG(mix, component) : null)),
    composition_at_least_g: head.massG.complete
      ? null
      : compositionOf((component) => round(mix.totals[component].grams, 2)),
    ingredients: head.ingredients.map((i) =>
      reportIngredient(part, i, lineIn, {
        flourG: byFlour ? flourGramsOf(head).listed : 0,
        flourOfAllG: byFlour ? flourG : 0,
        massG: head.massG.complete ? mass : undefined,
      }),
    ),
    steps: reportSteps(part, lineIn),
    measures: measuresOf(part),
    not_understood: unread.flatMap(({ at, text, part: index }) =>
      index === part.index ? [{ where: sayLine(at), line: at + 1, text }] : [],
    ),
  };
}

/** Grams of flour in the parts that are reckoned by it, that of starters counted in; 0 where one has no grams of its own, or a line that may be flour is not understood. */
export function flourOf(parts: readonly Part[]): number {
  if (parts.some(({ head }) => head.nominal || head.notUnderstood.length > 0)) return 0;
  return sum(parts.map(({ head }) => (isByFlour(head) ? flourGramsOf(head).all : 0)));
}

const compositionOf = <V>(grams: (component: Component) => V): Record<CompositionField, V> =>
  Object.fromEntries(Object.entries(COMPOSITION).map(([field, component]) => [field, grams(component)])) as Record<
    CompositionField,
    V
  >;

function reportIngredient(
  part: Part,
  ingredient: Ingredient,
  lineIn: (line: number) => number,
  { flourG, flourOfAllG, massG }: { flourG: number; flourOfAllG: number; massG: number | undefined },
): ReportIngredient {
  const { weighed, node } = ingredient;
  const grams = weighed.known ? likelyGrams(weighed) : null;
  const stated = statedSpan(node);
  const line = part.head.source.lines[ingredient.line]?.text ?? '';
  return {
    line: lineIn(ingredient.line),
    name: ingredient.name,
    food: ingredient.food?.id ?? null,
    written: stated === undefined ? '' : line.slice(stated.start, stated.end),
    grams: grams === null ? null : round(grams, 2),
    grams_low: weighed.known ? round(weighed.grams.low, 2) : null,
    grams_high: weighed.known ? round(weighed.grams.high, 2) : null,
    grams_from: weighed.known ? weighed.reason.kind : null,
    grams_why: weighed.known ? `${weighed.reason.words} (${weighed.reason.source})` : weighed.why,
    bakers_percent: grams === null || flourG <= 0 ? null : round((grams / flourG) * 100, 1),
    flour_percent: grams === null || flourOfAllG <= 0 ? null : round((grams / flourOfAllG) * 100, 1),
    share_percent: grams === null || massG === undefined || massG <= 0 ? null : round((grams / massG) * 100, 1),
    optional: ingredient.optional,
    to_taste: ingredient.free,
    holds_g: heldBy(ingredient),
  };
}

/** The measures of a part's kind, worked out. */
export function measuresOf(part: Part): ReportMeasure[] {
  const { kind } = part.head;
  if (kind === undefined || part.head.ingredients.length === 0) return [];
  return kind.measures.map((held) => {
    const worked = partMeasure(part, held.measure);
    const value = worked.known ? worked.value : undefined;
    return {
      name: held.measure,
      value: worked.known ? round(likelyOf(worked), 4) : null,
      value_low: value === undefined ? null : round(value.low, 4),
      value_high: value === undefined ? null : round(value.high, 4),
      unit: MEASURES[held.measure].unit === 'celsius' ? 'C' : '1',
      band: held.usual,
      verdict: placeIn(worked, held) ?? null,
      why: worked.known ? null : worked.why,
      hangs_on: worked.known ? (worked.open ?? []).map(({ name }) => name) : [],
      source: held.source,
    };
  });
}

/** A total in grams to the hundredth, or null where too much of the mix does not say. */
export function totalG(mix: MixComposition, component: Component): number | null {
  const grams = wholeG(mix, component);
  return grams === null ? null : round(grams, 2);
}
