import { replaceSpan } from '../../edits/text-edit.ts';
import type { SyntaxFault } from '../../notation/tree.ts';
import { defineCheck } from '../check.ts';
import { faultsTold, writesOf } from './faults.ts';

export default defineCheck<SyntaxFault>({
  code: 'decimal-comma',
  title: 'A number is written with a comma',
  family: 'reading',
  severity: 'error',
  scope: 'line',
  asks: 'faulty',
  source: {
    kind: 'publication',
    title: 'ISO 80000-1:2022, 7.3: both signs are in use for the decimal; the notation takes the point',
  },
  explain: `Half the world writes 1,5 and half writes 1.5, and 1,500 is a thousand and a half to one reader and one and a half to another. In a recipe that is a factor of a thousand, so numbers take the point for decimals and nothing for thousands.

The number is worked out as it most likely was meant until it is mended; one with a point and three figures behind it, as in 1.000 g, is not counted, for nobody can say which is meant. Silent where the comma is followed by a blank: then it ends a clause.`,
  *find(line) {
    for (const fault of faultsTold(line))
      if (fault.code === 'decimal-comma') yield { at: { line: 0, start: fault.start, end: fault.end }, values: fault };
  },
  say: ({ either, detail }) => ({
    message: `${either === undefined ? 'A comma' : 'A point before three figures'} in a number can be read two ways: ${detail}.`,
  }),
  fix: (fault, _scene, at) =>
    writesOf(fault).map((write) => ({
      title: `Write \`${write}\``,
      effect: 'words',
      edits: [replaceSpan(at.line, fault, write)],
    })),
  examples: {
    good: [
      'recipe Loaf\n  1.5 kg    bread flour\n  1000 g    water\n  do Mix the flour with the water.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter, cold\n  do Rub the butter into the oats, bit by bit, for 5 min.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\n  1,5 kg    bread flour\n# "1,5" decimal-comma *: 1.5\n  900 g     water\n  do Mix the flour with the water.\n',
        after: {
          'Write `1.5`':
            'recipe Loaf\n  1.5 kg    bread flour\n  900 g     water\n  do Mix the flour with the water.\n',
        },
      },
      {
        text: 'recipe Loaf\n  1.000 g   bread flour\n# "1.000 g" decimal-comma *: is it `1 g` or `1000 g`\n  650 g     water\n  do Mix the flour with the water.\n',
        after: {
          'Write `1 g`': 'recipe Loaf\n  1 g   bread flour\n  650 g     water\n  do Mix the flour with the water.\n',
          'Write `1000 g`':
            'recipe Loaf\n  1000 g   bread flour\n  650 g     water\n  do Mix the flour with the water.\n',
        },
      },
      'recipe Loaf\n  1,500 g   bread flour\n# "1,500" decimal-comma *: without the comma\n  900 g     water\n  do Mix the flour with the water.\n',
    ],
  },
});
