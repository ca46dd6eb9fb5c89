import { replaceSpan } from '../../edits/text-edit.ts';
import type { FoodClass } from '../../food/food.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { HeatReading, TimeReading } from '../../recipe/heat.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inAnyForm, inWords, isOn, says } from '../../recipe/step-words.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { onceFor, onceInHouse, onceWith } from '../once.ts';
import { type Given, overList, overParts } from '../over-parts.ts';
import { plainTable } from '../sum-table.ts';
import {
  cooksThrough,
  type Followed,
  followedIn,
  groupIn,
  isBoughtSafe,
  isDoneness,
  type Journey,
  type Stop,
} from './journey.ts';
import {
  besideText,
  CAUTION,
  type Group,
  type HeatRule,
  holdingLimits,
  holdS,
  type Limit,
  limitOf,
  ROASTING_OVEN,
  THERMOMETER_C,
  timeText,
} from './limits.ts';

type Values =
  | {
      readonly kind: 'food';
      readonly name: string;
      readonly limit: Limit;
      /** The other rule set's figure. */
      readonly beside: string;
      readonly reading: HeatReading;
      /** Seconds that would do at this temperature. */
      readonly holdS: number | undefined;
    }
  | { readonly kind: 'reheated'; readonly limit: HeatRule & { readonly source: string }; readonly reading: HeatReading }
  | { readonly kind: 'cool oven'; readonly name: string; readonly reading: HeatReading };

