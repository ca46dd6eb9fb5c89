import { putBack } from '../../edits/put-back.ts';
import type { Line } from '../../notation/tree.ts';
import type { Fact, Trial } from '../../recipe/trials/trials.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { changedIn, factsIn, trialsOf } from './trials-read.ts';

interface Values {
  /** The latest trial, which did not have it, or had a line that is gone. */
  readonly latest: string;
  readonly gone?: true;
  /** The last trial that tested the line as it stands, if any. */
  readonly agreed?: string;
  readonly trialLine: number;
}

export default defineCheck<Values>({
  code: 'untested-change',
  title: 'An amount, time or temperature was changed after the last trial',
  family: 'testing',
  severity: 'info',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** A trial carries, on its \`tested\` line, a short mark for every amount, time and temperature that stood in the recipe when it was cooked. A line of the list or the method whose mark is not among the latest trial's was changed, or added, since; where there is none, and the trial has marks left over, a line was taken out, and that is said where the trial opens.

**Why it matters.** A recipe is not done until it has been cooked as written. A figure changed at the desk is a guess.

**What to do.** Cook it again and record the trial; or put the old figure back: a fix does so where the trial says what was taken, reached or used, and its marks agree. **Silent** for wording, notes, layout and the spelling of units, and in a recipe none of whose trials carries marks.`,
  find({ recipe, outline }) {
    const trials = withMarks(trialsOf(outline));
    const latest = trials.at(-1);
    if (latest?.tested === undefined) return [];
    const facts = factsIn(recipe);
    const changed = changedIn(latest.tested, facts);
    if (changed.length === 0) {
      const line = outline.lines[latest.at];
      return facts.length < latest.tested.length && line !== undefined ? [goneSince(latest, line)] : [];
    }
    return changed.flatMap((fact) => {
      const line = recipe.parts[fact.part]?.head.source.lines[fact.line];
      return line === undefined ? [] : [changedLine(line, fact, trials)];
    });
  },
  say: ({ latest, gone, agreed, trialLine }) => ({
    message: gone
      ? `A line that was tested on ${latest} is not in the recipe any more: cook it again and record the trial.`
      : `This was not so when the recipe was last cooked, on ${latest}${agreed === undefined ? '' : `; it agrees with the trial of ${agreed}`}: cook it again and record the trial.`,
    related: gone ? [] : [{ at: { line: trialLine, start: 0, end: 5 }, message: 'The latest trial.' }],
  }),
  fix: ({ gone }, { document, recipe, outline }, at) => {
    const latest = trialsOf(outline).findLast((t) => t.tested !== undefined);
    const back = gone || latest === undefined ? undefined : putBack(document, recipe, latest, at.line);
    return back === undefined ? [] : [{ title: `Put back ${back.written}`, effect: 'amounts', edits: back.edits }];
  },
  examples: {
    good: [
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10 min.\n\ntrial 2026-09-14\n  verdict keep\n',
      'recipe Oats\n  0.2 kg    rolled oats, fine\n  do Toast the oats with care for 10 min.\n\ntrial 2026-09-14\n  tested  xmtsac\n  verdict keep\n',
    ],
    bad: [
      'recipe Oats\n  250 g     rolled oats\n# "250 g     rolled oats" untested-change: 2026-09-14\n  do Toast the oats for 10 min.\n\ntrial 2026-09-14\n  tested  xmtsac\n  verdict keep\n',
      {
        text: 'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 14 min.\n# "do Toast the oats for 14 min." untested-change *\n\ntrial 2026-09-14\n  took    10 min to toast\n  tested  xmtsac\n  verdict keep\n',
        after: {
          'Put back 10 min':
            'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10 min.\n\ntrial 2026-09-14\n  took    10 min to toast\n  tested  xmtsac\n  verdict keep\n',
        },
      },
    ],
  },
});

const withMarks = onceFor((trials: readonly Trial[]) => trials.filter((t) => t.tested !== undefined));

const goneSince = onceWith(
  ({ at, date }: Trial, { text }: Line): Found<Values> => ({
    at: { line: at, start: 0, end: text.trimEnd().length },
    values: { latest: date, gone: true, trialLine: at },
  }),
);

/** `trials` are those that carry marks, one at least. */
const changedLine = onceWith((line: Line, fact: Fact, trials: readonly Trial[]): Found<Values> => {
  const latest = trials.at(-1) as Trial;
  const agreed = trials.findLast((t) => t.tested?.includes(fact.mark) || t.tested?.includes(fact.before ?? fact.mark));
  const text = line.text.slice(0, line.comment?.start).trimEnd();
  const start = text.length - text.trimStart().length;
  return {
    at: { part: fact.part, line: fact.line, start, end: text.length },
    values: { latest: latest.date, ...(agreed && { agreed: agreed.date }), trialLine: latest.at },
  };
});
