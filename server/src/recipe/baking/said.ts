/** Knows an estimate, or why there is none, in a cook's words. Refuses to work one out. */
import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Declined } from './kind-of-bake.ts';
import type { Estimated, OvenTime } from './time-in-oven.ts';

/** Why nothing is estimated. */
const WHY_DECLINED: Readonly<Record<Declined, string>> = {
  dry: 'it is done when it is dry and brown, not when it is hot',
  tender: 'it is done when it is tender, long after it is hot',
  small: 'pieces so small or thin are done by their own thickness, which is not written',
  blind: 'a crust by itself is done when it is dry and brown, not when it is hot',
  frozen: 'it goes in frozen',
  stuffed: 'it is stuffed, and how tightly decides',
  cut: 'it is cut up, and how big the pieces are decides',
  contents: 'no step tells what is in the oven by then',
  'no weight': 'a weight of what is in the oven, or what it is made of, is not known',
  'no pan': 'no `pan` line tells what it is baked in',
  'no heat': 'no step tells how hot the oven is',
  'unknown sort': 'nothing is known of how such a thing heats',
  overfull: 'more is to go into the tin than it holds',
  'out of range': 'at these heats and temperatures nothing is done',
};

export const whyDeclined = (why: Declined): string => WHY_DECLINED[why];

/** Minutes as a cook plans them. */
export function roundMinutes(minutes: number): number {
  const step = minutes < 20 ? 1 : minutes < 180 ? 5 : 10;
  return Math.round(minutes / step) * step;
}

/** `likely 75 min (60 to 95), from …; a thermometer decides`; or `not estimated: …`. */
export function ovenTimeText(time: OvenTime): string {
  if (time.is === 'declined') return `not estimated: ${whyDeclined(time.why)}`;
  const { trials } = time;
  const rests = trials === 0 ? 'no trial yet' : trials === 1 ? 'with one trial' : `with ${trials} trials`;
  return `${rangeText(time)}, from ${restsOn(time).join(', ')}; ${rests}; ${rise(time)}a thermometer decides`;
}

/** `likely 75 min (60 to 95)` */
export const rangeText = ({ estimate }: Estimated): string =>
  `likely ${roundMinutes(estimate.likely)} min (${roundMinutes(estimate.low)} to ${roundMinutes(estimate.high)})`;

/** What it is worked out from. */
export function restsOn({ load, estimate, targetAssumed, startAssumed, oven }: Estimated): readonly string[] {
  const { celsius } = load.oven.stages.at(-1) ?? { celsius: 0 };
  const fan = load.oven.fan ? ' with the fan' : '';
  const off = oven?.offset ?? 0;
  const dial = off === 0 ? '' : ` (${trimmed(celsius - off, 0)} °C by its dial)`;
  const heat = `${trimmed(celsius, 0)} °C${fan}${oven === undefined ? '' : ` in ${oven.name}${dial}`}`;
  const end = `${trimmed(load.targetC, 0)} °C at the coldest place${targetAssumed ? ` (assumed of a ${load.kind.name})` : ''}`;
  return [
    `${gramsText(load.massKg * 1000)} g`,
    load.form.is === 'pan'
      ? `${trimmed(estimate.depth * 100, 1)} cm deep`
      : `${trimmed(estimate.depth * 200, 1)} cm across at the thinnest`,
    `${trimmed(load.startC, 0)} °C as it goes in${startAssumed ? ' (assumed)' : ' (measured in a trial)'}`,
    ...(load.pan === undefined ? [] : [`in ${panWord(load.pan.word)}`]),
    heat,
    end,
  ];
}

/** `take it out at 58 °C, and it rises by about 5 °C as it rests`: of a joint or bird. */
function rise({ estimate, load }: Estimated): string {
  const { form } = load.kind;
  const by = Math.round(estimate.rise);
  return (form === 'joint' || form === 'bird') && by > 0 ? `the middle rises by about ${by} °C as it rests; ` : '';
}

/** `in glass`, `in a dark tin` */
const panWord = (word: string): string => (word === 'dark' || word === 'black' ? `a ${word} tin` : word);
