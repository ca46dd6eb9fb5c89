/** The mark that a trial carries: what it is, and which lines are others since. */
import { changedSince, factsOf, isAsTested, readTrials } from '../../recipe/trials/trials.ts';
import { figure } from '../facts.ts';
import { holds, lineOfPart, placeOf, sayLine } from '../place.ts';
import type { HoverSource } from './fact.ts';

export const hoverTested: HoverSource = (snapshot, { line, at, character }) => {
  const { statement } = line;
  if (statement.kind !== 'tested' || !holds(statement.value, character)) return undefined;
  const tested = readTrials(snapshot.outline).findLast((trial) => trial.at < at)?.tested ?? [];
  const now = factsOf(snapshot.recipe);
  const changed = changedSince(now, tested).map((f) => sayLine(snapshot, lineOfPart(snapshot, f.part, f.line)));
  const said = isAsTested(now, tested)
    ? figure('Now', 'as it was cooked')
    : figure('Changed since', changed.length === 0 ? 'something was taken out' : [...new Set(changed)].join(', '));
  return {
    at: placeOf(at, statement.value),
    title: 'tested',
    subtitle: 'what every amount, time and temperature was',
    facts: [said, { kind: 'text', text: 'Written when the trial was recorded: leave it as it is.' }],
  };
};
