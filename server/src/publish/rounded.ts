/**
 * Knows how the figures of reports and pages are added up and rounded.
 */

export const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
export const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));
