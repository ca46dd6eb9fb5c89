import { foodOf } from '../../recipe/stand-in.ts';
import { saidOrAsked } from '../by-state/stays-raw.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { onceInHouse } from '../once.ts';
import { overList } from '../over-parts.ts';
import { type Followed, followedIn, heatOf, isBoughtSafe, type isDoneness, type Journey } from './journey.ts';
import { CAUTION, holdingLimits } from './limits.ts';

interface Values {
  readonly name: string;
  /** A hot syrup goes in, and is not hot enough. */
  readonly syrupC?: number;
  /** What is done to it may heat it, in words that are not known to. */
  readonly heated?: true;
  readonly source: string;
}

/** From here a syrup beaten into whites cooks them (American Egg Board, hard ball, 121 °C; from memory). */
const COOKING_SYRUP_C = 120;
const LEAST_SYRUP_C = 100;
/** A mixture with this much flour is a dough or batter, and `raw-flour`'s. */
const DOUGH = 0.2;

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
  explain: `**What it computes.** For every egg, yolk and white that is not pasteurised: whether a step heats it, or the part it has gone into, from its first use to the end.

**Why it matters.** About one shell egg in some thousands carries Salmonella, and a mayonnaise or a mousse gives it a night to grow. The old, the very young, the pregnant and the ill are hurt by it most; where they are served, raw egg is not allowed at all.

**What to do.** Take pasteurised egg (\`pasteurised egg yolk\`), or heat the yolks or whites with part of the liquid or sugar to 71 °C first. Where the kitchen serves it raw on purpose, with the advisory the rules ask for, accept it: \`allow raw-egg because …\`.

Where what is done reads as heat, in words that no order to cook is sure in, it is a question. **Silent** for pasteurised egg, where any later step bakes, boils, fries or steams it or gives a temperature in the food (that is \`undercooked\`'s), for a syrup of ${COOKING_SYRUP_C} °C or more beaten into whites, and in doughs and batters, which are baked elsewhere. Eggs fried, poached or boiled soft to order are for the kitchen's own rules.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, syrupC, heated, source }) => ({
    message: heated
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

/** By part: the first speaks for it, since yolks and whites of one mousse are told of once. */
const rawEggsIn = onceInHouse(({ foodSafety }, { journeys }: Followed): readonly Found<Values>[] | undefined => {
  const found = journeys.flatMap((journey): readonly Found<Values>[] => {
    const { ingredient } = journey;
    const { name } = ingredient.node;
    if (!isRawEgg(ingredient) || isBoughtSafe(journey) || name === undefined) return [];
    if (isDough(journey) || heatOf(journey) !== undefined) return [];
    const syrupC = syrupIn(journey);
    if (syrupC !== undefined && syrupC >= COOKING_SYRUP_C) return [];
    const { title, raw } = holdingLimits(foodSafety);
    const source = `${title}, ${raw.section}`;
    const at = { part: journey.part.index, line: ingredient.line, start: name.start, end: name.end };
    return [{ at, values: { name: ingredient.name, ...(syrupC !== undefined && { syrupC }), source } }];
  });
  return found.length === 0 ? undefined : found;
});

const rawEggs = overList(rawEggsIn);

const found = foundAgain<Values>((recipe, house) =>
  rawEggs(recipe, followedIn(recipe), house).flatMap((of) =>
    saidOrAsked(
      recipe,
      house,
      of,
      ({ syrupC }) => syrupC === undefined,
      (values) => ({ ...values, heated: true }),
    ),
  ),
);

const isRawEgg = (i: Journey['ingredient']): boolean => {
  const food = foodOf(i);
  return food?.class === 'egg' && food.roles.includes('raw risk') && !i.free && !i.optional;
};

function isDough({ part }: Journey): boolean {
  const { head } = part;
  const group = head.kind?.group;
  if (group === 'dough' || group === 'pastry' || group === 'cake' || group === 'batter') return true;
  return head.flourG.high > head.massG.high * DOUGH;
}

/** The hottest sugar boiled in the same part. */
function syrupIn({ part }: Journey): number | undefined {
  const hottest = Math.max(
    0,
    ...part.steps
      .flatMap((s) => s.heat)
      .map((r) => ((r.role === 'food' || r.role === 'liquid') && isSyrup(r) ? r.celsius.low : 0)),
  );
  return hottest >= LEAST_SYRUP_C ? hottest : undefined;
}

const isSyrup = (reading: Parameters<typeof isDoneness>[0]): boolean =>
  reading.verbClass !== 'oven' && reading.celsius.low >= LEAST_SYRUP_C;
