import fruit from '../../../data/low-acid-fruit.json' with { type: 'json' };
import { FLESH, type FoodClass } from '../../food/food.ts';
import { gramsText, percentText, trimmed } from '../../measure/number-text.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { PartHead } from '../../recipe/part.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inAnyForm, inWords, matching, says } from '../../recipe/step-words.ts';
import { keptInOil, OILY } from '../by-state/in-oil.ts';
import { defineCheck, type Found } from '../check.ts';
import { gramsOf } from '../formula/band.ts';
import { anyPart, overParts } from '../over-parts.ts';
import { sums, sumTable } from '../sum-table.ts';
import { KEPT_COLD } from './cold-words.ts';
import { saysBoughtSafe } from './journey.ts';
import { CAUTION } from './limits.ts';
import { longestDays } from './longest-days.ts';
import { isColdOnceOpen } from './once-open.ts';

interface Values {
  readonly name: string;
  /** Acetic or citric acid in the whole, as a share. */
  readonly acid: number;
  readonly least: number;
  readonly head: PartHead;
  readonly source?: string;
}

/** Acid in the whole from which a pickle is taken for one of a tested kind: half vinegar of 5 % over solids as heavy as the liquor. */
const PICKLE = 0.011;
/** Tomatoes: 2 tbsp bottled lemon juice a quart, 30 g at 5 % to some 1.4 kg as bought. */
const TOMATO = 0.001;

/** Sugar on the list from which a jam of such fruit is boiled to where nothing of the kind grows in it (judgement). */
const SWEET_JAM = 0.25;

/** Days from which what waits in a jar is kept (judgement). */
const LEFT_DAYS = 2;
/** Salt of the whole from which vegetables with no vinegar turn sour by themselves while they are left (as for `weak-brine`). */
const SOURING_SALT = 0.015;

