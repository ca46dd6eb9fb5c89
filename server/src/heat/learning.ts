/**
 * Knows what trials teach of a time: the logarithm of what was taken to what was computed is the recipe's own, and the oven's, with some
 * scatter (normal priors and likelihoods, conjugate). Refuses to know recipes.
 */

/** One trial. */
export interface Observed {
  /** ln(minutes taken / minutes computed to where it was stopped). */
  readonly log: number;
  /** Where a thermometer ended it; else a sign did. */
  readonly read: boolean;
  /** K by which the coldest place rises while the time grows by one unit of its logarithm: near 0, a reading tells little. */
  readonly steepness: number;
  /** Which oven it was in; all of the same name, and all of none, are one. */
  readonly oven?: string;
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

/** What an oven's own share is, 1 sd of ln (judgement: dials are off by 10 K). */
const OVEN = 0.1;

/** What is likely the next time in that oven, by a kind's own spread and the trials of the recipe: those in other ovens tell less. */
export function learn(spread: number, observed: readonly Observed[], oven?: string): Learned {
  const used = observed.filter(({ log, ...each }) => Math.abs(log) <= TOO_FAR * Math.hypot(spread, scatter(each)));
  if (used.length === 0) return { factor: 1, spread, trials: 0 };
  // The recipe's own, from the other ovens.
  let recipe: Normal = { precision: 1 / (spread ** 2 - OVEN ** 2), mean: 0 };
  const others = new Set(used.flatMap((each) => (each.oven === oven ? [] : [each.oven])));
  for (const name of others) {
    const inOne = used.filter((each) => each.oven === name).map(normalOf);
    const { precision, mean } = inOne.reduce(together);
    recipe = together(recipe, { precision: 1 / (OVEN ** 2 + 1 / precision), mean });
  }
  const before = { precision: 1 / (OVEN ** 2 + 1 / recipe.precision), mean: recipe.mean };
  const own = used.filter((each) => each.oven === oven).map(normalOf);
  const { precision, mean } = own.reduce(together, before);
  return { factor: Math.exp(mean), spread: Math.sqrt(1 / precision + READ ** 2), trials: used.length };
}

interface Normal {
  readonly precision: number;
  readonly mean: number;
}

const normalOf = (each: Observed): Normal => ({ precision: 1 / scatter(each) ** 2, mean: each.log });

/** Two that tell of the same. */
function together(a: Normal, b: Normal): Normal {
  const precision = a.precision + b.precision;
  return { precision, mean: (a.mean * a.precision + b.mean * b.precision) / precision };
}

const scatter = ({ read, steepness }: Pick<Observed, 'read' | 'steepness'>): number =>
  read && steepness > 0 ? Math.hypot(READ, THERMOMETER_K / steepness) : BY_SIGN;
