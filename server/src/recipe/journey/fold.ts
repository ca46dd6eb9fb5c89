/**
 * Knows how the steps of a recipe fold into bodies: what each event takes, puts together, heats and leaves lying, through every part.
 * Refuses to judge. A step folded once is folded again only where what came before it, or a list that it takes from, is another.
 */
import { keptOn } from '../../notation/kept.ts';
import type { ClockSaid } from '../../prose/clock.ts';
import type { Act, Event, Where } from '../../prose/event.ts';
import type { Mention } from '../mentions.ts';
import type { IngredientRef } from '../names.ts';
import type { Part, Recipe, Step } from '../recipe.ts';
import { inOrder } from './ahead.ts';
import { type BoundEvent, type BoundName, boundEvents, clocksOf } from './bind.ts';
import {
  type Body,
  bodyOf,
  holdsRef,
  isSameRef,
  type Member,
  MOST_BODIES,
  RAW,
  type Stay,
  together,
  WAS,
  withStates,
} from './bodies.ts';
import { clockAt } from './clock.ts';
import { heated, heats, readIn } from './heating.ts';
import { isSameLarder, type Larder, larderOf } from './larder.ts';
import { listedStays } from './listed.ts';
import { isEndOf, lasting, openWith, passTo, spending, withoutFood, withoutPoint } from './passing.ts';
import { EMPTY, type FoldState, isSameFold, leftOf, madeBy, withLeft } from './state.ts';
import { lie } from './stays.ts';
import { type Settled, settleTemperatures } from './temperatures.ts';
import { TRANSITIONS } from './transitions.ts';

/** A step folded. */
export interface FoldedStep {
  readonly part: Part;
  readonly step: Step;
  readonly events: readonly BoundEvent[];
  readonly after: FoldState;
  readonly stays: readonly Stay[];
  /** Bodies that nothing can happen to any more. */
  readonly ended: readonly Body[];
}

/** The way of foods that come together at some time, or lie in one part. */
export interface Journey {
  /** The parts it goes through, by their index. */
  readonly parts: Readonly<Record<number, Part>>;
  readonly steps: readonly FoldedStep[];
  readonly stays: readonly Stay[];
  /** All that there is at the end. */
  readonly bodies: readonly Body[];
}

const JOURNEYS = keptOn<Recipe, Journey>();

export function journeyOf(recipe: Recipe): Journey {
  let journey = JOURNEYS.get(recipe);
  if (journey === undefined) {
    journey = follow(recipe);
    JOURNEYS.set(recipe, journey);
  }
  return journey;
}

/** The journeys of a recipe: what is in one of them never meets what is in another. */
export const journeysOf = (recipe: Recipe): readonly Journey[] => [journeyOf(recipe)];

function follow({ parts }: Recipe): Journey {
  const steps: FoldedStep[] = [];
  let state = EMPTY;
  for (const { part, steps: own } of inOrder(parts)) {
    state = begin(state, part);
    for (const step of own) {
      const folded = foldStep(state, part, step, parts);
      steps.push(folded);
      state = folded.after;
    }
  }
  const stays = steps.flatMap((step) => step.stays);
  const told = new Set(stays.map((stay) => stay.told));
  return {
    parts,
    steps,
    stays: [...parts.flatMap(listedStays), ...stays.filter((stay) => !told.has(stay))],
    bodies: [...steps.flatMap(({ ended }) => ended), ...state.bodies],
  };
}

/** At a part's start its list is whole, and what was cooked before waits; one without a list goes on with that. */
function begin(state: FoldState, { index, head }: Part): FoldState {
  const made = state.bodies.at(-1);
  const done = state.part < 0 ? undefined : { part: state.part, left: state.left, made, before: state.done };
  return {
    ...state,
    part: index,
    left: head.ingredients.map(() => 1),
    done,
    focus: head.ingredients.length === 0 ? state.focus : NO_FOCUS,
  };
}

const NO_FOCUS: readonly number[] = [];

interface Kept {
  readonly before: FoldState;
  readonly index: number;
  readonly used: ReadonlyMap<number, Larder>;
  readonly folded: FoldedStep;
}

const FOLDED = keptOn<Step, Kept>();

