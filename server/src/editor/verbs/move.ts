/** A line of a list or a step one place up or down, within its part: `line` counts from 0, `by` is -1 or 1. */
import { moveLine } from '../../edits/move-line.ts';
import { numberIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const move: Verb = {
  takes: ['line', 'by'],
  title: 'Move the line',
  run: ({ snapshot: { document, recipe }, arg }) => {
    const [line, by] = [numberIn(arg, 'line'), numberIn(arg, 'by')];
    if (line === undefined || (by !== 1 && by !== -1)) return { refused: '`line` counts from 0, and `by` is -1 or 1.' };
    const moved = moveLine(document, recipe, line, by);
    return moved === undefined
      ? { refused: 'There is no line of the same sort beside it in its part.' }
      : { edits: [moved], changes: [], said: [] };
  },
};
