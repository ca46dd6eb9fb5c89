import { setGrams } from '../../edits/set-amount.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { MEASURES } from '../../recipe/measures.ts';
import type { Part } from '../../recipe/recipe.ts';
import { defineCheck, type Fix, type Found, type Scene } from '../check.ts';
import { type BandValues, ingredientPlace, middleOf, outsideBand, sayBand } from './band.ts';

export default defineCheck<BandValues>({
  code: 'salt-out-of-range',
  title: 'There is more, or less, salt than the kind bears',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'from memory',
    title:
      'professional baking texts (Gisslen; Hamelman) for doughs; house bands for dishes; USDA Complete Guide to Home Canning (2015) and NCHFP for ferments',
  },
  explain: `**What it computes.** Salt from every source, as sodium × 2.5: table salt, salted butter, cheese, soy sauce, stock. For doughs it is per flour by weight; for dishes and ferments it is a share of the whole. The sodium of baking powder and soda is not counted.

**Why it matters.** In bread, salt holds the yeast back and tightens the dough: under 0.8 % it is slack and bland, over 3 % it hardly rises. In a vegetable ferment, salt is what keeps spoiling organisms down until the acid has formed: too little is unsafe. Follow tested recipes and local advice for ferments.

**Silent** where the salt is added to taste, for kinds with no salt band, and where an ingredient of weight is not known.`,
  *find(part) {
    for (const name of ['salt', 'salt share'] as const) {
      yield* outsideBand(part, name, 'high', () => ingredientPlace(mainSalt(part)));
      if (!part.head.ingredients.some((i) => i.free && i.food?.class === 'salt')) yield* saltedTooLittle(part, name);
    }
  },
  say: (values) => sayBand(values, values.verdict.includes('high') ? 'Use less salt.' : 'Use more salt.'),
  fix: (values, scene) => fixSalt(values, scene),
  examples: {
    good: [
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  4 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  25 g      fine salt\n# "fine salt" salt-out-of-range *: 5\n  do Knead the flour, water and salt for 10 min.\n',
      },
      'recipe Kraut\npart cabbage as lacto-ferment\n  1 kg      white cabbage\n  9 g       fine salt\n# "fine salt" salt-out-of-range *: 1.8 to 5 %\n  do Rub the salt into the cabbage and pack it into a jar.\n  do Ferment at 18 C for 14 d.\n',
    ],
  },
});

/** The salt line, else what brings most salt. */
function mainSalt(part: Part): Ingredient | undefined {
  const brought = part.head.ingredients
    .filter((i) => i.weighed.known && i.food !== undefined && i.percent === undefined)
    .map((i) => ({ i, salt: saltG(i) }))
    .sort((a, b) => b.salt - a.salt);
  return (brought.find((b) => b.i.food?.class === 'salt' && b.salt > 0) ?? brought.find((b) => b.salt > 0))?.i;
}

function saltG(i: Ingredient): number {
  const share = i.food === undefined ? undefined : MEASURES.salt.share(i.food);
  return share === undefined || !i.weighed.known ? 0 : share * middleOf(i.weighed.grams);
}

/** A dough or ferment that has a salt line; one without is a choice (Tuscan bread), or salt comes elsewhere. */
function* saltedTooLittle(part: Part, name: 'salt' | 'salt share'): Generator<Found<BandValues>> {
  if (part.head.ingredients.some((i) => i.food?.class === 'salt'))
    yield* outsideBand(part, name, 'low', () => ingredientPlace(mainSalt(part)));
}

function fixSalt(values: BandValues, { recipe }: Scene): Fix[] {
  const part = recipe.parts[values.part];
  const salt = part === undefined ? undefined : mainSalt(part);
  const food = salt?.food;
  if (salt === undefined || food?.class !== 'salt' || !salt.weighed.known) return [];
  const now = middleOf(salt.weighed.grams);
  const high = values.verdict.includes('high');
  const edge = values.measure.usual[high ? 1 : 0];
  if (edge === null) return [];
  const target = high ? edge : edge === 0 ? undefined : edge;
  if (target === undefined) return [];
  // Salt is part of the whole it is a share of; the margin covers that and the scale's step.
  const exact = now * (target / middleOf(values.value)) * (high ? 0.97 : 1.03);
  const step = exact < 10 ? 0.1 : 1;
  const grams = (high ? Math.floor(exact / step) : Math.ceil(exact / step)) * step;
  const set = grams > 0 ? setGrams(recipe, values.part, salt, grams) : undefined;
  return set === undefined ? [] : [{ title: `Write ${set.written} ${salt.name}`, effect: 'amounts', edits: set.edits }];
}
