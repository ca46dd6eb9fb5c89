/**
 * Knows which measure of a part lies past all that it could be by its name, and the line that is out.
 */
import { anyDoes, deed, does } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
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
import { IN_WATER } from './guards.ts';
import { pours } from './poured.ts';
import { isPlainFerment } from './weak-brine.ts';

export interface FarValues extends BandValues {
  /** As the title has it. */
  readonly dish: string;
}

/** Where it lies past an end of every kind that it may be: the end that most of them have in common. */
export const farFrom = onceFor(({ part: taken, dish, byTitle }: Taken): readonly Found<FarValues>[] => {
  // What is called a pastry is its own list: steps behind it fill it.
  const isCrust = !byTitle && dish.kinds.every(({ group }) => group === 'pastry');
  const part = isCrust ? { ...taken, mixes: [] } : taken;
  const kinds = dish.kinds.filter((kind) => mayBe(kind, part));
  const past = kinds.map((kind) => pastEnds(part, kind));
  if (past.length === 0 || past.some((ends) => ends.length === 0)) return [];
  const ends = past.flat();
  const like = (one: Past): number => ends.filter(({ key }) => key === one.key).length;
  const [most] = [...ends].sort((a, b) => like(b) - like(a));
  return most === undefined ? [] : [{ at: most.at, values: { ...most.values, dish: dish.name } }];
});

interface Past {
  /** Its measure and side: of two kinds the same end. */
  readonly key: string;
  readonly at: Found<BandValues>['at'];
  readonly values: BandValues;
}

function pastEnds(part: Part, kind: Kind): readonly Past[] {
  return kind.measures.flatMap(({ measure }) =>
    SIDES.flatMap((side) => {
      const past = isToldElsewhere(part, measure, side) ? undefined : pastEnd(part, measure, side, kind);
      // What it is fried in may be listed.
      if (past === undefined || (measure === 'fat' && anyDoes(part.steps, FRIES))) return [];
      if (side === 'high' && SALTS.has(measure) && anyDoes(part.steps, RINSES)) return [];
      const carrier = carrierIn(part, measure, side);
      if (side === 'low' && (carrier === undefined || mayBeMore(part, measure, carrier, kind))) return [];
      const at = { ...(ingredientPlace(carrier) ?? past.at), part: part.index };
      return [{ key: `${measure} ${side}`, at, values: past.values }];
    }),
  );
}

/** What is too little to keep it has checks of its own. */
const isToldElsewhere = (part: Part, measure: MeasureName, side: Side): boolean =>
  measure === 'liquor acid' || (measure === 'brine salt' && side === 'low' && isPlainFerment(part));

/** Water in what may be more by what a step pours in (judgement). */
const MOIST = 0.2;

/** Whether steps may take what is on no list: as they say, or as the list has nothing to wet it. */
const mayBeMore = ({ steps, head }: Part, measure: MeasureName, carrier: Ingredient, kind: Kind): boolean =>
  (bringing(carrier, waterShare) > MOIST &&
    // What a dough boils in is none of its own.
    steps.some((step) => pours(step) && !(WATERS.has(measure) && does(step, IN_WATER)))) ||
  (WATERS.has(measure) && kind.name !== 'pasta dough' && !head.ingredients.some((i) => isIn(i, 'liquid')));
const WATERS: ReadonlySet<MeasureName> = new Set(['hydration', 'cake hydration']);

/** Measures of salt that goes away where what lay in it is rinsed or drained. */
const SALTS: ReadonlySet<MeasureName> = new Set(['salt share', 'brine salt', 'cure salt']);
const RINSES = deed(({ craft, act }) => craft === 'rinse' || craft === 'drain' || act === 'discard');

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

/** A gram of it brings so much of what it is listed for (judgement), if that is not its acid or its egg: milk is water, flour is no salt. */
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
  const isFor =
    brings && (bringing(brings, top) > MAINLY || brings.food?.roles.includes('acid') || isIn(brings, 'egg'));
  return side === 'high' || topG !== undefined || isFor ? brings : undefined;
}
