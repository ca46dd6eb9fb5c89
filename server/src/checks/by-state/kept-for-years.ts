/**
 * Knows what is made wet at home and is said to keep out of the cold for years: no jam, pickle or syrup is good for so long.
 * Refuses to know what is dangerous sooner.
 */
import type { Body, Stay } from '../../recipe/journey/bodies.ts';
import type { Noted } from '../../recipe/journey/noted.ts';
import { isFrozen } from '../../recipe/journey/stays.ts';
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
  !isFrozen(stay.lies) &&
  stay.lies.sure !== 'unread' &&
  isWet(lists, stay.body);

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
