import { gramsText, percentText, trimmed } from '../../measure/number-text.ts';
import { middle } from '../../measure/quantity.ts';
import type { Body } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isOf } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { addedAcidG } from '../../recipe/measures/mixture.ts';
import { COVERING, keptInOil, MOST_DAYS, OILY, SOUR } from '../by-state/in-oil.ts';
import { type Kept, wordsOf } from '../by-state/kept.ts';
import { overTold } from '../by-state/over-journeys.ts';
import { membersIn } from '../by-state/spoils.ts';
import { defineCheck, type Found } from '../check.ts';
import { sums, sumTable } from '../sum-table.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  readonly fat: 'oil' | 'fat';
  readonly how: Kept['how'];
  /** In the cold. */
  readonly days: number;
  /** Where and for how long, in the words of the step; empty where nobody says. */
  readonly words: string;
  readonly asked: boolean;
  readonly body: Body;
}

const MIN_A_DAY = 1440;

const foundOn = (journey: Journey, isTold: boolean): readonly Found<Values>[] =>
  keptInOil(journey).map(({ body, solid, part, fat, kept, asked }) => {
    const { start, end } = solid.nameNode;
    return {
      at: { part, line: solid.line, start, end },
      ...(asked ? { severity: 'info' as const } : isTold && { severity: 'warning' as const }),
      values: {
        name: solid.name,
        fat,
        // Longer than the cold allows, wherever it lies.
        how: kept.sure === 'unread' && kept.how === 'warm' && !asked ? 'cold' : kept.how,
        days: Math.round(kept.minutes.high / MIN_A_DAY),
        words: isTold ? 'by the note' : wordsOf(journey, kept),
        asked,
        body,
      },
    };
  });

const found = overTold(foundOn);

/** A sentence without its end, of how it is kept. */
function keptText({ name, fat, how, days, words, asked }: Values): string {
  const it = `The ${fat} with the ${name} is`;
  if (how === 'cold') return `${days} days are too long for ${name} in ${fat}`;
  if (how === 'put by') return `${it} put by, and no step says how cold it is kept`;
  const said = words === '' ? '' : ` (${words})`;
  return asked
    ? `${it} kept${said}, and nothing tells that it is cold there`
    : `${it} kept${said}, and not in the cold`;
}

export default defineCheck<Values>({
  code: 'garlic-in-oil',
  title: 'Garlic, herbs or vegetables are kept in oil',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'University of Idaho Extension 2013: in the refrigerator, no more than 4 days; Oklahoma State University Extension: in 3 % citric acid first',
  },
  explain: `**What it computes.** What lies together by the steps, and is mostly oil, or laid in it, with fresh garlic, chillies, herbs, mushrooms or vegetables in it and without vinegar or lemon juice enough; and how it is kept in the end: where, for how long, or closed up with no word of it. Butter and other fat count where they are said to be kept out of the fridge for a day or more. What lies in a place that nobody knows, for no longer than the cold allows, is asked about (information).

**Why it matters.** Oil shuts the air out, garlic brings spores of Clostridium botulinum from the soil, and at room temperature they make their poison without smell or taste. Heating the oil does not kill them.

**What to do.** Make it for the day; or keep it in the fridge and use it within ${MOST_DAYS} days; or freeze it; or use dried garlic and herbs.

**Silent** where the steps keep it cold for ${MOST_DAYS} days or less, freeze it or use it at once, for dried herbs and spices, and for dressings with their share of vinegar or lemon juice.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: (values) => ({
    message: `${keptText(values)}: botulism grows there unseen. Keep it at 5 °C, 41 °F, and use it within ${MOST_DAYS} days, or freeze it. ${CAUTION}`,
  }),
  work: ({ body, fat }, { recipe }) => {
    const known = membersIn(recipe, body).filter(({ ingredient }) => foodOf(ingredient) !== undefined);
    const rows = known.map(({ member, ingredient }) => {
      const grams = gramsOf(ingredient) * middle(member.share);
      return {
        name: ingredient.name,
        numbers: [grams, isOf(foodOf(ingredient), 'fat') ? grams : 0, addedAcidG(ingredient, grams)],
      };
    });
    const [whole = 0, shutting = 0, acid = 0] = sums(rows);
    if (whole <= 0) return [];
    return [
      ...sumTable(['ingredient', 'weighs, g', `${fat}, g`, 'acid that is added, g'], rows),
      '',
      `${fat === 'oil' ? 'Oil' : 'Fat'}: ${gramsText(shutting)} g ÷ ${gramsText(whole)} g = ${percentText(shutting / whole)}, and more than ${percentText(OILY)} shuts the air out, ${percentText(COVERING)} where the rest is laid in it. Acid of vinegar and sour juice: ${trimmed((acid / whole) * 100, 2)} %, and from ${trimmed(SOUR * 100, 1)} % it is taken for sour enough.`,
    ];
  },
  examples: {
    good: [
      'recipe Garlic oil\n  300 g     olive oil\n  40 g      garlic, peeled\n  do Cook the garlic in the oil over a low heat for 20 min.\n  do Cool over ice, keep at 4 C and use within 3 d.\n',
      'recipe Pepper oil\n  300 g     sunflower oil\n  20 g      chilli flakes\n  do Warm the oil with the chilli flakes to 110 C.\n  do Bottle and keep in a cupboard.\n',
    ],
    bad: [
      'recipe Garlic oil\n  300 g     olive oil\n  40 g      garlic, peeled\n# "garlic" garlic-in-oil: not in the cold\n  do Cook the garlic in the oil over a low heat for 20 min.\n  do Bottle, and keep in a cool cupboard for a month.\n',
      'recipe Herb oil\n  300 g     olive oil\n  40 g      basil\n# "basil" garlic-in-oil: 14 days\n  do Blend the basil with the oil.\n  do Keep in the fridge for 14 d.\n',
      'recipe Rosemary oil\n  500 g     olive oil\n  20 g      rosemary\n# "rosemary" garlic-in-oil\n  do Put the rosemary in a jar, pour over the oil and steep on a sunny sill for 10 d.\n',
      'recipe Pasta and sauce\n\npart sauce\n  60 g      basil\n# "basil" garlic-in-oil warning: by the note\n  120 g     olive oil\n  do Pound the basil with the oil.\n  note Keeps in the larder for a month.\n\npart dish\n  400 g     dried pasta\n  do Boil the pasta for 10 min and toss with the sauce.\n',
    ],
  },
});
