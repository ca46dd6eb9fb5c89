/**
 * Knows what heat does to a body: how far each member is cooked, which figures were read, and what that does to its clock.
 * Refuses to know which figure is enough.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event, PlaceKind, Tells } from '../../prose/event.ts';
import type { IngredientRef } from '../names.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, type FoodState, isSameRef, NO_TIME, type Read, WAS, withRead, withStates } from './bodies.ts';
import { bandOf } from './places.ts';
import type { Settled } from './temperatures.ts';

/** From here a figure read in the food tells of its being cooked, and not of a dough or of what is to be lukewarm. */
const LEAST_READ_C = 38;
/** Between °C and °F. */
const ROUNDING_C = 0.6;
/** Water, fat or air cooler than this heats what lies in it no further than itself. */
const GENTLE_C = 80;
/** Meat in air no warmer than this takes hours to be as warm. */
const COOL_AIR_C = 75;
/** Under fat for hours at the simmer or over it: longer than any published time asks (common practice, no source). */
const SUNK_C = 85;
const SUNK_MIN = 120;
/** On high, the shorter time of its books (common practice, no source). */
const SLOW_MIN = 180;
/** Poultry in pieces takes longer than this in any oven (common practice, no source). */
const BEGUN_MIN = 20;
/** In boiling water for no longer than this it is scalded, and raw yet (judgement). */
const PARBOILED_MIN = 4;
/** Whatever reads this all through has nothing left that grows (Food Code 2022, 3-401.11, the least of its figures). */
const LETHAL_C = 63;
/** Below this no time is published for any flesh (Food Code 2022, 3-401.11(B)). */
const LEAST_HELD_C = 54;
/** Words between a figure and its time: `57 C for 2 min`. */
const BESIDE = 6;

/** What these say of a place is no order to heat what lies there. */
const HEATS_NOTHING: ReadonlySet<Event['act']> = new Set([
  'cool',
  'freeze',
  'thaw',
  'rise',
  'eat',
  'adjust',
  'ready',
  'open',
  'read',
  'dry',
]);
const HEATING: ReadonlySet<PlaceKind> = new Set(['oven', 'stove', 'bath']);
/** These come of heat, beside hot water. */
const HOT_SIGNS: ReadonlySet<Tells> = new Set(['thick', 'set', 'boiling', 'hot', 'through', 'figure']);
/** A bath from here on heats what lies in it. */
const LEAST_BATH_C = 45;
/** Jars are processed for so long at least (USDA Complete Guide to Home Canning, 2015: 5 min for the shortest). */
const PROCESSING_MIN = 5;
/** Smoke cooler than this warms nothing. */
const HOT_SMOKE_C = 57;
/** For so long at most, where nobody says how warm, it is smoked hot (common practice, no source). */
const HOT_SMOKE_MIN = 240;

