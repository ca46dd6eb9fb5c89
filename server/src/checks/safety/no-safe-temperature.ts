import type { TextEdit } from '../../edits/text-edit.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { asWritten, inWords, isOn, says, wordList } from '../../recipe/step-words.ts';
import { baseForm, verbClass } from '../../recipe/verbs.ts';
import { saidOrAsked } from '../by-state/stays-raw.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { overList } from '../over-parts.ts';
import { isCuringSalt } from './curing-salts.ts';
import { EGG_DISHES } from './egg-dishes.ts';
import {
  cooksThrough,
  type Followed,
  followedIn,
  groupIn,
  heatOf,
  isBoughtSafe,
  isDoneness,
  type Journey,
  type Stop,
} from './journey.ts';
import { besideText, CAUTION, type Group, holdingLimits, holdS, type Limit, limitOf } from './limits.ts';

type Values =
  | {
      readonly kind: 'no figure';
      readonly name: string;
      readonly limit: Limit;
      /** The other rule set's figure. */
      readonly beside: string;
      /** `golden`, `the juices run clear`: a sign of doneness that is no sign of safety. */
      readonly sign: boolean;
      readonly last: Stop;
    }
  | {
      readonly kind: 'raw';
      /** What is done to it may cook it, in words that are not known to. */
      readonly heated?: true;
      readonly name: string;
      readonly source: string;
      readonly group: Group;
      /** Oysters and their like, whose danger is not the parasites that freezing kills. */
      readonly molluscs: boolean;
      readonly rows: readonly (readonly number[])[];
    };