export default defineCheck<Values>({
  code: 'low-acid-preserve',
  title: 'Low-acid food is jarred without pressure or enough acid',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'USDA Complete Guide to Home Canning (2015); 21 CFR 114.3: pH 4.6 divides acid from low-acid foods',
  },
  explain: `**What it computes.** A recipe that seals jars, or keeps them out of the fridge, with vegetables, herbs, pulses, mushrooms, grains, boiled eggs, bread or cake that is baked in the jar, meat or fish in them, or fruit that is low in acid (figs, bananas, mangoes, melons, papayas, elderberries, white peaches and their like): whether a step processes them under pressure, and else how much acetic or citric acid the whole holds. Pickles want some ${PICKLE * 100} % (vinegar of 5 %, at least half the liquor); tomatoes and such fruit ${TOMATO * 100} % (2 tbsp bottled lemon juice, or ½ tsp citric acid, a quart). What is packed in jars and left out of the cold for ${LEFT_DAYS} days or more counts as sealed, but for vegetables that have no vinegar and salt enough to turn sour (${SOURING_SALT * 100} %). What is said of the cold or of pressure counts from the step with the jars on.

**Why it matters.** Above pH 4.6 the spores of Clostridium botulinum outlive boiling water, and a sealed jar is the airless place they need. The poison has no smell.

**What to do.** Use a tested recipe: pressure-can it, or pickle it with vinegar of 5 % that is never thinned below that recipe. Or keep it in the fridge or freezer, and say so.

**Silent** for other fruit, jams with their full sugar (${SWEET_JAM * 100} % of the list and more), ferments in their brine, what is kept in the fridge or frozen, what is dry or is dried until brittle, and wherever pressure is named. It measures acid, not pH, and does not certify a recipe.`,
  find: ({ recipe }) => {
    if (!isSealed(recipe)) return [];
    const inOil = keptInOil(recipe);
    const found = lowAcid(recipe).filter(({ part }) => inOil.every((oil) => oil.part !== part.index));
    return (closed(recipe) ? found : found.filter(({ part }) => isLeftToSpoil(part))).map(({ value }) => value);
  },
  say: ({ name, acid, least, source }) => ({
    message: `Sealed jars with ${name} hold ${acid < 0.0005 ? 'no acid that was added' : `${(acid * 100).toFixed(2)} % of acid in the whole`}, where ${(least * 100).toFixed(1)} % is the least, and no step uses pressure: botulism can grow. Follow a tested recipe, or keep it in the fridge. ${CAUTION}`,
    value: acid,
    unit: '1',
    band: [least, null],
    ...(source !== undefined && { source }),
  }),
  work: ({ head, acid, least }) => {
    const known = head.ingredients.filter((i) => foodOf(i) !== undefined);
    const rows = known.map((i) => ({ name: i.name, numbers: [gramsOf(i), acidG(i)] }));
    const [whole = 0, acidInAll = 0] = sums(rows);
    return [
      ...sumTable(['ingredient', 'weighs, g', 'acid that is added, g'], rows),
      '',
      `${gramsText(acidInAll)} g ÷ ${gramsText(whole)} g = ${trimmed(acid * 100, 2)} %. The least is ${percentText(least)}: ${gramsText(whole)} g × ${percentText(least)} = ${gramsText(whole * least)} g of acid.`,
    ];
  },
  examples: {
    good: [
      'recipe Pickled carrots as quick pickle\n  1 kg      carrots, sliced\n  500 g     white wine vinegar\n  400 g     water\n  30 g      fine salt\n  60 g      caster sugar\n  do Boil the vinegar, water, salt and sugar.\n  do Pack the carrots in sterilised jars, pour on the liquor and seal.\n',
      'recipe Green beans in jars\n  1 kg      green beans\n  500 g     water\n  10 g      fine salt\n  do Pack the beans in jars with the salt and the boiling water and seal.\n  do Process in a pressure canner for 25 min.\n',
    ],
    bad: [
      'recipe Green beans in jars\n  1 kg      green beans\n# "green beans" low-acid-preserve: no acid\n  500 g     water\n  10 g      fine salt\n  do Pack the beans in jars with the salt and the boiling water and seal.\n  do Process in a boiling-water bath for 30 min.\n',
      'recipe Basil pesto\n  200 g     basil\n# "basil" low-acid-preserve: no acid\n  250 ml    olive oil\n  60 g      pine nuts\n  80 g      Parmesan\n  2 cloves  garlic\n  do Blend everything, fill into sterilised jars, seal and keep in the pantry for 6 months.\n',
      'recipe Canned pumpkin\n  3 kg      pumpkin, cubed\n# "pumpkin" low-acid-preserve: no acid\n  1 l       water\n  do Boil the pumpkin in the water until soft, mash and fill into jars.\n  do Boil the jars for 90 min.\n',
      'recipe Pickled eggs\n  12        eggs, hard-boiled\n# "eggs" low-acid-preserve: is the least\n  350 ml    water\n  150 ml    white wine vinegar\n  do Boil the vinegar and water, pour over the eggs in sterilised jars, seal and store in the cupboard.\n',
      'recipe Fig spread as jam\n  1.5 kg    figs, quartered\n# "figs" low-acid-preserve: no acid\n  200 g     honey\n  200 ml    water\n  do Simmer the figs with the honey and water for 40 min.\n  do Ladle into hot jars, close and boil the jars for 10 min. Refrigerate once opened.\n',
      'recipe Pepper relish\n  1 kg      red bell peppers, diced\n# "red bell peppers" low-acid-preserve: is the least\n  300 g     onions, diced\n  60 g      white wine vinegar\n  40 g      caster sugar\n  do Simmer the peppers, onions, vinegar and sugar for 30 min.\n  do Fill into sterilised jars, seal and store in the larder.\n',
    ],
  },
});

const JARS = asWritten('jar', 'jars', 'jarred', 'bottles', 'cans', 'kilner', 'mason', 'weck', 'crocks');
const SEALING = asWritten(
  'seal',
  'sealed',
  'sterilised',
  'sterilized',
  'process',
  'processed',
  'airtight',
  'canner',
  'water-bath',
  'waterbath',
  'water-can',
  'steam-can',
  'oven-can',
  'invert',
  'inverted',
  'upside',
  'headspace',
  'paraffin',
  'sterile',
  'unrefrigerated',
  'ambient',
  'shelf-stable',
  'basement',
  'larder',
  'cupboard',
  'pantry',
  'cellar',
  'shelf',
  'shelves',
  'cork',
  'corked',
  'sterilise',
  'sterilize',
);
const CLOSING = asWritten('close', 'closed', 'lid', 'lids', 'clip', 'clipped', 'clamp', 'clamped', 'screw');
const CAPPING = asWritten('cap', 'caps', 'capped');
/** Of mushrooms elsewhere, and a dish is capped with pastry. */
const CAPPED =
  /\bon (?:the |their |screw )*caps\b|\bcaps on\b|\bcap(?:ped)? (?:them|while|at|loosely|tightly|immediately|straight|the (?:jars|bottles)|and (?:store|keep|cool))\b|\bcap(?:ped)?$/;
