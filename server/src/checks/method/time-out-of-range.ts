import { replaceSpan } from '../../edits/text-edit.ts';
import type { HeatWay } from '../../heat/spans.ts';
import { durationOf } from '../../recipe/journey/figures.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { calledAs, spanText } from './heat-words.ts';
import { heatedIn } from './heated.ts';
import { strayTimes } from './out-of-span.ts';

interface Values {
  readonly way: HeatWay;
  readonly of: string;
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

const find = foundAgain<Values>((recipe) =>
  heatedIn(recipe).flatMap((heated) =>
    strayTimes(heated).map(({ time, isLong, totalMin, usual, by, meant }): Found<Values> => {
      const { part, line, start, end } = time;
      const { way, of } = heated;
      const step = recipe.parts[part]?.steps.find((each) => each.line === line);
      const figure = step && durationOf(step, { start, end });
      return {
        at: { part, line, start, end },
        values: {
          way,
          of,
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
      };
    }),
  ),
);

export default defineCheck<Values>({
  code: 'time-out-of-range',
  title: 'Something is heated far longer or shorter than its kind ever is',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** How long a thing is baked, stewed, boiled or left to rise, against the least and the most that one of its kind ever takes at such a heat: cookies 3 to 100 min, a braise 10 min to a day. The kind is the one that is written, or plain from the list; else what lies in the oven says it (flesh, a dough with yeast, a batter, a custard). All the heats of a thing together are held against the least.

**Why it matters.** It is a slip of a digit or of minutes for hours.

**What to do.** Mend the figure or its unit. It is an error where it is ${FAR} times beyond.

**Silent** where a time goes by a sign alone, under pressure, in a microwave, and for what is warmed again.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ way, of, minutes, totalMin, isLong, least, most, instead, other }) => {
    const whole = isLong || totalMin === minutes ? spanText(minutes) : `${spanText(totalMin)} in all`;
    const held = isLong ? `${spanText(most)} at most` : `${spanText(least)} at least`;
    const both = [instead, other].flatMap((each) => (each === undefined ? [] : spanText(each))).join(' or ');
    const meant = both === '' ? 'mend the figure.' : `was ${both} meant?`;
    return {
      message: `${whole}${WHERE[way]} is far ${isLong ? 'longer' : 'shorter'} than ${calledAs(of)} ever takes, ${held}: ${meant}`,
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
      'recipe Short cookies as cookie\n  yield   20 cookies\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  do Mix to a dough, roll out and cut in 20.\n  do Bake at 175 C for 10 h until gold.\n# "for 10 h" time-out-of-range error: 1 h at most: was 10 min or 1 h meant\n',
      'recipe Beef stew as braise\n  yield   6 portions\n  1 kg      stewing beef, diced\n  2         onions\n  500 ml    beef stock\n  10 g      salt\n  do Brown the beef for 8 min, add the onions, salt and stock, bring to the boil and simmer for 2 min until tender.\n# "for 2 min" time-out-of-range error: shorter than braise ever takes\n',
    ],
  },
});

const WHERE: Readonly<Record<HeatWay, string>> = {
  oven: ' in the oven',
  stove: ' on the stove',
  fat: ' in fat',
  rise: '',
  none: '',
};