export default defineCheck<Values>({
  code: 'no-safe-temperature',
  title: 'A dish that must be cooked through has no temperature in the food',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-401.11 and 3-402.11; USDA FSIS, Color of Cooked Meat and Poultry: a thermometer is the only sure sign (from memory)',
  },
  explain: `**What it computes.** For poultry, minced meat and dishes that egg sets: whether any step gives a temperature in the food, or cooks it in a way that passes the safe one (boils, simmers, steams, braises, poaches). For fish and whole meat: whether any step heats it at all; in a water bath, or an oven of 75 °C and less, whether it is hot enough for as long as it lies there.

**Why it matters.** Colour and clear juices do not tell: minced beef browns before it is safe, and a thigh can stay pink after. A cook with a figure to reach has a dish that is safe and not dried out besides. Fish eaten raw carries parasites that only freezing or heat kills.

**What to do.** Write where and how hot: \`until the thickest part reads 74 C\`. For fish eaten raw, write the freezing (at −20 °C for 7 d, or at −35 °C for 15 h), or accept it with the reason: farmed on pellets, a species of tuna. Oysters, clams and mussels are made no safer by freezing: buy those sold to be eaten raw, say that they are raw, and accept it.

Where what is done to it reads as heat, in words that no order to cook is sure in, it is a question. A sign such as *golden* or *the juices run clear* makes it information; nothing at all, or *pink in the middle*, makes it an error. **Silent** in parts without steps, for what is bought cooked, cured, smoked or frozen for eating raw, for whole cuts and fish that any step heats, and for egg in doughs, batters and cakes.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: (values) => {
    if (values.kind === 'raw') {
      const rows = values.rows.map(([c = 0, min = 0]) =>
        `${c} °C for ${min >= 1440 ? `${min / 1440} d` : `${min / 60} h`}`.replace('-', '−'),
      );
      const advice = values.molluscs
        ? 'take shellfish sold to be eaten raw, from a licensed dealer, and tell the guests that it is raw'
        : values.group === 'fish'
          ? `freeze it first, at ${rows.reverse().join(' or ')}, or say that it is sold to be eaten raw`
          : 'cook it, or serve it raw only on purpose and with the advisory the rules ask for';
      const message = values.heated
        ? `Does a step cook the ${values.name}? What is done to it is not sure to: write how hot it gets inside. ${CAUTION}`
        : `No step cooks the ${values.name}: ${advice}. ${CAUTION}`;
      return { message, source: values.source };
    }
    const { name, limit, beside, sign } = values;
    const figure = `${limit.celsius} °C, ${limit.fahrenheit} °F`;
    return {
      message: `${sign ? 'The look of it does not tell when it is safe' : 'Nothing tells when it is safe'}: ${name} must read ${figure} inside; say where. ${beside} ${CAUTION}`,
      band: [limit.celsius, null],
      unit: 'C',
      source: limit.source,
    };
  },
  fix: (values, { recipe, document }) => {
    if (values.kind !== 'no figure' || values.limit.group === 'egg') return [];
    const { part, step } = values.last;
    const line = (recipe.partsAt[part.index] ?? 0) + step.line;
    const edit = addReading(document.lines[line]?.text ?? '', line, step.sentence.end, values.limit.celsius);
    return [{ title: `Write \`until the centre reads ${values.limit.celsius} C\``, effect: 'amounts', edits: [edit] }];
  },
  examples: {
    good: [
      'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  do Roast the chicken for 75 min, until the thickest part of the thigh reads 74 C.\n',
      'recipe Chicken broth\n  1.2 kg    chicken legs\n  2 l       water\n  do Simmer the chicken legs in the water for 90 min.\n',
      'recipe Cured salmon\n  800 g     salmon fillet, skinned (frozen at -20 C for 7 d)\n  40 g      fine salt\n  30 g      caster sugar\n  do Rub the salmon with the salt and sugar and chill at 4 C for 1 d.\n',
    ],
    bad: [
      {
        text: 'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n# "chicken" no-safe-temperature *: 74 °C, 165 °F\n  do Roast the chicken for 75 min.\n',
        after: {
          'Write `until the centre reads 74 C`':
            'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  do Roast the chicken for 75 min, until the centre reads 74 C.\n',
        },
      },
      'recipe Patties\n  600 g     minced beef\n# "minced beef" no-safe-temperature info *: does not tell\n  6 g       fine salt\n  do Mix the beef with the salt and shape in 4.\n  do Fry for 6 min until brown on both sides.\n',
      'recipe Soft burgers\n  300 g     minced beef\n# "minced beef" no-safe-temperature *: Nothing tells\n  do Shape, bag and cook in a water bath at 54 C for 30 min.\n',
      'recipe Cured salmon\n  800 g     salmon fillet\n# "salmon fillet" no-safe-temperature: −20 °C for 7 d\n  40 g      fine salt\n  30 g      caster sugar\n  do Rub the salmon with the salt and sugar and chill at 4 C for 1 d.\n',
      'recipe Oysters with shallot\n  12        oysters, shucked\n# "oysters" no-safe-temperature: licensed dealer\n  50 ml     red wine vinegar\n  1         shallot, finely chopped\n  do Mix the vinegar with the shallot and spoon over the oysters.\n',
      'recipe Cup custard as baked custard\n  4 large   eggs\n# "eggs" no-safe-temperature warning\n  500 ml    whole milk\n  80 g      caster sugar\n  do Whisk the eggs with the milk and sugar.\n  do Bake at 150 C for 40 min.\n',
    ],
  },
});

/** An egg dish is set long before anyone would call it done; mince and poultry are not safe when they look it. */
function severityOf(values: Values): { readonly severity?: 'warning' | 'info' } {
  if (values.kind !== 'no figure') return {};
  return values.limit.group === 'egg' ? { severity: 'warning' } : values.sign ? { severity: 'info' } : {};
}

/** By part, the strictest first: it speaks for the part. */
const byStrictness = onceInHouse((house, { journeys }: Followed): readonly Found<Values>[] | undefined => {
  const found = journeys.flatMap((journey): readonly Found<Values>[] => {
    const values = valuesOf(journey, house);
    const { name } = journey.ingredient.node;
    if (values === undefined || name === undefined) return [];
    const at = { part: journey.part.index, line: journey.ingredient.line, start: name.start, end: name.end };
    return [{ at, values, ...severityOf(values) }];
  });
  return found.length === 0 ? undefined : found.sort((a, b) => strictness(b.values) - strictness(a.values));
});

