import { replaceSpan } from '../../edits/text-edit.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { bothDegrees, ownDegrees, scaleIn } from '../../recipe/journey/degrees.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { forcedOpen } from '../by-state/forced-open.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { type OnFood, undercooked } from '../by-state/undercooked.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import type { House } from '../house.ts';
import { plainTable } from '../sum-table.ts';
import { temperatureAt } from '../temperature-at.ts';
import {
  besideText,
  CAUTION,
  fahrenheitOf,
  type HeatRule,
  holdingLimits,
  holdS,
  type Limit,
  ROASTING_OVEN,
  timeText,
} from './limits.ts';

interface Figure {
  readonly celsius: number;
  /** As it is written. */
  readonly node: TemperatureNode | undefined;
}

type Values =
  | (Figure & {
      readonly kind: 'food';
      readonly name: string;
      readonly limit: Limit;
      /** The other rule set's figure. */
      readonly beside: string;
      /** Seconds that would do at this temperature. */
      readonly holdS: number | undefined;
    })
  | (Figure & { readonly kind: 'reheated'; readonly limit: HeatRule; readonly source: string })
  | (Figure & { readonly kind: 'cool oven'; readonly name: string })
  | { readonly kind: 'partly'; readonly name: string }
  | { readonly kind: 'tasted'; readonly name: string }
  | { readonly kind: 'shut' };

/** The strictest food speaks for all that one figure is too low for. */
const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const all = undercooked(house, journey).filter(({ code }) => code === 'undercooked');
    const shut = forcedOpen(journey).map(
      ({ by, part, line }): Found<Values> => ({
        at: { part, line, ...(by.event.verb ?? by.event) },
        values: { kind: 'shut' },
      }),
    );
    if (all.length === 0) return shut;
    const told = new Map<string, OnFood>();
    for (const each of all.toSorted((a, b) => strictness(b) - strictness(a))) {
      const key = `${each.part} ${each.line} ${each.start}`;
      if (!told.has(key)) told.set(key, each);
    }
    return [...shut, ...[...told.values()].flatMap((each) => findingOf(journey, house, each) ?? [])];
  }),
);

/** Food first, then what is heated again; the oven has the last word. */
const strictness = ({ how }: OnFood): number =>
  how.kind === 'figure' ? how.limit.celsius : how.kind === 'reheated' ? 1 : 0;

function findingOf(journey: Journey, { foodSafety }: House, verdict: OnFood): Found<Values> | undefined {
  const { how, held, level, part, line, start, end } = verdict;
  const at = { part, line, start, end };
  const place = { at, ...severityAt(level) };
  const { name } = held.ingredient;
  if (how.kind === 'partly' || how.kind === 'tasted') return { ...place, values: { kind: how.kind, name } };
  if (how.kind !== 'figure' && how.kind !== 'reheated' && how.kind !== 'cool oven') return undefined;
  const node = temperatureAt(journey, at);
  const figure = { celsius: how.read.celsius.low, node };
  if (how.kind === 'figure') {
    const { limit, group } = how;
    const beside = besideText(group, foodSafety, scaleIn(figure.celsius, node));
    return {
      ...place,
      values: {
        ...figure,
        kind: 'food',
        name,
        limit,
        beside,
        holdS: holdS(limit, figure.celsius, how.read.fahrenheit),
      },
    };
  }
  if (how.kind === 'reheated') {
    const { title, reheating } = holdingLimits(foodSafety);
    const source = `${title}, ${reheating.section}`;
    return { ...place, values: { ...figure, kind: 'reheated', limit: reheating, source } };
  }
  if (node?.fan === true && figure.celsius + FAN_C >= ROASTING_OVEN.celsius - 1) return undefined;
  return { ...place, values: { ...figure, kind: 'cool oven', name } };
}

const PARTLY_COOKED =
  'FDA Food Code 2022, 3-401.14 (only by a written procedure); USDA, as Food Poisoning Bulletin 2021 quotes it: never cook meat in part to finish it later';

const STAYED_SHUT = 'FDA, Fresh and Frozen Seafood: throw out the ones that did not open (for consumers; from memory)';

