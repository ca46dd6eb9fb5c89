/**
 * Knows whether food is done, or cooked in part alone: seared, rare, only begun.
 * Refuses to know how it came to be so.
 */
import { type FoodState, type Read, WAS } from './bodies.ts';
import { LETHAL_C } from './readings.ts';

/** Poultry in pieces takes longer than this in any oven (common practice, no source). */
const BEGUN_MIN = 20;
/** In boiling water for no longer than this it is scalded, and raw yet (judgement). */
const PARBOILED_MIN = 4;

/** Below this no time is published for any flesh (Food Code 2022, 3-401.11(B)). */
const LEAST_HELD_C = 54;

/** The last figure in it is one that no time makes enough of. */
function isReadLow(reads: readonly Read[]): boolean {
  const last = reads.findLast(({ of }) => of === 'food');
  return last !== undefined && last.celsius.high < LEAST_HELD_C;
}

/** Cooked through, or as hot as nothing lives in. */
export const isDone = ({ cooked, reads }: FoodState): boolean =>
  cooked === 'through' || reads.some(({ of, celsius }) => of === 'food' && celsius.low >= LETHAL_C);

/** Seared, half done by what is seen or read, or only begun; no more than scalded it is raw yet. */
export const isPartly = (state: FoodState): boolean =>
  state.cooked !== 'through' && (isToldRaw(state) || isHeatedPartly(state));

/** `The bones will still be raw`: of what nobody heated, it was. */
const isToldRaw = ({ cooked, was }: FoodState): boolean => cooked === 'raw' && (was & WAS.rare) !== 0;

/** By what is told of it, and by no figure that kills: `74 C, and still pink` is done. */
const isTakenOffRare = (state: FoodState): boolean => (state.was & WAS.rare) !== 0 && !isDone(state);

const isHeatedPartly = (state: FoodState): boolean =>
  (state.cooked === 'outside' || isTakenOffRare(state) || isReadLow(state.reads) || isOnlyBegun(state)) &&
  state.heatedBy !== undefined &&
  (state.heatedBy.event.medium?.is !== 'water' || isParboiled(state));

const isParboiled = ({ heatedMin }: FoodState): boolean => heatedMin >= PARBOILED_MIN && heatedMin < Infinity;

/** Whole pieces that lay in the oven for minutes, with nothing said of how far they came. */
const isOnlyBegun = ({ cooked, cut, was, reads, heatedBy, heatedMin }: FoodState): boolean =>
  cooked === 'unsaid' &&
  cut === 'whole' &&
  (was & WAS.signed) === 0 &&
  heatedMin <= BEGUN_MIN &&
  (heatedBy?.event.where.some(({ is }) => is === 'oven') === true || reads.some(({ of }) => of === 'oven')) &&
  reads.every(({ of }) => of !== 'food');
