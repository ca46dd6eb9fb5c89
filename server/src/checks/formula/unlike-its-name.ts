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
  explain: `**What it computes.** A part without \`as\` is taken for what its name, or the title of the recipe, says by its last words, where it is mostly made of what that is made of: \`Blueberry muffins\` for muffins. It is then held against the bands of that kind, by their far ends alone, past which the thing fails; where a name may be several kinds, a loaf lean or rich, it must be past the ends of all of them.

**Why it matters.** A spoon for another or a figure too many is in recipes that say no kind as well.

**What to do.** Look at the amount. If the dish is something else, write its kind, or another title.

**Silent** for parts with a kind, for what lies between the usual band and its far end, where a weight is not known, and in a recipe that builds on another file.`,
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
      'recipe Lentil soup\n  300 g     red lentils\n  1.2 l     water\n  1         onion, chopped\n  12 g      fine salt\n  do Simmer the lentils and the onion in the water with the salt for 25 min until soft.\n',
      'recipe Walnut bread\n  450 g     bread flour\n  300 g     water\n  100 g     walnuts\n  9 g       fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min and work in the walnuts.\n  do Prove at 24 C for 2 h, shape and bake at 220 C for 40 min until it sounds hollow.\n',
    ],
    bad: [
      'recipe Chocolate truffles\n  200 g     dark chocolate\n# "dark chocolate" unlike-its-name: 0.1\n  2 l       double cream\n  do Heat the cream to 90 C, pour it over the chocolate and stir until smooth.\n  do Chill at 4 C for 4 h and shape.\n',
      'recipe Walnut bread\n  450 g     bread flour\n  300 g     water\n  100 g     walnuts\n  40 g      fine salt\n# "fine salt" unlike-its-name *: 8.9 %\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min and work in the walnuts.\n  do Prove at 24 C for 2 h, shape and bake at 220 C for 40 min until it sounds hollow.\n',
    ],
  },
});

const unlike = foundAgain<FarValues>((recipe) => takenFor(recipe).flatMap(farFrom));
