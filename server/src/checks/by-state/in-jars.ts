/**
 * Knows what is shut up in jars or packs and kept out of the cold, and whether it is sour, sweet, salt or dry enough for that.
 * Refuses to know what lies in oil.
 */

import fruit from '../../../data/low-acid-fruit.json' with { type: 'json' };
import { likelyGrams } from '../../food/weigh.ts';
import type { Act, Event, PlaceKind } from '../../prose/event.ts';
import { type Body, type Member, type Read, type Stay, sharesFood, WAS } from '../../recipe/journey/bodies.ts';
import { isBaked } from '../../recipe/journey/deeds.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isWarm } from '../../recipe/journey/stays.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { type Mixture, mixtureOf } from '../../recipe/measures/mixture.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { speaks, thingsOf } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import { isShutOffByFat, keptInOil } from './in-oil.ts';
import { fullest, portionsOf } from './in-the-jar.ts';
import { type Kept, keepingStays, keptBy, putBy } from './kept.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, isDried, keepsByItself, membersIn } from './spoils.ts';
import { type TestedRecipe, testedFor, type Weighed } from './tested-preserves.ts';

const DAY = 1440;
const PUT_BY_DAYS = 21;
/** Days from which what waits in a jar is kept (judgement). */
export const LEFT_DAYS = 2;

/** Acid in the whole from which a pickle is taken for one of a tested kind: half vinegar of 5 % over solids as heavy as the liquor. */
export const PICKLE = 0.011;
/** Tomatoes: 2 tbsp bottled lemon juice a quart, 30 g at 5 % to some 1.4 kg as bought. */
export const TOMATO = 0.001;
/** Spoons and cups are rounded, and most of the tested pickles hold 0.9 % and more: of those that hold less, `data/tested-preserves.json` tells. */
const SLACK = 0.82;
/** A tested recipe in grams or in cups (judgement). */
const ROUNDED = 0.95;

/** A jam with an onion in it is a jam. */
const LOW_SHARE = 0.3;
/** Flour of a cake or bread (judgement); what is only thickened holds less. */
const CAKE_SHARE = 0.15;
/** Of the solids, the share of low-acid fruit that sour fruit does not make up for (judgement). */
const FRUIT_SHARE = 0.5;
/** Sugar on the list from which a jam of such fruit is boiled to where nothing of the kind grows in it (judgement). */
export const SWEET_JAM = 0.25;
const SWEET = 0.5;
/** Of the whole, water in which what was steeped in it lies (judgement). */
const WATERY = 0.5;
/** Of the whole; below it nothing grows in a jar (judgement, on the safe side of flour and oats). */
const DRY_WATER = 0.2;
/** Salt of the whole from which vegetables with no vinegar turn sour by themselves while they are left (as for `weak-brine`). */
export const SOURING_SALT = 0.015;
/** From this share on of what is low in acid it is a tomato sauce; below, each asks for its own. */
const TOMATO_SHARE = 0.7;

export interface InJar {
  readonly body: Body;
  readonly what: Ingredient;
  readonly part: number;
  readonly kept: Kept;
  /** Added acid in all but the sugar, which holds no water, and the least. */
  readonly acid: number;
  readonly least: number;
  /** The tested recipe with the least acid over such vegetables, and whether this is no milder. */
  readonly tested?: TestedRecipe;
  readonly isTested: boolean;
  /** Less than the usual by no more than many a tested recipe. */
  readonly isNear: boolean;
  readonly isFruit: boolean;
  /** Boiled eggs: no vinegar makes them keep out of the cold. */
  readonly isEgg: boolean;
  /** Sour, but of lemon or the like or less than the usual, and no step heats the jars once they are full. */
  readonly unprocessed: boolean;
  /** It is boiled in its jars for too short a time. */
  readonly boiled?: Boiled;
  /** Something sour goes in of which no amount is read: how much acid there is, nobody knows. */
  readonly unweighed: boolean;
  /** Where it lies is read from words that nobody knows, or nobody says that it is closed. */
  readonly asked: boolean;
  /** That it is closed is taken for granted. */
  readonly inferred: boolean;
}

/** So many minutes it is boiled in its jars, and what is usual for it. */
export interface Boiled {
  readonly min: number;
  readonly least: number;
  readonly of: 'fruit' | 'tomatoes';
  readonly usual: string;
}

/** Of a jar of which none of these is the case. */
const PLAIN = {
  isTested: false,
  isNear: false,
  isFruit: false,
  isEgg: false,
  unprocessed: false,
  unweighed: false,
} as const;

