/** The recipe worked out, as `format` says: text, json or html. */
import { REPORT_FORMATS } from '../../publish/reported.ts';
import { reported } from '../asked-for.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const report: Verb = {
  takes: ['format?'],
  title: 'Work the recipe out',
  run: ({ snapshot, arg, prices }) => {
    const named = textIn(arg, 'format') ?? 'text';
    const format = REPORT_FORMATS.find((each) => each === named);
    if (format === undefined) return { refused: `A report is one of ${REPORT_FORMATS.join(', ')}.` };
    const had = reported(snapshot, format, prices());
    return had.ok ? { text: had.value } : { refused: had.why };
  },
};
