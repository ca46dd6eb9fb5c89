import type { FoodClass } from '../../food/food.ts';
import { type Spoken, spokenOf } from '../../prose/things.ts';
import { isIn, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { thingsOf } from '../../recipe/things-said.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { overParts } from '../over-parts.ts';
import { notesOf, placeIn } from '../printed/notes.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
}

const CARRIES: ReadonlySet<FoodClass> = new Set(['egg', 'poultry', 'ground poultry', 'ground meat']);

const isOffered = ({ is }: Spoken): boolean => is === 'offered raw';

/** Raw flour, egg, poultry or mince, as it comes. */
function carries(ingredient: Ingredient): boolean {
  const listed = listedAs(ingredient);
  if (listed.has('cooked') || listed.has('treated') || listed.has('for raw')) return false;
  return CARRIES.has(foodOf(ingredient)?.class ?? 'other') || isIn(ingredient, 'raw flour');
}

/** Of what is listed, what those words name; of none, the first that carries anything. */
function offered(all: readonly Ingredient[], words: readonly string[]): Ingredient | undefined {
  const named = all.filter(({ name }) => wordsOf(name).some((word) => words.includes(word)));
  return (named.length === 0 ? all : named).find(carries);
}

/** The steps of each part that offer some. */
const offering = overParts((part) => {
  const those = part.steps.flatMap((step) => {
    const text = part.head.source.lines[step.line]?.text ?? '';
    return thingsOf(step)
      .filter(isOffered)
      .map(({ start, end }) => ({ at: { part: part.index, line: step.line, start, end }, text }));
  });
  return those.length === 0 ? undefined : those;
});

const find = foundAgain<Values>((recipe: Recipe): readonly Found<Values>[] => {
  const notes = notesOf(recipe).flatMap((note) =>
    spokenOf(note.items)
      .filter(isOffered)
      .map((said) => ({
        at: placeIn(note, said),
        text: recipe.outline.head.find(({ at }) => at === note.line)?.line.text ?? '',
      })),
  );
  const all = [...offering(recipe).flatMap(({ value }) => value), ...notes];
  if (all.length === 0) return [];
  const listed = recipe.parts.flatMap(({ head }) => head.ingredients);
  return all.flatMap(({ at, text }) => {
    const of = offered(listed, wordsOf(text));
    return of === undefined ? [] : [{ at, values: { name: of.name } }];
  });
});

export default defineCheck<Values>({
  code: 'offered-raw',
  title: 'Dough, batter or mince is offered to be eaten raw',
  family: 'safety',
  severity: 'warning',
  scope: 'recipe',
  source: {
    kind: 'from memory',
    title: 'FDA and CDC, advice against raw dough and batter (flour and egg); USDA FSIS, against raw poultry and mince',
  },
  explain: `**What it computes.** Whether a step or a note says that something is eaten as it is mixed (\`safe to eat raw\`, \`lick the bowl\`) where the list has egg, flour, poultry or mince that is not treated; where that sentence names foods, one of them.

**Why it matters.** Flour and egg carry Salmonella and E. coli, and raw dough has made hundreds ill.

**What to do.** Leave it out, or take pasteurised egg and heat-treated flour and say so in the lines.

**Silent** where it is denied (\`do not eat the raw dough\`), and for foods that are eaten raw.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ name }) => ({
    message: `The ${name} in it is raw, and may carry Salmonella or E. coli: what is mixed with it is eaten cooked. Leave this out, or take what is pasteurised or heat-treated. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Shortbread\n  note    Do not eat the raw dough.\n  200 g     plain flour\n  120 g     butter\n  60 g      caster sugar\n  do Rub the butter into the flour and sugar and press into a tin.\n  do Bake at 160 C for 40 min until pale gold.\n',
      'recipe Carrot sticks with dip\n  note    The carrots are nice raw.\n  2         carrots\n  2         eggs\n  40 g      butter\n  do Scramble the eggs in the butter for 4 min until firm and set. Serve with the carrots.\n',
    ],
    bad: [
      'recipe Shortbread\n  note    What is left over of the dough is safe to eat raw.\n# "to eat raw" offered-raw: plain flour\n  200 g     plain flour\n  120 g     butter\n  60 g      caster sugar\n  do Rub the butter into the flour and sugar and press into a tin.\n  do Bake at 160 C for 40 min until pale gold.\n',
      'recipe Pound cake\n  200 g     plain flour\n  200 g     butter\n  200 g     caster sugar\n  4         eggs\n  4 g       baking powder\n  do Cream the butter and sugar, beat in the eggs and fold in the flour and baking powder. Let the children lick the bowl.\n# "lick the bowl" offered-raw: raw\n  do Bake at 170 C for 55 min until a skewer comes out clean.\n',
    ],
  },
});
