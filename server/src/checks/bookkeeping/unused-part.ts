import { indentOf } from '../../edits/set-amount.ts';
import { insertLineAfter } from '../../edits/text-edit.ts';
import { nameSpan } from '../../recipe/part.ts';
import type { Step } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
  readonly part: number;
}

export default defineCheck<Values>({
  code: 'unused-part',
  title: 'A part is made and never used',
  family: 'bookkeeping',
  severity: 'info',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A part is a component: a crust, a filling, a sauce. Something later has to use it. No later step mentions this part's name, its last word, or one of its ingredients, so the cook is left with it on the bench.

Mention it where it goes in (\`pour over the custard\`). Silent for the last part, for parts without a list, in a file with no \`recipe\` line, and where a later step takes everything together.`,
  *find({ recipe, outline }) {
    if (outline.recipe === undefined) return;
    // From the end: whether a later part has steps, and whether one takes everything together.
    let steps = false;
    // `200 g poolish` on a later list takes the poolish as its steps do.
    const taken = new Set(recipe.parts.flatMap((p) => p.includes));
    for (let i = recipe.parts.length - 1; i >= 0; i--) {
      const part = recipe.parts[i];
      if (part === undefined || (i < recipe.parts.length - 1 && gathers(recipe.parts[i + 1]?.steps ?? []))) return;
      const { head } = part;
      const unused =
        !part.isLast &&
        head.name !== '' &&
        head.ingredients.length > 0 &&
        part.usesByLater.length === 0 &&
        !taken.has(head);
      if (unused && steps) yield { at: { part: i, line: 0, ...nameSpan(head) }, values: { name: head.name, part: i } };
      steps ||= part.steps.length > 0;
    }
  },
  say: ({ name }) => ({ message: `No later step uses the ${name}: mention it where it goes in.` }),
  fix: ({ name }, { document, recipe }) => {
    const last = recipe.parts.findLast((p) => p.steps.length > 0);
    const step = last?.steps.at(-1);
    if (last === undefined || step === undefined) return [];
    const line = (recipe.partsAt[last.index] ?? 0) + step.line;
    return [
      {
        title: `Write a step that uses the ${name}`,
        effect: 'words',
        edits: [insertLineAfter(document, line, `${indentOf(document, line)}do Add the ${name}.`)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats and stir in the glaze.\n',
      'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n  do Stir everything together.\n',
    ],
    bad: [
      {
        text: 'recipe Bowl\npart glaze\n# "glaze" unused-part *\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n',
        after: {
          'Write a step that uses the glaze':
            'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n  do Add the glaze.\n',
        },
      },
      'recipe Bowl\npart plum compote\n# "plum compote" unused-part *\n  300 g     plums\n  do Simmer the plums for 20 min.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n',
    ],
  },
});

const GATHERS = new WeakMap<readonly Step[], boolean>();

/** Whether a step takes everything that lies on the bench. */
function gathers(steps: readonly Step[]): boolean {
  let found = GATHERS.get(steps);
  if (found === undefined) {
    found = steps.some((s) => s.sentence.items.some((i) => i.kind === 'word' && GATHERING.has(i.word)));
    GATHERS.set(steps, found);
  }
  return found;
}

const GATHERING: ReadonlySet<string> = new Set([
  'everything',
  'all',
  'parts',
  'components',
  'assemble',
  'together',
  'layers',
  'elements',
]);
