import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { fixLiquid, mainLiquid, waterBrought } from './liquid.ts';

export default defineCheck<BandValues>({
  code: 'dough-too-wet',
  title: 'A dough has more water than its kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'from memory',
    title:
      'professional baking texts (Gisslen; Suas; Hamelman) and Ruhlman, Ratio (2009), which gives pie dough as 3 flour : 2 fat : 1 water',
  },
  explain: `**What it computes.** Hydration: the water of every ingredient but the flour, per flour by weight. Milk, egg, butter and cheese count by the water in them; chopped herbs, vegetables and fruit by half of theirs, since the tissue holds the rest.

**Why it matters.** Water turns flour protein into gluten and leaves as steam. A crust with too much is tough, shrinks from the rim and bakes leathery; a bread dough runs flat.

**What to do.** Take the water down to the top of the usual band, or count what herbs, egg and cheese bring before adding any. Amounts by the cup carry the spread of the cup, and only what is outside the band at its best is reported.

**Silent** where the part has no kind with a hydration band, or an ingredient of weight is not known.`,
  find: (part) => outsideBand(part, 'hydration', 'high', () => ingredientPlace(mainLiquid(part.head.ingredients))),
  say: (values) => sayBand(values, `The water comes from ${waterBrought(values.contents)}: use less of it.`),
  fix: (values, scene) => fixLiquid(values, scene, values.measure.usual[1] ?? 0),
  examples: {
    good: [
      'recipe Crust\npart crust as shortcrust\n  1 1/2 cup  plain flour\n  1/2 cup   butter\n  1/4 cup   water\n  do Rub the butter into the flour and bind with the water.\n',
    ],
    bad: [
      'recipe Crust\npart crust as shortcrust\n  1 1/2 cup  plain flour\n  1/2 cup   butter\n  1 cup     water\n# "water" dough-too-wet *: 18 to 40 % is usual for shortcrust\n  do Rub the butter into the flour and bind with the water.\n',
      {
        text: 'recipe Crust\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  120 g     water\n# "water" dough-too-wet *: 68 %\n  do Rub the butter into the flour and bind with the water.\n',
        after: {
          'Write 64 g water, 56 g less':
            'recipe Crust\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  64 g      water\n  do Rub the butter into the flour and bind with the water.\n',
        },
      },
    ],
  },
});
