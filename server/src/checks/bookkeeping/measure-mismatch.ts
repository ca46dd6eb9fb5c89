import { replaceSpan } from '../../edits/text-edit.ts';
import type { FoodClass } from '../../food/food.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { dimensionOf } from '../../measure/unit.ts';
import { equalOf } from '../../notation/item-amounts.ts';
import { weighQuantity } from '../../recipe/list/line-weight.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import type { House } from '../house.ts';

interface Values {
  readonly name: string;
  readonly written: string;
  readonly saidG: Range;
  readonly knownG: Range;
  readonly typicalG: number;
  readonly why: string;
  /** By how much a house may fill otherwise. */
  readonly slack: number;
  readonly ingredient: Ingredient;
}

/** Beyond the food's own spread, a house may fill its cups this much otherwise (common practice, no source). */
const TOLERANCE = 1.35;
/** These lie in a cup much alike, however they are handled; of pieces and powders it is information. */
const ALIKE: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>([
  'flour',
  'starch',
  'sugar',
  'syrup',
  'fat',
  'oil',
  'milk',
  'cream',
  'egg',
  'water',
  'juice',
  'vinegar',
  'alcohol',
  'stock',
]);
/** So many times off, one unit stands for another, whatever lies in it (judgement: a cup is 16 tbsp). */
const UNIT = 5;
/** Spoons of a few grams are rounded further. */
const SPOON_TOLERANCE = 1.8;
const SMALL_G = 30;

export default defineCheck<Values>({
  code: 'measure-mismatch',
  title: 'The measure and the weight beside it do not agree',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'list',
  doubtsFigure: true,
  source: {
    kind: 'publication',
    title:
      'USDA National Nutrient Database for Standard Reference, release 26 (2013), household weights, and the sources of each food',
  },
  explain: `**What it computes.** A line such as \`1 cup = 240 g plain flour\` says what the house's own cup weighs. It is held against what the food book knows of that measure, with its spread: a cup of flour is 120 to 150 g, by how it is filled; 240 g is a cup of milk.

**Why it matters.** The weight is what is cooked with, so a slip in it goes into the formula, the label and the cost. Whoever cooks by the cup makes another dish.

**What to do.** Weigh the cup again, or look for the ingredient it was meant for.

It is a warning for flours, sugars, fats and liquids, and information for what lies in pieces or in flakes, if that is no five times off. **Silent** where the food or the measure is not known, within the known spread and a third beyond it (four fifths for spoons), and for counts and packages.`,
  *find(part, house) {
    for (const ingredient of part.head.ingredients) {
      const values = valuesOf(ingredient, house, part.head.source.lines[ingredient.line]?.text ?? '');
      const { amount } = ingredient.node;
      const equals = equalOf(ingredient.node);
      if (values === undefined || amount === undefined || equals === undefined) continue;
      const { saidG, knownG } = values;
      const isFar = saidG.high * UNIT < knownG.low || saidG.low > knownG.high * UNIT;
      const surely = isFar || ALIKE.has(ingredient.food?.class);
      yield {
        at: { line: ingredient.line, start: amount.start, end: equals.end },
        values,
        ...(!surely && { severity: 'info' as const }),
      };
    }
  },
  say: ({ name, written, saidG, knownG, typicalG, why }) => {
    const said = gramsText((saidG.low + saidG.high) / 2);
    const spread =
      knownG.high - knownG.low < 0.05 * typicalG
        ? `${gramsText(typicalG)} g`
        : `${gramsText(knownG.low)} to ${gramsText(knownG.high)} g`;
    return {
      message: `${written} of ${name} weighs ${spread}, and not ${said} g (${why}): weigh it again, or mend the measure.`,
      value: (saidG.low + saidG.high) / 2,
      unit: 'g',
      band: [knownG.low, knownG.high],
    };
  },
  work: ({ written, name, saidG, knownG, why, slack }) => [
    `Known: ${why}. Allowed beyond it, a factor of ${slack} either way: ${gramsText(knownG.low)} g ÷ ${slack} = ${gramsText(knownG.low / slack)} g to ${gramsText(knownG.high)} g × ${slack} = ${gramsText(knownG.high * slack)} g. Written for ${written} of ${name}: ${gramsText((saidG.low + saidG.high) / 2)} g.`,
  ],
  fix: ({ typicalG, ingredient }, _scene, at) => {
    const equals = equalOf(ingredient.node);
    const grams = gramsText(typicalG);
    return equals === undefined
      ? []
      : [{ title: `Write = ${grams} g`, effect: 'amounts', edits: [replaceSpan(at.line, equals, `${grams} g`)] }];
  },
  examples: {
    good: [
      'recipe Batter\n  2 cups = 260 g  plain flour\n  1 cup = 242 g  whole milk\n  do Whisk the milk into the flour and stand for 30 min.\n',
      'recipe Batter\n  1 cup = 120 g  plain flour\n  2 tbsp = 25 g  caster sugar\n  150 g     whole milk\n  do Whisk the milk into the flour and the sugar.\n',
    ],
    bad: [
      {
        text: 'recipe Batter\n  1 cup = 240 g  plain flour\n# "1 cup = 240 g" measure-mismatch *: not 240 g\n  300 ml    whole milk\n  do Whisk the milk into the flour and stand for 30 min.\n',
        after: {
          'Write = 125 g':
            'recipe Batter\n  1 cup = 125 g  plain flour\n  300 ml    whole milk\n  do Whisk the milk into the flour and stand for 30 min.\n',
        },
      },
      'recipe Nut mix\n  1 cup = 8 g  walnuts, chopped\n# "1 cup = 8 g" measure-mismatch *\n  300 g     rolled oats\n  do Stir the walnuts into the oats.\n',
      'recipe Syrup\n  1 tbsp = 60 g  honey\n# "1 tbsp = 60 g" measure-mismatch *\n  200 g     rolled oats\n  do Warm the honey and stir in the oats.\n',
    ],
  },
});

function valuesOf(ingredient: Ingredient, house: House, text: string): Values | undefined {
  const { node, match } = ingredient;
  const { amount } = node;
  const equals = equalOf(node);
  if (amount?.kind !== 'measured' || equals === undefined || match.kind !== 'food') return undefined;
  if (amount.unit === undefined || equals.unit === undefined) return undefined;
  if (dimensionOf(amount.unit.symbol) !== 'volume' || dimensionOf(equals.unit.symbol) !== 'mass') return undefined;
  const known = weighQuantity(amount.quantity, match, house.world);
  const said = weighQuantity(equals.quantity, match, house.world);
  if (!known.known || !said.known) return undefined;
  const typicalG = known.typical ?? (known.grams.low + known.grams.high) / 2;
  const slack = known.grams.high < SMALL_G ? SPOON_TOLERANCE : TOLERANCE;
  if (said.grams.high * slack >= known.grams.low && said.grams.low <= known.grams.high * slack) return undefined;
  return {
    name: ingredient.name,
    written: text.slice(amount.start, amount.end),
    saidG: said.grams,
    knownG: known.grams,
    typicalG,
    why: known.reason.words,
    slack,
    ingredient,
  };
}
