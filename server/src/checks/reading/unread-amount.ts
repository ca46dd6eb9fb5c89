import { leavesFigure } from '../../recipe/list/not-understood.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
  readonly figure: string;
}

export default defineCheck<Values>({
  code: 'unread-amount',
  title: 'A figure of a line is not understood',
  family: 'reading',
  severity: 'error',
  scope: 'list',
  source: { kind: 'common practice, no source' },
  explain: `An amount stands first on its line, and whatever says it again stands beside it: \`1 1/4 cups (156 g) flour\`, \`2 x 400 g tins tomatoes\`, \`1 cup + 2 tbsp sugar\`. Where a figure is left over in the name, part of the amount was not understood, and what was may be wrong: nothing on the line is counted, and no formula of its part is judged.

**What to do.** Write the amount once, in front, or put what the figure says behind a comma or in brackets.

**Silent** where the figure belongs to the name: \`00 flour\`, \`70 % chocolate\`, \`7-grain cereal\`, and names that the food book or the house has.`,
  *find(part, house) {
    for (const ingredient of part.head.ingredients) {
      if (!leavesFigure(ingredient, house.world)) continue;
      const { start, end, text } = ingredient.nameNode;
      const figure = /[\d½⅓⅔¼¾⅛./]+/.exec(text)?.[0] ?? text;
      yield { at: { line: ingredient.line, start, end }, values: { name: text, figure } };
    }
  },
  say: ({ name, figure }) => ({
    message: `\`${figure}\` in \`${name}\` is not understood, so the line is not counted: write the amount first, or put the figure behind a comma.`,
  }),
  examples: {
    good: [
      'recipe Dough\n  200 g     00 flour\n  130 g     water\n  do Mix the flour with the water.\n',
      'recipe Beans\n  2 x 400 g tins black beans\n  150 g     water\n  do Simmer the beans in the water for 10 min.\n',
    ],
    bad: [
      'recipe Beans\n  2 packs 15 of borlotti mix\n# "15 of borlotti mix" unread-amount: is not counted\n  150 g     water\n  do Simmer the water.\n',
      'recipe Beans\n  200 g     borlotti mix no 4\n# "borlotti mix no 4" unread-amount\n  150 g     water\n  do Simmer the water.\n',
    ],
  },
});
