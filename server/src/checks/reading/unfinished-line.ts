import type { Span } from '../../notation/tree.ts';
import { defineCheck } from '../check.ts';

export default defineCheck<Span>({
  code: 'unfinished-line',
  title: 'A line of the list ends in `or`',
  family: 'reading',
  severity: 'warning',
  scope: 'line',
  asks: 'ingredient',
  source: { kind: 'common practice, no source' },
  explain: `A printed list breaks a long line, and what stands behind its \`or\` is on the next one. Each line is read by itself: the first is counted, and the other is counted as well, as if both went in, and its allergens are said to be in the dish, not that they may be.

Join the two lines: what stands behind \`or\` is then read as taken in the place of the first. Silent where \`or\` stands within its line.`,
  *find({ text, comment }) {
    const or = ENDS_IN_OR.exec(text.slice(0, comment?.start ?? text.length));
    if (or === null) return;
    const span = { start: or.index + 1, end: or.index + 3 };
    yield { at: { line: 0, ...span }, values: span };
  },
  say: () => ({ message: 'This line goes on in the next one: join it with the next line.' }),
  fix: ({ end }, { document: { lines } }, at) => {
    const next = lines[at.line + 1];
    if (next?.statement.kind !== 'ingredient' || lines[at.line]?.comment !== undefined) return [];
    const character = next.text.length - next.text.trimStart().length;
    const edit = { start: { line: at.line, character: end }, end: { line: at.line + 1, character }, text: ' ' };
    return [{ title: 'Join it with the next line', effect: 'amounts', edits: [edit] }];
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter  # or margarine, or\n  do Melt the butter and stir in the oats.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter or margarine\n  do Melt the butter and stir in the oats.\n',
    ],
    bad: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter,  or\n#                    ^^ unfinished-line: next line\n  do Melt the butter and stir in the oats.\n',
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter or\n#                  ^^ unfinished-line *: join\n  80 g      margarine\n  do Melt the butter and the margarine and stir in the oats.\n',
        after: {
          'Join it with the next line':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter or 80 g      margarine\n  do Melt the butter and the margarine and stir in the oats.\n',
        },
      },
    ],
  },
});

const ENDS_IN_OR = /[\s,]or[\s,.]*$/i;