function foldStep(before: FoldState, part: Part, step: Step, parts: readonly Part[]): FoldedStep {
  const kept = FOLDED.get(step);
  if (
    kept !== undefined &&
    kept.index === part.index &&
    isSameFold(kept.before, before) &&
    stillUsed(kept.used, parts)
  ) {
    const { folded } = kept;
    return folded.part === part ? folded : { ...folded, part };
  }
  const folder = new Folder(before, part, step, parts);
  const events = boundEvents(step);
  const clocks = [...clocksOf(step)];
  events.forEach((event, i) => {
    // `Refrigerate after opening`: until then it lies as it lay.
    const isLater = KEPT_ONCE_OPEN.has(event.event.act) && [events[i - 1], events[i + 1]].some(isOpening);
    if (!isLater && !isOpening(event)) folder.takeAt(event, clocks);
  });
  for (const clock of clocks) folder.passTo(clock, undefined);
  const folded: FoldedStep = { part, step, events, after: folder.state, stays: folder.stays, ended: folder.ended };
  FOLDED.set(step, { before, index: part.index, used: folder.used, folded });
  return folded;
}

/** `After opening`. */
const isOpening = (by: BoundEvent | undefined): boolean => by?.event.act === 'open' && by.event.as === 'before';
const KEPT_ONCE_OPEN: ReadonlySet<Act> = new Set<Act>(['cool', 'stay', 'freeze', 'eat']);

function stillUsed(used: ReadonlyMap<number, Larder>, parts: readonly Part[]): boolean {
  for (const [index, larder] of used) {
    const part = parts[index];
    if (part === undefined || !isSameLarder(larderOf(part), larder)) return false;
  }
  return true;
}

/** Three days. */
const LONGEST_HEAT_MIN = 4320;

/** Less than this of an ingredient is nothing. */
const NOTHING_LEFT = 0.02;

/** Said so, nothing happens. */
const MOVES_NOTHING: ReadonlySet<string> = new Set(['not', 'advice', 'asked']);

/** What events take by themselves. */
interface Taken {
  readonly bodies: Body[];
  /** Of the list, one body for each. */
  readonly fresh: Member[];
  /** Some stand beside, or go in. */
  beside: boolean;
}

/** One walk through the events of a step. */
class Folder {
  state: FoldState;
  readonly stays: Stay[] = [];
  readonly ended: Body[] = [];
  readonly used = new Map<number, Larder>();
  private readonly part: Part;
  private readonly step: Step;
  private readonly parts: readonly Part[];
  /** What something was lifted out of: it is spoken of as well. */
  private readonly left: number[] = [];
  /** Choices of which one was taken. */
  private readonly chosen = new Set<number>();

  constructor(state: FoldState, part: Part, step: Step, parts: readonly Part[]) {
    this.state = state;
    this.part = part;
    this.step = step;
    this.parts = parts;
    this.larder(part.index);
  }

  /** Takes an event, and the points of the clock up to its end; they are gone from the list. */
  takeAt(by: BoundEvent, clocks: ClockSaid[]): void {
    const { event } = by;
    let timed = by;
    let end: ClockSaid | undefined;
    while (clocks[0] !== undefined && clocks[0].start < event.end) {
      const clock = clocks.shift() as ClockSaid;
      // Denied or only advised, no time has passed.
      if (clock.start >= event.start && event.said !== 'yes') continue;
      if (clock.start >= event.start && isEndOf(by, clock)) {
        timed = lasting(timed, clock, this.state);
        end = clock;
      } else if (this.passTo(clock, by)) timed = withoutPoint(timed, clock);
    }
    this.take(timed);
    this.state =
      end === undefined ? spending(this.state, timed) : { ...this.state, clock: clockAt(this.state.clock, end) };
  }

  /** A point of the clock is reached; whether something was left until then. */
  passTo(clock: ClockSaid, by: BoundEvent | undefined): boolean {
    const { state, stays } = passTo(this.state, clock, by, { part: this.part.index, line: this.step.line });
    this.state = state;
    this.stays.push(...stays);
    return stays.length > 0;
  }

