import { isOnOwnLine } from '../../edits/list-line.ts';
import { listGrams } from '../../edits/set-amount.ts';
import { deleteLine, replaceSpan } from '../../edits/text-edit.ts';
import { fractionText, gramsText } from '../../measure/number-text.ts';
import { isPlain } from '../../notation/item-amounts.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { repeatsIn } from './repeats.ts';

interface Values {
  readonly name: string;
  readonly part: number;
  readonly first: Ingredient;
  readonly second: Ingredient;
}

export default defineCheck<Values>({
  code: 'repeated-ingredient',
  title: 'The same ingredient is listed twice',
  family: 'bookkeeping',
  severity: 'info',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `Two lines of one part's list name the same food, prepared in the same way, and no step takes them apart.

**Why it matters.** The cook weighs the first, ticks it off and never sees the second; or weighs it twice.

**What to do.** Make it one line and let the steps say the portions (\`60 g of the butter\`, \`the rest of the butter\`); or say how the second differs (\`20 g butter, melted\`).

**Silent** where the preparation, the note or the name differs, where each line is taken by a step of its own, and across parts. A warning where the amount is the same as well.`,
  *find(part) {
    for (const repeat of repeatsIn(part)) {
      const first = part.head.ingredients[repeat.first];
      const second = part.head.ingredients[repeat.second];
      const name = second?.node.name;
      if (first === undefined || second === undefined || name === undefined) continue;
      yield {
        at: { line: second.line, start: name.start, end: name.end },
        values: { name: second.name, part: part.index, first, second },
        // A line that stands there twice is a slip of the hand.
        ...(isSame(first, second) && { severity: 'warning' }),
      };
    }
  },
  say: ({ name, first, part }) => ({
    message: `The list has the ${name} above already: make it one line, or say how this one differs.`,
    related: [
      {
        at: { line: first.line, start: first.node.name?.start ?? 0, end: first.node.name?.end ?? 0, part },
        message: `The list first has the ${name} here.`,
      },
    ],
  }),
  fix: ({ name, part, first, second }, { document, recipe }) => {
    const base = recipe.partsAt[part] ?? 0;
    const gone = deleteLine(document, base + second.line);
    const a = first.node.amount;
    const b = second.node.amount;
    if (a?.kind !== 'measured' || b?.kind !== 'measured' || a.high !== undefined || b.high !== undefined) return [];
    const own = recipe.parts[part];
    if (own === undefined || !isOnOwnLine(own, first) || !isOnOwnLine(own, second)) return [];
    if (!isPlain(first.node) || !isPlain(second.node)) return [];
    if (a.unit?.symbol === b.unit?.symbol && a.counted?.text === b.counted?.text && a.sized?.text === b.sized?.text) {
      const sum = a.low.value + b.low.value;
      const written = fractionOf(sum, a.unit?.symbol);
      const edit = replaceSpan(base + first.line, a.low, written);
      return [
        {
          title: `List ${written} ${[a.unit?.symbol ?? a.sized?.text ?? a.counted?.text, name].join(' ').trim()} once`,
          effect: 'amounts',
          edits: [edit, gone],
        },
      ];
    }
    if (!first.weighed.known || !second.weighed.known) return [];
    const middle = (i: { low: number; high: number }) => (i.low + i.high) / 2;
    const listed = listGrams(recipe, part, first, middle(first.weighed.grams) + middle(second.weighed.grams));
    return listed === undefined
      ? []
      : [{ title: `List ${listed.written} ${name} once`, effect: 'amounts', edits: [...listed.edits, gone] }];
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  20 g      butter, melted\n  do Rub the butter into the oats.\n  do Brush with the melted butter.\n',
      'recipe Slab\n  80 g      butter\n  200 g     rolled oats\n  20 g      butter\n  do Rub the butter into the oats.\n  do Brush with the butter.\n',
    ],
    bad: [
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  20 g      butter\n# "butter" repeated-ingredient *: above already\n  do Rub the butter into the oats.\n',
        after: {
          'List 100 g butter once':
            'recipe Slab\n  200 g     rolled oats\n  100 g      butter\n  do Rub the butter into the oats.\n',
        },
      },
      'recipe Slab\n  1/4 cup   honey\n  200 g     rolled oats\n  1 tbsp    honey\n# "honey" repeated-ingredient *\n  do Warm the honey and stir in the oats.\n',
    ],
  },
});

function isSame({ node: { amount: a } }: Ingredient, { node: { amount: b } }: Ingredient): boolean {
  if (a?.kind !== 'measured' || b?.kind !== 'measured' || a.low.value !== b.low.value) return false;
  return (
    a.high?.value === b.high?.value &&
    a.unit?.symbol === b.unit?.symbol &&
    a.sized?.text === b.sized?.text &&
    a.counted?.text === b.counted?.text
  );
}

const fractionOf = (value: number, unit: string | undefined): string =>
  unit === 'g' || unit === 'ml' ? gramsText(value) : (fractionText(value, false) ?? gramsText(value));
