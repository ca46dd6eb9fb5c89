import type { FoodClass } from '../../food/food.ts';
import { gramsText, percentText } from '../../measure/number-text.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { PartHead } from '../../recipe/part.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { asWritten, says, wordList } from '../../recipe/step-words.ts';
import { baseForm } from '../../recipe/verbs.ts';
import { defineCheck } from '../check.ts';
import { gramsOf } from '../formula/band.ts';
import { sums, sumTable } from '../sum-table.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  readonly days: number | undefined;
  readonly head: PartHead;
}

/** Days in the fridge that extension services allow. */
const MOST_DAYS = 4;
const OILY = 0.4;
/** Vinegar or lemon juice from this share on keeps the pH down (common practice, no source). */
const SOUR = 0.08;

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
  explain: `**What it computes.** A part that is mostly oil with fresh garlic, chillies, herbs, mushrooms or vegetables in it, without vinegar or lemon juice; and what its steps say of keeping it.

**Why it matters.** Oil shuts the air out, garlic brings spores of Clostridium botulinum from the soil, and at room temperature they make their poison without smell or taste. Heating the oil does not kill them.

**What to do.** Make it for the day; or keep it in the fridge and use it within ${MOST_DAYS} days; or freeze it; or use dried garlic and herbs.

**Silent** where the steps keep it cold for ${MOST_DAYS} days or less, freeze it or use it at once, for dried herbs and spices, and for dressings with their share of vinegar or lemon juice.`,
  *find(part) {
    if (!part.head.ingredients.some((i) => i.food?.class === 'oil')) return;
    const solid = part.head.ingredients.find(isSolid);
    if (solid?.node.name === undefined || !isOily(part)) return;
    for (const step of part.steps) {
      const kept = keptFor(step);
      if (kept === undefined) continue;
      const { start, end } = solid.node.name;
      yield {
        at: { line: solid.line, start, end },
        values: { name: solid.name, days: kept === 'warm' ? undefined : kept, head: part.head },
      };
      return;
    }
  },
  say: ({ name, days }) => ({
    message: `${days === undefined ? `The oil with the ${name} is kept, and not in the cold` : `${days} days are too long for ${name} in oil`}: botulism grows there unseen. Keep it at 5 °C, 41 °F, and use it within ${MOST_DAYS} days, or freeze it. ${CAUTION}`,
  }),
  work: ({ head }) => {
    const rows = head.ingredients.map((i) => {
      const grams = gramsOf(i);
      return { name: i.name, numbers: [grams, isOil(i) ? grams : 0, isSour(i) ? grams : 0] };
    });
    const [whole = 0, oil = 0, sour = 0] = sums(rows);
    if (whole <= 0) return [];
    return [
      ...sumTable(['ingredient', 'weighs, g', 'oil, g', 'vinegar or lemon, g'], rows),
      '',
      `Oil: ${gramsText(oil)} g ÷ ${gramsText(whole)} g = ${percentText(oil / whole)}, and more than ${percentText(OILY)} shuts the air out. Vinegar and sour juice: ${percentText(sour / whole)}, and from ${percentText(SOUR)} it is taken for sour enough.`,
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

const FRESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'mushroom', 'leafy herb']);
const DRY = /\b(?:dried|dry|powder|flakes|granules)\b/i;

function isSolid({ food, node, free }: Ingredient): boolean {
  return (
    food !== undefined &&
    !free &&
    FRESH.has(food.class) &&
    !DRY.test([node.name?.text, node.preparation?.text, food.name].join(' '))
  );
}

const isOil = ({ food }: Ingredient): boolean => food?.class === 'oil';

const isSour = ({ food }: Ingredient): boolean =>
  food !== undefined &&
  (food.class === 'vinegar' || (food.class === 'juice' && food.roles.includes('acid')) || /lemon|lime/.test(food.name));

function isOily(part: Part): boolean {
  let whole = 0;
  let oil = 0;
  let sour = 0;
  for (const ingredient of part.head.ingredients) {
    if (ingredient.food === undefined) continue;
    const grams = gramsOf(ingredient);
    whole += grams;
    if (isOil(ingredient)) oil += grams;
    else if (isSour(ingredient)) sour += grams;
  }
  return whole > 0 && oil > whole * OILY && sour < whole * SOUR;
}

const KEEPS: ReadonlySet<string> = new Set([
  'keep',
  'keeps',
  'store',
  'bottle',
  'jar',
  'seal',
  'mature',
  'steep',
  'infuse',
  'stand',
  'leave',
  'cellar',
]);
const KEEPING = wordList((word) => KEEPS.has(word) || KEEPS.has(baseForm(word)));
const COLD = asWritten('fridge', 'refrigerator', 'refrigerate', 'chill', 'chilled', 'cold');
const FROZEN = asWritten('freeze', 'freezer', 'frozen');
const PLACES = asWritten(
  'cupboard',
  'larder',
  'pantry',
  'shelf',
  'cellar',
  'sill',
  'room',
  'dark',
  'month',
  'months',
  'weeks',
  'year',
);
const DAY_MIN = 1440;

/** `warm` where it is kept out of the cold, or the days it is kept in it when they are too many. */
function keptFor(step: Step): 'warm' | number | undefined {
  const { items } = step.sentence;
  if (says(step, FROZEN) || !says(step, KEEPING)) return undefined;
  const longest = Math.max(0, ...items.map((i) => (i.kind === 'duration' ? i.highMin : 0))) / DAY_MIN;
  const cold = says(step, COLD) || step.heat.some((h) => h.celsius.high <= 5.5);
  if (cold) return longest > MOST_DAYS ? Math.round(longest) : undefined;
  return says(step, PLACES) || longest >= 1 ? 'warm' : undefined;
}