/** Whether an event heats, by its verb or by where it puts the food: `slide it in the oven`, `whisk over simmering water`. */
export function heats(
  { act, as, cooks, craft, where, medium, until, times, verb }: Event,
  { band, members, vessel }: Body,
  temperatures: readonly Settled[],
): boolean {
  // `No stove needed.`
  if (act === 'heat') return verb !== undefined || where.length === 0 || where.some(({ not }) => !not);
  // `Sink the legs in the fat and keep at 90 C`, of what is raw
  if (
    act === 'stay' &&
    temperatures.some(({ of, said }) => (of === 'around' || of === 'medium') && said.celsius.low >= LETHAL_C) &&
    members.some(({ state }) => state.cooked === 'raw' && (state.was & WAS.animal) !== 0)
  )
    return true;
  // `Dry out in the oven at 90 C`
  if (act === 'dry' && temperatures.some(({ of, said }) => of === 'oven' && said.celsius.low >= GENTLE_C)) return true;
  if (HEATS_NOTHING.has(act)) return false;
  // `Fire would only spoil it`
  if (act === 'unknown' && as === 'told' && times.length === 0 && temperatures.length === 0 && until.length === 0)
    return false;
  // `Process for 30 min`, of jars: so long nobody blends in them.
  if (
    act === 'combine' &&
    vessel === 'jar' &&
    times.some(({ kind, minutes }) => kind === 'spent' && minutes.low >= PROCESSING_MIN)
  )
    return true;
  // `Roll in layers until set through`, of raw eggs.
  if (act === 'shape' && until.some(({ is }) => is === 'set' || is === 'through')) return true;
  // `Whisk over simmering water until thick`; `process in boiling water`, of jars.
  if (
    medium?.is === 'water' &&
    act === 'combine' &&
    (vessel === 'jar' || until.some(({ is }) => is !== undefined && HOT_SIGNS.has(is)))
  )
    return true;
  if (temperatures.some(({ of, said }) => of === 'medium' && said.celsius.low >= LEAST_BATH_C) && act !== 'stay')
    return true;
  // `Slip them into simmering water for 3 min`.
  if (act === 'put' && isBoiling(medium) && (times.some(({ kind }) => kind === 'spent') || until.length > 0))
    return true;
  const places = where.flatMap(({ is, way, not }) => (!not && (way === 'at' || way === 'to') && is ? [is] : []));
  if (act === 'smoke' || places.includes('smoker')) {
    if (cooks === 'barely') return false;
    if (temperatures.length > 0) return temperatures.every(({ said }) => said.celsius.low >= HOT_SMOKE_C);
    // `Hang them in the smoker, and hold the smoke at 38 C`: how warm it is comes after.
    if (act !== 'smoke' && times.length === 0) return until.length > 0;
    // Cold smoke takes longer.
    return times.some(({ kind, minutes }) => kind === 'spent' && minutes.high <= HOT_SMOKE_MIN);
  }
  // A slow cooker cooks what is raw, and holds what is hot.
  if (places.includes('hot')) return band !== 'hot' && members.some(({ state }) => state.cooked === 'raw');
  // `Hang them on the rail over the stove`
  if (craft === 'hang' && places.every((place) => place === 'stove')) return false;
  const isHot = medium?.is === 'steam' || medium?.is === 'pressure' || places.some((place) => HEATING.has(place));
  // What was hot is left there.
  return isHot && (act !== 'stay' || members.every(({ state }) => state.cooked === 'raw'));
}

