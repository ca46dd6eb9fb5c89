import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { eggProtein, yolkStrength } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, mostOf, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'custard-too-firm',
  title: 'A custard has so much egg that it turns rubbery or curdles',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['egg protein', 'yolk per dairy'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** As for \`custard-wont-set\`: egg protein as a share of the mix for what bakes, egg yolk per milk and cream for what is stirred or boiled.

**Why it matters.** The more egg protein, the tighter its net, the lower the heat at which it closes and the more water it squeezes out: the slice is rubbery, weeps, and curdles at the rim before the middle is done.

**What to do.** Use fewer eggs or more milk and cream; yolks alone set softer than whole eggs.

**Silent** where the part has no kind with an egg band, and where an ingredient of weight is not known.`,
  *find(part) {
    yield* outsideBand(part, 'egg protein', 'high', () => ingredientPlace(mainEgg(part)));
    yield* outsideBand(part, 'yolk per dairy', 'high', () => ingredientPlace(mainEgg(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainEgg),
  examples: {
    good: [
      'recipe Leek tart filling\npart filling as quiche\n  4 large   eggs\n  300 g     double cream\n  200 g     whole milk\n  4 g       fine salt\n  do Beat the eggs, then stir in the cream, milk and salt.\n  do Bake at 160 C for 35 min, until the centre reads 78 C.\n',
      'recipe Slice cream\npart cream as pastry cream\n  500 g     whole milk\n  5 large   egg yolks\n  100 g     caster sugar\n  40 g      cornflour\n  do Whisk the yolks, sugar and cornflour with a little of the milk.\n  do Boil the rest of the milk, pour on and cook until it reads 92 C.\n',
    ],
    bad: [
      {
        text: 'recipe Cup custard\npart custard as baked custard\n  10 large  eggs\n# "eggs" custard-too-firm *: Use fewer eggs\n  300 ml    whole milk\n  60 g      caster sugar\n  do Whisk the eggs, sugar and milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
      },
      'recipe Custard sauce\npart sauce as stirred custard\n  16 large  egg yolks\n# "egg yolks" custard-too-firm *: curdles soon\n  500 g     whole milk\n  70 g      caster sugar\n  do Whisk the yolks and the sugar, and pour on the milk.\n  do Stir over a low heat until the sauce reads 82 C, and strain.\n',
    ],
  },
});

const mainEgg = (part: ListedPart): Ingredient | undefined =>
  mostOf(part.head.ingredients, (i) => gramsOf(i) * Math.max(bringing(i, eggProtein), bringing(i, yolkStrength)));
