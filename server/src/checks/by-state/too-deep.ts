/**
 * Knows where a large pot goes hot and whole into the cold, and how long its middle stays warm there, by its weight.
 * Refuses to know what spoils.
 */
import { coolingTime } from '../../heat/cooling.ts';
import { type ColdPlace, coldPlaces } from '../../heat/places.ts';
import type { Makeup } from '../../heat/substances.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Act, Event, VesselKind } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type Body, type Stay, WAS } from '../../recipe/journey/bodies.ts';
import { speaksOf } from '../../recipe/journey/deeds.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isOf } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { type HoldingLimits, holdingLimits } from '../safety/limits.ts';
import { membersIn, mixtureIn, spoils } from './spoils.ts';

/** Its span is the order that puts it there. */
export interface TooDeep extends Span {
  readonly level: 'warning' | 'info';
  readonly stay: Stay;
  readonly kg: number;
  /** Minutes until its middle is at the first limit. */
  readonly minutes: Range;
  readonly likelyMin: number;
  readonly limitMin: number;
  /** The same in pans so deep, cm. */
  readonly panMin: number;
  readonly panCm: number;
}

/** g of one pot: of less nobody speaks, as a kitchen's own pots cool about in time; from the second on even the quick end is far too slow (judgement). */
const LEAST_G = 4000;
const LARGE_G = 6000;
/** Water in what flows round a pot, as a share. */
const WET = 0.6;
const LIQUID = 0.25;
const PAN_CM = 5;
const FROM_C = 57;

export const tooDeep = onceInHouse((house: House, journey: Journey): readonly TooDeep[] =>
  journey.stays.flatMap((stay) => judge(holdingLimits(house.foodSafety), journey, stay) ?? []),
);

function judge({ cooling }: HoldingLimits, journey: Journey, stay: Stay): TooDeep | undefined {
  const { body, lies, by } = stay;
  if (body.band !== 'hot' || lies.sure !== 'said' || by.event.said !== 'yes') return undefined;
  const place = placeOf(lies.place);
  const isPut = PUTS.has(by.event.act) || isWhole(by);
  if (place === undefined || !isPut || DIVIDED_IN.has(body.vessel ?? 'open')) return undefined;
  const { of, unweighed, ...dry } = mixtureIn(journey, body);
  const swollenG = isStewed(body) && of.liquid === 0 ? takenUp(journey, body) : 0;
  const massG = dry.massG + swollenG;
  const isWet = dry.waterG + swollenG >= WET * massG && (of.liquid >= LIQUID * massG || isStewed(body));
  if (massG < LEAST_G || unweighed > 1 || !isWet || !spoils(journey, body)) return undefined;
  if (isDivided(journey, stay, of.liquid < LIQUID * massG)) return undefined;
  const across = Math.cbrt((4 * massG) / 1e6 / Math.PI);
  const pot = { makeup: STEW, startC: FROM_C, place, covered: false, thin: true };
  const cooled = coolingTime({ ...pot, depth: across, across }, cooling.middleC);
  const pan = coolingTime({ ...pot, thin: false, depth: PAN_CM / 100 }, cooling.middleC);
  if (cooled === undefined || pan === undefined || cooled.likely <= cooling.middleMin) return undefined;
  const at = by.event.where.findLast(({ not }) => !not) ?? by.event;
  return {
    start: at.start,
    end: at.end,
    level: massG >= LARGE_G && cooled.range.low > cooling.middleMin ? 'warning' : 'info',
    stay,
    kg: massG / 1000,
    minutes: cooled.range,
    likelyMin: cooled.likely,
    limitMin: cooling.middleMin,
    panMin: pan.likely,
    panCm: PAN_CM,
  };
}

/** All of it was simmered together, and nobody ate of it yet: it was liquid, whatever the list says of water. */
const isStewed = ({ members }: Body): boolean =>
  members.every(({ state: { heatedBy, was } }) => heatedBy?.event.medium?.is === 'water' && (was & WAS.eaten) === 0);

