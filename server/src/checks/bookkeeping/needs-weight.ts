import { keepColumn } from '../../edits/amount-text.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import type { FoodClass } from '../../food/food.ts';
import type { CountWord } from '../../measure/count-words.ts';
import { gramsText, percentText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { amountAsWritten, equalOf, placesOf } from '../../notation/item-amounts.ts';
import type { MeasuredNode } from '../../notation/tree.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
  readonly amount: MeasuredNode;
  readonly grams?: Range;
  readonly typicalG?: number;
  /** Why it has no weight. */
  readonly why?: string;
  readonly text: string;
}

/** Half of the spread, as a share of the middle, from which a measure is no amount. */
const SPREAD = 0.25;
/** The same for what is measured packed or loose, where neither is said. */
const PACKING = 0.15;
/** Below this nobody weighs. */
const LEAST_ML = 60;
const LEAST_G = 25;

/** What such a thing often holds, for the example in the message: the label has the figure. Common practice, no source. */
const HOLDS: Partial<Record<CountWord, string>> = { bottle: '750 ml', can: '400 g', tin: '400 g', jar: '400 g' };
const holdsText = ({ quantity: { count } }: MeasuredNode): string =>
  (count === undefined ? undefined : HOLDS[count]) ?? '60 g';

export default defineCheck<Values>({
  code: 'needs-weight',
  title: 'A measure that packs, without its weight',
  family: 'bookkeeping',
  severity: 'info',
  scope: 'list',
  source: {
    kind: 'publication',
    title: 'USDA National Nutrient Database for Standard Reference, release 26 (2013), household weights by form',
  },
  explain: `**What it computes.** What a cup, or a piece, of the food weighs at its lightest and at its heaviest: by how it is cut, packed or grown. Where that is more than ${SPREAD * 100} % to either side (${PACKING * 100} % for what is sold by the packed cup, such as brown sugar), or where nobody has weighed that measure at all, the measure is no amount.

**Why it matters.** A cup of spinach is 30 g of leaves or 180 g wilted; a recipe tested with one fails with the other, and its composition is not known.

**What to do.** Write the weight beside it: \`1 cup = 60 g grated cheddar\`; or how it is measured (\`packed\`, \`chopped\`).

**Silent** under ${LEAST_ML} ml and ${LEAST_G} g, for spices, salt and what goes in to taste, for pinches and spoons, and where the weight stands beside it.`,
  *find(part) {
    for (const ingredient of part.head.ingredients) {
      const { amount, bought } = ingredient.node;
      if (
        amount?.kind !== 'measured' ||
        equalOf(ingredient.node) !== undefined ||
        bought !== undefined ||
        ingredient.match.kind !== 'food'
      )
        continue;
      if (ingredient.percent !== undefined) continue;
      const values = valuesOf(ingredient, amount, part.head.source.lines[ingredient.line]?.text ?? '');
      if (values !== undefined) yield { at: { line: ingredient.line, start: amount.start, end: amount.end }, values };
    }
  },
  say: ({ name, grams, why, text, amount }) => {
    const written = amountAsWritten(text, amount).replace(/\s+/g, ' ');
    return {
      message:
        grams === undefined
          ? `What ${written} of ${name} weighs is not known (${why}): write beside it what it weighs or holds, as in \`${written} = ${holdsText(amount)}\`.`
          : `${written} of ${name} is anything from ${gramsText(grams.low)} to ${gramsText(grams.high)} g: write the weight beside it.`,
      ...(grams !== undefined && { value: (grams.high - grams.low) / 2, unit: 'g' }),
    };
  },
  work: ({ grams, typicalG }) => {
    if (grams === undefined) return [];
    const { low, high } = grams;
    const middle = (low + high) / 2;
    const usual = typicalG === undefined ? '' : ` The likeliest is ${gramsText(typicalG)} g.`;
    return [
      `From ${gramsText(low)} to ${gramsText(high)} g is ${gramsText(middle)} g, give or take ${gramsText((high - low) / 2)} g: ${percentText((high - low) / 2 / middle)}.${usual}`,
    ];
  },
  fix: ({ typicalG, amount, text }, _scene, at) => {
    if (typicalG === undefined) return [];
    const written = ` = ${gramsText(typicalG)} g`;
    const { end: last } = placesOf(text, amount).front;
    const end = { start: last, end: last };
    return [
      {
        title: `Write = ${gramsText(typicalG)} g`,
        effect: 'amounts',
        edits: [replaceSpan(at.line, end, written), ...keepColumn(at.line, text, last, written.length)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Pie\n  1 cup = 110 g  cheddar, grated\n  2 cups = 250 g  plain flour\n  do Mix the cheddar with the flour.\n',
      'recipe Pie\n  2 cups    plain flour\n  1 cup     whole milk\n  1 tsp     thyme\n  do Mix the flour with the milk and the thyme.\n',
    ],
    bad: [
      'recipe Salad\n  4 cups    spinach\n# "4 cups" needs-weight *: anything from\n  30 g      olive oil\n  do Toss the spinach in the oil.\n',
      'recipe Slab\n  1 cup     light brown sugar\n# "1 cup" needs-weight *: 150 to 225 g\n  200 g     rolled oats\n  do Mix the sugar with the oats.\n',
      'recipe Salad\n  2 handfuls beef mince\n# "2 handfuls" needs-weight: not known\n  30 g      olive oil\n  do Fry the beef mince in the oil until it reads 71 C.\n',
    ],
  },
});

const UNWEIGHED: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>([
  'spice',
  'salt',
  'dried herb',
  'flavouring',
  'water',
  'leavening',
  'yeast',
]);

function valuesOf(ingredient: Ingredient, amount: MeasuredNode, text: string): Values | undefined {
  const { weighed, food, name } = ingredient;
  if (UNWEIGHED.has(food?.class)) return undefined;
  const unit = amount.unit?.symbol;
  const ml =
    unit !== undefined && dimensionOf(unit) === 'volume' ? (baseOf(unit, 'us') ?? 0) * amount.quantity.high : undefined;
  if (ml === undefined || ml < LEAST_ML) {
    // A count that nobody has weighed leaves a hole; one that varies is what cooks expect.
    return ml === undefined && !weighed.known && unit === undefined
      ? { name, amount, text, why: short(weighed.why) }
      : undefined;
  }
  if (!weighed.known) return { name, amount, text, why: short(weighed.why) };
  const { low, high } = weighed.grams;
  // The range that is written is meant.
  const own = amount.quantity.high > 0 ? amount.quantity.low / amount.quantity.high : 1;
  const packs = food?.measures.some((m) => m.form === 'packed') ?? false;
  const most = packs ? PACKING : SPREAD;
  if (high < LEAST_G || high * own - low <= (high * own + low) * most) return undefined;
  const typicalG = weighed.typical ?? (low + high) / 2;
  return { name, amount, text, grams: weighed.grams, ...(amount.high === undefined && { typicalG }) };
}

const short = (why: string): string => why.replace(/:.*$/, '');
