import { eatersOf } from '../../recipe/names/served.ts';
import { capital } from '../../recipe/words.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { poisoned } from '../by-state/poisons.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  readonly holds: string;
  readonly remedy: string;
  /** Something is done to it, and not enough. */
  readonly short: boolean;
  readonly source: string;
}

type Shared = Found<Values & { readonly grams: number | undefined; readonly limitG: number }>;

const shared = overJourneys((_house, journey) =>
  poisoned(journey).map(({ level, of, ingredient, toxin, grams, short }): Shared => {
    const { line, name, nameNode } = ingredient;
    return {
      at: { part: of.part, line, start: nameNode.start, end: nameNode.end },
      ...severityAt(level),
      values: {
        name,
        holds: toxin.holds,
        remedy: toxin.remedy,
        short,
        grams,
        limitG: toxin.grams,
        source: toxin.source,
      },
    };
  }),
);

const found = foundAgain<Values>((recipe, house) =>
  shared(recipe, house).flatMap(({ values: { grams, limitG, ...values }, ...place }) =>
    grams === undefined || grams / eatersOf(recipe) >= limitG ? [{ ...place, values }] : [],
  ),
);

export default defineCheck<Values>({
  code: 'natural-toxin',
  title: 'A plant or mushroom is eaten with the poison that it holds',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA, Bad Bug Book (2nd edition); FSANZ, Cassava and bamboo shoots; EFSA Journal 2016;14(4):4424; BfR Opinion 003/2017; CDC, MMWR 73(10), 2024; Health Canada on fiddleheads; each with its row in the data',
  },
  explain: `**What it computes.** Which foods of the list hold a poison of their own (beans, cassava, bamboo shoots, elderberries, wild mushrooms, bitter kernels, green potatoes, garden flowers, nutmeg by the spoon and others), and whether the steps boil, cook, peel or leach it out. A slow cooker boils nothing.

**Why it matters.** Five raw kidney beans make one ill within hours. Others are cyanide, solanine or alkaloids, of which no cook can taste the dose.

**What to do.** What the message says: for beans, soak them for 5 h, pour the water off, boil them hard in fresh water for 30 min, and only then slow-cook them. What nothing makes safe is left out.

Of what is safe in pinches (nutmeg, bitter kernels) the grams for each who eats are held against a dose; where the yield does not say how many eat, four do. It is a warning where something is done and it is not sure to be enough: kidney beans that simmer for less than 30 min in all. **Silent** for what is bought canned, cooked, debittered or dried into flour, and for what is boiled or cooked through.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, holds, remedy, short, source }) => ({
    message: `${capital(name)} hold${name.endsWith('s') ? '' : 's'} ${holds}${short ? ', and what is done does not take it out' : ''}: ${remedy}. ${CAUTION}`,
    source,
  }),
  examples: {
    good: [
      'recipe Bean chilli\n  yield   6 portions\n  400 g     dried kidney beans\n  200 g     onions\n  30 g      oil\n  800 g     tinned tomatoes\n  do Soak the beans overnight, boil them in fresh water for 10 min and drain.\n  do Fry the onions in the oil for 8 min, add the tomatoes and simmer for 30 min.\n  do Add the beans and simmer for 40 min.\n',
      'recipe Chilli beans\n  500 g     dried kidney beans\n  2 l       water\n  6 g       fine salt\n  do Soak the beans in half the water at 4 C overnight and drain.\n  do Boil the beans in the rest of the water for 30 min.\n  do Tip into the slow cooker, add the salt and cook on low for 8 h.\n',
      'recipe Chilli beans\n  500 g     canned kidney beans\n  1 l       water\n  6 g       fine salt\n  do Tip the beans, water and salt into the slow cooker and cook on low for 4 h.\n',
      'recipe Elderberry syrup\n  500 g     elderberries\n  400 g     sugar\n  300 g     water\n  do Boil the elderberries with the water for 20 min and strain.\n  do Boil the juice with the sugar for 10 min.\n',
    ],
    bad: [
      'recipe Bean chilli\n  yield   6 portions\n  400 g     dried kidney beans\n# "dried kidney beans" natural-toxin warning: does not take it out\n  200 g     onions\n  30 g      oil\n  800 g     tinned tomatoes\n  do Soak the beans overnight and drain.\n  do Fry the onions in the oil for 8 min, add the tomatoes and simmer for 30 min.\n  do Add the beans and simmer for 20 min.\n',
      'recipe White bean soup\n  yield   6 portions\n  400 g     dried haricot beans\n# "dried haricot beans" natural-toxin warning: does not take it out\n  200 g     carrots\n  2 l       water\n  do Sweat the carrots for 10 min, pour in the water and bring to the boil.\n  do Stir in the beans and simmer for 25 min.\n',
      'recipe Chilli beans\n  500 g     dried kidney beans\n# "dried kidney beans" natural-toxin: a lectin\n  2 l       water\n  6 g       fine salt\n  do Soak the beans in half the water at 4 C overnight and drain.\n  do Tip the beans into the slow cooker with the rest of the water and the salt and cook on low for 8 h.\n',
      'recipe Bean stew\n  300 g     dried kidney beans\n# "dried kidney beans" natural-toxin\n  1 l       water\n  200 g     carrots\n  do Put the beans, water and carrots in the slow cooker and cook on low for 9 h until tender.\n',
      'recipe Cassava salad\n  500 g     cassava\n# "cassava" natural-toxin: Cassava holds\n  40 g      lime juice\n  do Peel and grate the cassava, dress it with the lime juice and serve.\n',
      'recipe Fiddleheads\n  200 g     fiddleheads\n# "fiddleheads" natural-toxin warning: does not take it out\n  20 g      butter\n  do Fry the fiddleheads in the butter for 4 min until bright.\n',
      'recipe Ackee breakfast\n  12        ackee pods\n# "ackee pods" natural-toxin info: opened by themselves\n  40 g      oil\n  do Boil the ackee in water for 20 min, drain it, and fry it in the oil.\n',
      'recipe Sleepy milk\n  yield   1 mug\n  250 g     milk\n  20 g      nutmeg\n# "nutmeg" natural-toxin warning: 5 g in all\n  do Boil the milk and stir in the nutmeg.\n',
    ],
  },
});
