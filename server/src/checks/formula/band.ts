/**
 * Knows how a measure of a part is held against the band of its kind, and said in a cook's words.
 * Refuses to know any one check: each names the measure and the side it watches.
 */
import { percentRange, percentText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { contentsOf } from '../../recipe/contents.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { type Kind, type KindMeasure, type Verdict, verdictOf } from '../../recipe/kinds.ts';
import { MEASURES, type MeasureName, measure } from '../../recipe/measures.ts';
import { nameSpan } from '../../recipe/part.ts';
import type { Part } from '../../recipe/recipe.ts';
import type { Found, Place, Said } from '../check.ts';

export interface BandValues {
  readonly part: number;
  readonly partName: string;
  readonly kind: Kind;
  readonly measure: KindMeasure;
  readonly value: Range;
  readonly verdict: Verdict;
  readonly contents: readonly Ingredient[];
}

export type Side = 'low' | 'high';

/** The part's value when it lies outside the usual band on the given side: a warning past the implausible one, else information. */
export function* outsideBand(
  part: Part,
  name: MeasureName,
  side: Side,
  place?: () => Place | undefined,
): Generator<Found<BandValues>> {
  const { kind } = part.head;
  const held = kind?.measures.find((m) => m.measure === name);
  if (kind === undefined || held === undefined || part.head.ingredients.length === 0) return;
  const contents = contentsOf(part);
  const worked = measure(name, contents);
  if (!worked.known) return;
  const { value } = worked;
  const verdict = verdictOf(value.low, value.high, held);
  const past = side === 'high' ? 'too high' : 'too low';
  if (verdict !== side && verdict !== past) return;
  const values = { part: part.index, partName: part.head.name, kind, measure: held, value, verdict, contents };
  const at = place?.() ?? kindPlace(part);
  yield { at, values, severity: verdict === past ? 'warning' : 'info' };
}

/** Where the part says what it is: its kind, else its first ingredient. */
export function kindPlace(part: Part): Place {
  const { head } = part;
  if (head.source.named) {
    const span = head.kindNode ?? nameSpan(head);
    return { line: 0, start: span.start, end: span.end };
  }
  return ingredientPlace(head.ingredients[0]) ?? { line: 0, start: 0, end: 1 };
}

export function ingredientPlace(ingredient: Ingredient | undefined): Place | undefined {
  const name = ingredient?.node.name;
  return ingredient === undefined || name === undefined
    ? undefined
    : { line: ingredient.line, start: name.start, end: name.end };
}

/** `Hydration is 126 % …; for shortcrust 18 to 40 % is usual. It will be tough.` */
export function sayBand(values: BandValues, advice: string): Said {
  const { value, measure: held, kind, verdict, partName } = values;
  const [low, high] = held.usual;
  const usual =
    low === null || low === 0
      ? `up to ${percentText(high ?? 0)}`
      : high === null
        ? `from ${percentText(low)}`
        : percentRange(low, high);
  const outcome = verdict === 'high' || verdict === 'too high' ? held.above : held.below;
  const risk =
    outcome === undefined || outcome === ''
      ? ''
      : verdict === 'too high' || verdict === 'too low'
        ? ` Expect: ${outcome}.`
        : ` The risk: ${outcome}.`;
  const subject =
    partName === '' ? `The ${MEASURES[held.measure].words}` : `The ${partName}: ${MEASURES[held.measure].words}`;
  return {
    message: `${subject} is ${percentRange(value.low, value.high)}; ${usual} is usual for ${kind.name}.${risk} ${advice}`,
    value: (value.low + value.high) / 2,
    unit: '1',
    band: held.usual,
    source: held.source,
  };
}

export const middleOf = (range: Range): number => (range.low + range.high) / 2;
