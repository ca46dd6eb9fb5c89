import { gramsOf } from '../../recipe/measures/brought.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, mostOf, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

export default defineCheck<BandValues>({
  code: 'gel-too-firm',
  title: 'A jelly or a set cream will be rubbery',
  family: 'formula',
  severity: 'warning',
  scope: 'list',
  measures: ['gelatine', 'agar'],
  source: {
    kind: 'publication',
    title: 'by the band of each kind; Ward and Courts 1977, p. 509: bloom goes with the square, m₂ = m₁ √(B₁/B₂)',
  },
  explain: `**What it computes.** Gelatine or agar as a share of the whole, as for \`gel-wont-set\`: gelatine as if of 200 bloom, a sheet of any grade at 2 to 2.3 g.

**Why it matters.** A set cream should tremble and melt in the mouth: over 1 % it begins to bounce, and a jelly over 2.2 % does. It goes on hardening for a day in the cold.

**What to do.** Use less gelatine.

**Silent** where no gelatine or agar is listed, for sweets that are meant to be firm and carry no such kind, and where an ingredient of weight is not known.`,
  *find(part) {
    for (const name of ['gelatine', 'agar'] as const)
      yield* outsideBand(part, name, 'high', () => ingredientPlace(mainGel(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, mainGel),
  examples: {
    good: [
      'recipe Vanilla cream\npart cream as set cream\n  3 sheets  gelatine\n  400 g     double cream\n  350 g     whole milk\n  80 g      caster sugar\n  do Soak the gelatine for 5 min.\n  do Warm the cream, milk and sugar to 50 C, melt the gelatine in it, and chill at 4 C for 4 h.\n',
      'recipe Agar jelly\npart jelly as jelly\n  6 g       agar\n  700 g     apple juice\n  50 g      caster sugar\n  do Boil the apple juice with the agar and the sugar for 2 min.\n  do Pour into moulds and chill at 4 C for 2 h.\n',
    ],
    bad: [
      {
        text: 'recipe Vanilla cream\npart cream as set cream\n  24 g      gelatine\n# "gelatine" gel-too-firm *: rubbery\n  400 g     double cream\n  350 g     whole milk\n  80 g      caster sugar\n  do Soak the gelatine in a little of the milk for 5 min.\n  do Warm the cream, the rest of the milk and the sugar to 50 C, melt the gelatine in it, and chill at 4 C for 4 h.\n',
      },
      'recipe Agar jelly\npart jelly as jelly\n  30 g      agar\n# "agar" gel-too-firm *: brittle and hard\n  700 g     apple juice\n  50 g      caster sugar\n  do Boil the apple juice with the agar and the sugar for 2 min.\n  do Pour into moulds and chill at 4 C for 2 h.\n',
    ],
  },
});

const mainGel = (part: ListedPart): Ingredient | undefined =>
  mostOf(
    part.head.ingredients.filter((i) => i.food?.class === 'gelling'),
    gramsOf,
  );
