import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { otherDepression } from '../../recipe/measures/freezing.ts';
import { milkSolids, sugarSolids } from '../../recipe/measures/shares.ts';
import { likelyOf } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, isHigh, mostBringing, mostOf, outsideBand, sayBand } from './band.ts';
import { isFrozenStill } from './ice.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'freeze-out-of-range',
  title: 'An ice will be hard as stone, stay soft, or turn sandy',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['freezing point', 'lactose in water'],
  source: {
    kind: 'publication',
    title: 'Leighton 1927, and Goff, University of Guelph: the freezing point by sucrose equivalents and milk salts',
  },
  explain: `**What it computes.** The temperature at which the mix begins to freeze. All sugars are counted as sucrose (grape and fruit sugar 1.9, lactose 1 times their weight) per 100 g of water and read in Leighton's table; the salts of milk add their solids not fat × 2.37 / water, alcohol 0.4 °C and salt 0.6 °C for each gram in 100 g of water. Also the lactose per water: 0.545 of the milk solids not fat.

**Why it matters.** The lower the freezing point, the less of the water is ice in the freezer. Near −1 °C the ice is hard as stone; below −5.5 °C it stays soft or does not freeze at all: sugar and alcohol do that. With more lactose than the water holds, it crystallises on keeping, and the ice is sandy.

**What to do.** Change the sugar, or the spirit; dextrose in place of some sugar softens without more sweetness. For sandiness use less milk powder.

**Silent** for an ice that is whipped and frozen still, or scraped; where a sugar, a milk or a weight is not known. Syrups whose sugars are not told apart are taken as a range, and only what is outside at its best is reported.`,
  *find(part) {
    if (isFrozenStill(part)) return;
    for (const side of ['low', 'high'] as const)
      yield* outsideBand(part, 'freezing point', side, () => ingredientPlace(mainFreezer(part)));
    yield* outsideBand(part, 'lactose in water', 'high', () => ingredientPlace(mainMilk(part)));
  },
  say: (values) =>
    sayBand(
      values,
      values.measure.measure === 'freezing point' && values.open === undefined
        ? `At −18 °C about ${frozenPercent(values)} % of the water is ice.`
        : undefined,
    ),
  fix: (values, scene) =>
    mendAmount(values, scene, (part) => {
      if (values.measure.measure === 'lactose in water') return mainMilk(part);
      return isHigh(values.verdict) ? (mainSugar(part) ?? mainFreezer(part)) : mainFreezer(part);
    }),
  examples: {
    good: [
      'recipe Vanilla ice cream\npart mix as ice cream\n  500 g     whole milk\n  250 g     double cream\n  150 g     caster sugar\n  20 g      skimmed milk powder\n  do Warm the milk, cream, sugar and milk powder to 85 C, and cool over ice to 5 C.\n  do Churn, then freeze at -18 C for 4 h.\n',
      'recipe Lemon sorbet\npart mix as sorbet\n  450 g     water\n  250 g     caster sugar\n  40 g      liquid glucose\n  200 g     lemon juice\n  do Boil the water with the sugar and the glucose for 2 min, cool and stir in the lemon juice.\n  do Churn, then freeze at -18 C for 4 h.\n',
    ],
    bad: [
      {
        text: 'recipe Rum ice cream\npart mix as ice cream\n  500 g     whole milk\n  250 g     double cream\n  150 g     caster sugar\n  20 g      skimmed milk powder\n  200 g     rum\n# "rum" freeze-out-of-range *: stays soft in the freezer\n  do Warm the milk, cream, sugar and milk powder to 85 C, cool over ice to 5 C and stir in the rum.\n  do Churn, then freeze at -18 C for 4 h.\n',
      },
      'recipe Milk ice\npart mix as ice cream\n  600 g     whole milk\n  200 g     double cream\n  30 g      caster sugar\n# "caster sugar" freeze-out-of-range *: freezes hard as ice\n  20 g      skimmed milk powder\n  do Warm the milk, cream, sugar and milk powder to 85 C, and cool over ice to 5 C.\n  do Churn, then freeze at -18 C for 4 h.\n',
    ],
  },
});

/** What lowers the freezing point most: a spirit where there is one, else sugar. */
const mainFreezer = (part: Part): Ingredient | undefined =>
  mostOf(
    part.head.ingredients.filter((i) => i.food?.class === 'alcohol'),
    (i) => gramsOf(i) * bringing(i, otherDepression),
  ) ?? mainSugar(part);
const mainSugar = (part: Part): Ingredient | undefined => mostBringing(part, sugarSolids);
const mainMilk = (part: Part): Ingredient | undefined =>
  mostOf(
    part.head.ingredients,
    (i) => (gramsOf(i) * bringing(i, milkSolids)) / Math.max(0.05, 1 - bringing(i, milkSolids)),
  );

const FREEZER_C = -18;

/** Ice as a share of the water, were the solution ideal: the depression grows as the water left shrinks. */
const frozenPercent = (values: BandValues): number => Math.max(0, Math.round((1 - likelyOf(values) / FREEZER_C) * 100));