export default defineCheck<Values>({
  code: 'undercooked',
  title: 'A food is taken from the heat before it is safe',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-401.11, 3-401.12 and 3-403.11; USDA FSIS safe minimum internal temperatures (for consumers) and Appendix A',
  },
  explain: `**What it computes.** For every ingredient that is a risk raw (poultry, minced and whole meat, fish, egg), the highest temperature *in the food* that the steps ask for from the moment it goes in, against the least temperature of the rule set in force. The strictest ingredient decides; what is stuffed, or cooked by microwave, counts as poultry. What is reheated, and cooked meat, rice or pulses that are warmed through or microwaved, is held against the figure for reheating. The home rule of USDA FSIS stands beside the Food Code's in the message.

**Why it matters.** Below it, Salmonella and its like survive in numbers that make people ill.

**What to do.** Write the safe temperature and where it is read. A lower one is accepted only with the published time for it, held: \`reads 63 C; hold at 63 C for 3 min\`. The time is that of the nearest published temperature below, and never worked out between two.

Meat and poultry roasted in an oven that never passes ${ROASTING_OVEN.celsius} °C is information only: it lies long in the warm, and FSIS advises homes against it. **Silent** on that for smoking, water baths and slow cookers.

**Silent** where a step boils, simmers, braises or steams the food and gives no figure, where no temperature in the food is given at all (that is \`no-safe-temperature\`'s), and for what is bought cooked or pasteurised. Local codes and licensed practice may ask for more; they come first.`,
  find: ({ recipe, house }) => tooCoolOfAll(coolIn(recipe, followedIn(recipe), house), reheats(recipe), house),
  say: (values) => {
    const { low } = values.reading.celsius;
    const degrees = `${trimmed(low, 1)} °C`;
    if (values.kind === 'cool oven') {
      return {
        message: `An oven at ${degrees} leaves the ${values.name} long in the warm: homes are told to roast meat and poultry at ${ROASTING_OVEN.celsius} °C, ${ROASTING_OVEN.fahrenheit} °F, or hotter, whatever the centre reads at the end. ${CAUTION}`,
        value: low,
        unit: 'C',
        band: [ROASTING_OVEN.celsius, null],
        source: ROASTING_OVEN.source,
      };
    }
    const { limit } = values;
    const time = limit.time === '' ? '' : ` (${limit.time})`;
    const said = { value: low, unit: 'C', band: [limit.celsius, null] as const };
    if (values.kind === 'reheated') {
      return {
        ...said,
        message: `Reheated to ${degrees} is too low for what is kept hot: bring it to ${limit.celsius} °C, ${limit.fahrenheit} °F${time} within 2 h. ${CAUTION}`,
        source: limit.source,
      };
    }
    const held = values.holdS === undefined ? '' : `, or hold ${degrees} for ${timeText(values.holdS / 60)}`;
    return {
      ...said,
      message: `${degrees} in the food is too low for ${values.name}: cook it to ${limit.celsius} °C, ${limit.fahrenheit} °F${time}${held}. ${values.beside} ${CAUTION}`,
      source:
        held === '' || values.limit.holdsSource === undefined
          ? values.limit.source
          : `${values.limit.source}; ${values.limit.holdsSource}`,
    };
  },
  work: (values) => {
    if (values.kind !== 'food' || values.limit.holds.length === 0) return [];
    const { low } = values.reading.celsius;
    return [
      ...plainTable(
        ['°C in the food', 'must hold'],
        values.limit.holds.map(([celsius, seconds]) => [String(celsius), timeText(seconds / 60)]),
      ),
      '',
      values.holdS === undefined
        ? `Below ${values.limit.holds[0]?.[0]} °C no time is published: at ${trimmed(low, 1)} °C none is enough.`
        : `Of these times, that of the nearest row below counts for ${trimmed(low, 1)} °C: nothing is worked out between two.`,
    ];
  },
  fix: (values, _scene, at) => {
    const { reading } = values;
    if (reading.node.unit === 'gas' || values.kind === 'cool oven') return [];
    const degrees = reading.node.unit === 'F' ? values.limit.fahrenheit : values.limit.celsius;
    const { low, high } = reading.node;
    return [
      {
        title: `Write ${degrees} ${reading.node.unit}`,
        effect: 'amounts',
        edits: [replaceSpan(at.line, { start: low.start, end: (high ?? low).end }, String(degrees))],
      },
    ];
  },
  examples: {
    good: [
      'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 75 min, until the thickest part of the thigh reads 74 C.\n',
      'recipe Meat loaf\n  oven    180 C\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 71 C.\n',
      'recipe Roast beef\n  1.8 kg    beef\n  do Roast the beef at 170 C until the centre reads 58.9 C, and hold for 18 min.\n',
      'recipe Salmon in pastry\n  900 g     salmon fillet\n  500 g     puff pastry\n  1 large   egg, beaten\n  do Wrap the salmon in the pastry and brush with the egg.\n  do Bake at 200 C for 30 min, until the centre reads 63 C.\n',
      'recipe Warm thighs\n  800 g     cooked chicken\n  do Reheat the chicken until the centre reads 74 C.\n',
    ],
    bad: [
      {
        text: 'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 65 C.\n# "65 C" undercooked *: 74 °C, 165 °F (under 1 s), or hold 65 °C for 13 min. At home: 74 °C\n',
        after: {
          'Write 74 C':
            'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 74 C.\n',
        },
      },
      'recipe Tart with thighs\n\npart thighs\n  600 g     chicken thighs\n  do Roast the thighs at 200 C for 40 min, until the centre reads 65 C.\n# "65 C" undercooked *\n\npart tart\n  3 large   eggs\n  300 ml    whole milk\n  do Whisk the eggs with the milk.\n  do Bake at 150 C for 45 min, until the centre reads 80 C.\n  do Serve with the thighs.\n',
      'recipe Meat loaf\n  oven    350 F\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 140 F.\n# "140 F" undercooked *: 155 °F (17 s). At home: 71 °C, 160 °F\n',
      'recipe Terrine\n  700 g     pork shoulder, minced\n  300 g     pork belly, minced\n  do Mix the pork and bake in a water bath at 170 C until the middle reads 63 C.\n# "63 C" undercooked *: 155 °F (17 s), or hold 63 °C for 3 min\n',
      'recipe Thighs\n  oven    200 C\n  800 g     chicken thighs\n  do Brown the thighs for 6 min.\n  do Roast until the centre reads 62 C.\n# "62 C" undercooked *: hold 62 °C for 23.7 min\n',
      'recipe Roast beef\n  1.8 kg    beef\n  do Roast the beef at 170 C until the centre reads 58 C, and hold for 18 min.\n# "58 C" undercooked *: hold 58 °C for 28 min\n',
      'recipe Warm thighs\n  800 g     cooked chicken\n  do Reheat the chicken until the centre reads 60 C.\n# "60 C" undercooked *: 74 °C\n',
      'recipe Slow roast\n  2 kg      pork shoulder\n  do Roast the pork at 110 C for 6 h, until the centre reads 88 C.\n# "110 C" undercooked info: 163 °C\n',
    ],
  },
});

