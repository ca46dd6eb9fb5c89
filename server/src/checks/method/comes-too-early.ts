import { type Early, earlyIn } from '../../recipe/journey/turns.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly why: Early['why'];
}

const SAID: Readonly<Record<Early['why'], string>> = {
  nothing: 'Nothing is in hand here: all that it could be done to comes further down',
  base: 'Nothing is there yet that this could go to: what it belongs with comes further down',
  before: 'This is done to what was not made ready for it: what must come first stands behind it',
};

export default defineCheck<Values>({
  code: 'comes-too-early',
  title: 'A step comes before what it needs',
  family: 'method',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Orders that name no food (\`rest for 20 min\`), or add one to what is there (\`stir in the butter\`), while every line of the list is named only later; and pairs of which the second stands first with nothing of the first before it: cooled, then heated; closed, then filled; drained, then soaked; churned, then cooked or chilled; kept, then packed; served, then cooked; folded in, then beaten.

**Why it matters.** Two steps or sentences stand the wrong way round, or one is missing.

**What to do.** Put the step behind what it needs.

**Silent** where a line is never named, as it may be what is meant, where a vessel or a word that nobody knows may hold it, on a condition, and where an earlier part may be what the order goes on with.`,
  *find(part) {
    const early = earlyIn(part);
    const verb = early?.at.bound.event.verb;
    if (early !== undefined && verb !== undefined)
      yield { at: { line: early.at.line, start: verb.start, end: verb.end }, values: { why: early.why } };
  },
  say: ({ why }) => ({ message: `${SAID[why]}. Put it behind that.` }),
  examples: {
    good: [
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Rest the flour and milk, whisked, for 30 min, then fry in spoonfuls until brown.\n',
      'recipe Sauce as roux sauce\n  40 g      butter\n  40 g      plain flour\n  500 ml    whole milk\n  do Melt the butter, stir in the flour, then the milk little by little, and simmer for 10 min.\n  do Cool.\n',
    ],
    bad: [
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Rest for 30 min.\n#    ^^^^ comes-too-early: Nothing is in hand\n  do Whisk the milk into the flour.\n  do Fry in spoonfuls until brown.\n',
      'recipe Sauce\n  40 g      butter\n  40 g      plain flour\n  500 ml    whole milk\n  do Add the milk little by little.\n#    ^^^ comes-too-early: go to\n  do Melt the butter, stir in the flour and simmer for 10 min.\n',
      'recipe Sauce\n  40 g      butter\n  40 g      plain flour\n  500 ml    whole milk\n  do Rub the butter into the flour and whisk into the milk.\n  do Cool.\n#    ^^^^ comes-too-early: stands behind it\n  do Simmer for 10 min.\n',
    ],
  },
});