/** The body after it is heated. */
export function heated(body: Body, by: BoundEvent, temperatures: readonly Settled[]): Body {
  const { event } = by;
  // Dry heat does not make flour safe.
  if (body.members.every(({ state }) => (state.was & WAS.flour) !== 0))
    return { ...withStates(body, (state) => ({ ...state, heatedBy: by })), band: 'hot', waits: undefined };
  const cooks = event.cooks ?? 'as read';
  const reads = readsIn(by, temperatures, false);
  const inFood = reads.filter(({ of }) => of === 'food');
  const figures = reads.filter(({ of }) => of !== 'oven');
  const signs =
    (event.until.some(({ is }) => is !== undefined && is !== 'needed' && is !== 'rare') ? WAS.signed : 0) |
    // `Boil until it is absorbed` dries nothing.
    (event.until.some(({ is }) => is === 'dry') && !isWet(event) ? WAS.crisp : 0) |
    (event.until.some(({ is }) => is === 'rare') ? WAS.rare : 0) |
    (event.medium?.is === 'microwaves' ? WAS.microwaved : 0);
  const isPressed = event.medium?.is === 'pressure';
  const pressed = isPressed ? WAS.pressed | (body.vessel === 'jar' || body.shut === 'jar' ? WAS.canned : 0) : 0;
  const again = body.band === 'cold' || body.band === 'frozen' ? WAS.reheated : 0;
  // A figure says more than the verb beside it, and so does `still pink`.
  const isWetThrough = isBoiling(event.medium) && (event.act === 'put' || (cooks === 'as read' && isTimed(event)));
  const through =
    ((cooks === 'through' || isWetThrough || (isPressed && isTimed(event))) &&
      figures.length === 0 &&
      (signs & WAS.rare) === 0) ||
    isSunkInFat(event, body, temperatures);
  const slow = isSlow(event, body);
  const heatedMin = heatingIn(event);
  const boiledMin = boilsIn(event, body) ? heatedMin : 0;
  const states = withStates(body, (before): FoodState => {
    const state = {
      ...before,
      heatedMin: before.heatedMin + heatedMin,
      boiledMin: Math.max(before.boiledMin, boiledMin),
    };
    const isAgain = again !== 0 && isDone(state);
    const bath = inBathAsRead(state, by, reads);
    const all = bath === undefined ? reads : [...reads, bath];
    const read = all.reduce((next, each) => withRead(next, isAgain ? heatedAgain(each) : each), state);
    const was = state.was | signs | pressed | (state.cooked === 'raw' ? 0 : again);
    const isThrough = through || (slow && !isFrozen(state));
    if (state.cooked === 'through' || isThrough)
      return { ...read, cooked: 'through', was, heatedBy: isThrough ? by : state.heatedBy };
    if (cooks === 'barely' && figures.length === 0) return { ...state, was };
    if (cooks === 'outside' && inFood.length === 0)
      return { ...read, cooked: state.cooked === 'raw' ? 'outside' : state.cooked, was, heatedBy: by };
    return { ...read, cooked: 'unsaid', was, heatedBy: by };
  });
  if (cooks === 'barely' && inFood.length === 0) return { ...states, band: 'between', waits: undefined };
  const around = temperatures.find(({ of }) => of === 'medium' || of === 'around');
  const sure = through || inFood.some(({ celsius }) => celsius.low >= LETHAL_C);
  return {
    ...states,
    band: cooks === 'outside' ? 'between' : 'hot',
    lies: {
      place:
        event.where.find((w) => !w.not && (w.way === 'at' || w.way === 'to'))?.is ??
        (around !== undefined && around.said.celsius.high <= GENTLE_C
          ? 'bath'
          : hasOven(temperatures)
            ? 'oven'
            : 'stove'),
      celsius: around?.said.celsius ?? bandOf('stove'),
      sure: 'said',
    },
    // A jar that is boiled is shut by it; a lid of pastry is no lid.
    shut: shutIn(body, through || isWet(event) || event.act === 'combine'),
    rawContact: body.rawContact && !sure,
    warmMin: sure ? NO_TIME : cooks === 'as read' ? { low: 0, high: body.warmMin.high } : body.warmMin,
    waits: undefined,
  };
}

/** `Bath at 60 C`, and later `cook for 2 h`, with no word of another place: it lies in that bath so long. */
function inBathAsRead({ reads }: FoodState, by: BoundEvent, now: readonly Read[]): Read | undefined {
  const { where, medium, cooks } = by.event;
  const held = spentIn(by.event);
  if (cooks !== 'as read' || medium !== undefined || where.some(({ is, not }) => !not && is !== 'bath'))
    return undefined;
  const bath = reads.findLast(({ of }) => of === 'around');
  if (bath === undefined || bath.held.high > 0 || held.low === 0 || now.some(({ of }) => of !== 'food'))
    return undefined;
  const isBath = bath.by.event.where.some(({ is, not }) => is === 'bath' && !not);
  return isBath ? { ...bath, by, held, sure: 'inferred' } : undefined;
}

/** The last figure in it is one that no time makes enough of. */
function isReadLow(reads: readonly Read[]): boolean {
  const last = reads.findLast(({ of }) => of === 'food');
  return last !== undefined && last.celsius.high < LEAST_HELD_C;
}

/** Cooked through, or as hot as nothing lives in. */
const isDone = ({ cooked, reads }: FoodState): boolean =>
  cooked === 'through' || reads.some(({ of, celsius }) => of === 'food' && celsius.low >= LETHAL_C);

