/**
 * Knows how long what is in the oven takes at least and at most by its size: as deep as it is in its tin, or as heavy as each piece is.
 * Refuses to judge, and to know what is of no known size, flat, or cooked before.
 */
import { minutesBySize, type SizedAs } from '../../heat/sizes.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { deed, does } from '../journey/deeds.ts';
import { onceWithParts } from '../journey/once-with-parts.ts';
import type { Part, Recipe } from '../model.ts';
import type { Bake } from './bakes.ts';
import { type InOven, isFlat, onlyPastry } from './kind-of-bake.ts';
import { type MadeOf, madeOf } from './made-of.ts';
import { trayOf } from './oven-time.ts';

export interface BySize {
  /** In a cook's words. */
  readonly called: string;
  readonly minutes: Range;
}

/** Shares of the mass. */
const FLOURY = 0.1;
const EGGY = 0.05;
const MILKY = 0.1;
const WET = 0.5;
const FLESHY = 0.3;
const JUICY = 0.45;
const MOSTLY = 0.5;
/** Minutes after which it is (judgement). */
const COOKED_MIN = 10;

export const bySize = onceWithParts(
  ({ part, body }: Bake) => [part.index, ...(body?.members ?? []).map(({ of }) => of.part)],
  (recipe, bake): BySize | undefined => {
    const { body, stages, said } = bake;
    if (recipe.inherits || body === undefined || body.members.length === 0 || said === undefined) return undefined;
    const celsius = meanOf(bake);
    const made = madeOf(recipe, body);
    if (made === undefined || stages.length === 0) return undefined;
    const { tin, pieces } = trayOf(recipe, bake, made);
    const isDough = isDoughy(made);
    if (!isDough && (tin === undefined || isStewed(bake, made))) return undefined;
    if (pieces === undefined || (tin === undefined && isThin({ recipe, bake, made }))) return undefined;
    const each = made.grams / pieces;
    const as = sizedAs(made, tin, pieces, bake.part);
    const size = tin === undefined ? each : each / (tin.shape.areaM2 * CM2);
    const minutes = minutesBySize(as, size, celsius);
    return (
      minutes && {
        called: tin === undefined ? `a piece of ${trimmed(each, 0)} g` : `${trimmed(size, 1)} g on each cm² of its tin`,
        // What is hot and cooked need no more than brown.
        minutes: isDough && !isCookedBefore(recipe, bake, made) ? minutes : { ...minutes, low: 0 },
      }
    );
  },
);
const CM2 = 1e4;

/** Rolled out to nobody knows how much. */
const isThin = (inOven: Pick<InOven, 'recipe' | 'bake' | 'made'>): boolean => isFlat(inOven) || onlyPastry(inOven.made);

const isDoughy = ({ of, grams }: MadeOf): boolean =>
  of('flour') > FLOURY * grams || (of('egg') > EGGY * grams && of('milk') > MILKY * grams);

/** What softens for hours in its juice. */
const isStewed = ({ covered, until }: Bake, { of, grams }: MadeOf): boolean =>
  covered ||
  until.some(({ is }) => is === 'tender') ||
  of('flesh') > FLESHY * grams ||
  of('juicy') > JUICY * grams ||
  of('pulse') > 0;

function sizedAs({ makeup, of }: MadeOf, tin: InOven['tin'], pieces: number, part: Part): SizedAs {
  if (tin !== undefined) return pieces > 1 && tin.shape.areaM2 < CUP_M2 ? 'cup' : 'tin';
  if (pieces === 1) return 'whole';
  const isWet = makeup.water > WET && of('egg') > 0 && of('yeast') + of('flesh') + of('juicy') === 0;
  if (isWet) return 'wet piece';
  return part.steps.some((step) => does(step, ROLLED)) ? 'rolled piece' : 'piece';
}
const CUP_M2 = 0.01;
const ROLLED = deed(({ craft }) => craft === 'roll');

/** °C, over all the time that it is in. */
function meanOf({ stages, said }: Bake): number {
  const all = said?.high ?? 0;
  let [passed, sum] = [0, 0];
  for (const { celsius, untilMin } of stages) {
    const until = Math.min(untilMin, all);
    sum += celsius * Math.max(0, until - passed);
    passed = Math.max(passed, until);
  }
  return (sum + (stages.at(-1)?.celsius ?? 0) * Math.max(0, all - passed)) / all;
}

/** Most of it baked or boiled before; a meringue goes on what was. */
function isCookedBefore(recipe: Recipe, { body, said }: Bake, { fillings, grams }: MadeOf): boolean {
  if (fillings.some(({ head: { kind } }) => kind?.name === 'meringue')) return true;
  let before = 0;
  for (const { of, share, state } of body?.members ?? []) {
    const weighed = recipe.parts[of.part]?.head.ingredients[of.ingredient]?.weighed;
    const isBefore = Number.isFinite(state.heatedMin) && state.heatedMin > (said?.high ?? 0) + COOKED_MIN;
    if (weighed?.known === true && isBefore) before += weighed.grams.low * share.low;
  }
  return before > MOSTLY * grams;
}
