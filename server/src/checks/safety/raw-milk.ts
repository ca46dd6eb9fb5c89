import { overJourneys } from '../by-state/over-journeys.ts';
import { rawMilk } from '../by-state/unheated-milk.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
}

const found = foundAgain<Values>(
  overJourneys((_house, journey) =>
    rawMilk(journey).map(({ member: { of }, ingredient: { line, name, nameNode } }) => ({
      at: { part: of.part, line, start: nameNode.start, end: nameNode.end },
      values: { name },
    })),
  ),
);

export default defineCheck<Values>({
  code: 'raw-milk',
  title: 'Raw milk is eaten unheated',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-202.14; Grade A Pasteurized Milk Ordinance (63 °C for 30 min, 72 °C for 15 s); 21 CFR 133.182',
  },
  explain: `**What it computes.** Whether milk or cream that the list calls raw, unpasteurised or straight from the animal is boiled, or read at 63 °C or above, by any step, through every part that takes it in.

**Why it matters.** Raw milk carries Listeria, E. coli, Campylobacter and Brucella; a fresh curd keeps them alive, and they hurt the unborn, the young and the old most.

**What to do.** Take pasteurised milk, or hold it at 63 °C for 30 min, or at 72 °C for 15 s, and cool it before the rennet goes in.

**Silent** for milk of which nothing of the kind is said, and for cheese that ripens for 60 days or more.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name }) => ({
    message: `No step heats the ${name}, and raw milk is not safe for everyone: take pasteurised milk, or hold it at 63 °C, 145 °F, for 30 min. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Fresh cheese\n  4 l       raw milk\n  2 g       rennet\n  20 g      fine salt\n  do Heat the milk until it reads 72 C and hold for 1 min.\n  do Cool to 32 C, stir in the rennet and leave until set, 1 h.\n  do Cut, drain in the fridge overnight and stir in the salt.\n',
      'recipe Fresh cheese\n  4 l       whole milk, pasteurised\n  2 g       rennet\n  20 g      fine salt\n  do Warm the milk to 32 C, stir in the rennet and leave until set, 1 h.\n  do Cut, drain in the fridge overnight and stir in the salt.\n',
    ],
    bad: [
      'recipe Fresh cheese\n  4 l       raw milk\n# "raw milk" raw-milk: No step heats\n  2 g       rennet\n  20 g      fine salt\n  do Warm the milk to 32 C, stir in the rennet and leave until set, 1 h.\n  do Cut, drain in the fridge overnight and stir in the salt.\n',
      'recipe Curd\n  4 l       milk, still warm from the cow\n# "milk" raw-milk: No step heats\n  2 g       rennet\n  do Stir the rennet into the milk and leave until set, 1 h.\n  do Cut, and drain in the fridge overnight.\n',
    ],
  },
});
