/** What the checks of cooking find in a recipe of few words. */
import { open } from './harness.ts';

const COOKING = new Set(['undercooked', 'no-safe-temperature', 'raw-egg', 'raw-flour']);

/** Codes with their severities. A line with a figure first is listed, `part` begins one, any other is a step. */
export function cookingFound(...lines: readonly string[]): readonly string[] {
  const text = lines
    .map((line) => (/^\d/.test(line) ? `  ${line}` : line.startsWith('part ') ? `\n${line}` : `  do ${line}`))
    .join('\n');
  const { findings } = open(`recipe Test\n${text}\n`);
  return [...new Set(findings.open.filter((f) => COOKING.has(f.code)).map((f) => `${f.code} ${f.severity}`))].sort();
}
