import { gramsText } from '../../measure/number-text.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { gardenWater, mainLiquid, waterBrought, waterOutsideG } from './liquid.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'dough-too-wet',
  title: 'A dough has more water than its kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['hydration', 'cake hydration', 'liquid per flour'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Hydration: the water of every ingredient but the flour, per flour by weight. Milk, egg, butter and cheese count by the water in them; chopped herbs, vegetables and fruit by half of theirs, since the tissue holds the rest; fruit in a batter that is not mashed or grated by none to half. Starters, soakers and doughs made in an earlier part count as the flour and water they are made of. For cakes and cookies, dry grain, bread, nuts and cocoa are taken once as flour and once as not. For a frying batter it is the liquid and egg that are stirred in, by weight: what vegetables hold stays in them.

**Why it matters.** Water turns flour protein into gluten and leaves as steam. A crust with too much is tough, shrinks from the rim and bakes leathery; a bread dough runs flat; a cake sinks.

**What to do.** Take the water down to the top of the usual band. Where herbs, vegetables or fruit bring a good part of it, the added water must fall by about what they bring. Amounts by the cup carry the spread of the cup, and only what is outside the band at its best is reported.

**Silent** where the part has no kind with a hydration band, or an ingredient of weight is not known.`,
  *find(part) {
    for (const name of ['hydration', 'cake hydration', 'liquid per flour'] as const)
      yield* outsideBand(part, name, 'high', () => place(part));
  },
  say: (values) => {
    // How much too much hangs on what nobody knows.
    if (values.open !== undefined || values.measure.measure === 'liquid per flour') return sayBand(values);
    const garden = gardenWater(values.contents);
    const over = gramsText(waterOutsideG(values));
    return sayBand(
      values,
      garden === undefined
        ? `It is about ${over} g too much; the water comes from ${waterBrought(values.contents)}.`
        : `Of the water, ${Math.round(garden.grams)} g come out of what is chopped in (${garden.words}: half of what it holds), so what is added must fall by about ${over} g.`,
    );
  },
  fix: (values, scene) => mendAmount(values, scene, ({ head }) => mainLiquid(head.ingredients)),
  examples: {
    good: [
      'recipe Crust\npart crust as shortcrust\n  1 1/2 cup  plain flour\n  1/2 cup   butter\n  1/4 cup   water\n  do Rub the butter into the flour and bind with the water.\n',
      'recipe Herb crust\npart crust as shortcrust\n  240 g     plain flour\n  120 g     butter\n  60 g      parsley, chopped\n  30 g      ice water\n  do Rub the butter into the flour.\n  do Stir in the parsley and bind with the ice water.\n',
    ],
    bad: [
      'recipe Crust\npart crust as shortcrust\n  1 1/2 cup  plain flour\n  1/2 cup   butter\n  1 cup     water\n# "water" dough-too-wet *: 18 to 53 % is usual for shortcrust\n  do Rub the butter into the flour and bind with the water.\n',
      {
        text: 'recipe Crust\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  120 g     water\n# "water" dough-too-wet *: 68 %\n  do Rub the butter into the flour and bind with the water.\n',
        after: {
          'Write 90 g water, 30 g less':
            'recipe Crust\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  90 g      water\n  do Rub the butter into the flour and bind with the water.\n',
        },
      },
      {
        text: 'recipe Spinach crust\npart crust as shortcrust\n  240 g     plain flour\n  120 g     butter\n  150 g     spinach, chopped\n  70 g      ice water\n# "ice water" dough-too-wet *: 69 g come out of what is chopped in (spinach 69 g\n  do Rub the butter into the flour.\n  do Stir in the spinach and bind with the ice water.\n',
        after: {
          'Write 39 g ice water, 31 g less':
            'recipe Spinach crust\npart crust as shortcrust\n  240 g     plain flour\n  120 g     butter\n  150 g     spinach, chopped\n  39 g      ice water\n  do Rub the butter into the flour.\n  do Stir in the spinach and bind with the ice water.\n',
        },
      },
    ],
  },
});

const place = (part: ListedPart) => ingredientPlace(mainLiquid(part.head.ingredients));
