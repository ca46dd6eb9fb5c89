import { gramsText, trimmed } from '../../measure/number-text.ts';
import { type SheetSaid, sheetSaid } from '../../prose/thickness.ts';
import { deed, does } from '../../recipe/journey/deeds.ts';
import { defineCheck } from '../check.ts';
import { inHandAt } from '../printed/in-hand.ts';

interface Values extends SheetSaid {
  readonly needsMl: number;
  readonly thereMl: number;
}

/** g/ml: risen dough that is rolled out is hardly lighter (judgement). */
const LIGHTEST = 0.5;

const SHAPES = deed(({ act, craft }) => act === 'shape' || craft === 'roll');

/** The least that a sheet so thick is: as wide as it is thick, or all that is cut of it. */
const leastMl = ({ thickCm, cutterCm, pieces }: SheetSaid): number =>
  (Math.PI / 4) * thickCm * Math.max(thickCm ** 2, cutterCm === undefined ? 0 : pieces * cutterCm ** 2);

export default defineCheck<Values>({
  code: 'too-thick',
  title: 'Rolled so thick it would take more than there is',
  family: 'method',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The room that what is rolled or patted out takes at the thickness that the step says, by the pieces that a cutter cuts of it (\`2 cm thick and cut 12 rounds with a 6 cm cutter\`), and at the least as wide as it is thick; against the room that what the steps have taken until then can have, at 0.5 g to the ml.

**Why it matters.** It is a slip of a digit, or of mm and cm: so many pieces do not come of it, or they bake for far longer.

**What to do.** Mend the thickness, the cutter or the number.

**Silent** where a weight is not known.`,
  *find(part) {
    for (const step of part.steps) {
      const said = does(step, SHAPES) ? sheetSaid(step.sentence) : undefined;
      const there = said && inHandAt(part, step.line);
      if (said === undefined || there === undefined || there.grams.high <= 0) continue;
      const thereMl = there.grams.high / LIGHTEST;
      const needsMl = leastMl(said);
      if (needsMl > thereMl)
        yield {
          at: { line: step.line, start: said.start, end: said.end },
          values: { ...said, needsMl, thereMl },
        };
    }
  },
  say: ({ thickCm, cutterCm, pieces, needsMl, thereMl }) => ({
    message: `${cutterCm === undefined || pieces === 1 ? 'Anything' : `${trimmed(pieces, 0)} pieces`} ${trimmed(thickCm, 1)} cm thick ${cutterCm === undefined || pieces === 1 ? 'takes' : 'take'} ${gramsText(needsMl)} ml at the least, and there is no more than ${gramsText(thereMl)} ml: mend the thickness, the cutter or the number.`,
    value: thickCm,
    unit: 'cm',
  }),
  examples: {
    good: [
      'recipe Fishcakes\n  500 g     mashed potato\n  300 g     cooked salmon\n  do Mix the potato and salmon, pat out 2.5 cm thick and cut 6 with a 7 cm cutter.\n',
      'recipe Scones as scone\n  yield   12 scones\n  450 g     self-raising flour\n  85 g      butter\n  220 ml    milk\n  do Rub the butter into the flour and stir in the milk.\n  do Pat out 2 cm thick and cut 12 rounds with a 6 cm cutter.\n  do Bake the scones at 220 C for 12 min until golden.\n',
    ],
    bad: [
      'recipe Scones as scone\n  yield   12 scones\n  450 g     self-raising flour\n  85 g      butter\n  220 ml    milk\n  do Rub the butter into the flour and stir in the milk.\n  do Pat out 20 cm thick and cut 12 rounds with a 6 cm cutter.\n# "20 cm" too-thick: 12 pieces 20 cm thick take\n  do Bake the scones at 220 C for 12 min until golden.\n',
      'recipe Biscuits\n  yield   24 biscuits\n  200 g     plain flour\n  100 g     butter\n  100 g     caster sugar\n  do Rub the butter into the flour and stir in the sugar.\n  do Roll out 3 cm thick and cut 24 rounds with a 6 cm cutter.\n# "3 cm" too-thick: there is no more than\n  do Bake at 180 C for 12 min until golden.\n',
    ],
  },
});
