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

/** '1385 g', '1370–1400 g' where the recipe leaves room, '12.4 kg' for a large batch, 'at least 1370 g' where not all is known. */
export function sayMass(massG: StatusParams['massG']): string {
  if (massG === null) return 'Weight not known';
  const inKg = massG.high >= 10_000;
  const say = (grams: number): string => (inKg ? (grams / 1000).toFixed(1) : roundTo(grams, massG.high < 20 ? 1 : 0));
  const low = say(massG.low);
  const high = say(massG.isLeast ? massG.low : massG.high);
  return `${massG.isLeast ? 'at least ' : ''}${low === high ? low : `${low}–${high}`} ${inKg ? 'kg' : 'g'}`;
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

/** The mark of each state: never, changed since, as it stands. None of them says that all is well. */
const stateMarks: Readonly<Record<TrialRecord['state'], string>> = {
  'never cooked': '○',
  'cooked, changed since': '◐',
  'cooked as written': '●',
};

/** '○ 1385 g, 12 squares, 2 warnings': what a recipe comes to, in one place of the bar. */
export function sayInBar({ massG, yield: made, record, findings }: StatusParams): string {
  const mark = record === undefined || record === null ? '' : `${stateMarks[record.state]} `;
  const facts = [
    ...(massG === null ? [] : [sayMass(massG)]),
    ...(made === null ? [] : [made]),
    ...(isQuiet(findings) ? [] : [sayGravest(findings)]),
  ];
  return facts.length === 0 ? `${mark}No findings` : `${mark}${facts.join(', ')}`;
}

/** The same as a sentence for each fact, for who hears or points at it. */
export function sayAloud({ massG, yield: made, record, findings }: StatusParams): readonly string[] {
  return [
    ...(record === undefined || record === null ? [] : [`${sayRecord(record)}.`]),
    `${sayMass(massG)}${massG === null ? '' : ' of ingredients'}${made === null ? '' : `, makes ${made}`}.`,
    `${sayFindings(findings)}.`,
  ];
}

const isQuiet = ({ error, warning, info, hint }: FindingCounts): boolean => error + warning + info + hint === 0;

/** The gravest alone: '1 error', where there are warnings too. */
function sayGravest({ error, warning, info, hint }: FindingCounts): string {
  const none = { error: 0, warning: 0, info: 0, hint: 0 };
  if (error > 0) return sayFindings({ ...none, error });
  return warning > 0 ? sayFindings({ ...none, warning }) : sayFindings({ ...none, info, hint });
}
