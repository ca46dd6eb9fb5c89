import { celsiusOf } from '../../notation/celsius.ts';
import type { Event } from '../../prose/event.ts';
import { anyDoes, deed, isBaked, isInOven } from '../../recipe/journey/deeds.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { overParts } from '../over-parts.ts';

interface Values {
  readonly celsius: number;
}

export default defineCheck<Values>({
  code: 'oven-never-used',
  title: 'The oven is heated, and nothing goes into it',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Whether an oven temperature is written, above the parts or in a step that lights the oven, and no step of any part bakes, roasts, dries, warms or keeps anything in it.

**Why it matters.** A step is lost: what should be baked is served raw, or an oven is lit for nothing.

**What to do.** Write the step (\`Bake at 180 C for 30 min, until a skewer comes out clean\`), or take the oven out.

**Silent** where any step heats something and does not say on what, or speaks of the oven in words that are not understood, for a recipe without steps, and for one that goes on from another.`,
  find({ recipe }) {
    const at = recipe.inherits || !recipe.parts.some(({ steps }) => steps.length > 0) ? undefined : litIn(recipe);
    return at === undefined || usedIn(recipe).length > 0 ? [] : [at];
  },
  say: ({ celsius }) => ({
    message: `The oven is set to ${Math.round(celsius)} °C, and no step puts anything in it: write the step that bakes, or take the oven out.`,
  }),
  examples: {
    good: [
      'recipe Oats\n  oven    180 C\n  200 g     rolled oats\n  do Bake the oats for 10 min until golden.\n',
      'recipe Soup\n  oven    100 C\n  600 g     carrots\n  500 g     water\n  do Simmer the carrots in the water for 20 min until soft.\n  do Keep hot in the oven.\n',
    ],
    bad: [
      'recipe Plain cake\n  oven    180 C\n#         ^^^^^ oven-never-used: write the step\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  3         eggs\n  do Beat the butter with the sugar, then the eggs, and fold in the flour.\n  do Cool in the tin before cutting.\n',
      'recipe Biscuits\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  do Heat the oven to 170 C.\n#                     ^^^^^ oven-never-used\n  do Rub the butter into the flour and sugar, roll out and cut into 20.\n',
    ],
  },
});

/** Where the oven is set, the recipe's own line first. */
function litIn(recipe: Recipe): Found<Values> | undefined {
  const { oven } = recipe;
  if (oven !== undefined) {
    const { node, at } = oven;
    return { at: { line: at, start: node.start, end: node.end }, values: { celsius: celsiusOf(node).low } };
  }
  return lit(recipe)[0]?.value;
}

const lit = overParts((part): Found<Values> | undefined => {
  for (const step of part.steps)
    for (const { of, event, celsius, start, end } of heatsOf(step))
      if (of === 'oven' && event?.act === 'ready')
        return { at: { part: part.index, line: step.line, start, end }, values: { celsius: celsius.low } };
  return undefined;
});

const usedIn = overParts((part: Part): true | undefined => (anyDoes(part.steps, USES) ? true : undefined));

/** It is in the oven, or heated nobody says on what. */
const USES = deed((event) => isBaked(event) || isThere(event) || (event.act === 'heat' && !isElsewhere(event)));

/** What is lit is no place; `shut the door and wait`. */
const isThere = ({ act, where, vessel }: Event): boolean =>
  where.some(isInOven) || (act === 'close' && vessel === undefined);

const isElsewhere = ({ cooks, medium, where }: Event): boolean =>
  cooks === 'barely' ||
  (medium !== undefined && medium.is !== 'air') ||
  where.some(({ is, not }) => is === 'stove' && !not);
