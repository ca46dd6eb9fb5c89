import { celsiusOf } from '../../notation/celsius.ts';
import type { DurationNode, SentenceItem, Span } from '../../notation/tree.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { anySays, says } from '../../recipe/step-words.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { CAUTION, type HoldingLimits, holdingLimits, timeText } from './limits.ts';
import { isNight, NIGHT, TELLING, verbOf, whereItLies, wordAt } from './lying-about.ts';
import { shelfIn } from './on-a-shelf.ts';
import { isPerishable, spoilsInTheRoom } from './perishable.ts';

interface Values {
  readonly kind: 'to the middle' | 'to the end' | 'in the room' | 'left out' | 'on a shelf';
  /** Not known of what is only said to be put by. */
  readonly minutes?: number;
  readonly overnight: boolean;
  readonly limitMin: number;
  readonly limits: HoldingLimits;
  readonly source: string;
}

export default defineCheck<Values>({
  code: 'cooling-too-slow',
  title: 'Perishable food lies warm for too long',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-501.14 and 3-501.19; USDA FSIS, danger zone (for consumers)',
  },
  explain: `**What it computes.** For a part that is perishable (meat, fish, egg, dairy, stock, or cooked vegetables, pulses, rice and pasta, and neither sour, sweet nor dry enough to keep): the times its steps give for cooling. From 57 to 21 °C it may take 2 h, and to 5 °C 6 h in all. A step that cools it in the room for more than 2 h, or overnight, cannot meet the first; one that leaves it out for more than 4 h (2 h by the home rule), or puts it by in a larder or a cupboard, passes what time alone allows.

**Why it matters.** Spores of Clostridium perfringens and Bacillus cereus survive the boil, and between 50 and 20 °C they double every quarter of an hour. A deep pot left on the stove overnight is the classic outbreak.

**What to do.** Spread it in shallow trays, set it over ice, divide it, stir; write \`cool to 21 C within 2 h and to 5 C within 6 h in all\`.

**Silent** for breads, cakes, pastry, jam, pickles and ferments, for what cools in the fridge, over ice or in a blast chiller, for soaking, and for marinating where no meat or fish is left out in it.`,
  *find(part, house) {
    for (const ingredient of part.head.ingredients) {
      const found = leftOutBefore(ingredient, house.foodSafety);
      if (found !== undefined) yield found;
    }
    if (!anySays(part.steps, TELLING) || !isPerishable(part)) return;
    const limits = holdingLimits(house.foodSafety);
    for (const step of part.steps) {
      const found = (hasTime(step) ? inStep(step, limits, part) : undefined) ?? onShelf(step, limits, part);
      if (found !== undefined) yield found;
    }
  },
  say: ({ kind, minutes, overnight, limitMin, limits, source }) => {
    const { fromC, middleC, middleMin, endC, endMin } = limits.cooling;
    const rule = `it must pass from ${fromC} to ${middleC} °C within ${timeText(middleMin)} and reach ${endC} °C within ${timeText(endMin)} in all`;
    const took = overnight || minutes === undefined ? 'Overnight' : timeText(minutes);
    const message = {
      'to the middle': `${took} to ${middleC} °C is too slow: ${rule}.`,
      'to the end': `${took} to ${endC} °C is too slow: ${rule}.`,
      'in the room': `${took} in the room is too slow for this to cool: ${rule}. Use shallow trays, ice or a chiller.`,
      'left out': `${took} left out is too long for this: ${timeText(limitMin)} at most, and then eaten or thrown away.`,
      'on a shelf': `This does not keep there: keep it at ${limits.cold.celsius} °C, ${limits.cold.fahrenheit} °F, or below, or freeze it. Out of the cold, ${timeText(limitMin)} at most.`,
    }[kind];
    return {
      message: `${message} ${CAUTION}`,
      ...(minutes !== undefined && { value: minutes, unit: 'min' }),
      band: [null, limitMin],
      source,
    };
  },
  examples: {
    good: [
      'recipe Bone broth as stock\n  2 kg      beef bones\n  4 l       water\n  do Simmer the bones in the water for 6 h and strain.\n  do Cool to 21 C within 2 h and to 5 C within 6 h in all.\n',
      'recipe Loaf\n  500 g     bread flour\n  330 g     whole milk\n  9 g       fine salt\n  5 g       instant yeast\n  do Mix the flour, milk, salt and yeast and prove at 24 C for 2 h.\n  do Bake at 220 C for 35 min until the centre reads 95 C.\n  do Cool on a rack for 3 h.\n',
      'recipe Rice pudding\n  1 l       whole milk\n  120 g     pudding rice\n  60 g      caster sugar\n  do Simmer the rice in the milk with the sugar for 40 min.\n  do Cool for 30 min, then chill at 4 C overnight.\n',
    ],
    bad: [
      'recipe Lemon curd\n  150 ml    lemon juice\n  200 g     caster sugar\n  100 g     butter\n  3 large   eggs\n  do Stir the juice, sugar, butter and eggs over simmering water until it reads 82 C, 12 min.\n  do Pour into sterilised jars, seal and store in the larder.\n# "larder" cooling-too-slow: does not keep there\n',
      'recipe Chicken broth as stock\n  1.5 kg    chicken wings\n  3 l       water\n  do Simmer the chicken wings in the water for 3 h and strain.\n  do Leave to cool on the stove overnight.\n#                               ^^^^^^^^^ cooling-too-slow: shallow trays\n',
      'recipe Rice pudding\n  1 l       whole milk\n  120 g     pudding rice\n  60 g      caster sugar\n  do Simmer the rice in the milk with the sugar for 40 min.\n  do Cool to 21 C within 4 h and chill at 4 C.\n# "4 h" cooling-too-slow: too slow\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Stand at room temperature for 5 h.\n# "5 h" cooling-too-slow: left out\n',
      'recipe Fried rice\n  500 g     cooked rice, left out overnight\n# "overnight" cooling-too-slow: left out\n  2 tbsp    sunflower oil\n  do Fry the rice in the oil until piping hot.\n',
    ],
  },
});