const STUFFING = asWritten('stuff', 'stuffed', 'stuffing');
const CASINGS = asWritten('casing', 'casings', 'skins', 'links', 'hog', 'sausage', 'sausages');
const STUFFED_IN_NOTHING = /\bstuff(?: (?:and|then)\b|[,;.]|$)/;
/** Mince that is stuffed in a casing, or into nothing that is named, is a sausage and no stuffing. */
const isSausage = (step: Step, group: Group): boolean =>
  group === 'ground meat' && (says(step, CASINGS) || STUFFED_IN_NOTHING.test(inWords(step.sentence)));
const MICROWAVED = ['microwave', 'microwaved', 'nuke', 'nuked', 'zap', 'zapped'] as const;
const MICROWAVE = asWritten(...MICROWAVED);

/** The limit for what the ingredient is and how it is cooked. */
function limitFor(journey: Journey, { foodSafety }: House): Limit {
  const group = groupIn(journey.ingredient) ?? 'poultry';
  const limit = limitOf(group, foodSafety);
  if (journey.stops.some((s) => says(s.step, MICROWAVE))) {
    const { title, microwave } = holdingLimits(foodSafety);
    const { section, ...rule } = microwave;
    return { ...rule, group, source: `${title}, ${section}`, holds: [] };
  }
  const stuffed = group !== 'egg' && journey.stops.some(({ step }) => says(step, STUFFING) && !isSausage(step, group));
  return stuffed ? limitOf('poultry', foodSafety) : limit;
}

interface TooCool extends Found<Values> {
  readonly values: Extract<Values, { readonly kind: 'food' }>;
}

const tooCoolIn = onceInHouse((house, { journeys }: Followed): readonly TooCool[] =>
  journeys.flatMap((journey) => coolest(house, journey) ?? []),
);

/** The highest reading in the food from its first use on, when it is below the limit and nothing else makes it safe. */
function coolest(house: House, journey: Journey): TooCool | undefined {
  if (groupIn(journey.ingredient) === undefined || isBoughtSafe(journey)) return undefined;
  if (foodOf(journey.ingredient)?.class === 'egg' && isBrushed(journey)) return undefined;
  const limit = limitFor(journey, house);
  let best: { reading: HeatReading; stop: Stop } | undefined;
  for (const stop of journey.stops) {
    const readings = stop.step.heat.filter(isDoneness);
    // A figure in the food says more than the verb beside it.
    if (readings.length === 0 && cooksThrough(stop.step)) return undefined;
    for (const reading of readings) {
      if (heldLongEnough(stop, reading, limit)) return undefined;
      if (best === undefined || reading.celsius.low > best.reading.celsius.low) best = { reading, stop };
    }
    if (best !== undefined && heldAfter(stop, limit)) return undefined;
  }
  if (best === undefined || best.reading.celsius.low >= limit.celsius - THERMOMETER_C) return undefined;
  const { reading, stop } = best;
  return tooCool(reading, stop.part.index, stop.step.line, journey.ingredient.name, limit, house);
}

/** A part that holds it may be another, and the reading the same. */
const tooCool = onceWith(
  (reading: HeatReading, part: number, line: number, name: string, limit: Limit, { foodSafety }: House): TooCool => ({
    at: { part, line, start: reading.node.start, end: reading.node.end },
    values: {
      kind: 'food',
      name,
      limit,
      beside: besideText(limit.group, foodSafety),
      reading,
      holdS: holdS(limit, reading.celsius.low),
    },
  }),
);