/** One an ingredient, of those that are kept with too little acid. */
export const keptInJars = onceFor((journey: Journey): readonly InJar[] => {
  const inOil = keptInOil(journey);
  const those = putBys(journey).length > 0 ? journey.bodies : closable(journey);
  const found = those.flatMap((body) => (inOil.some((oil) => oil.body === body) ? [] : (judge(journey, body) ?? [])));
  return found.filter(({ what }, at) => found.findIndex((each) => each.what === what) === at);
});

const putBys = overPieces((_, { stays }) => stays.filter(isPutBy));
const closable = overPieces((_, { bodies }) => bodies.filter(isClosable));

function judge(journey: Journey, body: Body): InJar | undefined {
  const members = membersIn(journey, body);
  const mix = fullest(journey, body);
  if (mix.massG <= 0) return undefined;
  const kept = keptShut(journey, body, mix);
  if (kept === undefined) return undefined;
  const egg = kept.how === 'warm' ? members.find(isBoiledEgg) : undefined;
  if (egg !== undefined && mix.of.egg >= mix.massG * EGGS && mix.saltG < mix.massG * SALTED && !isMixed(mix))
    return {
      body,
      what: egg.ingredient,
      part: egg.member.of.part,
      kept,
      acid: mix.acidG / (mix.massG - mix.of.sugar),
      least: PICKLE,
      ...PLAIN,
      isEgg: true,
      asked: kept.sure === 'unread',
      inferred: false,
    };
  // Flesh in its closed jar is shut off twice.
  const isCannedFlesh = body.shut === 'jar' && body.vessel === 'jar' && mix.of.flesh >= mix.massG * FLESHY;
  if ((isShutOffByFat(body, mix) && !isCannedFlesh) || keepsInJars(mix, body, kept)) return undefined;
  if (isBakedOpen(members, body, mix, kept)) return undefined;
  const isJam = members.some(({ member }) => journey.parts[member.of.part]?.head.kind?.name === 'jam');
  const raw = body.members.every(({ state }) => state.cooked === 'raw');
  const solids = mix.massG - mix.of.liquid;
  const low = members.filter(({ ingredient }) => isLow(ingredient, raw));
  const lowG = gramsOf(journey, body, low);
  const sugar = mix.of.sugar / mix.massG;
  const [first] = low;
  const share = first !== undefined && isOf(foodOf(first.ingredient), 'flour') ? CAKE_SHARE : LOW_SHARE;
  if (first !== undefined && lowG >= solids * share && sugar <= (isJam ? SWEET_JAM : SWEET)) {
    const tomatoes =
      gramsOf(
        journey,
        body,
        low.filter(({ ingredient }) => isOf(foodOf(ingredient), 'tomato')),
      ) / lowG;
    const least = tomatoes > TOMATO_SHARE ? TOMATO : PICKLE + (TOMATO - PICKLE) * tomatoes;
    const tested = testedFor(weighed(journey, body, low), mix.of.oil / mix.massG);
    return sourness(first, least, false, tested, tomatoes > ALONE ? TOMATOES : undefined);
  }
  // Nut milk, cold brew, chocolate milk: wet, and neither sour nor sweet.
  const steeped = members.find(({ ingredient }) => isIn(ingredient, 'steeped'));
  if (steeped !== undefined && mix.waterG >= mix.massG * WATERY && sugar < SWEET_JAM && mix.alcoholG === 0)
    return sourness(steeped, PICKLE, false);
  const fruits = members.filter(({ ingredient }) => isLowAcidFruit(ingredient));
  const [fruit] = fruits;
  if (fruit !== undefined && gramsOf(journey, body, fruits) >= solids * FRUIT_SHARE && sugar < SWEET_JAM)
    return sourness(fruit, TOMATO, true, undefined, FRUIT);
  const sour = members.find(({ ingredient }) => foodOf(ingredient)?.class === 'fruit');
  if (sour === undefined || !isBottledFruit(journey, body, mix, members)) return undefined;
  return boiledShort(sour, FRUIT);

  function boiledShort({ member, ingredient }: Held, by: Omit<Boiled, 'min'>): InJar | undefined {
    const min = boiledInJarMin(journey, body);
    if (kept === undefined || min === undefined || min >= by.least) return undefined;
    return {
      body,
      what: ingredient,
      part: member.of.part,
      kept,
      acid: mix.acidG / (mix.massG - mix.of.sugar),
      least: 0,
      ...PLAIN,
      unprocessed: true,
      boiled: { min, ...by },
      asked: kept.sure === 'unread',
      inferred: true,
    };
  }

  function sourness(
    { member, ingredient }: Held,
    usual: number,
    isFruit: boolean,
    tested?: TestedRecipe,
    boiled?: Omit<Boiled, 'min'>,
  ): InJar | undefined {
    const acid = mix.acidG / (mix.massG - mix.of.sugar);
    if (kept === undefined) return undefined;
    const isNear = acid >= usual * SLACK;
    const isSafe = acid >= usual * ROUNDED;
    const unprocessed = isNear && !(isSafe && mix.of.vinegar > 0) && isCannedCold(journey, body, mix, kept);
    const isTested = !unprocessed && tested !== undefined && acid >= tested.acid * ROUNDED;
    // So near the usual, only a tested recipe of such vegetables is pointed to.
    if (isNear && !unprocessed && (!isTested || isSafe))
      return boiled !== undefined && acid < TOMATO * SOURED && isShutJar(body)
        ? boiledShort({ member, ingredient }, boiled)
        : undefined;
    const least = tested === undefined || unprocessed || isTested ? usual : Math.min(usual, tested.acid);
    const unweighed = mix.acidG === 0 && hasSourUnweighed(journey, body);
    const asked = kept.sure === 'unread' || unweighed;
    const inferred = kept.how === 'put by' && kept.sure === 'inferred';
    return {
      body,
      what: ingredient,
      part: member.of.part,
      kept,
      acid,
      least,
      ...(tested && tested.acid < usual && { tested }),
      isTested,
      isNear,
      isFruit,
      isEgg: false,
      unprocessed,
      unweighed,
      asked,
      inferred,
    };
  }
}

