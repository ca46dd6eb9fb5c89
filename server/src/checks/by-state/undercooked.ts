/**
 * Knows which flesh, egg and flour is eaten raw, or no further cooked than a figure that is not enough, by the state it is in at the end.
 * Refuses to know how long it lay about.
 */
import { isOf, listedAs } from '../../recipe/families.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { type Body, type FoodState, type Member, type Read, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { EGG_DISHES } from '../safety/egg-dishes.ts';
import { type Group, groupOf, holdingLimits, holdS, type Limit, limitOf, THERMOMETER_C } from '../safety/limits.ts';
import { CURES, CURING_MIN, membersIn, mixtureIn } from './spoils.ts';
import { keyOf, type Level, type Verdict } from './verdict.ts';

/** A mixture with this much flour is a dough or batter. */
const DOUGH = 0.2;
/** From this share on it is a pasta, a pizza or a pastry, cooked elsewhere. */
const FLOURY = 0.45;
/** Egg from this share of the mixture on is what sets it. */
const EGG_SETS = 0.3;
/** Sugar from which a mixture with flour is a sweet, and no batter for the pan; water below which it is a mix to be wetted (judgement). */
const SWEET = 0.05;
const DRY_MIX = 0.2;

/** A verdict on one line of the list. */
export interface OnFood extends Verdict {
  readonly listed: { readonly part: number; readonly line: number };
}

/** One a food and place: a figure may be that of several foods. */
export const undercooked = onceInHouse((house: House, journey: Journey): readonly OnFood[] => {
  const found = new Map<string, OnFood>();
  for (const body of journey.bodies)
    for (const { member, ingredient } of membersIn(journey, body)) {
      const verdict = judge(journey, body, member, ingredient, house);
      if (verdict === undefined) continue;
      const listed = { part: member.of.part, line: ingredient.line };
      const key = `${keyOf(verdict)} ${listed.part} ${listed.line}`;
      if (!found.has(key)) found.set(key, { ...verdict, listed });
    }
  return [...found.values()];
});

/** What a member counts as; minced by its line or by a step. */
function groupIn(ingredient: Ingredient, { cut }: FoodState): Group | undefined {
  const food = foodOf(ingredient);
  const group = food && groupOf(food);
  // Raw gammon is salted, and no safer for it.
  if (group === undefined && food?.class === 'cured meat' && food.roles.includes('raw risk')) return 'meat';
  return group === 'meat' && cut === 'minced' ? 'ground meat' : group;
}

function judge(
  journey: Journey,
  body: Body,
  member: Member,
  ingredient: Ingredient,
  house: House,
): Verdict | undefined {
  if (ingredient.optional || ingredient.free) return undefined;
  const listed = listedAs(ingredient);
  // What is raw beside it has its own figure.
  if (listed.has('cooked'))
    return body.members.some((each) => (each.state.was & WAS.animal) !== 0)
      ? undefined
      : reheated(journey, member, ingredient, house);
  if (listed.has('treated') || listed.has('cured')) return undefined;
  const { state } = member;
  const food = foodOf(ingredient);
  if (food?.class === 'flour') return rawFlour(journey, body, member, ingredient);
  const group = groupIn(ingredient, state);
  if (group === undefined || state.cooked === 'through') return undefined;
  const limit = limitOf(group, house.foodSafety);
  const best = bestRead(state.reads, limit);
  if (best === 'enough') return undefined;
  if (
    best !== undefined &&
    group === 'egg' &&
    isBrushed(journey, body) &&
    best.celsius.low >= limitOf('meat', house.foodSafety).celsius - THERMOMETER_C
  )
    return undefined;
  if (best !== undefined)
    return atRead(journey, best, ingredient, best.of === 'food' ? 'undercooked' : 'no-safe-temperature');
  const isRaw = state.cooked === 'raw' || (state.cooked === 'outside' && (group === 'egg' || state.cut !== 'whole'));
  if (isRaw && state.cooked === 'raw') {
    if (group === 'egg')
      return isDough(journey, body, member) || hasHotSyrup(body) || member.share.high < 1
        ? undefined
        : atName(ingredient, member, 'raw-egg', 'error', 'no step heats it');
    if (
      isCured(journey, body, group) ||
      listed.has('for raw') ||
      (group === 'fish' && (listed.has('frozen') || wasFrozen(journey, member, house)))
    )
      return undefined;
    return atName(ingredient, member, 'no-safe-temperature', 'error', 'no step cooks it');
  }
  // Whole cuts and fish are safe when their outside is, or cooked to order.
  if (group === 'meat' || group === 'fish') return undefined;
  if (group === 'egg') {
    if (!setsByEgg(journey, body, member, ingredient) || (state.was & WAS.signed) !== 0) return undefined;
    return atName(ingredient, member, 'no-safe-temperature', 'warning', 'nothing tells when it is safe');
  }
  const level: Level = (state.was & WAS.signed) !== 0 ? 'ask' : 'error';
  return atName(ingredient, member, 'no-safe-temperature', level, 'nothing tells when it is safe');
}

