/** A trial of today begun, or of `date`, at the end of the file. */
import { isDay } from '../../measure/calendar.ts';
import { textIn } from '../page/acts/act.ts';
import { startTrial } from '../trial.ts';
import type { Verb } from './verb.ts';

export const trial: Verb = {
  takes: ['date?', 'by?'],
  title: 'Record a trial',
  run: ({ snapshot, arg, today }) => {
    const date = textIn(arg, 'date') ?? today;
    if (!isDay(date)) return { refused: 'A date is written as 2026-09-14.' };
    const started = startTrial(snapshot, date, textIn(arg, 'by'));
    if (started === undefined) return { refused: 'There is no recipe in this file to try, or not the whole of it.' };
    return { edits: started.edits, changes: [`trial ${date}`], said: [] };
  },
};
