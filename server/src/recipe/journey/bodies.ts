/**
 * Knows what a body is: what lies together in one vessel, where, and since when; each member with its share and its state.
 * Refuses to know sentences. Bodies are never changed: a new one takes the place of the old.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { PlaceKind, Sure, VesselKind } from '../../prose/event.ts';
import type { IngredientRef, Mention } from '../model.ts';
import type { BoundEvent } from './bind.ts';
import { weakest } from './sure.ts';

/** A figure that the food reached, or that what lies around it had, and for how long it was held there. */
export interface Read {
  readonly by: BoundEvent;
  /** Where the figure stands, or what says it. */
  readonly at: Span;
  readonly celsius: Range;
  /** As it is written, where that is in °F. */
  readonly fahrenheit?: number;
  /** Minutes. */
  readonly held: Range;
  /** In the food itself; of water or fat around it, than which it is no warmer; of air, which warms it slowly; of an oven that is hot. */
  readonly of: 'food' | 'around' | 'air' | 'oven';
  /** In its middle, by what is said. */
  readonly inside: boolean;
  readonly sure: Sure;
  /** As it is cooked, as it rests off the heat, or as what was cooked before is heated again. */
  readonly when: 'cooking' | 'resting' | 'again';
}

export type Cooked =
  | 'raw'
  /** Its outside alone. */
  | 'outside'
  /** It was heated, and nothing but a figure or a sign tells how far. */
  | 'unsaid'
  | 'through';

/** Bits of `FoodState.was`. */
export const WAS = {
  frozen: 1,
  thawed: 2,
  salted: 4,
  soured: 8,
  dried: 16,
  /** Heated again, after it was cold. */
  reheated: 32,
  /** A sign of doneness was waited for. */
  signed: 64,
  /** It lay with what is heated in the end as one of a list that nobody named. */
  implied: 128,
  /** Served. */
  eaten: 256,
  /** Under pressure. */
  pressed: 512,
  /** Flesh or egg that is not safe raw, as it came. */
  animal: 1024,
  /** Flour: dry heat does not make it safe. */
  flour: 2048,
  fat: 4096,
  /** Until it was crisp or dry by what is seen. */
  crisp: 8192,
  /** Laid in fat, or with fat poured over it. */
  inFat: 16384,
  /** Left less than done by what is seen: `pink in the middle`. */
  rare: 32768,
  /** In a microwave oven, which heats in patches. */
  microwaved: 65536,
  /** Filled with something else, or filled into it. */
  stuffed: 131072,
  /** Seared or left half done, then kept cold, and heated again. */
  partly: 262144,
  /** Something was done to it for some time that no row knows. */
  puzzled: 524288,
  /** Stirred into something that boils. */
  intoBoiling: 1048576,
  /** Under pressure, in the jar that it is in. */
  canned: 2097152,
  /** What lay on it was washed or brushed off. */
  rinsed: 4194304,
  /** Mince, tasted as it is raw. */
  tasted: 8388608,
  /** What was solid in it was strained off. */
  strained: 16777216,
  /** It lay in what was drained off: of water, that it is gone. */
  drained: 33554432,
  /** In boiling water or steam, in the jar that it is in. */
  boiledInJar: 67108864,
  /** Lifted off the heat as done: what goes on in the pan is nothing to it. */
  lifted: 134217728,
} as const;

export interface FoodState {
  readonly cooked: Cooked;
  readonly reads: readonly Read[];
  readonly cut: 'whole' | 'cut' | 'minced' | 'pierced';
  readonly was: number;
  /** What last heated it, and how long all that heated it took at most; Infinity where one of them does not say. */
  readonly heatedBy: BoundEvent | undefined;
  readonly heatedMin: number;
  /** The longest that it boiled, or was under pressure; Infinity where nobody says how long, 0 where it never did. */
  readonly boiledMin: number;
}

export interface Member {
  readonly of: IngredientRef;
  readonly share: Range;
  readonly state: FoodState;
  /** What took it off the list, where that may be told by amounts: the ledger knows what those come to. */
  readonly taken?: readonly Mention[];
}

