import { replaceSpan } from '../../edits/text-edit.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { bothDegrees, ownDegrees, scaleIn } from '../../recipe/journey/degrees.ts';
import { notedStays } from '../../recipe/journey/noted.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { type TooWarm, tooWarm, tooWarmByNote } from '../by-state/too-warm.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain, oncePerPlace } from '../found-again.ts';
import { temperatureAt } from '../temperature-at.ts';
import { CAUTION, type HoldingLimits, holdingLimits } from './limits.ts';

interface Values {
  readonly celsius: number;
  /** As it is written. */
  readonly node: TemperatureNode | undefined;
  readonly kind: 'hot' | 'cold';
  readonly limits: HoldingLimits;
}

/** Below this, food that is kept is meant to be cold; above, hot. */
const BETWEEN_C = 25;

const placed = (
  { kind, level, start, end, celsius }: TooWarm,
  at: { readonly part?: number; readonly line: number },
  node: TemperatureNode | undefined,
  limits: HoldingLimits,
): readonly Found<Values>[] =>
  kind !== 'figure' || celsius === undefined
    ? []
    : [
        {
          at: { ...at, start, end },
          ...severityAt(level),
          values: { celsius: celsius.low, node, kind: celsius.high < BETWEEN_C ? 'cold' : 'hot', limits },
        },
      ];

const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const limits = holdingLimits(house.foodSafety);
    return tooWarm(house, journey).flatMap((each) => {
      const { part, line } = each.stay;
      const { start, end } = each;
      return placed(each, { part, line }, temperatureAt(journey, { part, line, start, end }), limits);
    });
  }),
);

const foundInNotes = foundAgain<Values>((recipe, house) => {
  const limits = holdingLimits(house.foodSafety);
  const all = notedStays(recipe).flatMap((noted) => {
    const each = tooWarmByNote(house, noted);
    return each === undefined ? [] : placed(each, { line: noted.line }, undefined, limits);
  });
  return oncePerPlace(all);
});

export default defineCheck<Values>({
  code: 'held-too-warm',
  title: 'Food is kept neither hot nor cold enough',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: { kind: 'publication', title: 'FDA Food Code 2022, 3-501.16; USDA FSIS, danger zone (for consumers)' },
  explain: `**What it computes.** Where everything lies after each step, and at what temperature the steps say it is kept there: hot food at 57 °C or above (60 °C by the home rule; a roast from 54 °C), cold food at 5 °C or below, for whatever is perishable by then. A figure of which only what lies there tells that it is the place's counts too; one in a fridge that can only be the other scale is left to \`implausible-temperature\`.

**Why it matters.** Between the two everything that spoils food and most that sickens people grows, from twice an hour to four times.

**What to do.** Hold it hotter, or cool it fast and reheat it: \`hold at 60 C\`, \`chill at 4 C\`.

**Silent** for doughs that prove, ferments, cheese and yoghurt in the making, for what is held at a temperature until it is cooked (a water bath, a roast by its published time), and for what keeps by itself.`,
  find: ({ recipe, house }) => {
    const noted = foundInNotes(recipe, house);
    const all = found(recipe, house);
    return noted.length === 0 ? all : [...all, ...noted];
  },
  say: ({ celsius, kind, limits, node }) => {
    const rule = limits[kind];
    const both = bothDegrees(rule, scaleIn(celsius, node));
    const advice = kind === 'hot' ? `hot food is held at ${both}, or above` : `cold food is kept at ${both}, or below`;
    return {
      message: `${ownDegrees(celsius, node)} is no temperature to keep this at: ${advice}. ${CAUTION}`,
      value: celsius,
      unit: 'C',
      band: kind === 'hot' ? [rule.celsius, null] : [null, rule.celsius],
      source: `${limits.title}, ${rule.section}`,
    };
  },
  fix: ({ node, kind, limits }, _scene, at) => {
    if (node === undefined || node.unit === 'gas') return [];
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
