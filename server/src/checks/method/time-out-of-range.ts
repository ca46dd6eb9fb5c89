import { replaceSpan } from '../../edits/text-edit.ts';
import type { HeatWay } from '../../heat/spans.ts';
import { durationOf } from '../../recipe/journey/figures.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { calledAs, spanText } from './heat-words.ts';
import { heatedIn } from './heated.ts';
import { strayTimes } from './out-of-span.ts';
import type { NamedBy } from './written-heat.ts';

interface Values {
  readonly way: HeatWay;
  readonly of: string;
  readonly by: NamedBy | undefined;
  /** Minutes, as it is written, and with all else that heats it. */
  readonly minutes: number;
  readonly totalMin: number;
  readonly isLong: boolean;
  readonly least: number;
  readonly most: number;
  /** Minutes that would fit, of two slips both, and where the figure stands that they take the place of. */
  readonly instead: number | undefined;
  readonly other: number | undefined;
  readonly from: number;
  readonly to: number;
}

/** So many times beyond all that is ever done nobody means it. */
const FAR = 4;

const find = foundAgain<Values>((recipe) => {
  const seen = new Set<string>();
  return heatedIn(recipe).flatMap((heated) =>
    strayTimes(heated).flatMap(({ time, isLong, totalMin, usual, by, meant }): readonly Found<Values>[] => {
      const { part, line, start, end } = time;
      // By its kind, and by its name.
      const key = `${part}.${line}.${start}`;
      if (seen.has(key)) return [];
      seen.add(key);
      const { way, of, by: named } = heated;
      const step = recipe.parts[part]?.steps.find((each) => each.line === line);
      const figure = step && durationOf(step, { start, end });
      return [
        {
          at: { part, line, start, end },
          values: {
            way,
            of,
            by: named,
            minutes: isLong ? time.low : time.high,
            totalMin,
            isLong,
            least: usual.low,
            most: usual.high,
            instead: meant[0],
            other: meant[1],
            from: figure?.start ?? start,
            to: figure?.end ?? start,
          },
          ...(by >= FAR && { severity: 'error' as const }),
        },
      ];
    }),
  );
});

export default defineCheck<Values>({
  code: 'time-out-of-range',
  title: 'Something is heated far longer or shorter than its kind ever is',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** How long a thing is baked, stewed, boiled or left to rise, against the least and the most that one of its kind ever takes at such a heat: cookies 3 to 100 min, a braise 10 min to a day. The kind is the one that is written; else the step, the part or the title says what it is (\`Bake the scones\`, \`Swiss roll\`), if that can be what lies there, or the list plainly does; else what lies in the oven (flesh, a dough with yeast, a batter, a custard). What is of flour, or of egg and milk, and of a known size, as deep as it is in its tin or as heavy as a piece is, is held against that as well; a dough that rises, against the time in which so much yeast doubles it. Also how long potatoes, rice, pasta and eggs boil by themselves, and what fries deep in fat. All the heats of a thing together are held against the least.

**Why it matters.** It is a slip of a digit or of minutes for hours.

**What to do.** Mend the figure or its unit. It is an error where it is ${FAR} times beyond.

**Silent** where a time goes by a sign alone, under pressure, in a microwave, and for what is warmed again.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ way, of, by, minutes, totalMin, isLong, least, most, instead, other }) => {
    const whole = isLong || totalMin === minutes ? spanText(minutes) : `${spanText(totalMin)} in all`;
    const held = isLong ? `${spanText(most)} at most` : `${spanText(least)} at least`;
    const both = [instead, other].flatMap((each) => (each === undefined ? [] : spanText(each))).join(' or ');
    const meant = both === '' ? 'mend the figure.' : `was ${both} meant?`;
    return {
      message: `${whole}${WHERE[way]} is far ${isLong ? 'longer' : 'shorter'} than it ever is for ${calledAs(of, by)}, ${held}: ${meant}`,
      value: isLong ? minutes : totalMin,
      unit: 'min',
      band: [least, Number.isFinite(most) ? most : null],
    };
  },
  fix: ({ instead, other, from, to }, _scene, at) =>
    instead === undefined || other !== undefined || from === to
      ? []
      : [
          {
            title: `Write ${spanText(instead)}`,
            effect: 'amounts',
            edits: [replaceSpan(at.line, { start: from, end: to }, spanText(instead))],
          },
        ],
  examples: {
    good: [
      'recipe Beef stew as braise\n  yield   6 portions\n  1 kg      stewing beef, diced\n  2         onions\n  500 ml    beef stock\n  10 g      salt\n  do Brown the beef for 8 min, add the onions, salt and stock and simmer for 2 h until tender.\n',
      'recipe Shortbread as cookie\n  yield   20 pieces\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  do Mix to a dough and press into a tin.\n  do Bake at 150 C for 1 h until pale gold.\n',
    ],
    bad: [
      'recipe Swiss roll\n  3         eggs\n  75 g      caster sugar\n  75 g      plain flour\n  do Whisk the eggs and sugar, fold in the flour and spread in a tin.\n  do Bake at 200 C for 100 min until springy.\n# "for 100 min" time-out-of-range *: swiss roll (taken from the title), 26 min at most: was 10 min meant\n',
      'recipe Potatoes\n  1 kg      potatoes\n  do Boil the potatoes for 2 min, drain and serve.\n# "for 2 min" time-out-of-range: for potatoes\n',
      'recipe Short cookies as cookie\n  yield   20 cookies\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  do Mix to a dough, roll out and cut in 20.\n  do Bake at 175 C for 10 h until gold.\n# "for 10 h" time-out-of-range error: 1 h at most: was 10 min or 1 h meant\n',
      'recipe Beef stew as braise\n  yield   6 portions\n  1 kg      stewing beef, diced\n  2         onions\n  500 ml    beef stock\n  10 g      salt\n  do Brown the beef for 8 min, add the onions, salt and stock, bring to the boil and simmer for 2 min until tender.\n# "for 2 min" time-out-of-range error: shorter than it ever is for braise\n',
    ],
  },
});

const WHERE: Readonly<Record<HeatWay, string>> = {
  oven: ' in the oven',
  stove: ' on the stove',
  fat: ' in fat',
  rise: '',
  live: '',
  inside: '',
  shelf: '',
  cold: ' in the cold',
  none: '',
};
