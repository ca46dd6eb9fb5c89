import { replaceSpan } from '../../edits/text-edit.ts';
import type { FoodClass } from '../../food/food.ts';
import type { Line, TextNode } from '../../notation/tree.ts';
import { lacksOnlyItsAmount } from '../../recipe/list/unread.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { onceWith } from '../once.ts';

interface Values {
  readonly name: string;
  /** Where the amount belongs. */
  readonly at: number;
  readonly seasoning: boolean;
}

const SEASONINGS: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>([
  'salt',
  'spice',
  'dried herb',
  'leafy herb',
  'condiment',
  'vinegar',
  'flavouring',
]);

/** What a cook lays beside or on a dish by eye, and no dish is made of in a proportion. */
const BESIDE: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>([
  'vegetable',
  'mushroom',
  'fruit',
  'bread',
  'cheese',
  'nut',
  'seed',
  'sauce',
  'juice',
  'water',
]);

export default defineCheck<Values>({
  code: 'missing-amount',
  title: 'An ingredient has no amount',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'list',
  source: { kind: 'common practice, no source' },
  explain: `An ingredient without an amount cannot be weighed, scaled or shopped for, and what it does to the formula is not known. Write the amount first: \`200 g plain flour\`. Where the cook decides, say so: \`to taste salt\`, \`as needed flour\`.

Information for what is added by eye: seasoning, and where no formula is judged herbs, vegetables, fruit and its juice, water, bread, cheese and nuts. Silent on lines that are no ingredient, on ice, and on \`to taste\` and \`as needed\`.`,
  *find(part, house) {
    for (let line = 0; line < part.head.source.lines.length; line++) {
      const read = part.head.source.lines[line];
      if (read === undefined || part.head.ingredients.some((i) => i.line === line && i.ofPart !== undefined)) continue;
      const { statement } = read;
      if (statement.kind === 'unread' && lacksOnlyItsAmount(read, house.world)) {
        yield* found(statement.words, line, house, part.head.kind !== undefined);
        continue;
      }
      const listed = statement.kind === 'add' ? statement.ingredient : statement;
      if (listed.kind === 'ingredient' && listed.amount === undefined && listed.name !== undefined) {
        yield* found(listed.name, line, house, part.head.kind !== undefined);
      }
    }
  },
  // Without its amount, a first ingredient does not open the nameless part.
  findInFile({ outline, house }) {
    const first = outline.parts[0];
    const from = outline.recipe?.at;
    if (from === undefined || first?.source.named === true) return [];
    return outline.lines
      .slice(from, first?.at)
      .flatMap((line, i) => (line.statement.kind === 'unread' ? (lacking(line, from + i, house) ?? []) : []));
  },
  say: ({ name, seasoning }) => ({
    message: `How much ${name}? Write the amount first, or \`${seasoning ? 'to taste' : 'as needed'}\` where the cook decides.`,
  }),
  fix: ({ at, seasoning }, _scene, place) =>
    (seasoning ? ['to taste', 'as needed'] : ['as needed']).map((words) => ({
      title: `Write \`${words}\``,
      effect: 'words' as const,
      edits: [replaceSpan(place.line, { start: at, end: at }, `${words} `)],
    })),
  examples: {
    good: [
      'recipe Broth\n  1 kg      chicken stock\n  to taste  salt\n  do Bring the stock to the boil and season with salt.\n',
      'recipe Broth\n  1 kg      chicken stock\n  as needed  water\n  do Bring the stock to the boil and thin with the water.\n',
    ],
    bad: [
      {
        text: 'recipe Broth\n  1 kg      chicken stock\n  butter\n# "butter" missing-amount *: How much butter\n  do Bring the stock to the boil and whisk in the butter.\n',
        after: {
          'Write `as needed`':
            'recipe Broth\n  1 kg      chicken stock\n  as needed butter\n  do Bring the stock to the boil and whisk in the butter.\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  butter\n# "butter" missing-amount *: as needed\n  do Rub the butter into the oats.\n',
    ],
  },
});

const lacking = onceWith((line: Line, at: number, house: House): Found<Values> | undefined => {
  const { statement } = line;
  if (statement.kind !== 'unread' || !lacksOnlyItsAmount(line, house.world)) return undefined;
  return found(statement.words, at, house, false)[0];
});

/** A line without an amount; `judged`: its part is held against a formula, which wants all that makes it up. */
function found({ start, end, text }: TextNode, line: number, house: House, judged: boolean): readonly Found<Values>[] {
  const match = house.world.book.findInText(text);
  const food = match.kind === 'food' ? match.food : undefined;
  const seasoning = SEASONINGS.has(food?.class);
  const beside = seasoning || (!judged && BESIDE.has(food?.class));
  const values = { name: text, at: start, seasoning };
  return [{ at: { line, start, end }, values, ...(beside && { severity: 'info' as const }) }];
}
