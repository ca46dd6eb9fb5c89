import { trimmed } from '../../measure/number-text.ts';
import { amountAsWritten, equalOf } from '../../notation/item-amounts.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { portionRows } from '../printed/portion-rows.ts';

interface Values {
  readonly written: string;
  readonly name: string;
  readonly value: number;
  /** Past which it is; absent where it is a part that nobody measures. */
  readonly edge?: number;
  readonly unit: string;
}

export default defineCheck<Values>({
  code: 'amount-implausible',
  title: 'An amount that nobody measures out so',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'list',
  source: { kind: 'publication', title: 'about 300 printed lines: 1/8 to 4 tsp, 1/2 to 6 tbsp, 1/4 cup and more' },
  explain: `**What it computes.** Pieces, spoons and cups of a list, with a point: whether they are halves, thirds, quarters or eighths. Spoons and cups that are less than any holds, or so many that a cook takes the next measure. More than any kitchen weighs out.

**Why it matters.** A point or a digit has slipped, or one unit stands for another.

**What to do.** Mend the amount, or write the weight beside it.

**Silent** for ranges and sums, and where the same amount stands there in another measure.`,
  *find(part) {
    if (part.head.nominal) return;
    for (const ingredient of part.head.ingredients) {
      const values = valuesOf(ingredient, part.head.source.lines[ingredient.line]?.text ?? '');
      const { amount } = ingredient.node;
      if (values !== undefined && amount !== undefined)
        yield { at: { line: ingredient.line, start: amount.start, end: amount.end }, values };
    }
  },
  say: ({ written, name, value, edge, unit }) => ({
    message:
      edge === undefined
        ? `${written} of ${name} is no part that a cook can cut or measure: mend it, or write a half, a third, a quarter, or the weight.`
        : `${written} of ${name}: ${value > edge ? 'more' : 'less'} than ${trimmed(edge, 2)} ${unit} is hardly ever measured out so. Mend the figure or the unit.`,
    value,
    unit: unit === '' ? '1' : unit,
    ...(edge !== undefined && { band: value > edge ? [null, edge] : [edge, null] }),
  }),
  examples: {
    good: [
      'recipe Omelette\n  serves  1\n  2.5       eggs\n  1/8 tsp   salt\n  0.33 tbsp  butter\n  do Whisk the eggs with the salt and fry in the butter over high heat for 2 min until set.\n',
      'recipe Boiled carrots\n  400 g     carrots\n  1 tsp     salt\n  do Boil the carrots with the salt for 12 min until soft.\n',
    ],
    bad: [
      'recipe Boiled carrots\n  400 g     carrots\n  0.05 tsp  salt\n# ^^^^^^^^ amount-implausible: less than 0.12 tsp\n  do Boil the carrots with the salt for 12 min until soft.\n',
      'recipe Omelette\n  serves  1\n  0.3       eggs\n# ^^^ amount-implausible: 0.3 of eggs is no part\n  20 tbsp   butter\n# ^^^^^^^ amount-implausible: more than 15 tbsp\n  do Whisk the eggs and fry in the butter over high heat for 2 min until set.\n',
    ],
  },
});

/** Parts of one that are cut or measured, and how near to one it is written. */
const PARTS = [8, 3];
const NEAR = 0.021;

function valuesOf(ingredient: Ingredient, text: string): Values | undefined {
  const { node, name, weighed, percent, food } = ingredient;
  const { amount } = node;
  if (amount?.kind !== 'measured' || percent !== undefined || equalOf(node) !== undefined) return undefined;
  const { quantity, low, high, unit } = amount;
  const said = { written: amountAsWritten(text, amount), name };
  const weight = portionRows().find(
    ({ when, of }) => when === 'weighed' && (of.length === 0 || of.includes(food?.class ?? '')),
  );
  if (weight !== undefined && weighed.known && weighed.grams.low > weight.high)
    return { ...said, value: weighed.grams.low, edge: weight.high, unit: 'g' };
  if (high !== undefined || quantity.plus !== undefined || quantity.upTo !== undefined || quantity.bias !== undefined)
    return undefined;
  const row = portionRows().find(({ when, of }) => when === 'measured' && of.includes(unit?.symbol ?? ''));
  if (unit !== undefined && row === undefined) return undefined;
  const value = quantity.low;
  const edge = row && (value > row.high ? row.high : value < row.low ? row.low : undefined);
  if (edge !== undefined) return { ...said, value, edge, unit: unit?.symbol ?? '' };
  const isPart = PARTS.some((of) => Math.abs(value * of - Math.round(value * of)) <= NEAR * of);
  return low.style === 'decimal' && !isPart ? { ...said, value, unit: unit?.symbol ?? '' } : undefined;
}