/** USDA Complete Guide to Home Canning 2015, guides 2 and 3 (from memory); tomatoes that are boiled for half an hour are not told of. */
const FRUIT = { least: 10, of: 'fruit', usual: '10 to 30 min' } as const;
const TOMATOES = { least: 30, of: 'tomatoes', usual: '35 to 85 min' } as const;
const FRUITY = 0.4;
/** With more of others among them it is a salsa (judgement). */
const ALONE = 0.95;
/** A chutney is so many times sourer (judgement). */
const SOURED = 2;

const isShutJar = ({ vessel, shut }: Body): boolean => vessel === 'jar' && shut === 'jar';

/** Fruit in water, juice or light syrup, in a jar that is closed: no jam, and nothing in vinegar, spirit or salt. */
function isBottledFruit(journey: Journey, body: Body, mix: Mixture, members: readonly Held[]): boolean {
  const { massG, of, alcoholG, saltG } = mix;
  if (!isShutJar(body) || alcoholG > 0 || of.vinegar > 0 || of.animal > 0) return false;
  if (of.sugar >= massG * SWEET_JAM || saltG >= massG * SOURING_SALT || of.fat > 0) return false;
  const fruits = members.filter(({ ingredient }) => foodOf(ingredient)?.class === 'fruit');
  return gramsOf(journey, body, fruits) >= massG * FRUITY;
}

/** The longest that it is boiled in its jars; undefined where nobody says how long. */
function boiledInJarMin(journey: Journey, { members }: Body): number | undefined {
  const after = heatsBehindFilling(journey);
  if (after === undefined || members.some(({ state }) => (state.was & WAS.pressed) !== 0)) return undefined;
  const times = after.flatMap((event) => event.times.filter(({ kind }) => kind === 'spent'));
  if (after.length > 0 && times.length === 0) return undefined;
  return Math.max(0, ...times.map(({ minutes }) => minutes.high));
}

/** What heats jars, behind the last order that fills any; undefined where none does. */
function heatsBehindFilling({ steps }: Journey): readonly Event[] | undefined {
  const events = steps.flatMap((step) => step.events.map(({ event }) => event)).filter(({ said }) => said !== 'not');
  const filled = events.findLastIndex((event) => event.vessel?.is === 'jar' && FILLS.has(event.act) && !heats(event));
  return filled < 0 ? undefined : events.slice(filled + 1).filter(heats);
}

/** `Seal and process for 25 min` too. */
const heats = ({ act, where, times, elsewhere }: Event): boolean =>
  act === 'heat' ||
  elsewhere ||
  (act === 'combine' && times.some(({ kind }) => kind === 'spent')) ||
  where.some(({ is }) => is === 'bath' || is === 'oven');

/**
 * Made sour with no vinegar or less than the usual, boiled, closed up for weeks, and not heated in its jars: moulds thrive in what is sour and outlive the filling, and the
 * boiling water around the jars is what ends them (USDA FSIS, Molds on Food, as quoted in 2009).
 */
