/**
 * Knows the order that acts stand in: what each can only follow, and so which of two stands before its turn.
 * Refuses to know whether that is wrong, and what it is called.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Act, Event } from '../../prose/event.ts';
import { listedAs } from '../list/families.ts';
import type { IngredientRef, Mention, Part } from '../model.ts';
import { type BoundEvent, boundEvents } from './bind.ts';

/** An order of a part, with the line of its step. */
export interface Turn {
  readonly bound: BoundEvent;
  readonly line: number;
  /** What its step names. */
  readonly mentions: readonly Mention[];
}

/** `nothing`: nothing is in hand. `base`: nothing that it could go to is. `before`: what it follows comes only behind it. */
export interface Early {
  readonly at: Turn;
  readonly why: 'nothing' | 'base' | 'before';
}

/** Two acts on the same food, of which the second never comes first (common practice, no source). */
interface Pair {
  readonly first: (event: Event) => boolean;
  readonly behind: (event: Event) => boolean;
  /** Only where both name the same food; otherwise only where neither names another. */
  readonly named?: true;
}

const isCook = ({ act, cooks, craft }: Event): boolean => act === 'heat' && cooks !== 'again' && craft !== 'reduce';
const isCold = ({ where }: Event): boolean => where.some(({ is }) => is === 'cold' || is === 'frozen' || is === 'cool');
const isKept = ({ craft, times }: Event): boolean =>
  craft === 'keep' && times.some(({ kind }) => kind === 'life' || kind === 'limit');

const PAIRS: readonly Pair[] = [
  { first: isCook, behind: (event) => event.act === 'cool' && !isCold(event) },
  { first: isCook, behind: ({ act, fate }) => act === 'eat' && fate !== 'later' },
  { first: ({ act }) => act === 'heat' || act === 'cool', behind: ({ craft }) => craft === 'churn' },
  {
    first: ({ act }) => act === 'heat' || act === 'cool' || act === 'freeze',
    behind: ({ craft }) => craft === 'unmould',
  },
  {
    first: ({ act, vessel }) => act === 'pack' || (act === 'put' && vessel?.is === 'jar'),
    behind: ({ act }) => act === 'close',
  },
  { first: ({ act }) => act === 'cool' || act === 'pack' || act === 'close', behind: isKept },
  { first: ({ act, craft }) => act === 'steep' && craft !== 'marinate', behind: ({ craft }) => craft === 'drain' },
  { first: ({ craft }) => craft === 'whip' || craft === 'beat', behind: ({ craft }) => craft === 'fold', named: true },
];

/** A thing is made ready, looked at or set otherwise: no food is acted on. */
const MOVES_NOTHING: ReadonlySet<Act> = new Set<Act>(['ready', 'adjust', 'read', 'discard', 'open', 'unknown']);
const GOES_TO: ReadonlySet<Act> = new Set<Act>(['combine', 'put', 'return']);

const EARLY = keptOn<Part, { readonly found: Early | undefined }>();

/** The first order of a part that stands before its turn. */
export function earlyIn(part: Part): Early | undefined {
  let kept = EARLY.get(part);
  if (kept === undefined) {
    kept = { found: find(part) };
    EARLY.set(part, kept);
  }
  return kept.found;
}

function find(part: Part): Early | undefined {
  const turns = part.steps.flatMap(({ line, ...step }) =>
    boundEvents({ line, ...step }).map((bound): Turn => ({ bound, line, mentions: step.mentions })),
  );
  const hand = new Hand(part);
  for (const [at, turn] of turns.entries()) {
    const { event } = turn.bound;
    hand.see(turn);
    if (isOrder(event)) {
      const why = hand.lacks(turn, turns.slice(at + 1)) ?? (standsBefore(part, turns, at, hand) ? 'before' : undefined);
      if (why !== undefined) return { at: turn, why };
    }
    hand.take(turn);
  }
  return undefined;
}

const isOrder = ({ as, said, either, inPassing, verb, elsewhere }: Event): boolean =>
  as === 'ordered' && said === 'yes' && either === 0 && inPassing === undefined && verb !== undefined && !elsewhere;

/** What has been taken up so far. */
class Hand {
  private readonly part: Part;
  private readonly refs = new Set<string>();
  /** Something was, and nobody knows what; or it lies in a vessel that was spoken of. */
  private strange = false;
  /** The step in which a vessel was made ready to take what comes: `grease the basin and pour in the syrup`. */
  private vessel: number | undefined;
  /** The step in which an oven or the like was made ready: `heat the oven and put in a baking sheet`. */
  private readied: number | undefined;

  constructor(part: Part) {
    this.part = part;
  }

  /** `Make a well in the flour; drop in the eggs`: what was named before it, where no order takes it. */
  see({ bound, mentions }: Turn): void {
    for (const mention of mentions)
      if (mention.end <= (bound.event.verb?.start ?? bound.event.start))
        for (const key of keysOf(mention)) this.refs.add(key);
  }