const hasTime = (step: Step): boolean => step.sentence.items.some((i) => i.kind === 'duration') || says(step, NIGHT);

const NIGHT_MIN = 480;

function inStep(step: Step, limits: HoldingLimits, part: Part): Found<Values> | undefined {
  const { items } = step.sentence;
  const { cooling, leftOut, title } = limits;
  for (const [at, item] of items.entries()) {
    if (item.kind !== 'duration' || isShelfLife(items, at)) continue;
    const found = (kind: Values['kind'], limitMin: number, section: string): Found<Values> => ({
      at: { line: step.line, ...spanOf(item) },
      values: {
        kind,
        minutes: item.highMin,
        overnight: item.overnight,
        limitMin,
        limits,
        source: `${title}, ${section}`,
      },
    });
    const target = wordAt(items, at - 1) === 'within' ? targetBefore(items, at) : undefined;
    if (target !== undefined) {
      if (
        target >= cooling.endC + 1 &&
        target <= cooling.middleC + 1 &&
        item.highMin > cooling.middleMin &&
        !isInAll(items, at)
      )
        return found('to the middle', cooling.middleMin, cooling.section);
      if (target <= cooling.endC + 1 && item.highMin > cooling.endMin)
        return found('to the end', cooling.endMin, cooling.section);
      continue;
    }
    const verb = verbOf(items, at);
    if (verb === undefined) continue;
    const where = whereItLies(step, at, verb, part);
    if (where === 'cools' && lowOf(item) > cooling.middleMin)
      return found('in the room', cooling.middleMin, cooling.section);
    if (where === 'left out' && lowOf(item) > leftOut.min) return found('left out', leftOut.min, leftOut.section);
  }
  return throughNight(step, limits, part);
}

