import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { eggProtein, settingStarch, yolkStrength } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { atMost, type BandValues, ingredientPlace, maySet, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

/** Shares of the mix from which these may set it without egg: a third of what published creams and jellies have at the least, 5 and 0.8 % (1910–1925). */
const STARCH_SETS = 0.015;
const GELATINE_SETS = 0.003;
/** Starch by itself is three times that. */
const ALONE = 3;

export default defineCheck<BandValues>({
  code: 'custard-wont-set',
  title: 'A custard has too little egg to set',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['egg protein', 'yolk per dairy'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** For what bakes: the protein of the eggs as a share of the mix of eggs, dairy, sugar and cheese, without the vegetables, fruit and meat that lie in it. One large egg in a cup of milk is about 2 %. For a custard stirred over the heat: the yolk per milk and cream; a whole egg counts for one yolk at least and two at most.

**Why it matters.** The net that holds a custard is egg protein. Milk, sugar and soft cheese thin it; below about 1.3 % it does not close, and the middle stays liquid however long it bakes.

**What to do.** Add eggs, or take dairy out. Fresh cheese adds body and no set.

**Silent** where starch over 4.5 % or gelatine over 0.3 % of the mix sets it without, or starch over 1.5 % helps it and there is near enough, and where an ingredient of weight is not known.`,
  *find(part) {
    const otherwise = setsOtherwise(contentsOf(part));
    if (otherwise === 'alone') return;
    for (const [name, main] of WATCHED)
      for (const found of outsideBand(part, name, 'low', () => ingredientPlace(main(part))))
        if (otherwise === undefined || isFar(found.values)) yield found;
  },
  say: (values) =>
    sayBand(
      values,
      values.measure.measure === 'egg protein' ? 'A large egg brings about 6.3 g of egg protein.' : undefined,
    ),
  fix: (values, scene) => mendAmount(values, scene, values.measure.measure === 'egg protein' ? mainEgg : mainYolk),
  examples: {
    good: [
      'recipe Cup custard\npart custard as baked custard\n  4 large   eggs\n  500 ml    whole milk\n  80 g      caster sugar\n  do Warm the milk to 60 C.\n  do Whisk the eggs and sugar and pour on the milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
      'recipe Custard sauce\npart sauce as stirred custard\n  5 large   egg yolks\n  500 g     whole milk\n  70 g      caster sugar\n  do Whisk the yolks and the sugar, and pour on the milk.\n  do Stir over a low heat until the sauce reads 82 C, and strain.\n',
    ],
    bad: [
      {
        text: 'recipe Cup custard\npart custard as baked custard\n  1 large   egg\n# "egg" custard-wont-set *: Add eggs\n  600 ml    whole milk\n  80 g      caster sugar\n  do Whisk the egg, sugar and milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
        after: {
          'Write 3 large egg, 2 more':
            'recipe Cup custard\npart custard as baked custard\n  3 large   egg\n  600 ml    whole milk\n  80 g      caster sugar\n  do Whisk the egg, sugar and milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
        },
      },
      'recipe Custard sauce\npart sauce as stirred custard\n  2 large   egg yolks\n# "egg yolks" custard-wont-set *: stays thin as milk\n  800 g     whole milk\n  70 g      caster sugar\n  do Whisk the yolks and the sugar, and pour on the milk.\n  do Stir over a low heat until the sauce reads 82 C, and strain.\n',
    ],
  },
});

const mainEgg = (part: ListedPart): Ingredient | undefined => mostBringing(part, eggProtein);
const mainYolk = (part: ListedPart): Ingredient | undefined => mostBringing(part, yolkStrength);

const WATCHED = [
  ['egg protein', mainEgg],
  ['yolk per dairy', mainYolk],
] as const;

/** Some egg, but so much under the far end that what helps it does not make up for it (judgement); one made without is another thing. */
const HELPED = 0.6;
const isFar = ({ measure, value }: BandValues): boolean =>
  value.high > 0 && value.high < (measure.implausible[0] ?? 0) * HELPED;

function setsOtherwise(contents: readonly Ingredient[]): 'alone' | 'with egg' | undefined {
  let [whole, starch, gelatine] = [0, 0, 0];
  for (const i of contents) {
    const grams = gramsOf(i);
    whole += grams;
    starch += grams * atMost(i, settingStarch);
    if (i.food?.class === 'gelling' || maySet(i)) gelatine += grams;
  }
  if (gelatine > whole * GELATINE_SETS || starch > whole * STARCH_SETS * ALONE) return 'alone';
  return starch > whole * STARCH_SETS ? 'with egg' : undefined;
}
