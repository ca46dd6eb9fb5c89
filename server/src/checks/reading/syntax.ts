import { replaceSpan } from '../../edits/text-edit.ts';
import type { Misplaced } from '../../notation/outline.ts';
import type { Line, Statement, SyntaxFault } from '../../notation/tree.ts';
import { isBareLine, isGearLine } from '../../recipe/list/bare-line.ts';
import { lacksOnlyItsAmount } from '../../recipe/list/unread.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { onceFor } from '../once.ts';
import { faultsTold, writesOf } from './faults.ts';

/** Whether a check of its own reports the fault. */
const isElsewhere = ({ code }: SyntaxFault, { statement }: Line): boolean =>
  code === 'decimal-comma' || (code === 'missing-amount' && lacksAmount(statement));

/** An ingredient with a name, added to a base or not, and no amount. */
function lacksAmount(statement: Statement): boolean {
  if (statement.kind === 'add')
    return statement.ingredient.amount === undefined && statement.ingredient.name !== undefined;
  return statement.kind === 'ingredient' && statement.amount === undefined;
}

/** An ingredient, or a thing that is none, is listed without an amount. */
const isAllTheSame = (line: Line, world: House['world']): boolean =>
  lacksOnlyItsAmount(line, world) || isBareLine(line, world) || isGearLine(line, world);

const TITLES: Partial<Record<SyntaxFault['code'], string>> = {
  'capital-keyword': 'Write it in small letters',
  'not-a-statement': 'Write the line so that it can be read',
};

export default defineCheck<SyntaxFault>({
  code: 'syntax',
  title: 'A line cannot be read',
  family: 'reading',
  severity: 'error',
  scope: 'line',
  asks: 'faulty',
  source: { kind: 'common practice, no source' },
  explain: `Every line of a recipe says what it is by how it starts: an amount opens an ingredient, \`do\` a step, \`part\` a part, \`yield\`, \`pan\`, \`oven\` and the like a fact about the whole. A line that starts otherwise, or goes on with something that has no place there, cannot be worked out, and nothing on it is weighed or checked.

The message says what to write instead. The lines around it are read as usual. Silent in comments, after \`#\`.`,
  *find(line, house) {
    if (line.faults.length === 0 || isAllTheSame(line, house.world)) return;
    for (const fault of faultsTold(line)) {
      if (!isElsewhere(fault, line)) yield { at: { line: 0, start: fault.start, end: fault.end }, values: fault };
    }
  },
  findInFile: ({ outline }) => misplacedIn(outline.misplaced),
  say: (fault) => ({ message: `This cannot be read: ${fault.detail}.` }),
  fix: (fault, _scene, at) =>
    writesOf(fault).map((write) => ({
      title: TITLES[fault.code] ?? `Write \`${write}\``,
      effect: 'words',
      edits: [replaceSpan(at.line, fault, write)],
    })),
  examples: {
    good: [
      'recipe Oat slab\n  200 g     rolled oats\n  80 g      butter\n  do Melt the butter and stir in the oats.\n',
      'recipe Oat slab\n  oven    160 C\n  200 g     rolled oats       # jumbo, from the sack\n  do Toast the oats.\n',
    ],
    bad: [
      {
        text: 'recipe Oat slab\n  200 g     rolled oats\n  Toast the oats in a dry pan.\n#   "Toast the oats in a dry pan." syntax *: start a step with\n',
        after: {
          'Write the line so that it can be read':
            'recipe Oat slab\n  200 g     rolled oats\n  do Toast the oats in a dry pan.\n',
        },
      },
      {
        text: 'recipe Oat slab\n  200 g     rolled oats\n  - 2 tbsp honey\n#   "- 2 tbsp honey" syntax *: no bullets\n  do Toast the oats with the honey.\n',
        after: {
          'Write the line so that it can be read':
            'recipe Oat slab\n  200 g     rolled oats\n  2 tbsp honey\n  do Toast the oats with the honey.\n',
        },
      },
      'recipe Oat slab\n  200 g     rolled oats\n  oven    160 C\n#   "oven    160 C" syntax: above the first part\n  do Toast the oats.\n',
    ],
  },
});

const misplacedIn = onceFor((misplaced: readonly Misplaced[]): readonly Found<SyntaxFault>[] =>
  misplaced.map(({ at, fault }) => ({ at: { line: at, start: fault.start, end: fault.end }, values: fault })),
);
