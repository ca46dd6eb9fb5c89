/**
 * Knows what a sentence of a recipe orders once it is read: closed unions, numbers and places in the line, and no words, so that nobody
 * who asks can compare them. Refuses to know foods, parts and steps, and what is safe.
 * Offsets count UTF-16 units from the start of the line that the items came from; minutes and °C are ranges, `Infinity` an open end.
 */
import type { Range } from '../measure/quantity.ts';
import type { Span, TemperatureNode } from '../notation/tree.ts';

/** `said`: the words say it. `inferred`: a rule does. `unread`: words stand there that nobody knows. */
export type Sure = 'said' | 'inferred' | 'unread';

/** What words tell; `is` is undefined exactly where it is unread. */
export interface Told<T> extends Span {
  readonly is: T | undefined;
  readonly sure: Sure;
}

/** What is done. `ready`: a thing is made ready (an oven lit, a tin greased). `read`: a figure or sign is looked for. */
export const ACTS = [
  'heat',
  'cool',
  'freeze',
  'thaw',
  'stay',
  'rise',
  'steep',
  'dry',
  'smoke',
  'pack',
  'close',
  'open',
  'cover',
  'combine',
  'divide',
  'reserve',
  'return',
  'remove',
  'put',
  'cut',
  /** Put through a mincer, or cut as small. */
  'mince',
  /** What is on the outside is driven in: blades, needles, brine that is pumped. */
  'pierce',
  /** One food is filled into another. */
  'stuff',
  'shape',
  'ready',
  'read',
  'adjust',
  'eat',
  'discard',
  /** Something happens, and no row says what. */
  'unknown',
] as const;
export type Act = (typeof ACTS)[number];

/** What is done, where an act is not enough for somebody who asks: a dough that rests before it is rolled, a cream that is churned. */
export const CRAFTS = [
  'bake',
  'roast',
  'grill',
  'fry',
  'deep-fry',
  'reduce',
  'churn',
  'dissolve',
  'scrape',
  'whip',
  'beat',
  'stir',
  'sift',
  'fold',
  'cream',
  'rub',
  'roll',
  'press',
  /** With fingers, into what has risen. */
  'dimple',
  'deflate',
  'knead',
  'season',
  'peel',
  'assemble',
  'make',
  /** To what lies there. */
  'add',
  'cut',
  'pipe',
  'portion',
  'line',
  'grease',
  'brush',
  'dust',
  'spread',
  'top',
  /** A salad, with what is poured over it. */
  'dress',
  'layer',
  'drain',
  /** Out of the tin or mould that it took its shape in. */
  'unmould',
  /** In water, or with a brush: what lies on it goes. */
  'rinse',
  'strain',
  'skim',
  'ferment',
  /** Put away till it is wanted. */
  'keep',
  /** How long it is good is written on it. */
  'label',
  /** From a hook or a rail, in the air. */
  'hang',
  /** Set to begin by itself later. */
  'delay',
  'marinate',
  /** Eaten a little of, to see how it is. */
  'taste',
] as const;
export type Craft = (typeof CRAFTS)[number];

/** How far heat goes. `as read`: as far as a figure or sign says; `again`: the same, of what was cooked before. */
export const COOKS = ['through', 'as read', 'again', 'outside', 'barely'] as const;
export type Cooks = (typeof COOKS)[number];

export const PLACES = [
  'frozen',
  'cold',
  'cool',
  'room',
  'outdoors',
  'warm',
  'hot',
  'oven',
  'stove',
  /** `on high`: of the stove, or how fast a mixer runs. */
  'level',
  'bath',
  'smoker',
] as const;
export type PlaceKind = (typeof PLACES)[number];

export const VESSELS = ['open', 'lidded', 'jar', 'airtight', 'wrap', 'tool'] as const;
export type VesselKind = (typeof VESSELS)[number];

export const MEDIA = [
  'water',
  'steam',
  'fat',
  'air',
  'smoke',
  'brine',
  'acid',
  'syrup',
  'ice',
  'metal',
  'pressure',
  'microwaves',
] as const;
export type MediumKind = (typeof MEDIA)[number];

/** `ordered`: simmer the rice. `told`: it simmers, may be added. `beside`: …, simmering gently. `before`: after you simmer it. */
export type Manner = 'ordered' | 'told' | 'beside' | 'before';

/** How it is said. `at most`: do not let it boil. `advice`: people who leave it. Only `yes` moves anything. */
export type Saying = 'yes' | 'not' | 'at most' | 'if' | 'optional' | 'advice' | 'asked';

