import type { Part } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';
import { mainSalt, saltLine } from './salt.ts';

const SALTS = ['salt', 'salt share', 'brine salt', 'mash salt', 'cure salt', 'salt per water'] as const;

export default defineCheck<BandValues>({
  code: 'salt-out-of-range',
  title: 'There is more, or less, salt than the kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: [...SALTS],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Salt from every source: salt itself by its grams, as bakers count it, and what salted butter, cheese, soy sauce and stock bring as sodium × 2.5. The salt on a label is sodium × 2.5 of everything, as the law has it, and a little less. For doughs it is per flour by weight; for dishes and ferments it is a share of the whole; for a cure it is on the weight of the fish or meat, for a brine per water. Too little for a ferment, a cure or a brine is \`weak-brine\`. The sodium of baking powder and soda is not counted.

**Why it matters.** In bread, salt holds the yeast back and tightens the dough: under 0.8 % it is slack and bland, over 3 % it hardly rises. A dish over 2.6 % is too salty to eat; it is most often a spoon that should have been a smaller one.

**What to do.** Bring the salt to the edge of the usual band.

**Silent** where the salt is added to taste, for what is no kind (\`too-salty\`), and where an ingredient of weight is not known.`,
  *find(part) {
    const salt = () => ingredientPlace(mainSalt(part));
    for (const name of SALTS) yield* outsideBand(part, name, 'high', salt);
    if (!part.head.ingredients.some((i) => i.free && i.food?.class === 'salt')) {
      for (const name of ['salt', 'salt share'] as const) yield* saltedTooLittle(part, name);
    }
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, saltLine),
  examples: {
    good: [
      'recipe Stew\npart stew as braise\n  800 g     stewing beef\n  400 g     carrots\n  500 g     water\n  14 g      fine salt\n  do Brown the beef, add the carrots, water and salt, and simmer for 2 h, until the centre reads 90 C.\n',
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  4 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  25 g      fine salt\n# "fine salt" salt-out-of-range *: salt per flour is 5 %\n  do Knead the flour, water and salt for 10 min.\n',
      },
      'recipe Soup\npart soup as soup\n  600 g     carrots, sliced\n  800 g     water\n  60 g      fine salt\n# "fine salt" salt-out-of-range *: too salty to eat\n  do Boil the carrots in the water with the salt for 25 min.\n',
    ],
  },
});

/** A dough that has a salt line; one without is a choice (Tuscan bread), or salt comes elsewhere. */
function* saltedTooLittle(part: Part, name: 'salt' | 'salt share'): Generator<Found<BandValues>> {
  if (part.head.ingredients.some((i) => i.food?.class === 'salt'))
    yield* outsideBand(part, name, 'low', () => ingredientPlace(mainSalt(part)));
}
