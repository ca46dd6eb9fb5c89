import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
}

export default defineCheck<Values>({
  code: 'food-for-one-file',
  title: 'A food described here is known to this file alone',
  family: 'reading',
  severity: 'hint',
  scope: 'line',
  source: { kind: 'common practice, no source' },
  explain: `A \`food\` block says what a food of your own weighs and brings. In \`foods.quern\` it holds for every recipe in that folder and below; in any other file for that file alone, so that a large folder need not be read whole before the first recipe is worked out.

**What to do.** Where other recipes use the food too, move the block to \`foods.quern\`, or name this file in \`quern.json\`: \`"foods": ["pantry.quern"]\`. Where only this recipe does, leave it, and say so with \`allow food-for-one-file because …\`. **Silent** in \`foods.quern\` and in files that \`quern.json\` names.`,
  asks: 'food',
  find: function* ({ statement }, { ownFoods }) {
    if (statement.kind !== 'food' || statement.name === undefined || ownFoods === undefined) return;
    const { text, start, end } = statement.name;
    if (ownFoods.includes(text)) yield { at: { line: 0, start, end }, values: { name: text } };
  },
  say: ({ name }) => ({
    message: `Only this file knows ${name}: for other recipes, move it to \`foods.quern\` or name this file under \`foods\` in \`quern.json\`.`,
  }),
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  do Toast the oats.\n',
      '# A food of the house is used, and described elsewhere.\nrecipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
    ],
    bad: [
      'recipe Slab\n  200 g     mill oats\n  do Toast the oats.\n\nfood mill oats\n#    ^^^^^^^^^ food-for-one-file\n  like    rolled oats\n  1 cup = 95 g\n',
      'food kiln flour\n#    ^^^^^^^^^^ food-for-one-file\n  like    plain flour\n\nfood kiln salt\n#    ^^^^^^^^^ food-for-one-file\n  like    fine salt\n',
    ],
  },
});
