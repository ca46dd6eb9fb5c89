import type { FoodClass } from '../../food/food.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { crumbShare, milkShare } from '../../recipe/measures/kitchen-shares.ts';
import { cookingLiquid, flourShare, thickenerShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'starch-out-of-range',
  title: 'There is more, or less, starch than the liquid, or the meat, calls for',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: [
    'starch per dairy',
    'thickener per liquid',
    'thickener per fruit',
    'flour per potato',
    'liquid per rice',
    'milk per potato',
    'crumbs per meat',
  ],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** For a sauce: flour per liquid by weight, pure starch counting double. For pastry cream: starch per milk, flour counting for 60 to 75 % of its weight. For a fruit filling: flour per fruit, starch counting double. For gnocchi: flour per potato. For rice: the liquid per dry rice; for a mash the milk per potatoes; for sausage and terrine the crumbs per meat.

**Why it matters.** Starch swells until it has taken up its water. With too little, the sauce stays thin and the cream runs when cut; with too much, it stands like paste and tastes of flour. Rice that runs out of water stays hard in the middle; with too much it turns to porridge.

**What to do.** Bring the starch, or for rice the water, to the edge of the usual band.

**Silent** where nothing in the part thickens, where egg or a gum does it, for rice that is drained, and where an ingredient of weight is not known.`,
  *find(part) {
    const contents = contentsOf(part);
    const starch = () => ingredientPlace(mainStarch(part));
    const helped = contents.some((i) => HELPS.has(i.food?.class) || mayBind(i));
    for (const name of ['starch per dairy', 'thickener per liquid', 'thickener per fruit'] as const) {
      if (name === 'starch per dairy' || !helped) yield* outsideBand(part, name, 'low', starch);
      yield* outsideBand(part, name, 'high', starch);
    }
    yield* outsideBand(part, 'milk per potato', 'high', () => ingredientPlace(mainMilk(part)));
    yield* outsideBand(part, 'crumbs per meat', 'high', () => ingredientPlace(mainCrumbs(part)));
    for (const side of ['low', 'high'] as const)
      yield* outsideBand(part, 'flour per potato', side, () => ingredientPlace(mostBringing(part, flourShare)));
    if (anyDoes(part.steps, DRAINED)) return;
    for (const side of ['low', 'high'] as const)
      yield* outsideBand(part, 'liquid per rice', side, () => ingredientPlace(mainWater(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, MAIN[values.measure.measure] ?? mainStarch),
  examples: {
    good: [
      'recipe White sauce\npart sauce as roux sauce\n  40 g      butter\n  40 g      plain flour\n  600 g     whole milk\n  4 g       fine salt\n  do Melt the butter, stir in the flour and cook for 2 min.\n  do Whisk in the milk and the salt and simmer for 8 min.\n',
      'recipe Boiled rice\npart rice as rice\n  300 g     long-grain rice\n  2 l       water\n  20 g      fine salt\n  do Boil the rice in the water with the salt for 12 min and drain.\n',
    ],
    bad: [
      {
        text: 'recipe White sauce\npart sauce as roux sauce\n  150 g     butter\n  150 g     plain flour\n# "plain flour" starch-out-of-range *: stands like paste\n  600 g     whole milk\n  do Melt the butter, stir in the flour and cook for 2 min.\n  do Whisk in the milk and simmer for 8 min.\n',
        after: {
          'Write 96 g plain flour, 54 g less':
            'recipe White sauce\npart sauce as roux sauce\n  150 g     butter\n  96 g      plain flour\n  600 g     whole milk\n  do Melt the butter, stir in the flour and cook for 2 min.\n  do Whisk in the milk and simmer for 8 min.\n',
        },
      },
      'recipe Slice cream\npart cream as pastry cream\n  500 g     whole milk\n  5 large   egg yolks\n  100 g     caster sugar\n  10 g      cornflour\n# "cornflour" starch-out-of-range *: runs when cut\n  do Whisk the yolks, sugar and cornflour with a little of the milk.\n  do Boil the rest of the milk, pour on and cook until it reads 92 C.\n',
      'recipe Rice\npart rice as rice\n  300 g     long-grain rice\n  200 g     water\n# "water" starch-out-of-range *: stays hard\n  do Bring the rice and the water to a boil, cover and cook for 15 min.\n',
    ],
  },
});

const HELPS: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>(['gelling', 'egg']);

/** Nobody knows what it is: a gum binds at a hundredth. */
const mayBind = ({ match }: Ingredient): boolean =>
  match.kind === 'unknown' &&
  (match.class === undefined || HELPS.has(match.class) || match.brings?.includes('gelling') === true);

const mainStarch = (part: Part): Ingredient | undefined => mostBringing(part, thickenerShare);
const mainWater = (part: Part): Ingredient | undefined => mostBringing(part, cookingLiquid);
const mainMilk = (part: Part): Ingredient | undefined => mostBringing(part, milkShare);
const mainCrumbs = (part: Part): Ingredient | undefined => mostBringing(part, crumbShare);
/** What gives way where it is not the starch. */
const MAIN: Partial<Readonly<Record<MeasureName, typeof mainStarch>>> = {
  'liquid per rice': mainWater,
  'milk per potato': mainMilk,
  'crumbs per meat': mainCrumbs,
};

const DRAINED = deed(({ craft }) => craft === 'drain');
