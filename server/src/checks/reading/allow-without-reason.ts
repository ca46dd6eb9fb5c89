import { replaceSpan } from '../../edits/text-edit.ts';
import type { Span } from '../../notation/tree.ts';
import { defineCheck } from '../check.ts';

export default defineCheck<{ readonly code: string; readonly end: Span }>({
  code: 'allow-without-reason',
  title: 'A finding is accepted without a reason',
  family: 'reading',
  severity: 'error',
  scope: 'line',
  asks: 'allow',
  source: { kind: 'common practice, no source' },
  explain: `\`allow CODE because REASON\` accepts one finding: on the next line, or on the part or recipe at whose head it stands. The reason is for the next cook, who has to decide whether it still holds, so it cannot be left out, and until it is there the finding stays.

Silent once something stands after \`because\`.`,
  *find(line) {
    const { statement } = line;
    if (statement.kind !== 'allow' || statement.code === undefined || statement.reason !== undefined) return;
    const text = (line.comment === undefined ? line.text : line.text.slice(0, line.comment.start)).trimEnd();
    const end = { start: statement.code.end, end: text.length };
    yield {
      at: { line: 0, start: line.keyword?.start ?? 0, end: text.length },
      values: { code: statement.code.text, end },
    };
  },
  say: ({ code }) => ({
    message: `\`${code}\` is not accepted yet: say why, as in \`allow ${code} because the batter is thin on purpose\`.`,
  }),
  fix: ({ end }, _scene, at) => [
    {
      title: 'Write `because` and a reason to finish',
      effect: 'words',
      edits: [replaceSpan(at.line, end, ' because the kitchen tested it')],
    },
  ],
  examples: {
    good: [
      'recipe Flat cakes\npart batter as shortcrust\n  allow dough-too-wet because it is spooned, not rolled\n  100 g     plain flour\n  50 g      butter\n  90 g      water\n  do Beat the butter, flour and water.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  allow unused-ingredient because it is passed at the table\n  20 g      honey\n  do Rub the butter into the oats.\n',
    ],
    bad: [
      {
        text: 'recipe Flat cakes\npart batter as shortcrust\n  allow dough-too-dry\n# "allow dough-too-dry" allow-without-reason *\n  100 g     plain flour\n  50 g      butter\n  20 g      water\n  do Rub the butter into the flour and bind with the water.\n',
        after: {
          'Write `because` and a reason to finish':
            'recipe Flat cakes\npart batter as shortcrust\n  allow dough-too-dry because the kitchen tested it\n  100 g     plain flour\n  50 g      butter\n  20 g      water\n  do Rub the butter into the flour and bind with the water.\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  allow unused-ingredient because\n# "allow unused-ingredient because" allow-without-reason *: not accepted yet\n  20 g      honey\n  do Rub the butter into the oats.\n',
    ],
  },
});
