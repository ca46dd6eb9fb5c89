/**
 * Knows which perishable food is ready to eat and kept in the cold for more days than it may be.
 * Refuses to know what lies warm, and what is shut off from air.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Act, TimeSaid } from '../../prose/event.ts';
import { type Body, type Stay, sharesFood, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { Noted } from '../../recipe/journey/noted.ts';
import { isCold, isFrozen } from '../../recipe/journey/stays.ts';
import { isIn, listedAs } from '../../recipe/list/families.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { type HoldingLimits, holdingLimits } from '../safety/limits.ts';
import { type Days, rawDays, sourDays } from './kept-raw.ts';
import { lives } from './lives.ts';
import { overPiecesIn } from './over-pieces.ts';
import { shutOff } from './shut-off.ts';
import { type Held, type Lists, membersIn, mixtureIn, SOUR, spoils } from './spoils.ts';
import type { Level } from './verdict.ts';

/** The span is the time that says so. */
export interface KeptCold extends Span {
  readonly level: Level;
  readonly stay: Stay;
  /** What it is mostly. */
  readonly name: string;
  readonly minutes: Range;
  readonly limit: HoldingLimits['kept'];
  /** How a time is said there; undefined where none is. */
  readonly said: 'for' | 'within' | undefined;
  /** It is raw yet, or sour, of which other advice tells. */
  readonly days?: Days;
}

/** What is done while it lies about to change it, and not to keep it. */
const WORKS: ReadonlySet<Act> = new Set(['rise', 'dry', 'smoke', 'freeze', 'thaw']);
/** Sugar and fat over what is wet, as in a ganache, a toffee, a paste of nuts: little is left for anything to grow in (judgement). */
const RICH = 2.5;
/** Sugar in what is wet of it, as in a jam (21 CFR 150.160: 65 % of soluble solids; sweetened condensed milk has as much). */
const PRESERVE = 0.65;

/** Every stay in the cold that is too long; what is shut off from air is found by that. */
export const keptCold = onceInHouse((house: House, journey: Journey): readonly KeptCold[] => {
  const judged = judgedOn(house, journey);
  if (judged.length === 0) return judged;
  const { bodies } = shutOff(journey);
  return judged.filter(
    ({ stay, minutes }) =>
      ![...bodies].some((body) => sharesFood(body, stay.body)) &&
      !(minutes.high <= SMOKED_MIN && isSaltSmoked(journey, stay.body)),
  );
});

/** What a note says of it: a conclusion. */
export function keptColdByNote(house: House, { journey, stay }: Noted): KeptCold | undefined {
  if (shutOff(journey).bodies.size > 0) return undefined;
  const found = judge(journey, stay, holdingLimits(house.foodSafety));
  return found === undefined || found.level === 'ask' ? undefined : { ...found, level: 'warning' };
}

/** Salted and smoked, fish and meat keep for two weeks in the cold (US extension services, smoked fish; from memory). */
const SMOKED_MIN = 14 * 1440;
const SMOKING_SALT = 0.02;

function isSaltSmoked(journey: Journey, body: Body): boolean {
  const { saltG, massG, of } = mixtureIn(journey, body);
  return (
    of.flesh > 0 &&
    saltG >= massG * SMOKING_SALT &&
    journey.steps.some(({ events }) =>
      events.some(
        ({ event }) =>
          event.said === 'yes' && (event.act === 'smoke' || event.where.some(({ is, not }) => is === 'smoker' && !not)),
      ),
    )
  );
}

const judgedOn = overPiecesIn(
  ({ foodSafety }) => holdingLimits(foodSafety),
  (limits, lists, { stays, folded }) => {
    const those = stays.flatMap((stay) => judge(lists, stay, limits) ?? []);
    for (const stay of lives(folded.steps)) {
      const found = judge(lists, stay, limits);
      const isNew =
        (found?.limit === limits.kept || found?.days !== undefined) &&
        !those.some((other) => sharesFood(other.stay.body, stay.body));
      if (found !== undefined && isNew) those.push(found);
    }
    return those.filter(({ stay }) => !stays.some((other) => keepsIt(other, stay.body)));
  },
);

function judge(lists: Lists, stay: Stay, { kept, leftovers = kept }: HoldingLimits): KeptCold | undefined {
  const { by, body, lies, timed } = stay;
  const minutes = keptFor(stay);
  if (!timed || minutes.high <= leftovers.min || minutes.high === Infinity) return undefined;
  if (!isCold(lies) || isFrozen(lies) || body.band === 'frozen' || WORKS.has(by.event.act)) return undefined;
  const [first] = ready(lists, body);
  if (first !== undefined && by.event.act === 'steep') return undefined;
  if (first === undefined || !spoils(lists, body) || keepsCold(lists, body))
    return byDays(stay, minutes, first === undefined ? rawDays(lists, body) : sourDays(lists, stay));
  // `Eat within 3 days, and never after two weeks.`
  const isEaten = by.event.act === 'eat';
  if (isEaten && by.event.times.some(({ kind, minutes: { high } }) => ALLOWS.has(kind) && high <= leftovers.min))
    return undefined;
  // `Eat by Monday`: which day of the week this is, nobody knows.
  if (minutes.low <= kept.min && by.event.times.some(isUntilWeekday)) return undefined;
  // `For next week`: when something else is done.
  if (by.event.act === 'unknown' && by.event.times.every(({ kind }) => kind === 'point')) return undefined;
  const limit = minutes.high > kept.min ? kept : leftovers;
  if (limit !== kept && body.members.every(({ state }) => state.cooked === 'raw')) return undefined;
  const time = by.event.times.find((each) => each.minutes.high > limit.min && each.kind !== 'every');
  const said = time === undefined ? undefined : isEaten ? 'within' : 'for';
  const { start, end } = time ?? by.event;
  const level = limit === kept ? levelOf(stay, minutes, kept.min, time) : 'ask';
  return { level, stay, start, end, name: first.ingredient.name, minutes, limit, said };
}

