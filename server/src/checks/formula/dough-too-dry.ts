import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { fixLiquid, mainLiquid } from './liquid.ts';

export default defineCheck<BandValues>({
  code: 'dough-too-dry',
  title: 'A dough has less water than its kind needs',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'from memory',
    title: 'professional baking texts (Gisslen; Suas; Hamelman) and Ruhlman, Ratio (2009)',
  },
  explain: `**What it computes.** Hydration, as for \`dough-too-wet\`: the water of every ingredient but the flour, per flour by weight.

**Why it matters.** Flour that cannot take up enough water does not hold together: pastry cracks under the pin, bread dough is too stiff to knead and bakes to a tight crumb.

**What to do.** Bring the water up to the bottom of the usual band.

**Silent** where the part has no kind with a hydration band, or an ingredient of weight is not known.`,
  find: (part) => outsideBand(part, 'hydration', 'low', () => ingredientPlace(mainLiquid(part.head.ingredients))),
  say: (values) => sayBand(values, 'Use more water, or less flour.'),
  fix: (values, scene) => fixLiquid(values, scene, values.measure.usual[0] ?? 0),
  examples: {
    good: [
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  4 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  200 g     water\n# "water" dough-too-dry *: 40 %\n  10 g      fine salt\n  do Knead the flour, water and salt for 10 min.\n',
        after: {
          'Write 291 g water, 91 g more':
            'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  291 g     water\n  10 g      fine salt\n  do Knead the flour, water and salt for 10 min.\n',
        },
      },
    ],
  },
});
