import { acidShare } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'acid-out-of-range',
  title: 'A pickling liquor is too mild',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['liquor acid'],
  source: {
    kind: 'from memory',
    title:
      'USDA Complete Guide to Home Canning (2015): vinegar of at least 5 % acetic acid, never thinned below the tested recipe, commonly 1 : 1 with water',
  },
  explain: `**What it computes.** The acid of vinegar and sour juice as a share of the liquor: vinegar, water, juice and wine together. Vinegar of 5 % thinned with its own weight of water is 2.5 %.

**Why it matters.** Vegetables are low in acid. The liquor has to bring all of them below pH 4.6, and quickly; a mild one does not, and what grows in a jar without air is dangerous. On the table it tastes of water.

**What to do.** Use more vinegar, or less water. A pickle made by this rule of thumb is kept cold and eaten soon: for jars that stand on a shelf follow a tested recipe to the letter, and local advice.

**Silent** where the strength of the vinegar or a weight is not known, and for pickles soured by fermenting.`,
  *find(part) {
    yield* outsideBand(part, 'liquor acid', 'low', () => ingredientPlace(mainVinegar(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainVinegar),
  examples: {
    good: [
      'recipe Quick onions\npart onions as quick pickle\n  300 g     red onions, sliced\n  200 g     cider vinegar\n  150 g     water\n  20 g      caster sugar\n  6 g       fine salt\n  do Boil the vinegar, water, sugar and salt and pour over the onions.\n  do Cool for 30 min, then chill at 4 C.\n',
      'recipe Quick cucumber\npart cucumber as quick pickle\n  400 g     cucumber, sliced\n  250 g     white wine vinegar\n  8 g       fine salt\n  do Salt the cucumber, stand for 20 min and drain.\n  do Pour on the white wine vinegar and chill at 4 C for 1 h.\n',
    ],
    bad: [
      {
        text: 'recipe Quick onions\npart onions as quick pickle\n  300 g     red onions, sliced\n  100 g     cider vinegar\n# "cider vinegar" acid-out-of-range *: too mild\n  400 g     water\n  6 g       fine salt\n  do Boil the vinegar, water and salt and pour over the onions.\n  do Cool for 30 min, then chill at 4 C.\n',
        after: {
          'Write 400 g cider vinegar, 300 g more':
            'recipe Quick onions\npart onions as quick pickle\n  300 g     red onions, sliced\n  400 g     cider vinegar\n  400 g     water\n  6 g       fine salt\n  do Boil the vinegar, water and salt and pour over the onions.\n  do Cool for 30 min, then chill at 4 C.\n',
        },
      },
      'recipe Quick beans\npart beans as quick pickle\n  300 g     green beans\n  200 g     rice vinegar\n# "rice vinegar" acid-out-of-range info *: from 2.5 %\n  170 g     water\n  6 g       fine salt\n  do Boil the vinegar, water and salt and pour over the beans.\n  do Cool for 30 min, then chill at 4 C.\n',
    ],
  },
});

const mainVinegar = (part: ListedPart): Ingredient | undefined => mostBringing(part, acidShare);
