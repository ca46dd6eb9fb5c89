/**
 * Knows what trials teach of a time: the logarithm of what was taken to what was computed is the recipe's own, and the oven's, with some
 * scatter (normal priors; reference in DEVELOPERS.md). Refuses to know recipes.
 */

/** One trial. */
export interface Observed {
  /** ln(minutes taken / minutes computed to where it was stopped). */
  readonly log: number;
  /** Where a thermometer ended it; else a sign did. */
  readonly read: boolean;
  /** K by which the coldest place rises while the time grows by one unit of its logarithm: near 0, a reading tells little. */
  readonly steepness: number;
}

export interface Learned {
  /** By which the computed time is multiplied. */
  readonly factor: number;
  /** 1 sd of the logarithm of the next time. */
  readonly spread: number;
  /** Trials learned from; others were too far off. */
  readonly trials: number;
}

/** Scatter of one trial to the next, 1 sd of ln: where a temperature was read, and where a sign ended it (judgement). */
const READ = 0.08;
const BY_SIGN = 0.12;
/** K of a thermometer and its place. */
const THERMOMETER_K = 1;
/** So many sd off, a trial is shown and not learned from. */
const TOO_FAR = 3;

/** What is likely the next time, by a kind's own spread and the trials of the recipe. */
export function learn(spread: number, observed: readonly Observed[]): Learned {
  const used = observed.filter(({ log, ...each }) => Math.abs(log) <= TOO_FAR * Math.hypot(spread, scatter(each)));
  let precision = 1 / spread ** 2;
  let sum = 0;
  let last = READ ** 2;
  for (const each of used) {
    const variance = scatter(each) ** 2;
    precision += 1 / variance;
    sum += each.log / variance;
    last = Math.min(last, variance);
  }
  if (used.length === 0) return { factor: 1, spread, trials: 0 };
  return { factor: Math.exp(sum / precision), spread: Math.sqrt(1 / precision + last), trials: used.length };
}

const scatter = ({ read, steepness }: Pick<Observed, 'read' | 'steepness'>): number =>
  read && steepness > 0 ? Math.hypot(READ, THERMOMETER_K / steepness) : BY_SIGN;