/** In the middle of what was cooked before and lay cold. */
const heatedAgain = (read: Read): Read =>
  read.of === 'food' && read.inside && read.when === 'cooking' ? { ...read, when: 'again', sure: 'inferred' } : read;

/** Water that simmers or boils, by its name. */
const isBoiling = (medium: Event['medium']): boolean =>
  medium?.is === 'water' && (medium.celsius?.low ?? 0) >= GENTLE_C;

const isTimed = ({ times }: Event): boolean => times.some(({ kind }) => kind === 'spent');

const isFrozen = ({ was }: FoodState): boolean => (was & WAS.frozen) !== 0 && (was & WAS.thawed) === 0;

/** For hours in a slow cooker that does more than keep warm. */
const isSlow = (event: Event, { lies }: Body): boolean =>
  (lies.place === 'hot' || event.where.some(({ is, not }) => is === 'hot' && !not)) &&
  event.where.every(({ is }) => is !== 'warm') &&
  event.temperatures.length === 0 &&
  spentIn(event).low >= SLOW_MIN;

/** Water around it boils, or as good as, by the order: no slow cooker, and no figure that is lower. */
const boilsIn = ({ as, cooks, medium, where, temperatures, times, vessel }: Event, { lies }: Body): boolean =>
  (medium?.is === 'water' || medium?.is === 'steam' || medium?.is === 'pressure') &&
  cooks !== 'barely' &&
  cooks !== 'outside' &&
  // `I have quit boiling` boils nothing.
  (as !== 'beside' || times.length > 0) &&
  (lies.place !== 'hot' || vessel !== undefined) &&
  where.every(({ is, not }) => is !== 'hot' || not) &&
  temperatures.every(({ of, celsius }) => of === 'oven' || of === 'nothing' || celsius.high >= BOILING_C);
const BOILING_C = 90;

/** Both sides are heated. */
const heatingIn = ({ times }: Event): number =>
  times.reduce(
    (sum, { kind, minutes, per }) => (kind === 'spent' ? (sum ?? 0) + minutes.high * (per === 'side' ? 2 : 1) : sum),
    undefined as number | undefined,
  ) ?? Number.POSITIVE_INFINITY;

/** Seared, half done by what is seen or read, or only begun; no more than scalded it is raw yet. */
export const isPartly = (state: FoodState): boolean =>
  state.cooked !== 'through' && (isToldRaw(state) || isHeatedPartly(state));

/** `The bones will still be raw`: of what nobody heated, it was. */
const isToldRaw = ({ cooked, was }: FoodState): boolean => cooked === 'raw' && (was & WAS.rare) !== 0;

/** By what is told of it, and by no figure that kills: `74 C, and still pink` is done. */
const isTakenOffRare = (state: FoodState): boolean => (state.was & WAS.rare) !== 0 && !isDone(state);

const isHeatedPartly = (state: FoodState): boolean =>
  (state.cooked === 'outside' || isTakenOffRare(state) || isReadLow(state.reads) || isOnlyBegun(state)) &&
  state.heatedBy !== undefined &&
  (state.heatedBy.event.medium?.is !== 'water' || isParboiled(state));

const isParboiled = ({ heatedMin }: FoodState): boolean => heatedMin >= PARBOILED_MIN && heatedMin < Infinity;

/** Whole pieces that lay in the oven for minutes, with nothing said of how far they came. */
const isOnlyBegun = ({ cooked, cut, was, reads, heatedBy, heatedMin }: FoodState): boolean =>
  cooked === 'unsaid' &&
  cut === 'whole' &&
  (was & WAS.signed) === 0 &&
  heatedMin <= BEGUN_MIN &&
  (heatedBy?.event.where.some(({ is }) => is === 'oven') === true || reads.some(({ of }) => of === 'oven')) &&
  reads.every(({ of }) => of !== 'food');

