import { insertLineAfter } from '../../edits/text-edit.ts';
import type { Food, FoodClass } from '../../food/food.ts';
import { nounOf } from '../../food/nouns.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import type { MeasuredNode } from '../../notation/tree.ts';
import { dishesNamed } from '../../prose/dish-named.ts';
import type { Act, Craft } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { type FoodSaid, foodBehind, foodsSaid, isSaidBefore, liftsOut } from '../../recipe/journey/foods-said.ts';
import { isFamily, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Mention, Part, PartHead, Step, TakenUse } from '../../recipe/model.ts';
import { listedMakings, listedWords, RICH, unheardWords } from '../../recipe/part.ts';
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
  explain: `A step calls for a food that neither this part's list nor an earlier part's has, so nobody buys it and its water, fat and salt are not counted. It is a warning with an amount (\`add 100 ml milk\`), among what is listed (\`mix the flour, salt and yeast\`), and named alone where it goes in and no kitchen makes it of what is there by then (\`fold in the walnuts\`, \`heat the ghee\`); else it is information, since a step may speak of something it has just made, or of a splash of wine.

List it with the amount the step names. Silent for water, ice, salt and the pepper beside it where they are named alone, oil and fat for the pan, flour for the board, what is served beside the dish, what a part is called, what may be made of the list (\`the syrup\`, where sugar is listed), what is saved, lifted out or returned, and for a word after \`\\\`.`,
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
  ['oil', ['oil']],
  ['cream', ['cream', 'milk', 'dairy', 'cheese']],
  ['milk', ['milk']],
  ['syrup', ['syrup', 'sugar']],
  ['sugar', ['sugar', 'syrup']],
  ['fat', ['fat', 'oil', 'cream', 'meat', 'cured meat', 'poultry']],
  ['juice', ['juice', 'fruit', 'vegetable', 'meat', 'poultry', 'fish', 'shellfish']],
  ['flavouring', ['flavouring', 'fruit']],
  ['pasta', ['pasta', 'flour']],
  ['flour', ['flour']],
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
  if (taken?.verb === undefined || taken.said !== 'yes') return false;
  // `…, beating well after each, then the vanilla`
  if (taken.as !== 'ordered' && !(taken.as === 'beside' && taken.act === 'combine')) return false;
  if (isAmong(said, part, step)) return true;
  if (!GOES_IN.has(taken.act)) return false;
  // Butter for the pan.
  if (taken.act === 'heat' && !said.definite && foods.some((food) => food.class === 'fat')) return false;
  if (foods.every((food) => NEVER.has(food.class) || STAPLES.has(food.class) || isFatOfItsOwn(food))) return true;
  // A splash of wine, a thread of oil, and what another part lists.
  if (
    vague ||
    isForFinish(said) ||
    part.heads.some((head) => head !== part.head && said.words.some((word) => listedWords(head).has(word)))
  )
    return false;
  return foods.every((food) => !mayBeMade(food, said, part, step));
}

/** Whether a cook may have made it: bread and sauce of anything, and what is called by a word alone of what is listed. */
function mayBeMade(food: Food, said: FoodSaid, part: Part, step: Step): boolean {
  const { words, definite, taken } = said;
  if (MADE_OF.get(food.class) !== 'anything') return words.length === 1 && isMade(food, said, part, step);
  // Sesame seeds are stirred in; a loaf is baked in a crust, and served with sauce.
  return definite
    ? isMade(food, said, part, step)
    : taken?.act !== 'combine' || part.heads.some((head) => lists(head, [food.class]));
}

/** Whether what was made may be called so: `the caramel`; by a name of several words, where a step speaks of it before: no cook makes `the citric acid`. */
const mayBeCalled = (said: FoodSaid, part: Part, step: Step): boolean =>
  nounsOf(said).length <= 1 || isSaidBefore(said, part.steps, step);

/** Told off among what is listed, and nothing that comes out of that, or was made: `put meat and juices in a bag`, `add the porridge and salt`. */
function isAmong(said: FoodSaid, part: Part, step: Step): boolean {
  const { among, vague, foods, words } = said;
  const [only, ...more] = foods;
  if (!among || vague || only === undefined) return false;
  if (more.length > 0) return words.length > 1 || !foods.some((food) => YIELDED.has(food.class));
  return (MADE_OF.get(only.class) ?? 'anything') !== 'anything' || !isMade(only, said, part, step);
}

const YIELDED: ReadonlySet<FoodClass> = new Set(['seed', 'juice']);

/** Oil that is poured over at the end. */
const isForFinish = ({ foods, taken, definite }: FoodSaid): boolean =>
  !definite && foods.some((food) => food.class === 'oil') && (taken?.act !== 'combine' || taken.craft === 'brush');

const GOES_IN: ReadonlySet<Act> = new Set<Act>(['combine', 'put', 'heat', 'cut', 'steep', 'divide']);
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
  const isNew = definite && !isSaidBefore(said, part.steps, step);
  const isNever = foods.some((f) => NEVER.has(f.class)) && !(isNew && taken.act === 'combine');
  if (isAmong(said, part, step)) return true;
  if (isNever || (!isNew && (isForThePan(said) || isSeasoning(said)))) return false;
  // `The syrup`, and `meat` whatever it be, may be something of the list.
  if (!definite && foods.length === 1) return true;
  const isFirst = isNew && isAtStart(said, part, step);
  // `The sour cream`, `the golden syrup`: one that is bought by that name.
  const isBought = foods.length === 1 && words.length > 1 && (isFirst || BOUGHT.has(foods[0]?.class ?? 'other'));
  return isBought
    ? !foods.some((food) => MADE_OF.get(food.class) === 'anything' && isMade(food, said, part, step))
    : !foods.some((food) => isMade(food, said, part, step));
}

