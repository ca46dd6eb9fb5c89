import { gramsText } from '../../measure/number-text.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { mainLiquid, waterOutsideG } from './liquid.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'dough-too-dry',
  title: 'A dough has less water than its kind needs',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['hydration', 'cake hydration', 'liquid per flour'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Hydration, as for \`dough-too-wet\`: the water of every ingredient but the flour, per flour by weight.

**Why it matters.** Flour that cannot take up enough water does not hold together: pastry cracks under the pin, bread dough is too stiff to knead and bakes to a tight crumb.

**What to do.** Bring the water up to the bottom of the usual band.

**Silent** where the part has no kind with a hydration band, or an ingredient of weight is not known.`,
  *find(part) {
    for (const name of ['hydration', 'cake hydration', 'liquid per flour'] as const)
      yield* outsideBand(part, name, 'low', () => ingredientPlace(mainLiquid(part.head.ingredients)));
  },
  say: (values) =>
    sayBand(
      values,
      values.open === undefined && values.measure.measure !== 'liquid per flour'
        ? `It is about ${gramsText(waterOutsideG(values))} g short.`
        : undefined,
    ),
  fix: (values, scene) => mendAmount(values, scene, ({ head }) => mainLiquid(head.ingredients)),
  examples: {
    good: [
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  4 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
      'recipe Levain loaf\npart levain\n  100 g     bread flour\n  100 g     water\n  20 g      sourdough starter\n  do Mix the flour, water and starter and ferment at 25 C for 6 h.\npart dough as lean bread\n  400 g     bread flour\n  210 g     water\n  10 g      fine salt\n  do Mix the flour and the water with the levain, then knead in the salt for 10 min.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  200 g     water\n# "water" dough-too-dry *: 40 %\n  10 g      fine salt\n  do Knead the flour, water and salt for 10 min.\n',
        after: {
          'Write 275 g water, 75 g more':
            'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  275 g     water\n  10 g      fine salt\n  do Knead the flour, water and salt for 10 min.\n',
        },
      },
      'recipe Muffins\npart batter as muffin\n  300 g     plain flour\n  12 g      baking powder\n  90 g      caster sugar\n  60 g      butter, melted\n  1 large   egg\n  40 g      whole milk\n# "whole milk" dough-too-dry *: 55 to 130 % is usual for muffin\n  do Mix the flour, baking powder and sugar.\n  do Stir in the butter, egg and milk.\n',
    ],
  },
});
