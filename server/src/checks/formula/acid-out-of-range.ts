import { does } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { souringShare } from '../../recipe/measures/kitchen-shares.ts';
import { acidShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part, Step } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, firstOut, ingredientPlace, mostBringing, sayBand } from './band.ts';
import { LEAVES } from './guards.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'acid-out-of-range',
  title: 'There is less, or more, vinegar or acid than the kind asks for',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['liquor acid', 'acid share', 'vinegar per produce', 'acid per milk'],
  source: {
    kind: 'publication',
    title:
      'USDA, Canning, Freezing, Storing Garden Produce (1977), p. 113: vinegar of 4 to 6 % acid, thinned only where the recipe says so; by the band of each kind',
  },
  explain: `**What it computes.** For a pickle: the acid of vinegar and sour juice as a share of the liquor: vinegar, water, juice and wine together. Vinegar of 5 % thinned with its own weight of water is 2.5 %. For a chutney, a relish, a salsa, a hot sauce or a marinade: that acid as a share of the whole, and the vinegar and juice per vegetables and fruit. For a fresh cheese: the acid per milk.

**Why it matters.** Vegetables are low in acid. The liquor has to bring all of them below pH 4.6, and quickly; a mild one does not, and what grows in a jar without air is dangerous. On the table it tastes of water. Milk with too little does not curdle.

**What to do.** Use more vinegar, or less water. What is made by this rule of thumb is kept cold and eaten soon: for jars that stand on a shelf follow a tested recipe to the letter, and local advice.

**Silent** where the strength of the vinegar or a weight is not known, for what is soured by fermenting, and for what has none of it in its list. That a jar may stand on a shelf is never said here: \`low-acid-preserve\` judges that.`,
  *find(part) {
    yield* firstOut(withoutDrained(part), WATCHED, () => ingredientPlace(mainSour(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainSour),
  examples: {
    good: [
      'recipe Quick onions\npart onions as quick pickle\n  300 g     red onions, sliced\n  200 g     cider vinegar\n  150 g     water\n  20 g      caster sugar\n  6 g       fine salt\n  do Boil the vinegar, water, sugar and salt and pour over the onions.\n  do Cool for 30 min, then chill at 4 C.\n',
      'recipe Quick cucumber\npart cucumber as quick pickle\n  400 g     cucumber, sliced\n  1 l       water\n  250 g     white wine vinegar\n  30 g      fine salt\n  do Soak the cucumber in the water with the salt for 20 min and drain.\n  do Pour on the white wine vinegar and chill at 4 C for 1 h.\n',
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

const WATCHED = [
  ['liquor acid', 'low'],
  ['acid share', 'low'],
  ['acid share', 'high'],
  ['vinegar per produce', 'low'],
  ['vinegar per produce', 'high'],
  ['acid per milk', 'low'],
  ['acid per milk', 'high'],
] as const;

/** Without the water that is drained off at once, before what is sour goes in. */
function withoutDrained(part: Part): Part {
  const { head, ledger, steps } = part;
  const sour = mainSour(part);
  const from = ledger.find(({ ingredient }) => ingredient === sour)?.uses[0]?.step ?? 0;
  const isDrained = (at: number): boolean =>
    [at, at + 1].some((next) => next < from && does(steps[next] as Step, LEAVES));
  const stays = ledger.filter(
    ({ ingredient, uses }) =>
      uses.length === 0 || !isIn(ingredient, 'water') || uses.some(({ step }) => !isDrained(step)),
  );
  return stays.length === ledger.length
    ? part
    : { ...part, head: { ...head, ingredients: stays.map(({ ingredient }) => ingredient) } };
}

/** What brings most acid: vinegar, juice, citric acid; else the sour fruit. */
const mainSour = (part: ListedPart): Ingredient | undefined =>
  mostBringing(part, acidShare) ?? mostBringing(part, souringShare);