/** What was cooked before is read again: it must be as hot as what is kept hot. */
function reheated(
  journey: Journey,
  { state }: Member,
  ingredient: Ingredient,
  { foodSafety }: House,
): Verdict | undefined {
  const food = foodOf(ingredient);
  if (food !== undefined && !isOf(food, 'flesh') && !isOf(food, 'cooks to spoil')) return undefined;
  const { celsius } = holdingLimits(foodSafety).reheating;
  const reads = state.reads.filter(({ of }) => of === 'food');
  const best = reads.reduce<Read | undefined>(
    (a, b) => (a === undefined || b.celsius.low > a.celsius.low ? b : a),
    undefined,
  );
  if (best === undefined || state.cooked === 'through' || best.celsius.low >= celsius - THERMOMETER_C) return undefined;
  return atRead(journey, best, ingredient, 'undercooked');
}

function atRead(journey: Journey, read: Read, { name }: Ingredient, code: string): Verdict {
  const level: Level = read.sure === 'said' ? 'error' : read.sure === 'inferred' ? 'warning' : 'ask';
  const said = read.by.event.temperatures[0] ?? read.by.event;
  const { part, line } = placeOf(journey, read);
  return { code, level, part, line, start: said.start, end: said.end, why: `${name} at ${read.celsius.low} °C` };
}

/** The warmest figure, or that one was enough. */
function bestRead(reads: readonly Read[], limit: Limit): Read | 'enough' | undefined {
  let best: Read | undefined;
  for (const read of reads) {
    // Ten minutes in a bath are no ten minutes in the food; its published times are hours.
    const seconds = holdS(limit, read.celsius.low);
    if (read.of === 'food' && read.celsius.low >= limit.celsius - THERMOMETER_C) return 'enough';
    if (seconds !== undefined && seconds > 0 && read.held.low * 60 >= seconds) return 'enough';
    if (read.of === 'around' && read.celsius.low >= limit.celsius && read.held.low >= LONG_IN_BATH_MIN) return 'enough';
    // What is kept warm at less than it was cooked at is no less cooked.
    if (read.of === 'food' || (read.celsius.low < limit.celsius && read.by.event.act !== 'stay'))
      if (best === undefined || read.celsius.low > best.celsius.low) best = read;
  }
  return best;
}

/** Meat is as warm as what lies around it after so long (judgement). */
const LONG_IN_BATH_MIN = 45;

function placeOf({ steps }: Journey, { by }: Read): { readonly part: number; readonly line: number } {
  const folded = steps.find(({ events }) => events.includes(by));
  return { part: folded?.part ?? 0, line: folded?.line ?? 0 };
}

