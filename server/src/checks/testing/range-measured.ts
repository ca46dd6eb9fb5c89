import type { Span } from '../../notation/tree.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { trialsOf } from './trials-read.ts';

type Values = Span & { readonly line: number };

export default defineCheck<Values>({
  code: 'range-measured',
  title: 'A trial holds a range where it measured one figure',
  family: 'testing',
  severity: 'info',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `One cooking takes one time, reaches one temperature and leaves one weight. A range in a trial is what somebody expected, or several cookings in one: nothing is learned from it, and the time in the oven is estimated as if it were not there.

**What to do.** Write the figure that the clock, the thermometer or the scale showed; give each cooking a trial of its own. **Silent** for \`overnight\` and for the amounts that were \`used\`.`,
  find: ({ outline }) => trialsOf(outline).flatMap(rangesIn),
  say: () => ({ message: 'A range is no measurement: write the one figure that was measured.' }),
  examples: {
    good: [
      'recipe Dough\n  500 g     bread flour\n  320 g     water\n  do Mix the flour with the water and prove overnight.\n\ntrial 2026-09-14\n  took    overnight to prove\n  reached … C in the middle\n  verdict keep\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-09-14\n  took    11 min to toast\n  verdict keep\n',
    ],
    bad: [
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-09-14\n  took    10-12 min to toast\n#         ^^^^^^^^^ range-measured: write the one figure\n',
      'recipe Custard\n  500 g     whole milk\n  do Heat the milk to 80 C.\n\ntrial 2026-09-14\n  reached 79-81 C in the pan\n#         ^^^^^^^ range-measured\n  weighed 480-490 g out of the pan\n#         ^^^^^^^^^ range-measured\n',
    ],
  },
});

const rangesIn = onceFor(({ took, reached, weighed }: Trial): readonly Found<Values>[] => [
  ...took.flatMap(({ at, duration }) =>
    duration.lowMin !== duration.highMin && !duration.overnight ? [rangeAt(at, duration)] : [],
  ),
  ...reached.flatMap(({ at, temperature, celsius }) =>
    celsius.low !== celsius.high ? [rangeAt(at, temperature)] : [],
  ),
  ...weighed.flatMap(({ at, amount }) => (amount.quantity.low !== amount.quantity.high ? [rangeAt(at, amount)] : [])),
]);

const rangeAt = (line: number, { start, end }: Span): Found<Values> => {
  const at = { line, start, end };
  return { at, values: at };
};
