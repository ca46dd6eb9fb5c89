import { speaksOfStrangers } from '../../recipe/journey/unsaid.ts';
import type { Part } from '../../recipe/model.ts';
import { servedAs } from '../../recipe/names/served.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { undercooked } from '../by-state/undercooked.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  /** It was toasted dry first. */
  readonly toasted: boolean;
}

const raw = overJourneys((house, journey) => undercooked(house, journey).filter(({ how }) => how.kind === 'raw flour'));

/** No later part takes it, and one of them cooks what it does not name: `Fry the beignets`. */
const mayBeMeant = (parts: readonly Part[], own: number): boolean => {
  const later = parts.filter(({ index }) => index > own);
  const head = parts[own]?.head;
  return later.some(speaksOfStrangers) && !later.some(({ includes }) => includes.some((other) => other === head));
};

const found = foundAgain<Values>((recipe, house) =>
  raw(recipe, house).flatMap(({ how, held, part, line, start, end }) => {
    const level = how.kind === 'raw flour' ? how.levels[servedAs(recipe)] : undefined;
    if (how.kind !== 'raw flour' || level === undefined) return [];
    const at = { part, line, start, end };
    const { part: own } = held.member.of;
    return {
      at,
      ...severityAt(mayBeMeant(recipe.parts, own) ? 'ask' : level),
      values: { name: held.ingredient.name, toasted: how.toasted },
    };
  }),
);

export default defineCheck<Values>({
  code: 'raw-flour',
  title: 'Raw flour is in what is eaten',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'US FDA, December 2023, on flour: a raw food, and home treatments may not kill all bacteria',
  },
  explain: `**What it computes.** For every flour: whether any step bakes, boils or fries it after it goes in. Where none does and the recipe is served as it is (a step or a serve line says so, the name does, or a sweet mixture that is little flour yields portions, glasses or bites), the flour is eaten raw. It is information where no later part names what it went into and one of them cooks something that it does not list.

**Why it matters.** Flour is milled from grain as it comes off the field and is not treated: E. coli and Salmonella in it have made hundreds ill through raw dough, batter and no-bake sweets. Toasting it dry at home is not proven to make it safe, because dry heat kills slowly.

**What to do.** Bake or cook it; or take oats, ground almonds or crumbs of something baked; or flour that its maker sells as heat-treated (say so in the line).

**Silent** for a dough, pastry or batter that the recipe only makes and does not serve, where any later step heats it, for heat-treated flour, and for flour to dust the board.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, toasted }) => ({
    message: toasted
      ? `Toasting the ${name} dry is not proven to make it safe, and no later step cooks it: bake it in the mixture, or buy heat-treated flour. ${CAUTION}`
      : `No step cooks the ${name}, so it is eaten raw: bake it, or take something already cooked. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Oat bars\n  200 g     plain flour\n  120 g     butter\n  80 g      honey\n  do Rub the butter into the flour and stir in the honey.\n  do Press in a tin and bake at 180 C for 20 min until gold.\n  do Serve cold.\n',
      'recipe Dough bites\n  200 g     plain flour (heat-treated)\n  120 g     butter\n  80 g      honey\n  do Beat the butter with the honey and stir in the flour.\n  do Roll into balls and serve.\n',
      'recipe Fresh pasta as pasta dough\n  yield   4 portions\n  400 g     plain flour\n  4 large   eggs\n  do Knead the flour and eggs for 8 min and rest for 30 min.\n  do Roll out thin and cut.\n',
      'recipe Pie dough as shortcrust\n  200 g     plain flour\n  110 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 1 h.\n',
    ],
    bad: [
      'recipe Dough bites\n  200 g     plain flour\n# "plain flour" raw-flour: eaten raw\n  120 g     butter\n  80 g      honey\n  do Beat the butter with the honey and stir in the flour.\n  do Roll into balls and serve.\n',
      'recipe Cookie dough\n  yield   8 portions\n  150 g     plain flour\n# "plain flour" raw-flour: eaten raw\n  115 g     butter\n  150 g     brown sugar\n  100 g     chocolate chips\n  do Beat the butter with the sugar, stir in the flour and the chocolate chips, and chill for 30 min.\n',
      'recipe Cake-batter dip\n  150 g     plain flour\n# "plain flour" raw-flour: Toasting\n  200 g     double cream\n  80 g      caster sugar\n  do Toast the flour at 180 C for 8 min until it smells of nuts.\n  do Whip the cream with the sugar and fold in the flour.\n  do Serve with fruit.\n',
    ],
  },
});
