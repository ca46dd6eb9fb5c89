import { replaceSpan } from '../../edits/text-edit.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { PartHead } from '../../recipe/part.ts';
import type { Step } from '../../recipe/recipe.ts';
import { anySays, asWritten, says } from '../../recipe/step-words.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceWith } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import { CAUTION } from './limits.ts';
import { isFridgeInWrongUnit } from './wrong-unit.ts';

interface Values {
  readonly node: TemperatureNode;
  readonly what: 'oven' | 'food' | 'fridge' | 'rise';
  /** The unit that was probably meant. */
  readonly meant: 'C' | 'F';
}

/** Home and trade ovens reach this; only hearths for pizza and flatbread go beyond (common practice, no source). */
const HOTTEST_OVEN_C = 300;
const COOLEST_OVEN_F = 150;
/** No dough, batter or pastry bakes in an oven cooler than this (common practice, no source). */
const COOLEST_BAKE_F = 240;
/** Nothing wet passes the boiling point inside; above this a figure in the food's centre is Fahrenheit. */
const HOTTEST_CENTRE_C = 110;

export default defineCheck<Values>({
  code: 'implausible-temperature',
  title: 'A temperature must be in the other unit',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Each temperature by what it is the temperature of. An oven over 300 °C, or under 150 °F (240 °F for what is dough, batter or pastry); the centre of a food over 110 °C, where water would have boiled away, and of a custard, sauce or soup any reading over it; a fridge at 30 to 45 °C, or at 4 °F; a dough that rises at 68 °C; a roast whose centre reads 74 °F: each is a likely figure in the other unit.

**Why it matters.** 350 written with the wrong letter burns the dish, and 165 in the centre that should be Fahrenheit can never be reached; a fridge at 40 °C makes people ill.

**What to do.** Mend the letter. **Silent** for hearths (pizza, stone, wood, coals), for drying and keeping warm, and for sugar and hot fat.`,
  *find(part) {
    for (const step of part.steps) if (step.heat.length > 0) yield* inStep(step, part.head);
  },
  findInFile: ({ recipe }) =>
    recipe.oven === undefined ? [] : inHead(recipe.oven.node, recipe.oven.at, bakesDough(recipe)),
  say: ({ node, what, meant }) => {
    const degrees = trimmed(node.lowDegrees, 1);
    const other = meant === 'F' ? (node.lowDegrees - 32) / 1.8 : node.lowDegrees * 1.8 + 32;
    const where = { oven: 'an oven', food: 'the inside of a food', fridge: 'a fridge', rise: 'a rise or a ferment' }[
      what
    ];
    return {
      message: `${degrees} °${node.unit} is no temperature for ${where}; ${degrees} °${meant} is (${Math.round(other)} °${node.unit}): mend the unit. ${CAUTION}`,
      value: node.lowDegrees,
      unit: node.unit,
    };
  },
  work: ({ node: { lowDegrees: degrees }, meant }) => [
    meant === 'F'
      ? `${trimmed(degrees, 1)} °F: (${trimmed(degrees, 1)} − 32) ÷ 1.8 = ${trimmed((degrees - 32) / 1.8, 0)} °C.`
      : `${trimmed(degrees, 1)} °C: ${trimmed(degrees, 1)} × 1.8 + 32 = ${trimmed(degrees * 1.8 + 32, 0)} °F.`,
  ],
  fix: ({ node, meant }, _scene, at) => [
    {
      title: `Write ${trimmed(node.lowDegrees, 1)} ${meant}`,
      effect: 'amounts',
      edits: [replaceSpan(at.line, node.unitSpan, meant)],
    },
  ],
  examples: {
    good: [
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 350 F for 10 min until golden.\n',
      'recipe Syrup\n  200 g     caster sugar\n  80 g      water\n  do Boil the sugar and water to 118 C.\n',
    ],
    bad: [
      {
        text: 'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 350 C for 10 min until golden.\n# "350 C" implausible-temperature *: 350 °F\n',
        after: {
          'Write 350 F': 'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 350 F for 10 min until golden.\n',
        },
      },
      'recipe Rolls as lean bread\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast and prove at 24 C for 2 h.\n  do Bake at 220 F for 15 min until gold.\n# "220 F" implausible-temperature *: 220 °C\n',
      'recipe Roast chicken\n  oven    400 F\n  1.6 kg    chicken\n  do Roast the chicken for 75 min, until the centre reads 165 C.\n# "165 C" implausible-temperature *\n',
    ],
  },
});

/** Kinds that are mostly water all through: no reading in them passes its boiling point by much. */
const WET: ReadonlySet<string> = new Set([
  'baked custard',
  'stirred custard',
  'pastry cream',
  'quiche',
  'cheese filling',
  'butter sauce',
  'starch sauce',
  'roux sauce',
  'soup',
  'stock',
  'braise',
  'mince dish',
  'ice cream',
]);

const BAKED: ReadonlySet<string> = new Set(['pastry', 'dough', 'cake', 'batter']);
/** Flour of the whole from which it is one of these, by whatever name (judgement). */
const FLOURY = 0.2;

const isBaked = ({ kind, flourG, massG }: PartHead): boolean =>
  kind === undefined ? massG.high > 0 && flourG.low >= massG.high * FLOURY : BAKED.has(kind.group);

function* inStep(step: Step, head: PartHead): Generator<Found<Values>> {
  const { kind } = head;
  const wet = WET.has(kind?.name ?? '');
  const coolestF = isBaked(head) ? COOLEST_BAKE_F : COOLEST_OVEN_F;
  for (const reading of step.heat) {
    const { node } = reading;
    const values =
      reading.role === 'oven'
        ? ovenValues(node, step, coolestF)
        : reading.role === 'food'
          ? (foodValues(reading, wet) ?? coolInside(reading, step))
          : aroundValues(reading, step);
    if (values !== undefined) yield { at: { line: step.line, start: node.start, end: node.end }, values };
  }
}

const RISING: ReadonlySet<string> = new Set(['prove', 'proof', 'rise', 'ferment']);
/** Yeast and what ferments vegetables are dead from here (common practice, no source). */
const DEADLY_C = 55;
/** Colder than any fridge. */
const COLDEST_FRIDGE_F = 20;

function aroundValues(reading: HeatReading, step: Step): Values | undefined {
  const { node, role, verb } = reading;
  if (isFridgeInWrongUnit(reading, step)) return { node, what: 'fridge', meant: 'F' };
  if (role !== 'surroundings') return undefined;
  if (verb === 'chill' && node.unit === 'F' && node.lowDegrees > 0 && node.highDegrees < COLDEST_FRIDGE_F)
    return { node, what: 'fridge', meant: 'C' };
  return RISING.has(verb ?? '') && node.unit === 'C' && node.lowDegrees > DEADLY_C
    ? { node, what: 'rise', meant: 'F' }
    : undefined;
}

/** What is taken from the oven is warmer inside than a kitchen. */
const COOLEST_CENTRE_F = 100;

const coolInside = ({ inside, node }: HeatReading, step: Step): Values | undefined =>
  inside && node.unit === 'F' && node.lowDegrees >= 50 && node.highDegrees < COOLEST_CENTRE_F && says(step, OVEN_VERBS)
    ? { node, what: 'food', meant: 'C' }
    : undefined;

const OVEN_VERBS = asWritten('bake', 'roast');
const OVEN_WORDS = asWritten('bake', 'roast', 'oven');

const HEARTH = asWritten(
  'pizza',
  'stone',
  'steel',
  'wood',
  'coals',
  'hearth',
  'grill',
  'tandoor',
  'fire',
  'kiln',
  'barbecue',
);
const DRYING = asWritten(
  'dry',
  'dries',
  'dried',
  'dehydrate',
  'dehydrator',
  'warm',
  'hold',
  'keep',
  'prove',
  'proof',
  'rise',
);

const bakesDough = anyPart(({ head, steps }) => isBaked(head) && anySays(steps, OVEN_WORDS) && !anySays(steps, DRYING));

/** Of the oven set above the parts. */
const inHead = onceWith((node: TemperatureNode, line: number, dough: boolean): readonly Found<Values>[] => {
  const values = ovenValues(node, undefined, dough ? COOLEST_BAKE_F : COOLEST_OVEN_F);
  return values === undefined ? [] : [{ at: { line, start: node.start, end: node.end }, values }];
});

function ovenValues(node: TemperatureNode, step: Step | undefined, coolestF: number): Values | undefined {
  if (node.unit === 'C' && node.lowDegrees > HOTTEST_OVEN_C && node.lowDegrees <= 550 && !(step && says(step, HEARTH)))
    return { node, what: 'oven', meant: 'F' };
  if (node.unit === 'F' && node.highDegrees < coolestF && node.highDegrees >= 60 && !(step && says(step, DRYING)))
    return { node, what: 'oven', meant: 'C' };
  return undefined;
}

function foodValues(reading: HeatReading, wet: boolean): Values | undefined {
  const { node } = reading;
  return (reading.inside || wet) && node.unit === 'C' && node.lowDegrees > HOTTEST_CENTRE_C && node.lowDegrees <= 230
    ? { node, what: 'food', meant: 'F' }
    : undefined;
}