/** Where a body lies. */
export interface Lying {
  readonly place: PlaceKind | undefined;
  readonly celsius: Range;
  readonly sure: Sure;
}

export interface Body {
  readonly id: number;
  readonly members: readonly Member[];
  readonly band: 'frozen' | 'cold' | 'between' | 'hot' | 'unsaid';
  readonly lies: Lying;
  readonly vessel: VesselKind | undefined;
  readonly shut: 'open' | 'covered' | 'jar' | 'under fat';
  readonly rawContact: boolean;
  /** Minutes between the cold and the hot limit since it was last heated through. */
  readonly warmMin: Range;
  readonly coldMin: Range;
  /** What the warm minutes rest on. */
  readonly warmSure: Sure;
  /** Where it was put last, with no word of for how long, and nothing since. */
  readonly waits: Stay | undefined;
}

/** A time that a body lies somewhere. */
export interface Stay {
  readonly by: BoundEvent;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
  /** As it came there. */
  readonly body: Body;
  readonly lies: Lying;
  /** `high` is Infinity where the end is open. */
  readonly minutes: Range;
  /** A time is said. */
  readonly timed: boolean;
  /** The weakest of what it rests on. */
  readonly sure: Sure;
  /** It happens only if something is so, or is one of several choices. */
  readonly branch: boolean;
  /** Minutes between the cold and the hot limit, with those before it. */
  readonly warmMin: Range;
  /** Until a time of the day, and nobody knows from when on. */
  readonly vague?: true;
  /** The same stay, before a later step told by the clock how long it is. */
  readonly told?: Stay;
}

const MOST_MEMBERS = 40;
export const MOST_BODIES = 16;
const MOST_READS = 6;

export const NO_TIME: Range = { low: 0, high: 0 };
const NOWHERE: Lying = { place: undefined, celsius: { low: 10, high: 30 }, sure: 'inferred' };
const NO_READS: readonly Read[] = [];
export const RAW: FoodState = {
  cooked: 'raw',
  reads: NO_READS,
  cut: 'whole',
  was: 0,
  heatedBy: undefined,
  heatedMin: 0,
  boiledMin: 0,
};

export const bodyOf = (id: number, members: readonly Member[]): Body => ({
  id,
  members: members.slice(0, MOST_MEMBERS),
  band: 'unsaid',
  lies: NOWHERE,
  vessel: undefined,
  shut: 'open',
  rawContact: false,
  warmMin: NO_TIME,
  coldMin: NO_TIME,
  warmSure: 'said',
  waits: undefined,
});

/** What is put together: each member keeps its state; the longer clock holds, and the place of the first. */
export function together(id: number, [first, ...more]: readonly Body[]): Body {
  let into: Body = { ...(first ?? bodyOf(id, [])), id, waits: undefined };
  for (const one of more) into = joined(into, one);
  return into;
}

const joined = (into: Body, one: Body): Body => ({
  ...into,
  members: join(into.members, one.members),
  band: into.band === 'unsaid' ? one.band : into.band,
  lies: into.lies === NOWHERE ? one.lies : into.lies,
  vessel: into.vessel ?? one.vessel,
  shut: into.shut === 'open' ? one.shut : into.shut,
  rawContact: into.rawContact || one.rawContact,
  warmMin: longer(into.warmMin, one.warmMin),
  coldMin: longer(into.coldMin, one.coldMin),
  warmSure: weakest(into.warmSure, one.warmSure),
});

function join(a: readonly Member[], b: readonly Member[]): readonly Member[] {
  const all = a.slice();
  for (const member of b) {
    const at = all.findIndex((m) => isSameRef(m.of, member.of) && isSameState(m.state, member.state));
    const same = all[at];
    if (same !== undefined) all[at] = sumOf(same, member);
    else if (all.length < MOST_MEMBERS) all.push(member);
  }
  return all;
}

function sumOf(a: Member, b: Member): Member {
  const sum: Member = { of: a.of, share: atMostOne(a.share, b.share), state: a.state };
  return a.taken === undefined || b.taken === undefined ? sum : { ...sum, taken: [...a.taken, ...b.taken] };
}

