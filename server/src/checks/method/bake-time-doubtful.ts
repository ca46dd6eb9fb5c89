import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Bake } from '../../recipe/baking/bakes.ts';
import { ovenTimes, untriedTimes } from '../../recipe/baking/oven-time.ts';
import { restsOn, roundMinutes } from '../../recipe/baking/said.ts';
import type { Estimated } from '../../recipe/baking/time-in-oven.ts';
import type { Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { onceFor } from '../once.ts';
import { heatedIn } from './heated.ts';
import { minutesInOven } from './heated-in-oven.ts';
import { strayTimes } from './out-of-span.ts';

interface Values {
  /** Minutes, as the step says. */
  readonly low: number;
  readonly high: number;
  /** What the model gives, and between what 98 of 100 lie. */
  readonly likely: number;
  readonly least: number;
  readonly most: number;
  readonly rests: string;
}

/** 98 of 100 lie within so many sd. */
const NEARLY_ALL = 2.3263;
/** No kind is known better, for a finding. */
const LEAST_SPREAD = 0.2;
/**
 * The spread below which a kind's times are known well, and °C and m for which the coefficients are fitted. Near them, what is so many times too
 * short is so all the same.
 */
const FITTED = { spread: 0.25, celsius: { low: 145, high: 235 }, depthM: { low: 0.012, high: 0.12 } };
const NEAR: typeof FITTED = { spread: 0.3, celsius: { low: 100, high: 250 }, depthM: FITTED.depthM };

const find = foundAgain<Values>((recipe) =>
  untriedTimes(recipe).flatMap((time): readonly Found<Values>[] => {
    if (time.is === 'declined' || !isFitted(time, NEAR)) return [];
    const said = time.bake.said;
    if (said === undefined) return [];
    const { likely, spread } = time.estimate;
    const wide = NEARLY_ALL * Math.max(spread, LEAST_SPREAD);
    const least = likely * Math.exp(-wide);
    const most = likely * Math.exp(wide);
    if (said.high >= least && said.low <= most) return [];
    const far = isFar(recipe, time, said);
    if (!far && !isFitted(time, FITTED)) return [];
    if (goesInWarm(recipe, time.bake) || isOutOfRange(recipe, time.bake, said) || isTried(recipe, time.bake)) return [];
    return [
      {
        at: { part: time.bake.part.index, line: time.bake.line, start: said.start, end: said.end },
        values: { low: said.low, high: said.high, likely, least, most, rests: restsOn(time).join(', ') },
        ...(far && { severity: 'warning' as const }),
      },
    ];
  }),
);

const isTried = (recipe: Recipe, bake: Bake): boolean =>
  ovenTimes(recipe).some((time) => time.bake === bake && time.is === 'estimated' && time.trials > 0);

/** Then `time-out-of-range` tells of it. */
const isOutOfRange = (recipe: Recipe, { part, line }: Bake, { start }: Span): boolean =>
  straysIn(recipe).has(`${part.index} ${line} ${start}`);

const straysIn = onceFor(
  (recipe: Recipe): ReadonlySet<string> =>
    new Set(
      heatedIn(recipe).flatMap((heated) =>
        strayTimes(heated).map(({ time }) => `${time.part} ${time.line} ${time.start}`),
      ),
    ),
);

/** So many times too long, or too short for what bakes or roasts whole, nobody means it (recipes that work: 0.37 to 1.7 of what is likely, birds and whole joints from 0.57); a short one may be of several pieces. */
const TOO_LONG = 2.4;
const TOO_SHORT: Readonly<Partial<Record<string, number>>> = { bird: 2.6, joint: 2.2, brick: 3.3, pan: 3.3, cup: 3.3 };
function isFar(recipe: Recipe, time: Estimated, said: Range): boolean {
  const {
    bake,
    estimate: { likely },
    load,
  } = time;
  if (bake.event.cooks === 'again') return false;
  if (said.low > likely * TOO_LONG) return isFitted(time, FITTED);
  const shorter = TOO_SHORT[load.kind.form];
  return shorter !== undefined && minutesInOven(recipe, bake) < likely / shorter;
}

function isFitted({ estimate, load }: Estimated, { spread, celsius, depthM }: typeof FITTED): boolean {
  return (
    estimate.spread < spread &&
    load.oven.stages.every((stage) => stage.celsius >= celsius.low && stage.celsius <= celsius.high) &&
    estimate.depth >= depthM.low &&
    estimate.depth <= depthM.high
  );
}

/** Of its mass, what was cooked before: how warm it goes in nobody says. */
const COOKED_BEFORE = 0.3;

function goesInWarm({ parts }: Recipe, { body, said }: Bake): boolean {
  let [all, before] = [0, 0];
  for (const { of, share, state } of body?.members ?? []) {
    const weighed = parts[of.part]?.head.ingredients[of.ingredient]?.weighed;
    if (weighed?.known !== true) continue;
    const grams = weighed.grams.low * share.low;
    all += grams;
    if (state.heatedMin > (said?.high ?? 0)) before += grams;
  }
  return before > COOKED_BEFORE * all;
}

export default defineCheck<Values>({
  code: 'bake-time-doubtful',
  title: 'A bake is much longer or shorter than what lies in the oven takes',
  family: 'method',
  severity: 'info',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'conduction with Choi and Okos properties; coefficients fitted to USDA FSIS roasting charts, Armed Forces Recipe Service cards and others',
  },
  explain: `**What it computes.** How long heat takes into what lies in the oven: from its mass, its tin or shape, what it is made of, the heat of the oven and the temperature at which it is done. It speaks only where the written time lies outside the range that holds 98 of 100 published times of its kind, and louder where that is ${TOO_LONG} times too long, or something whole is in for less than a third of it, a bird for a good third, a joint for less than half.

**Why it matters.** A time that is wrong by half burns the rim or leaves the middle raw; it is the figure most often wrong.

**What to do.** Look at the time, the weight and the pan: one of them may be a slip. Write a trial with the time that it took, and this is silent. A thermometer decides.

**Silent** where no estimate is made (what is done when dry, brown or tender; small pieces; no pan or no weight), where the kind's times are known less well (custards, tarts), below 145 °C and above 235 °C, where much of it was cooked before, and beside a trial that holds.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ low, high, likely, least, most, rests }) => ({
    message: `${low === high ? low : `${low} to ${high}`} min is ${high < least ? 'short' : 'long'} for this: likely ${roundMinutes(likely)} min, and ${roundMinutes(least)} to ${roundMinutes(most)} with nearly every oven, from ${rests}. Look at the time, the weight and the pan; a thermometer decides.`,
    value: high < least ? high : low,
    unit: 'min',
    band: [roundMinutes(least), roundMinutes(most)],
  }),
  examples: {
    good: [
      'recipe Rolled leg of lamb\n  2.4 kg    boneless leg of lamb\n  do Roast the lamb at 163 C for 140 min, to 63 C in the middle, and rest for 3 min.\n',
      'recipe Plain cake as creamed cake\n  yield   8 slices\n  pan     23 cm round\n  130 g     plain flour\n  140 g     sugar\n  75 g      butter\n  80 g      whole egg\n  118 g     whole milk\n  5 g       baking powder\n  do Beat everything together and pour into the tin.\n  do Bake at 177 C for 30 min until a skewer comes out clean.\n',
      'recipe Short cookies as cookie\n  yield   20 cookies\n  200 g     plain flour\n  100 g     sugar\n  120 g     butter\n  do Mix to a dough, roll out and cut in 20.\n  do Bake at 175 C for 45 min until gold.\n',
    ],
    bad: [
      'recipe Rolled leg of lamb\n  2.4 kg    boneless leg of lamb\n  do Roast the lamb at 163 C for 60 min, to 63 C in the middle, and rest for 3 min.\n# "for 60 min" bake-time-doubtful warning: likely 140 min\n',
      'recipe Roast turkey\n  5 kg      turkey\n  do Roast the turkey at 180 C for 30 min, until the thigh reads 74 C.\n# "for 30 min" bake-time-doubtful warning: likely 165 min\n',
      'recipe Plain cake as creamed cake\n  yield   8 slices\n  pan     23 cm round\n  130 g     plain flour\n  140 g     sugar\n  75 g      butter\n  80 g      whole egg\n  118 g     whole milk\n  5 g       baking powder\n  do Beat everything together and pour into the tin.\n  do Bake at 177 C for 80 min until a skewer comes out clean.\n# "for 80 min" bake-time-doubtful warning: long for this\n',
    ],
  },
});
