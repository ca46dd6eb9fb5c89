import type { Act } from '../../prose/event.ts';
import { deed, does } from '../../recipe/journey/deeds.ts';
import { defineCheck } from '../check.ts';
import { bakingOrder, hasCue, verbText } from './cues.ts';

export default defineCheck<{ readonly verb: string }>({
  code: 'time-missing',
  title: 'A bake has no time and no sign of doneness',
  family: 'method',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step bakes or roasts, and neither it nor the steps after it say for how long, or by what sign it is done.

**Why it matters.** Nobody can plan it, and nobody who has not made it before can tell when to look.

**What to do.** Write both: \`Bake at 180 C for 25-30 min until gold\`.

**Silent** where a time of the bake, a temperature in the food or a sign stands in the step or in one of the next two, and where the step points elsewhere (*as above*, *as on the pack*).`,
  *find(part) {
    for (const [s, step] of part.steps.entries()) {
      const order = bakingOrder(step);
      if (order === undefined || hasCue(part, step)) continue;
      if (part.steps.slice(s, s + 3).some((near) => does(near, TIMED_OR_ELSEWHERE))) continue;
      const { start, end } = order.verb;
      yield { at: { line: step.line, start, end }, values: { verb: verbText(part, step, order.verb) } };
    }
  },
  say: ({ verb }) => ({
    message: `For how long? Write the time and the sign of doneness: \`${verb} … for 25-30 min until gold\`.`,
  }),
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter, stir in the oats and chill for 20 min before baking.\n  do Bake at 180 C for 25 min until gold.\n',
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min until gold.\n',
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C until gold at the rim.\n',
    ],
    bad: [
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C.\n#    ^^^^ time-missing\n',
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C.\n#    ^^^^ time-missing\n  do Set on a rack and cool for 10 min.\n',
      'recipe Roots\n  oven    200 C\n  600 g     carrots\n  30 g      olive oil\n  do Toss the carrots in the oil and roast.\n#                                    ^^^^^ time-missing\n',
    ],
  },
});

/** A time of what comes after it, cooling or serving, is none of the bake's. */
const TIMED_OR_ELSEWHERE = deed(
  ({ times, elsewhere, act, where }) =>
    elsewhere ||
    (times.length > 0 &&
      (!AFTERWARDS.has(act) ||
        where.some(({ is, way, not }) => !not && way !== 'out of' && (is === 'oven' || is === 'hot')))),
);
const AFTERWARDS: ReadonlySet<Act> = new Set<Act>([
  'cool',
  'freeze',
  'thaw',
  'stay',
  'rise',
  'steep',
  'eat',
  'pack',
  'close',
  'cover',
  'reserve',
]);
