/**
 * Knows every verb that an editor may have done by name, each called as on the command line, and that none changes a text but within it.
 * Refuses to know what a verb does.
 */
import type { TextEdit } from '../edits/text-edit.ts';
import { capital } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { adjust } from './verbs/adjust.ts';
import { convert } from './verbs/convert.ts';
import { explain } from './verbs/explain.ts';
import { format } from './verbs/format.ts';
import { move } from './verbs/move.ts';
import { plan } from './verbs/plan.ts';
import { publish } from './verbs/publish.ts';
import { read } from './verbs/read.ts';
import { report } from './verbs/report.ts';
import { scale } from './verbs/scale.ts';
import { trial } from './verbs/trial.ts';
import type { Answered, Asked, Verb } from './verbs/verb.ts';
import { weigh } from './verbs/weigh.ts';

/** By the name behind `quern.`. */
export const VERBS: Readonly<Record<string, Verb>> = {
  adjust,
  convert,
  explain,
  format,
  move,
  plan,
  publish,
  read,
  report,
  scale,
  trial,
  weigh,
};

/** What comes of a verb; a change that changes nothing is refused in words. */
export function runVerb(verb: Verb, asked: Asked): Answered {
  const answered = verb.run(asked);
  if ('refused' in answered) return { refused: asSentence(answered.refused) };
  if (!('edits' in answered)) return answered;
  const edits = answered.edits.filter((edit) => textAt(asked.snapshot, edit) !== edit.text);
  return edits.length === 0
    ? { refused: ['Nothing of the text would change.', ...answered.said].join(' ') }
    : { ...answered, edits };
}

const asSentence = (words: string): string => (/[.!?]$/.test(words) ? capital(words) : `${capital(words)}.`);

function textAt({ document: { lines } }: Snapshot, { start, end }: TextEdit): string | undefined {
  return start.line === end.line ? lines[start.line]?.text.slice(start.character, end.character) : undefined;
}
