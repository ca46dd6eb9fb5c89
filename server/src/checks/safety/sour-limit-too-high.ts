import { sourLimitIn } from '../../prose/sour-limit.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { PartHead } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly ph: number;
}

/** 21 CFR 114.3(b) (from memory): acid foods and acidified foods have a pH of 4.6 or below. */
const LIMIT_PH = 4.6;
/** Water; beyond it nobody means something sour. */
const NEUTRAL_PH = 7;

export default defineCheck<Values>({
  code: 'sour-limit-too-high',
  title: 'What acid is to keep may be less sour than is safe',
  family: 'safety',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'publication', title: '21 CFR 114.3 (from memory): acid foods have a pH of 4.6 or below' },
  explain: `**What it computes.** A pH that a step names as the most (\`check that the pH is below 4.2\`) against ${LIMIT_PH}.

**Why it matters.** Above pH ${LIMIT_PH} Clostridium botulinum grows in a shut bottle or jar, and makes a poison without smell.

**What to do.** Mend the figure: 4.0 leaves room for a meter that is off.

**Silent** where the list has milk, meat, fish or flour: cheeses, salami and doughs have limits of their own.`,
  *find({ head, steps }) {
    if (hasOwnLimits(head)) return;
    for (const { line, sentence } of steps) {
      const said = sourLimitIn(sentence);
      if (said !== undefined && said.ph > LIMIT_PH && said.ph <= NEUTRAL_PH)
        yield { at: { line, start: said.start, end: said.end }, values: { ph: said.ph } };
    }
  },
  say: ({ ph }) => ({
    message: `pH ${ph} is not sour enough to keep it safe, which takes ${LIMIT_PH} or below: mend the figure. ${CAUTION}`,
    value: ph,
    unit: '1',
    band: [null, LIMIT_PH],
  }),
  examples: {
    good: [
      'recipe Mozzarella\n  4 l       whole milk\n  1 tsp     rennet\n  do Warm the milk to 32 C, stir in the rennet and leave for 1 h at 32 C.\n  do Cut and drain the curd, and wait until its pH is below 5.3.\n',
      'recipe Hot sauce\n  600 g     red chillies\n  18 g      fine salt\n  150 ml    white wine vinegar\n  do Blend everything and check that the pH is below 4.0.\n',
    ],
    bad: [
      'recipe Green relish\n  600 g     green tomatoes\n  18 g      fine salt\n  200 ml    white wine vinegar\n  do Blend everything. It must be at pH 5.2 or lower.\n# "pH 5.2" sour-limit-too-high: takes 4.6 or below\n',
      'recipe Hot sauce\n  600 g     red chillies\n  18 g      fine salt\n  150 ml    white wine vinegar\n  do Blend everything and check that the pH is below 6.0.\n# "pH is below 6.0" sour-limit-too-high: takes 4.6 or below\n',
    ],
  },
});

const hasOwnLimits = ({ ingredients }: PartHead): boolean =>
  ingredients.some((each) => isIn(each, 'milk') || isIn(each, 'flesh') || isIn(each, 'flour'));
