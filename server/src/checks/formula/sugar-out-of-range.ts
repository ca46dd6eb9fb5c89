import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import type { ShareOf } from '../../recipe/measures/open.ts';
import { creamShare, sugarSolids, thickenerShare, whiteShare } from '../../recipe/measures/shares.ts';
import { nutShare, thinLiquid } from '../../recipe/measures/sweet-shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, firstOut, ingredientPlace, isHigh, mostBringing, outsideBand, sayBand } from './band.ts';
import { isIce } from './ice.ts';
import { mendAmount } from './mend.ts';

/** Measures that hold the sugar against what is worked with it, on both sides. */
const HELD_AGAINST = [
  'cream per sugar',
  'water per sugar',
  'nuts per sugar',
  'sugar per juice',
  'sugar per liquid',
  'sugar per spirit',
  'sweetener per grain',
  'sugar per produce',
] as const satisfies readonly MeasureName[];

export default defineCheck<BandValues>({
  code: 'sugar-out-of-range',
  title: 'There is more, or less, sugar than the kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['sugar', 'liquid per sugar', 'sugar per fruit', 'sugars share', ...HELD_AGAINST],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Sugar as solids per flour by weight: sugars and syrups, and what preserves and chocolate bring; the lactose of milk and the sugar of fruit are left out. For cakes also the classic balance: liquid, egg counted in, of at least the weight of the sugar. For a custard or a jelly sugar is a share of the mix, for jam, chutney and relish it is held against the prepared fruit and vegetables, for a curd against the juice, for a syrup, cordial or infused spirit against what it is dissolved in, for granola against the grain. For caramel it is the cream to sugar, for brittle the nuts, for frosting and marshmallow the liquid.

**Why it matters.** Sugar holds water back from flour and egg: a cake with more than its flour and liquid carry rises, cannot set and sinks in the middle; biscuits spread to a sheet; a frosting with too little runs off the cake; a syrup with too much crystallises; yeast slows in a dough with more than 10 %. Too little, and a cake is bready and pale.

**What to do.** Bring the sugar to the edge of the usual band, or add flour, egg or milk to carry it.

**Silent** where the part has no kind with a band for sugar, for a sponge of egg white alone, which carries twice its flour in sugar, and where an ingredient of weight is not known. A broken balance rule alone is information, never a warning: many good cakes break one.`,
  *find(part) {
    const sugar = () => ingredientPlace(mainSugar(part));
    if (isWhiteSponge(part)) return;
    yield* firstOut(part, OF_FLOUR, sugar);
    yield* outsideBand(part, 'sugar per fruit', 'high', sugar);
    // Of an ice it is told with the other solids.
    if (!isIce(part))
      for (const side of ['low', 'high'] as const) yield* outsideBand(part, 'sugars share', side, sugar);
    const isThickened = liquidIsThickened(part);
    for (const name of HELD_AGAINST)
      for (const side of ['low', 'high'] as const)
        if (name !== 'water per sugar' || side === 'low' || !isThickened)
          yield* outsideBand(part, name, side, () => ingredientPlace(mainOf(name, side === 'high', part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) =>
    mendAmount(values, scene, (part) => mainOf(values.measure.measure, isHigh(values.verdict), part)),
  examples: {
    good: [
      'recipe Sponge\npart sponge as sponge\n  4 large   eggs\n  120 g     caster sugar\n  120 g     plain flour\n  do Whisk the eggs with the sugar until thick and fold in the flour.\n',
      'recipe Caramel sauce\npart sauce as caramel\n  200 g     caster sugar\n  150 g     double cream\n  60 g      butter\n  do Melt the sugar to a deep gold caramel.\n  do Stir in the cream and then the butter.\n',
    ],
    bad: [
      {
        text: 'recipe Butter cake\npart batter as creamed cake\n  200 g     plain flour\n  420 g     caster sugar\n# "caster sugar" sugar-out-of-range *: more sugar than the flour carries\n  150 g     butter\n  3 large   eggs\n  100 g     whole milk\n  8 g       baking powder\n  do Cream the butter with the sugar and beat in the eggs.\n  do Fold in the flour, baking powder and milk.\n',
        after: {
          'Write 305 g caster sugar, 115 g less':
            'recipe Butter cake\npart batter as creamed cake\n  200 g     plain flour\n  305 g     caster sugar\n  150 g     butter\n  3 large   eggs\n  100 g     whole milk\n  8 g       baking powder\n  do Cream the butter with the sugar and beat in the eggs.\n  do Fold in the flour, baking powder and milk.\n',
        },
      },
      'recipe Dry cake\npart batter as creamed cake\n  300 g     plain flour\n  300 g     caster sugar\n# "caster sugar" sugar-out-of-range info *: liquid, egg counted in, to sugar is 0.63\n  180 g     butter\n  190 g     eggs\n  10 g      baking powder\n  do Cream the butter with the sugar and beat in the eggs.\n  do Fold in the flour and the baking powder.\n',
      'recipe Caramel sauce\npart sauce as caramel\n  300 g     caster sugar\n# "caster sugar" sugar-out-of-range *: sets hard\n  50 g      double cream\n  do Melt the sugar to a deep gold caramel.\n  do Stir in the cream.\n',
    ],
  },
});

/** Of a cake or a dough: its sugar, then the classic balance. */
const OF_FLOUR = [
  ['sugar', 'high'],
  ['sugar', 'low'],
  ['liquid per sugar', 'low'],
] as const;

const mainSugar = (part: ListedPart): Ingredient | undefined => mostBringing(part, sugarSolids);

/** What is there beside the sugar, where that is what there is too much of. */
const BESIDE: Partial<Readonly<Record<MeasureName, ShareOf>>> = {
  'cream per sugar': creamShare,
  'water per sugar': thinLiquid,
  'nuts per sugar': nutShare,
};

function mainOf(name: MeasureName, high: boolean, part: ListedPart): Ingredient | undefined {
  const beside = high ? BESIDE[name] : undefined;
  return beside === undefined ? mainSugar(part) : mostBringing(part, beside);
}

/** Flour or starch per liquid from which it is boiled to a cream, and runs no more (`starch sauce` is thin below). */
const THICKENS = 0.025;

function liquidIsThickened(part: ListedPart): boolean {
  let [liquid, starch] = [0, 0];
  for (const i of contentsOf(part)) {
    // What is set is dusted with it.
    if (i.food?.class === 'gelling') return false;
    liquid += gramsOf(i) * bringing(i, thinLiquid);
    starch += gramsOf(i) * bringing(i, thickenerShare);
  }
  return starch > 0 && starch >= liquid * THICKENS;
}

/** Whites alone, as in angel food, carry far more sugar than whole egg. */
export function isWhiteSponge(part: ListedPart): boolean {
  const eggs = part.head.ingredients.filter((i) => i.food?.class === 'egg');
  return part.head.kind?.name === 'sponge' && eggs.length > 0 && eggs.every((i) => bringing(i, whiteShare) > 0);
}
