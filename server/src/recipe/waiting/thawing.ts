/** Knows how long flesh that is frozen takes to thaw where it lies, by its mass. Refuses to know what is safe. */
import { bird, joint } from '../../heat/estimate.ts';
import { densityAt } from '../../heat/material.ts';
import { coldPlaces } from '../../heat/places.ts';
import { thawingTime } from '../../heat/thawing.ts';
import type { Range } from '../../measure/quantity.ts';
import { cutOf } from '../baking/cuts.ts';
import { madeOf } from '../baking/made-of.ts';
import type { Stay } from '../journey/bodies.ts';
import { familiesIn } from '../list/families.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Ingredient, Recipe } from '../model.ts';

export interface ThawingStay {
  /** Of one. */
  readonly kg: number;
  readonly place: string;
  /** °C around it. */
  readonly celsius: number;
  readonly minutes: Range;
}

/** °C of a freezer. */
const FROZEN_C = -18;
/** kg: smaller pieces lie in packs that nobody describes. */
const LEAST_KG = 0.7;
/** Of a joint, its length by its diameter, where its name does not tell (common practice, no source). */
const LENGTH = 1.8;

/** Undefined where it is not frozen flesh in one piece, in the refrigerator or in cold water. */
export function thawingOf(recipe: Recipe, { body, by: { event }, lies }: Stay): ThawingStay | undefined {
  if (event.act !== 'thaw' && body.band !== 'frozen') return undefined;
  const place = coldPlaces().get(
    event.medium?.is === 'water' ? 'cold water' : lies.place === 'cold' ? 'refrigerator' : '',
  );
  const made = madeOf(recipe, body);
  const [only, ...others] = made?.fillings ?? [];
  if (place === undefined || made === undefined || only === undefined || others.length > 0) return undefined;
  const { ingredient } = only;
  if (!familiesIn(ingredient).has('flesh') || body.members.some(({ state }) => state.cut !== 'whole')) return undefined;
  const kg = only.grams / 1000 / countOf(ingredient);
  const cut = cutOf(ingredient);
  if (kg < LEAST_KG || (cut !== undefined && cut.is !== 'joint')) return undefined;
  const density = densityAt(made.makeup, 0);
  const isBird = foodOf(ingredient)?.class === 'poultry' && cut === undefined;
  const extents = isBird ? bird(kg, density) : joint(kg, density, cut?.length ?? LENGTH);
  const minutes = thawingTime(made.makeup, extents, FROZEN_C, place);
  return minutes && { kg, place: place.name, celsius: place.celsius, minutes };
}

const countOf = ({ node: { amount } }: Ingredient): number =>
  amount?.kind === 'measured' && amount.unit === undefined ? Math.max(1, amount.quantity.low) : 1;
