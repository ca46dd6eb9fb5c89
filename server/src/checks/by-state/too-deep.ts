/**
 * Knows where a large pot goes hot and whole into the cold, and how long its middle stays warm there, by its weight.
 * Refuses to know what spoils.
 */
import { coolingTime } from '../../heat/cooling.ts';
import { type ColdPlace, coldPlaces } from '../../heat/places.ts';
import type { Makeup } from '../../heat/substances.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Act, Event, VesselKind } from '../../prose/event.ts';
import type { Body, Stay } from '../../recipe/journey/bodies.ts';
import { speaksOf } from '../../recipe/journey/deeds.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { type HoldingLimits, holdingLimits } from '../safety/limits.ts';
import { mixtureIn, spoils } from './spoils.ts';

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
  if (place === undefined || !PUTS.has(by.event.act) || DIVIDED_IN.has(body.vessel ?? 'open')) return undefined;
  const { massG, waterG, unweighed, of } = mixtureIn(journey, body);
  const isWet = waterG >= WET * massG && of.liquid >= LIQUID * massG;
  if (massG < LEAST_G || unweighed > 1 || !isWet || !spoils(journey, body)) return undefined;
  if (isDivided(journey, stay)) return undefined;
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

/** It is divided, stands on ice or lies in a tray once it is cooked, or how fast it cools is said. */
function isDivided({ steps, parts }: Journey, { body, part, line }: Stay): boolean {
  const cooked = body.members.flatMap(({ state }) => state.heatedBy ?? []);
  let isAfter = false;
  for (const step of steps) {
    const isOwn = step.part === part && step.line === line;
    if (step.part === part && step.line > line) break;
    for (const by of step.events) {
      if (cooked.includes(by)) isAfter = true;
      else if ((isAfter && DIVIDES.has(by.event.act)) || ((isAfter || isOwn) && isQuick(by.event))) return true;
    }
    const own = parts[step.part]?.steps.find((each) => each.line === step.line);
    if ((isAfter || isOwn) && own !== undefined && speaksOf(own, 'tin')) return true;
  }
  return false;
}

/** On ice, `to 21 C within 2 h`, `cold in 4 h`. */
const isQuick = ({ act, medium, times, temperatures }: Event): boolean =>
  medium?.is === 'ice' ||
  temperatures.some(({ of, celsius }) => of !== 'oven' && celsius.high <= COOLED_C) ||
  (act === 'cool' && times.some(({ kind }) => kind === 'limit'));
const COOLED_C = 25;
const DIVIDES: ReadonlySet<Act> = new Set<Act>(['divide', 'pack', 'shape', 'cut']);
