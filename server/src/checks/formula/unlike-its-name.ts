import { takenFor } from '../../recipe/taken-for.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { isHigh, sayBand } from './band.ts';
import { carrierIn, type FarValues, farFrom } from './far-from-name.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<FarValues>({
  code: 'unlike-its-name',
  title: 'A part of no kind is far from all that it could be by its name',
  family: 'formula',
  severity: 'warning',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** A part without \`as\` is taken for what the last words of its name, or of the title, say: \`Blueberry muffins\` for muffins. It is held against the far ends alone of that kind's bands, past which the thing fails; where a name may be several kinds, against those of all of them.

**What to do.** Look at the amount. If the dish is something else, write its kind, or another title.

**Silent** for parts with a kind, and where a weight is not known.`,
  find: ({ recipe, house }) => unlike(recipe, house),
  say: (values) =>
    sayBand(values, `It is taken for ${values.dish} by its name; if it is something else, write \`as\` and its kind.`),
  fix: (values, scene) =>
    isHigh(values.verdict)
      ? mendAmount(values, scene, (part) => carrierIn(part, values.measure.measure, 'high'))
      : // Either side of the ratio may be the one that is wrong.
        [],
  examples: {
    good: [
      'recipe Lentil soup\n  300 g     red lentils\n  1.2 l     water\n  12 g      fine salt\n  do Simmer the lentils in the water with the salt for 25 min until soft.\n',
      'recipe Walnut bread\n  450 g     bread flour\n  300 g     water\n  100 g     walnuts\n  9 g       fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt, yeast and walnuts and prove at 24 C for 2 h.\n',
    ],
    bad: [
      'recipe Lentil soup\n  300 g     red lentils\n  1.2 l     water\n  60 g      fine salt\n# "fine salt" unlike-its-name *: 3.8 to\n  do Simmer the lentils in the water with the salt for 25 min until soft.\n',
      'recipe Walnut bread\n  450 g     bread flour\n  300 g     water\n  100 g     walnuts\n  40 g      fine salt\n# "fine salt" unlike-its-name *: 8.9 %\n  5 g       instant yeast\n  do Knead the flour, water, salt, yeast and walnuts and prove at 24 C for 2 h.\n',
    ],
  },
});

const unlike = foundAgain<FarValues>((recipe) => takenFor(recipe).flatMap(farFrom));