  private take(by: BoundEvent): void {
    const { event } = by;
    if (MOVES_NOTHING.has(event.said) || (event.said === 'at most' && event.act === 'heat')) return;
    const isOther = event.either > 0 && this.chosen.has(event.either);
    if (event.either > 0) this.chosen.add(event.either);
    const branch = event.said !== 'yes' || isOther || isOnceMore(event);
    const { state } = this;
    this.happen(by, branch);
    // What may happen and may not leaves all as it was; what it adds is in it all the same.
    if (branch && !TRANSITIONS[event.act].adds) this.state = state;
  }

  private happen(said: BoundEvent, branch: boolean): void {
    const by = asDone(said, this.current());
    const { event } = by;
    const how = TRANSITIONS[event.act];
    if (event.act === 'adjust') this.adjust(by);
    if (!how.focus && event.act !== 'discard') return;
    if (event.act === 'discard') {
      this.discard(by);
      return;
    }
    const bodies = this.bodiesFor(by);
    if (bodies.length === 0) return;
    const done = bodies.map((body) => this.change(body, by, branch));
    this.put(done);
  }

  private change(body: Body, by: BoundEvent, branch: boolean): Body {
    const { event } = by;
    // Shaken, opened or eaten later on, what was closed up and kept was kept all the same.
    if (body.shut === 'jar' && body.waits !== undefined && USES.has(event.act))
      return event.act === 'eat' ? eaten(body) : body;
    const temperatures = settleTemperatures(event, body);
    const vessel = vesselOf(by, body);
    // A jar that is closed stands in the kettle, and is not emptied into it.
    const stands = body.shut === 'jar' && (vessel === 'open' || vessel === 'lidded' || vessel === 'wrap');
    let next = vessel === undefined || stands ? body : { ...body, vessel };
    if (heats(event, body, temperatures)) {
      next = heated(next, by, temperatures);
      this.state = { ...this.state, open: withoutFood(this.state.open, next) };
      // Nobody heats for days: so long it keeps.
      const keeps = event.times.filter(({ kind, minutes }) => kind !== 'every' && minutes.low >= LONGEST_HEAT_MIN);
      return keeps.length === 0
        ? next
        : this.lain(next, { ...by, event: { ...event, act: 'stay', where: [], times: keeps } }, [], branch);
    }
    if (event.medium?.is === 'fat' && LAYS.has(event.act))
      next = withStates(next, (state) => ({ ...state, was: state.was | WAS.inFat }));
    switch (event.act) {
      case 'cut':
        next = withStates(next, (state) => (state.cut === 'whole' ? { ...state, cut: 'cut' } : state));
        break;
      case 'cover': {
        const isLidded = event.vessel?.is === 'tool' && next.vessel === 'jar';
        next = {
          ...next,
          shut:
            event.medium?.is === 'fat' ? 'under fat' : isLidded ? 'jar' : next.shut === 'open' ? 'covered' : next.shut,
        };
        break;
      }
      case 'pack':
        if (event.vessel === undefined && event.where.length === 0 && wasMade(next))
          next = { ...next, vessel: next.vessel === 'airtight' ? 'airtight' : 'jar', shut: 'jar' };
        break;
      case 'close':
        next = {
          ...next,
          shut: shutBy(next),
        };
        break;
      case 'combine':
        // Shaken in its jar, what nobody cooked is no longer put by.
        if (next.shut === 'jar' && next.members.every(({ state }) => state.cooked === 'raw'))
          next = { ...next, shut: 'covered' };
        if (next.vessel === 'jar' && vessel === undefined && event.lasts === 'works' && next.shut !== 'jar')
          next = { ...next, vessel: 'lidded' };
        break;
      case 'put':
        // The lids, on jars.
        if (event.vessel?.is === 'tool' && next.vessel === 'jar') next = { ...next, shut: 'jar' };
        break;
      case 'open':
        next = { ...next, shut: 'open' };
        break;
      case 'eat':
        next = eaten(next);
        break;
    }
    if (event.act !== 'cool' && event.act !== 'freeze' && event.act !== 'thaw' && event.act !== 'rise')
      next = readIn(next, by, temperatures);
    return this.lain(next, by, temperatures, branch);
  }

  private lain(body: Body, by: BoundEvent, temperatures: readonly Settled[], branch: boolean): Body {
    const { body: lain, stay } = lie(body, by, temperatures, { part: this.part.index, line: this.step.line, branch });
    if (stay !== undefined) {
      this.stays.push(stay);
      this.state = { ...this.state, open: openWith(this.state.open, stay) };
    }
    return lain;
  }