/** Left out until morning, with no hours named. */
function throughNight(step: Step, limits: HoldingLimits, part: Part): Found<Values> | undefined {
  if (!says(step, NIGHT)) return undefined;
  const { cooling, leftOut, title } = limits;
  const { items } = step.sentence;
  const at = items.findIndex((_, i) => isNight(items, i));
  const item = items[at];
  const verb = verbOf(items, at);
  if (item === undefined || verb === undefined || items.some((i) => i.kind === 'duration')) return undefined;
  const where = whereItLies(step, at, verb, part);
  if (where === undefined) return undefined;
  const [kind, limitMin, section] =
    where === 'cools'
      ? (['in the room', cooling.middleMin, cooling.section] as const)
      : (['left out', leftOut.min, leftOut.section] as const);
  return {
    at: { line: step.line, ...spanOf(item) },
    values: { kind, minutes: NIGHT_MIN, overnight: true, limitMin, limits, source: `${title}, ${section}` },
  };
}

const OUT = /\b(?:left|stood|standing|kept|thawed|defrosted|cooled|marinated|sat|forgotten)\b/i;
const IN_THE_ROOM = /\b(?:out|counter|bench|worktop|table|room|stove|hob|kitchen|sill|side)\b/i;
const IN_THE_COLD = /\b(?:fridge|refrigerat\w*|chill\w*|cold|ice|iced)\b/i;
const ALL_NIGHT = /\b(?:overnight|all night|(\d+) ?(?:h|hours?))\b/i;

/** `500 g cooked rice, left out overnight`: what lay about before the first step. */
function leftOutBefore({ food, line, node }: Ingredient, foodSafety: House['foodSafety']): Found<Values> | undefined {
  const { preparation } = node;
  if (preparation === undefined || food === undefined || !OUT.test(preparation.text)) return undefined;
  const { text } = preparation;
  const time = ALL_NIGHT.exec(text);
  if (time === null || !IN_THE_ROOM.test(text) || IN_THE_COLD.test(text) || !spoilsInTheRoom(food, node.name?.text))
    return undefined;
  const limits = holdingLimits(foodSafety);
  const { leftOut, title } = limits;
  const minutes = time[1] === undefined ? NIGHT_MIN : Number(time[1]) * 60;
  if (minutes <= leftOut.min) return undefined;
  return {
    at: { line, start: preparation.start + time.index, end: preparation.start + time.index + time[0].length },
    values: {
      kind: 'left out',
      minutes,
      overnight: time[1] === undefined,
      limitMin: leftOut.min,
      limits,
      source: `${title}, ${leftOut.section}`,
    },
  };
}

/** Put by where it is neither hot nor cold. */
function onShelf(step: Step, limits: HoldingLimits, part: Part): Found<Values> | undefined {
  const place = shelfIn(step, part);
  if (place === undefined) return undefined;
  const { leftOut, title } = limits;
  const longest = step.sentence.items.reduce(
    (most, i) => (i.kind === 'duration' ? Math.max(most, i.highMin) : most),
    0,
  );
  // For an hour it may.
  if (longest > 0 && longest <= leftOut.min) return undefined;
  return {
    at: { line: step.line, ...spanOf(place) },
    values: {
      kind: 'on a shelf',
      ...(longest > 0 && { minutes: longest }),
      overnight: false,
      limitMin: leftOut.min,
      limits,
      source: `${title}, ${leftOut.section}`,
    },
  };
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });
const lowOf = (d: DurationNode): number => d.lowMin;

/** `to 21 C within …`, `to 4 C or lower within …`: the temperature just before. */
function targetBefore(items: readonly SentenceItem[], at: number): number | undefined {
  for (let i = at - 1; i >= Math.max(0, at - 5); i--) {
    const item = items[i];
    if (item?.kind === 'temperature') return celsiusOf(item).low;
  }
  return undefined;
}

const USING: ReadonlySet<string> = new Set(['use', 'used', 'using', 'eat', 'eaten', 'serve', 'consume', 'finish']);

/** `Chill at 4 C and use within 4 d`: how long it keeps, and not how fast it cools. */
function isShelfLife(items: readonly SentenceItem[], at: number): boolean {
  for (let i = at - 1; i >= 0; i--) {
    const item = items[i];
    if (item?.kind === 'mark' || item?.kind === 'temperature') return false;
    if (item?.kind === 'word' && USING.has(item.word)) return true;
  }
  return false;
}

/** `6 h in all` counts from the start. */
const isInAll = (items: readonly SentenceItem[], at: number): boolean =>
  wordAt(items, at + 1) === 'in' && wordAt(items, at + 2) === 'all';