const atMostOne = (a: Range, b: Range): Range => ({
  low: Math.min(1, a.low + b.low),
  high: Math.min(1, a.high + b.high),
});

const longer = (a: Range, b: Range): Range => (b.high > a.high ? b : a);

/** Every member with another state. */
export const withStates = (body: Body, change: (state: FoodState, of: IngredientRef) => FoodState): Body => ({
  ...body,
  members: body.members.map((member) => {
    const state = change(member.state, member.of);
    return state === member.state ? member : { ...member, state };
  }),
});

export const withRead = (state: FoodState, read: Read): FoodState => ({
  ...state,
  reads: state.reads.length < MOST_READS ? [...state.reads, read] : state.reads,
});

export const isSameRef = (a: IngredientRef, b: IngredientRef): boolean =>
  a.part === b.part && a.ingredient === b.ingredient;

export const sharesFood = (a: Body, b: Body): boolean => a.members.some(({ of }) => holdsRef(b, of));

export const holdsRef = (body: Body, ref: IngredientRef): boolean => body.members.some((m) => isSameRef(m.of, ref));

const isSameSpan = (a: Span, b: Span): boolean => a === b || (a.start === b.start && a.end === b.end);
const isSameRange = (a: Range, b: Range): boolean => a === b || (a.low === b.low && a.high === b.high);

function isSameState(a: FoodState, b: FoodState): boolean {
  return (
    a === b ||
    (a.cooked === b.cooked &&
      a.cut === b.cut &&
      a.was === b.was &&
      a.heatedBy === b.heatedBy &&
      a.heatedMin === b.heatedMin &&
      a.boiledMin === b.boiledMin &&
      a.reads.length === b.reads.length &&
      a.reads.every((read, i) => isSameRead(read, b.reads[i])))
  );
}

const isSameRead = (a: Read, b: Read | undefined): boolean =>
  a === b ||
  (b !== undefined &&
    a.by === b.by &&
    a.of === b.of &&
    a.sure === b.sure &&
    a.when === b.when &&
    isSameSpan(a.at, b.at) &&
    isSameRange(a.celsius, b.celsius) &&
    isSameRange(a.held, b.held));

export function isSameBody(a: Body, b: Body): boolean {
  if (a === b) return true;
  return (
    a.id === b.id &&
    a.band === b.band &&
    a.vessel === b.vessel &&
    a.shut === b.shut &&
    a.rawContact === b.rawContact &&
    a.warmSure === b.warmSure &&
    a.waits === b.waits &&
    a.lies.place === b.lies.place &&
    a.lies.sure === b.lies.sure &&
    isSameRange(a.lies.celsius, b.lies.celsius) &&
    isSameRange(a.warmMin, b.warmMin) &&
    isSameRange(a.coldMin, b.coldMin) &&
    a.members.length === b.members.length &&
    a.members.every((m, i) => isSameMember(m, b.members[i]))
  );
}

const isSameMember = (a: Member, b: Member | undefined): boolean =>
  a === b ||
  (b !== undefined &&
    isSameRef(a.of, b.of) &&
    isSameRange(a.share, b.share) &&
    isSameState(a.state, b.state) &&
    isSameList(a.taken, b.taken));

const isSameList = <T>(a: readonly T[] | undefined, b: readonly T[] | undefined): boolean =>
  a === b || (a?.length === b?.length && a?.every((each, i) => each === b?.[i]) === true);

/** It lies where the heat is. */
export const isHot = ({ lies: { place } }: Body): boolean => place === 'oven' || place === 'stove' || place === 'hot';

/** Flesh or egg of which nothing tells yet that it is done. */
export const isUnread = ({ state: { was, cooked, reads } }: Member): boolean =>
  (was & WAS.animal) !== 0 && cooked !== 'through' && reads.every(({ of }) => of !== 'food');

export const isAnimal = (was = 0): boolean => (was & WAS.animal) !== 0;

export const isFlesh = ({ state }: Member): boolean => isAnimal(state.was);

/** Flesh or egg lies in it, raw or not. */
export const hasFlesh = ({ members }: Body): boolean => members.some(isFlesh);
