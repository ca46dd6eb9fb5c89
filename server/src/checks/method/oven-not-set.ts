import { defineCheck, type Found } from '../check.ts';
import { overParts } from '../over-parts.ts';
import { verbText } from './cues.ts';
import { firstInOven } from './first-oven.ts';

interface Values {
  readonly verb: string;
}

export default defineCheck<Values>({
  code: 'oven-not-set',
  title: 'Something is baked before an oven temperature is given',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A step bakes or roasts, and neither it, nor a step before it, nor the recipe's \`oven\` line gives a temperature. The cook cannot set the oven, and needs to before the dish is ready for it: an oven takes 15 to 20 minutes to come up.

Write the temperature in the step (\`Bake at 180 C for 25 min\`) or above the parts (\`oven 180 C\`). Silent for griddles, embers and the like, and after the first step that has a temperature.`,
  find({ recipe }) {
    return recipe.oven === undefined ? (firstOven(recipe)[0]?.value ?? []) : [];
  },
  say: ({ verb }) => ({
    message: `No oven temperature is given before this: write it here (\`${verb} at 180 C\`) or above the parts (\`oven 180 C\`), so that the oven is hot in time.`,
  }),
  examples: {
    good: [
      'recipe Oats\n  oven    180 C\n  200 g     rolled oats\n  do Bake the oats for 10 min until golden.\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180 C for 10 min until golden.\n',
    ],
    bad: [
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats for 10 min until golden.\n# "Bake" oven-not-set\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats for 10 min, then turn the oven down to 150 C and bake for 20 min until golden.\n# "Bake" oven-not-set\n',
      'recipe Roots\n  600 g     carrots\n  30 g      olive oil\n  do Toss the carrots in the oil.\n  do Roast for 40 min until brown at the edges.\n# "Roast" oven-not-set: roast at 180 C\n  do Turn the oven off and leave for 5 min.\n',
    ],
  },
});

/** The first thing of a part that needs an oven: nothing is found where it says how hot. */
const firstOven = overParts((part): readonly Found<Values>[] | undefined => {
  const first = firstInOven(part);
  if (first === undefined) return undefined;
  const { step, order } = first;
  if (order === undefined) return [];
  const { start, end } = order.verb;
  return [
    { at: { part: part.index, line: step.line, start, end }, values: { verb: verbText(part, step, order.verb) } },
  ];
});
