import { replaceSpan } from '../../edits/text-edit.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, asWritten, inAnyForm, inWords, isOn, says } from '../../recipe/step-words.ts';
import { defineCheck } from '../check.ts';
import { CAUTION, type HoldingLimits, holdingLimits } from './limits.ts';
import { lying, lyingForm } from './lying-verbs.ts';
import { isPerishable } from './perishable.ts';
import { isFridgeInWrongUnit } from './wrong-unit.ts';

interface Values {
  readonly reading: HeatReading;
  readonly kind: 'hot' | 'cold';
  readonly limits: HoldingLimits;
}

/** What a thermometer and rounding between °C and °F may hide. */
const SLACK_C = 0.6;
/** Below this, food that is kept is meant to be cold; above, hot. */
const BETWEEN_C = 25;

export default defineCheck<Values>({
  code: 'held-too-warm',
  title: 'Food is kept neither hot nor cold enough',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  source: { kind: 'publication', title: 'FDA Food Code 2022, 3-501.16; USDA FSIS, danger zone (for consumers)' },
  explain: `**What it computes.** For a perishable part, each temperature beside *keep*, *hold*, *store*, *display*, *chill* and *refrigerate*, and beside *stand*, *set out* and *leave* for a buffet or until wanted: hot food at 57 °C or above (60 °C by the home rule; meat that a step roasts from 54 °C), cold food at 5 °C or below.

**Why it matters.** Between the two everything that spoils food and most that sickens people grows, from twice an hour to four times.

**What to do.** Hold it hotter, or cool it fast and reheat it: \`hold at 60 C\`, \`chill at 4 C\`.

**Silent** for doughs that prove, ferments, cheese and yoghurt in the making, for what is held at a temperature until it is cooked (a water bath, a roast by its published time), and for what keeps by itself.`,
  *find(part, house) {
    if (!anySays(part.steps, KEEPING) || !part.steps.some((s) => s.heat.length > 0) || !isPerishable(part)) return;
    const limits = holdingLimits(house.foodSafety);
    for (const step of part.steps) {
      for (const reading of step.heat) {
        const kind = keptAt(reading, step, part, limits);
        if (kind === undefined) continue;
        const { start, end } = reading.node;
        yield { at: { line: step.line, start, end }, values: { reading, kind, limits } };
      }
    }
  },
  say: ({ reading, kind, limits }) => {
    const rule = limits[kind];
    const degrees = trimmed(reading.celsius.low, 1);
    const advice =
      kind === 'hot'
        ? `hot food is held at ${rule.celsius} °C, ${rule.fahrenheit} °F, or above`
        : `cold food is kept at ${rule.celsius} °C, ${rule.fahrenheit} °F, or below`;
    return {
      message: `${degrees} °C is no temperature to keep this at: ${advice}. ${CAUTION}`,
      value: reading.celsius.low,
      unit: 'C',
      band: kind === 'hot' ? [rule.celsius, null] : [null, rule.celsius],
      source: `${limits.title}, ${rule.section}`,
    };
  },
  fix: ({ reading, kind, limits }, _scene, at) => {
    const { node } = reading;
    if (node.unit === 'gas') return [];
    // A margin of a few degrees, as kitchens set it.
    const degrees =
      kind === 'hot'
        ? node.unit === 'F'
          ? limits.hot.fahrenheit + 5
          : limits.hot.celsius + 3
        : node.unit === 'F'
          ? 39
          : 4;
    return [
      {
        title: `Write ${degrees} ${node.unit}`,
        effect: 'amounts',
        edits: [replaceSpan(at.line, { start: node.low.start, end: (node.high ?? node.low).end }, String(degrees))],
      },
    ];
  },
  examples: {
    good: [
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Hold at 63 C, or chill at 4 C.\n',
      'recipe Dough\n  500 g     bread flour\n  300 g     whole milk\n  5 g       instant yeast\n  do Mix the flour, milk and yeast and keep at 26 C for 1 h.\n',
    ],
    bad: [
      {
        text: 'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Keep warm at 50 C.\n# "50 C" held-too-warm *: 57 °C\n',
        after: {
          'Write 60 C':
            'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Keep warm at 60 C.\n',
        },
      },
      'recipe Potato salad\n  1 kg      potatoes, boiled\n  200 g     mayonnaise\n  4         eggs, hard-boiled\n  do Mix the potatoes, mayonnaise and eggs, and keep at 12 C.\n# "12 C" held-too-warm *: 5 °C\n',
      'recipe Custard as stirred custard\n  500 ml    whole milk\n  4 large   egg yolks\n  60 g      caster sugar\n  do Whisk the yolks with the sugar and milk and stir over a low heat until it reads 82 C.\n  do Cool over ice and store at 10 C.\n# "10 C" held-too-warm *: 5 °C, 41 °F, or below\n',
    ],
  },
});