const BRUSHING = asWritten('brush', 'brushed', 'glaze', 'wash', 'paint');

/** Egg on the crust is in the heat of the oven, whatever the middle reads. */
const isBrushed = ({ stops, part, index }: Journey): boolean => {
  const own = stops.filter((s) =>
    s.step.mentions.some((m) => m.ingredients.some((r) => r.part === part.index && r.ingredient === index)),
  );
  return own.length > 0 && own.every((s) => says(s.step, BRUSHING));
};

const placeOf = ({ part, step }: Stop, { node }: HeatReading) => ({
  part: part.index,
  line: step.line,
  start: node.start,
  end: node.end,
});

const HOLDING = inAnyForm('hold', 'keep', 'stay', 'maintain', 'cook');

const holdsInWords = ({ step }: Stop): boolean => says(step, HOLDING);

/** Seconds at the least; minutes come from seconds with rounding. */
const secondsOf = ({ node }: TimeReading): number => Math.round(node.lowMin * 600) / 10;

/** `reads 63 C, and hold for 3 min`: the published time for that temperature is kept. */
function heldLongEnough(stop: Stop, reading: HeatReading, limit: Limit): boolean {
  const least = holdS(limit, reading.celsius.low);
  if (least === undefined) return false;
  return holdsInWords(stop) && stop.step.times.some((t) => t.node.start > reading.node.end && secondsOf(t) >= least);
}

/** `hold at 63 C for 3 min`, once the food has been read. */
function heldAfter(stop: Stop, limit: Limit): boolean {
  return (
    holdsInWords(stop) &&
    stop.step.heat.some((r) => {
      const least = r.role === 'surroundings' ? holdS(limit, r.celsius.low) : undefined;
      return (
        least !== undefined &&
        stop.step.times.some((t) => t.node.start > r.node.end && secondsOf(t) >= Math.max(least, 15))
      );
    })
  );
}

interface Cool {
  readonly inFood: readonly TooCool[];
  readonly inOven: readonly Found<CoolOven>[];
}

const coolIn = overList((house, followed: Followed): Cool | undefined => {
  const [inFood, inOven] = [tooCoolIn(house, followed), coolOvensIn(followed)];
  return inFood.length === 0 && inOven.length === 0 ? undefined : { inFood, inOven };
});

const tooCoolOfAll = onceWith(
  (all: readonly Cool[], reheated: readonly Given<readonly Reheat[]>[], house: House): readonly Found<Values>[] => {
    const cool = all.flatMap(({ inFood }) => inFood);
    // The strictest ingredient speaks for all that one reading is too low for.
    cool.sort((a, b) => b.values.limit.celsius - a.values.limit.celsius);
    const found: Found<Values>[] = [];
    const told = new Set<HeatReading>();
    const tellOnce = (each: Found<Values>) => {
      if (told.has(each.values.reading)) return;
      told.add(each.values.reading);
      found.push(each);
    };
    for (const each of cool) tellOnce(each);
    // Whatever is reheated until it reads a figure below that for reheating.
    for (const { value } of reheated)
      for (const reheat of value) {
        const again = told.has(reheat.reading) ? undefined : tooCoolAgain(house, reheat);
        if (again !== undefined) found.push(again);
      }
    for (const { inOven } of all) for (const each of inOven) tellOnce(each);
    return found;
  },
);

interface Reheat extends Stop {
  readonly reading: HeatReading;
}

const tooCoolAgain = onceInHouse(({ foodSafety }, reheat: Reheat): Found<Values> | undefined => {
  const { title, reheating } = holdingLimits(foodSafety);
  const { reading } = reheat;
  if (reading.celsius.low >= reheating.celsius - THERMOMETER_C) return undefined;
  const limit = { ...reheating, source: `${title}, ${reheating.section}` };
  return { at: placeOf(reheat, reading), values: { kind: 'reheated', limit, reading } };
});

