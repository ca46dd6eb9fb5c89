/**
 * Knows how a fix that stands on the page is found again: by its finding's code and place, and its title, never by a message.
 */
import { offeredFixes } from '../../../workspace/offered.ts';
import { type Act, numberIn, textIn } from './act.ts';

/** Carries `{ code, line, start, title }`, lines from 1 as everywhere on the page. */
export const fix: Act = ({ snapshot, arg }) => {
  const [code, title] = [textIn(arg, 'code'), textIn(arg, 'title')];
  const [line, start] = [numberIn(arg, 'line'), numberIn(arg, 'start')];
  if (code === undefined || title === undefined || line === undefined)
    return { refused: 'The page does not say which fix is meant.' };
  const here = snapshot.findings.open.filter(
    (f) => f.code === code && f.at.line === line - 1 && (start === undefined || f.at.start === start),
  );
  const found = here.flatMap((finding) => offeredFixes(finding, snapshot)).find((f) => f.title === title);
  return found === undefined
    ? { refused: 'The text has changed: what this would mend is not there any more.' }
    : { edits: found.edits, said: `${found.title}: written.` };
};
