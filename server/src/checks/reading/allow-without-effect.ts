import { deleteLine } from '../../edits/text-edit.ts';
import { defineCheck, type IdleAllow } from '../check.ts';

export default defineCheck<IdleAllow>({
  code: 'allow-without-effect',
  title: 'A finding is accepted that is not there',
  family: 'reading',
  severity: 'info',
  scope: 'allows',
  source: { kind: 'common practice, no source' },
  explain: `\`allow CODE because REASON\` stands where no such finding is: the recipe has changed since, the line stands in the wrong place, the code is misspelled, or the house has turned the check off.

**Why it matters.** It says that something odd is meant, and there is nothing odd any more; and it would silently accept the next slip.

**What to do.** Take it away, or move it: onto the line above the finding, or to the head of its part or recipe. **Silent** in what builds on another file, where the finding may lie in the other.`,
  *find(idle) {
    yield { at: { line: idle.line, start: idle.code.start, end: idle.code.end }, values: idle };
  },
  say: ({ code, known, off }) => ({
    message: !known
      ? `There is no finding called \`${code.text}\`: mend the code, or take the line away.`
      : off
        ? `The house has turned \`${code.text}\` off, so there is nothing to accept: take the line away.`
        : `No \`${code.text}\` is found here, so there is nothing to accept: take the line away, or move it.`,
  }),
  // A misspelled code accepts nothing yet, and its reason is not Quern's to throw away.
  fix: ({ known, off }, { document }, at) => [
    {
      title: 'Take the `allow` away',
      effect: 'words',
      ...(known && !off && { unattended: true }),
      edits: [deleteLine(document, at.line)],
    },
  ],
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  allow unused-ingredient because it is for the tin\n  20 g      honey\n  do Rub the butter into the oats.\n',
      'recipe Slab\n  allow unused-ingredient because they are passed at the table\n  200 g     rolled oats\n  80 g      butter\n  20 g      honey\n  do Rub the butter into the oats.\n',
    ],
    bad: [
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  allow unused-ingredents because it is for the tin\n# "unused-ingredents" allow-without-effect *: no finding called\n  80 g      butter\n  do Rub the butter into the oats.\n',
        after: {
          'Take the `allow` away':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  allow unused-ingredient because it is for the tin\n# "unused-ingredient" allow-without-effect *: nothing to accept\n  80 g      butter\n  do Rub the butter into the oats.\n',
    ],
  },
});