  /** `Turn the oven off`: what lies there cools. */
  private adjust({ event }: BoundEvent): void {
    if (!event.where.some(({ way, is }) => way === 'off' && (is === 'oven' || is === 'stove'))) return;
    this.state = {
      ...this.state,
      bodies: this.state.bodies.map((body) =>
        body.lies.place === 'oven' || body.lies.place === 'stove' || body.lies.place === 'hot'
          ? { ...body, band: 'between', lies: { place: 'room', celsius: { low: 10, high: 60 }, sure: 'said' } }
          : body,
      ),
    };
  }

  private discard({ names }: BoundEvent): void {
    const gone = names.flatMap(({ mention, role }) => (role === 'what' ? mention.ingredients : []));
    if (gone.length === 0) return;
    this.state = {
      ...this.state,
      bodies: this.state.bodies.map((body) =>
        gone.some((ref) => holdsRef(body, ref))
          ? { ...body, members: body.members.filter((m) => !gone.some((ref) => isSameRef(m.of, ref))) }
          : body,
      ),
    };
  }

  /** The bodies that an event is about, put together where it puts them together; they are taken off the list of bodies. */
  private bodiesFor(by: BoundEvent): readonly Body[] {
    const { event } = by;
    const how = TRANSITIONS[event.act];
    const taken = this.taken(by);
    const joins = how.joins || (taken.beside && event.act !== 'eat' && event.act !== 'read');
    let fresh =
      taken.fresh.length === 0
        ? []
        : joins || event.act === 'heat'
          ? [this.bodyOfNew(taken.fresh)]
          : taken.fresh.map((m) => this.bodyOfNew([m]));
    if (event.act === 'divide' || event.act === 'reserve' || event.act === 'open' || event.act === 'read') {
      // `Reserve half the sugar`: it stays on the list.
      if (fresh.length > 0) {
        for (const { of, share } of taken.fresh) this.state = withLeft(this.state, of, share.high);
        fresh = [];
      }
    }
    const all = this.parted(by, [...taken.bodies, ...fresh]);
    this.remove(all);
    if (!joins || all.length < 2) return all;
    return [together(this.id(), all)];
  }

  /** Of what lies together, what is lifted out or set aside goes by itself; of what is kept, the fat it was fried in. */
  private parted({ event, names }: BoundEvent, bodies: readonly Body[]): readonly Body[] {
    const named = names.flatMap(({ role, mention }) => (role === 'what' ? mention.ingredients : []));
    // `Drain`: what was fried is lifted out of its fat.
    if (event.act === 'remove' && names.length === 0)
      return bodies.flatMap((body) => this.split(body, ({ state }) => isFried(body, state)));
    const keeps = event.act === 'stay' || event.act === 'cool' || event.act === 'freeze';
    if (named.length === 0 || !(keeps || event.act === 'remove' || event.act === 'reserve')) return bodies;
    return bodies.flatMap((body) => {
      const isOut = ({ of }: Member): boolean => named.some((ref) => isSameRef(ref, of));
      if (keeps && !body.members.every((member) => !isOut(member) || (member.state.was & WAS.fat) !== 0)) return [body];
      const [out, rest] = this.split(body, isOut);
      if (out === undefined || rest === undefined) return [body];
      this.state = { ...this.state, bodies: [...this.state.bodies, rest] };
      this.left.push(rest.id);
      return [out];
    });
  }

  /** Two bodies in the place of one: those members and the others; the one where there are no others. */
  private split(body: Body, isOut: (member: Member) => boolean): readonly Body[] {
    const [out, rest]: [Member[], Member[]] = [[], []];
    for (const member of body.members) (isOut(member) ? out : rest).push(member);
    if (out.length === 0 || rest.length === 0) return [body];
    this.remove([body]);
    return [
      { ...body, id: this.id(), members: out },
      { ...body, id: this.id(), members: rest },
    ];
  }