function isCannedCold(journey: Journey, body: Body, { of, massG }: Mixture, { how, minutes }: Kept): boolean {
  if (!isShutJar(body) || how !== 'warm' || minutes.low < PUT_BY_DAYS * DAY) return false;
  if (of.sugar >= massG * SWEET_JAM || !body.members.some(isCooked)) return false;
  const after = heatsBehindFilling(journey);
  // An oven heats no jar through: `stand them in a dry oven and process for 10 min`.
  const isIn = (place: PlaceKind) => (event: Event) => event.where.some(({ is }) => is === place);
  return after !== undefined && (after.length === 0 || (after.some(isIn('oven')) && !after.some(isIn('bath'))));
}
const FILLS: ReadonlySet<Act> = new Set<Act>(['put', 'pack', 'combine']);

/** Boiled on the list or by the steps, and not laid down raw in salt. */
const isBoiledEgg = ({ member, ingredient }: Held): boolean =>
  isOf(foodOf(ingredient), 'egg') && (isCooked(member) || listedAs(ingredient).has('cooked'));
/** Eggs in a curd, a cake or a custard are no boiled eggs in their liquor (judgement). */
const isMixed = ({ massG, of }: Mixture): boolean =>
  of.sugar >= massG * 0.2 || of.flour >= massG * 0.05 || of.fat >= massG * 0.1;
/** Eggs of the whole that make a jar one of pickled eggs, and salt that keeps even those (judgement). */
const EGGS = 0.15;
/** Of what is no rillettes or confit in its fat, but canned (judgement). */
const FLESHY = 0.3;
const SALTED = 0.1;

/** `Two spoons of bottled lemon juice in each jar`: something sour is spoken of, or listed, and nowhere weighed. */
const hasSourUnweighed = ({ parts }: Journey, { members }: Body): boolean =>
  [...new Set(members.map(({ of }) => of.part))].some(
    (part) =>
      parts[part]?.steps.some((step) => speaks(thingsOf(step), 'sour')) &&
      !parts[part]?.head.ingredients.some((each) => each.weighed.known && isIn(each, 'vinegar')),
  );

const gramsOf = (lists: Journey, body: Body, those: readonly Held[]): number =>
  mixtureOf(portionsOf(lists, body, those)).massG;

const weighed = (lists: Journey, body: Body, those: readonly Held[]): readonly Weighed[] =>
  portionsOf(lists, body, those).map(({ ingredient, share }) => ({
    ingredient,
    grams: ingredient.weighed.known ? likelyGrams(ingredient.weighed) * share : 0,
  }));

/** How it is kept, in a jar or for so long that it is put by; undefined where it is in the cold in the end, or is eaten. */
function keptShut(journey: Journey, body: Body, mix: Mixture): Kept | undefined {
  const stays = keepingStays(journey, body, LEFT_DAYS * DAY);
  const those = isClosable(body) ? stays.filter((stay) => isInJar(stay, body)) : [];
  const last = those.at(-1) ?? (keepsByItself(mix, body) ? undefined : stays.findLast(isPutBy));
  if (last !== undefined) {
    const kept = keptBy(last);
    return kept?.how === 'warm' ? kept : undefined;
  }
  if (body.band === 'cold' || body.band === 'frozen') return undefined;
  if (isHeldHot(journey, body)) return undefined;
  if (body.shut === 'jar') return isForTheDay(journey, body) ? undefined : putBy(body);
  // What was cooked, and filled into jars in the end, is put by in them, though nobody says that they are closed.
  const isFilled = isClosable(body) && body.lies.place === 'room' && body.members.some(isCooked);
  if (!isFilled || body.members.some(({ state }) => (state.was & WAS.eaten) !== 0)) return undefined;
  return { how: 'put by', sure: 'inferred', minutes: { low: 0, high: Infinity }, stay: undefined };
}

/** `Pack at ten, sell by two`: nobody puts that by. */
function isForTheDay({ stays }: Journey, body: Body): boolean {
  const last = stays.findLast((stay) => sharesFood(stay.body, body));
  return last?.timed === true && last.by.event.act === 'pack' && last.minutes.high < DAY;
}

/** A flask for the day keeps hot what is in it. */
function isHeldHot({ stays }: Journey, body: Body): boolean {
  if (body.band !== 'hot' || body.shut !== 'jar') return false;
  const last = stays.findLast((stay) => sharesFood(stay.body, body));
  return last?.timed === true && last.minutes.low >= HELD_MIN && last.lies.celsius.low >= HOT_C;
}
/** No jar is heated for so long but in a canner (judgement), and from so hot on it is held (Food Code 2022, 3-501.16). */
const HELD_MIN = 180;
const HOT_C = 57;

