import { gramsText, percentText } from '../../measure/number-text.ts';
import type { PartHead } from '../../recipe/part.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { defineCheck } from '../check.ts';
import { gramsOf, ingredientPlace } from '../formula/band.ts';
import { sums, sumTable } from '../sum-table.ts';
import { CAUTION } from './limits.ts';
import { COVERING, isButter, isOil, isSour, keptUnderOil, MOST_DAYS, OILY, SOUR } from './under-oil.ts';

interface Values {
  readonly name: string;
  readonly days: number | undefined;
  readonly fat: 'oil' | 'fat';
  readonly head: PartHead;
}

export default defineCheck<Values>({
  code: 'garlic-in-oil',
  title: 'Garlic, herbs or vegetables are kept in oil',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  source: {
    kind: 'from memory',
    title:
      'US extension services and CDC on infused oils: at 5 °C or below and within 4 days, or frozen, or acidified to pH 4.6 first',
  },
  explain: `**What it computes.** A part that is mostly oil, or covered in it, or butter or other fat that is said to be kept out of the fridge for a day or more, with fresh garlic, chillies, herbs, mushrooms or vegetables in it, without vinegar or lemon juice; and what its steps say of keeping it.

**Why it matters.** Oil shuts the air out, garlic brings spores of Clostridium botulinum from the soil, and at room temperature they make their poison without smell or taste. Heating the oil does not kill them.

**What to do.** Make it for the day; or keep it in the fridge and use it within ${MOST_DAYS} days; or freeze it; or use dried garlic and herbs.

**Silent** where the steps keep it cold for ${MOST_DAYS} days or less, freeze it or use it at once, for dried herbs and spices, and for dressings with their share of vinegar or lemon juice.`,
  *find(part) {
    const kept = keptUnderOil(part);
    if (kept === undefined) return;
    const { solid, days, fat } = kept;
    const at = ingredientPlace(solid);
    if (at !== undefined) yield { at, values: { name: solid.name, days, fat, head: part.head } };
  },
  say: ({ name, days, fat }) => ({
    message: `${days === undefined ? `The ${fat} with the ${name} is kept, and not in the cold` : `${days} days are too long for ${name} in oil`}: botulism grows there unseen. Keep it at 5 °C, 41 °F, and use it within ${MOST_DAYS} days, or freeze it. ${CAUTION}`,
  }),
  work: ({ head, fat }) => {
    const isShutOff = fat === 'oil' ? isOil : isButter;
    const known = head.ingredients.filter((i) => foodOf(i) !== undefined);
    const rows = known.map((i) => {
      const grams = gramsOf(i);
      return { name: i.name, numbers: [grams, isShutOff(i) ? grams : 0, isSour(i) ? grams : 0] };
    });
    const [whole = 0, oil = 0, sour = 0] = sums(rows);
    if (whole <= 0) return [];
    return [
      ...sumTable(['ingredient', 'weighs, g', `${fat}, g`, 'vinegar or lemon, g'], rows),
      '',
      `${fat === 'oil' ? 'Oil' : 'Fat'}: ${gramsText(oil)} g ÷ ${gramsText(whole)} g = ${percentText(oil / whole)}, and more than ${percentText(OILY)} shuts the air out, ${percentText(COVERING)} where it covers the rest. Vinegar and sour juice: ${percentText(sour / whole)}, and from ${percentText(SOUR)} it is taken for sour enough.`,
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
    ],
  },
});
