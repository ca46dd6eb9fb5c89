/**
 * Knows how a sum is laid out on the page of a finding: a Markdown table, a row a thing, and under it what they come to.
 */
import { gramsText } from '../measure/number-text.ts';

export interface SumRow {
  readonly name: string;
  readonly numbers: readonly number[];
}

/** Column by column. */
export const sums = (rows: readonly SumRow[]): readonly number[] =>
  rows.reduce<readonly number[]>((total, r) => r.numbers.map((n, i) => n + (total[i] ?? 0)), []);

/** `heads` names the rows first, then each column of numbers. */
export function sumTable(heads: readonly string[], rows: readonly SumRow[]): string[] {
  const line = (name: string, numbers: readonly number[]) => [name, ...numbers.map(gramsText)];
  return plainTable(heads, [...rows.map((r) => line(r.name, r.numbers)), line('**in all**', sums(rows))]);
}

/** The same of what does not add up; the first column is words. */
export const plainTable = (heads: readonly string[], rows: readonly (readonly string[])[]): string[] => [
  `| ${heads.map(asCell).join(' | ')} |`,
  `| --- |${' ---: |'.repeat(heads.length - 1)}`,
  ...rows.map((cells) => `| ${cells.map(asCell).join(' | ')} |`),
];

/** Whatever a food is called, a row has as many cells as its table. */
const asCell = (text: string): string => text.replaceAll('|', '\\|');
