/**
 * Knows each time that something is baked or roasted: the order, what lies in the oven by then, and how hot that is, stage by stage.
 * Refuses to know how long it takes.
 */
import { middle, type Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../journey/bind.ts';
import { type Body, WAS } from '../journey/bodies.ts';
import { isBaked } from '../journey/deeds.ts';
import { heatsOf } from '../journey/figures.ts';
import type { Journey } from '../journey/fold.ts';
import type { FoldedStep } from '../journey/folded-step.ts';
import type { Part } from '../model.ts';

/** °C by the dial, until so many minutes after it went in. */
export interface OvenStage {
  readonly celsius: number;
  readonly untilMin: number;
  readonly fan: boolean;
}

export interface Bake {
  /** Of the last of its orders. */
  readonly part: Part;
  readonly line: number;
  readonly event: Event;
  /** As it comes out; undefined where nobody can tell what is in there. */
  readonly body: Body | undefined;
  /** In the order of time; none where no heat is said. */
  readonly stages: readonly OvenStage[];
  /** It stands in water. */
  readonly inBath: boolean;
  readonly covered: boolean;
  /** °C that the steps look for in the food. */
  readonly target: number | undefined;
  readonly until: Event['until'];
  /** Minutes in the oven as the steps say, all its orders together, and where the last of it stands. */
  readonly said: (Range & Span) | undefined;
}

/** A bake, and which of what is in there a step before has cut up: `PART.INGREDIENT`, one behind another. */
export interface Followed {
  readonly bake: Bake;
  readonly cutUp: string;
}

const BAKES = keptOn<Journey, readonly Followed[]>();

/** All of a journey, in the order of its steps; what goes on at another heat is one. Those that an edit does not reach are the same objects. */
export function bakesIn(journey: Journey): readonly Followed[] {
  let bakes = BAKES.get(journey);
  if (bakes === undefined) {
    bakes = bakesOn(journey);
    BAKES.set(journey, bakes);
  }
  return bakes;
}

function bakesOn(journey: Journey): readonly Followed[] {
  const bakes: Followed[] = [];
  let before: { readonly bake: Bake; readonly members: string; readonly step: FoldedStep } | undefined;
  const cutUp = new Set<string>();
  for (const step of journey.steps)
    for (const { cuts, bake, members } of notedIn(journey, step)) {
      for (const ref of cuts) cutUp.add(ref);
      if (bake === undefined) continue;
      // `Bake at 220 C for 15 min. Turn down to 180 C and bake 40 min more.`
      // Of two in one step, what lies there is known of the second alone.
      const isSame =
        before !== undefined &&
        members !== '' &&
        (before.members === members || (before.step === step && before.members === ''));
      // What was served is warmed or crisped again.
      const isServed = bake.body?.members.some(({ state }) => (state.was & WAS.eaten) !== 0) === true;
      const isOn = isSame && before !== undefined && isTimed(before.bake.event) && !isServed;
      // `Get it into the oven. Bake for 15 min.`
      const isBegun =
        (isSame || members === '') &&
        before !== undefined &&
        !isTimed(before.bake.event) &&
        before.bake.until.length === 0;
      const whole: Bake = isOn && before !== undefined ? goOn(before.bake, bake) : bake;
      const followed = {
        bake: whole,
        cutUp:
          cutUp.size === 0
            ? ''
            : members
                .split(' ')
                .filter((ref) => cutUp.has(ref))
                .join(' '),
      };
      if (isOn || isBegun) bakes[bakes.length - 1] = followed;
      else bakes.push(followed);
      before = { bake: whole, members, step };
    }
  return bakes;
}

/** What one event does that is asked here: it cuts, or it bakes. */
interface Noted {
  readonly cuts: readonly string[];
  readonly bake?: Bake;
  readonly members: string;
}

const NOTHING: readonly never[] = [];
const NOTED = keptOn<FoldedStep, { readonly part: Part; readonly noted: readonly Noted[] }>();

function notedIn({ parts }: Journey, step: FoldedStep): readonly Noted[] {
  const part = parts[step.part];
  if (part === undefined) return NOTHING;
  let kept = NOTED.get(step);
  if (kept?.part !== part) {
    const noted: Noted[] = [];
    for (const by of step.events) {
      if (by.event.craft === 'cut' && by.event.said === 'yes') noted.push({ cuts: refsOf(by), members: '' });
      if (!isOvenHeat(by.event)) continue;
      const bake = bakeOf(step, by, part);
      noted.push({ cuts: NOTHING, bake, members: membersOf(bake.body) });
    }
    kept = { part, noted: noted.length === 0 ? NOTHING : noted };
    NOTED.set(step, kept);
  }
  return kept.noted;
}

/** Whether food is heated by the air of an oven. */
export const isOvenHeat = (event: Event): boolean =>
  event.said === 'yes' &&
  event.as !== 'before' &&
  isBaked(event) &&
  event.craft !== 'grill' &&
  event.medium?.is !== 'microwaves' &&
  event.medium?.is !== 'fat' &&
  event.medium?.is !== 'pressure';

const isTimed = ({ times }: Event): boolean => times.some(({ kind }) => kind === 'spent');

function bakeOf(step: FoldedStep, by: BoundEvent, part: Part): Bake {
  const { event } = by;
  const body = [...step.after.bodies, ...step.ended].findLast(({ members }) =>
    members.some(({ state }) => state.heatedBy === by),
  );
  return {
    part,
    line: step.line,
    event,
    body,
    stages: stagesOf(part, step.line, event),
    inBath:
      event.where.some(({ is, not }) => is === 'bath' && !not) || step.events.some(({ event: e }) => standsInWater(e)),
    covered:
      event.vessel?.is === 'lidded' ||
      event.vessel?.is === 'wrap' ||
      step.events.some(({ event: e }) => e.act === 'cover' && e.said === 'yes'),
    target: event.temperatures.findLast(({ of }) => of === 'food')?.celsius.low,
    until: event.until,
    said: goesOnAt(part, step.line, event) ? undefined : saidOf(event),
  };
}

/** `…, then lower to 170 C and go on for 2 h`: another heat of the oven stands behind it in the step, and no other bake of its own time. */
const goesOnAt = (part: Part, line: number, { end }: Event): boolean =>
  part.steps.some(
    (step) =>
      step.line === line &&
      heatsOf(step).some(({ of, start }) => start >= end && (of === 'oven' || of === 'nothing')) &&
      !boundEvents(step).some(({ event }) => event.start >= end && isOvenHeat(event) && isTimed(event)),
  );

/** Of one time that is no choice and no end of its own. */
function saidOf({ times, batches }: Event): Bake['said'] {
  const [only, ...others] = times.filter(({ kind }) => kind === 'spent');
  if (only === undefined || others.length > 0 || batches !== undefined || only.per !== undefined) return undefined;
  const { minutes, start, end } = only;
  return Number.isFinite(minutes.high) && minutes.low > 0 ? { ...minutes, start, end } : undefined;
}

/** `Set them in a pan of hot water`. */
const standsInWater = ({ act, medium, where, said }: Event): boolean =>
  said === 'yes' &&
  (act === 'put' || act === 'stay') &&
  (medium?.is === 'water' || where.some(({ is }) => is === 'bath'));

/** Its own heat, or what the oven was set to last. */
export function stagesOf(part: Part, line: number, event: Event): readonly OvenStage[] {
  const spent = event.times.find(({ kind }) => kind === 'spent');
  const untilMin = spent === undefined ? Number.POSITIVE_INFINITY : spent.minutes.high;
  const own = event.temperatures.find(({ of }) => of === 'oven');
  let set = own === undefined ? undefined : { celsius: middle(own.celsius), fan: own.written[0]?.fan === true };
  if (set === undefined && part.ovenBefore !== undefined)
    set = { celsius: part.ovenBefore.celsiusLow, fan: part.ovenBefore.fan };
  if (own === undefined)
    for (const step of part.steps) {
      if (step.line > line) break;
      for (const { of, celsius, written, start } of heatsOf(step))
        if (of === 'oven' && (step.line < line || start < event.end))
          set = { celsius: middle(celsius), fan: written[0]?.fan === true };
    }
  return set === undefined ? [] : [{ ...set, untilMin }];
}

const WHOLE = keptOn<Bake, { readonly first: Bake; readonly whole: Bake }>();

/** The later order of what is in the oven already: its end, its figures, and the heats of both. */
function goOn(first: Bake, then: Bake): Bake {
  let kept = WHOLE.get(then);
  if (kept?.first !== first) {
    kept = { first, whole: joined(first, then) };
    WHOLE.set(then, kept);
  }
  return kept.whole;
}

function joined({ stages, said }: Bake, then: Bake): Bake {
  const passed = stages.at(-1)?.untilMin ?? 0;
  const all = said && then.said && { ...then.said, low: said.low + then.said.low, high: said.high + then.said.high };
  return {
    ...then,
    said: all,
    stages: [...stages, ...then.stages.map((each) => ({ ...each, untilMin: passed + each.untilMin }))],
  };
}

/** What it is done to, by name. */
const refsOf = ({ names }: BoundEvent): readonly string[] =>
  names.flatMap(({ role, mention }) =>
    role === 'what' ? mention.ingredients.map(({ part, ingredient }) => `${part}.${ingredient}`) : [],
  );

const membersOf = (body: Body | undefined): string =>
  (body?.members ?? []).map(({ of }) => `${of.part}.${of.ingredient}`).join(' ');
