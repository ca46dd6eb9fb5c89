/**
 * Knows what a clause and its event are while the passes read them.
 * Refuses to know how they are found.
 */
import type { Range } from '../measure/quantity.ts';
import type {
  Act,
  AmountSaid,
  Cooks,
  Craft,
  Event,
  Manner,
  Medium,
  Saying,
  Sign,
  Slot,
  TemperatureSaid,
  TimeSaid,
  VesselSaid,
  Where,
} from './event.ts';
import type { JointKind, VerbRow } from './rows.ts';

/** What a clause is for. Only the first three make events; the others say something of one. */
export type Frame =
  | 'order'
  /** `-ing`, beside another order. */
  | 'beside'
  /** It has no verb. */
  | 'verbless'
  /** `until`, `when` */
  | 'sign'
  /** `if`: of the next event. */
  | 'if'
  /** `which`, `to keep it from sticking`. */
  | 'state';

export class Clause {
  /** Its first piece, and the piece after its last. */
  readonly from: number;
  readonly to: number;
  /** The piece that is its verb; -1 where it has none. */
  readonly verb: number;
  /** What opens it, where that is a word that frames. */
  readonly opener: JointKind | undefined;
  /** It ends with a colon: a label. */
  readonly label: boolean;
  /** It is another choice of what stands before `or`. */
  readonly orElse: boolean;
  /** A new sentence begins with it. */
  readonly first: boolean;
  frame: Frame = 'order';
  event: EventDraft | undefined;
  /** What it waits for, where it is framed as a sign. */
  sign: Sign | undefined;

  constructor(
    from: number,
    to: number,
    verb: number,
    opener: JointKind | undefined,
    label: boolean,
    orElse: boolean,
    first: boolean,
  ) {
    this.from = from;
    this.to = to;
    this.verb = verb;
    this.opener = opener;
    this.label = label;
    this.orElse = orElse;
    this.first = first;
  }
}

const NO_SLOTS: readonly Slot[] = [];
const NO_WHERE: readonly Where[] = [];
export const NO_TEMPERATURES: readonly TemperatureSaid[] = [];
export const NO_TIMES: readonly TimeSaid[] = [];
const NO_SIGNS: readonly Sign[] = [];
const NO_AMOUNTS: readonly AmountSaid[] = [];

/** An event while it is read. Its fields are in one order, and empty lists are shared. */
export class EventDraft implements Event {
  start: number;
  end: number;
  verb: Event['verb'];
  act: Act;
  cooks?: Cooks;
  craft?: Craft;
  lasts: Event['lasts'];
  as: Manner;
  said: Saying = 'yes';
  either = 0;
  objects = NO_SLOTS;
  where = NO_WHERE;
  vessel?: VesselSaid;
  medium?: Medium;
  temperatures = NO_TEMPERATURES;
  times = NO_TIMES;
  until = NO_SIGNS;
  amounts = NO_AMOUNTS;
  fate?: 'now' | 'later';
  meanwhile = false;
  batches?: Range;
  inPassing?: true;
  onto?: true;
  elsewhere = false;

  constructor(start: number, end: number, verb: Event['verb'], row: VerbRow | undefined, as: Manner) {
    this.start = start;
    this.end = end;
    this.verb = verb;
    this.act = row?.act ?? 'unknown';
    if (row?.cooks !== undefined) this.cooks = row.cooks;
    if (row?.craft !== undefined) this.craft = row.craft;
    this.lasts = row?.lasts ?? 'no';
    this.as = as;
  }
}

/** The list with one more; the empty ones are shared. */
export const withOne = <T>(list: readonly T[], one: T): readonly T[] => (list.length === 0 ? [one] : [...list, one]);
