import { indentOf } from '../../edits/set-amount.ts';
import { deleteLine, insertLineAfter } from '../../edits/text-edit.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { LedgerEntry } from '../../recipe/ledger.ts';
import type { Part } from '../../recipe/recipe.ts';
import { anySays, inAnyForm, inWords } from '../../recipe/step-words.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck } from '../check.ts';
import { takesEverything } from '../everything.ts';
import { repeatsIn } from './repeats.ts';

interface Values {
  readonly name: string;
  readonly part: number;
  readonly ingredient: Ingredient;
}

export default defineCheck<Values>({
  code: 'unused-ingredient',
  title: 'An ingredient is never used in the steps',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `What stands in the list is bought, weighed and set out. If no step says where it goes, the cook finds it on the bench when the dish is in the oven. The steps of this part, and of the parts after it, are read for the ingredient's name, its last word, and its other names.

Mention it where it goes in, or take it off the list; write \`[whole milk]\` where the sentence says it in other words. Silent for what is optional or added to taste, where a part has no steps yet, where a step takes everything together (\`mix all the ingredients\`, or \`stir together\` at the start), where the list is one line and the first step names nothing (\`Roast at 180 C\`), for the oil where a step deep-fries, for a name that is only misspelled (\`unknown-food\` says so) and for a line that \`repeated-ingredient\` speaks of.`,
  *find(part) {
    if (!part.ledger.some(isUnused) || part.steps.length === 0 || takesEverything(part.steps) || isAlone(part)) return;
    for (const [index, entry] of part.ledger.entries()) {
      const { ingredient } = entry;
      if (
        !isUnused(entry) ||
        ingredient.node.name === undefined ||
        isFryingFat(ingredient, part) ||
        isMeant(part, index)
      )
        continue;
      if (repeatsIn(part).some((r) => r.second === index) || isMisspelled(ingredient, part)) continue;
      const { start, end } = ingredient.node.name;
      yield {
        at: { line: ingredient.line, start, end },
        values: { name: ingredient.name, part: part.index, ingredient },
      };
    }
  },
  say: ({ name }) => ({ message: `No step uses the ${name}: say where it goes, or take it off the list.` }),
  fix: ({ name, part, ingredient }, { document, recipe }) => {
    const bound = recipe.parts[part];
    const base = recipe.partsAt[part] ?? 0;
    const last = bound?.steps.at(-1);
    if (last === undefined) return [];
    const line = base + last.line;
    return [
      {
        title: `Write a step that adds the ${name}`,
        effect: 'words',
        edits: [insertLineAfter(document, line, `${indentOf(document, line)}do Add the ${name}.`)],
      },
      {
        title: `Take the ${name} off the list`,
        effect: 'amounts',
        edits: [deleteLine(document, base + ingredient.line)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Mix all the ingredients.\n',
      'recipe Poolish\n  250 g     bread flour\n  250 g     water\n  0.5 g     instant yeast\n  do Stir together and ferment at 21 C for 12 h.\n',
    ],
    bad: [
      'recipe Poolish\n  250 g     bread flour\n  250 g     water\n  1 g       instant yeast\n# "instant yeast" unused-ingredient *\n  do Stir the flour and the water together.\n  do Mix well.\n',
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  60 g      honey\n# "honey" unused-ingredient *\n  do Rub the butter into the oats.\n',
        after: {
          'Write a step that adds the honey':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  60 g      honey\n  do Rub the butter into the oats.\n  do Add the honey.\n',
          'Take the honey off the list':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
        },
      },
      'recipe Bowl\npart oats\n  200 g     rolled oats\n  20 g      butter\n# "butter" unused-ingredient *: No step uses the butter\n  do Toast the oats.\npart to serve\n  80 g      honey\n  do Pour the honey over the oats.\n',
    ],
  },
});

/** `Roast at 180 C for 1 h`: what else but the one thing on the list. */
const isAlone = ({ head, includes, steps }: Part): boolean =>
  head.ingredients.length === 1 && includes.length === 0 && steps[0]?.mentions.length === 0;

/** `Rub with the salt and roast`: an order without an object is of what the list begins with, where nothing else is left over. */
const isMeant = ({ ledger, steps: [first] }: Part, index: number): boolean =>
  index === 0 &&
  first !== undefined &&
  ledger.findLastIndex(isUnused) === 0 &&
  WITHOUT_OBJECT.test(inWords(first.sentence));

const WITHOUT_OBJECT =
  /^(?:rub|season|salt|toss|shape|brush|coat|sprinkle|dust|smear|marinate|brown|roast|bake|grill|fry|simmer|boil) (?:(?:all over|generously|well) )?(?:with|in|at|and|for|until|on|over)\b/;

const isUnused = ({ uses, ingredient }: LedgerEntry): boolean =>
  uses.length === 0 && !ingredient.optional && !ingredient.free;

/** What else but the oil on the list would a step deep-fry in? */
const isFryingFat = ({ food }: Ingredient, { steps }: Part): boolean =>
  (food?.class === 'oil' || food?.class === 'fat') && anySays(steps, DEEP_FRYING);

const DEEP_FRYING = inAnyForm('deep-fry');

/** A step names the food that the line nearly names. */
function isMisspelled({ match }: Ingredient, part: Part): boolean {
  if (match.kind !== 'unknown' || match.near.length === 0) return false;
  const nouns = new Set(match.near.flatMap((food) => wordsOf(food.name).at(-1) ?? []));
  return part.steps.some((s) =>
    s.sentence.items.some((i) => i.kind === 'word' && wordsOf(i.word).some((w) => nouns.has(w))),
  );
}