const isCooked = ({ state }: Member): boolean => state.cooked !== 'raw';

const isClosable = ({ vessel, shut }: Body): boolean => vessel === 'jar' || vessel === 'airtight' || shut === 'jar';

/** It lay in its jar by then, closed, for a time or in a place that is said. */
const isInJar = ({ body, by, timed, lies }: Stay, { vessel }: Body): boolean =>
  (body.vessel === vessel || body.shut === 'jar' || by.event.vessel?.is === vessel) &&
  (timed || body.shut === 'jar' || (lies.place !== undefined && SHELVES.has(lies.place) && by.event.where.length > 0));

/** Where nobody waits for anything. */
const SHELVES: ReadonlySet<PlaceKind> = new Set(['room', 'cool', 'outdoors', 'warm']);

/** What is to keep for weeks out of the cold is put by, whatever it is in. */
const isPutBy = ({ timed, minutes, lies }: Stay): boolean => timed && minutes.low >= PUT_BY_DAYS * DAY && isWarm(lies);

/** Something else than acid keeps it. */
function keepsInJars(mix: Mixture, body: Body, kept: Kept): boolean {
  const { massG, waterG, saltG, acidG, of, has } = mix;
  const was = body.members.reduce((bits, { state }) => bits | state.was, 0);
  const raw = body.members.every(({ state }) => state.cooked === 'raw');
  const isBoiled = body.members.some(({ state }) => state.cooked === 'through');
  return (
    isDried(mix, body) ||
    (waterG < massG * DRY_WATER && !isBoiled) ||
    has.has('culture') ||
    (was & WAS.soured) !== 0 ||
    (was & WAS.pressed) !== 0 ||
    (of.sugar >= massG * SWEET_JAM && body.members.some(({ state }) => state.reads.some(isSyrup))) ||
    body.members.every(isFriedDry) ||
    // Flesh by itself, in a pack, is judged by its time.
    (of.flesh > 0 && of.liquid === 0 && !isBoiled) ||
    // Only left in its jar, under whatever lid, plants turn sour in salt enough.
    (kept.how !== 'put by' && raw && of.flesh === 0 && acidG === 0 && saltG >= massG * SOURING_SALT)
  );
}

/** So hot, what it lies in is two thirds sugar: 65 % boils at 103.9 °C (Lowe, Experimental Cookery). */
const SYRUP_C = 104;
const isSyrup = ({ of, celsius }: Read): boolean => of === 'food' && celsius.low >= SYRUP_C;

/**
 * Bread and cake that came out of the oven before it was boxed: a box lets air in, and in days it goes stale or mouldy. What is baked in its jar,
 * kept for weeks or packed airless is another thing (common practice, no source).
 */
const isBakedOpen = (members: readonly Held[], { vessel }: Body, mix: Mixture, { minutes }: Kept): boolean =>
  vessel === 'airtight' &&
  minutes.high < PUT_BY_DAYS * DAY &&
  mix.of.flesh === 0 &&
  mix.of.flour >= mix.massG * CAKE_SHARE &&
  members.every(
    ({ member: { state }, ingredient }) =>
      !isOf(foodOf(ingredient), 'flour') || (state.heatedBy !== undefined && isBaked(state.heatedBy.event)),
  );

/** Plants that were fried until they were seen to be done, and lifted out of the fat. */
const isFriedDry = ({ state: { was, heatedBy } }: Member): boolean =>
  (was & (WAS.fat | WAS.animal)) === 0 && (was & WAS.signed) !== 0 && heatedBy?.event.medium?.is === 'fat';

/** Bread and cake in the jar they are baked in, and boiled eggs, are low in acid too. */
const isLow = (ingredient: Ingredient, raw: boolean): boolean =>
  isIn(ingredient, 'low acid') ||
  (!raw && isOf(foodOf(ingredient), 'flour')) ||
  (isOf(foodOf(ingredient), 'egg') && listedAs(ingredient).has('cooked'));

function isLowAcidFruit(ingredient: Ingredient): boolean {
  if (isIn(ingredient, 'low acid fruit')) return true;
  const { name, node } = ingredient;
  const said = `${name} ${node.preparation?.text ?? ''}`.toLowerCase();
  return foodOf(ingredient)?.name === 'peach' && fruit.words.some((words) => said.includes(words));
}
