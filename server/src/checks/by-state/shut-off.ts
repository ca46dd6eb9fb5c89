/**
 * Knows where food that is not sour is kept shut off from air, in closed jars, under oil, in bags, and which stays are judged by that.
 * Refuses to know the rest of its way.
 */

import { type Body, type Stay, sharesFood, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { keptInJars, LEFT_DAYS, TOMATO } from './in-jars.ts';
import { COVERING, isShutOffByFat, keptInOil } from './in-oil.ts';
import { bodiesWith, type Kept } from './kept.ts';
import { overPieces } from './over-pieces.ts';
import { type Lists, mixtureIn } from './spoils.ts';
import type { Verdict } from './verdict.ts';

const DAY = 1440;
/** What is of animals spoils in a jar that no spore grows in. */
const EGGY = 0.15;

export interface ShutOff {
  readonly verdicts: readonly Verdict[];
  /** What is in closed jars or in oil keeps or does not by their rules, and not by those of what lies about. */
  readonly judged: ReadonlySet<Stay>;
  /** In which something was found. */
  readonly bodies: ReadonlySet<Body>;
}

export const shutOff = onceFor((journey: Journey): ShutOff => {
  const judged = new Set<Stay>();
  const inOil = keptInOil(journey);
  const inJars = keptInJars(journey);
  const found = new Set([...inOil, ...inJars].map(({ body }) => body));
  for (const stay of found.size === 0 ? shutStays(journey) : keptStays(journey)) {
    const isShut = isInJar(stay);
    const holds = isShut ? bodiesWith(journey, stay.body) : [...found].filter((body) => sharesFood(stay.body, body));
    if (holds.some((body) => !spoilsInJar(journey, body, stay))) judged.add(stay);
  }
  const verdicts = [
    ...inOil.map(({ solid, part, kept, asked }) => verdictOf('garlic-in-oil', solid, part, kept, asked)),
    ...inJars.map(({ what, part, kept, asked }) => verdictOf('low-acid-preserve', what, part, kept, asked)),
  ];
  return { verdicts, judged, bodies: found };
});

const isKept = ({ branch, timed, minutes }: Stay): boolean => !branch && (!timed || minutes.high >= LEFT_DAYS * DAY);
const isInJar = ({ body }: Stay): boolean => body.shut === 'jar' && body.vessel === 'jar';
const keptStays = overPieces((_, { stays }) => stays.filter(isKept));
const shutStays = overPieces((lists, { stays }) =>
  stays.filter((stay) => isInJar(stay) && (isKept(stay) || isOutOfCanner(lists, stay))),
);

/**
 * Jars of what is sour, out of a boiling-water bath, cool in the room untouched, 12 to 24 h, until they have sealed (USDA Complete Guide to Home
 * Canning (2015), Guide 1; from memory).
 */
function isOutOfCanner(lists: Lists, { body, by: { event } }: Stay): boolean {
  if (event.act !== 'cool' && event.act !== 'stay') return false;
  if (body.members.some(({ state }) => (state.was & WAS.boiledInJar) === 0)) return false;
  const { acidG, massG } = mixtureIn(lists, body);
  return acidG >= massG * TOMATO * MEASURED_OUT;
}

/** Of what is measured out to each jar no more than half is known to be in it. */
const MEASURED_OUT = 0.5;

function spoilsInJar(journey: Journey, body: Body, { timed }: Stay): boolean {
  // Canned under pressure, it keeps.
  if (body.members.some(({ state }) => (state.was & WAS.pressed) !== 0)) return false;
  const mix = mixtureIn(journey, body);
  const { massG, of } = mix;
  // Under fat, no rule of jars tells whether flesh keeps.
  return (
    of.egg + of.milk >= massG * EGGY ||
    (of.animal >= massG * EGGY && (timed || of.fat >= massG * COVERING || isShutOffByFat(body, mix)))
  );
}

const verdictOf = (
  code: string,
  { name, line, nameNode: { start, end } }: Ingredient,
  part: number,
  kept: Kept,
  asked: boolean,
): Verdict => ({ code, level: asked ? 'ask' : 'error', part, line, start, end, why: `${name}: kept ${kept.how}` });