const isCapped = (step: Step): boolean => says(step, CAPPING) && CAPPED.test(inWords(step.sentence));
/** A lid for the way to the table. */
const SOON_EATEN = asWritten('lunch', 'lunchbox', 'picnic', 'tonight', 'today');
/** Pressure, or the cold. */
const OTHERWISE = asWritten('pressure', 'psi', 'retort', 'pressure-can', ...KEPT_COLD);
const FERMENTED = asWritten('ferment', 'fermented', 'ferments');
/** The cold of a plate that tells whether a jam sets keeps no jar. */
const PLATES = asWritten('saucer', 'saucers', 'plate', 'plates');

/** Jars are closed to stand out of the cold. */
const isSealed = (recipe: Recipe): boolean => jarred(recipe) && sealed(recipe) && !keptOtherwise(recipe);

const jarred = anyPart(({ steps }) => anySays(steps, JARS) || steps.some(isBottled));
const closed = anyPart(
  ({ steps }) =>
    anySays(steps, SEALING) ||
    (anySays(steps, CLOSING) && !anySays(steps, SOON_EATEN)) ||
    steps.some(
      (s) =>
        isCanned(s) || isCapped(s) || (says(s, JARS) && (boilsJars(s) || isStored(s))) || (isBottled(s) && isStored(s)),
    ),
);
/** Nothing is said of a lid, but it stands for days in its jar. */
const leftOut = anyPart(
  ({ steps }) => steps.some(isLeftOut) && steps.some(isPotted) && !anySays(steps, SPROUTING) && !steps.some(isUntilDry),
);
const sealed = (recipe: Recipe): boolean => closed(recipe) || leftOut(recipe);
const fermented = anyPart(({ steps }) => anySays(steps, FERMENTED));

const isCold = (step: Step): boolean =>
  (says(step, OTHERWISE) || step.heat.some((h) => h.role === 'surroundings' && h.celsius.high <= 8)) &&
  !says(step, PLATES) &&
  !isColdOnceOpen(step);

/** Where a part first speaks of jars, and whether it is cold or under pressure anywhere, and from there on. */
const keeping = overParts(({ steps }) => {
  const jars = steps.findIndex((step) => says(step, JARS));
  const cold = steps.findLastIndex(isCold);
  return jars < 0 && cold < 0 ? undefined : { jars: jars >= 0, anywhere: cold >= 0, after: jars >= 0 && cold >= jars };
});

/** From the step with the jars on: what was chilled or cooked under pressure before is in the jar all the same. */
function keptOtherwise(recipe: Recipe): boolean {
  const all = keeping(recipe).map(({ value }) => value);
  const first = all.findIndex(({ jars }) => jars);
  return fermented(recipe) || all.some(({ anywhere, after }, at) => (at > first ? anywhere : at === first && after));
}

const LEAVING = matching(/^(?:leave|left|stand|keep|mature|last)s?$/);
/** `Pack into jars`, not `a jar of passata`. */
const isPotted = (step: Step): boolean => isBottled(step) || (says(step, JARS) && POTTED.test(inWords(step.sentence)));
const POTTED =
  /\b(?:in|into|fill) (?:\w+ ){0,4}(?:jars?|bottles|cans|crocks|kilner|mason|weck)\b(?! of\b)|\bjar (?:it|them|and)\b/;
const isUntilDry = (step: Step): boolean => says(step, DRYING) && UNTIL_DRY.test(inWords(step.sentence));
/** Seeds that are rinsed every day. */
const SPROUTING = asWritten('sprout', 'sprouted', 'sprouting', 'germinate');
const isLeftOut = (step: Step): boolean =>
  (says(step, LEAVING) && longestDays(step) >= LEFT_DAYS) ||
  (says(step, ROOM) && KEPT_WARM.test(inWords(step.sentence)));
const ROOM = asWritten('room');
const KEPT_WARM = /\b(?:keeps?|stored?) (?:\w+ ){0,4}at room temperature\b(?! (?:for|up|until|till|while|overnight)\b)/;

const CAN = asWritten('can');
/** An order too: `Can in quarts`, not `you can`. */
const isCanned = (step: Step): boolean => says(step, CAN) && CANNING.test(inWords(step.sentence));
const CANNING = /(?:^|[;.] ?|\b(?:and|then) )can (?:in|the|them|it|at|as|for)\b/;

