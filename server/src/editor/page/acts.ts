/**
 * Knows every act of the page by its name, as `data-do` says it, and that none may change the text but within it.
 * Refuses to know what an act does.
 */
import type { TextEdit } from '../../edits/text-edit.ts';
import type { Document } from '../../notation/document.ts';
import type { Act, Done, Outcome } from './acts/act.ts';
import { adjust, leave, turn } from './acts/adjust.ts';
import { fix } from './acts/fix.ts';
import { lookBack, lookCooked, lookDegrees, lookMakes, lookMeasures } from './acts/look-at.ts';
import { lookWrite } from './acts/look-write.ts';
import { madeOf } from './acts/made-of.ts';
import { orderOfSteps, serveAt } from './acts/serve-at.ts';
import { writeMinutes } from './acts/write-minutes.ts';
import { writeSkeleton } from './acts/write-skeleton.ts';

const ACTS: Readonly<Record<string, Act>> = {
  adjust,
  fix,
  leave,
  'look-makes': lookMakes,
  'look-measures': lookMeasures,
  'look-degrees': lookDegrees,
  'look-cooked': lookCooked,
  'look-back': lookBack,
  'look-write': lookWrite,
  'made-of': madeOf,
  turn,
  'serve-at': serveAt,
  'order-of-steps': orderOfSteps,
  'write-minutes': writeMinutes,
  'write-skeleton': writeSkeleton,
};

/** What comes of an act; of one that nobody knows, a sentence. */
export function outcomeOf(name: string, done: Done): Outcome {
  const act = Object.hasOwn(ACTS, name) ? ACTS[name] : undefined;
  if (act === undefined) return { refused: 'Quern does not know what this button does.' };
  const outcome = act(done);
  if (!('edits' in outcome)) return outcome;
  if (outcome.edits.length === 0) return { refused: 'Nothing of the text would change.' };
  return outcome.edits.every((edit) => liesIn(done.snapshot.document, edit))
    ? outcome
    : { refused: 'The change does not fit the text.' };
}

/** The names of all acts. */
export const actNames = (): readonly string[] => Object.keys(ACTS);

function liesIn({ lines }: Document, { start, end }: TextEdit): boolean {
  const within = ({ line, character }: TextEdit['start']): boolean =>
    character >= 0 && character <= (lines[line]?.text.length ?? -1);
  return (
    within(start) &&
    within(end) &&
    (start.line < end.line || (start.line === end.line && start.character <= end.character))
  );
}