const byPart = overList(byStrictness);

const found = foundAgain<Values>((recipe, house) =>
  byPart(recipe, followedIn(recipe), house).flatMap((of) =>
    saidOrAsked(
      recipe,
      house,
      of,
      ({ kind }) => kind === 'raw',
      (values) => (values.kind === 'raw' ? { ...values, heated: true } : values),
    ),
  ),
);

const strictness = (v: Values): number => (v.kind === 'no figure' ? v.limit.celsius : 0);

function valuesOf(journey: Journey, house: House): Values | undefined {
  const { ingredient, stops, all } = journey;
  if (ingredient.optional || isBoughtSafe(journey)) return undefined;
  const group = groupIn(ingredient);
  if (group === undefined) return undefined;
  const heated = heatOf(journey);
  if (heated === undefined) return group === 'egg' ? undefined : rawValues(journey, group, house);
  if (group === 'fish' || group === 'meat') {
    const limit = limitOf(group, house.foodSafety);
    const bath = coolBath(journey, limit);
    if (bath === undefined) return undefined;
    return {
      kind: 'no figure',
      name: ingredient.name,
      limit,
      beside: besideText(group, house.foodSafety),
      sign: false,
      last: bath,
    };
  }
  if (group === 'egg' && !isEggDish(journey)) return undefined;
  if (all.some(({ step }) => cooksThrough(step) || step.heat.some(isDoneness))) return undefined;
  const last = stops.findLast(({ step }) => says(step, COOKING)) ?? heated;
  const sign = all.some(({ step }) => saysSign(step)) && !stops.some(({ step }) => saysRaw(step));
  // Set all through, egg is near its figure: a sign is enough.
  if (group === 'egg' && sign) return undefined;
  const limit = limitOf(group, house.foodSafety);
  return { kind: 'no figure', name: ingredient.name, limit, beside: besideText(group, house.foodSafety), sign, last };
}

const BATH = asWritten('vide', 'sous-vide', 'circulator', 'water-bath');

/** An oven so cool that meat in it takes hours to be as warm. */
const isBarelyWarm = ({ role, celsius, node }: HeatReading): boolean =>
  role === 'oven' && node.unit !== 'gas' && celsius.high <= 75;
/** Air warms meat as slowly as this (common practice, no source). */
const LONG_IN_OVEN_S = 6 * 3600;

const WATER_BATH = asWritten('bath');
/** No ice bath, and none that stands in the oven. */
const isWarmBath = (step: Step): boolean =>
  says(step, WATER_BATH) &&
  step.heat.some(({ role, celsius }) => role !== 'oven' && celsius.low >= 35 && celsius.high <= 75);

/** Whole meat or fish in a bath or an oven cooler than it is safe at, for less than the published time, and no other heat. */
function coolBath({ all, stops }: Journey, limit: Limit): Stop | undefined {
  const inBath = stops.find(({ step }) => (says(step, BATH) && step.heat.length > 0) || isWarmBath(step));
  const bath = inBath ?? stops.find(({ step }) => step.heat.some(isBarelyWarm));
  if (bath === undefined || all.some(({ step }) => step.heat.some(isDoneness))) return undefined;
  const { heat, times } = bath.step;
  const hottest = Math.max(...heat.map((h) => h.celsius.high));
  const longestS = Math.max(0, ...times.map((t) => t.node.lowMin * 60));
  const neededS = holdS(limit, hottest);
  const isHotter = all.some(
    ({ step }) =>
      cooksThrough(step) ||
      (step !== bath.step && step.heat.some((h) => h.celsius.low >= limit.celsius && h.role !== 'surroundings')),
  );
  return isHotter ||
    (neededS !== undefined && longestS >= (inBath === undefined ? Math.max(neededS, LONG_IN_OVEN_S) : neededS))
    ? undefined
    : bath;
}

const SIGNS = asWritten('until', 'till', 'when', 'clear', 'done', 'set', 'firm', 'thick', 'thickens', 'curds');

