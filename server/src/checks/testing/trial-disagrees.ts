/**
 * Knows what is said where the latest trial measured something else than the recipe says, asked in four questions.
 * Refuses to ask them itself.
 */
import { listGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText } from '../../measure/number-text.ts';
import { defineCheck } from '../check.ts';
import { plainTable } from '../sum-table.ts';
import { amounts } from './held-amounts.ts';
import { temperatures } from './held-heats.ts';
import { times } from './held-times.ts';
import { gramsRange, type Values } from './held-values.ts';
import { inOvenOf, lossText, usualOf, weights } from './held-weights.ts';
import { changedIn, factsIn, trialsOf } from './trials-read.ts';

export default defineCheck<Values>({
  code: 'trial-disagrees',
  title: 'A trial measured something else than the recipe says',
  family: 'testing',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The latest trial's lines against the recipe: \`took 52 min to bake\` against the time of the step that bakes, \`reached 71 C in the centre\` against the temperature that is promised there, \`used 36 g water\` against the list, \`weighed 900 g out of the oven\` against what usually comes out of it: the ingredients that go in, less what each part loses by its kind (bread 6 to 23 %, pastry 4 to 25 %, custard 1 to 15 %, a roast 8 to 45 %) and never more than the water and alcohol in it, with half the fat of meat.

**Why it matters.** A recipe promises what the kitchen has measured. Where the two differ, the next cook follows the page and gets something else.

**What to do.** Write what was measured, or a range over the trials that agree. **Silent** within 15 % of a time, 5 % of an amount, 3 °C and 3 % of the ingredients beyond what they usually weigh out of the oven, for one piece of the yield that weighs its share, where a weight is not known, where no step says anything to compare with, for a temperature of the oven, the fridge or the room, for a line that was changed since the trial tested it, and for older trials than the latest.`,
  find({ recipe, outline }) {
    const trials = trialsOf(outline);
    const latest = trials.at(-1);
    if (latest === undefined) return [];
    const found = [...times(recipe, latest, trials), ...temperatures(recipe, latest), ...amounts(recipe, latest)];
    // What was changed since is not what the trial cooked: that is `untested-change`'s to say.
    const since = latest.tested === undefined ? [] : changedIn(latest.tested, factsIn(recipe));
    if (since.length === 0) return [...found, ...weights(recipe, latest)];
    return found.filter(({ at }) => !since.some(({ part, line }) => at.part === part && at.line === line));
  },
  say: ({ what, of, written, measured, differs, date, trialAt, write, usual, beyond }) => ({
    message: {
      time: `${of}: ${written} is written, and it took ${measured} on ${date}, ${differs}${write === measured ? '' : `; ${write} over the trials that agree`}. Write what was measured.`,
      temperature: `${written} is promised in ${of}, and it reached ${measured} on ${date}, ${differs}. ${write === undefined ? 'Write what was measured where that is hot enough.' : 'Write what was measured.'}`,
      amount: `${written} ${of} is listed, and ${measured} was used on ${date}, ${differs}. Write what was used.`,
      weight: `Of ${written} of ingredients, ${usual} usually comes out of ${of}, and ${measured} was weighed on ${date}: ${beyond}`,
    }[what],
    related: [{ at: trialAt, message: 'The trial measured it here.' }],
  }),
  work: ({ what, usual, written }, { recipe }) => {
    const oven = what === 'weight' ? usualOf(inOvenOf(recipe)) : undefined;
    if (oven === undefined) return [];
    const rows = oven.parts.map(({ name, ingredients, left }) => [
      name === '' ? 'the recipe' : name,
      gramsRange(ingredients),
      lossText(ingredients, left),
      gramsRange(left),
    ]);
    return [
      ...plainTable(
        ['part', 'goes in', 'loses', 'usually comes out'],
        [...rows, ['**in all**', `${written}`, '', `${usual}`]],
      ),
      '',
      `A weight is found from ${gramsText(oven.slackG)} g beyond that, for what stays in the bowl and what the scale is out by. What may go on after the oven counts from nothing to all of it.`,
    ];
  },
  fix: ({ write, ingredient }, { recipe }, at) => {
    if (write !== undefined)
      return [{ title: `Write ${write}`, effect: 'amounts', edits: [replaceSpan(at.line, at, write)] }];
    if (ingredient === undefined) return [];
    const listed = listGrams(recipe, ingredient.part, ingredient.ingredient, ingredient.grams);
    return listed === undefined
      ? []
      : [{ title: `Write ${listed.written} ${ingredient.ingredient.name}`, effect: 'amounts', edits: listed.edits }];
  },
  examples: {
    good: [
      'recipe Curd\n  2 cups    sugar\n  juice of 3 lemons\n  4 x 400 g tins tomatoes\n  do Mix everything.\n\ntrial 2026-09-14\n  used    1 3/4 cups + 4 tbsp sugar\n  used    juice of 3 lemons\n  used    1600 g tomatoes\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-09-14\n  took    11 min to toast\n  verdict keep\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-08-01\n  took    25 min to toast\n\ntrial 2026-09-14\n  took    12 min to toast\n  used    205 g rolled oats\n',
      'recipe Loaf as lean bread\n  yield   1 loaf\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35-40 min until brown.\n\ntrial 2026-09-14\n  weighed 745 g out of the oven\n',
    ],
    bad: [
      {
        text: 'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 35-40 min until golden.\n#                      ^^^^^^^^^ trial-disagrees *: it took 52 min\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        after: {
          'Write 52 min':
            'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 52 min until golden.\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        },
      },
      {
        text: 'recipe Dough\n  200 g     plain flour\n  20 g      water\n# "20 g" trial-disagrees *: 36 g was used\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        after: {
          'Write 36 g water':
            'recipe Dough\n  200 g     plain flour\n  36 g      water\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        },
      },
      'recipe Curd\n  100 g     sugar\n  juice of 3 lemons\n# "3" trial-disagrees: juice of 3 lemons is listed\n  do Mix everything.\n\ntrial 2026-09-14\n  used    juice of 1 lemon\n',
      {
        text: 'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min until brown.\n\ntrial 2026-09-14\n  weighed 590 g out of the oven\n# "590 g" trial-disagrees: Of 853 g of ingredients, 657 to 802 g usually comes out of the oven\n',
      },
      {
        text: 'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      fine salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min until brown.\n\ntrial 2026-09-14\n  weighed 1200 g out of the oven\n# "1200 g" trial-disagrees: 347 g more than went in\n',
      },
    ],
  },
});
