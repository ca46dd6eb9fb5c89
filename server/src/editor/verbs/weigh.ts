/** What an `amount` of a food weighs in the house of the file, and why: `1 1/2 cup plain flour`. */
import { weighedWords } from '../asked-for.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const weigh: Verb = {
  takes: ['amount'],
  title: 'Weigh an amount',
  run: ({ snapshot, arg }) => {
    const had = weighedWords(textIn(arg, 'amount') ?? '', snapshot);
    return had.ok ? { text: had.value.join('\n') } : { refused: had.why };
  },
};
