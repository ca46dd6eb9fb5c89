/**
 * Knows what heat does to a body: how far each member is cooked, which figures were read, and what that does to its clock.
 * Refuses to know which figure is enough.
 */
import type { Event } from '../../prose/event.ts';
import type { IngredientRef } from '../model.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, type FoodState, isSameRef, NO_TIME, type Read, WAS, withRead, withStates } from './bodies.ts';
import { isBoiling } from './heats.ts';
import { isDone } from './partly.ts';
import { bandOf } from './places.ts';
import { GENTLE_C, isOfOther, LEAST_HEATED_C, LEAST_READ_C, LETHAL_C, readsIn, spentIn } from './readings.ts';
import type { Settled } from './temperatures.ts';

/** Between °C and °F. */
const ROUNDING_C = 0.6;

/** Under fat for hours at the simmer or over it: longer than any published time asks (common practice, no source). */
const SUNK_C = 85;
const SUNK_MIN = 120;
/** On high, the shorter time of its books (common practice, no source). */
const SLOW_MIN = 180;

/** The body after it is heated. */
export function heated(body: Body, by: BoundEvent, temperatures: readonly Settled[]): Body {
  const { event } = by;
  // Dry heat does not make flour safe.
  if (body.members.every(({ state }) => (state.was & WAS.flour) !== 0))
    return { ...withStates(body, (state) => ({ ...state, heatedBy: by })), band: 'hot', waits: undefined };
  const cooks = event.cooks ?? 'as read';
  const reads = readsIn(by, temperatures, false, LEAST_HEATED_C);
  const inFood = reads.filter(({ of }) => of === 'food');
  const figures = reads.filter(({ of }) => of !== 'oven');
  const isRare = event.until.some(({ is }) => is === 'rare');
  const signs =
    // `Until brown outside and raw within`
    (!isRare && event.until.some((sign) => isSeenDone(event, sign)) ? WAS.signed : 0) |
    // `Boil until it is absorbed` dries nothing.
    (event.until.some(({ is }) => is === 'dry') && !isWet(event) ? WAS.crisp : 0) |
    (isRare ? WAS.rare : 0) |
    (event.medium?.is === 'microwaves' ? WAS.microwaved : 0);
  const isPressed = event.medium?.is === 'pressure';
  const pressed = isPressed ? WAS.pressed | (body.vessel === 'jar' || body.shut === 'jar' ? WAS.canned : 0) : 0;
  const inJar = body.vessel === 'jar' && (isWet(event) || event.act === 'combine') ? WAS.boiledInJar : 0;
  const again = body.band === 'cold' || body.band === 'frozen' ? WAS.reheated : 0;
  // A figure says more than the verb beside it, and so does `still pink`.
  // `Drop in boiling water, and when its surface is white lift it out`: how long that takes nobody says.
  const isDipped =
    event.act === 'put' && !isTimed(event) && event.until.every(({ is }) => is === undefined || is === 'needed');
  const isWetThrough =
    isBoiling(event.medium) && !isDipped && (event.act === 'put' || (cooks === 'as read' && isTimed(event)));
  const through =
    ((cooks === 'through' || isWetThrough || (isPressed && isTimed(event))) &&
      figures.length === 0 &&
      (signs & WAS.rare) === 0) ||
    isSunkInFat(event, body, temperatures);
  const slow = isSlow(event, body);
  const isLow = isInSlow(event, body) && !boilsIn(event, body);
  // `The middle should still tremble`, as it comes out.
  const isLook = event.as === 'told' && !isTimed(event) && body.band === 'hot';
  const heatedMin = isLook ? 0 : heatingIn(event);
  const boiledMin = boilsIn(event, body) ? heatedMin : 0;
  const states = withStates(body, (before): FoodState => {
    if ((before.was & WAS.lifted) !== 0) return before;
    const state = {
      ...before,
      // Hours of a slow cooker do nothing for beans that never boiled.
      heatedMin:
        before.heatedMin + (isLow && before.boiledMin === 0 && (before.was & WAS.animal) === 0 ? 0 : heatedMin),
      boiledMin: Math.max(before.boiledMin, boiledMin),
    };
    const isAgain = again !== 0 && isDone(state);
    const bath = inBathAsRead(state, by, reads);
    const all = bath === undefined ? reads : [...reads, bath];
    const read = all.reduce((next, each) => withRead(next, isAgain ? heatedAgain(each) : each), state);
    const brief = isBrief(event, before);
    const was =
      state.was | (brief ? signs & ~WAS.signed : signs) | pressed | inJar | (state.cooked === 'raw' ? 0 : again);
    const isThrough = (through && !brief) || (slow && !isFrozen(state));
    if (state.cooked === 'through' || isThrough)
      return {
        ...read,
        cooked: 'through',
        was,
        heatedBy: isThrough ? (isLook && state.heatedBy) || by : state.heatedBy,
      };
    if (cooks === 'barely' && figures.length === 0) return { ...state, was };
    if (cooks === 'outside' && inFood.length === 0)
      return { ...read, cooked: state.cooked === 'raw' ? 'outside' : state.cooked, was, heatedBy: by };
    // How long that is nobody says.
    const open = through && brief ? WAS.puzzled : 0;
    return { ...read, cooked: 'unsaid', was: was | open, heatedBy: (isLook && state.heatedBy) || by };
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
    // A jar that is boiled is shut by it; a lid of pastry is no lid. What was frozen in its pack is cooked out of it, unless it is canned.
    ...(body.band === 'frozen' && (pressed & WAS.canned) === 0
      ? { vessel: undefined, shut: 'open' as const }
      : { shut: shutIn(body, through || isWet(event) || event.act === 'combine') }),
    rawContact: body.rawContact && !sure,
    warmMin: sure ? NO_TIME : cooks === 'as read' ? { low: 0, high: body.warmMin.high } : body.warmMin,
    waits: undefined,
  };
}

const isSeenDone = (event: Event, sign: Event['until'][number]): boolean =>
  sign.is !== undefined && sign.is !== 'needed' && sign.is !== 'rare' && !isOfOther(event, sign);

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

/** `It still bleeds; pour on the wine and let it boil off`: for no time that is said, and to no sign but of the wine. */
const isBrief = (event: Event, before: FoodState): boolean =>
  (before.was & WAS.rare) !== 0 &&
  !isDone(before) &&
  !isTimed(event) &&
  event.until.every(({ is }) => is === 'dry') &&
  event.medium?.is !== 'pressure';

/** In the middle of what was cooked before and lay cold. */
const heatedAgain = (read: Read): Read =>
  read.of === 'food' && read.inside && read.when === 'cooking' ? { ...read, when: 'again', sure: 'inferred' } : read;

const isTimed = ({ times }: Event): boolean => times.some(({ kind }) => kind === 'spent');

const isFrozen = ({ was }: FoodState): boolean => (was & WAS.frozen) !== 0 && (was & WAS.thawed) === 0;

const isInSlow = ({ where }: Event, { lies }: Body): boolean =>
  lies.place === 'hot' || where.some(({ is, not }) => is === 'hot' && !not);

/** For hours in a slow cooker that does more than keep warm. */
const isSlow = (event: Event, body: Body): boolean =>
  isInSlow(event, body) &&
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
