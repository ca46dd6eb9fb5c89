import type { FindingCounts, StatusParams, TrialRecord } from '../../server/src/lsp/messages.ts';

/** '1 error, 2 warnings', the graver first; 'No findings' for none. */
export function sayFindings(counts: FindingCounts): string {
  const said = [
    sayCount(counts.error, 'error', 'errors'),
    sayCount(counts.warning, 'warning', 'warnings'),
    sayCount(counts.info, 'note', 'notes'),
    sayCount(counts.hint, 'hint', 'hints'),
  ].filter((words) => words !== undefined);
  return said.length === 0 ? 'No findings' : said.join(', ');
}

/** '1385 g', '1370–1400 g' where the recipe leaves room, '12.4 kg' for a large batch. */
export function sayMass(massG: StatusParams['massG']): string {
  if (massG === null) return 'Weight not known';
  const inKg = massG.high >= 10_000;
  const say = (grams: number): string => (inKg ? (grams / 1000).toFixed(1) : roundTo(grams, massG.high < 20 ? 1 : 0));
  const low = say(massG.low);
  const high = say(massG.high);
  return `${low === high ? low : `${low}–${high}`} ${inKg ? 'kg' : 'g'}`;
}

/** 'Cooked as written, 2 trials, the last on 2026-09-14'. */
export function sayRecord({ state, trials, latest }: TrialRecord): string {
  const said = state.charAt(0).toUpperCase() + state.slice(1);
  if (trials === 0 || latest === null) return said;
  return trials === 1 ? `${said}, tried on ${latest}` : `${said}, ${trials} trials, the last on ${latest}`;
}

function sayCount(count: number, one: string, many: string): string | undefined {
  return count === 0 ? undefined : `${count} ${count === 1 ? one : many}`;
}

function roundTo(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}
