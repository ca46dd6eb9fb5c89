import { setGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { LedgerEntry, TakenUse } from '../../recipe/ledger.ts';
import { defineCheck, type Fix } from '../check.ts';

interface Values {
  readonly name: string;
  readonly use: TakenUse;
  readonly entry: LedgerEntry;
  readonly part: number;
  readonly wholeG: number | undefined;
}

export default defineCheck<Values>({
  code: 'overdrawn-amount',
  title: 'More is used in the steps than the list provides',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step takes an amount of an ingredient that is not there any more: an earlier step used it, all or in part. A mention without a portion (\`the butter\`) takes all that is left.

Say \`most of the butter\` or \`100 g of the butter\` in the earlier step, or list more. Silent where an earlier portion is vague (\`a little of the\`), and for rounding up to 2 %.`,
  *find(part) {
    for (const entry of part.ledger) {
      const use = entry.uses.find((u) => u.over);
      if (use === undefined || entry.ingredient.free) continue;
      const { weighed } = entry.ingredient;
      const wholeG = weighed.known ? (weighed.grams.low + weighed.grams.high) / 2 : undefined;
      const { start, end } = use.mention.whole;
      yield {
        at: { line: use.line, start, end, part: use.part },
        values: { name: entry.ingredient.name, use, entry, part: part.index, wholeG },
      };
    }
  },
  say: ({ name, use, entry, part, wholeG }) => {
    const left = use.before.high;
    const has =
      left <= 0.02
        ? 'none is left'
        : wholeG === undefined
          ? `only ${Math.round(left * 100)} % is left`
          : `only ${gramsText(left * wholeG)} g is left`;
    const wanted = use.taken.low > 0 && wholeG !== undefined ? ` ${gramsText(use.taken.low * wholeG)} g of` : '';
    const listed = entry.ingredient.node.name;
    return {
      message: `This step takes${wanted} the ${name}, but ${has}: say less in an earlier step, or list more.`,
      related: [
        {
          at: { line: entry.ingredient.line, start: listed?.start ?? 0, end: listed?.end ?? 0, part },
          message: `The ${name} is listed here.`,
        },
      ],
    };
  },
  fix: ({ name, use, entry, part, wholeG }, { recipe }) => {
    const fixes: Fix[] = [];
    const first = entry.uses.find((u) => u.mention.portion.kind === 'plain' && u !== use);
    if (first !== undefined && use.mention.portion.kind === 'rest') {
      const line = (recipe.partsAt[first.part] ?? 0) + first.line;
      const { start } = first.mention.whole;
      fixes.push({
        title: `Write \`most of the ${name}\` in the earlier step`,
        effect: 'words',
        edits: [replaceSpan(line, { start, end: first.mention.start }, 'most of the ')],
      });
    }
    const missing = use.taken.low - use.before.high;
    if (
      wholeG !== undefined &&
      missing > 0 &&
      entry.ingredient.node.amount?.kind === 'measured' &&
      use.mention.portion.kind === 'amount'
    ) {
      const line = (recipe.partsAt[part] ?? 0) + entry.ingredient.line;
      const change = setGrams({ ...recipe, parts: [] }, part, entry.ingredient, wholeG * (1 + missing));
      const all = change?.edits.filter((e) => e.start.line === line) ?? [];
      if (change !== undefined && all.length > 0) {
        const earlier = entry.uses.filter((u) => u !== use && u.mention.portion.kind === 'plain');
        const named = earlier.map((u) => {
          const at = (recipe.partsAt[u.part] ?? 0) + u.line;
          const taken = gramsText((u.before.high - u.taken.low === 0 ? u.taken.low : u.before.high) * wholeG);
          return replaceSpan(at, { start: u.mention.whole.start, end: u.mention.start }, `${taken} g of the `);
        });
        fixes.push({ title: `List ${change.written} ${name}`, effect: 'amounts', edits: [...all, ...named] });
      }
    }
    return fixes;
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub 70 g of the butter into the oats.\n  do Grease the pan with 10 g of the butter.\n',
    ],
    bad: [
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n  do Brush the pan with 10 g of the butter.\n# "10 g of the butter" overdrawn-amount *: none is left\n',
        after: {
          'List 90 g butter':
            'recipe Slab\n  200 g     rolled oats\n  90 g      butter\n  do Rub 80 g of the butter into the oats.\n  do Brush the pan with 10 g of the butter.\n',
        },
      },
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n  do Brush with the rest of the butter.\n# "the rest of the butter" overdrawn-amount *\n',
        after: {
          'Write `most of the butter` in the earlier step':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub most of the butter into the oats.\n  do Brush with the rest of the butter.\n',
        },
      },
    ],
  },
});
