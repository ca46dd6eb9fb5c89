import type { Span } from '../../notation/tree.ts';
import { deed, does, eventsOf } from '../../recipe/journey/deeds.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { cookingOrder, hasCue, verbText } from './cues.ts';

export default defineCheck<{ readonly verb: string }>({
  code: 'no-doneness-cue',
  title: 'A bake or fry has a time and no sign of doneness',
  family: 'method',
  severity: 'info',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step bakes, roasts, grills or fries for so many minutes, and neither it nor the steps after it say how the cook can tell that it is done.

**Why it matters.** Ovens differ by 15 °C and more from what their dials say, dishes by their depth and how cold they went in. The time is the tester's; the sign is everybody's.

**What to do.** Say what is seen, felt or read: \`until risen and gold\`, \`until a pick comes out clean\`, \`until the centre reads 80 C\`.

**Silent** where the sentence says *until*, *when* or how it looks, where a temperature in the food is given, where one of the next two steps tests it, and for a bake under weights that a bare one follows.`,
  *find(part) {
    for (const step of part.steps) {
      const order = cookingOrder(step);
      if (order === undefined || !isTimed(step, order.start) || hasCue(part, step)) continue;
      if (isLastHeat(part, step) && !isRead(part, step))
        yield { at: { line: step.line, ...spanOf(order.verb) }, values: { verb: verbText(part, step, order.verb) } };
    }
  },
  say: ({ verb }) => ({
    message: `By what does the cook see that it is done? Say so after the time: \`${verb} … until gold\`, or \`until the centre reads …\`.`,
  }),
  examples: {
    good: [
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180 C for 10 min until golden.\n',
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min.\n  do Test with a pick, and cool in the pan.\n',
    ],
    bad: [
      'recipe Slab\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min.\n#    ^^^^ no-doneness-cue\n',
      'recipe Fritters\n  200 g     courgettes, grated\n  80 g      plain flour\n  90 g      whole milk\n  do Mix the courgettes with the flour and milk.\n  do Fry spoonfuls for 4 min.\n#    ^^^ no-doneness-cue\n',
    ],
  },
});

const spanOf = ({ start, end }: Span): Span => ({ start, end });

/** Something is dry-cooked for so long from there on: what bubbles by the clock is another matter than the fry before it. */
const isTimed = (step: Step, from: number): boolean =>
  eventsOf(step).some(
    ({ act, craft, medium, times, start }) =>
      start >= from &&
      act !== 'cool' &&
      act !== 'freeze' &&
      act !== 'stay' &&
      (craft !== undefined || (medium?.is !== 'water' && medium?.is !== 'steam')) &&
      times.some(({ kind }) => kind === 'spent'),
  );

/** The first of several bakes, or a fry before a simmer, need not be told by its look. */
function isLastHeat(part: Part, step: Step): boolean {
  const later = part.steps.slice(part.steps.indexOf(step) + 1);
  return !later.some((s) => does(s, HEATING));
}

const HEATING = deed(({ act }) => act === 'heat');

/** An earlier step has read the food already. */
const isRead = (part: Part, step: Step): boolean =>
  part.steps.slice(0, part.steps.indexOf(step)).some((s) => does(s, READ_INSIDE));

const READ_INSIDE = deed(({ temperatures }) => temperatures.some(({ of, inside }) => of === 'food' && inside));
