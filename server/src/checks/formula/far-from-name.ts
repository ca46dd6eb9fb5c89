/**
 * Knows which measure of a part lies past all that it could be by its name, and the line that is out.
 */
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { Kind, MeasureName } from '../../recipe/measures/kind.ts';
import { meets } from '../../recipe/measures/needs.ts';
import { waterShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import type { Taken } from '../../recipe/taken-for.ts';
import type { Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { type BandValues, ingredientPlace, mostBringing, mostOf, outsideBand, type Side } from './band.ts';
import { pours } from './poured.ts';

export interface FarValues extends BandValues {
  /** As the title has it. */
  readonly dish: string;
}

/** The first measure that lies past the ends of every kind that it may be. */
export const farFrom = onceFor(({ part, dish }: Taken): readonly Found<FarValues>[] => {
  const [first, ...others] = dish.kinds.filter((kind) => mayBe(kind, part));
  if (first === undefined) return [];
  for (const { measure } of first.measures)
    for (const side of SIDES) {
      const past = pastEnd(part, measure, side, first);
      if (past === undefined || others.some((kind) => pastEnd(part, measure, side, kind) === undefined)) continue;
      // What it is fried in may be listed.
      if (measure === 'fat' && anyDoes(part.steps, FRIES)) continue;
      const carrier = carrierIn(part, measure, side);
      if (side === 'low' && (carrier === undefined || part.steps.some(pours))) continue;
      const at = ingredientPlace(carrier) ?? past.at;
      return [{ at: { ...at, part: part.index }, values: { ...past.values, dish: dish.name } }];
    }
  return [];
});

const SIDES: readonly Side[] = ['high', 'low'];

const pastEnd = (part: Part, measure: MeasureName, side: Side, kind: Kind): Found<BandValues> | undefined =>
  outsideBand(part, measure, side, undefined, kind).find(({ severity }) => severity === 'warning');

/** Whether the list has what the kind is made of, and the steps churn what is churned. */
const mayBe = ({ needs = [], measures }: Kind, part: Part): boolean =>
  needs.every((row) =>
    row.some((need) => contentsOf(part).some(({ food }) => food !== undefined && meets(need, food))),
  ) &&
  (measures.every(({ measure }) => measure !== 'freezing point') || anyDoes(part.steps, CHURNS));

export const FRIES = deed(({ craft }) => craft === 'fry' || craft === 'deep-fry');
const CHURNS = deed(({ craft }) => craft === 'churn');

/** A gram of it brings so much of what it is listed for (judgement): milk is water, flour is no salt. */
const MAINLY = 0.3;

/** What of the list brings most of what there is too much of, or is there to bring it and does too little. */
export function carrierIn(part: Part, name: MeasureName, side: Side): Ingredient | undefined {
  const measure = MEASURES[name];
  if (measure.unit === 'celsius') return mostBringing(part, waterShare);
  const { top, topG } = measure;
  const brings =
    topG === undefined
      ? mostBringing(part, top)
      : mostOf(part.head.ingredients, (i) => topG(i)?.high ?? gramsOf(i) * bringing(i, top));
  return side === 'high' || topG !== undefined || (brings && bringing(brings, top) > MAINLY) ? brings : undefined;
}
