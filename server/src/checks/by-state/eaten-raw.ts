/**
 * Knows which egg, flesh and flour that nothing cooked is dangerous so: not in doughs that are baked elsewhere, cures, or fish that was frozen.
 * Refuses to know what was heated.
 */

import { type Body, type FoodState, type Member, WAS } from '../../recipe/journey/bodies.ts';
import { isIn, listedAs } from '../../recipe/list/families.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import type { FoodSafetyRules } from '../house.ts';
import { isCuringSalt } from '../safety/curing-salts.ts';
import { type Group, holdingLimits } from '../safety/limits.ts';
import { CURES, CURING_MIN, type Held, type Lists, membersIn, mixtureIn } from './spoils.ts';
import type { Level } from './verdict.ts';

/** A mixture with this much flour is a dough or batter. */
const DOUGH = 0.2;
/** From this share on it is a pasta, a pizza or a pastry, cooked elsewhere. */
const FLOURY = 0.45;
/** Sugar from which a mixture with flour is a sweet, and no batter for the pan; water below which it is a mix to be wetted (judgement). */
const SWEET = 0.05;
const DRY_MIX = 0.2;
/** Egg of less than this share on flesh or pastry is brushed on. */
const BRUSHED = 0.15;
/** 200 g of egg at 10 °C in 800 g at 95 °C come to 78 °C. */
const LITTLE_EGG = 0.2;
const MOSTLY_LIQUID = 0.6;
/** A syrup is boiled hotter than this, and from there on cooks what it is beaten into (American Egg Board, hard ball, 121 °C; from memory). */
const LEAST_SYRUP_C = 100;
export const COOKING_SYRUP_C = 120;

const DOUGHS: ReadonlySet<Kind['group']> = new Set(['dough', 'pastry', 'cake', 'batter']);

/** Raw egg that is eaten, with the hottest syrup in it. */
export function rawEgg(lists: Lists, body: Body, member: Member): { readonly syrupC: number | undefined } | undefined {
  if (isDough(lists, body, member) || member.share.high < 1) return undefined;
  const syrupC = hottestSyrup(body);
  return syrupC !== undefined && syrupC >= COOKING_SYRUP_C ? undefined : { syrupC };
}

/** A little egg stirred into much that boils is as hot as egg sets; how hot that was nobody says. */
export function isInBoiling(lists: Lists, body: Body, { was }: FoodState): boolean {
  const { massG, of } = mixtureIn(lists, body);
  return (was & WAS.intoBoiling) !== 0 && of.egg <= massG * LITTLE_EGG && of.liquid >= massG * MOSTLY_LIQUID;
}

function hottestSyrup({ members }: Body): number | undefined {
  let hottest: number | undefined;
  for (const { state } of members)
    for (const { of, celsius } of state.reads)
      if (of !== 'oven' && celsius.low >= LEAST_SYRUP_C) hottest = Math.max(hottest ?? 0, celsius.low);
  return hottest;
}

function isDough(lists: Lists, body: Body, { of: { part } }: Member): boolean {
  const kind = lists.parts[part]?.head.kind;
  if (kind !== undefined && DOUGHS.has(kind.group)) return true;
  const { massG, of } = mixtureIn(lists, body);
  return of.flour > massG * DOUGH;
}

/** A little egg, as on flesh or pastry, is in the heat of the oven, whatever the middle reads. */
export function isBrushed(lists: Lists, body: Body): boolean {
  const { massG, of } = mixtureIn(lists, body);
  return of.egg < massG * BRUSHED;
}

/** Whether flesh that nothing cooks is neither cured nor made safe to be eaten raw. */
export function rawFlesh(lists: Lists, body: Body, held: Held, group: Group, rules: FoodSafetyRules): boolean {
  const listed = listedAs(held.ingredient);
  if (listed.has('for raw') || isCured(lists, body, group)) return false;
  return group !== 'fish' || !(listed.has('frozen') || wasFrozen(held.member, rules));
}

/**
 * In curing salt; meat that lay in salt for weeks, as a raw ham, but no fish, whose danger is another. What was minced has its outside
 * in the middle, and no salt alone keeps that (9 CFR 318.10; from memory).
 */
function isCured(lists: Lists, body: Body, group: Group): boolean {
  const { saltG, massG, has } = mixtureIn(lists, body);
  const lay = body.coldMin.low + body.warmMin.low;
  const dried = body.members.some(({ state }) => (state.was & WAS.dried) !== 0);
  return (
    has.has('curing') ||
    (group !== 'fish' && group !== 'ground meat' && saltG >= massG * CURES && (dried || lay >= CURING_MIN)) ||
    membersIn(lists, body).some(({ ingredient }) => isCuringSalt(ingredient)) ||
    // What is on the list for it is in it, though no step is read to name it.
    body.members.some(({ of }) => lists.parts[of.part]?.head.ingredients.some(isCuringSalt))
  );
}

/** Long and cold enough for what lives in fish. */
const wasFrozen = ({ state }: Member, rules: FoodSafetyRules): boolean =>
  state.reads.some(({ celsius: { high }, held }) =>
    holdingLimits(rules).freezing.rows.some(([celsius = 0, min = 0]) => high <= celsius && held.low >= min),
  );

/** How grave it is, by how the recipe says that it is served; undefined where it is baked elsewhere. */
export type FlourLevels = Readonly<Record<'as it is', Level>> &
  Readonly<Record<'portioned' | 'unsaid', Level | undefined>>;

const EATEN: FlourLevels = { 'as it is': 'error', portioned: 'error', unsaid: 'error' };
const SWEET_DOUGH: FlourLevels = { 'as it is': 'error', portioned: 'error', unsaid: 'warning' };
const PORTIONED: FlourLevels = { 'as it is': 'error', portioned: 'error', unsaid: undefined };
const ONLY_SERVED: FlourLevels = { 'as it is': 'error', portioned: undefined, unsaid: undefined };

const isBakedBefore = ({ of, state: { heatedBy } }: Member, { of: { part } }: Member): boolean =>
  of.part !== part && heatedBy?.event.where.some(({ is, not }) => is === 'oven' && !not) === true;

/** Flour that nothing cooked. */
export function rawFlour(lists: Lists, body: Body, { member, ingredient }: Held): FlourLevels | undefined {
  const { state } = member;
  if (state.cooked !== 'raw' || !isIn(ingredient, 'raw flour')) return undefined;
  const { massG, waterG, fatG, sugarG, of, has } = mixtureIn(lists, body);
  const isEaten = (state.was & WAS.eaten) !== 0;
  if (body.members.length < 2 && !(isEaten && (state.was & WAS.implied) === 0)) return undefined;
  if (isEaten || body.band === 'frozen') return EATEN;
  // An icing on what is baked already is baked no more.
  if (body.members.some((other) => isBakedBefore(other, member))) return SWEET_DOUGH;
  const kind = lists.parts[member.of.part]?.head.kind;
  const isFloury = of.flour >= massG * FLOURY || kind?.group === 'dough' || kind?.group === 'pastry';
  // One that is only made, and not served, is baked elsewhere.
  if (isFloury || (waterG + fatG < massG * DRY_MIX && body.band !== 'cold')) return ONLY_SERVED;
  const isSweet = sugarG >= massG * SWEET && !has.has('yeast') && !has.has('leavening') && kind === undefined;
  return isSweet && body.band !== 'unsaid' ? SWEET_DOUGH : PORTIONED;
}