const BOTTLE = asWritten('bottle');
/** An order, and not a bottle of wine. */
const isBottled = (step: Step): boolean =>
  isCanned(step) || (says(step, BOTTLE) && BOTTLING.test(inWords(step.sentence)));
const BOTTLING = /(?:^|[;.] ?|\b(?:and|then) )bottle\b/;

const STORE = asWritten('store', 'stored');
/** For how long nobody says, so that it may be long. */
const isStored = (step: Step): boolean => says(step, STORE) && step.times.length === 0;

/** `boil the jars for 90 min` */
const boilsJars = ({ sentence }: Step): boolean =>
  /\b(?:boil|simmer|steam)\w* (?:the |filled |closed |full |corked )*(?:jars|bottles|cans)\b/.test(inWords(sentence));

const LOW_ACID: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'vegetable',
  'mushroom',
  'leafy herb',
  'legume',
  ...FLESH,
  'stock',
  'grain',
  'cured meat',
]);
/** Bones for stock are of no class of their own. */
const BONES = /\bbone\b/;
/** A jam with an onion in it is a jam. */
const LOW_SHARE = 0.3;
/** However thin the liquor, what lies in it is what it is. */
const LIQUID: ReadonlySet<FoodClass> = new Set<FoodClass>(['water', 'vinegar', 'juice']);
const SWEET = 0.5;
/** Of the solids, the share of low-acid fruit that sour fruit does not make up for (judgement). */
const FRUIT_SHARE = 0.5;
const TOMATOES = /tomato/;
/** Grams of acid in 100 g, where the book does not say. */
const ACETIC = 5;
/** Of a lemon, its juice (USDA SR26, NDB 09152: 47 g of one). */
const JUICE = 0.4;

const FRUITS: ReadonlySet<string> = new Set(fruit.foods);

const isLowAcidFruit = ({ food, name, node }: Ingredient): boolean =>
  food !== undefined &&
  (FRUITS.has(food.name) ||
    (food.name === 'peach' &&
      fruit.words.some((w) => `${name} ${node.preparation?.text ?? ''}`.toLowerCase().includes(w))));

/** Grams of acetic or citric acid that are added with it. */
function acidG(ingredient: Ingredient): number {
  const { food, name, node } = ingredient;
  if (food === undefined) return 0;
  const per100 = food.per100.acid;
  if (food.class === 'vinegar') return (gramsOf(ingredient) * (per100 ?? ACETIC)) / 100;
  if (/^(?:lemon|lime)$/.test(food.name) && /juic/i.test(`${name} ${node.preparation?.text ?? ''}`))
    return (gramsOf(ingredient) * JUICE * ACETIC) / 100;
  if (!/citric|lemon juice|lime juice/.test(food.name)) return 0;
  return (gramsOf(ingredient) * (per100 ?? (/citric/.test(food.name) ? 100 : ACETIC))) / 100;
}

const BAKE = inAnyForm('bake');
/** Steamed in its can, bread is eaten at once, but for what goes on a shelf. */
const BAKE_OR_STEAM = inAnyForm('bake', 'steam');
const SHELVES = asWritten('larder', 'cupboard', 'pantry', 'cellar', 'shelf', 'shelves');

/** Filled in jars and baked in them: moist bread beneath a lid. */
function isBakedInJar({ steps }: Part): boolean {
  const heated = anySays(steps, SHELVES) ? BAKE_OR_STEAM : BAKE;
  if (!anySays(steps, heated)) return false;
  const jars = steps.findIndex((step) => says(step, JARS));
  return (
    jars >= 0 &&
    steps.some(
      (step, at) => says(step, heated) && (at > jars || (at === jars && FILLED_FIRST.test(inWords(step.sentence)))),
    )
  );
}

const FILLED_FIRST = /\b(?:jars|cans)\b.*\b(?:bake|steam)\b/;

/** Of the whole; below it nothing grows in a jar (judgement, on the safe side of flour and oats). */
const DRY_WATER = 0.2;
const WETTING = inAnyForm(
  'soak',
  'boil',
  'simmer',
  'steam',
  'blanch',
  'poach',
  'cook',
  'braise',
  'stew',
  'water',
  'brine',
);
const DRYING = asWritten('crisp', 'crunchy', 'brittle', 'dry', 'dehydrate');
const UNTIL_DRY = /\buntil (?:\w+ ){0,3}(?:crisp|crunchy|brittle)\b/;
const OVEN = asWritten('bake', 'roast', 'toast', 'dry', 'dehydrate');
const LONG_DRYING_MIN = 120;

