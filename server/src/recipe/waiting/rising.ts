/** Knows how long a dough is likely to take to double, by its yeast and by how warm it stands. Refuses to know when it has risen. */
import { likelyGrams } from '../../food/weigh.ts';
import { yeastRate } from '../../heat/yeast.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { Stay } from '../journey/bodies.ts';
import { familiesIn } from '../list/families.ts';
import { instantYeast } from '../measures/leavening.ts';
import type { Recipe } from '../model.ts';

export interface RisingStay {
  /** Instant yeast to 100 of flour. */
  readonly percent: number;
  readonly celsius: number;
  /** Yeast works so fast there, against 25 °C. */
  readonly rate: number;
  /** Minutes until it has doubled. */
  readonly likely: number;
  readonly minutes: Range;
  /** It goes in warm, and rises on while it cools. */
  readonly coolsFirst: boolean;
}

/** Minutes at 25 °C with 1 % of instant yeast (common practice: 60 to 90 min at 24 to 27 °C). */
const DOUBLES_MIN = 75;
/** The time goes with the yeast to the power of 0.7 to 1 (from memory). */
const POWER = 0.85;
/** Salt, sugar and the flour's own make it so much quicker or slower (judgement). */
const SPREAD = 1.6;
/** °C between which a place is one temperature. */
const EXACT_K = 6;
const COLD_C = 12;

/** Undefined where no yeast or no flour is weighed, or nobody says how warm it stands; that may be taken for so many °C, `unsaidC`. */
export function risingOf(
  { parts }: Pick<Recipe, 'parts'>,
  { body, by: { event }, lies }: Stay,
  unsaidC?: number,
): RisingStay | undefined {
  if (event.act !== 'rise' && event.act !== 'stay' && event.act !== 'cool') return undefined;
  const said =
    event.temperatures.find(({ of }) => of === 'around')?.celsius ??
    (lies.sure === 'said' ? lies.celsius : unsaidC === undefined ? undefined : { low: unsaidC, high: unsaidC });
  if (said === undefined || said.high - said.low > EXACT_K) return undefined;
  let [yeast, flour] = [0, 0];
  for (const { of, share, state } of body.members) {
    const ingredient = parts[of.part]?.head.ingredients[of.ingredient];
    if (ingredient === undefined || state.cooked !== 'raw') continue;
    if (!ingredient.weighed.known) continue;
    const grams = likelyGrams(ingredient.weighed) * middle(share);
    const families = familiesIn(ingredient);
    if (families.has('flour')) flour += grams;
    if (families.has('yeast') && ingredient.food !== undefined) {
      const instant = instantYeast(ingredient.food);
      if (instant !== undefined) yeast += grams * (typeof instant === 'number' ? instant : middle(instant));
    }
  }
  const celsius = middle(said);
  const rate = yeastRate(celsius);
  if (yeast <= 0 || flour <= 0 || rate <= 0) return undefined;
  const percent = (100 * yeast) / flour;
  const likely = DOUBLES_MIN / rate / percent ** POWER;
  return {
    percent,
    celsius,
    rate,
    likely,
    minutes: { low: likely / SPREAD, high: likely * SPREAD },
    coolsFirst: celsius < COLD_C,
  };
}
