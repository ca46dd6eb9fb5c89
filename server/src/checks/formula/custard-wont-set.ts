import { setCount, setGrams } from '../../edits/set-amount.ts';
import { percentText } from '../../measure/number-text.ts';
import { contentsOf } from '../../recipe/contents.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part } from '../../recipe/recipe.ts';
import { defineCheck, type Fix, type Scene } from '../check.ts';
import { type BandValues, ingredientPlace, middleOf, outsideBand, sayBand } from './band.ts';

/** Shares of the mix from which these set it without egg (from memory, McGee). */
const STARCH_SETS = 0.015;
const GELATINE_SETS = 0.003;

export default defineCheck<BandValues>({
  code: 'custard-wont-set',
  title: 'A custard has too little egg to set',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'from memory',
    title: 'McGee, On Food and Cooking (2004): 1 large egg, or 2 yolks, sets 250 ml of milk',
  },
  explain: `**What it computes.** The protein of the eggs as a share of the mix: eggs, dairy, sugar and cheese, without the vegetables, fruit and meat that lie in it. One large egg in a cup of milk is about 2 %.

**Why it matters.** The net that holds a custard is egg protein. Milk, sugar and soft cheese thin it; below 1.4 % it does not close, and the middle stays liquid however long it bakes.

**What to do.** Add eggs, or take dairy out. Fresh cheese adds body and no set.

**Silent** where starch over 1.5 % or gelatine over 0.3 % of the mix sets it without, and where an ingredient of weight is not known.`,
  *find(part) {
    if (setsOtherwise(contentsOf(part))) return;
    yield* outsideBand(part, 'egg protein', 'low', () => ingredientPlace(mainEgg(part)));
  },
  say: (values) =>
    sayBand(
      values,
      `A large egg brings about 6.3 g of egg protein; ${percentText(values.measure.usual[0] ?? 0)} of the mix is the least that is usual: add eggs, or use less dairy.`,
    ),
  fix: (values, scene) => addEggs(values, scene),
  examples: {
    good: [
      'recipe Cup custard\npart custard as baked custard\n  4 large   eggs\n  500 ml    whole milk\n  80 g      caster sugar\n  do Warm the milk to 60 C.\n  do Whisk the eggs and sugar and pour on the milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
    ],
    bad: [
      {
        text: 'recipe Cup custard\npart custard as baked custard\n  1 large   egg\n# "egg" custard-wont-set *: add eggs\n  600 ml    whole milk\n  80 g      caster sugar\n  do Whisk the egg, sugar and milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
        after: {
          'Write 3 large egg, 2 more':
            'recipe Cup custard\npart custard as baked custard\n  3 large   egg\n  600 ml    whole milk\n  80 g      caster sugar\n  do Whisk the egg, sugar and milk.\n  do Bake at 150 C for 40 min, until the centre reads 80 C.\n',
        },
      },
    ],
  },
});

function mainEgg(part: Part): Ingredient | undefined {
  const eggs = part.head.ingredients.filter((i) => i.food?.class === 'egg' && i.weighed.known);
  return eggs.reduce<Ingredient | undefined>(
    (best, i) => (best === undefined || proteinG(i) > proteinG(best) ? i : best),
    undefined,
  );
}

const gramsOf = (i: Ingredient): number => (i.weighed.known ? middleOf(i.weighed.grams) : 0);
const proteinG = (i: Ingredient): number => (gramsOf(i) * (i.food?.per100.protein ?? 0)) / 100;

function setsOtherwise(contents: readonly Ingredient[]): boolean {
  const whole = contents.reduce((sum, i) => sum + gramsOf(i), 0);
  const starch = contents
    .filter((i) => i.food?.class === 'starch' || i.food?.class === 'flour')
    .reduce(
      (sum, i) => sum + (gramsOf(i) * (i.food?.per100.starch ?? (i.food?.class === 'starch' ? 85 : 70))) / 100,
      0,
    );
  const gelatine = contents.filter((i) => i.food?.class === 'gelling').reduce((sum, i) => sum + gramsOf(i), 0);
  return whole > 0 && (starch / whole > STARCH_SETS || gelatine / whole > GELATINE_SETS);
}

/** Whole eggs are added until the usual band is reached, counting what they add to the mix. */
function addEggs(values: BandValues, { recipe }: Scene): Fix[] {
  const part = recipe.parts[values.part];
  const egg = part === undefined ? undefined : mainEgg(part);
  const amount = egg?.node.amount;
  const least = values.measure.usual[0];
  if (egg === undefined || amount?.kind !== 'measured' || least === null || least === undefined) return [];
  const protein = (egg.food?.per100.protein ?? 0) / 100;
  const eggProtein = values.contents.filter((i) => i.food?.class === 'egg').reduce((sum, i) => sum + proteinG(i), 0);
  const mix = eggProtein / middleOf(values.value);
  if (protein <= least || !(mix > 0)) return [];
  const missingG = (least * mix - eggProtein) / (protein - least);
  if (amount.unit !== undefined) {
    const set = setGrams(recipe, values.part, egg, Math.ceil(gramsOf(egg) + missingG));
    return set === undefined
      ? []
      : [
          {
            title: `Write ${set.written} ${egg.name}, ${Math.ceil(missingG)} g more`,
            effect: 'amounts',
            edits: set.edits,
          },
        ];
  }
  const each = gramsOf(egg) / amount.low.value;
  const count = Math.ceil(amount.low.value + missingG / each);
  const set = setCount(recipe, values.part, egg, count);
  return set === undefined
    ? []
    : [
        {
          title: `Write ${set.written} ${egg.name}, ${count - amount.low.value} more`,
          effect: 'amounts',
          edits: set.edits,
        },
      ];
}