/** Oats, rice and the like as they are, or what is dried in the oven until it is brittle. */
function isDry({ head: { ingredients }, steps }: Part): boolean {
  const dried = steps.some(
    (s) =>
      says(s, DRYING) &&
      ((says(s, OVEN) && UNTIL_DRY.test(inWords(s.sentence))) ||
        s.times.some(({ verb, node }) => (verb === 'dry' || verb === 'dehydrate') && node.lowMin >= LONG_DRYING_MIN)),
  );
  if (dried) return true;
  if (anySays(steps, WETTING)) return false;
  let [whole, water] = [0, 0];
  for (const ingredient of ingredients) {
    const { weighed } = ingredient;
    if (!weighed.known) continue;
    whole += weighed.grams.high;
    water += (weighed.grams.high * (foodOf(ingredient)?.per100.water ?? 100)) / 100;
  }
  return whole > 0 && water < whole * DRY_WATER;
}

/** What is only left in its jar, with no word of closing it: a pickle, or what has too little salt to turn sour. */
const isLeftToSpoil = ({ head }: Part): boolean => {
  let [whole, low, salt, sour, sugar] = [0, 0, 0, 0, 0];
  for (const ingredient of head.ingredients) {
    const grams = gramsOf(ingredient);
    whole += grams;
    const food = foodOf(ingredient);
    if (food === undefined) continue;
    if (LOW_ACID.has(food.class)) low += grams;
    salt += (grams * (food.per100.sodium ?? 0) * SALT_OF_SODIUM) / 1e5;
    sour += acidG(ingredient);
    if (food.class === 'sugar' || food.class === 'syrup') sugar += grams;
  }
  return low >= whole * LOW_SHARE && sugar < whole * SWEET_JAM && (sour > 0 || salt < whole * SOURING_SALT);
};
/** Grams of salt with a gram of sodium. */
const SALT_OF_SODIUM = 2.54;

const lowAcid = overParts((part): Found<Values> | undefined => {
  const { head, index } = part;
  if (head.kind?.name === 'lacto-ferment') return undefined;
  const isJam = head.kind?.name === 'jam';
  const inJar = isBakedInJar(part);
  let whole = 0;
  let liquid = 0;
  let low = 0;
  let tomato = 0;
  let acid = 0;
  let sugar = 0;
  let oil = 0;
  let fruits = 0;
  let of: Ingredient | undefined;
  let fruitOf: Ingredient | undefined;
  for (const ingredient of head.ingredients) {
    const { weighed } = ingredient;
    const food = foodOf(ingredient);
    if (food === undefined || !weighed.known) continue;
    const grams = (weighed.grams.low + weighed.grams.high) / 2;
    whole += grams;
    if (LIQUID.has(food.class)) liquid += grams;
    if (
      LOW_ACID.has(food.class) ||
      BONES.test(food.name) ||
      (inJar && food.class === 'flour') ||
      (food.class === 'egg' && saysBoughtSafe(ingredient))
    ) {
      low += grams;
      if (TOMATOES.test(food.name)) tomato += grams;
      of ??= ingredient;
    } else if (isLowAcidFruit(ingredient)) {
      fruits += grams;
      fruitOf ??= ingredient;
    } else if (food.class === 'sugar' || food.class === 'syrup') sugar += grams;
    else if (food.class === 'oil') oil += grams;
    else acid += acidG(ingredient);
  }
  const solids = whole - liquid;
  if (isDry(part)) return undefined;
  // Under oil, `garlic-in-oil` speaks of it.
  if (oil > whole * OILY) return undefined;
  const share = acid / whole;
  const found = (what: Ingredient, least: number, source?: string): Found<Values> | undefined => {
    if (share >= least * 0.95) return undefined;
    const { start, end } = what.node.name ?? { start: 0, end: 0 };
    return {
      at: { part: index, line: what.line, start, end },
      values: { name: what.name, acid: share, least, head, ...(source !== undefined && { source }) },
    };
  };
  if (of !== undefined && low >= solids * LOW_SHARE && sugar <= whole * (isJam ? SWEET_JAM : SWEET))
    return found(of, tomato > low * 0.7 ? TOMATO : PICKLE);
  if (fruitOf !== undefined && fruits >= solids * FRUIT_SHARE && sugar < whole * SWEET_JAM)
    return found(fruitOf, TOMATO, fruit.source);
  return undefined;
});