/** Raw or sour: a conclusion, as what it is is made of is. */
function byDays(stay: Stay, minutes: Range, days: Days | undefined): KeptCold | undefined {
  if (days === undefined || minutes.high <= days.overMin || stay.sure === 'unread') return undefined;
  const { event } = stay.by;
  const time = event.times.find(
    ({ kind, minutes: { low, high } }) =>
      (kind === 'until' ? low : high) > days.overMin && kind !== 'every' && kind !== 'point',
  );
  if (time === undefined) return undefined;
  const said = event.act === 'eat' ? 'within' : 'for';
  const limit = { section: '', min: days.min };
  return {
    level: 'warning',
    stay,
    start: time.start,
    end: time.end,
    name: days.first.ingredient.name,
    minutes,
    limit,
    said,
    days,
  };
}

const isUntilWeekday = ({ kind, minutes }: TimeSaid): boolean =>
  kind === 'until' && minutes.low === DAY_MIN && minutes.high === WEEK_MIN;
const DAY_MIN = 1440;
const WEEK_MIN = 7 * DAY_MIN;

function levelOf({ sure, branch, body }: Stay, minutes: Range, limitMin: number, time: TimeSaid | undefined): Level {
  // What shuts it off from air keeps some of it, and is another danger.
  if (sure === 'unread' || body.shut === 'under fat') return 'ask';
  const isOver = minutes.low > limitMin || (time !== undefined && ALLOWS.has(time.kind));
  return isOver && sure === 'said' && !branch ? 'error' : 'warning';
}

/** `7 days in the fridge, 3 months frozen`: of several times the shortest is that of the fridge; within which hours it is there is none. */
function keptFor({ by, minutes: all }: Stay): Range {
  const away = by.event.times.filter(({ kind, minutes }) => ALLOWS.has(kind) && minutes.high <= PUT_AWAY_MIN);
  const minutes = away.length < by.event.times.length ? lessBy(all, away) : all;
  const keeping = by.event.times.filter(({ kind }) => kind === 'spent' || kind === 'life');
  return keeping.length < 2 ? minutes : keeping.map((time) => time.minutes).reduce((a, b) => (b.high < a.high ? b : a));
}

const lessBy = ({ low, high }: Range, times: readonly TimeSaid[]): Range => ({
  low,
  high: times.reduce((left, { minutes }) => left - minutes.high, high),
});
/** Nothing keeps for so short a time that is to be in the cold by then (judgement). */
const PUT_AWAY_MIN = 240;

/** So long it may be kept, by what is said: the longest is meant too. */
const ALLOWS: ReadonlySet<TimeSaid['kind']> = new Set(['limit', 'life']);

/** It dried for hours, here or there (`in a dehydrator or the oven`), or stood in a bath in its closed jar. */
const keepsIt = ({ by, body, minutes }: Stay, kept: Body): boolean =>
  ((by.event.act === 'dry' && minutes.low >= DRIES_MIN) || (body.shut === 'jar' && body.lies.place === 'bath')) &&
  sharesFood(body, kept);
const DRIES_MIN = 180;

/** What would spoil first, of a body of which nothing is raw flesh or egg any more; nothing where it is to be cooked yet. */
function ready(lists: Lists, body: Body): readonly Held[] {
  const held = membersIn(lists, body);
  const isRaw = held.some(({ member: { state }, ingredient }) => {
    const states = listedAs(ingredient);
    return state.cooked === 'raw' && (state.was & WAS.animal) !== 0 && !states.has('cooked') && !states.has('treated');
  });
  if (isRaw) return [];
  return [
    ...held.filter(({ ingredient }) => isIn(ingredient, 'flesh')),
    ...held.filter(({ ingredient }) => isIn(ingredient, 'animal')),
    ...held.filter(({ ingredient }) => isIn(ingredient, 'plant')),
    ...held,
  ];
}

/** What lives in the cold does not grow in what is as sour, as sweet or as rich; nor in a jar that was canned. */
function keepsCold(lists: Lists, body: Body): boolean {
  const { waterG, alcoholG, acidG, sugarG, fatG } = mixtureIn(lists, body);
  const wet = waterG + alcoholG;
  return (
    acidG >= wet * SOUR ||
    sugarG + fatG >= wet * RICH ||
    sugarG >= (sugarG + wet) * PRESERVE ||
    (body.shut === 'jar' && body.members.some(({ state }) => (state.was & WAS.pressed) !== 0))
  );
}
