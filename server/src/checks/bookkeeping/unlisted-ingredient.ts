import { insertLineAfter } from '../../edits/text-edit.ts';
import type { Food, FoodClass } from '../../food/food.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import type { MeasuredNode } from '../../notation/tree.ts';
import type { Act, Craft } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { type FoodSaid, foodBehind, foodsSaid, isSaidBefore, liftsOut } from '../../recipe/journey/foods-said.ts';
import type { Part, PartHead, Step, TakenUse } from '../../recipe/model.ts';
import { listedMakings, listedWords, RICH } from '../../recipe/part.ts';
import { ADJECTIVES, wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';

interface Values {
  readonly name: string;
  /** The amount the step names, as written. */
  readonly amount?: string;
  /** The line of the part after which it is to be listed. */
  readonly after: number;
  readonly part: number;
}

export default defineCheck<Values>({
  code: 'unlisted-ingredient',
  title: 'A step uses something that is not in the list',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step calls for a food that neither this part's list nor an earlier part's has, so nobody buys it and its water, fat and salt are not counted. It is a warning with an amount (\`add 100 ml milk\`), and named alone where it goes in and no kitchen makes it of the rest (\`fold in the walnuts\`, \`add the saffron\`; \`the syrup\` too where nothing is made yet); else it is information, since a step may speak of something it has just made, or of a splash of wine.

List it with the amount the step names. Silent for water, ice, salt and the pepper beside it, oil and fat for the pan, flour for the board, what is served beside the dish, what a part is called, what may be made of the list (\`the syrup\`, where sugar is listed), what is saved, lifted out or returned, and for a word after \`\\\`.`,
  find(part, house) {
    const found: Found<Values>[] = [];
    for (const step of part.steps) {
      withAmount(part, step, house, found);
      named(part, step, house, found);
    }
    return found;
  },
  say: ({ name, amount }) => ({
    message:
      amount === undefined
        ? `Not in the list: ${name}. List it with its amount.`
        : `Not in the list: ${amount} ${name}. List it, so that it is bought and counted.`,
  }),
  fix: ({ name, amount, after, part }, { document, recipe }) => {
    if (amount === undefined) return [];
    const line = (recipe.partsAt[part] ?? 0) + after;
    return [
      {
        title: `List ${amount} ${name}`,
        effect: 'amounts',
        edits: [insertLineAfter(document, line, `  ${amount.padEnd(8)}  ${name}`)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk the milk into the flour and stand for 30 min.\n  do Fry in a little oil.\n',
      'recipe Batter\npart batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk the milk into the flour.\npart cakes\n  do Thin the batter with 20 ml water and fry in spoonfuls until brown.\n',
    ],
    bad: [
      {
        text: 'recipe Batter\n  200 g     plain flour\n  do Whisk 300 ml whole milk into the flour.\n# "300 ml whole milk" unlisted-ingredient *: 300 ml whole milk\n',
        after: {
          'List 300 ml whole milk':
            'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk 300 ml whole milk into the flour.\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  80 g      honey\n  do Warm the honey with the oats.\n  do Fold in the walnuts.\n# "walnuts" unlisted-ingredient: walnuts\n',
      'recipe Broth\n  200 g     carrots\n  500 g     water\n  do Sweat the onions.\n#              ^^^^^^ unlisted-ingredient: onions\n  do Simmer the carrots in the water with the saffron for 20 min.\n# "saffron" unlisted-ingredient: saffron\n',
      'recipe Slab\n  200 g     rolled oats\n  do Melt butter in a pan and stir in the oats.\n#         ^^^^^^ unlisted-ingredient info: butter\n  do Add a splash of wine.\n# "wine" unlisted-ingredient info\n',
    ],
  },
});

/** Foods that steps may name without a line in the list. */
const NEVER: ReadonlySet<FoodClass> = new Set(['water', 'salt']);

/** What steps make of other foods: `the syrup`, `the bread` are likely what was made. By class, those of which it is made. */
const MADE_OF: ReadonlyMap<FoodClass, readonly FoodClass[] | 'anything'> = new Map<
  FoodClass,
  readonly FoodClass[] | 'anything'
>([
  ['bread', 'anything'],
  ['stock', ['stock', 'meat', 'poultry', 'fish', 'shellfish', 'vegetable']],
  ['seed', 'anything'],
  ['egg', ['egg']],
  // `The custard`.
  ['dairy', ['dairy', 'milk', 'cream']],
  ['sauce', 'anything'],
  ['condiment', 'anything'],
  ['other', 'anything'],
  ['drink', 'anything'],
  ['oil', ['oil', 'fat']],
  ['cream', ['cream', 'milk', 'dairy', 'cheese']],
  ['milk', ['milk']],
  ['syrup', ['syrup', 'sugar']],
  ['sugar', ['sugar', 'syrup']],
  ['fat', ['fat', 'oil', 'cream', 'meat', 'cured meat', 'poultry']],
  ['juice', ['juice', 'fruit', 'vegetable', 'meat', 'poultry', 'fish', 'shellfish']],
  ['flavouring', ['flavouring', 'fruit']],
  ['pasta', ['pasta', 'flour']],
  ['flour', ['flour', 'starch']],
  ['starch', ['starch', 'flour']],
  ['meat', ['meat', 'ground meat', 'cured meat', 'poultry']],
  ['ground meat', ['meat', 'ground meat', 'cured meat', 'poultry']],
  ['cured meat', ['meat', 'ground meat', 'cured meat']],
  ['poultry', ['poultry', 'ground poultry']],
  ['ground poultry', ['poultry', 'ground poultry']],
  ['fish', ['fish', 'shellfish']],
  ['shellfish', ['fish', 'shellfish']],
  ['alcohol', ['alcohol', 'vinegar']],
  ['vinegar', ['vinegar', 'alcohol']],
]);

function withAmount(part: Part, step: Step, house: House, found: Found<Values>[]): void {
  const { items } = step.sentence;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (
      item?.kind !== 'measured' ||
      !isOfFood(item) ||
      step.mentions.some((m) => m.whole.start <= item.start && m.end > item.start)
    )
      continue;
    const run = foodBehind(items, i, step, house.world.book);
    if (run === undefined || NEVER.has(run.food.class) || run.words.every((w) => isListed(part, w))) continue;
    if ((run.definite && isMadeHere(run.food, part)) || isThere(step, item)) continue;
    const line = part.head.source.lines[step.line]?.text ?? '';
    const values = {
      name: line.slice(run.start, run.end),
      amount: line.slice(item.start, item.end),
      after: listLineBefore(part, step),
      part: part.index,
    };
    found.push({ at: { line: step.line, start: item.start, end: run.end }, values });
  }
}

/** `Save a cup of the water`, `return 100 ml of fat to the pan`: it is handled, and brought from nowhere. */
const isThere = (step: Step, { start }: MeasuredNode): boolean =>
  boundEvents(step).some(({ event }) => HANDLED.has(event.act) && event.start <= start && start < event.end);

const HANDLED: ReadonlySet<Act> = new Set<Act>(['reserve', 'return', 'remove', 'discard']);

/** Whether the steps may have made it of what is listed. */
function isMadeHere(food: Food, part: Part): boolean {
  const made = MADE_OF.get(food.class);
  const seen = part.heads.slice(0, part.index + 1);
  return made === 'anything' || (made !== undefined && seen.some((head) => lists(head, made)));
}

function named(part: Part, step: Step, house: House, found: Found<Values>[]): void {
  const line = part.head.source.lines[step.line]?.text ?? '';
  for (const said of foodsSaid(step, house.world.book)) {
    if (!isCalledFor(said, part, step)) continue;
    const { start, end } = said;
    const values = { name: line.slice(start, end), after: listLineBefore(part, step), part: part.index };
    const at = { line: step.line, start, end };
    found.push(isBrought(said, part, step) ? { at, values } : { at, values, severity: 'info' });
  }
}

/** Whether nothing else can be meant: one food, or several of one kind, that no kitchen makes of the rest, and that is ordered in. */
function isBrought(said: FoodSaid, part: Part, step: Step): boolean {
  const { foods, taken, vague } = said;
  // `Contains nuts, milk and egg` has no verb of a cook.
  if (taken?.verb === undefined || taken.as !== 'ordered' || taken.said !== 'yes' || !GOES_IN.has(taken.act))
    return false;
  // Butter for the pan.
  if (taken.act === 'heat' && !said.definite && foods.some((food) => food.class === 'fat')) return false;
  if (foods.every((food) => NEVER.has(food.class) || STAPLES.has(food.class) || isFatOfItsOwn(food))) return true;
  // A splash of wine, a thread of oil, and what another part lists.
  if (vague || isForFinish(said) || part.heads.some((head) => said.words.some((word) => listedWords(head).has(word))))
    return false;
  return foods.every((food) => !mayBeMade(food, said, part, step));
}

/** Whether a cook may have made it: bread and sauce of anything, and what is called by a word alone of what is listed. */
function mayBeMade(food: Food, said: FoodSaid, part: Part, step: Step): boolean {
  const { words, definite, taken } = said;
  if (MADE_OF.get(food.class) !== 'anything') return words.length === 1 && isMadeHere(food, part);
  // Sesame seeds are stirred in; a loaf is baked in a crust, and served with sauce.
  return definite
    ? mayBeCalled(said, part, step)
    : taken?.act !== 'combine' || part.heads.some((head) => lists(head, [food.class]));
}

/** Whether what was made may be called so: `the caramel`; by a name of several words, where a step speaks of it before: no cook makes `the citric acid`. */
const mayBeCalled = (said: FoodSaid, part: Part, step: Step): boolean =>
  nounsOf(said).length <= 1 || isSaidBefore(said, part.steps, step);

/** Oil that is poured over at the end. */
const isForFinish = ({ foods, taken }: FoodSaid): boolean =>
  foods.some((food) => food.class === 'oil') && (taken?.act !== 'combine' || taken.craft === 'brush');

const GOES_IN: ReadonlySet<Act> = new Set<Act>(['combine', 'put', 'heat', 'cut', 'steep']);
/** What every cook buys by its name, however it is spoken of. */
const STAPLES: ReadonlySet<FoodClass> = new Set([
  'egg',
  'milk',
  'cream',
  'dairy',
  'cheese',
  'fat',
  'flour',
  'starch',
  'sugar',
  'leavening',
  'yeast',
  'gelling',
  'nut',
  'legume',
  'grain',
  'chocolate',
  'meat',
  'ground meat',
  'poultry',
  'ground poultry',
  'cured meat',
  'fish',
  'shellfish',
]);

/** Mayonnaise and its like: most of it is fat, which nothing lean is made into. */
const isFatOfItsOwn = ({ class: of, per100: { fat = 0 } }: Food): boolean =>
  (of === 'sauce' || of === 'condiment') && fat >= RICH;
/** Whether a step wants the food brought from elsewhere: it is taken in, and neither listed nor likely made of what is. */
function isCalledFor(said: FoodSaid, part: Part, step: Step): boolean {
  const { foods, words, definite, taken } = said;
  if (taken === undefined || isKnown(said, part) || isLiftedOut(said, part)) return false;
  // `The salt`, where no salt has been spoken of before: the writer has it on a list.
  const isNew = definite && part.index === 0 && !isSaidBefore(said, part.steps, step);
  const isNever = foods.some((f) => NEVER.has(f.class)) && !(isNew && taken.act === 'combine');
  if (isNever || (!isNew && (isForThePan(said) || isSeasoning(said)))) return false;
  const seen = part.heads.slice(0, part.index + 1);
  // `The syrup`, and `meat` whatever it be, may be something of the list.
  if (!definite && foods.length === 1) return true;
  const isFirst = isNew && isAtStart(said, part, step);
  // `The sour cream`, `the golden syrup`: one that is bought by that name.
  const isBought = foods.length === 1 && words.length > 1 && (isFirst || BOUGHT.has(foods[0]?.class ?? 'other'));
  return !foods.some((food) => {
    // Mayonnaise is called that; `the dressing` is what was made.
    const isByName = food.name === words.join(' ');
    const made = isBought ? undefined : madeOf(food, isByName, isFirst && foods.length === 1);
    if (made === 'anything' && isByName && isFatOfItsOwn(food) && !listsFat(part)) return false;
    return made === 'anything'
      ? definite && mayBeCalled(said, part, step)
      : made !== undefined && seen.some((head) => lists(head, made));
  });
}

/** Beans that a crust is baked under: `lift out the beans`. */
const isLiftedOut = ({ foods, words }: FoodSaid, part: Part): boolean =>
  foods.some((food) => food.class === 'legume' || food.class === 'grain') &&
  part.steps.some((step) => liftsOut(step, words));

/** Of what it may have been made: where nothing is made yet, it is only another word for what is listed. */
function madeOf(food: Food, isByName: boolean, isFirst: boolean): readonly FoodClass[] | 'anything' | undefined {
  const made = MADE_OF.get(food.class);
  if (made === undefined || made === 'anything') return made;
  // `The fat` is what a roast gives; butter, and buttermilk, nothing but milk.
  const isMilk = isByName && (food.class === 'fat' || food.class === 'milk') && food.allergens.eu.includes('milk');
  return isFirst ? [food.class] : isMilk ? ['fat', 'cream'] : made;
}

/** Whether nothing has been taken before it, of which it could be made. */
const isAtStart = ({ taken }: FoodSaid, part: Part, step: Step): boolean =>
  part.index === 0 &&
  part.steps.every((other) => other.line >= step.line || other.mentions.length === 0) &&
  step.mentions.every(({ start }) => taken !== undefined && start >= taken.start);

/** Of these, what a kitchen makes of its list has one word: `the cream`, `the syrup`. */
const BOUGHT: ReadonlySet<FoodClass> = new Set([
  'cream',
  'milk',
  'dairy',
  'syrup',
  'sugar',
  'flour',
  'starch',
  'fat',
  'oil',
  'juice',
  'flavouring',
  'vinegar',
  'alcohol',
]);

const nounsOf = ({ words }: FoodSaid): readonly string[] => words.filter((word) => !ADJECTIVES.has(word));

/** Whether something listed is so called, or is what it comes from: `the lemon juice`, where lemons are. */
function isKnown(said: FoodSaid, part: Part): boolean {
  const { words, foods } = said;
  const nouns = nounsOf(said);
  const isPart = part.heads.some((head) => nouns.length > 0 && nouns.every((w) => wordsOf(head.name).includes(w)));
  if (isPart || nouns.length === 0) return isPart || words.every((w) => isListed(part, w));
  // Baking soda does not come of the baking powder.
  const own = foods.some((food) => MADE_OF.has(food.class)) ? nouns : nouns.slice(-1);
  return own.some((w) => isListed(part, w));
}

/** Something of which fat may be drawn; in the part itself, what nobody knows may be it. */
const listsFat = (part: Part): boolean =>
  part.head.ingredients.some(({ food }) => food === undefined) ||
  part.heads.slice(0, part.index + 1).some((head) => listedMakings(head).has('rich'));

const lists = (head: PartHead, classes: readonly FoodClass[]): boolean =>
  classes.some((c) => listedMakings(head).has(c));

/** Fat that a pan is greased with or something is fried in, and flour for the board. */
const isForThePan = ({ foods, taken }: FoodSaid): boolean =>
  taken !== undefined &&
  ((foods.some((f) => f.class === 'oil') && taken.act === 'heat') ||
    (foods.some((f) => f.class === 'oil' || f.class === 'fat') &&
      ((taken.act === 'heat' && taken.cooks !== 'barely') ||
        isOf(taken, GREASING) ||
        // `Rub the tin with butter`, and not `rub in the butter`.
        (taken.craft === 'rub' && taken.vessel !== undefined))) ||
    (foods.some((f) => f.class === 'flour' || f.class === 'starch') &&
      (taken.act === 'shape' || isOf(taken, DUSTING))));

/** The pepper of `season with salt and pepper`. */
const isSeasoning = ({ foods, taken, besideSalt }: FoodSaid): boolean =>
  foods.some((f) => f.class === 'spice') && (besideSalt || (foods.length > 1 && taken?.craft === 'season'));

const isOf = ({ craft }: NonNullable<FoodSaid['taken']>, crafts: ReadonlySet<Craft>): boolean =>
  craft !== undefined && crafts.has(craft);
const GREASING: ReadonlySet<Craft> = new Set(['brush', 'line', 'grease', 'dust']);
const DUSTING: ReadonlySet<Craft> = new Set(['dust', 'press', 'knead']);

const isOfFood = (item: MeasuredNode): boolean =>
  item.unit === undefined ? item.quantity.count !== undefined : !OF_NO_FOOD.has(item.unit.symbol);
const OF_NO_FOOD: ReadonlySet<UnitSymbol> = new Set(['%', 'mm', 'cm', 'in']);

/** Whether a list line, part name or kind that the part can see has the word: then it is no stranger. */
function isListed(part: Part, word: string): boolean {
  for (let i = part.index; i >= 0; i--) {
    const head = i === part.index ? part.head : part.heads[i];
    if (head !== undefined && listedWords(head).has(word)) return true;
  }
  return false;
}

/** The line of the part behind which a food of a step is listed, in the order of use; the part's own where nothing is listed. */
function listLineBefore({ ledger, index, head }: Part, step: Step): number {
  const isTaken = (use: TakenUse) => use.part === index && use.line <= step.line;
  const before = ledger.findLast(({ uses: [first] }) => first !== undefined && isTaken(first));
  if (before !== undefined) return before.ingredient.line;
  const [first] = head.ingredients;
  const above = first && head.source.lines[first.line - 1];
  // What is accepted or said of the first line stays above it.
  const isFree = above !== undefined && above.statement.kind !== 'allow' && above.statement.kind !== 'blank';
  return first !== undefined && isFree && ledger.some(({ uses }) => uses.length > 0)
    ? first.line - 1
    : (head.ingredients.at(-1)?.line ?? 0);
}
