import type { FoodBook } from '../../food/book.ts';
import { deed, does, eventsOf, speaksOf } from '../../recipe/journey/deeds.ts';
import { foodsSaid } from '../../recipe/journey/foods-said.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { type DishNeed, meets } from '../../recipe/measures/needs.ts';
import { isIncomplete } from '../../recipe/measures/part-measure.ts';
import type { Ingredient, Part, Recipe, Step } from '../../recipe/model.ts';
import { type Taken, takenFor } from '../../recipe/taken-for.ts';
import { defineCheck, type Found } from '../check.ts';
import { kindPlace } from '../formula/band.ts';
import { pours } from '../formula/poured.ts';
import { foundAgain } from '../found-again.ts';
import { onceFor } from '../once.ts';

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

const leftOut = foundAgain<Values>((recipe, house) => [
  ...takenFor(recipe).flatMap((taken) => lackedBy(taken, recipe, house.world.book)),
  ...recipe.parts.flatMap((part) => flatDough(part, recipe, house.world.book)),
]);

function lackedBy({ part, dish, byTitle }: Taken, recipe: Recipe, book: FoodBook): readonly Found<Values>[] {
  if (dish.needs.length === 0 || isSketch(recipe)) return [];
  const list = byTitle ? listOf(recipe) : [...contentsOf(part), ...part.includes.flatMap((head) => head.ingredients)];
  const need = dish.needs.find((each) => isLacking(each, list, recipe, book) && !isMadeUp(each, part, recipe));
  return need === undefined
    ? []
    : [{ at: { ...kindPlace(part), part: part.index }, values: { need, dish: dish.name } }];
}

/** A step and two lines, or less, are the beginning of a recipe. */
const isSketch = ({ parts, heads }: Recipe): boolean =>
  parts.reduce((sum, { steps }) => sum + steps.length, 0) < 2 &&
  heads.every(({ ingredients }) => ingredients.length < 3);

const listOf = onceFor(({ heads }: Recipe): readonly Ingredient[] => heads.flatMap((head) => head.ingredients));

/** Whether nothing on the list is it, for all that is known, and no step names anything that is. */
function isLacking(need: DishNeed, list: readonly Ingredient[], { parts }: Recipe, book: FoodBook): boolean {
  for (const i of list) {
    const food = foodOf(i);
    if (food === undefined || meets(need, food)) return false;
    if (i.others?.some(({ match }) => match.kind !== 'food' || meets(need, match.food))) return false;
  }
  return !parts.some(({ steps }) =>
    steps.some(
      (step) =>
        (need === 'wet' && pours(step)) ||
        foodsSaid(step, book).some(({ foods }) => foods.some((food) => meets(need, food))),
    ),
  );
}

/** Egg per flour from which a cake rises by it (Beeton 1861, seed cake: 0.6, and no powder). */
const RAISED_BY_EGG = 0.55;
/** Sugar per flour from which a dough is a sweet one, that may go without salt (judgement). */
const SWEET = 0.12;

/** Whether something else does it, or it may be left out here. */
function isMadeUp(need: DishNeed, part: Part, { parts }: Recipe): boolean {
  const contents = contentsOf(part);
  if (need === 'raise' || need === 'powder') {
    if (parts.some(({ steps }) => steps.some(isRaisedBy))) return true;
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
const isRaisedBy = (step: Step): boolean => speaksOf(step, 'foam') || does(step, RAISES);

/** Flour of the whole from which it is a dough (judgement). */
const DOUGH = 0.4;
/** Minutes: so long a dough only rests (judgement). */
const RESTS_MIN = 40;

/** A dough that is left to rise, and nothing raises it. */
function flatDough(part: Part, recipe: Recipe, book: FoodBook): readonly Found<Values>[] {
  if (recipe.inherits || isSketch(recipe) || isIncomplete(part) || !part.steps.some(isLeftToRise)) return [];
  const contents = contentsOf(part);
  const flour = contents.reduce((sum, i) => (isIn(i, 'flour') ? sum + gramsOf(i) : sum), 0);
  const whole = contents.reduce((sum, i) => sum + gramsOf(i), 0);
  if (!(flour > whole * DOUGH) || listOf(recipe).some((i) => isIn(i, 'culture'))) return [];
  if (takenFor(recipe).some((taken) => taken.part === part && taken.dish.needs.includes('raise'))) return [];
  return isLacking('raise', listOf(recipe), recipe, book)
    ? [{ at: { ...kindPlace(part), part: part.index }, values: { need: 'raise' } }]
    : [];
}

const isLeftToRise = (step: Step): boolean =>
  eventsOf(step).some(
    ({ act, craft, as, times }) =>
      act === 'rise' &&
      craft !== 'ferment' &&
      as === 'ordered' &&
      times.every(({ minutes }) => minutes.high > RESTS_MIN),
  );