function atName(
  { node, nameNode, line }: Ingredient,
  { of }: Member,
  code: string,
  level: Level,
  why: string,
): Verdict {
  const { start, end } = node.name ?? nameNode;
  return { code, level, part: of.part, line, start, end, why: `${nameNode.text}: ${why}` };
}

/** From here a syrup beaten into whites cooks them (American Egg Board, hard ball, 121 °C; from memory). */
const COOKING_SYRUP_C = 120;
const hasHotSyrup = ({ members }: Body): boolean =>
  members.some(({ state }) => state.reads.some(({ of, celsius }) => of === 'food' && celsius.low >= COOKING_SYRUP_C));

function isDough(journey: Journey, body: Body, { of: { part } }: Member): boolean {
  const kind = journey.parts[part]?.head.kind;
  if (kind !== undefined && DOUGHS.has(kind.group)) return true;
  const { massG, of } = mixtureIn(journey, body);
  return of.flour > massG * DOUGH;
}

const DOUGHS: ReadonlySet<string> = new Set(['dough', 'pastry', 'cake', 'batter']);

/** A little egg on flesh or pastry is in the heat of the oven, whatever the middle reads. */
function isBrushed(journey: Journey, body: Body): boolean {
  const { massG, of } = mixtureIn(journey, body);
  return of.flesh > 0 && of.egg < massG * BRUSHED;
}
const BRUSHED = 0.15;

/** In curing salt; meat that lay in salt for weeks, as a raw ham, but no fish, whose danger is another. */
function isCured(journey: Journey, body: Body, group: Group): boolean {
  const { saltG, massG, has } = mixtureIn(journey, body);
  const lay = body.coldMin.low + body.warmMin.low;
  const dried = body.members.some(({ state }) => (state.was & WAS.dried) !== 0);
  return has.has('curing') || (group !== 'fish' && saltG >= massG * CURES && (dried || lay >= CURING_MIN));
}

function setsByEgg(journey: Journey, body: Body, { of: { part } }: Member, { weighed }: Ingredient): boolean {
  const kind = journey.parts[part]?.head.kind;
  if (kind !== undefined) return EGG_DISHES.has(kind.name);
  const { massG, of } = mixtureIn(journey, body);
  if (!weighed.known || of.flour > massG * 0.1 || of.sugar >= massG * 0.25) return false;
  return weighed.grams.high > massG * EGG_SETS;
}

/** Long and cold enough for what lives in fish. */
function wasFrozen({ stays }: Journey, { of }: Member, { foodSafety }: House): boolean {
  const { rows } = holdingLimits(foodSafety).freezing;
  return stays.some(
    ({ by, body, lies, minutes }) =>
      by.event.act === 'freeze' &&
      body.members.some((m) => m.of.part === of.part && m.of.ingredient === of.ingredient) &&
      rows.some(([celsius = 0, min = 0]) => lies.celsius.high <= celsius && minutes.low >= min),
  );
}

function rawFlour(journey: Journey, body: Body, member: Member, ingredient: Ingredient): Verdict | undefined {
  const { state } = member;
  if (state.cooked !== 'raw') return undefined;
  const { massG, waterG, fatG, sugarG, of, has } = mixtureIn(journey, body);
  if (waterG + fatG < massG * DRY_MIX) return undefined;
  // One that is only made, and not served, is baked elsewhere.
  const isServed = (state.was & WAS.eaten) !== 0 || body.band === 'frozen';
  if ((of.flour >= massG * FLOURY && !isServed) || !isOf(foodOf(ingredient), 'flour') || body.members.length < 2)
    return undefined;
  const isSweet =
    sugarG >= massG * SWEET &&
    !has.has('yeast') &&
    !has.has('leavening') &&
    journey.parts[member.of.part]?.head.kind === undefined;
  if (!isServed && (!isSweet || body.band === 'unsaid')) return undefined;
  return atName(ingredient, member, 'raw-flour', isServed ? 'error' : 'warning', 'it is eaten raw');
}
