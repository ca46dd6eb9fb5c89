import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import type { Part, PartHead } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { onceWith } from '../once.ts';
import { inScale } from '../other-scale.ts';
import { anyPart, overParts } from '../over-parts.ts';
import { CAUTION } from './limits.ts';

type What = 'oven' | 'food' | 'fridge' | 'freezer' | 'rise' | 'around' | 'medium';

interface Values {
  readonly node: TemperatureNode;
  readonly what: What;
  /** The unit that was probably meant; undefined where neither can be. */
  readonly meant: 'C' | 'F' | undefined;
  /** The unit of all others. */
  readonly odd: boolean;
}

/** Home and trade ovens reach this; only hearths for pizza and flatbread go beyond (common practice, no source). */
const HOTTEST_OVEN_C = 300;
const COOLEST_OVEN_F = 150;
/** No dough, batter or pastry bakes in an oven cooler than this (common practice, no source). */
const COOLEST_BAKE_F = 240;
/** Nothing wet passes the boiling point inside; above this a figure in the food's centre is Fahrenheit. */
const HOTTEST_CENTRE_C = 110;
/** What bakes so hot and so short lies on a hearth; under a grill it is as hot (common practice, no source). */
const HOTTEST_HEARTH_C = 550;
const LONGEST_HEARTH_MIN = 4;
/** Ovens are mostly set between these, °C (common practice, no source). */
const USUAL_OVEN_C = { low: 130, high: 260 };