const saysSign = (step: Step): boolean =>
  says(step, SIGNS) && step.sentence.items.some((_, at) => isSign(step.sentence.items, at));

/** `Just set` is a sign, `set in a pan` an order. */
function isSign(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'word' || !isOn(SIGNS, item.word)) return false;
  const before = items[at - 1];
  return item.word !== 'set' || (before?.kind === 'word' && before.word !== 'and' && before.word !== 'then');
}

const RAW = asWritten('raw', 'rare', 'pink', 'bloody', 'medium-rare');
/** `Pink in the middle`, `serve rare`; not `no longer pink inside`. */
const LEFT_RAW =
  /(?<!\b(?:no|not|longer|never|without|any|nothing) )\b(?:raw|rare|pink|bloody|medium-rare) (?:in|at) the (?:middle|centre|center|bone)\b|(?<!\b(?:no|not|longer|never|any|nothing) )\b(?:raw|rare|pink|bloody) inside\b|\bserve (?:it |them )?(?:rare|pink|medium-rare)\b/;

const saysRaw = (step: Step): boolean => says(step, RAW) && LEFT_RAW.test(inWords(step.sentence));

const COOKING = wordList((word) => {
  const kind = verbClass(word);
  return (kind === 'oven' || kind === 'stove') && !['bring', 'melt', 'preheat', 'warm'].includes(baseForm(word));
});
/** Egg from this share of the mixture on is what sets it. */
const EGG_SETS = 0.3;

function isEggDish({ part, ingredient }: Journey): boolean {
  const { kind, massG, flourG, ingredients } = part.head;
  if (kind !== undefined) return EGG_DISHES.has(kind.name);
  if (flourG.high > massG.high * 0.1 || !ingredient.weighed.known) return false;
  const sugarG = ingredients.reduce(
    (g, i) => g + (foodOf(i)?.class === 'sugar' && i.weighed.known ? i.weighed.grams.high : 0),
    0,
  );
  return sugarG < massG.high * 0.25 && ingredient.weighed.grams.high > massG.high * EGG_SETS;
}

const MOLLUSCS = /\b(?:oyster|clam|mussel|scallop|cockle)s?\b/i;
const FOR_RAW = /\b(?:frozen|sashimi|sushi|farmed|tuna|cured|salted|anchov(?:y|ies)|bottarga|roe|caviar)\b/i;
const FREEZING = asWritten('freeze', 'frozen', 'freezer', 'advisory');

function rawValues({ ingredient, part, all }: Journey, group: Group, house: House): Values | undefined {
  const { node } = ingredient;
  if (FOR_RAW.test([node.name?.text, node.preparation?.text, node.note?.text].join(' '))) return undefined;
  // Cured in nitrite, or frozen long enough: held to other rules.
  if (part.head.ingredients.some(isCuringSalt) || all.length === 0) return undefined;
  const { title, freezing, raw, molluscs } = holdingLimits(house.foodSafety);
  const frozen = part.steps.some(
    (s) =>
      says(s, FREEZING) &&
      s.heat.some((h) =>
        freezing.rows.some(([c = 0, min = 0]) => h.celsius.high <= c && s.times.some((t) => t.node.lowMin >= min)),
      ),
  );
  if (group === 'fish' && frozen) return undefined;
  const isMollusc = MOLLUSCS.test(foodOf(ingredient)?.name ?? '');
  const { section } = isMollusc ? molluscs : group === 'fish' ? freezing : raw;
  return {
    kind: 'raw',
    name: ingredient.name,
    group,
    molluscs: isMollusc,
    rows: freezing.rows,
    source: `${title}, ${section}`,
  };
}

/** `, until the centre reads 74 C`, before the full stop. */
function addReading(text: string, line: number, end: number, celsius: number): TextEdit {
  const trimmedEnd = text.slice(0, end).trimEnd().length;
  const at = text[trimmedEnd - 1] === '.' ? trimmedEnd - 1 : trimmedEnd;
  return replaceSpan(line, { start: at, end: at }, `, until the centre reads ${celsius} C`);
}
