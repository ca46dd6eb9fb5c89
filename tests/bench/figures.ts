/** Medians and the like. */

/** The value below which the share of the sample lies, by the nearest rank; undefined of nothing. */
export function quantile(sample: readonly number[], share: number): number | undefined {
  const sorted = [...sample].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
}

export function median(sample: readonly number[]): number | undefined {
  const sorted = [...sample].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? undefined : (upper + lower) / 2;
}

export function sum(sample: readonly number[]): number {
  return sample.reduce((total, n) => total + n, 0);
}
