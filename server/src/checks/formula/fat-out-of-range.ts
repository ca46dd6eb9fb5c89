import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { meatShare } from '../../recipe/measures/kitchen-shares.ts';
import { oilShare } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, mostBringing, mostOf, outsideBand, sayBand, surelyBrings } from './band.ts';
import { isIce } from './ice.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'fat-out-of-range',
  title: 'There is more, or less, fat than the kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['fat', 'fat share', 'fat per vegetable', 'fat per sugar', 'butter per sugar', 'oil per grain'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Pure fat per flour by weight: butter counts by the 81 % of fat in it, cream, cheese and egg yolk by theirs. The flour's own fat is left out; that of nuts and chocolate is taken once in full and once not at all, since it may stay in the pieces. For sausage, terrine and rice: all fat as a share of the whole; for a mash or a slaw: the fat of what is put to it, per potatoes or vegetables. For a frosting or a sweet of boiled sugar: the added fat per sugar; for granola: per dry grain.

**Why it matters.** Fat keeps flour from making gluten. Too little and a crust is hard, a cake dry; too much and the dough slumps, the biscuit runs to a sheet, the crumb is greasy. Meat with too little is dry and crumbles.

**What to do.** Bring the butter or oil to the edge of the usual band.

**Silent** where the part has no kind with a band for fat, where an ingredient of weight is not known, and on too little fat where there is no meat.`,
  *find(part) {
    for (const name of [
      'fat',
      'fat share',
      'fat per vegetable',
      'fat per sugar',
      'butter per sugar',
      'oil per grain',
    ] as const) {
      // Of an ice it is told with its other solids.
      if (name === 'fat share' && isIce(part)) continue;
      for (const side of ['high', 'low'] as const)
        if (name !== 'fat share' || side === 'high' || hasMeat(part))
          yield* outsideBand(part, name, side, () => ingredientPlace(mainFat(part)));
    }
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainFat),
  examples: {
    good: [
      'recipe Crust\npart crust as shortcrust\n  300 g     plain flour\n  170 g     butter\n  80 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
      'recipe Nut biscuits\npart dough as cookie\n  200 g     plain flour\n  120 g     unsalted butter\n  100 g     caster sugar\n  80 g      walnuts, chopped\n  1 large   egg yolk\n  do Cream the butter with the sugar and beat in the yolk.\n  do Work in the flour and the walnuts.\n',
    ],
    bad: [
      {
        text: 'recipe Crust\npart crust as shortcrust\n  300 g     plain flour\n  60 g      butter\n# "butter" fat-out-of-range *: hard and bready\n  80 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
        after: {
          'Write 104 g butter, 44 g more':
            'recipe Crust\npart crust as shortcrust\n  300 g     plain flour\n  104 g     butter\n  80 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
        },
      },
      'recipe Biscuits\npart dough as cookie\n  200 g     plain flour\n  330 g     unsalted butter\n# "unsalted butter" fat-out-of-range *: spreads, greasy\n  180 g     caster sugar\n  do Cream the butter with the sugar.\n  do Work in the flour.\n',
    ],
  },
});

/** Beans and vegetables are bound by something else, and have no fat to be short of. */
const hasMeat = (part: ListedPart): boolean => contentsOf(part).some((i) => surelyBrings(i, meatShare));

const mainFat = (part: ListedPart): Ingredient | undefined =>
  mostBringing(part, oilShare) ?? mostOf(part.head.ingredients, (i) => (gramsOf(i) * (i.food?.per100.fat ?? 0)) / 100);
