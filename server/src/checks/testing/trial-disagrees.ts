import { listGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText, percentRange, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { bindIngredient } from '../../recipe/list/ingredient.ts';
import { weighLine, weighQuantity } from '../../recipe/list/line-weight.ts';
import type { Ingredient, Part, Recipe, World } from '../../recipe/model.ts';
import { type InOven, inOven, isOutOfOven, type OutOfOven, outOfAll } from '../../recipe/trials/out-of-oven.ts';
import { isOutsideFood, type Trial } from '../../recipe/trials/trials.ts';
import { capital, sameName, wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { byPart, type Given, overParts, type Worked, workedAgain } from '../over-parts.ts';
import { plainTable } from '../sum-table.ts';
import {
  distanceOf,
  farHeat,
  farTime,
  type HeatAt,
  heatIn,
  namedIn,
  type Reached,
  TIME_SLACK,
  type TimeAt,
  type Took,
  textAt,
  timesIn,
} from './nearest-figures.ts';
import { changedIn, factsIn, trialsOf } from './trials-read.ts';

interface Values {
  readonly what: 'time' | 'temperature' | 'amount' | 'weight';
  /** `Bake`, `the centre`, `caster sugar`, `the oven`. */
  readonly of: string;
  readonly written: string;
  readonly measured: string;
  readonly date: string;
  readonly trialAt: Place;
  /** Of a weight out of the oven: what usually comes out, and what is wrong with that which did. */
  readonly usual?: string;
  readonly beyond?: string;
  /** What to write in the place of the finding. */
  readonly write?: string;
  readonly ingredient?: { readonly part: number; readonly ingredient: Ingredient; readonly grams: number };
}

/** A time, weight or amount within this share of what is written agrees. Common practice, no source. */
const AMOUNT_SLACK = 0.05;

export default defineCheck<Values>({
  code: 'trial-disagrees',
  title: 'A trial measured something else than the recipe says',
  family: 'testing',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The latest trial's lines against the recipe: \`took 52 min to bake\` against the time of the step that bakes, \`reached 71 C in the centre\` against the temperature that is promised there, \`used 36 g water\` against the list, \`weighed 900 g out of the oven\` against what usually comes out of it: the ingredients that go in, less what each part loses by its kind (bread 6 to 23 %, pastry 4 to 25 %, custard 1 to 15 %, a roast 8 to 45 %) and never more than the water and alcohol in it, with half the fat of meat.

**Why it matters.** A recipe promises what the kitchen has measured. Where the two differ, the next cook follows the page and gets something else.

**What to do.** Write what was measured, or a range over the trials that agree. **Silent** within 15 % of a time, 5 % of an amount, 3 °C and 3 % of the ingredients beyond what they usually weigh out of the oven, for one piece of the yield that weighs its share, where a weight is not known, where no step says anything to compare with, for a temperature of the oven, the fridge or the room, for a line that was changed since the trial tested it, and for older trials than the latest.`,
  find({ recipe, outline }) {
    const trials = trialsOf(outline);
    const latest = trials.at(-1);
    if (latest === undefined) return [];
    const found = [...times(recipe, latest, trials), ...temperatures(recipe, latest), ...amounts(recipe, latest)];
    // What was changed since is not what the trial cooked: that is `untested-change`'s to say.
    const since = latest.tested === undefined ? [] : changedIn(latest.tested, factsIn(recipe));
    if (since.length === 0) return [...found, ...weights(recipe, latest)];
    return found.filter(({ at }) => !since.some(({ part, line }) => at.part === part && at.line === line));
  },
  say: ({ what, of, written, measured, date, trialAt, write, usual, beyond }) => ({
    message: {
      time: `${of}: ${written} is written, and it took ${measured} on ${date}${write === measured ? '' : `, ${write} over the trials that agree`}. Write what was measured.`,
      temperature: `${written} is promised in ${of}, and it reached ${measured} on ${date}. Write what was measured, or cook it on.`,
      amount: `${written} ${of} is listed, and ${measured} was used on ${date}. Write what was used.`,
      weight: `Of ${written} of ingredients, ${usual} usually comes out of ${of}, and ${measured} was weighed on ${date}: ${beyond}`,
    }[what],
    related: [{ at: trialAt, message: 'The trial measured it here.' }],
  }),
  work: ({ what, usual, written }, { recipe }) => {
    const oven = what === 'weight' ? usualOf(inOvenOf(recipe)) : undefined;
    if (oven === undefined) return [];
    const rows = oven.parts.map(({ name, ingredients, left }) => [
      name === '' ? 'the recipe' : name,
      gramsRange(ingredients),
      lossText(ingredients, left),
      gramsRange(left),
    ]);
    return [
      ...plainTable(
        ['part', 'goes in', 'loses', 'usually comes out'],
        [...rows, ['**in all**', `${written}`, '', `${usual}`]],
      ),
      '',
      `A weight is found from ${gramsText(oven.slackG)} g beyond that, for what stays in the bowl and what the scale is out by. What may go on after the oven counts from nothing to all of it.`,
    ];
  },
  fix: ({ write, ingredient }, { recipe }, at) => {
    if (write !== undefined)
      return [{ title: `Write ${write}`, effect: 'amounts', edits: [replaceSpan(at.line, at, write)] }];
    if (ingredient === undefined) return [];
    const listed = listGrams(recipe, ingredient.part, ingredient.ingredient, ingredient.grams);
    return listed === undefined
      ? []
      : [{ title: `Write ${listed.written} ${ingredient.ingredient.name}`, effect: 'amounts', edits: listed.edits }];
  },
  examples: {
    good: [
      'recipe Curd\n  2 cups    sugar\n  juice of 3 lemons\n  4 x 400 g tins tomatoes\n  do Mix everything.\n\ntrial 2026-09-14\n  used    1 3/4 cups + 4 tbsp sugar\n  used    juice of 3 lemons\n  used    1600 g tomatoes\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-09-14\n  took    11 min to toast\n  verdict keep\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-08-01\n  took    25 min to toast\n\ntrial 2026-09-14\n  took    12 min to toast\n  used    205 g rolled oats\n',
      'recipe Loaf as lean bread\n  yield   1 loaf\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35-40 min until brown.\n\ntrial 2026-09-14\n  weighed 745 g out of the oven\n',
    ],
    bad: [
      {
        text: 'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 35-40 min until golden.\n#                      ^^^^^^^^^ trial-disagrees *: it took 52 min\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        after: {
          'Write 52 min':
            'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 52 min until golden.\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        },
      },
      {
        text: 'recipe Dough\n  200 g     plain flour\n  20 g      water\n# "20 g" trial-disagrees *: 36 g was used\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        after: {
          'Write 36 g water':
            'recipe Dough\n  200 g     plain flour\n  36 g      water\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        },
      },
      'recipe Curd\n  100 g     sugar\n  juice of 3 lemons\n# "3" trial-disagrees: juice of 3 lemons is listed\n  do Mix everything.\n\ntrial 2026-09-14\n  used    juice of 1 lemon\n',
      {
        text: 'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min until brown.\n\ntrial 2026-09-14\n  weighed 590 g out of the oven\n# "590 g" trial-disagrees: Of 853 g of ingredients, 657 to 802 g usually comes out of the oven\n',
      },
      {
        text: 'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min until brown.\n\ntrial 2026-09-14\n  weighed 1200 g out of the oven\n# "1200 g" trial-disagrees: 347 g more than went in\n',
      },
    ],
  },
});

type Used = Trial['used'][number];
type WeighedOut = Trial['weighed'][number];

const timeFound = onceWith(
  (
    { at, duration, verb }: Took,
    { part, step, node, verb: of }: TimeAt,
    date: string,
    trials: readonly Trial[],
  ): Found<Values> => {
    const named = namedIn(verb);
    const others = trials.flatMap(({ took }) =>
      took.filter((o) => o.verb !== undefined && namedIn(o.verb) === named).map((o) => o.duration.lowMin),
    );
    const agreeing = others.filter((m) => Math.abs(m - duration.lowMin) <= TIME_SLACK * duration.lowMin);
    return {
      at: { part: part.index, line: step.line, start: node.start, end: node.end },
      values: {
        what: 'time',
        of: capital(of?.base ?? 'it'),
        written: textAt(part, step.line, node),
        measured: minutesText({ low: duration.lowMin, high: duration.highMin }),
        date,
        trialAt: { line: at, start: duration.start, end: duration.end },
        write: minutesText({
          low: Math.min(...agreeing, duration.lowMin),
          high: Math.max(...agreeing, duration.highMin),
        }),
      },
    };
  },
);

const times = (recipe: Recipe, { took, date }: Trial, trials: readonly Trial[]): readonly Found<Values>[] =>
  took.flatMap((line) => {
    const far = farTime(line, timesIn(recipe));
    return far === undefined ? [] : [timeFound(line, far, date, trials)];
  });

const heatFound = onceWith(
  (
    { at, temperature, celsius, place }: Reached,
    { part, step, celsius: promised, node }: HeatAt,
    date: string,
  ): Found<Values> => {
    const measured = `${trimmed(temperature.lowDegrees, 1)} ${temperature.unit}`;
    return {
      at: { part: part.index, line: step.line, start: node.start, end: node.end },
      values: {
        what: 'temperature',
        of: place?.text ?? 'the food',
        written: textAt(part, step.line, node),
        measured,
        date,
        trialAt: { line: at, start: temperature.start, end: temperature.end },
        // A lower figure is not written for the cook: it may not be safe.
        ...(celsius.low > promised.high && { write: measured }),
      },
    };
  },
);

/** What the oven, the fridge or the room had is not what the food had. */
const reachedInFood = onceFor(({ reached }: Trial) => reached.filter(({ place }) => !isOutsideFood(place)));

const temperatures = (recipe: Recipe, latest: Trial): readonly Found<Values>[] =>
  reachedInFood(latest).flatMap((line) => {
    const far = farHeat(line, heatIn(recipe));
    return far === undefined ? [] : [heatFound(line, far, latest.date)];
  });

type Names = Given<readonly (readonly string[])[]>;

/** Of a part, the first on its list that a trial's line may mean, where both are amounts. */
function meantIn({ amount, part: inPart }: Used, wanted: readonly string[], { part, value: names }: Names) {
  const { head } = part;
  if (amount.kind !== 'measured' || (inPart !== undefined && !sameName(head.name, inPart.text))) return undefined;
  const ingredient = head.ingredients[names.findIndex((words) => endsWith(words, wanted))];
  return ingredient?.node.amount?.kind === 'measured' ? ingredient : undefined;
}

interface Meant {
  readonly wanted: readonly string[];
  now?: Worked<Names, Ingredient | undefined>;
}

/** The line as one of a list: the juice of a lemon is called lemon juice. */
const usedAs = onceWith((used: Used, world: World) => bindIngredient(used.ingredient, 0, world));

const lastMeant = onceWith(
  (used: Used, world: World): Meant => ({
    wanted: wordsOf(usedAs(used, world)?.name ?? used.name.text),
  }),
);

/** Where the first part that has it has what a trial used. */
function meantBy(
  line: Used,
  names: readonly Names[],
  world: World,
): { readonly part: Part; readonly listed: Ingredient } | undefined {
  const last = lastMeant(line, world);
  last.now = workedAgain(names, (each) => meantIn(line, last.wanted, each), last.now);
  const at = last.now.values.findIndex((ingredient) => ingredient !== undefined);
  const [part, listed] = [names[at]?.part, last.now.values[at]];
  return part === undefined || listed === undefined ? undefined : { part, listed };
}

const amountFound = onceWith(
  (line: Used, part: Part, ingredient: Ingredient, date: string, world: World): Found<Values> | undefined => {
    const { at, amount } = line;
    const listed = ingredient.node.amount;
    if (amount.kind !== 'measured' || listed?.kind !== 'measured') return undefined;
    const as = usedAs(line, world);
    const used = as?.takes === undefined ? weighLine(line.ingredient, ingredient.match, world) : as.weighed;
    const { weighed } = ingredient;
    if (!used.known || !weighed.known) return undefined;
    const grams = (used.grams.low + used.grams.high) / 2;
    if (distanceOf(grams, weighed.grams.low, weighed.grams.high) <= AMOUNT_SLACK * weighed.grams.high) return undefined;
    const { takes } = ingredient.node;
    return {
      at: { part: part.index, line: ingredient.line, start: listed.start, end: listed.end },
      values: {
        what: 'amount',
        of: takes === undefined ? ingredient.name : ingredient.nameNode.text,
        written: textAt(part, ingredient.line, { start: takes?.[0]?.start ?? listed.start, end: listed.end }),
        measured: `${gramsText(grams)} g`,
        date,
        trialAt: { line: at, start: amount.start, end: amount.end },
        ingredient: { part: part.index, ingredient, grams },
      },
    };
  },
);

const amounts = (recipe: Recipe, { used, date }: Trial): readonly Found<Values>[] =>
  used.flatMap((line) => {
    const meant = meantBy(line, namesIn(recipe), recipe.world);
    return (meant && amountFound(line, meant.part, meant.listed, date, recipe.world)) ?? [];
  });

const weightFound = onceWith(
  (
    { at, amount, outOf }: WeighedOut,
    usual: string,
    written: string,
    measured: string,
    beyond: string,
    date: string,
  ): Found<Values> => {
    const place = { line: at, start: amount.start, end: amount.end };
    const of = outOf?.text ?? 'the oven';
    return {
      at: place,
      values: { what: 'weight', of, written, measured, usual, beyond, date, trialAt: place },
    };
  },
);

const weighedOut = onceFor(({ weighed }: Trial) => weighed.filter(isOutOfOven));

const inOvenOf = byPart(inOven);

const usualOf = onceFor((parts: readonly InOven[]): OutOfOven | undefined => outOfAll(parts));

function weights(recipe: Recipe, latest: Trial): readonly Found<Values>[] {
  const lines = weighedOut(latest);
  const usual = lines.length === 0 || recipe.inherits ? undefined : usualOf(inOvenOf(recipe));
  if (usual === undefined) return [];
  return lines.flatMap((line) => {
    const weighed = weighQuantity(line.amount.quantity, { kind: 'unknown', near: [] }, recipe.world);
    const beyond = weighed.known ? beyondUsual(weighed.grams, usual, piecesOf(recipe)) : undefined;
    if (!weighed.known || beyond === undefined) return [];
    const grams = gramsRange(weighed.grams);
    return weightFound(line, gramsRange(usual.left), gramsRange(usual.ingredients), grams, beyond, latest.date);
  });
}

/** What is wrong with what was weighed; undefined where nothing is, or one piece of several was weighed. */
function beyondUsual(
  { low, high }: Range,
  { ingredients, left, slackG }: OutOfOven,
  pieces: Range,
): string | undefined {
  const isUsual = (by: Range) => high * by.high >= left.low - slackG && low * by.low <= left.high + slackG;
  if (isUsual(ONE) || isUsual(pieces)) return undefined;
  // Nearer to one piece than to all of them, as they would be multiplied.
  if (pieces.low > 1 && high * Math.sqrt(pieces.low) < left.low)
    return beyondPiece({ low, high }, { low: left.low / pieces.high, high: left.high / pieces.low }, pieces);
  if (low > ingredients.high && left.high <= ingredients.high)
    return `that is ${gramsText(low - ingredients.high)} g more than went in. Weigh it without its tin, or mend the list.`;
  return low > left.high
    ? `that is ${gramsText(low - left.high)} g more. Was it weighed with its tin, or not baked through? Mend the trial, or the list.`
    : `that is ${gramsText(left.low - high)} g less. Was some left in the bowl, or was it baked dry? Mend the trial, or the list.`;
}

function beyondPiece({ low, high }: Range, each: Range, pieces: Range): string {
  const away =
    low > each.high ? `${gramsText(low - each.high)} g more` : `${gramsText(Math.max(0, each.low - high))} g less`;
  const many = pieces.low === pieces.high ? `${pieces.low}` : `${pieces.low} to ${pieces.high}`;
  return `one of ${many} usually weighs ${gramsRange(each)}, and that is ${away}. Mend the trial, the yield or the list.`;
}

const ONE: Range = { low: 1, high: 1 };

/** How many the yield is; 1 where it is no number of pieces. */
function piecesOf({ yield: made }: Recipe): Range {
  const amount = made?.node.amount;
  return amount === undefined || amount.unit !== undefined ? ONE : amount.quantity;
}

/** From the least in and the most out to the most in and the least out. */
function lossText(inside: Range, left: Range): string {
  if (left.high === Number.POSITIVE_INFINITY || inside.low <= 0) return '';
  return percentRange(Math.max(0, 1 - left.high / inside.high), Math.max(0, 1 - left.low / inside.low));
}

function gramsRange({ low, high }: Range): string {
  if (high === Number.POSITIVE_INFINITY) return `${gramsText(low)} g or more`;
  const [least, most] = [gramsText(low), gramsText(high)];
  return least === most ? `${least} g` : `${least} to ${most} g`;
}

/** The words of every name on a part's list. */
const namesIn = overParts(({ head: { ingredients } }) =>
  ingredients.length === 0 ? undefined : ingredients.map((i) => wordsOf(i.name)),
);

function endsWith(words: readonly string[], end: readonly string[]): boolean {
  // No name is meant by no words.
  if (end.length === 0) return words.length === 0;
  for (let i = 1; i <= end.length; i++) if (words[words.length - i] !== end[end.length - i]) return false;
  return true;
}

/** `52 min`, `5 h 30 min`, `1.5-2 h`: in hours where minutes would be many. */
function minutesText({ low, high }: Range): string {
  if (low < MANY_MINUTES || !Number.isInteger(low) || !Number.isInteger(high))
    return low === high ? `${trimmed(low, 1)} min` : `${trimmed(low, 1)}-${trimmed(high, 1)} min`;
  if (low !== high) return `${trimmed(low / 60, 2)}-${trimmed(high / 60, 2)} h`;
  return low % 60 === 0 ? `${low / 60} h` : `${Math.floor(low / 60)} h ${low % 60} min`;
}

const MANY_MINUTES = 120;
