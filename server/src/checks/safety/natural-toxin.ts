import { unboiledBeans } from '../by-state/never-boiled.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
}

const found = foundAgain<Values>(
  overJourneys((_house, journey) =>
    unboiledBeans(journey).map(({ member: { of }, ingredient: { line, name, nameNode } }) => ({
      at: { part: of.part, line, start: nameNode.start, end: nameNode.end },
      values: { name },
    })),
  ),
);

export default defineCheck<Values>({
  code: 'natural-toxin',
  title: 'Dried kidney beans are slow-cooked and never boiled',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: { kind: 'publication', title: 'FDA, Bad Bug Book (2nd edition): phytohaemagglutinin (kidney bean lectin)' },
  explain: `**What it computes.** Whether dried kidney beans, which a step puts in a slow cooker, are boiled or pressure-cooked by any step, through every part that takes them in.

**Why it matters.** Raw red kidney beans hold a lectin of which four or five beans make one ill within hours. Boiling destroys it; 80 °C, as in a slow cooker, can make it five times as strong.

**What to do.** Soak the beans for 5 h at least, pour the water off, boil them hard in fresh water (FDA: 30 min), and only then slow-cook them; or take canned ones.

**Silent** for canned and cooked beans, and where no slow cooker is used.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name }) => ({
    message: `The ${name} are never boiled, and a slow cooker does not destroy their poison: soak them, boil them hard for 30 min in fresh water, then slow-cook. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Chilli beans\n  500 g     dried kidney beans\n  2 l       water\n  6 g       fine salt\n  do Soak the beans in half the water at 4 C overnight and drain.\n  do Boil the beans in the rest of the water for 30 min.\n  do Tip into the slow cooker, add the salt and cook on low for 8 h.\n',
      'recipe Chilli beans\n  500 g     canned kidney beans\n  1 l       water\n  6 g       fine salt\n  do Tip the beans, water and salt into the slow cooker and cook on low for 4 h.\n',
    ],
    bad: [
      'recipe Chilli beans\n  500 g     dried kidney beans\n# "dried kidney beans" natural-toxin: never boiled\n  2 l       water\n  6 g       fine salt\n  do Soak the beans in half the water at 4 C overnight and drain.\n  do Tip the beans into the slow cooker with the rest of the water and the salt and cook on low for 8 h.\n',
      'recipe Bean stew\n  300 g     dried kidney beans\n# "dried kidney beans" natural-toxin\n  1 l       water\n  200 g     carrots\n  do Put the beans, water and carrots in the slow cooker and cook on low for 9 h until tender.\n',
    ],
  },
});
