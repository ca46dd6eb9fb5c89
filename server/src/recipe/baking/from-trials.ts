/**
 * Knows what the trials of a recipe teach of its times in the oven: each against what is computed for the oven it was in, for how warm
 * it went in and for where it was stopped. Refuses to judge what they measured.
 */
import { type Load, sharpened } from '../../heat/estimate.ts';
import { learn, type Observed } from '../../heat/learning.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { DurationNode, TextNode } from '../../notation/tree.ts';
import { placeNamed } from '../../prose/place-named.ts';
import { verbNamed } from '../../prose/verb-named.ts';
import type { HouseOven, Recipe } from '../model.ts';
import { isOutsideFood, readTrials, type Trial } from '../trials/trials.ts';
import { wordsOf } from '../words.ts';
import { estimateOnce } from './estimate-once.ts';
import type { Estimated, OvenTime } from './time-in-oven.ts';

type Took = Trial['took'][number];

/** What one trial took. */
interface Baked {
  readonly observed: Observed;
  readonly oven: TrialOven;
  readonly started: number | undefined;
}

/** What the recipe's own trials took over each; the next time is for the oven of the last of them. */
export function withTrials(recipe: Recipe, times: readonly OvenTime[]): readonly OvenTime[] {
  const trials = readTrials(recipe.outline);
  if (trials.every(({ took }) => took.length === 0)) return times;
  const timed = times.flatMap((time) =>
    time.is === 'estimated' ? [{ time, verb: verbNamed(verbOf(recipe, time) ?? '')?.key }] : [],
  );
  const meant = trials.map((trial) => ({
    trial,
    took: trial.took.map((took) => ({ took, of: meantBy(took, timed) })),
  }));
  return times.map((time) => {
    if (time.is === 'declined') return time;
    const baked = meant.flatMap(({ trial, took }) => {
      const [only, ...others] = took.filter(({ of }) => of === time);
      return only === undefined || others.length > 0 ? [] : (bakedIn(recipe, trial, only.took, time) ?? []);
    });
    return learnedFrom(time, baked);
  });
}

function learnedFrom(time: Estimated, baked: readonly Baked[]): Estimated {
  const last = baked.at(-1);
  if (last === undefined) return time;
  const started = baked.findLast((each) => each.started !== undefined)?.started;
  const load = loadIn(time.load, last.oven, started);
  const estimate = load === time.load ? time.estimate : estimateOnce(load);
  if (estimate === undefined) return time;
  const observed = baked.map((each) => each.observed);
  const { factor, spread, trials } = learn(estimate.spread, observed, last.observed.oven);
  if (trials === 0) return time;
  const { house } = last.oven;
  return {
    ...time,
    load,
    estimate: sharpened(estimate, factor, spread),
    startAssumed: started === undefined && time.startAssumed,
    trials,
    ...(house && { oven: house }),
  };
}

function bakedIn(recipe: Recipe, trial: Trial, only: Took, time: Estimated): Baked | undefined {
  // A range is what somebody expects, and was not measured.
  if (only.duration.lowMin !== only.duration.highMin) return undefined;
  const oven = ovenOf(only.place, recipe);
  if (oven === undefined) return undefined;
  const read = measured(trial.reached.filter(({ place }) => !isOutsideFood(place)).at(-1)?.celsius);
  const started = measured(only.started);
  const load = { ...loadIn(time.load, oven, started), ...(read !== undefined && { targetC: read }) };
  const computed = estimateOnce(load);
  if (computed === undefined) return undefined;
  const observed = {
    log: Math.log(minutesOf(only.duration) / computed.likely),
    read: read !== undefined,
    steepness: computed.steepness,
    ...(oven.name !== undefined && { oven: oven.name }),
  };
  return { observed, oven, started };
}

const measured = (celsius: Range | undefined): number | undefined =>
  celsius !== undefined && celsius.low === celsius.high ? celsius.low : undefined;

interface TrialOven {
  /** As it is compared; none for the oven that nobody names. */
  readonly name: string | undefined;
  readonly house?: HouseOven & { readonly name: string };
}

/** Undefined where it is no oven. */
function ovenOf(place: TextNode | undefined, { world: { ovens = {} } }: Recipe): TrialOven | undefined {
  if (place === undefined) return { name: undefined };
  const name = calledBy(place.text);
  const [own, oven] = Object.entries(ovens).find(([each]) => calledBy(each) === name) ?? [];
  if (own !== undefined) return { name, house: { ...oven, name: own } };
  const is = placeNamed(place.text);
  if (is === 'oven') return { name: undefined };
  // `the deck` is a place out of doors as well, and may be what a house calls its oven.
  return is === undefined || is === 'outdoors' ? { name } : undefined;
}

/** `the lower deck` and `Lower deck oven` are one. */
function calledBy(text: string): string {
  const words = wordsOf(text).filter((word, at) => !(at === 0 && word === 'the'));
  return (words.length > 1 && words.at(-1) === 'oven' ? words.slice(0, -1) : words).join(' ');
}

/** The same in that oven, and as warm as it went in. */
function loadIn(load: Load, { house }: TrialOven, started: number | undefined): Load {
  if (house === undefined && started === undefined) return load;
  const { fan = load.oven.fan, offset = 0 } = house ?? {};
  const stages = load.oven.stages.map((stage) => ({ ...stage, celsius: stage.celsius + offset }));
  return { ...load, oven: { stages, fan }, startC: started ?? load.startC };
}

const minutesOf = ({ lowMin, highMin }: DurationNode): number => (lowMin + highMin) / 2;

/** A bake, and the verb that orders it. */
interface Timed {
  readonly time: Estimated;
  readonly verb: string | undefined;
}

/** The bake of that verb that says nearest to so many minutes. */
function meantBy({ duration, verb }: Took, all: readonly Timed[]): Estimated | undefined {
  const key = verb && verbNamed(verb.text)?.key;
  // A word that orders nothing known is of no bake.
  if (verb !== undefined && key === undefined) return undefined;
  const off = ({ time: { bake, estimate } }: Timed) =>
    Math.abs(Math.log(minutesOf(duration) / (bake.said === undefined ? estimate.likely : middle(bake.said))));
  return all.filter((each) => key === undefined || each.verb === key).toSorted((a, b) => off(a) - off(b))[0]?.time;
}

function verbOf(recipe: Recipe, { bake: { part, line, event } }: Estimated): string | undefined {
  const text = recipe.parts[part.index]?.head.source.lines[line]?.text;
  return event.verb && text?.slice(event.verb.start, event.verb.end);
}