const reheats = overParts((part): readonly Reheat[] | undefined => {
  if (!anySays(part.steps, WARMING)) return undefined;
  const found = part.steps.flatMap((step): Reheat[] => {
    const reading = step.heat.find((r) => isDoneness(r) && (isReheated(r, step) || warmsLeftovers(r, step, part)));
    return reading === undefined ? [] : [{ part, step, reading }];
  });
  return found.length === 0 ? undefined : found;
});

const REHEATING = inAnyForm('reheat');

const WARMING = asWritten('reheat', 'reheats', 'reheated', 'reheating', 'warm', 'heat', ...MICROWAVED);
/** `Warm through`, `heat up`, `microwave`: of what was cooked before, it is reheating. */
const WARMS = /\b(?:warm|heat)\b[^;]*\b(?:through|up)\b|\b(?:microwave|nuke|zap)\b/;
const LEFTOVER = /\b(?:cooked|leftover|roasted|rotisserie|precooked)\b/i;
/** Ham and smoked fish, which are sold ready to eat, may be warmed to less. */
const SPOILS: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'meat',
  'ground meat',
  'poultry',
  'ground poultry',
  'grain',
  'legume',
]);

const warmsLeftovers = (reading: HeatReading, step: Step, part: Part): boolean =>
  reading.inside &&
  WARMS.test(inWords(step.sentence)) &&
  step.mentions.some((m) =>
    m.ingredients.some((r) => {
      const of = r.part === part.index ? part.head.ingredients[r.ingredient] : undefined;
      return (
        of !== undefined &&
        SPOILS.has(foodOf(of)?.class ?? 'other') &&
        LEFTOVER.test([of.node.name?.text, of.node.preparation?.text].join(' '))
      );
    }),
  );

const isReheated = (reading: HeatReading, step: Step): boolean =>
  reading.verb === 'reheat' ||
  step.sentence.items.some((i) => i.kind === 'word' && i.start < reading.node.start && isOn(REHEATING, i.word));

const OTHERWISE = asWritten(
  'smoke',
  'bain-marie',
  'cover',
  'covered',
  'foil',
  'lid',
  'casserole',
  'smoked',
  'smoker',
  'bath',
  'vacuum',
  'slow-cooker',
  'cooker',
  'dry',
  'dehydrate',
  'confit',
  'keep',
  'warm',
  'hold',
);
const ROASTED: ReadonlySet<string> = new Set(['roast', 'bake']);

type CoolOven = Extract<Values, { readonly kind: 'cool oven' }>;

const coolOvensIn = onceFor(({ journeys }: Followed): readonly Found<CoolOven>[] =>
  journeys.flatMap((journey) => coolOven(journey) ?? []),
);

/** Meat or poultry in an oven that is never hot. */
function coolOven(journey: Journey): Found<CoolOven> | undefined {
  const { ingredient, stops, all } = journey;
  const group = groupIn(ingredient);
  if ((group !== 'poultry' && group !== 'meat') || isBoughtSafe(journey)) return undefined;
  // Whatever is boiled or seared through first, or cooked in its own way, is another matter.
  if (all.some((s) => cooksThrough(s.step) || says(s.step, OTHERWISE))) return undefined;
  const ovens = stops.flatMap((stop) =>
    stop.step.heat.filter((r) => r.role === 'oven' && ROASTED.has(r.verb ?? '')).map((reading) => ({ stop, reading })),
  );
  const [first] = ovens;
  if (first === undefined) return undefined;
  const hottest = Math.max(
    ...all.flatMap((s) => s.step.heat).map((r) => (r.role === 'oven' ? r.celsius.high + (r.node.fan ? FAN_C : 0) : 0)),
  );
  if (hottest >= ROASTING_OVEN.celsius - 1) return undefined;
  return {
    at: placeOf(first.stop, first.reading),
    values: { kind: 'cool oven', name: ingredient.name, reading: first.reading },
    severity: 'info',
  };
}

/** A fan oven does the work of a still one this much hotter (common practice, no source). */
const FAN_C = 20;