/** g of water that what is bought dry took up in the pot, where no line lists it. */
const takenUp = (journey: Journey, body: Body): number =>
  membersIn(journey, body).reduce((grams, { member, ingredient }) => {
    const isDry = isOf(foodOf(ingredient), 'cooks to spoil') && (foodOf(ingredient)?.per100.water ?? 100) < DRY_WATER;
    return isDry && ingredient.weighed.known
      ? grams + SWELLS * middle(ingredient.weighed.grams) * middle(member.share)
      : grams;
  }, 0);
/** Water in 100 g of pulses and grain as bought (USDA SR26). */
const DRY_WATER = 20;
/** Boiled beans are 63 % water (USDA SR26, 16043): so much is taken up, of their weight. */
const SWELLS = 1.4;

/** Most that is cooked in a pot (USDA SR26, stews and soups, from memory). */
const STEW: Makeup = { water: 0.8, protein: 0.07, fat: 0.05, carbohydrate: 0.07, ash: 0.01 };
const PUTS: ReadonlySet<Act> = new Set<Act>(['put', 'stay', 'cool', 'freeze', 'reserve', 'cover', 'close', 'return']);
const DIVIDED_IN: ReadonlySet<VesselKind> = new Set<VesselKind>(['jar', 'airtight', 'wrap', 'tool']);

const placeOf = (place: Body['lies']['place']): ColdPlace | undefined =>
  place === 'cold'
    ? coldPlaces().get('walk-in refrigerator')
    : place === 'frozen'
      ? coldPlaces().get('walk-in freezer')
      : undefined;

/** It is divided, stands on ice or lies in a tray once it is cooked, or how fast it cools is said. What was only `stewed` is no pot once it is drained. */
function isDivided({ steps, parts }: Journey, { body, part, line }: Stay, stewed: boolean): boolean {
  const cooked = body.members.flatMap(({ state }) => state.heatedBy ?? []);
  let isAfter = false;
  for (const step of steps) {
    const isOwn = step.part === part && step.line === line;
    if (step.part === part && step.line > line) break;
    for (const by of step.events) {
      if (cooked.includes(by)) isAfter = true;
      else if (isAfter && stewed && POURS_OFF.has(by.event.craft)) return true;
      else if ((isAfter && DIVIDES.has(by.event.act) && !isWhole(by)) || ((isAfter || isOwn) && isQuick(by.event)))
        return true;
    }
    const own = parts[step.part]?.steps.find((each) => each.line === step.line);
    if ((isAfter || isOwn) && own !== undefined && speaksOf(own, 'tin')) return true;
  }
  return false;
}

/** `Roll it into the chiller`, `wheel the pot in`: by whatever verb, it goes there as it is. */
const isWhole = ({ event: { act, where }, names, unnamed }: BoundEvent): boolean =>
  MOVES.has(act) &&
  names.length === 0 &&
  (unnamed === 'it' || unnamed === 'vessel' || unnamed === 'name') &&
  where.some(({ is, way, not }) => !not && way === 'to' && (is === 'cold' || is === 'frozen'));
const MOVES: ReadonlySet<Act> = new Set<Act>(['pack', 'shape', 'unknown', 'remove']);

/** What is left then is a pot of another weight. */
const POURS_OFF: ReadonlySet<Event['craft']> = new Set<Event['craft']>(['drain', 'strain']);

/** On ice, `to 21 C within 2 h`, `cold in 4 h`. */
const isQuick = ({ act, medium, times, temperatures }: Event): boolean =>
  medium?.is === 'ice' ||
  temperatures.some(({ of, celsius }) => of !== 'oven' && celsius.high <= COOLED_C) ||
  (act === 'cool' && times.some(({ kind }) => kind === 'limit'));
const COOLED_C = 25;
const DIVIDES: ReadonlySet<Act> = new Set<Act>(['divide', 'pack', 'shape', 'cut']);
