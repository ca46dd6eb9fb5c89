import type { SentenceItem } from '../../notation/tree.ts';
import { type SourLimit, sourLimitIn } from '../../prose/sour-limit.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { PartHead, Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { anyPart, overParts } from '../over-parts.ts';
import { notesOf, placeIn } from '../printed/notes.ts';
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
  scope: 'recipe',
  source: { kind: 'publication', title: '21 CFR 114.3 (from memory): acid foods have a pH of 4.6 or below' },
  explain: `**What it computes.** A pH that a step or note names as the most, or as the end (\`check that the pH is below 4.2\`) against ${LIMIT_PH}.

**Why it matters.** Above pH ${LIMIT_PH} Clostridium botulinum grows in a shut bottle or jar, and makes a poison without smell.

**What to do.** Mend the figure: 4.0 leaves room for a meter that is off.

**Silent** where the list has milk, meat, fish or flour: cheeses, salami and doughs have limits of their own.`,
  find: ({ recipe }) => (hasOwn(recipe) ? [] : [...inSteps(recipe).flatMap(({ value }) => value), ...inNotes(recipe)]),
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
      'recipe Fermented salsa\n  note Store it cold. It should measure pH 5.4 or less.\n#                                       ^^^^^^ sour-limit-too-high\n  600 g     tomatoes\n  12 g      fine salt\n  do Mix the tomatoes and salt and ferment at 20 C for 5 d, until it smells sour and reads about pH 5.5.\n# "pH 5.5" sour-limit-too-high: takes 4.6 or below\n',
      'recipe Green relish\n  600 g     green tomatoes\n  18 g      fine salt\n  200 ml    white wine vinegar\n  do Blend everything. It must be at pH 5.2 or lower.\n# "pH 5.2" sour-limit-too-high: takes 4.6 or below\n',
      'recipe Hot sauce\n  600 g     red chillies\n  18 g      fine salt\n  150 ml    white wine vinegar\n  do Blend everything and check that the pH is below 6.0.\n# "pH is below 6.0" sour-limit-too-high: takes 4.6 or below\n',
    ],
  },
});

function tooHigh(items: readonly SentenceItem[]): SourLimit | undefined {
  const said = sourLimitIn(items);
  return said !== undefined && said.ph > LIMIT_PH && said.ph <= NEUTRAL_PH ? said : undefined;
}

const inSteps = overParts(({ index, steps }): readonly Found<Values>[] | undefined => {
  const found = steps.flatMap(({ line, sentence }) => {
    const said = tooHigh(sentence.items);
    return said === undefined
      ? []
      : [{ at: { part: index, line, start: said.start, end: said.end }, values: { ph: said.ph } }];
  });
  return found.length === 0 ? undefined : found;
});

const inNotes = (recipe: Recipe): readonly Found<Values>[] =>
  notesOf(recipe).flatMap((note) => {
    const said = tooHigh(note.items);
    return said === undefined ? [] : [{ at: placeIn(note, said), values: { ph: said.ph } }];
  });

const hasOwnLimits = ({ ingredients }: PartHead): boolean =>
  ingredients.some((each) => isIn(each, 'milk') || isIn(each, 'flesh') || isIn(each, 'flour'));
const hasOwn = anyPart(({ head }) => hasOwnLimits(head));