  private taken(by: BoundEvent): Taken {
    const taken: Taken = { bodies: [], fresh: [], beside: false };
    const { names, into } = by;
    let named = false;
    for (const name of names) {
      // What was never put in is not taken out.
      const isNew = name.mention.ingredients.some((ref) => leftOf(this.state, ref) > NOTHING_LEFT);
      if (name.role === 'from' && !isNew) continue;
      if (name.role === 'with' || name.role === 'into') taken.beside = true;
      else named = true;
      this.takeName(name, taken);
    }
    if (into !== undefined) this.addFocus(taken);
    if (!named) this.takeUnnamed(by, taken);
    else if (named && this.goesIn(by, taken)) this.addFocus(taken);
    return taken;
  }

  /** Whether what is named of the list goes to what is being worked at. */
  private goesIn({ event, names }: BoundEvent, { bodies, fresh }: Taken): boolean {
    const current = this.current();
    if (event.as === 'beside') return current.length > 0;
    if (current.length === 0 || names.some(({ role }) => role === 'into' || role === 'with')) return false;
    // `Pour on the milk`; but `stir the soup`.
    if (bodies.length > 0)
      return (
        TRANSITIONS[event.act].adds &&
        event.where.length === 0 &&
        (event.lasts !== 'works' || isOneMore(bodies, current))
      );
    const onStove = current.some(({ lies, band }) => band === 'hot' && lies.place === 'stove');
    if (event.act === 'heat') return onStove && event.cooks !== 'through';
    if (!TRANSITIONS[event.act].adds) return false;
    if (event.act === 'put') return event.vessel === undefined || onStove;
    // What is mixed already goes on: `fold in the flour and the salt`.
    const isMixed = current.some(
      ({ members, band }) =>
        band === 'unsaid' && (members.length > 1 || members.some(({ state }) => state.cut === 'whole')),
    );
    return event.lasts !== 'works' || fresh.length < 2 || onStove || isMixed;
  }

  private takeUnnamed(by: BoundEvent, taken: Taken): void {
    const { event, unnamed } = by;
    if (unnamed === 'all') {
      const all = this.state.bodies.filter(({ members }) => members.some(({ of }) => of.part === this.part.index));
      for (const body of all) add(taken.bodies, body);
      this.takeList(taken, ({ ingredient }) => !this.part.head.ingredients[ingredient]?.free);
      return;
    }
    if (unnamed === 'mixture') {
      const mixed = this.state.bodies.findLast(({ members }) => members.length > 1);
      if (mixed !== undefined) add(taken.bodies, mixed);
    }
    if (taken.bodies.length === 0 || unnamed !== 'mixture') this.addFocus(taken);
    if (event.act === 'heat' && event.cooks !== 'barely') this.addRaw(taken);
    // `Layer.`: all that was made for it.
    else if (TRANSITIONS[event.act].adds && unnamed === 'nothing' && by.names.length === 0)
      for (const body of this.state.bodies)
        if (
          body.band !== 'cold' &&
          body.band !== 'frozen' &&
          body.members.every(({ of }) => of.part === this.part.index)
        )
          add(taken.bodies, body);
    // What no step names lies with what is cooked: `rub with the salt and roast`.
    if (taken.bodies.length === 0 || TRANSITIONS[event.act].joins) {
      const { unnamed: silent } = this.larder(this.part.index);
      this.takeList(taken, ({ ingredient }) => silent.includes(ingredient));
    }
  }

  /** Takes of the list whatever of it is whole and fits. */
  private takeList(taken: Taken, fits: (ref: IngredientRef) => boolean): void {
    this.state.left.forEach((left, ingredient) => {
      const ref = { part: this.part.index, ingredient };
      if (left >= 1 && fits(ref)) this.takeRef(ref, { kind: 'all' }, taken);
    });
  }

  /** Whatever of the part is raw yet goes into the heat where nothing is named: what was mixed apart is in it by then. */
  private addRaw({ bodies }: Taken): void {
    for (const body of this.state.bodies) {
      const isRaw = body.members.some(({ of, state }) => of.part === this.part.index && state.cooked === 'raw');
      if (!isRaw || body.members.some(({ state }) => (state.was & WAS.eaten) !== 0)) continue;
      if (bodies.some(({ id }) => id === body.id)) continue;
      // What was put in the cold in between may be a sauce.
      bodies.push(body.band === 'cold' ? withStates(body, (s) => ({ ...s, was: s.was | WAS.implied })) : body);
    }
  }

