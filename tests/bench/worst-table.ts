/** Knows how the worst cases are printed: milliseconds at the limit, and the power by which they grow. */
import { printColumns, show } from './table.ts';
import { type Growth, OPERATIONS, type WorstFolder, type WorstText } from './worst.ts';

/** Growth that nobody need fear. */
const TO_REACH = 1.2;

export function printTexts(texts: readonly WorstText[]): string {
  const rows = texts.map(({ name, most, growth }) => [
    name,
    most.toLocaleString('en', { maximumFractionDigits: 0 }),
    ...OPERATIONS.map((operation) => cell(growth[operation])),
    judged(OPERATIONS.map((operation) => growth[operation])),
  ]);
  return `Worst texts: ms of the server's main thread at the limit, ^ the power by which it grows up to there
${printColumns([['', 'size', ...OPERATIONS, ''], ...rows])}`;
}

export function printFolders(folders: readonly WorstFolder[]): string {
  const rows = folders.map(({ name, most, check }) => [name, String(most), cell(check), judged([check])]);
  return `Worst folders: ms of all processors for \`quern check\`
${printColumns([['', 'files', 'check', ''], ...rows])}`;
}

const cell = ({ atMost, exponent }: Growth): string =>
  exponent === undefined ? show(atMost) : `${show(atMost)} ^${exponent.toFixed(1)}`;

function judged(all: readonly Growth[]): string {
  if (all.some(({ atMost }) => atMost === 'no answer')) return 'no answer';
  return all.every(({ exponent }) => exponent === undefined || exponent < TO_REACH + 0.05) ? '' : 'over';
}
