import type { FoodBook } from '../../food/book.ts';
import { anyDoes, deed, eventsOf, speaksOf } from '../../recipe/journey/deeds.ts';
import { foodsSaid } from '../../recipe/journey/foods-said.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { DISH_NEEDS, type DishNeed, meets } from '../../recipe/measures/needs.ts';
import { isIncomplete } from '../../recipe/measures/part-measure.ts';
import type { Ingredient, Part, Recipe, Step } from '../../recipe/model.ts';
import { type Taken, takenFor } from '../../recipe/taken-for.ts';
import { defineCheck, type Found } from '../check.ts';
import { kindPlace } from '../formula/band.ts';
import { pours } from '../formula/poured.ts';
import { foundAgain } from '../found-again.ts';
import { onceFor, onceWith } from '../once.ts';
import { anyPart, overParts } from '../over-parts.ts';

interface Values {
  readonly need: DishNeed;
  /** As the title has it: `banana bread`; undefined where it is the steps that say so. */
  readonly dish?: string;
}

export default defineCheck<Values>({
  code: 'left-out',
  title: 'What a dish cannot be made without is not on the list',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Whether the lists have what a dish cannot be made without, by its name or the title of the recipe: something to raise muffins, salt in a loaf, gelatine in a panna cotta, a culture in yoghurt; and a dough that is left to rise with nothing to raise it.

**What to do.** Write the line that is missing. If it is meant so, say it in the title: \`Unleavened bread\`.

**Silent** for parts with a kind, where a step names what is missing (\`unlisted-ingredient\`), where a food is not known, and for cakes that beaten egg raises (whipped, or from 55 % of the flour).`,
  find: ({ recipe, house }) => leftOut(recipe, house),
  say: ({ need, dish }) => {
    const [wants, outcome] = SAID[need];
    const opening = dish === undefined ? 'The dough is left to rise' : `By its name this is ${dish}`;
    return {
      message: `${opening}, and nothing on the list is ${wants}: ${outcome}. Write the line; if it is meant so, say it in the title.`,
    };
  },
  examples: {
    good: [
      'recipe Soda bread\n  450 g     plain flour\n  400 ml    buttermilk\n  1 tsp     baking soda\n  1 tsp     fine salt\n  do Mix the flour, baking soda, salt and buttermilk.\n  do Bake at 200 C for 40 min until it sounds hollow.\n',
      'recipe Unleavened bread\n  300 g     plain flour\n  180 g     water\n  4 g       fine salt\n  do Knead the flour, water and salt, rest for 30 min, roll out and bake at 240 C for 6 min until blistered.\n',
    ],
    bad: [
      'recipe Loaf\n  500 g     bread flour\n# "bread flour" left-out: to raise it\n  320 g     water\n  9 g       fine salt\n  do Knead the flour, water and salt for 10 min.\n  do Bake at 220 C for 35 min until it sounds hollow.\n',
      'recipe Panna cotta\n  400 g     double cream\n# "double cream" left-out: gelatine\n  200 g     whole milk\n  70 g      caster sugar\n  do Warm the cream, milk and sugar to 60 C, pour into glasses and chill at 4 C for 6 h.\n',
    ],
  },
});

/** Completes `nothing on the list is …`, and what comes of that. */
type Words = readonly [wants: string, outcome: string];

/** Common practice, no source. */
const SAID: Readonly<Record<DishNeed, Words>> = {
  raise: ['there to raise it, yeast, powder or beaten egg', 'it stays flat'],
  powder: ['there to raise it, baking powder, soda or self-raising flour', 'it stays flat'],
  wet: ['wet', 'it stays dry crumbs'],
  salty: ['salt or salty', 'it is bland, and does not keep'],
  sweet: ['sweet', 'it is not sweet, and has no body'],
  fat: ['fat', 'it bakes hard'],
  oil: ['oil', 'nothing thickens'],
  egg: ['egg', 'it does not set'],
  white: ['egg white', 'there is nothing to beat'],
  gelling: ['gelatine, agar, pectin or starch', 'it does not set'],
  thickener: ['flour, starch or egg', 'it stays thin'],
  culture: ['a culture, rennet or sour', 'it stays milk'],
  sour: ['vinegar or sour juice', 'it is plain oil'],
};

const leftOut = foundAgain<Values>((recipe, house) =>
  isSketch(recipe)
    ? NOTHING
    : [
        ...takenFor(recipe).flatMap((taken) => lackedBy(taken, recipe, house.world.book)),
        ...flatDoughs(recipe, house.world.book),
      ],
);

const NOTHING: readonly never[] = [];

function lackedBy(taken: Taken, recipe: Recipe, book: FoodBook): readonly Found<Values>[] {
  const { part, dish, byTitle } = taken;
  const missing = byTitle ? missingFrom(listOf(recipe), dish.needs) : missingInPart(taken);
  const need = missing.find((each) => !saidIn(recipe, book).has(each) && !isMadeUp(each, part, recipe));
  return need === undefined
    ? NOTHING
    : [{ at: { ...kindPlace(part), part: part.index }, values: { need, dish: dish.name } }];
}

