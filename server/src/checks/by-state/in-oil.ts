/**
 * Knows what of the soil is kept in oil or other fat that shuts the air out, where and for how long: botulism wants no air, and no cold.
 * Refuses to know what keeps it sour or dry but by its figures.
 */

import { type Body, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isIn, listedAs } from '../../recipe/list/families.ts';
import type { Mixture } from '../../recipe/measures/mixture.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { type Kept, keepingStays, keptBy, livesThere, putBy } from './kept.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, type Lists, membersIn, mixtureIn, onceForBody } from './spoils.ts';

const DAY = 1440;
/** Days in the fridge that extension services allow. */
export const MOST_DAYS = 4;
/** Fat of the whole from which it shuts the air out; what is laid in it is shut off by less. */
export const OILY = 0.4;
export const COVERING = 0.2;
const TOPPED = 0.1;
/** Acid of the whole that keeps the pH down: vinegar or lemon juice of 5 % for a twelfth of it (common practice, no source). */
export const SOUR = 0.004;

export interface InOil {
  readonly body: Body;
  readonly solid: Ingredient;
  readonly part: number;
  readonly fat: 'oil' | 'fat';
  readonly kept: Kept;
  /** What it rests on is read from words that nobody knows. */
  readonly asked: boolean;
}

/** One a body, of those kept too warm or too long. */
export const keptInOil = onceFor((journey: Journey): readonly InOil[] => {
  const found = inFat(journey).flatMap((body) => judge(journey, body) ?? []);
  return found.filter(({ solid }, at) => found.findIndex((each) => each.solid === solid) === at);
});

const isFresh = (ingredient: Ingredient): boolean =>
  !ingredient.free && isIn(ingredient, 'from the soil') && !listedAs(ingredient).has('dried');

/** And no step dried it. */
const isFreshIn = ({ ingredient, member: { state } }: Held): boolean =>
  isFresh(ingredient) && (state.was & WAS.dried) === 0;

/** Something fresh that lies in fat. */
const solidIn = onceForBody((lists, body): Held | undefined =>
  isShutOff(lists, body) ? membersIn(lists, body).find(isFreshIn) : undefined,
);

/** What is used up later lay in its oil until then. */
const inFat = overPieces((lists, { bodies, stays }) => {
  const left = stays.some(livesThere) ? stays.filter(livesThere).map(({ body }) => body) : [];
  return [...bodies, ...left].filter((body) => solidIn(lists, body) !== undefined);
});

function judge(journey: Journey, body: Body): InOil | undefined {
  const solid = solidIn(journey, body);
  if (solid === undefined) return undefined;
  const kept = tooLong(journey, body);
  if (kept === undefined) return undefined;
  const fat = mixtureIn(journey, body).of.oil > 0 ? 'oil' : 'fat';
  // Cold, butter keeps longer than oil does; where it is kept without a word, it is kept cold.
  if (fat === 'fat' && (kept.how !== 'warm' || (kept.stay !== undefined && !kept.stay.timed && kept.sure !== 'said')))
    return undefined;
  return {
    body,
    solid: solid.ingredient,
    part: solid.member.of.part,
    fat,
    kept,
    // Longer than the cold allows is too long wherever it lies.
    asked: kept.sure === 'unread' && kept.minutes.low <= MOST_DAYS * DAY,
  };
}

/** It lies in fat enough. */
export function isShutOffByFat(body: Body, { massG, of }: Mixture): boolean {
  const isLaid = body.members.some(({ state }) => (state.was & WAS.inFat) !== 0);
  // What is covered with it is shut off by less.
  return massG > 0 && of.fat >= massG * (body.shut === 'under fat' ? TOPPED : isLaid ? COVERING : OILY);
}

/** And nothing keeps it sour. */
function isShutOff(lists: Lists, body: Body): boolean {
  const mix = mixtureIn(lists, body);
  return isShutOffByFat(body, mix) && mix.acidG < mix.massG * SOUR;
}

/** `In the fridge within the hour, gone in four days`: the time of putting it there is no fifth day. */
const PUT_AWAY_MIN = 240;

function tooLong(journey: Journey, body: Body): Kept | undefined {
  const stays = keepingStays(journey, body, DAY).filter((stay) => isShutOff(journey, stay.body));
  if (stays.length === 0) return body.band === 'frozen' ? undefined : putBy(body);
  for (const stay of stays) {
    const kept = keptBy(stay);
    if (kept === undefined) continue;
    if (kept.how === 'warm' || (stay.timed && kept.minutes.high > MOST_DAYS * DAY + PUT_AWAY_MIN)) return kept;
  }
  return undefined;
}
