import { indentOf } from '../../edits/set-amount.ts';
import { insertLineAfter } from '../../edits/text-edit.ts';
import { gramsText, percentText } from '../../measure/number-text.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { speaksOf, speaksOfSeveral } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { LedgerEntry, Part, Step, TakenUse } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { eventsWith } from './events-with.ts';
import { ledgerSum } from './ledger-sum.ts';
import { isSeparated } from './separated.ts';

interface Values {
  readonly name: string;
  readonly left: number;
  readonly leftG: number | undefined;
  readonly last: TakenUse;
  readonly entry: LedgerEntry;
}

/** A share of the whole that rounding in a recipe explains. */
const ROUNDING = 0.04;

export default defineCheck<Values>({
  code: 'leftover-amount',
  title: 'Part of an ingredient is never used',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step takes half the milk, or 60 ml of it, and no later step takes the rest. The ledger of every ingredient must close: what the list provides, the steps use up.

Say where \`the rest of the\` goes, or list only what is used. Silent where a step takes \`a little of\`, \`some of\` or \`most of\`, since then nobody can say what is left, for eggs used as yolks and whites apart, for fat that was fried in, in batches, where a later step repeats what was done (\`Repeat with the rest\`) or adds a rest of which it does not say what it is of (\`Add the rest of both\`), and below 4 % of the whole.`,
  *find(part) {
    for (const entry of part.ledger) {
      const last = entry.uses.at(-1);
      const { ingredient, left, unsure } = entry;
      if (last === undefined || unsure || ingredient.optional || ingredient.free || left.low <= ROUNDING) continue;
      if (
        isSeparated(ingredient, part) ||
        isInThePot(entry, part) ||
        isFriedIn(entry, part) ||
        isRepeated(last, part) ||
        isInRest(last, part)
      )
        continue;
      const { weighed } = ingredient;
      const leftG = weighed.known ? (left.low * (weighed.grams.low + weighed.grams.high)) / 2 : undefined;
      const { start, end } = last.mention.whole;
      yield {
        at: { line: last.line, start, end, part: last.part },
        values: { name: ingredient.name, left: left.low, leftG, last, entry },
      };
    }
  },
  say: ({ name, left, leftG, entry }) => {
    const amount = leftG === undefined ? percentText(left) : `${gramsText(leftG)} g`;
    const listed = entry.ingredient.node.name;
    const at = { line: entry.ingredient.line, start: listed?.start ?? 0, end: listed?.end ?? 0 };
    return {
      message: `${amount} of the ${name} is left over: no later step uses the rest. Say where it goes, or list less.`,
      value: left,
      unit: '1',
      related: [
        {
          at: { ...at, part: entry.uses[0]?.mention.ingredients[0]?.part ?? 0 },
          message: `The list has the ${name} here.`,
        },
      ],
    };
  },
  work: ({ entry }, { recipe }) => ledgerSum(entry, recipe),
  fix: ({ name, last }, { document, recipe }) => {
    const line = (recipe.partsAt[last.part] ?? 0) + last.line;
    return [
      {
        title: `Write a step that adds the rest of the ${name}`,
        effect: 'words',
        edits: [insertLineAfter(document, line, `${indentOf(document, line)}do Add the rest of the ${name}.`)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk half the milk into the flour.\n  do Thin with the rest of the milk.\n',
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk most of the milk into the flour.\n',
    ],
    bad: [
      {
        text: 'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk half the milk into the flour.\n# "half the milk" leftover-amount *: left over\n',
        after: {
          'Write a step that adds the rest of the whole milk':
            'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk half the milk into the flour.\n  do Add the rest of the whole milk.\n',
        },
      },
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk 200 ml of the milk into the flour.\n# "200 ml of the milk" leftover-amount *: 103 g\n',
    ],
  },
});

/** `Mash a cup of the beans`, of those that were boiled: the others are in the pot. */
const isInThePot = ({ ingredient, uses }: LedgerEntry, part: Part): boolean =>
  !isIn(ingredient, 'fat') &&
  uses.some(
    (use) => use.ready && eventsWith(use, part).some(({ act, medium }) => act === 'heat' && medium?.is === 'water'),
  );

/** `Fry in the oil and drain; return 2 tbsp of the oil`: the rest is what was fried in. */
const isFriedIn = ({ ingredient, uses }: LedgerEntry, part: Part): boolean =>
  isIn(ingredient, 'fat') &&
  uses.some((use) => use.mention.portion.kind === 'plain' && eventsWith(use, part).some(({ act }) => act === 'heat'));

/** `Repeat with the rest`, `return everything to the pan`: what a round before it took half of is taken again. */
const isRepeated = ({ part: index, step }: TakenUse, part: Part): boolean =>
  index === part.index &&
  part.steps.some(
    (each, i) => (i >= step && speaksOf(each, 'again', 'everything')) || (i <= step && isInBatches(each)),
  );

/** `Cook in three batches. Heat 1 tbsp of the oil.`: for each of them. */
const isInBatches = (step: Step): boolean => speaksOf(step, 'batch') || speaksOfSeveral(step, 'batch');

/** `Add the rest of both`: with no word of which, it may be the rest of this. */
const isInRest = ({ part: index, step, mention }: TakenUse, { index: own, steps }: Part): boolean =>
  index === own &&
  steps
    .slice(step)
    .some((each, i) =>
      boundEvents(each).some(
        ({ event: { act, said, start }, unnamed, names }) =>
          unnamed === 'rest' &&
          names.length === 0 &&
          said === 'yes' &&
          (act === 'combine' || act === 'put') &&
          (i > 0 || start > mention.end),
      ),
    );
