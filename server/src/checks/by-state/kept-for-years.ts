/**
 * Knows what is made wet at home and is said to keep out of the cold for years: no jam, pickle or syrup is good for so long; and what is of a kind
 * that is stale, spoilt or burst sooner.
 * Refuses to know what is dangerous sooner.
 */
import { spansOf } from '../../heat/spans.ts';
import type { Body, Stay } from '../../recipe/journey/bodies.ts';
import type { Noted } from '../../recipe/journey/noted.ts';
import { isFrozen, isWarm } from '../../recipe/journey/stays.ts';
import { kindOf } from '../method/taken-for.ts';
import { overPieces } from './over-pieces.ts';
import { type Lists, mixtureIn } from './spoils.ts';

/** From here on nobody means a pantry (USDA Complete Guide to Home Canning (2015), Guide 1: within a year; from memory). */
export const YEARS_MIN = 2.5 * 365 * 1440;
export const GOOD_MIN = 365 * 1440;
/** Of the whole: spirit, salt and sugar in which things age for years, and water below which they are dry (judgement). */
const SPIRIT = 0.1;
const SALTED = 0.08;
const CANDIED = 0.5;
const DRY_WATER = 0.25;

/** Minutes that what a body is made of keeps out of the cold at the most, by the kind that keeps least; undefined where no row has one, or the stay is no longer. */
export function shelfLife(
  { parts }: Lists,
  { by: { event }, body, lies, minutes, timed, branch }: Stay,
): number | undefined {
  if (!timed || branch || event.said !== 'yes' || lies.sure === 'unread' || !isWarm(lies)) return undefined;
  const kinds = new Set(body.members.map(({ of }) => kindOf(parts[of.part])));
  const least = Math.min(
    ...[...kinds].flatMap((kind) =>
      kind === undefined ? [] : spansOf(kind, 'shelf').map((span) => span.minutes.high),
    ),
  );
  return minutes.high > least && minutes.high < Infinity ? least : undefined;
}

export const keptForYears = overPieces((lists, { stays }) => stays.filter((stay) => isTooLong(lists, stay)));

export const isTooLongByNote = ({ journey, stay }: Noted): boolean => isTooLong(journey, stay);

const isTooLong = (lists: Lists, stay: Stay): boolean =>
  stay.timed &&
  !stay.branch &&
  stay.by.event.said === 'yes' &&
  stay.minutes.high >= YEARS_MIN &&
  stay.minutes.high < Infinity &&
  stay.by.event.act !== 'steep' &&
  stay.by.event.act !== 'rise' &&
  stay.lies.sure !== 'unread' &&
  (isFrozen(stay.lies) || isWet(lists, stay.body));

function isWet(lists: Lists, body: Body): boolean {
  const { massG, waterG, alcoholG, saltG, of } = mixtureIn(lists, body);
  return (
    massG > 0 &&
    waterG >= massG * DRY_WATER &&
    alcoholG < (waterG + alcoholG) * SPIRIT &&
    saltG < massG * SALTED &&
    of.sugar < massG * CANDIED &&
    of.vinegar + of.water + of.sugar < massG
  );
}
