/**
 * Knows which flesh, egg and flour is eaten raw, or no further cooked than a figure that is not enough, by the state it is in at the end.
 * Refuses to know how long it lay about.
 */
import { keptOn } from '../../notation/kept.ts';
import { type Body, type FoodState, type Read, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { PartHead } from '../../recipe/model.ts';
import type { FoodSafetyRules, House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import {
  type Group,
  HOME_RULES,
  holdingLimits,
  type Limit,
  limitOf,
  ROASTING_OVEN,
  THERMOMETER_C,
} from '../safety/limits.ts';
import { type FlourLevels, isBrushed, isInBoiling, rawEgg, rawFlesh, rawFlour } from './eaten-raw.ts';
import { groupIn, limitFor, reached } from './enough.ts';
import { overPiecesIn } from './over-pieces.ts';
import { isRunnyBake, setsByEgg } from './set-by-egg.ts';
import { type Held, type Lists, membersIn, mixtureIn } from './spoils.ts';
import { keyOf, type Level, type Verdict } from './verdict.ts';

/** So long at most on the heat, a sign of colour is one of the crust (judgement). */
const BRIEF_MIN = 3;
/** A joint with what lies around it, and no stew. */
const MOSTLY = 0.5;
/** Of a stuffed body, what is no mince: mince in a casing is stuffed in nothing. */
const STUFFED_IN = 0.2;

/** What is wrong with one food in one body. */
export type How =
  /** A figure in the food, or of the bath or oven that it lies in, that is too low. */
  | { readonly kind: 'figure'; readonly read: Read; readonly limit: Limit; readonly group: Group }
  | { readonly kind: 'reheated'; readonly read: Read }
  | { readonly kind: 'cool oven'; readonly read: Read }
  /** Nothing, or only how it looks, tells that it is hot enough inside. */
  | {
      readonly kind: 'no figure';
      readonly limit: Limit;
      readonly group: Group;
      readonly sign: boolean;
      readonly long: boolean;
    }
  /** Seared, kept cold, and cooked later. */
  | { readonly kind: 'partly'; readonly group: Group }
  | { readonly kind: 'raw'; readonly group: Group }
  /** Mince that is cooked in the end, and tasted before. */
  | { readonly kind: 'tasted'; readonly group: Group }
  /** The hottest syrup beaten into it, °C. */
  | { readonly kind: 'raw egg'; readonly syrupC: number | undefined }
  /** How grave it is hangs on how the recipe says that it is served. */
  | { readonly kind: 'raw flour'; readonly toasted: boolean; readonly levels: FlourLevels };

interface Judged {
  readonly how: How;
  readonly level: Level;
  readonly held: Held;
}

/** A verdict on one line of the list. */
export interface OnFood extends Verdict {
  readonly how: How;
  readonly held: Held;
}

/** Every such food, one a food and place: a figure may be that of several foods. */
export const undercooked = onceInHouse((house: House, journey: Journey): readonly OnFood[] => {
  const found = new Map<string, OnFood>();
  for (const judged of judgedOn(house, journey)) {
    const verdict = placed(journey, judged);
    const key = `${keyOf(verdict)} ${judged.held.member.of.part} ${judged.held.ingredient.line}`;
    if (!found.has(key)) found.set(key, verdict);
  }
  return found.size === 0 ? NONE : [...found.values()];
});

const NONE: readonly never[] = [];

const judgedOn = overPiecesIn(
  ({ foodSafety }) => foodSafety,
  (rules, lists, { bodies }) => bodies.flatMap((body) => judgedIn(lists, body, rules)),
);

interface Kept {
  readonly held: readonly Held[];
  readonly kinds: readonly PartHead['kind'][];
  readonly rules: FoodSafetyRules;
  readonly judged: readonly Judged[];
}

const KEPT = keptOn<Body, Kept>();

/** As before, where the body and all that lies in it are the same. */
function judgedIn(lists: Lists, body: Body, rules: FoodSafetyRules): readonly Judged[] {
  const held = membersIn(lists, body);
  const kindOf = ({ member }: Held): PartHead['kind'] => lists.parts[member.of.part]?.head.kind;
  const kept = KEPT.get(body);
  if (kept?.held === held && kept.rules === rules && held.every((each, i) => kindOf(each) === kept.kinds[i]))
    return kept.judged;
  const found = held.flatMap((each) => judge(lists, body, each, rules) ?? []);
  const judged = found.length === 0 ? NONE : found;
  KEPT.set(body, { held, kinds: held.map(kindOf), rules, judged });
  return judged;
}

function judge(lists: Lists, body: Body, held: Held, rules: FoodSafetyRules): Judged | undefined {
  const { member, ingredient } = held;
  if (ingredient.optional || ingredient.free) return undefined;
  const listed = listedAs(ingredient);
  const { state } = member;
  const again = reheated(held, body, rules);
  if (again !== undefined) return again;
  if (listed.has('cooked') || listed.has('treated') || listed.has('cured')) return undefined;
  if (isIn(ingredient, 'raw flour')) {
    const levels = rawFlour(lists, body, held);
    const toasted = state.heatedBy !== undefined;
    return levels && { how: { kind: 'raw flour', toasted, levels }, level: levels['as it is'], held };
  }
  const group = groupIn(ingredient, state, lists.parts[member.of.part]?.head.kind);
  if (group === undefined) return undefined;
  if (group === 'egg' && isCoddled(body, state) && body.members.length > 1 && rawEgg(lists, body, member) !== undefined)
    return { how: { kind: 'raw egg', syrupC: undefined }, level: 'warning', held };
  if ((state.was & WAS.tasted) !== 0 && state.cooked !== 'raw')
    return { how: { kind: 'tasted', group }, level: 'warning', held };
  if (state.cooked === 'through')
    return (state.was & WAS.partly) !== 0 && PARTLY.has(group)
      ? { how: { kind: 'partly', group }, level: 'warning', held }
      : undefined;
  const limit = limitFor(group, state, isStuffed(lists, body, state), rules);
  const reach = reached(state, group, limit);
  const isPartly = (state.was & WAS.partly) !== 0 && (PARTLY.has(group) || (state.was & WAS.rare) !== 0);
  const isTold = reach.is === 'enough' || (reach.is === 'unread' && (state.was & WAS.signed) !== 0);
  if (isPartly && isTold) return { how: { kind: 'partly', group }, level: 'warning', held };
  // `74 C under the skin, and the stuffing still pink`: the figure is of what it is filled into.
  if (reach.is === 'enough' && isPinkFilling(body, held))
    return { how: { kind: 'no figure', limit, group, sign: false, long: false }, level: 'ask', held };
  if (reach.is === 'enough') return coolOven(lists, group, held, body);
  if (reach.is === 'short' || reach.is === 'by thickness') {
    const { read } = reach;
    const isCrust = group === 'egg' && isBrushed(lists, body);
    if (isCrust && read.celsius.low >= limitOf('meat', rules).celsius - THERMOMETER_C) return undefined;
    // Whole beef is served rare on purpose, with the advisory; a household is told so.
    const isRare =
      (state.was & WAS.rare) !== 0 &&
      limit.group === 'meat' &&
      read.of === 'food' &&
      isOf(foodOf(ingredient), 'eaten rare');
    // Game that is as hot as the rules for homes ask.
    const isHome =
      limit.group === 'game' &&
      read.of === 'food' &&
      read.celsius.low >= limitOf(limit.group, HOME_RULES).celsius - THERMOMETER_C;
    const isAsked =
      isHome || isRare || reach.is === 'by thickness' || (read.of !== 'food' && (state.was & WAS.puzzled) !== 0);
    const level: Level = isAsked || read.sure === 'unread' ? 'ask' : LEVELS[read.sure];
    return { how: { kind: 'figure', read, limit, group }, level, held };
  }
  if (state.cooked === 'raw') {
    if (group === 'egg') {
      const isEaten = (state.was & WAS.eaten) !== 0;
      const raw = isImplied(state) && !isEaten ? undefined : rawEgg(lists, body, member);
      return (
        raw && {
          how: { kind: 'raw egg', syrupC: raw.syrupC },
          level: isInBoiling(lists, body, state) ? 'ask' : levelOfRaw(state),
          held,
        }
      );
    }
    const isRaw = rawFlesh(lists, body, held, group, rules);
    // `Simmer the passata and slide in the fish`
    const isSimmering = (state.was & WAS.intoBoiling) !== 0 && body.band === 'hot' && body.lies.place === 'stove';
    const level = isSimmering && group === 'fish' ? 'ask' : levelOfRaw(state);
    return isRaw ? { how: { kind: 'raw', group }, level, held } : undefined;
  }
  // Whole cuts and fish are safe when their outside is, or cooked to order.
  if (group === 'meat' || group === 'fish') return coolOven(lists, group, held, body);
  const isBrief = group !== 'egg' && state.heatedMin <= BRIEF_MIN && state.cut !== 'cut';
  const sign = (state.was & WAS.signed) !== 0 && (state.was & WAS.rare) === 0 && !isBrief;
  const long = isLongInOven(state);
  const how: How = { kind: 'no figure', limit, group, sign, long };
  if (group === 'egg') {
    // Set all through, egg is near its figure: a sign is enough.
    if ((state.was & WAS.rare) === 0 ? !setsByEgg(lists, body, held) || sign : !isRunnyBake(lists, body, held))
      return undefined;
    return { how, level: 'warning', held };
  }
  // Left raw inside, and only what was poured on it boils off.
  const isLeftRaw = (state.was & WAS.rare) !== 0 && (state.was & WAS.signed) === 0;
  if ((state.was & WAS.puzzled) !== 0 && isLeftRaw) return { how, level: 'warning', held };
  const isAsked = sign || (state.was & WAS.puzzled) !== 0 || long;
  return { how, level: isAsked ? 'ask' : isBrief && (state.was & WAS.signed) !== 0 ? 'warning' : 'error', held };
}

/** So long in so hot an oven that all but the thickest is done; nobody says how thick it is (judgement). */
const isLongInOven = ({ reads, was }: FoodState): boolean =>
  (was & (WAS.frozen | WAS.rare)) === 0 &&
  reads.some(({ of, celsius, held }) => of === 'oven' && celsius.low >= LONG_OVEN_C && held.low >= LONG_OVEN_MIN);
const LONG_OVEN_C = 140;
const LONG_OVEN_MIN = 90;

/** Whole cuts that are seared first are raw inside, and hold no more than raw ones. */
const PARTLY: ReadonlySet<Group> = new Set(['poultry', 'ground meat', 'game', 'pierced']);

/** No step names it. */
const isImplied = ({ was }: FoodState): boolean => (was & WAS.implied) !== 0;

/** In its shell in boiling water for so short a time that it pours yet. */
const CODDLED_MIN = 1.5;
const isCoddled = ({ members }: Body, { heatedMin, heatedBy, reads }: FoodState): boolean =>
  heatedMin <= CODDLED_MIN &&
  reads.length === 0 &&
  heatedBy?.event.medium?.is === 'water' &&
  // A custard that boils for a minute boils with all that is in it.
  members.filter(({ state }) => state.heatedBy === heatedBy).length < BOILED_WITH;
/** An egg, and the water and salt that it may be boiled in. */
const BOILED_WITH = 4;

/** Where something was done for some time that nobody knows, it may have cooked. */
const levelOfRaw = ({ was }: FoodState): Level =>
  (was & WAS.puzzled) !== 0 ? 'ask' : (was & WAS.implied) !== 0 ? 'warning' : 'error';

const LEVELS = { said: 'error', inferred: 'warning' } as const;

/** What was cooked before is read again: it must be as hot as what is kept hot. */
function reheated(held: Held, body: Body, rules: FoodSafetyRules): Judged | undefined {
  const { ingredient, member } = held;
  const { reads } = member.state;
  const isCooked = listedAs(ingredient).has('cooked');
  const food = foodOf(ingredient);
  if (reads.length === 0 || (food !== undefined && !isOf(food, 'flesh') && !isOf(food, 'cooks to spoil')))
    return undefined;
  let best: Read | undefined;
  for (const read of reads)
    if (read.of === 'food' && (isCooked || read.when === 'again') && read.celsius.low >= (best?.celsius.low ?? 0))
      best = read;
  const { celsius } = holdingLimits(rules).reheating;
  if (best === undefined || best.celsius.low >= celsius - THERMOMETER_C) return undefined;
  // What is raw beside it has its own figure.
  const isFirst = best.when !== 'again' && body.members.some(({ state }) => (state.was & WAS.animal) !== 0);
  if (isFirst || (best.when !== 'again' && member.state.cooked === 'through')) return undefined;
  return { how: { kind: 'reheated', read: best }, level: best.sure === 'unread' ? 'ask' : LEVELS[best.sure], held };
}

/** Flesh that is filled, or what fills it; mince alone is filled into its casing. */
function isStuffed(lists: Lists, body: Body, { was, cut }: FoodState): boolean {
  if ((was & WAS.stuffed) === 0) return false;
  if (cut !== 'minced') return true;
  const { massG, of } = mixtureIn(lists, body);
  return of.plant >= massG * STUFFED_IN || body.members.some(({ state }) => isWholeFlesh(state));
}

const isPinkFilling = ({ members }: Body, { member: { state } }: Held): boolean =>
  (state.was & WAS.rare) !== 0 &&
  state.cut === 'minced' &&
  state.cooked !== 'through' &&
  members.some(({ state: other }) => isWholeFlesh(other));

const isWholeFlesh = ({ was, cut }: FoodState): boolean => (was & WAS.animal) !== 0 && cut !== 'minced';

/** Meat or poultry that lies open in an oven that is never hot. */
function coolOven(lists: Lists, group: Group, held: Held, body: Body): Judged | undefined {
  if ((group !== 'poultry' && group !== 'meat') || body.shut !== 'open') return undefined;
  const { reads, was } = held.member.state;
  const ovens = reads.filter(({ of }) => of === 'oven' || of === 'air');
  const [read] = ovens;
  // Who holds it at a figure cooks by figures.
  const isHeld = reads.some(({ by: { event } }) => event.act === 'stay');
  if (read === undefined || isHeld || (was & (WAS.inFat | WAS.dried)) !== 0) return undefined;
  const { massG, of } = mixtureIn(lists, body);
  if (of.flesh < massG * MOSTLY) return undefined;
  if (ovens.some(({ celsius, by: { event } }) => celsius.high >= ROASTING_OVEN.celsius - 1 || !isDryHeat(event)))
    return undefined;
  return { how: { kind: 'cool oven', read }, level: 'ask', held };
}

const isDryHeat = ({ act, medium }: Read['by']['event']): boolean =>
  act === 'heat' && (medium === undefined || medium.is === 'air');

function placed(journey: Journey, { how, level, held }: Judged): OnFood {
  const { ingredient, member } = held;
  const [code, why] = wordsOf(how);
  const said = { code, level, why: `${ingredient.nameNode.text}: ${why}`, how, held };
  if (isOfFigure(how)) {
    const { start, end } = how.read.at;
    return { ...said, ...lineOf(journey, how.read), start, end };
  }
  const { start, end } = ingredient.node.name ?? ingredient.nameNode;
  return { ...said, part: member.of.part, line: ingredient.line, start, end };
}

/** The figure itself is what is wrong, and not what is listed. */
const isOfFigure = (how: How): how is Extract<How, { readonly read: Read }> =>
  how.kind === 'reheated' || how.kind === 'cool oven' || (how.kind === 'figure' && how.read.of === 'food');

function wordsOf(how: How): readonly [code: string, why: string] {
  switch (how.kind) {
    case 'figure':
      return [how.read.of === 'food' ? 'undercooked' : 'no-safe-temperature', `at ${how.read.celsius.low} °C`];
    case 'reheated':
      return ['undercooked', `again at ${how.read.celsius.low} °C`];
    case 'cool oven':
      return ['undercooked', `in an oven at ${how.read.celsius.low} °C`];
    case 'no figure':
      return ['no-safe-temperature', 'nothing tells when it is safe'];
    case 'partly':
      return ['undercooked', 'partly cooked, and kept'];
    case 'tasted':
      return ['undercooked', 'tasted raw'];
    case 'raw':
      return ['no-safe-temperature', 'no step cooks it'];
    case 'raw egg':
      return ['raw-egg', 'no step heats it'];
    case 'raw flour':
      return ['raw-flour', 'it is eaten raw'];
  }
}

function lineOf({ steps }: Journey, { by }: Read): { readonly part: number; readonly line: number } {
  const folded = steps.find(({ events }) => events.includes(by));
  return { part: folded?.part ?? 0, line: folded?.line ?? 0 };
}