const KEPT = ['keep', 'hold', 'store', 'chill', 'refrigerate', 'stash', 'display', 'park', 'maintain'] as const;
/** What these say is kept only where it says for whom, as under the lamps of a buffet. */
const SET_OUT = lying('stand', 'set', 'rest', 'sit', 'leave', 'put', 'serve');
const KEEPING = lying(...KEPT, 'stand', 'set', 'rest', 'sit', 'leave', 'put', 'serve');
const HOT: ReadonlySet<string> = new Set(['keep', 'hold', 'park', 'display', 'maintain']);
const MAKING = inAnyForm(
  'ferment',
  'culture',
  'cultured',
  'incubate',
  'rennet',
  'starter',
  'yoghurt',
  'yogurt',
  'curd',
  'prove',
  'rise',
  'bath',
  'dry',
  'temper',
  'smoke',
  'smoker',
);

const ROASTED = asWritten('roast', 'roasts', 'roasted', 'roasting');
/** Of what is hot alone: butter may soften until it is needed. */
const TILL_WANTED = asWritten('wanted', 'needed', 'throughout', 'bain-marie');
const ON_SHOW = asWritten('buffet', 'chafing', 'carvery', 'lamp', 'lamps', 'lights', 'cabinet', 'service', 'party');
/** A roast may rest, and a platter stand, for so long (USDA FSIS, danger zone). */
const SHORT_MIN = 120;
/** A time beside these is how long it stands ready, and cooks nothing. */
const FOR_SERVICE = asWritten(
  'warm',
  'hot',
  'service',
  'serving',
  'buffet',
  'serve',
  'chafing',
  'carvery',
  'lamps',
  'party',
);

function keptAt(reading: HeatReading, step: Step, part: Part, limits: HoldingLimits): 'hot' | 'cold' | undefined {
  if (reading.role === 'food' || reading.role === 'liquid' || reading.node.unit === 'gas') return undefined;
  if (!says(step, KEEPING) || isFridgeInWrongUnit(reading, step)) return undefined;
  const { items } = step.sentence;
  const verb = keepingVerb(items, reading);
  if (verb === undefined) return undefined;
  const setOut = isOn(SET_OUT, verb);
  if (setOut ? !isOnShow(step, reading) && !isInFridge(step) : says(step, MAKING)) return undefined;
  const { low, high } = reading.celsius;
  if (high < BETWEEN_C) return high > limits.cold.celsius + SLACK_C ? 'cold' : undefined;
  if (!setOut && !HOT.has(verb)) return undefined;
  const roast = part.head.ingredients.some((i) => foodOf(i)?.class === 'meat') && anySays(part.steps, ROASTED);
  const least = roast ? limits.hot.roastC : limits.hot.celsius;
  if (low >= least - SLACK_C) return undefined;
  // Held for a time, to cook or pasteurise: judged by its published times.
  const cooking =
    !setOut && step.times.some((t) => t.node.start > reading.node.end) && low >= 50 && !says(step, FOR_SERVICE);
  return cooking ? undefined : 'hot';
}

/** `Leave to set in the wine fridge at 12 C`: what should be cold. */
const IN_FRIDGE = /\bin (?:the|a|your) (?:\w+ )?(?:fridge|refrigerator|chiller|walk-in|icebox|cool box|cooler) at;/;
const FRIDGES = asWritten('fridge', 'refrigerator', 'chiller', 'walk-in', 'icebox', 'box', 'cooler');
const isInFridge = (step: Step): boolean => says(step, FRIDGES) && IN_FRIDGE.test(inWords(step.sentence));

/** For longer than a platter may stand, or for nobody knows how long. */
const isOnShow = (step: Step, { celsius }: HeatReading): boolean =>
  (says(step, ON_SHOW) || (says(step, TILL_WANTED) && celsius.low >= BETWEEN_C)) &&
  !step.sentence.items.some((i) => i.kind === 'duration' && i.highMin <= SHORT_MIN);

function keepingVerb(items: readonly SentenceItem[], reading: HeatReading): string | undefined {
  for (let i = items.indexOf(reading.node) - 1, seen = 0; i >= 0 && seen < 10; i--, seen++) {
    const item = items[i];
    if (item?.kind === 'mark' && /[.;,:]/.test(item.mark)) return undefined;
    if (item?.kind === 'word' && isOn(KEEPING, item.word)) return lyingForm(item.word);
  }
  return undefined;
}