const isSunkInFat = (event: Event, { shut, members }: Body, temperatures: readonly Settled[]): boolean =>
  (event.medium?.is === 'fat' || shut === 'under fat' || members.some(({ state }) => (state.was & WAS.inFat) !== 0)) &&
  temperatures.some(({ of, said }) => of !== 'food' && of !== 'nothing' && said.celsius.low >= SUNK_C) &&
  spentIn(event).low >= SUNK_MIN;

const shutIn = ({ vessel, shut }: Body, sealed: boolean): Body['shut'] => {
  if (vessel === 'jar') return sealed ? 'jar' : shut;
  return shut === 'jar' ? 'covered' : shut;
};

const isWet = ({ medium, where }: Event): boolean =>
  medium?.is === 'water' || medium?.is === 'steam' || where.some(({ is, not }) => is === 'bath' && !not);

const hasOven = (temperatures: readonly Settled[]): boolean => temperatures.some(({ of }) => of === 'oven');

/** A figure that is looked for: `pull it off when the probe says 60 C`; or that it is held at, `for 48 h`. */
export function readIn(body: Body, by: BoundEvent, temperatures: readonly Settled[]): Body {
  const { act } = by.event;
  const isResting = act === 'rise' || (body.band === 'hot' && body.lies.place === 'room');
  const reads = readsIn(by, temperatures, isResting).filter(
    ({ of }) => of === 'food' || (of !== 'oven' && act === 'stay' && body.band === 'hot'),
  );
  const isInBath = body.lies.place === 'bath' && by.event.where.every(({ is, not }) => is === 'bath' || not);
  if (
    act === 'stay' &&
    reads.length === 0 &&
    isInBath &&
    body.lies.celsius.high <= GENTLE_C &&
    body.lies.celsius.low >= LEAST_READ_C
  )
    reads.push({
      by,
      at: by.event,
      celsius: body.lies.celsius,
      held: spentIn(by.event),
      of: 'around',
      inside: false,
      sure: 'inferred',
      when: 'cooking',
    });
  // `And hold for 18 min`: at what was read.
  if (act === 'stay' && reads.length === 0 && body.band === 'hot' && isHeld(by.event))
    return withStates(body, (state) => {
      const last = state.reads.findLast(({ of }) => of === 'food');
      return last === undefined ? state : withRead(state, { ...last, held: spentIn(by.event) });
    });
  if (reads.length === 0) return body;
  const named = namedIn(body, by);
  return withStates(body, (state, of) => {
    if (named !== undefined && !named(of)) return state;
    // `The thigh reads 75 C, while the stuffing reads 55 C`: the first was the other's.
    const own = named === undefined ? state : { ...state, reads: state.reads.filter((read) => read.of !== 'food') };
    return {
      ...reads.reduce((next, read) => withRead(next, readOf(state, read, act)), own),
      cooked: state.cooked === 'through' ? 'through' : 'unsaid',
      heatedBy: state.heatedBy ?? by,
    };
  });
}

/** Of several things that lie together those that a reading names; undefined where it is of all. */
function namedIn({ members }: Body, { event, names }: BoundEvent): ((of: IngredientRef) => boolean) | undefined {
  const those = names.filter(({ role }) => role === 'what').map(({ mention }) => mention);
  if (event.act !== 'read' || those.length === 0) return undefined;
  const isNamed = (of: IngredientRef): boolean =>
    those.some(({ part, ingredients }) =>
      part === undefined ? ingredients.some((ref) => isSameRef(ref, of)) : of.part === part,
    );
  const isStuffed =
    members.some(({ of }) => isNamed(of)) &&
    members.some(({ of, state }) => !isNamed(of) && (state.was & WAS.animal) !== 0);
  return isStuffed ? isNamed : undefined;
}

/** What is kept warm is not cooked by that; and it is as hot as that where it was read so. */
const readOf = (state: FoodState, read: Read, act: Event['act']): Read => ({
  ...read,
  of: isWarmEnough(state, read) ? 'food' : read.of,
  when: act === 'stay' && read.when === 'cooking' && state.cooked !== 'raw' ? 'resting' : read.when,
});