export default defineCheck<Values>({
  code: 'implausible-temperature',
  title: 'A temperature must be in the other unit',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  doubtsFigure: true,
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Each temperature by what it is the temperature of, and what that can be. An oven over 320 °C, or under 150 °F (240 °F for what is dough, batter or pastry); the centre of a food over 110 °C, where water would have boiled away, or colder than blood, and of a custard, sauce or soup any reading over it; a fridge at 30 to 45 °C, or at 4 °F; a freezer at 0 °C written 0 F is no slip; a dough that rises at 68 °C; fat at 375 °C: each is a likely figure in the other unit. What can be in neither (an oven at 18 or at 1800 °C) has lost a digit or gained one. A figure that is alone in its unit, where the whole recipe is in the other and it would fit in that, is a warning.

**Why it matters.** 350 written with the wrong letter burns the dish, and 165 in the centre that should be Fahrenheit can never be reached; a fridge at 40 °C makes people ill.

**What to do.** Mend the letter. **Silent** for hearths, stone ovens and grills, for drying, proving and keeping warm, and for sugar.`,
  *find(part) {
    for (const step of part.steps)
      for (const heat of heatsOf(step)) {
        const values = valuesOf(heat, part);
        if (values !== undefined)
          yield {
            at: { line: step.line, start: values.node.start, end: values.node.end },
            values,
          };
      }
  },
  findInFile: ({ recipe, house }) => {
    const odd = oddOnes(recipe, house);
    const head = recipe.oven === undefined ? odd : inHead(recipe.oven.node, recipe.oven.at, bakesDough(recipe));
    return head === odd || odd.length === 0 ? head : [...head, ...odd];
  },
  say: ({ node, what, meant, odd }) => {
    const degrees = trimmed(node.lowDegrees, 1);
    const scene = { value: node.lowDegrees, unit: node.unit };
    if (meant === undefined)
      return {
        message: `${degrees}${node.unit === 'unsaid' ? '' : ` °${node.unit}`} is no temperature for ${WHAT[what]}, in °C or °F: mend the figure. ${CAUTION}`,
        ...scene,
      };
    const other = meant === 'F' ? (node.lowDegrees - 32) / 1.8 : node.lowDegrees * 1.8 + 32;
    const also = `${degrees} °${meant} is (${Math.round(other)} °${node.unit})`;
    return {
      message: odd
        ? `${degrees} °${node.unit} is alone among figures in °${meant}; ${also}: is the unit right? ${CAUTION}`
        : `${degrees} °${node.unit} is no temperature for ${WHAT[what]}; ${also}: mend the unit. ${CAUTION}`,
      ...scene,
    };
  },
  work: ({ node: { lowDegrees: degrees, unit }, meant }) => [
    (meant ?? (unit === 'C' ? 'F' : 'C')) === 'F'
      ? `${trimmed(degrees, 1)} °F: (${trimmed(degrees, 1)} − 32) ÷ 1.8 = ${trimmed((degrees - 32) / 1.8, 0)} °C.`
      : `${trimmed(degrees, 1)} °C: ${trimmed(degrees, 1)} × 1.8 + 32 = ${trimmed(degrees * 1.8 + 32, 0)} °F.`,
  ],
  fix: ({ node, meant }, _scene, at) => inScale(node, meant, at.line),
  examples: {
    good: [
      'recipe Flatbreads\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  do Knead the flour, water and salt.\n  do Bake in a wood oven at 450 C for 90 s until blistered.\n',
      'recipe Sponge as sponge\n  200 g     eggs\n  120 g     caster sugar\n  120 g     plain flour\n  do Warm the eggs and sugar to 45 C, whisk until pale and fold in the flour.\n  do Bake at 180 C for 25 min until golden.\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 350 F for 10 min until golden.\n',
      'recipe Syrup\n  200 g     caster sugar\n  80 g      water\n  do Boil the sugar and water to 118 C.\n',
    ],
    bad: [
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 1800 C for 10 min until golden.\n# "1800 C" implausible-temperature: in °C or °F\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 18 C for 10 min until golden.\n# "18 C" implausible-temperature: in °C or °F\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 18 for 10 min until golden.\n# "18" implausible-temperature: in °C or °F\n',
      'recipe Oats\n  200 g     rolled oats\n  100 g     honey\n  do Warm the honey to 40 C and stir in the oats.\n  do Bake at 180 F for 10 min until golden.\n# "180 F" implausible-temperature warning *: alone among figures in °C\n  do Cool to 20 C.\n',
      'recipe Ham\n  2 kg      gammon\n  do Simmer the gammon at 90 C for 2 h.\n  do Roast at 200 C for 20 min.\n  do Keep at 63 F for 1 h.\n# "63 F" implausible-temperature warning *: alone among figures in °C\n',
      'recipe Trifle\n  500 g     custard\n  200 g     sponge fingers\n  do Layer the custard and the sponge fingers.\n  do Chill at 4 F overnight.\n# "4 F" implausible-temperature *: a fridge\n',
      'recipe Chips\n  1 kg      potatoes\n  1 l       sunflower oil\n  do Fry the potatoes in the oil at 375 C for 4 min until golden.\n# "375 C" implausible-temperature *: cooked in\n',
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

const WHAT: Readonly<Record<What, string>> = {
  oven: 'an oven',
  food: 'the inside of a food',
  fridge: 'a fridge',
  freezer: 'a freezer',
  rise: 'a rise or a ferment',
  around: 'where food is kept',
  medium: 'what food is cooked in',
};

/** Kinds that are mostly water all through: no reading in them passes its boiling point by much. */
const WET: ReadonlySet<Kind['name']> = new Set([
  'baked custard',
  'stirred custard',
  'pastry cream',
  'fruit curd',
  'starch pudding',
  'fruit filling',
  'quiche',
  'cheese filling',
  'butter sauce',
  'starch sauce',
  'roux sauce',
  'soup',
  'stock',
  'braise',
  'mince dish',
  'sausage',
  'terrine',
  'mash',
  'salsa',
  'relish',
  'hot sauce',
  'tea ferment',
  'yoghurt',
  'fresh cheese',
  'ice cream',
]);

const BAKED: ReadonlySet<Kind['group']> = new Set(['pastry', 'dough', 'cake', 'batter']);
/** Flour of the whole from which it is one of these, by whatever name (judgement). */
const FLOURY = 0.2;

const isBaked = ({ kind, flourG, massG }: PartHead): boolean =>
  kind === undefined ? massG.high > 0 && flourG.low >= massG.high * FLOURY : BAKED.has(kind.group);

function valuesOf(heat: HeatFigure, part: Part): Values | undefined {
  const [node] = heat.written;
  const { event, of, meant, cannot, bound } = heat;
  if (node === undefined || event === undefined || bound === 'change' || event.said === 'not') return undefined;
  if (node.unit !== 'C' && node.unit !== 'F' && (node.unit !== 'unsaid' || of !== 'oven')) return undefined;
  const values = { node, what: whatOf(heat), odd: false };
  if (of === 'oven') {
    if (isHearth(heat)) return undefined;
    if (isCoolFor(node, part.head) && event.act === 'heat') return { ...values, meant: 'C' };
  }
  if (of === 'food' && WET.has(part.head.kind?.name ?? '') && node.unit === 'C' && node.lowDegrees > HOTTEST_CENTRE_C)
    return { ...values, meant: 'F' };
  if (meant !== undefined) return { ...values, meant };
  if (cannot === true) return { ...values, meant: undefined };
  // `Pour the oil into a pan and heat to 365 C`
  const isOnStove = event.act === 'heat' && event.cooks === 'barely' && event.where.every(({ is }) => is !== 'oven');
  const isTooHot = isOnStove && heat.celsius.low > HOTTEST_OVEN_C && !isHearth(heat);
  return isTooHot && node.unit === 'C' ? { ...values, what: 'medium', meant: 'F' } : undefined;
}

function whatOf({ of, event }: HeatFigure): What {
  if (of === 'oven' || of === 'food' || of === 'medium') return of;
  const place = event?.where.find(({ not, way }) => !not && (way === 'at' || way === 'to'))?.is;
  if (event?.act === 'rise') return 'rise';
  return place === 'cold' || event?.act === 'cool'
    ? 'fridge'
    : place === 'frozen' || event?.act === 'freeze'
      ? 'freezer'
      : 'around';
}

/** Minutes on a stone, or a grill that is as hot. */
const isHearth = ({ celsius, event }: HeatFigure): boolean =>
  celsius.low > USUAL_OVEN_C.high &&
  celsius.high <= HOTTEST_HEARTH_C &&
  (event?.craft === 'grill' ||
    event?.where.some(({ is }) => is === 'outdoors') === true ||
    event?.times.some(({ kind, minutes }) => kind === 'spent' && minutes.high <= LONGEST_HEARTH_MIN) === true);

const isCoolFor = ({ unit, lowDegrees, highDegrees }: TemperatureNode, head: PartHead): boolean =>
  unit === 'F' && lowDegrees >= USUAL_OVEN_C.low && highDegrees < COOLEST_BAKE_F && isBaked(head);

/** What fits each on the scale that all others are in, °C (judgement). */
const FITS_C: Readonly<Record<What, Range>> = {
  oven: { low: 60, high: 300 },
  food: { low: 20, high: 190 },
  fridge: { low: -2, high: 25 },
  freezer: { low: -40, high: -5 },
  rise: { low: 10, high: 50 },
  around: { low: -2, high: 110 },
  medium: { low: 40, high: 215 },
};
const LEAST_OTHERS = 2;

interface Scaled {
  readonly heat: HeatFigure;
  readonly line: number;
}

const scaledIn = overParts(({ steps }): readonly Scaled[] | undefined => {
  const scaled = steps.flatMap((step) =>
    heatsOf(step).flatMap((heat) =>
      heat.bound !== 'change' && heat.written.some(({ unit }) => unit === 'C' || unit === 'F')
        ? [{ heat, line: step.line }]
        : [],
    ),
  );
  return scaled.length === 0 ? undefined : scaled;
});

/** The one figure that is not on the scale of all others; none where a heat is written on both. */
const oddOnes = foundAgain<Values>((recipe) => {
  const byUnit: Record<'C' | 'F', (Scaled & { readonly part: Part })[]> = { C: [], F: [] };
  for (const { part, value } of scaledIn(recipe))
    for (const { heat, line } of value) {
      const [node, another] = heat.written;
      if (another !== undefined) return [];
      if (node?.unit === 'C' || node?.unit === 'F') byUnit[node.unit].push({ heat, line, part });
    }
  const above = recipe.oven?.node.unit;
  const others = (unit: 'C' | 'F') => byUnit[unit].length + (above === unit ? 1 : 0);
  return (['C', 'F'] as const).flatMap((meant): readonly Found<Values>[] => {
    const unit = meant === 'C' ? 'F' : 'C';
    const [only] = byUnit[unit];
    if (only === undefined || others(unit) > 1 || others(meant) < LEAST_OTHERS) return [];
    const { heat, line, part } = only;
    const [node] = heat.written;
    // What cannot be is told of by itself.
    if (node === undefined || heat.event?.said !== 'yes' || valuesOf(heat, part) !== undefined) return [];
    const what = whatOf(heat);
    const { low, high } = celsiusOf({ ...node, unit: meant });
    return low < FITS_C[what].low || high > FITS_C[what].high
      ? []
      : [
          {
            at: { part: part.index, line, start: node.start, end: node.end },
            values: { node, what, meant, odd: true },
            severity: 'warning',
          },
        ];
  });
});

/** It is put there to bake, and not to rise or to dry. */
const isInOven = ({ act, where }: BoundEvent['event']): boolean =>
  act !== 'rise' &&
  act !== 'dry' &&
  act !== 'stay' &&
  where.some(({ is, way, not }) => is === 'oven' && !not && (way === 'at' || way === 'to'));

const bakesDough = anyPart(
  ({ head, steps }) => isBaked(head) && steps.some((step) => boundEvents(step).some(({ event }) => isInOven(event))),
);

/** Of the oven set above the parts. */
const inHead = onceWith((node: TemperatureNode, line: number, dough: boolean): readonly Found<Values>[] => {
  const meant = headMeant(node, dough);
  return meant === undefined && celsiusOf(node).low <= HOTTEST_HEARTH_C
    ? []
    : [{ at: { line, start: node.start, end: node.end }, values: { node, what: 'oven', meant, odd: false } }];
});

function headMeant({ unit, lowDegrees, highDegrees }: TemperatureNode, dough: boolean): 'C' | 'F' | undefined {
  if (unit === 'C' && lowDegrees > HOTTEST_OVEN_C && lowDegrees <= HOTTEST_HEARTH_C) return 'F';
  if (unit === 'F' && highDegrees < (dough ? COOLEST_BAKE_F : COOLEST_OVEN_F) && highDegrees >= LEAST_OVEN_C)
    return 'C';
  return undefined;
}

/** What only warms is set lower. */
const LEAST_OVEN_C = 60;