const TASTED_RAW = 'USDA, as copies for consumers have it: neither eat nor taste ground meat raw, cook it to 160 °F';

/** A fan oven does the work of a still one this much hotter (common practice, no source). */
const FAN_C = 20;

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
  explain: `**What it computes.** For every food that is a risk raw (poultry, game, minced, tenderised and whole meat, fish, egg), wherever it lies after each step, the highest temperature *in the food* that the steps ask for, as it is heated or as it rests, against the least temperature of the rule set in force. The strictest food decides; what is stuffed counts as poultry, what is cooked by microwave is held to the figure for that. What is reheated, and cooked meat, rice or pulses that are heated again, is held against the figure for reheating. The home rule of USDA FSIS stands beside the Food Code's in the message.

**Why it matters.** Below it, Salmonella and its like survive in numbers that make people ill.

**What to do.** Write the safe temperature and where it is read. A lower one is accepted only with the published time for it, held: \`reads 63 C; hold at 63 C for 3 min\`. The time is that of the nearest published temperature below, and never worked out between two. A roast may rise by a few degrees as it rests, where the step says to what.

Meat and poultry roasted open in an oven that never passes ${ROASTING_OVEN.celsius} °C is information only: it lies long in the warm, and FSIS advises homes against it. **Silent** on that for smoking, drying, water baths and slow cookers, and where it is held at a figure.

Shells that stay shut and are forced open are an error; mince that is tasted before anything cooks it is a warning. Poultry, game and mince that is browned or half done, kept in the cold for hours and cooked later is a warning.

**Silent** where a step boils, simmers, braises or steams the food and gives no figure, where no temperature in the food is given at all (that is \`no-safe-temperature\`'s), and for what is bought cooked or pasteurised. Local codes and licensed practice may ask for more; they come first.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: (values) => {
    if (values.kind === 'partly')
      return {
        message: `What is put away is only partly cooked (${values.name}), and what is alive inside goes on growing: cook it through at once and chill it, or leave it raw until then. ${CAUTION}`,
        source: PARTLY_COOKED,
      };
    if (values.kind === 'tasted')
      return {
        message: `The ${values.name} is tasted raw: fry a little of it, and taste that. ${CAUTION}`,
        source: TASTED_RAW,
      };
    if (values.kind === 'shut')
      return {
        message: `A shell that stays shut in the heat was dead before it, or is not cooked: throw it away. ${CAUTION}`,
        source: STAYED_SHUT,
      };
    const { celsius: low } = values;
    const scale = scaleIn(low, values.node);
    const degrees = ownDegrees(low, values.node);
    if (values.kind === 'cool oven') {
      return {
        message: `An oven at ${degrees} leaves the ${values.name} long in the warm: homes are told to roast meat and poultry at ${bothDegrees(ROASTING_OVEN, scale)}, or hotter, whatever the centre reads at the end. ${CAUTION}`,
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
        message: `Reheated to ${degrees} is too low for what is kept hot: bring it to ${bothDegrees(limit, scale)}${time} within 2 h. ${CAUTION}`,
        source: values.source,
      };
    }
    const held = values.holdS === undefined ? '' : `, or hold ${degrees} for ${timeText(values.holdS / 60)}`;
    return {
      ...said,
      message: `${degrees} in the food is too low for ${values.name}: cook it to ${bothDegrees(limit, scale)}${time}${held}. ${values.beside} ${CAUTION}`,
      source:
        held === '' || values.limit.holdsSource === undefined
          ? values.limit.source
          : `${values.limit.source}; ${values.limit.holdsSource}`,
    };
  },
  work: (values) => {
    if (values.kind !== 'food' || values.limit.holds.length === 0) return [];
    const { celsius: low } = values;
    return [
      ...plainTable(
        ['°C in the food', '°F', 'must hold'],
        values.limit.holds.map((hold) => [String(hold[0]), String(fahrenheitOf(hold)), timeText(hold[1] / 60)]),
      ),
      '',
      values.holdS === undefined
        ? `Below ${values.limit.holds[0]?.[0]} °C no time is published: at ${ownDegrees(low, values.node)} none is enough.`
        : `Of these times, that of the nearest row below counts for ${ownDegrees(low, values.node)}: nothing is worked out between two.`,
    ];
  },
  fix: (values, _scene, at) => {
    if (values.kind === 'partly' || values.kind === 'tasted' || values.kind === 'shut') return [];
    const { node } = values;
    if (node === undefined || node.unit === 'gas' || values.kind === 'cool oven') return [];
    const degrees = node.unit === 'F' ? values.limit.fahrenheit : values.limit.celsius;
    const { low, high } = node;
    return [
      {
        title: `Write ${degrees} ${node.unit}`,
        effect: 'amounts',
        edits: [replaceSpan(at.line, { start: low.start, end: (high ?? low).end }, String(degrees))],
      },
    ];
  },
  examples: {
    good: [
      'recipe Clams\n  1 kg      clams\n  100 ml    dry white wine\n  do Steam the clams in the wine for 5 min, until they read 75 C.\n  do Uncover and throw away any that are still shut. Never force open a shut one.\n',
      'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 75 min, until the thickest part of the thigh reads 74 C.\n',
      'recipe Meat loaf\n  oven    180 C\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 71 C.\n',
      'recipe Roast beef\n  1.8 kg    beef\n  do Roast the beef at 170 C until the centre reads 58.9 C, and hold for 18 min.\n',
      'recipe Salmon in pastry\n  900 g     salmon fillet\n  500 g     puff pastry\n  1 large   egg, beaten\n  do Wrap the salmon in the pastry and brush with the egg.\n  do Bake at 200 C for 30 min, until the centre reads 63 C.\n',
      'recipe Warm thighs\n  800 g     cooked chicken\n  do Reheat the chicken until the centre reads 74 C.\n',
    ],
    bad: [
      'recipe Clams\n  1 kg      clams\n  100 ml    dry white wine\n  do Steam the clams in the wine for 5 min, until they read 75 C.\n  do Lever open any that are still shut, and serve.\n#    ^^^^^^^^^^ undercooked: throw it away\n',
      {
        text: 'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 65 C.\n# "65 C" undercooked *: 74 °C, 165 °F (under 1 s), or hold 65 °C for 13 min. At home: 74 °C\n',
        after: {
          'Write 74 C':
            'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 74 C.\n',
        },
      },
      'recipe Tart with thighs\n\npart thighs\n  600 g     chicken thighs\n  do Roast the thighs at 200 C for 40 min, until the centre reads 65 C.\n# "65 C" undercooked *\n\npart tart\n  3 large   eggs\n  300 ml    whole milk\n  do Whisk the eggs with the milk.\n  do Bake at 150 C for 45 min, until the centre reads 80 C.\n  do Serve with the thighs.\n',
      'recipe Meat loaf\n  oven    350 F\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 140 F.\n# "140 F" undercooked *: 155 °F, 68 °C (17 s). At home: 160 °F, 71 °C\n',
      'recipe Terrine\n  700 g     pork shoulder, minced\n  300 g     pork belly, minced\n  do Mix the pork and bake in a water bath at 170 C until the middle reads 63 C.\n# "63 C" undercooked *: 155 °F (17 s), or hold 63 °C for 3 min\n',
      'recipe Thighs\n  oven    200 C\n  800 g     chicken thighs\n  do Brown the thighs for 6 min.\n  do Roast until the centre reads 62 C.\n# "62 C" undercooked *: hold 62 °C for 23.7 min\n',
      'recipe Roast beef\n  1.8 kg    beef\n  do Roast the beef at 170 C until the centre reads 58 C, and hold for 18 min.\n# "58 C" undercooked *: hold 58 °C for 28 min\n',
      'recipe Warm thighs\n  800 g     cooked chicken\n  do Reheat the chicken until the centre reads 60 C.\n# "60 C" undercooked *: 74 °C\n',
      'recipe Slow roast\n  2 kg      pork shoulder\n  do Roast the pork at 110 C for 6 h, until the centre reads 88 C.\n# "110 C" undercooked info: 163 °C\n',
    ],
  },
});