  private addFocus(taken: Taken): void {
    for (const body of this.current()) add(taken.bodies, body);
  }

  private current(): readonly Body[] {
    const { bodies, focus } = this.state;
    return bodies.filter(({ id }) => focus.includes(id));
  }

  private takeName({ mention }: BoundName, taken: Taken): void {
    if (mention.part !== undefined) this.takePart(mention.part, taken);
    else for (const ref of this.chosenOf(mention)) this.takeRef(ref, mention.portion, taken);
  }

  /** Of several of one name the first that is left. */
  private chosenOf({ ingredients, every }: Mention): readonly IngredientRef[] {
    const [first] = ingredients;
    if (every || first === undefined || ingredients.length === 1) return ingredients;
    const nameOf = (ref: IngredientRef) => this.parts[ref.part]?.head.ingredients[ref.ingredient]?.name;
    if (ingredients.some((ref) => nameOf(ref) !== nameOf(first))) return ingredients;
    return [ingredients.find((ref) => leftOf(this.state, ref) > NOTHING_LEFT) ?? first];
  }

  private takePart(part: number, taken: Taken): void {
    const open = this.state.bodies.filter(({ members }) => members.some(({ of }) => of.part === part));
    const made = open.length > 0 ? open : madeBy(this.state, part);
    for (const body of made) add(taken.bodies, body);
    if (made.length === 0) {
      // Its list, where no step of it made anything.
      this.parts[part]?.head.ingredients.forEach((_, ingredient) => {
        this.takeRef({ part, ingredient }, { kind: 'all' }, taken);
      });
    }
  }

  private takeRef(ref: IngredientRef, portion: Mention['portion'], taken: Taken): void {
    const left = leftOf(this.state, ref);
    if (left <= NOTHING_LEFT) {
      const lies = this.state.bodies.findLast((body) => holdsRef(body, ref));
      if (lies !== undefined) add(taken.bodies, lies);
      return;
    }
    const larder = this.larder(ref.part);
    const share = shareOf(portion, left);
    this.state = withLeft(this.state, ref, Math.max(0, left - share.low));
    const takesIn = larder.takesIn[ref.ingredient] ?? -1;
    if (takesIn >= 0) this.takePart(takesIn, taken);
    const was = larder.was[ref.ingredient] ?? 0;
    const cut = larder.minced[ref.ingredient] === true ? ('minced' as const) : ('whole' as const);
    taken.fresh.push({ of: ref, share, state: was === 0 && cut === 'whole' ? RAW : { ...RAW, was, cut } });
  }

  private larder(index: number): Larder {
    let larder = this.used.get(index);
    if (larder === undefined) {
      larder = larderOf(this.parts[index] as Part);
      this.used.set(index, larder);
    }
    return larder;
  }

  private bodyOfNew(members: readonly Member[]): Body {
    const body = bodyOf(this.id(), members);
    return members.length > 0 && members.every(({ state }) => (state.was & WAS.frozen) !== 0)
      ? { ...body, band: 'frozen' }
      : body;
  }

  private id(): number {
    const { nextId } = this.state;
    this.state = { ...this.state, nextId: nextId + 1 };
    return nextId;
  }

  private remove(bodies: readonly Body[]): void {
    this.state = { ...this.state, bodies: this.state.bodies.filter(({ id }) => !bodies.some((b) => b.id === id)) };
  }

  /** Puts the bodies behind the others; beyond what a kitchen has, the oldest is at its end. */
  private put(bodies: readonly Body[]): void {
    const all = [...this.state.bodies, ...bodies];
    const over = Math.max(0, all.length - MOST_BODIES);
    for (const body of all.slice(0, over)) this.ended.push(body);
    this.state = {
      ...this.state,
      bodies: all.slice(over),
      focus: [...bodies.map(({ id }) => id), ...this.left.splice(0)],
    };
  }
}

/** What lies in fat from then on; what is mixed with it does not. */
const LAYS: ReadonlySet<Act> = new Set<Act>(['put', 'pack', 'cover', 'steep', 'stay', 'close']);

const eaten = (body: Body): Body => withStates(body, (state) => ({ ...state, was: state.was | WAS.eaten }));