/** `Hold at 63 C for 3 min`, once it has read that much. */
const isWarmEnough = ({ reads }: FoodState, { of, celsius }: Read): boolean =>
  of === 'around' && reads.some((other) => other.of === 'food' && other.celsius.low >= celsius.low - ROUNDING_C);

/** Held as hot as it is, and not left to rest. */
const isHeld = ({ where, cooks }: Event): boolean =>
  cooks === 'as read' ? where.every(({ is }) => is === 'hot') : where.some(({ is, not }) => is === 'hot' && !not);

/** The figures of the food itself, and those around it that are so low that it is no warmer. */
function readsIn(by: BoundEvent, temperatures: readonly Settled[], isResting: boolean): Read[] {
  // At 20 C it bubbles as it ferments.
  const isCool = temperatures.some(({ of, said }) => of === 'around' && said.celsius.high < LEAST_READ_C);
  return [...figuresIn(by, temperatures, isResting), ...(isCool ? [] : signsIn(by))];
}

/** What is seen or felt that tells how hot the food is: `until it bubbles`, `as warm as new milk`. */
const signsIn = (by: BoundEvent): readonly Read[] =>
  by.event.until.flatMap((sign): readonly Read[] => {
    if (sign.celsius === undefined || sign.is === 'stage') return [];
    const { low, high } = sign.celsius;
    const celsius = high < LETHAL_C ? { low: high, high } : { low, high: low };
    const when = by.event.cooks === 'again' ? 'again' : 'cooking';
    return [{ by, at: sign, celsius, held: NO_TIME, of: 'food', inside: false, sure: 'inferred', when }];
  });

function figuresIn(by: BoundEvent, temperatures: readonly Settled[], isResting: boolean): readonly Read[] {
  return temperatures.flatMap(({ said, of, sure }): Read[] => {
    const { celsius } = said;
    const isFood = of === 'food';
    const isAir = of === 'oven' || by.event.medium?.is === 'air' || by.event.medium?.is === 'smoke';
    if (celsius.low < LEAST_READ_C || of === 'nothing') return [];
    const isHot = !isFood && celsius.high > (isAir ? COOL_AIR_C : GENTLE_C);
    if (isHot && of !== 'oven') return [];
    return [
      {
        by,
        at: said,
        celsius,
        ...writtenInF(said),
        held: isFood ? heldAt(by.event, said.end) : spentIn(by.event),
        inside: said.inside,
        of: isFood ? 'food' : isHot ? 'oven' : isAir ? 'air' : 'around',
        sure,
        when: by.event.cooks === 'again' ? 'again' : isResting ? 'resting' : 'cooking',
      },
    ];
  });
}

/** `hold at 60 C for 12 min`: the time of a figure in the food. */
function heldAt({ act, times, until }: Event, end: number): Range {
  // `until it reads 72 C and has stayed there 2 min`
  const isAwaited = (time: Span): boolean =>
    until.some((sign) => sign.start < end && time.start >= end && time.end <= sign.end);
  const time = times.find(
    (each) =>
      each.kind === 'spent' &&
      (act === 'stay' || (each.start >= end && (each.start - end <= BESIDE || isAwaited(each)))),
  );
  return time?.minutes ?? NO_TIME;
}

function spentIn({ times }: Event): Range {
  let [low, high] = [0, 0];
  for (const { kind, minutes } of times) {
    if (kind !== 'spent') continue;
    low += minutes.low;
    high += minutes.high;
  }
  return { low, high };
}

/** The row of a table that is meant is that of the figure as it is written. */
function writtenInF({ written, celsius }: Settled['said']): Pick<Read, 'fahrenheit'> {
  const [node] = written;
  if (node === undefined || node.unit === 'C' || node.unit === 'gas') return {};
  const isF = node.unit === 'F' || Math.abs(celsius.low - (node.lowDegrees - 32) / 1.8) < 0.01;
  return isF ? { fahrenheit: node.lowDegrees } : {};
}