/** One thing that is ordered or told. Its span is the clause, the verb's words included. */
export interface Event extends Span {
  /** The words that say it; undefined where the clause has none and it was taken from what stands there. */
  readonly verb: Span | undefined;
  readonly act: Act;
  /** Where it heats. */
  readonly cooks?: Cooks;
  readonly craft?: Craft;
  /** Whether it goes on by itself for as long as is said, is worked at, or is done in a moment. */
  readonly lasts: 'waits' | 'works' | 'no';
  readonly as: Manner;
  readonly said: Saying;
  /** Events of a sentence with the same number above 0 are choices: one of them happens. */
  readonly either: number;
  readonly objects: readonly Slot[];
  readonly where: readonly Where[];
  readonly vessel?: VesselSaid;
  readonly medium?: Medium;
  readonly temperatures: readonly TemperatureSaid[];
  readonly times: readonly TimeSaid[];
  readonly until: readonly Sign[];
  readonly amounts: readonly AmountSaid[];
  /** Eaten at once, or kept for later. */
  readonly fate?: 'now' | 'later';
  /** It is done beside what goes on by itself: `meanwhile`, `while it bakes`. */
  readonly meanwhile: boolean;
  /** It is done so many times over: `in three batches`. */
  readonly batches?: Range;
  /** It is done afterwards, and is said only to tell when something else is: `before baking`. */
  readonly inPassing?: true;
  /** What is named goes to what lies there: `stir in`, `pour over`. */
  readonly onto?: true;
  /** What it is done like stands elsewhere: `as directed`, `see table`. */
  readonly elsewhere: boolean;
}

/** `stands` is where food in it is heated: in a pan on the stove, in a roasting tin in the oven. */
export interface VesselSaid extends Told<VesselKind> {
  readonly stands?: PlaceKind;
}

/** `celsius` is what its name says: of simmering water. */
export interface Medium extends Told<MediumKind> {
  readonly celsius?: Range;
}

/** What an event takes, not yet bound to a food. */
export interface Slot extends Span {
  readonly role: 'what' | 'with' | 'into' | 'from';
  readonly by: 'name' | 'it' | 'mixture' | 'rest' | 'all' | 'vessel' | 'nothing';
  readonly already?: 'cooked' | 'hot' | 'cold' | 'frozen' | 'soaked';
}

export interface Where extends Told<PlaceKind> {
  readonly way: 'at' | 'to' | 'out of' | 'off';
  /** `not in a refrigerator` */
  readonly not: boolean;
  /** Of the place, where its name says or a row has it. */
  readonly celsius?: Range;
}

/** `food` is whatever lies in the body, syrup and soup too; `medium` the fat, water or metal around it. */
export const HEAT_OF = ['food', 'oven', 'around', 'medium', 'nothing'] as const;
export type HeatOf = (typeof HEAT_OF)[number];

/** How strongly the words say that a temperature is of each. */
export interface Points {
  readonly food: number;
  readonly oven: number;
  readonly around: number;
  readonly medium: number;
}

/** `celsius` is the figure as written, whatever its bound. */
export interface TemperatureSaid extends Span {
  readonly celsius: Range;
  readonly of: HeatOf;
  readonly sure: Sure;
  /** `change`: 25 °F more. */
  readonly bound: 'is' | 'at least' | 'at most' | 'change';
  /** In the middle of the food, where it is slowest. */
  readonly inside: boolean;
  readonly points: Points;
  /** The figure on each scale that it is written in, the first as `celsius` has it: `180C/160C fan/gas 4`. */
  readonly written: readonly TemperatureNode[];
  /** The scale that must be meant: what is written cannot be. */
  readonly meant?: 'C' | 'F';
  /** What is written cannot be, on either scale. */
  readonly cannot?: true;
}

/**
 * `spent`: so long. `limit`: no longer than. `life`: keeps so long. `until`: a horizon. `every`: an interval. `point`: when.
 */
export const TIME_KINDS = ['spent', 'limit', 'life', 'until', 'every', 'point'] as const;
export type TimeKind = (typeof TIME_KINDS)[number];

/** Of what each so long; `kg`: of each kilogram, whatever weight was written. */
export const PERS = ['side', 'batch', 'piece', 'kg'] as const;
export type Per = (typeof PERS)[number];

export interface TimeSaid extends Span {
  readonly minutes: Range;
  readonly kind: TimeKind;
  readonly per?: Per;
  /** Times of an event with the same number above 0 are choices: 4 h or overnight. */
  readonly choice: number;
  /** `within 2 h`: a limit before which it is done, sooner or later. */
  readonly within?: boolean;
  readonly sure: Sure;
}

/** What a sign tells; undefined where it is unread. */
export const TELLS = [
  'through',
  /** Not through: `pink in the middle`. */
  'rare',
  /** Not through, where it is said of the inside: `the middle still swims`, `its heart blushes`. */
  'within',
  'tender',
  'colour',
  'set',
  'thick',
  'risen',
  'boiling',
  'hot',
  'warm',
  'cold',
  'frozen',
  'thawed',
  'dry',
  'melted',
  'mixed',
  'closed',
  'stage',
  'figure',
  'needed',
] as const;
export type Tells = (typeof TELLS)[number];

export interface Sign extends Told<Tells> {
  /** It goes on until the sign is there, or begins once it is. */
  readonly from: 'until' | 'when';
  /** What it is looked for in or on, where no food lies by that: `a ball forms in cold water`, `the jar is sealed`. */
  readonly at?: Span;
  /** What the sign tells of the heat of the food, where a row has it. */
  readonly celsius?: Range;
}

export interface AmountSaid extends Span {
  /** The item of the sentence that it is. */
  readonly item: number;
}