  take({ bound: { event, names, unnamed, into }, line }: Turn): void {
    if (event.vessel !== undefined) this.vessel = line;
    for (const { mention } of names) for (const key of keysOf(mention)) this.refs.add(key);
    if (event.act === 'ready' || event.act === 'adjust') this.readied = line;
    if (MOVES_NOTHING.has(event.act) && event.act !== 'unknown') return;
    if (unnamed === 'name' || unnamed === 'all' || unnamed === 'rest' || unnamed === 'vessel' || into !== undefined)
      this.strange = true;
    else if (event.vessel !== undefined || event.medium !== undefined || names.length === 0) this.strange = true;
  }

  has(key: string): boolean {
    return this.refs.has(key);
  }

  /** What an order wants that is not there, and comes only behind it. */
  lacks({ bound, line }: Turn, later: readonly Turn[]): 'nothing' | 'base' | undefined {
    const { event, names, unnamed, into } = bound;
    if (this.strange || MOVES_NOTHING.has(event.act)) return undefined;
    // `Oil a tray and keep it warm`
    if (unnamed === 'it' && this.readied === line) return undefined;
    // `Heat the water bath to 65 C`
    if (names.length === 0 && event.act === 'heat' && event.where.some(({ is }) => is === 'bath')) return undefined;
    const own = names.flatMap(({ mention }) => keysOf(mention));
    if ([...this.refs].some((key) => !own.includes(key))) return undefined;
    const isBare = unnamed === undefined || unnamed === 'nothing' || unnamed === 'it' || unnamed === 'mixture';
    if (!isBare || into !== undefined) return undefined;
    if (event.vessel !== undefined && (names.length > 0 || this.readied === line)) return undefined;
    const goesTo =
      !(event.act === 'put' && this.vessel === line) &&
      GOES_TO.has(event.act) &&
      (event.onto === true || event.craft === 'add' || (event.craft !== 'make' && names.every(isWith)));
    if (names.length > 0 && !goesTo) return undefined;
    if (names.length === 0 && !standsAlone(bound, line, later[0])) return undefined;
    return this.comes(later, own) ? (names.length === 0 ? 'nothing' : 'base') : undefined;
  }

  /** Whether all that is listed is named only later, so that nothing can be meant here. */
  private comes(later: readonly Turn[], own: readonly string[]): boolean {
    const { part } = this;
    const named = new Set(own);
    let all = false;
    for (const { bound } of later) {
      for (const { mention } of bound.names) for (const key of keysOf(mention)) named.add(key);
      all ||= bound.unnamed === 'all';
    }
    const isNamed = (key: string): boolean => named.has(key);
    const lines = part.head.ingredients.flatMap(({ free, optional }, i) =>
      free || optional ? [] : [keyOf({ part: part.index, ingredient: i })],
    );
    const comes = lines.filter((key) => !own.includes(key) && isNamed(key)).length;
    return (
      (all ? lines.length > own.length : comes > 0 && lines.every(isNamed)) &&
      part.heads.every(({ ingredients }, i) => i >= part.index || ingredients.length === 0 || isNamed(`${i}`))
    );
  }
}

const isWith = ({ role }: BoundEvent['names'][number]): boolean => role === 'with';

/** `Wash, peel and dice the potatoes`: what stands in one thought with the next may share what that names. */
const standsAlone = ({ event }: BoundEvent, line: number, next: Turn | undefined): boolean =>
  next === undefined ||
  next.line !== line ||
  event.times.length > 0 ||
  event.temperatures.length > 0 ||
  next.bound.names.length === 0;

const keyOf = ({ part, ingredient }: IngredientRef): string => `${part}.${ingredient}`;

/** Of a mention: each food, and the part that it is or is of. */
const keysOf = ({ ingredients, part }: Mention): readonly string[] => [
  ...ingredients.map(keyOf),
  ...ingredients.map((ref) => `${ref.part}`),
  ...(part === undefined ? [] : [`${part}`]),
];

/** Whether an order is the second of a pair whose first comes only behind it. */
function standsBefore(part: Part, turns: readonly Turn[], at: number, hand: Hand): boolean {
  const { bound } = turns[at] as Turn;
  return PAIRS.some(({ first, behind, named }) => {
    if (!behind(bound.event)) return false;
    const own = refsOf(bound);
    const isOnSame = (other: BoundEvent): boolean => named !== true || refsOf(other).some((key) => own.includes(key));
    // What was smoked was through heat, or is eaten so.
    const isDone = (event: Event): boolean => first(event) || event.act === 'smoke';
    if (turns.some((other, i) => i < at && isDone(other.bound.event) && isOnSame(other.bound))) return false;
    if (named ? own.length === 0 : own.length > 0) return false;
    for (const { bound: late } of turns.slice(at + 1)) {
      const refs = refsOf(late);
      const isFirst = first(late.event) && isOrder(late.event) && !late.event.meanwhile;
      if (named) {
        if (isFirst && isOnSame(late)) return true;
        continue;
      }
      // What comes in after it begins another stage.
      if (refs.some((key) => !hand.has(key)) || late.event.act === 'shape' || late.event.craft === 'knead')
        return false;
      // What is listed cooked was through the first before.
      if (isFirst) return !part.head.ingredients.some((i) => listedAs(i).has('cooked'));
    }
    return false;
  });
}

const refsOf = ({ names }: BoundEvent): readonly string[] =>
  names.flatMap(({ mention }) => mention.ingredients.map(keyOf));
