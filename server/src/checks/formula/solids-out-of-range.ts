import type { Food } from '../../food/food.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { type Verdict, verdictOn } from '../../recipe/measures/kinds.ts';
import { measure } from '../../recipe/measures/measures.ts';
import {
  chocolateShare,
  milkSolids,
  type Share,
  part as shareOf,
  solidsShare,
  stockSolids,
  sugarSolids,
} from '../../recipe/measures/shares.ts';
import type { Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import type { Severity } from '../severity.ts';
import { type BandValues, ingredientPlace, mostBringing, outsideBand, type Side, sayBand } from './band.ts';
import { isFrozenStill, isIce } from './ice.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'solids-out-of-range',
  title: 'Fat, milk solids, sugar or chocolate do not balance the water',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['fat share', 'milk solids', 'sugars share', 'total solids', 'chocolate per cream', 'water per bones'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** For an ice: fat, milk solids not fat, sugars without lactose, and all solids, each as a share of the mix. For a ganache: chocolate to cream by weight. For a stock: water to bones, meat and vegetables.

**Why it matters.** What is not water is what keeps an ice from being a block of it: fat and milk solids make it smooth, too many make it heavy or sandy. A ganache of too little chocolate runs, of too much splits and cannot be cut. A stock of too much water tastes of water.

**What to do.** Move the ingredient that is named first; milk powder brings solids without fat, cream brings fat without much else.

**Silent** for an ice that is whipped and frozen still, or scraped; where a composition or a weight is not known, for the milk solids of an ice made without milk, and for sugar, solids or lactose that already show in how it freezes.`,
  *find(part) {
    if (isFrozenStill(part)) return;
    const out = new Set<Side>();
    const ofIce = isIce(part);
    for (const [name, share] of WATCHED) {
      // Of anything but an ice `sugar-out-of-range` and `fat-out-of-range` tell.
      if (!ofIce && (name === 'sugars share' || name === 'fat share')) continue;
      for (const side of ['low', 'high'] as const) {
        // Too much fat is too much of all solids: one cause, one finding.
        if (name === 'total solids' && out.has(side)) continue;
        for (const found of outsideBand(part, name, side, () => ingredientPlace(mostBringing(part, share)))) {
          out.add(side);
          if (!isToldByIce(part, name, side, found.severity)) yield found;
        }
      }
    }
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => {
    const name = values.measure.measure;
    const share = WATCHED.find(([watched]) => watched === name)?.[1];
    // Solids as a whole have no one ingredient to move.
    if (share === undefined || name === 'total solids') return [];
    return mendAmount(values, scene, (part) => {
      const main = mostBringing(part, share);
      // Milk has few solids to a weight: only powder moves them without drowning the rest.
      return name === 'milk solids' && (main?.food?.per100.water ?? 100) > 10 ? undefined : main;
    });
  },
  examples: {
    good: [
      'recipe Truffles\npart centre as ganache\n  300 g     dark chocolate, chopped\n  180 g     double cream\n  do Boil the cream, pour on the dark chocolate and stir smooth.\n',
      'recipe Chicken stock\npart stock as stock\n  1.5 kg    chicken carcass\n  200 g     carrots\n  200 g     onions\n  4 l       water\n  do Simmer the chicken carcass in the water for 3 h, with the carrots and the onions for the last hour.\n  do Strain and cool to 21 C within 2 h and to 5 C within 6 h in all.\n',
    ],
    bad: [
      {
        text: 'recipe Truffles\npart centre as ganache\n  100 g     dark chocolate, chopped\n# "dark chocolate" solids-out-of-range *: does not set\n  400 g     double cream\n  do Boil the cream, pour on the dark chocolate and stir smooth.\n',
        after: {
          'Write 320 g dark chocolate, 220 g more':
            'recipe Truffles\npart centre as ganache\n  320 g     dark chocolate, chopped\n  400 g     double cream\n  do Boil the cream, pour on the dark chocolate and stir smooth.\n',
        },
      },
      'recipe Skimmed ice cream\npart mix as ice cream\n  800 g     skimmed milk\n# "skimmed milk" solids-out-of-range: icy, thin to the taste\n  160 g     caster sugar\n  50 g      skimmed milk powder\n  do Warm the skimmed milk, sugar and milk powder to 85 C, and cool over ice to 5 C.\n  do Churn, then freeze at -18 C for 4 h.\n',
    ],
  },
});

const WATCHED: readonly (readonly [MeasureName, (food: Food) => Share])[] = [
  ['fat share', (food) => shareOf(food, 'fat')],
  ['milk solids', milkSolids],
  ['sugars share', sugarSolids],
  ['total solids', solidsShare],
  ['chocolate per cream', chocolateShare],
  ['water per bones', stockSolids],
];

const TOLD: readonly { name: MeasureName; side: Side; by: MeasureName; shows: Side }[] = [
  { name: 'sugars share', side: 'low', by: 'freezing point', shows: 'high' },
  { name: 'sugars share', side: 'high', by: 'freezing point', shows: 'low' },
  { name: 'total solids', side: 'low', by: 'freezing point', shows: 'high' },
  { name: 'total solids', side: 'high', by: 'freezing point', shows: 'low' },
  { name: 'milk solids', side: 'high', by: 'lactose in water', shows: 'high' },
];

/** Too little sugar is hard and has few solids; milk powder without measure is sandy by its lactose: `freeze-out-of-range` says so, as gravely. */
function isToldByIce(part: Part, name: MeasureName, side: Side, severity: Severity | undefined): boolean {
  const told = TOLD.find((t) => t.name === name && t.side === side);
  if (told === undefined) return false;
  const verdict = verdictIn(part, told.by);
  return verdict === `too ${told.shows}` || (verdict === told.shows && severity === 'info');
}

function verdictIn(part: Part, name: MeasureName): Verdict {
  const held = part.head.kind?.measures.find((m) => m.measure === name);
  if (held === undefined) return 'ok';
  const worked = measure(name, contentsOf(part));
  return worked.known ? verdictOn(worked, held) : 'ok';
}
