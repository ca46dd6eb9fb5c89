import { COOKING_SYRUP_C } from '../by-state/eaten-raw.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { type OnFood, undercooked } from '../by-state/undercooked.ts';
import { severityAt, worse } from '../by-state/verdict.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION, holdingLimits } from './limits.ts';

interface Values {
  readonly name: string;
  /** A hot syrup goes in, and is not hot enough. */
  readonly syrupC: number | undefined;
  /** What is done to it may heat it, in words that are not known to. */
  readonly asked: boolean;
  readonly source: string;
}

/** By part, the gravest, else the first: yolks and whites of one mousse are told of once. */
const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const told = new Map<number, OnFood>();
    for (const each of undercooked(house, journey)) {
      const other = told.get(each.part);
      if (each.how.kind === 'raw egg' && (other === undefined || worse(each.level, other.level) > 0))
        told.set(each.part, each);
    }
    const { title, raw } = holdingLimits(house.foodSafety);
    const source = `${title}, ${raw.section}`;
    return [...told.values()].map(({ how, held, level, part, line, start, end }) => ({
      at: { part, line, start, end },
      ...severityAt(level),
      values: {
        name: held.ingredient.name,
        syrupC: how.kind === 'raw egg' ? how.syrupC : undefined,
        asked: level === 'ask',
        source,
      },
    }));
  }),
);

export default defineCheck<Values>({
  code: 'raw-egg',
  title: 'Raw egg is in what is eaten',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-401.11(D), 3-603.11 and 3-801.11; USDA FSIS, shell eggs (for consumers)',
  },
  explain: `**What it computes.** For every egg, yolk and white that is not pasteurised: whether a step heats what it lies in, through every part that takes it in, from its first use to the end.

**Why it matters.** About one shell egg in some thousands carries Salmonella, and a mayonnaise or a mousse gives it a night to grow. The old, the very young, the pregnant and the ill are hurt by it most; where they are served, raw egg is not allowed at all.

**What to do.** Take pasteurised egg (\`pasteurised egg yolk\`), or heat the yolks or whites with part of the liquid or sugar to 71 °C first. Where the kitchen serves it raw on purpose, with the advisory the rules ask for, accept it: \`allow raw-egg because …\`.

Where what is done reads as heat, in words that no order to cook is sure in, it is a question. **Silent** for pasteurised egg, where any later step bakes, boils, fries or steams it or gives a temperature in the food (that is \`undercooked\`'s), for a syrup of ${COOKING_SYRUP_C} °C or more beaten into whites, and in doughs and batters, which are baked elsewhere. Eggs fried, poached or boiled soft to order are for the kitchen's own rules.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, syrupC, asked, source }) => ({
    message: asked
      ? `Does a step heat the ${name} through? What is done is not sure to: heat it to 71 °C, 160 °F, or take pasteurised egg. ${CAUTION}`
      : syrupC === undefined
        ? `No step heats the ${name}, and raw egg is not safe for everyone: take pasteurised egg, or heat the mixture to 71 °C, 160 °F. ${CAUTION}`
        : `A syrup of ${Math.round(syrupC)} °C does not cook the ${name}: boil it to ${COOKING_SYRUP_C} °C or more, or take pasteurised egg. ${CAUTION}`,
    source,
  }),
  examples: {
    good: [
      'recipe Mayonnaise as mayonnaise\n  36 g      pasteurised egg yolk\n  20 g      white wine vinegar\n  3 g       fine salt\n  280 g     sunflower oil\n  do Whisk the pasteurised egg yolk with the vinegar and salt.\n  do Whisk in the oil in a thin stream.\n',
      'recipe Kisses as meringue\n  120 g     egg white\n  200 g     caster sugar\n  do Whisk the egg white to soft peaks, then whisk in the sugar.\n  do Bake at 100 C for 90 min until dry.\n',
      'recipe Soft meringue\n  120 g     egg white\n  200 g     caster sugar\n  60 g      water\n  do Boil the sugar and water to 121 C.\n  do Whisk the egg white to soft peaks and whisk in the syrup.\n',
    ],
    bad: [
      'recipe Mayonnaise as mayonnaise\n  2 large   egg yolks\n# "egg yolks" raw-egg: pasteurised\n  20 g      white wine vinegar\n  3 g       fine salt\n  280 g     sunflower oil\n  do Whisk the egg yolks with the vinegar and salt.\n  do Whisk in the oil in a thin stream.\n',
      'recipe Chocolate mousse\n  200 g     dark chocolate\n  4 large   eggs\n# "eggs" raw-egg\n  40 g      caster sugar\n  do Melt the chocolate and cool for 10 min.\n  do Beat in the yolks, then fold in the whites whisked with the sugar.\n  do Chill at 4 C for 4 h.\n',
      'recipe Chicken mayonnaise\n\npart mayonnaise as mayonnaise\n  2 large   egg yolks\n# "egg yolks" raw-egg\n  20 g      white wine vinegar\n  280 g     sunflower oil\n  do Whisk the egg yolks with the vinegar, then whisk in the oil.\n\npart chicken\n  600 g     chicken breast\n  do Roast the chicken at 200 C for 30 min, until the centre reads 74 C.\n  do Slice and serve with the mayonnaise.\n',
      'recipe Soft meringue\n  120 g     egg white\n# "egg white" raw-egg: 112 °C\n  200 g     caster sugar\n  60 g      water\n  do Boil the sugar and water to 112 C.\n  do Whisk the egg white to soft peaks and whisk in the syrup.\n',
      'recipe Soft meringue\n  120 g     egg white\n# "egg white" raw-egg: 105 °C\n  240 g     caster sugar\n  80 g      water\n  do Boil the sugar and water to 105 C. Whisk the egg white to soft peaks and whisk in the syrup.\n',
    ],
  },
});
