import type { Part, Recipe } from '../../recipe/model.ts';
import { wordsBefore } from '../../recipe/names/dishes.ts';
import { isMet, type Lack, lacksOf, placedIn } from '../../recipe/needed-acts.ts';
import { takenFor } from '../../recipe/taken-for.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain, oncePerPlace } from '../found-again.ts';
import { onceWith } from '../once.ts';

interface Values {
  readonly says: string;
}

export default defineCheck<Values>({
  code: 'step-forgotten',
  title: 'An act without which it never works does not come',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** What nothing of its kind goes without, and what some acts always follow (\`server/data/needed-acts.tsv\`): a yeast dough rises before it is baked, and proves once it is shaped; a jelly, a cream or an ice goes into the cold; whites and cream are whisked before they are folded in; leaf gelatine is soaked, potatoes that boiled are drained, pastry is rolled, a stock strained. It looks in the part, by its kind or its name, and in the parts that go on with it.

**Why it matters.** A step was lost. Everybody who knows the dish does it all the same; who cooks it for the first time does not.

**What to do.** Write the step.

**Silent** where a sentence says what nobody reads, or points to another text, and where a line of the list says that it is done.`,
  find: ({ recipe, house }) => forgotten(recipe, house),
  say: ({ says }) => ({ message: `${says}.` }),
  examples: {
    good: [
      'recipe Rolls as enriched bread\n  500 g     bread flour\n  250 ml    whole milk\n  60 g      butter\n  9 g       fine salt\n  7 g       instant yeast\n  do Knead the flour, milk, butter, salt and yeast for 10 min.\n  do Prove at 24 C for 1 h, shape into 12 balls and prove for 40 min more.\n  do Brush with milk and bake at 190 C for 18 min until golden. Cool on a rack.\n',
      'recipe Fool\n  300 g     gooseberries\n  80 g      caster sugar\n  300 ml    double cream\n  do Simmer the gooseberries with the sugar for 10 min.\n  do Crush them and cool completely.\n  do Whip the cream to soft peaks and fold it in.\n  do Chill at 4 C for 2 h.\n',
    ],
    bad: [
      'recipe Rolls as enriched bread\n  500 g     bread flour\n  250 ml    whole milk\n  60 g      butter\n  9 g       fine salt\n  7 g       instant yeast\n  do Knead the flour, milk, butter, salt and yeast for 10 min.\n  do Prove at 24 C for 1 h.\n  do Shape into 12 balls and set on a tray.\n  do Bake at 190 C for 18 min until golden. Cool on a rack.\n#    ^^^^ step-forgotten: prove once more\n',
      'recipe Fool\n  300 g     gooseberries\n  80 g      caster sugar\n  300 ml    double cream\n  do Simmer the gooseberries with the sugar for 10 min.\n  do Crush them and cool completely.\n  do Fold in the cream.\n#    ^^^^^^^ step-forgotten: never whipped\n  do Chill at 4 C for 2 h and spoon into glasses.\n',
    ],
  },
});

const forgotten = foundAgain<Values>((recipe) => {
  if (recipe.inherits) return [];
  const acts = recipe.parts.reduce((sum, part) => sum + placedIn(part).length, 0);
  const isSaid = recipe.parts.some(({ head: { kind } }) => kind !== undefined);
  const names = new Map(
    takenFor(recipe).flatMap(({ part, dish, byTitle }) => (byTitle && isSaid ? [] : [[part, dish.kinds] as const])),
  );
  return oncePerPlace(
    recipe.parts.flatMap((part) => {
      const kinds = part.head.kind === undefined ? (names.get(part) ?? kindsAbove(recipe, part, names)) : undefined;
      const called = part.isLast ? wordsBefore(recipe.name).at(-1) : undefined;
      return lacking(part, kinds, called).flatMap((lack) =>
        acts < lack.row.acts || isDoneElsewhere(recipe, part, lack) ? [] : [found(part, lack)],
      );
    }),
  );
});

type Names = ReadonlyMap<Part, readonly { readonly name: string }[]>;

/** Of a list right above, whose steps all stand below the next. */
function kindsAbove(recipe: Recipe, { index }: Part, names: Names): ReturnType<Names['get']> {
  const above = recipe.parts[index - 1];
  if (above === undefined || above.steps.length > 0) return undefined;
  return above.head.kind === undefined ? (names.get(above) ?? kindsAbove(recipe, above, names)) : [above.head.kind];
}

const lacking = onceWith(
  (part: Part, taken: readonly { readonly name: string }[] | undefined, called: string | undefined) =>
    lacksOf(
      part,
      (part.head.kind === undefined ? (taken ?? []) : [part.head.kind]).map(({ name }) => name),
      called,
    ),
);

function isDoneElsewhere({ parts }: Recipe, part: Part, { row, isOpen, isOfAll }: Lack): boolean {
  const earlier = row.kinds.size === 0 ? parts.filter(({ index }) => index < part.index) : [];
  const goOn = isOpen ? parts.filter(({ includes }) => includes.includes(part.head)) : [];
  const later = goOn.length > 0 || !isOpen ? goOn : parts.filter(({ index }) => index > part.index);
  if (isOpen && row.when.length > 0 && later.length === 0) return true;
  return (isOfAll ? parts : [...earlier, ...later]).some((each) => isMet(row, part, placedIn(each)));
}

const found = ({ index }: Part, { row: { says }, at }: Lack): Found<Values> => {
  const { event } = at.bound;
  const { start, end } = event.verb ?? event;
  return { at: { part: index, line: at.step.line, start, end }, values: { says } };
};
