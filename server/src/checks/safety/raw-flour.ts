import { isFlour } from '../../recipe/ingredient.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inAnyForm, says, wordList } from '../../recipe/step-words.ts';
import { verbClass } from '../../recipe/verbs.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { anyPart, overList } from '../over-parts.ts';
import { type Followed, followedIn, heatFrom, heatOf, isBoughtSafe, type Journey } from './journey.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  /** It was toasted dry first. */
  readonly toasted: boolean;
}

export default defineCheck<Values>({
  code: 'raw-flour',
  title: 'Raw flour is in what is eaten',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'US FDA, Handling Flour Safely (for consumers): flour is a raw food, and home treatments are not proven (from memory)',
  },
  explain: `**What it computes.** For every flour: whether any step bakes, boils or fries it after it goes in. Where none does and the recipe is served as it is (a step or a serve line says so, the name does, or a sweet mixture that is little flour yields portions, glasses or bites), the flour is eaten raw.

**Why it matters.** Flour is milled from grain as it comes off the field and is not treated: E. coli and Salmonella in it have made hundreds ill through raw dough, batter and no-bake sweets. Toasting it dry at home is not proven to make it safe, because dry heat kills slowly.

**What to do.** Bake or cook it; or take oats, ground almonds or crumbs of something baked; or flour that its maker sells as heat-treated (say so in the line).

**Silent** for a dough, pastry or batter that the recipe only makes and does not serve, where any later step heats it, for heat-treated flour, and for flour to dust the board.`,
  find({ recipe, house }) {
    const raw = withRawFlour(recipe, followedIn(recipe), house);
    if (raw.length === 0) return [];
    const served = isServed(recipe);
    if (!served && !isPortioned(recipe)) return [];
    return raw.filter(({ part }) => (served ? !isBakedLater(part, recipe) : !isFloury(part))).flatMap(rawFlourIn);
  },
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

const rawFlourIn = onceFor(({ journeys }: Followed): readonly Found<Values>[] =>
  journeys.flatMap((journey) => {
    const { ingredient, part } = journey;
    const { name } = ingredient.node;
    if (name === undefined || !isRawFlour(ingredient) || isBoughtSafe(journey) || onlyDusts(journey)) return [];
    const heated = heatOf(journey)?.step;
    const toasted = heated !== undefined && isToasting(heated, journey);
    if (heated !== undefined && !(toasted && !isHeatedAfter(journey, heated))) return [];
    const at = { part: part.index, line: ingredient.line, start: name.start, end: name.end };
    return [{ at, values: { name: ingredient.name, toasted } }];
  }),
);

const withRawFlour = overList((_house, followed: Followed) => (rawFlourIn(followed).length > 0 ? followed : undefined));

const HEAT_TREATED = /\b(?:heat[- ]treated|cooked|pre-?cooked|pasteuri[sz]ed)\b/i;

/** Dry mixes are flour for the most part. */
const MIX = /^(?:cake|pancake) mix$/;

const isRawFlour = (i: Journey['ingredient']): boolean =>
  (foodOf(i)?.class === 'flour' || isFlour(i) || MIX.test(foodOf(i)?.name ?? '')) &&
  !HEAT_TREATED.test([i.node.name?.text, i.node.preparation?.text, i.node.note?.text].join(' '));

const SERVING = asWritten('serve', 'serves', 'eat', 'eaten', 'drink', 'enjoy', 'churn', 'snack', 'snacking');
const EATEN_SO =
  /\b(?:edible|no[- ]bake|bites?|dips?|truffles?|milk ?shakes?|smoothies?|ice[- ]creams?|gelato|semifreddo|mousse|frosting|cheesecake)\b/i;

/** The recipe says how it is eaten; one that only makes a dough does not. */
function isServed(recipe: Recipe): boolean {
  return (
    EATEN_SO.test(recipe.name) ||
    recipe.outline.head.some(({ line: { statement } }) => statement.kind === 'text' && statement.field === 'serve') ||
    serves(recipe)
  );
}

const PORTIONS =
  /\b(?:portions?|servings?|people|persons|glass(?:es)?|bowls?|pots?|tubs?|scoops?|bites?|truffles?|spoons?)\b/i;

/** The yield counts what goes to the table: `8 portions`, `2 glasses`. */
const isPortioned = ({ yield: made }: Recipe): boolean => PORTIONS.test(made?.node.of?.text ?? '');

/** From this share of flour on it is a pasta, a pizza or a pastry, portioned here and cooked elsewhere. */
const FLOURY = 0.45;

const isFloury = ({ head: { flourG, massG, kind } }: Part): boolean =>
  kind?.group === 'pastry' || kind?.group === 'dough' || flourG.high >= massG.low * FLOURY;

const HEATING = wordList((word) => ['oven', 'stove'].includes(verbClass(word) ?? ''));

/** A dough that no later step calls by its name, where later parts bake or boil: the bagels are made of it. */
const isBakedLater = ({ index, head: { kind }, usesByLater }: Part, { parts }: Recipe): boolean =>
  (kind?.group === 'dough' || kind?.group === 'pastry') &&
  usesByLater.length === 0 &&
  parts.slice(index + 1).some(({ steps }) => anySays(steps, HEATING));

const serves = anyPart(({ steps }) => anySays(steps, SERVING));

const DUSTING = asWritten('dust', 'floured', 'sprinkle');

function onlyDusts({ stops, index, part }: Journey): boolean {
  const own = stops.filter((s) =>
    s.step.mentions.some((m) => m.ingredients.some((r) => r.part === part.index && r.ingredient === index)),
  );
  return own.length > 0 && own.every((s) => says(s.step, DUSTING));
}

const TOASTING = inAnyForm('toast', 'bake', 'roast', 'microwave');

/** The flour alone, dry. */
const isToasting = (step: Step, { part, index }: Journey): boolean =>
  step.mentions.length > 0 &&
  says(step, TOASTING) &&
  step.mentions.every((m) => m.ingredients.some((r) => r.part === part.index && r.ingredient === index));

function isHeatedAfter(journey: Journey, toasted: Step): boolean {
  const at = journey.all.findIndex((s) => s.step === toasted);
  return heatFrom(journey, at + 1) !== undefined;
}
