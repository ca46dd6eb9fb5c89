/**
 * Knows where perishable food lies between cold and hot for too long: cooled, kept, thawed, set out.
 * Refuses to know whether it is cooked.
 */

import { middle, type Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Act, PlaceKind, TimeSaid } from '../../prose/event.ts';
import { type Body, type FoodState, type Stay, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { Noted } from '../../recipe/journey/noted.ts';
import { isWarm } from '../../recipe/journey/stays.ts';
import { type Sure, weakest } from '../../recipe/journey/sure.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { type HoldingLimits, holdingLimits } from '../safety/limits.ts';
import { overPiecesIn } from './over-pieces.ts';
import { isDrawnOn, isTakenUp } from './set-down.ts';
import { shutOff } from './shut-off.ts';
import { isCooked, isRawBird, isRichDough, type Lists, membersIn, spoils, spoilsInDays, tookWater } from './spoils.ts';
import { type Level, levelOver } from './verdict.ts';

/** A stay that is too warm for too long; its span is what says so. */
export interface TooWarm extends Span {
  readonly kind:
    | 'to the middle'
    | 'to the end'
    /** It cools from hot where it stands. */
    | 'in the room'
    | 'left out'
    /** Out of the cold for days, which it does not keep for, though for hours it does. */
    | 'kept for days'
    /** Put by, with no word of for how long. */
    | 'on a shelf'
    /** Set down in a room or somewhere warm, with no word of for how long; and something happens to it later. */
    | 'set down'
    /** Frozen, and set in a room. */
    | 'thaws'
    /** Filled with what was hot, and not cooked at once. */
    | 'stuffed'
    /** Held at a figure. */
    | 'figure';
  readonly level: Level;
  readonly stay: Stay;
  /** Between cold and hot, with what went before; of a figure that it is cooled to, until then. */
  readonly minutes: Range | undefined;
  /** Of where it lies, as said. */
  readonly celsius: Range | undefined;
  readonly limitMin: number;
}

/** From here on a figure is meant to be warm. */
const BETWEEN_C = 25;
/** Held in the cold at 40 C: the other scale was meant. */
const WRONG_SCALE_C = 30;
/** A roast may rest, and a platter stand, for so long (USDA FSIS, danger zone). */
const SHORT_MIN = 120;
/** A thermometer, and rounding between °C and °F. */
const SLACK_C = 0.6;

/** Every such stay, but of what is in closed jars or in oil. */
export const tooWarm = onceInHouse((house: House, journey: Journey): readonly TooWarm[] => {
  const judged = judgedOn(house, journey);
  if (judged.length === 0) return NONE;
  const except = shutOff(journey).judged;
  let last: ReadonlySet<Stay> | undefined;
  return judged.flatMap(({ stay, passing, waiting }) => {
    if (except.has(stay) || (passing?.kind === 'set down' && isTakenUp(journey, stay))) return NONE;
    if (passing?.kind === 'set down' && passing.level === 'ask' && isDrawnOn(journey, stay))
      return { ...passing, level: 'warning' };
    if (passing === waiting) return passing ?? NONE;
    last ??= new Set(journey.bodies.flatMap(({ waits }) => waits ?? []));
    return (last.has(stay) ? waiting : passing) ?? NONE;
  });
});

/** Where a note says that the dish is kept: no step lets it lie there, so that it is a conclusion. */
export function tooWarmByNote(house: House, { journey, stay }: Noted): TooWarm | undefined {
  if (stay.body.shut === 'jar') return undefined;
  const found = judge(journey, stay, false, holdingLimits(house.foodSafety));
  return found === undefined || found.level === 'ask' ? undefined : { ...found, level: 'warning' };
}

/** Nobody can say where it lies, or for how long. */
export const isQuestion = ({ kind, level }: TooWarm): boolean =>
  level === 'ask' && kind !== 'figure' && kind !== 'to the middle' && kind !== 'to the end';

const NONE: readonly TooWarm[] = [];

interface Judged {
  readonly stay: Stay;
  readonly passing: TooWarm | undefined;
  /** Where nothing is said of it any more. */
  readonly waiting: TooWarm | undefined;
}

const judgedOn = overPiecesIn(
  ({ foodSafety }) => holdingLimits(foodSafety),
  (limits, lists, { stays }) =>
    stays.flatMap((stay): readonly Judged[] => {
      const passing = judge(lists, stay, false, limits);
      const waiting = stay.timed ? passing : judge(lists, stay, true, limits);
      return passing === undefined && waiting === undefined ? [] : [{ stay, passing, waiting }];
    }),
);

function judge(lists: Lists, stay: Stay, isLast: boolean, limits: HoldingLimits): TooWarm | undefined {
  const { by, body, lies } = stay;
  const { act } = by.event;
  if (isRisenTooLong(stay) && isRichDough(lists, body))
    return found('left out', 'warning', stay, by.event.times[0] ?? by.event, limits.leftOut.min, stay.minutes);
  if (act === 'rise' || act === 'dry' || act === 'smoke' || act === 'freeze') return undefined;
  if (isCanned(body)) return undefined;
  // Until it bends and cracks, it dries; boiled rice that is to be dry is wet enough.
  if (by.event.until.some(({ is }) => is === 'dry' || is === 'stage') && !isBoiledPlant(body)) return undefined;
  if (isStuffedWarm(lists, body) && (stay.timed ? stay.minutes.low > SHORT_MIN : by.event.where.length > 0))
    return found('stuffed', stay.timed && !stay.branch ? 'error' : 'warning', stay, by.event, SHORT_MIN);
  if (act === 'cool' && by.event.temperatures.some(({ of }) => of === 'food'))
    return spoils(lists, body) ? tooSlow(stay, limits) : undefined;
  if (act === 'read') return spoils(lists, body) ? notYetCold(stay, limits) : undefined;
  const figure = figureIn(stay);
  const least = (isRoast(lists, body) ? limits.hot.roastC : limits.hot.celsius) - SLACK_C;
  const isHeldWarm = figure !== undefined && figure.celsius.low >= BETWEEN_C && figure.celsius.low < least;
  // What is raw yet is not held warm, but cooked there.
  if (isHeldWarm && body.members.every(({ state }) => state.cooked === 'raw' && (state.was & WAS.animal) !== 0))
    return undefined;
  if ((!isWarm(lies) && !isHeldWarm) || lies.celsius.low >= least) return undefined;
  if (!spoils(lists, body)) return isKeptForDays(stay) && spoilsInDays(lists, body) ? keptForDays(stay) : undefined;
  if (isLife(stay) || mayBeCold(stay)) return undefined;
  const limitMin = limitFor(stay, limits);
  // Nothing grows where a roast may be held.
  const grows = lies.celsius.low < limits.hot.roastC - SLACK_C && isWarm(lies);
  const over = stay.timed && grows ? overIn(stay, limitMin, surenessOf(stay, limitMin)) : undefined;
  const level: Level | undefined = stay.branch && over === 'error' ? 'warning' : over;
  if (figure !== undefined && (level !== undefined || !stay.timed || stay.minutes.high >= SHORT_MIN)) {
    const kept = keptAt(stay, figure.celsius, isLast, limits.cold.celsius);
    // Of what it is, a closed rule tells.
    const held: Level = figure.sure === 'unread' ? 'ask' : stay.branch ? 'warning' : 'error';
    if (!kept && level === undefined) return undefined;
    return found('figure', kept ? held : (level ?? held), stay, figure, limitMin, stay.warmMin, figure.celsius);
  }
  if (level !== undefined) {
    const at = by.event.times.find(({ kind }) => kind !== 'every') ?? by.event;
    const cools = act === 'cool' && body.band === 'hot';
    return found(cools ? 'in the room' : 'left out', level, stay, at, limitMin, stay.warmMin);
  }
  if (thawsThere(stay)) return found('thaws', 'warning', stay, by.event.where.at(-1) ?? by.event, limits.leftOut.min);
  if (!isLast && isSetDown(lists, stay)) {
    const at = by.event.where.at(-1) ?? by.event;
    return found('set down', by.horizon && isAnyCooked(lists, body) ? 'warning' : 'ask', stay, at, limitMin);
  }
  const isPutBy =
    !stay.timed &&
    isLast &&
    OPEN_STAYS.has(act) &&
    by.event.fate !== 'now' &&
    !isServedBeside(stay) &&
    // Brought out of the cold, and set down where no row says how warm it is.
    (lies.sure === 'said' || (lies.sure === 'inferred' && body.band === 'cold')) &&
    by.event.where.length > 0;
  if (!isPutBy || lies.place === 'stove' || lies.place === 'oven') return undefined;
  const at = by.event.where.at(-1) ?? by.event;
  return found('on a shelf', lies.sure === 'said' ? 'warning' : 'ask', stay, at, limits.leftOut.min);
}

/** Boiled rice, pasta or the like, and no flesh. */
const isBoiledPlant = (body: Body): boolean =>
  tookWater(body) && body.members.every(({ state }) => (state.was & WAS.animal) === 0);

/**
 * A night in a room: flour and yeast keep nothing that is not sour yet (USDA FSIS, the two-hour rule, holds for raw egg and milk in it; doughs
 * rise for some hours all the same, so that only a night counts: judgement).
 */
function isRisenTooLong({ timed, minutes, lies, branch, sure }: Stay): boolean {
  const isNight = minutes.low >= NIGHT_LEAST_MIN && middle(minutes) >= NIGHT_MIN;
  return timed && !branch && sure !== 'unread' && isNight && isWarm(lies) && lies.celsius.high >= BETWEEN_C;
}
/** The least of a night, and one of seven hours and a half. */
const NIGHT_LEAST_MIN = 300;
const NIGHT_MIN = 450;

/** In the closed jar in which it was under pressure nothing lives, however slowly it cools; what was filled into one since lies elsewhere. */
const isCanned = ({ shut, members }: Body): boolean =>
  shut === 'jar' && members.some(({ state }) => (state.was & WAS.canned) !== 0);

/** Frozen flesh that is set in a room, with no word of for how long, thaws there (Food Code 2022, 3-501.13). */
const thawsThere = ({ body, by, lies, timed, branch }: Stay): boolean =>
  !timed &&
  !branch &&
  (by.names.length > 0 || by.unnamed === 'it' || by.unnamed === 'name') &&
  body.band === 'frozen' &&
  lies.sure === 'said' &&
  (lies.place === 'room' || lies.place === 'outdoors' || lies.place === 'warm') &&
  by.event.medium === undefined &&
  by.event.act !== 'eat' &&
  by.event.where.some(({ way, not }) => !not && (way === 'at' || way === 'to'));

/** A bird with what was cooked in it, still warm: bacteria grow in the middle, and the oven comes late (USDA FSIS, stuffing). */
const isStuffedWarm = (lists: Lists, body: Body): boolean =>
  (body.band === 'hot' || body.band === 'between') &&
  body.members.some(({ state }) => state.cooked !== 'raw') &&
  membersIn(lists, body).some(isRawBird) &&
  spoils(lists, body);

/** What is worked on is no warmer than this, where it is to stay cold (sausage and fish mixes 2 to 10 °C; common practice, no source). */
const WORKED_C = 10;

/** Whether a figure is one that food is kept at, and neither cold nor hot. */
function keptAt({ by, body, lies, timed }: Stay, { low, high }: Range, isLast: boolean, coldC: number): boolean {
  const { act, as, times, where } = by.event;
  // `Mix for 2 min, keeping it below 6 C`, `it should stay below 10 C`: as long as it is worked on.
  const isAtWork = as === 'beside' || (as === 'told' && where.length === 0);
  if (isAtWork && times.length === 0 && high <= WORKED_C) return false;
  // `Place in the holding cabinet, dial at 115 F`
  const isHeld = body.lies.place === 'hot' || body.lies.place === 'warm';
  if (high <= coldC + SLACK_C || (act === 'unknown' && !isHeld)) return false;
  // `Stir to get below 70 F in two hours` cools it.
  if (act === 'combine' || act === 'eat' || (lies.place === 'cold' && low >= WRONG_SCALE_C)) return false;
  if (act === 'cool') return lies.place === 'cold';
  return isLast || timed || act === 'stay';
}

/** `Serve. Lime and radishes on the side.`: what is named then is none of what was eaten. */
const isServedBeside = ({ by: { names, unnamed }, body }: Stay): boolean =>
  names.length === 0 && unnamed === 'name' && body.members.every(({ state }) => (state.was & WAS.eaten) !== 0);

/** Closed up and stored, with no place said. */
const mayBeCold = ({ lies, body: { vessel } }: Stay): boolean =>
  lies.sure === 'inferred' && (vessel === 'jar' || vessel === 'airtight');

/** How long it is good, with no word of where: in the cold, by what every cook knows. */
const isLife = (stay: Stay): boolean => {
  const { event } = stay.by;
  return (
    (stay.lies.sure === 'unread' || (event.act === 'eat' && !isKeptThere(stay))) &&
    event.where.length === 0 &&
    (event.as === 'told' || event.times.some(({ kind }) => kind === 'life'))
  );
};

/** `Keep on the counter and eat within 5 days`: it is there until then. */
const isKeptThere = ({ lies, body: { waits } }: Stay): boolean =>
  waits?.by.event.craft === 'keep' && waits.lies === lies && lies.sure === 'said';

/** It is said to keep, or to be eaten, for days: nobody makes it by that. */
const isKeptForDays = (stay: Stay): boolean => {
  const { by, timed, minutes, branch, lies } = stay;
  const { act, craft, times, until } = by.event;
  return (
    timed &&
    !branch &&
    minutes.low > DAY_MIN &&
    lies.sure === 'said' &&
    until.length === 0 &&
    (act === 'eat' ? isKeptThere(stay) : craft === 'keep' || craft === 'label' || times.some(isAllowed))
  );
};
const isAllowed = ({ kind }: TimeSaid): boolean => kind === 'life' || kind === 'limit';

function keptForDays(stay: Stay): TooWarm {
  const at = stay.by.event.times.find(({ kind }) => kind !== 'every') ?? stay.by.event;
  return found('kept for days', surenessOf(stay) === 'said' ? 'error' : 'warning', stay, at, DAY_MIN, stay.minutes);
}

/** Meat that was roasted whole, and not cooked through. */
const isRoast = (lists: Lists, body: Body): boolean =>
  membersIn(lists, body).every(
    ({ member: { state }, ingredient }) =>
      (state.was & WAS.animal) === 0 ||
      (foodOf(ingredient)?.class === 'meat' && state.cooked === 'unsaid' && isBaked(state)),
  );

const isBaked = ({ heatedBy }: FoodState): boolean => heatedBy?.event.where.some(({ is }) => is === 'oven') === true;

/** From hot to the middle within two hours, and to the cold within six; each figure has the time behind it. */
function tooSlow(stay: Stay, { cooling }: HoldingLimits): TooWarm | undefined {
  const { by, body } = stay;
  // `60 → 21 °C`: it was hot.
  const isLogged = by.event.temperatures.some(({ of, celsius }) => of === 'food' && celsius.low >= LOGGED_HOT_C);
  const isHot = body.band === 'hot' || isLogged;
  if (!isHot && !body.members.some(({ state }) => state.cooked !== 'raw')) return undefined;
  // `4 C, 48 h life`: so long it keeps then.
  const times = by.event.times.filter(({ kind }) => kind !== 'life');
  for (const { of, celsius, end, sure } of by.event.temperatures) {
    const time = of === 'food' ? (times.find((each) => each.start >= end) ?? times.at(-1)) : undefined;
    if (time === undefined || celsius.high > cooling.middleC + 1) continue;
    const isEnd = celsius.high <= cooling.endC + 1;
    // `Stand the pot in iced water and cool to 20 C`: only what is still warm cools to that.
    if (!isHot && isEnd) continue;
    const limitMin = isEnd ? cooling.endMin : cooling.middleMin;
    if (time.minutes.high > limitMin)
      return found(
        isEnd ? 'to the end' : 'to the middle',
        sure === 'said' ? 'error' : 'warning',
        stay,
        time,
        limitMin,
        time.minutes,
      );
  }
  return undefined;
}

const LOGGED_HOT_C = 50;

/** Read too warm so long after it was hot. */
function notYetCold(stay: Stay, { cooling }: HoldingLimits): TooWarm | undefined {
  const { by, lies, minutes } = stay;
  const isPast = lies.celsius.low > cooling.middleC + 1;
  if (!isPast && lies.celsius.low <= cooling.endC + 1) return undefined;
  const limitMin = isPast ? cooling.middleMin : cooling.endMin;
  const level = levelOver(minutes, limitMin, stay.sure);
  const at = by.event.times.find(({ kind }) => kind !== 'every') ?? by.event;
  return level === undefined || level === 'ask'
    ? undefined
    : found(isPast ? 'to the middle' : 'to the end', stay.branch ? 'warning' : level, stay, at, limitMin, minutes);
}

const DAY_MIN = 1440;

/** Until a time of the day nobody knows from when on: the middle of it counts. */
function overIn({ warmMin, by, vague }: Stay, limit: number, sure: Sure): Level | undefined {
  const level = levelOver(warmMin, limit, sure);
  // `From lunch until supper`: as long as may be, at the least.
  if (level === 'ask' && warmMin.low >= limit && sure !== 'unread') return 'warning';
  // `Serve within 3 d`: how long it is good.
  if (level === 'ask' && by.event.times.some(({ kind, minutes }) => kind === 'limit' && minutes.high >= DAY_MIN))
    return undefined;
  const isHorizon =
    vague === true || by.event.times.some(({ kind, minutes }) => kind === 'until' || isVague(kind, minutes));
  return level === 'ask' && isHorizon && middle(warmMin) > limit && sure !== 'unread' ? 'warning' : level;
}

/** `Half a day`, `in the evening`: nobody means the least of it. */
const isVague = (kind: TimeSaid['kind'], { low, high }: Range): boolean =>
  (kind === 'spent' || kind === 'point') && high < Infinity && low > 0 && high >= VAGUE * low;
const VAGUE = 2.5;

/** Where it is put down is said, and is no place that is cold or where it cooks. */
const isSetDown = (lists: Lists, { timed, branch, by: { event, horizon }, lies, body }: Stay): boolean =>
  !timed &&
  !branch &&
  // While something short is done.
  !event.meanwhile &&
  // Raw flesh is set down to be worked at; until what nobody can measure, it is left.
  (isAnyCooked(lists, body) ||
    (horizon === true &&
      event.until.every(({ at }) => at === undefined) &&
      body.members.some(({ state }) => (state.was & WAS.animal) !== 0))) &&
  OPEN_STAYS.has(event.act) &&
  event.said === 'yes' &&
  event.fate !== 'now' &&
  lies.sure === 'said' &&
  lies.place !== undefined &&
  SET_DOWN.has(lies.place) &&
  event.where.every(({ is }) => is !== 'cold' && is !== 'frozen') &&
  event.where.some(({ not, way }) => !not && (way === 'at' || way === 'to'));
const isAnyCooked = (lists: Lists, body: Body): boolean =>
  membersIn(lists, body).some(({ member, ingredient }) => isCooked(member, ingredient));
const SET_DOWN: ReadonlySet<PlaceKind> = new Set<PlaceKind>(['room', 'outdoors', 'warm']);

const OPEN_STAYS: ReadonlySet<Act> = new Set(['stay', 'pack', 'close', 'cover', 'put', 'reserve']);

/** Two hours while it cools from hot; four for what lies about. */
const limitFor = ({ by, body }: Stay, { cooling, leftOut }: HoldingLimits): number =>
  by.event.act === 'cool' && body.band === 'hot' ? cooling.middleMin : leftOut.min;

/** Some cellars are cold; for days, none is cold enough. */
const CELLAR_MIN = 3 * 1440;
function surenessOf({ sure, lies, body, warmMin, minutes }: Stay, limitMin = DAY_MIN): Sure {
  const mayBeCold = lies.place === 'cool' && lies.celsius.high - lies.celsius.low > 10 && minutes.low < CELLAR_MIN;
  const own = mayBeCold ? weakest(sure, 'inferred') : sure;
  // What is too long by itself rests on nothing before it.
  const isByItself = minutes.low > limitMin;
  return !isByItself && warmMin.high > 0 && body.warmMin.high > 0 ? weakest(own, body.warmSure) : own;
}

/** The figure of where it lies. */
function figureIn({ by, lies }: Stay): (Span & { readonly celsius: Range; readonly sure: Sure }) | undefined {
  const said = by.event.temperatures.find(
    ({ celsius }) => celsius.low === lies.celsius.low || celsius.high === lies.celsius.high,
  );
  return said === undefined ? undefined : { ...said, sure: lies.sure };
}

const found = (
  kind: TooWarm['kind'],
  level: Level,
  stay: Stay,
  { start, end }: Span,
  limitMin: number,
  minutes?: Range,
  celsius?: Range,
): TooWarm => ({ kind, level, stay, start, end, minutes, celsius, limitMin });