/** A step and two lines, or less, are the beginning of a recipe. */
const isSketch = ({ parts, heads }: Recipe): boolean =>
  heads.every(({ ingredients }) => ingredients.length < 3) &&
  parts.reduce((sum, { steps }) => sum + steps.length, 0) < 2;

const listOf = ({ heads }: Recipe): readonly Ingredient[] => heads.flatMap((head) => head.ingredients);

const missingInPart = onceFor(({ part, dish }: Taken): readonly DishNeed[] =>
  missingFrom([...contentsOf(part), ...part.includes.flatMap((head) => head.ingredients)], dish.needs),
);

/** Those of which nothing on the list is, for all that is known. */
const missingFrom = (list: readonly Ingredient[], needs: readonly DishNeed[]): readonly DishNeed[] =>
  needs.filter((need) => !list.some((i) => mayBe(need, i)));

function mayBe(need: DishNeed, i: Ingredient): boolean {
  const food = foodOf(i);
  return (
    food === undefined ||
    meets(need, food) ||
    i.others?.some(({ match }) => match.kind !== 'food' || meets(need, match.food)) === true
  );
}

/** What the steps name, or pour in, that a dish may need. */
const saidIn = onceWith(
  ({ parts }: Recipe, book: FoodBook): ReadonlySet<DishNeed> =>
    new Set(parts.flatMap((part) => saidInPart(part, book))),
);

const saidInPart = onceWith(({ steps }: Part, book: FoodBook): readonly DishNeed[] => {
  const foods = steps.flatMap((step) => foodsSaid(step, book).flatMap((said) => said.foods));
  const said = foods.length === 0 ? NOTHING : DISH_NEEDS.filter((need) => foods.some((food) => meets(need, food)));
  return steps.some(pours) ? [...said, 'wet'] : said;
});

/** Egg per flour from which a cake rises by it (Beeton 1861, seed cake: 0.6, and no powder). */
const RAISED_BY_EGG = 0.55;
/** Sugar per flour from which a dough is a sweet one, that may go without salt (judgement). */
const SWEET = 0.12;

/** Whether something else does it, or it may be left out here. */
function isMadeUp(need: DishNeed, part: Part, recipe: Recipe): boolean {
  const contents = contentsOf(part);
  if (need === 'raise' || need === 'powder') {
    if (isRaised(recipe)) return true;
    const egg = workOut('egg', contents);
    return need === 'raise' && egg.known && egg.value.low >= RAISED_BY_EGG;
  }
  // A list alone tells neither its water nor its salt.
  if (need === 'wet') return part.steps.length === 0;
  if (need !== 'salty') return false;
  const sugar = workOut('sugar', contents);
  return sugar.known && sugar.value.high >= SWEET;
}

/** Whipped air, or the steam in which a pudding is dense and good. */
const RAISES = deed(({ act, craft, medium }) => craft === 'whip' || (act === 'heat' && medium?.is === 'steam'));
const isRaised = anyPart(({ steps }) => anyDoes(steps, RAISES) || steps.some((step) => speaksOf(step, 'foam')));

/** Flour of the whole from which it is a dough (judgement). */
const DOUGH = 0.4;
/** Minutes: so long a dough only rests (judgement). */
const RESTS_MIN = 40;

const RAISE = ['raise'] as const;

/** Doughs that are left to rise, and nothing raises them. */
function flatDoughs(recipe: Recipe, book: FoodBook): readonly Found<Values>[] {
  if (recipe.inherits || risingDoughs(recipe).length === 0 || isCultured(recipe)) return NOTHING;
  if (missingFrom(listOf(recipe), RAISE).length === 0 || saidIn(recipe, book).has('raise')) return NOTHING;
  const told = new Set(takenFor(recipe).flatMap(({ part, dish }) => (dish.needs.includes('raise') ? [part] : [])));
  return risingDoughs(recipe).flatMap(({ part }): readonly Found<Values>[] =>
    told.has(part) ? NOTHING : [{ at: { ...kindPlace(part), part: part.index }, values: { need: 'raise' } }],
  );
}

const isCultured = anyPart(({ head }) => head.ingredients.some((i) => isIn(i, 'culture')));

const risingDoughs = overParts((part) => {
  if (isIncomplete(part) || !part.steps.some(isLeftToRise)) return undefined;
  const contents = contentsOf(part);
  const flour = contents.reduce((sum, i) => (isIn(i, 'flour') ? sum + gramsOf(i) : sum), 0);
  const whole = contents.reduce((sum, i) => sum + gramsOf(i), 0);
  return flour > whole * DOUGH || undefined;
});

const isLeftToRise = (step: Step): boolean =>
  eventsOf(step).some(
    ({ act, craft, as, times }) =>
      act === 'rise' &&
      craft !== 'ferment' &&
      as === 'ordered' &&
      times.every(({ minutes }) => minutes.high > RESTS_MIN),
  );
