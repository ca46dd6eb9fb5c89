import { contentsOf } from '../../recipe/measures/contents.ts';
import { eggShare } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import {
  type BandValues,
  firstOut,
  ingredientPlace,
  mostBringing,
  outsideBand,
  sayBand,
  surelyBrings,
} from './band.ts';
import { mendAmount } from './mend.ts';
import { isWhiteSponge } from './sugar-out-of-range.ts';

export default defineCheck<BandValues>({
  code: 'egg-out-of-range',
  title: 'There is more, or less, egg than the kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['egg', 'yolk share', 'egg per fat'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Egg, shelled, per flour by weight; dried egg counts as what it is mixed up to. For an ice the yolk as a share of the mix. For cakes also the classic balance: egg of at least the weight of the fat.

**Why it matters.** Egg lifts and holds. Choux with too few does not puff, with too many runs flat on the tray; a sponge has nothing else to raise it; a cake with more fat than its egg can hold is crumbly or greasy.

**What to do.** Bring the eggs to the edge of the usual band. Beat the last egg of a choux in by the spoon: flour differs.

**Silent** where the part has no kind with a band for egg, where there is no egg at all in a cake, and where an ingredient of weight is not known. A broken balance rule alone is information, never a warning.`,
  *find(part) {
    const egg = () => ingredientPlace(mainEgg(part));
    const eggless = !contentsOf(part).some((i) => surelyBrings(i, eggShare));
    // A cake made without egg is a choice; choux and sponge are not made without.
    if (eggless && part.head.kind?.measures.some((m) => m.measure === 'egg per fat')) return;
    const ends = WATCHED.filter(([name]) => (name === 'egg' ? !isWhiteSponge(part) : !eggless));
    yield* firstOut(part, ends, egg);
    yield* outsideBand(part, 'yolk share', 'high', egg);
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainEgg),
  examples: {
    good: [
      'recipe Choux\npart paste as choux\n  250 g     water\n  110 g     butter\n  140 g     plain flour\n  4 large   eggs\n  do Boil the water with the butter and stir in the flour.\n  do Beat in the eggs one at a time.\n',
      'recipe Pound cake\npart batter as pound cake\n  250 g     butter, soft\n  250 g     caster sugar\n  5 large   eggs\n  250 g     plain flour\n  do Cream the butter with the sugar and beat in the eggs.\n  do Fold in the flour.\n',
    ],
    bad: [
      {
        text: 'recipe Choux\npart paste as choux\n  250 g     water\n  110 g     butter\n  140 g     plain flour\n  2 large   eggs\n# "eggs" egg-out-of-range *: too little lift\n  do Boil the water with the butter and stir in the flour.\n  do Beat in the eggs one at a time.\n',
        after: {
          'Write 4 large eggs, 2 more':
            'recipe Choux\npart paste as choux\n  250 g     water\n  110 g     butter\n  140 g     plain flour\n  4 large   eggs\n  do Boil the water with the butter and stir in the flour.\n  do Beat in the eggs one at a time.\n',
        },
      },
      'recipe Butter cake\npart batter as creamed cake\n  200 g     plain flour\n  160 g     caster sugar\n  180 g     butter\n  2 medium  eggs\n# "eggs" egg-out-of-range info *: egg of at least the weight of the fat\n  120 g     whole milk\n  8 g       baking powder\n  do Cream the butter with the sugar and beat in the eggs.\n  do Fold in the flour, baking powder and milk.\n',
    ],
  },
});

const WATCHED = [
  ['egg', 'low'],
  ['egg', 'high'],
  ['egg per fat', 'low'],
] as const;

const mainEgg = (part: ListedPart): Ingredient | undefined => mostBringing(part, eggShare);