/** Whether steps may have made it, or a line that no step names may be it. */
function isMade(food: Food, said: FoodSaid, part: Part, step: Step): boolean {
  const { foods, words, definite } = said;
  const made = MADE_OF.get(food.class);
  // `The cold porridge`, of flour that was cooked in water.
  if (made === undefined) return food.class === 'grain' && definite && nounOf(words.at(-1) ?? '')?.is === 'made';
  const isFirst = foods.length === 1 && isAtStart(said, part, step) && !isSaidBefore(said, part.steps, step);
  if (made === 'anything') {
    // `The crust`, `the seeds`: of whatever there is.
    if (foods.length > 1) return definite;
    const dishes = dishesNamed(words.join(' '));
    if (!definite || isFirst) return false;
    if (dishes.length > 0)
      return dishes.some(({ needs }) => needs.every((either) => either.some((f) => hasFamily(f, part))));
    return nounOf(words.at(-1) ?? '')?.is === 'made' && mayBeCalled(said, part, step);
  }
  // `The fat` is what a roast gives; butter, and buttermilk, nothing but milk.
  const isByName = food.name === words.join(' ');
  const isMilk = isByName && (food.class === 'fat' || food.class === 'milk') && food.allergens.eu.includes('milk');
  const of = isMilk
    ? (['cream'] as const)
    : isFirst
      ? [food.class]
      : isByName
        ? made.filter((c) => c !== food.class)
        : made;
  return (
    part.heads.slice(0, part.index).some((head) => lists(head, of)) ||
    part.head.ingredients.some((i, at) => of.includes(foodOf(i)?.class ?? 'other') && isThereBy(at, part, step))
  );
}

/** Whether a line is taken before, or with what is said, or never by its name. */
function isThereBy(ingredient: number, part: Part, { line }: Step): boolean {
  const naming = part.steps.filter((step) => step.mentions.some((m) => names(m, ingredient, part)));
  return naming.length === 0 || naming.some((step) => step.line <= line);
}

const names = ({ ingredients }: Mention, ingredient: number, { index }: Part): boolean =>
  ingredients.some((ref) => ref.part === index && ref.ingredient === ingredient);

/** Whether a list has it, for all that the part itself can tell. */
const hasFamily = (family: string, part: Part): boolean =>
  part.index > 0 || !isFamily(family) || part.head.ingredients.some((i) => i.food === undefined || isIn(i, family));

/** Beans that a crust is baked under: `lift out the beans`. */
const isLiftedOut = ({ foods, words }: FoodSaid, part: Part): boolean =>
  foods.some((food) => food.class === 'legume' || food.class === 'grain') &&
  part.steps.some((step) => liftsOut(step, words));

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
  if (nouns.length === 0) return words.every((w) => isListed(part, w));
  const isPart = part.heads.some(
    (head) => nouns.every((w) => wordsOf(head.name).includes(w)) && (head !== part.head || mayBeTitle(foods, part)),
  );
  if (isPart) return true;
  // Baking soda does not come of the baking powder.
  const own = foods.some((food) => MADE_OF.has(food.class)) ? nouns : nouns.slice(-1);
  const unheard = unheardWords(part.head);
  return (
    own.some((w) => unheard.includes(w) || wordsOf(part.head.kindNode?.text ?? '').includes(w)) ||
    part.heads.slice(0, part.index).some((head) => own.some((w) => listedWords(head).has(w))) ||
    part.head.ingredients.some((i) => isCalled(i, said, own, part))
  );
}

/** Whether what a part is called may be meant: it is made there, or a line that no step names is it. */
const mayBeTitle = (foods: readonly Food[], part: Part): boolean =>
  foods.some(
    ({ class: of }) =>
      MADE_OF.get(of) === 'anything' ||
      part.head.ingredients.some(
        ({ food }, at) =>
          (food === undefined || food.class === of) &&
          !part.steps.some((step) => step.mentions.some((m) => names(m, at, part))),
      ),
  );

/** Whether a line of the list has the words, and may be the food, or what it comes from. */
function isCalled(
  { name, node, food }: Ingredient,
  { foods, words }: FoodSaid,
  own: readonly string[],
  part: Part,
): boolean {
  const [only, ...more] = foods;
  const has = (text: string | undefined): boolean => own.some((w) => wordsOf(text ?? '').includes(w));
  const { preparation, purpose, note } = node;
  if (!has(name)) {
    // `Water, for the gelatine` lists none; `sugar, for the syrup` tells of what is made.
    const before = preparation?.text.slice(0, purpose === undefined ? undefined : purpose.start - preparation.start);
    return (
      has(before) ||
      has(note?.text) ||
      (words.length === 1 && MADE_OF.has(only?.class ?? 'other') && has(purpose?.text))
    );
  }
  if (only === undefined || more.length > 0 || food === undefined || food === only) return true;
  const made = MADE_OF.get(only.class);
  if (food.class !== only.class && made !== 'anything' && made?.includes(food.class) !== true) return false;
  const said = new Set(words);
  // `The whipped cream` is the double cream of the list; `the garlic butter` is made of two lines.
  return (
    wordsOf(food.name).every((w) => said.has(w)) ||
    words.every((w) => w.endsWith('ed') || wordsOf(name).includes(w)) ||
    words.every((w) => isListed(part, w))
  );
}

const lists = (head: PartHead, classes: readonly FoodClass[]): boolean =>
  classes.some((c) => listedMakings(head).has(c));

/** Fat that a pan is greased with or something is fried in, and flour for the board. */
const isForThePan = ({ foods, taken, definite }: FoodSaid): boolean =>
  taken !== undefined &&
  !definite &&
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
