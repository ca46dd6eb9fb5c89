import { replaceSpan } from '../../edits/text-edit.ts';
import { type UnitMisspelled, unitMisspelled } from '../../recipe/list/unit-spelling.ts';
import { defineCheck } from '../check.ts';

export default defineCheck<UnitMisspelled>({
  code: 'unknown-unit',
  title: 'A unit is not known',
  family: 'reading',
  severity: 'error',
  scope: 'list',
  source: { kind: 'publication', title: 'NIST SP 811 (2008), table 6 and appendix B: unit symbols have one spelling' },
  explain: `A unit that is spelled another way cannot be worked out: the word is taken for part of the name, and the ingredient has no weight. Write \`g\`, \`kg\`, \`ml\`, \`l\`, \`tsp\`, \`tbsp\`, \`cup\`, \`oz\`, \`lb\` and so on; the long forms (\`grams\`, \`cups\`) are read too.

Silent where the words after the number are a known food as they stand.`,
  *find(part, house) {
    for (const ingredient of part.head.ingredients) {
      const values = unitMisspelled(ingredient, house.world);
      if (values !== undefined) yield { at: { line: ingredient.line, ...values.span }, values };
    }
  },
  say: ({ word, write, comesTo }) => ({
    message:
      comesTo !== undefined
        ? `A \`${word}\` has no fixed size: write what is meant in lb, oz or fl oz (${comesTo}).`
        : write === undefined
          ? `A \`${word}\` has no fixed size: write the amount in g, ml, tsp or tbsp, or \`as needed\`.`
          : `\`${word}\` is no unit: write \`${write}\`.`,
  }),
  fix: ({ write, span }, _scene, at) =>
    write === undefined
      ? []
      : [{ title: `Write \`${write}\``, effect: 'words', edits: [replaceSpan(at.line, span, write)] }],
  examples: {
    good: [
      'recipe Dough\n  500 grams bread flour\n  2 tsps    fine salt\n  330 g     water\n  do Mix the flour, salt and water.\n',
      'recipe Dough\n  500 g     bread flour\n  330 g     water\n  2 sprigs  thyme\n  do Mix the flour, thyme and water.\n',
    ],
    bad: [
      {
        text: 'recipe Dough\n  500 graams bread flour\n# "graams" unknown-unit *: write `g`\n  330 g     water\n  do Mix the flour with the water.\n',
        after: {
          'Write `g`': 'recipe Dough\n  500 g bread flour\n  330 g     water\n  do Mix the flour with the water.\n',
        },
      },
      'recipe Bowl\n  200 g     rolled oats\n  2 blobs   olive oil\n# "blobs" unknown-unit: no fixed size\n  do Toss the oats in the olive oil.\n',
    ],
  },
});