const USES: ReadonlySet<Act> = new Set<Act>(['combine', 'eat', 'open']);

/** What it is put in; `a jar of passata` holds nothing any more. */
function vesselOf({ event: { act, vessel }, names }: BoundEvent, { vessel: before }: Body): Body['vessel'] {
  if (vessel?.is === undefined || vessel.is === 'tool' || act === 'remove' || act === 'open') return undefined;
  // The copper that the jars stand in.
  if (before === 'jar' && act === 'heat') return before;
  const isEmptied = names.some(({ mention }) => mention.start > vessel.end && mention.start - vessel.end <= OF);
  return isEmptied ? undefined : vessel.is;
}

/** `Fold in the flour`, which was sifted before. */
const isOneMore = (named: readonly Body[], current: readonly Body[]): boolean =>
  named.every(({ members }) => members.length === 1) && current.some(({ members }) => members.length > 1);

/** `Refrigerate once opened`: only when something that nobody knows comes about. */
const isOnceMore = ({ act, until, where }: Event): boolean =>
  until.some(({ from, is }) => from === 'when' && is === undefined) &&
  (act === 'cool' || act === 'freeze' || (act === 'stay' && where.some(({ is }) => is === 'cold' || is === 'frozen')));

/** Fat that something else was fried in, by the same heat. */
const isFried = ({ members }: Body, { was, heatedBy, cooked }: Member['state']): boolean =>
  (was & WAS.fat) !== 0 &&
  cooked !== 'raw' &&
  members.some(({ state }) => (state.was & WAS.fat) === 0 && state.heatedBy === heatedBy);

/** Between a measure and what it holds: ` of `. */
const OF = 4;

/** `Oil the prawns` is no tin made ready; what is turned and then read is read; `it can be kept at 50 C` keeps it. */
function asDone(by: BoundEvent, current: readonly Body[]): BoundEvent {
  const { event, names, unnamed } = by;
  const as = (act: Act): BoundEvent => ({ ...by, event: { ...event, act } });
  if (event.act === 'ready' && names.some(({ role }) => role === 'what')) return as('combine');
  // `Line up on the shelf for the winter`; `sterilise an hour`, of jars that are full.
  if (event.act === 'ready' && names.length === 0) {
    if ((unnamed === 'it' && event.where.length > 0) || (unnamed === 'nothing' && event.where.some(isAPlaceToLie)))
      return as('put');
    if (event.times.length > 0 && current.some(({ vessel }) => vessel === 'jar'))
      return { ...by, event: { ...event, act: 'heat', cooks: 'through' } };
  }
  if ((event.act === 'adjust' || event.act === 'ready') && event.temperatures.some(({ of }) => of === 'food'))
    return as(event.where.some(({ is, way }) => way === 'at' && (is === 'stove' || is === 'oven')) ? 'heat' : 'read');
  if (
    event.act === 'read' &&
    event.temperatures.length > 0 &&
    event.temperatures.every(({ of }) => of === 'around' || of === 'nothing')
  )
    return as('stay');
  return by;
}

const isAPlaceToLie = ({ is, way, not }: Where): boolean =>
  !not && way === 'at' && is !== 'oven' && is !== 'stove' && is !== 'bath' && is !== 'smoker';

/** More was done with it than to take it from the list: it is bottled, and not laid in something. */
const wasMade = ({ members, band }: Body): boolean => band !== 'unsaid' || members.length > 1;

/** What is closed, and on no fire, is closed to be kept; so is what is packed in nothing that is named. */
function shutBy({ vessel, lies }: Body): Body['shut'] {
  if (vessel === 'jar' || vessel === 'airtight') return 'jar';
  return lies.place === 'stove' || lies.place === 'oven' ? 'covered' : 'jar';
}

function add(bodies: Body[], body: Body): void {
  if (!bodies.some(({ id }) => id === body.id)) bodies.push(body);
}

function shareOf(portion: Mention['portion'], left: number): { readonly low: number; readonly high: number } {
  switch (portion.kind) {
    case 'share': {
      const of = portion.remaining ? left * portion.of : Math.min(portion.of, left);
      return { low: of, high: of };
    }
    case 'amount':
    case 'some':
      return { low: 0, high: left };
    default:
      return { low: left, high: left };
  }
}
