/**
 * Knows how a measure of a part is held against the band of its kind, and said in a cook's words.
 * Refuses to know any one check: each names the measure and the side it watches.
 */
import type { Range } from '../../measure/quantity.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { Kind, KindMeasure, MeasureName } from '../../recipe/measures/kind.ts';
import { type Verdict, verdictOf, verdictOn } from '../../recipe/measures/kinds.ts';
import { bandText, measureText, whatever } from '../../recipe/measures/measure-text.ts';
import { countsFor, type ShareOf } from '../../recipe/measures/open.ts';
import { partMeasure } from '../../recipe/measures/part-measure.ts';
import { likelyOf } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { nameSpan } from '../../recipe/part.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import type { Found, Place, Said } from '../check.ts';

export interface BandValues {
  readonly part: number;
  readonly partName: string;
  readonly kind: Kind;
  readonly measure: KindMeasure;
  readonly value: Range;
  readonly likely?: Range;
  readonly verdict: Verdict;
  readonly contents: readonly Ingredient[];
  /** Of what its range hangs on, since nobody knows which food it is or what is in it. */
  readonly open?: readonly Ingredient[];
}

export type Side = 'low' | 'high';

/** The part's value when it lies outside the usual band on the given side: a warning past the implausible one, else information. */
export function outsideBand(
  part: ListedPart,
  name: MeasureName,
  side: Side,
  place?: () => Place | undefined,
  kind: Kind | undefined = part.head.kind,
): readonly Found<BandValues>[] {
  const held = kind?.measures.find((m) => m.measure === name);
  if (kind === undefined || held === undefined || part.head.ingredients.length === 0) return NOTHING;
  const contents = contentsOf(part);
  const worked = partMeasure(part, name);
  if (!worked.known) return NOTHING;
  const { value, likely, open } = worked;
  const verdict = verdictOn(worked, held);
  const past = side === 'high' ? 'too high' : 'too low';
  if (verdict !== side && verdict !== past) return NOTHING;
  const values = {
    part: part.index,
    partName: part.head.name,
    kind,
    measure: held,
    value,
    verdict,
    contents,
    ...(likely && { likely }),
    ...(open && { open }),
  };
  const at = place?.() ?? kindPlace(part);
  return [{ at, values, severity: verdict === past ? 'warning' : 'info' }];
}

const NOTHING: readonly never[] = [];

/** Of one cause, one finding: of the ends that are out the first that fails, else the first. */
export function firstOut(
  part: ListedPart,
  ends: readonly (readonly [MeasureName, Side])[],
  place: (name: MeasureName, side: Side) => Place | undefined,
): readonly Found<BandValues>[] {
  const out = ends.flatMap(([name, side]) => outsideBand(part, name, side, () => place(name, side)));
  const first = out.find(isFailing) ?? out[0];
  return first === undefined ? NOTHING : [first];
}

const isFailing = ({ severity }: Found<BandValues>): boolean => severity === 'warning';

/** Where the part says what it is: its kind, else its first ingredient. */
export function kindPlace(part: ListedPart): Place {
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

/** `The dough: water per flour is 126 %; for shortcrust 18 to 53 % is usual. Expect: tough. Use less water.` */
export function sayBand(values: BandValues, more?: string): Said {
  const { measure: held, kind, verdict, partName } = values;
  const high = isHigh(verdict);
  const outcome = high ? held.above : held.below;
  const far = verdict === 'too high' || verdict === 'too low';
  const risk = outcome === undefined ? '' : far ? ` Expect: ${outcome}.` : ` The risk: ${outcome}.`;
  const { words } = MEASURES[held.measure];
  const about = `The ${partName}:`;
  const subject = partName === '' ? `The ${words}` : `${about} ${words}`;
  const advice = [more, high ? held.lower : held.raise].filter((a) => a !== undefined).join(' ');
  return {
    message:
      `${subject} is ${valueText(values)}${whatever(values.open)}; ${bandText(held.measure, held.usual)} is usual for ${kind.name}.${risk} ${advice}`.trimEnd(),
    ...(partName !== '' && { about }),
    value: likelyOf(values),
    unit: MEASURES[held.measure].unit === 'celsius' ? 'C' : '1',
    band: held.usual,
    source: held.source,
  };
}

/** The value; where rounding would put it inside the band, `just under 12 %`; where how far it is out hangs on it, what it likely is. */
function valueText(values: BandValues): string {
  const { value, verdict, measure: held } = values;
  const say = (low: number, high: number) => measureText(held.measure, low, high);
  const text = say(value.low, value.high);
  if (verdictOf(value.low, value.high, held) !== verdict)
    return `${text}, likely ${say(likelyOf(values), likelyOf(values))}`;
  const edge = held.usual[isHigh(verdict) ? 1 : 0];
  const rounded = edge !== null && text === say(edge, edge);
  return rounded ? `just ${isHigh(verdict) ? 'over' : 'under'} ${text}` : text;
}

export const isHigh = (verdict: Verdict): boolean => verdict === 'high' || verdict === 'too high';

/** Of the ingredients, the one of which `amount` is most, and more than nothing. */
export function mostOf(
  ingredients: readonly Ingredient[],
  amount: (ingredient: Ingredient) => number,
): Ingredient | undefined {
  let best: Ingredient | undefined;
  let most = 0;
  for (const ingredient of ingredients) {
    const here = ingredient.weighed.known ? amount(ingredient) : 0;
    if (here > most) [best, most] = [ingredient, here];
  }
  return best;
}

/** The ingredient of the part's list that brings most of a share of its food; none of which only the noun is known. */
export const mostBringing = (part: ListedPart, share: ShareOf): Ingredient | undefined =>
  mostOf(part.head.ingredients, (i) => (i.match.kind === 'unknown' ? 0 : gramsOf(i) * bringing(i, share)));

/** What a gram of it brings at the most. */
export const atMost = (i: Ingredient, share: ShareOf): number => countsFor(share, i).high;

/** Whether the ingredient brings any of it for sure. */
export const surelyBrings = (i: Ingredient, share: ShareOf): boolean => countsFor(share, i).low > 0;

/** Whether words of an unknown name hint that it sets. */
export const maySet = ({ match }: Ingredient): boolean =>
  match.kind === 'unknown' && match.brings?.includes('gelling') === true;
