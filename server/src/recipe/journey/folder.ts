/**
 * Knows how the events of one step fold: what each takes is taken, put together or parted, changed, and put down again.
 * Refuses to know steps before and after.
 */
import type { ClockSaid } from '../../prose/clock.ts';
import type { Event } from '../../prose/event.ts';
import type { Part, Step } from '../model.ts';
import { heatedAlong } from './along.ts';
import { asDone } from './as-done.ts';
import { type BoundEvent, boundEvents } from './bind.ts';
import {
  type Body,
  type FoodState,
  holdsRef,
  isHot,
  isSameRef,
  type Member,
  together,
  WAS,
  withStates,
} from './bodies.ts';
import { changed } from './changes.ts';
import { clockAt } from './clock.ts';
import { isOfEmpty } from './gear.ts';
import { begun, eveEnds, goesOn, isEndOf, lasting, passTo, spending, withoutPoint } from './passing.ts';
import { type FoldState, leftOf, withLeft } from './state.ts';
import { takenBy } from './taken.ts';
import { TRANSITIONS } from './transitions.ts';
import { Worktop } from './worktop.ts';

/** Said so, nothing happens. */
const MOVES_NOTHING: ReadonlySet<string> = new Set(['not', 'advice', 'asked']);

/** One walk through the events of a step. */
export class Folder {
  readonly top: Worktop;
  private readonly step: Step;
  /** What something was lifted out of: it is spoken of as well. */
  private readonly left: number[] = [];
  /** Choices of which one was taken. */
  private readonly chosen = new Set<number>();

  private readonly isPutAway: boolean;
  /** What opened a run of events about an empty vessel. */
  private empty: Event | undefined;

  constructor(state: FoldState, part: Part, step: Step, parts: readonly Part[], isPutAway: boolean) {
    this.top = new Worktop(state, part, parts, step);
    this.step = step;
    this.isPutAway = isPutAway;
  }

  /** Takes an event, and the points of the clock up to its end; they are gone from the list. */
  takeAt(by: BoundEvent, clocks: ClockSaid[]): void {
    const { event } = by;
    let timed = by;
    let until: ClockSaid | undefined;
    let isPoint = false;
    const end = reachOf(event);
    while (clocks[0] !== undefined && clocks[0].start < end) {
      const clock = clocks.shift() as ClockSaid;
      // Denied or only advised, no time has passed.
      if (clock.start >= event.start && event.said !== 'yes') continue;
      // `Kept in the fridge from Sunday to Wednesday`: so long it lay there.
      if (event.times.some(({ kind, start, end }) => kind === 'spent' && start <= clock.start && clock.end <= end))
        continue;
      if (clock.start >= event.start && (isEndOf(by, clock) || (isPoint && goesOn(by)))) {
        timed = lasting(timed, clock, this.top.state);
        until = clock;
        continue;
      }
      // `It simmers there until bedtime`: so long it is heated.
      if (event.act === 'heat' && event.said === 'yes' && clock.until && clock.start >= event.start) {
        until = clock;
        continue;
      }
      // `Out at eleven, and what is left at nine`: it lies so between the two.
      if (isPoint && clock.start >= event.start)
        this.top.state = begun(this.top.state, by, { part: this.top.part.index, line: this.step.line });
      isPoint ||= event.said === 'yes' && clock.start >= event.start;
      if (this.passTo(clock, by)) timed = withoutPoint(timed, clock);
    }
    const stays = this.top.stays.length;
    this.take(timed);
    if (isPoint && until === undefined && this.top.stays.length === stays)
      this.top.state = begun(this.top.state, timed, { part: this.top.part.index, line: this.step.line });
    const { state } = this.top;
    this.top.state = until === undefined ? spending(state, timed) : { ...state, clock: clockAt(state.clock, until) };
  }

  /** A point of the clock is reached; whether something was left until then. */
  passTo(clock: ClockSaid, by: BoundEvent | undefined): boolean {
    const at = { part: this.top.part.index, line: this.step.line };
    const { state, stays } = passTo(this.top.state, clock, by, at, this.isPutAway);
    this.top.state = state;
    this.top.stays.push(...stays);
    return stays.length > 0;
  }

  /** Done before the day, the step is at its end. */
  endEve(clock: ClockSaid): void {
    const { state, stays } = eveEnds(this.top.state, clock, { part: this.top.part.index, line: this.step.line });
    this.top.state = state;
    this.top.stays.push(...stays);
  }

  private take(by: BoundEvent): void {
    const { event } = by;
    if (MOVES_NOTHING.has(event.said) || (event.said === 'at most' && event.act === 'heat')) return;
    const isOther = event.either > 0 && (this.chosen.has(event.either) || this.isBareChoice(event));
    if (event.either > 0 && !isOther) this.chosen.add(event.either);
    // `What is left can be fried tomorrow.`
    const isOfRest = event.as === 'told' && event.act === 'heat' && by.unnamed === 'rest';
    const branch = event.said !== 'yes' || isOther || isOfRest || isOnceMore(event);
    const before = branch && !TRANSITIONS[event.act].adds ? this.top.mark() : undefined;
    this.happen(by, branch);
    // What may happen and may not leaves all as it was; what it adds is in it all the same.
    if (before !== undefined) this.top.goBack(before);
  }

  /** `Fry or grill for 15 min until it reads 72 C`: what is said behind the last is said of both, so that one is taken. */
  private isBareChoice({ act, either, start, times, temperatures, until }: Event): boolean {
    return (
      act === 'heat' &&
      times.length + temperatures.length + until.length === 0 &&
      boundEvents(this.step).some(
        ({ event }) =>
          event.either === either &&
          event.act === 'heat' &&
          event.start > start &&
          event.temperatures.length + event.until.length > 0,
      )
    );
  }

  private happen(said: BoundEvent, branch: boolean): void {
    if (isOfEmpty(said, this.top, this.empty)) {
      this.empty ??= said.event;
      return;
    }
    this.empty = undefined;
    const by = this.asAdded(asDone(said, this.top.current()));
    const { event } = by;
    const how = TRANSITIONS[event.act];
    if (event.act === 'adjust') this.adjust(by);
    if ((!how.focus && event.act !== 'discard') || isOfGear(by)) return;
    if (event.act === 'discard') {
      this.discard(by);
      return;
    }
    const bodies = this.bodiesFor(by);
    if (bodies.length === 0) return;
    const at = { part: this.top.part.index, line: this.step.line, branch };
    const done = bodies.map((body) => changed(body, by, at, this.top));
    this.top.place(done, [...done.map(({ id }) => id), ...this.left.splice(0)]);
  }

  /** `Turn the slices in it`: what is on the list yet goes in. */
  private asAdded(by: BoundEvent): BoundEvent {
    if (by.event.act !== 'adjust') return by;
    const isNew = by.names.some(
      ({ role, mention }) => role === 'what' && mention.ingredients.some((ref) => leftOf(this.top.state, ref) >= 1),
    );
    return isNew ? { ...by, event: { ...by.event, act: 'combine' } } : by;
  }

  /** `Turn the oven off`: what lies there cools. */
  private adjust(by: BoundEvent): void {
    const { event } = by;
    if (!event.where.some(({ way, is }) => way === 'off' && (is === 'oven' || is === 'stove'))) return;
    const lies = { place: 'room', celsius: { low: 10, high: 60 }, sure: 'said' } as const;
    const off = this.top.state.bodies.filter(isHot);
    this.top.change((body) => (isHot(body) ? { ...body, band: 'between', lies } : body));
    // Nobody says for how long: the clock may.
    for (const body of off) this.top.leaves(body, lies, by, this.step.line);
  }

  private discard({ names }: BoundEvent): void {
    const gone = names.flatMap(({ mention, role }) => (role === 'what' ? mention.ingredients : []));
    if (gone.length === 0) return;
    this.top.change((body) =>
      gone.some((ref) => holdsRef(body, ref))
        ? { ...body, members: body.members.filter((m) => !gone.some((ref) => isSameRef(m.of, ref))) }
        : body,
    );
  }

  /** The bodies that an event is about, put together where it puts them together; they are taken off the list of bodies. */
  private bodiesFor(by: BoundEvent): readonly Body[] {
    const { event } = by;
    const how = TRANSITIONS[event.act];
    const taken = takenBy(by, this.top);
    const joins = how.joins || (taken.beside && event.act !== 'eat' && event.act !== 'read');
    let fresh =
      taken.fresh.length === 0
        ? []
        : joins || event.act === 'heat'
          ? [this.top.bodyOfNew(taken.fresh)]
          : taken.fresh.map((m) => this.top.bodyOfNew([m]));
    if (STAYS_LISTED.has(event.act) && fresh.length > 0) {
      // `Reserve half the sugar`: it stays on the list. `Unwrap the turkey`, `show the livers to the pan`: from then on it is spoken of.
      const isKept = ({ state }: Member): boolean =>
        (event.act === 'open' || event.act === 'read') && (state.was & WAS.animal) !== 0;
      for (const member of taken.fresh)
        if (!isKept(member)) this.top.state = withLeft(this.top.state, member.of, member.share.high);
      fresh = fresh.filter(({ members }) => members.every(isKept));
    }
    const all = this.parted(by, [...taken.bodies, ...fresh]);
    this.top.remove(all);
    if (!joins || all.length < 2) return all;
    const put = how.adds ? heatedAlong(all, event) : all;
    const body = together(this.top.id(), event.act === 'put' ? put.map((each) => laidIn(each, put)) : put);
    return [all.some(isBoiling) ? withStates(body, intoBoiling) : body];
  }

  /** Of what lies together, what is lifted out or set aside goes by itself; of what is kept, the fat it was fried in. */
  private parted({ event, names }: BoundEvent, bodies: readonly Body[]): readonly Body[] {
    const named = names.flatMap(({ role, mention }) => (role === 'what' ? mention.ingredients : []));
    // `Drain`: what was fried is lifted out of its fat; off the heat it is not.
    if (event.act === 'remove' && names.length === 0 && event.where.every(({ way }) => way !== 'off'))
      return bodies.flatMap((body) => this.split(body, ({ state }) => isFried(body, state)));
    const keeps = event.act === 'stay' || event.act === 'cool' || event.act === 'freeze';
    if (named.length === 0 || !(keeps || event.act === 'remove' || event.act === 'reserve')) return bodies;
    return bodies.flatMap((body) => {
      const isOut = ({ of }: Member): boolean => named.some((ref) => isSameRef(ref, of));
      if (keeps && !body.members.every((member) => !isOut(member) || (member.state.was & WAS.fat) !== 0)) return [body];
      const [out, rest] = this.split(body, isOut);
      if (out === undefined || rest === undefined) return [body];
      this.top.place([rest]);
      this.left.push(rest.id);
      return [out];
    });
  }

  /** Two bodies in the place of one: those members and the others; the one where there are no others. */
  private split(body: Body, isOut: (member: Member) => boolean): readonly Body[] {
    const [out, rest]: [Member[], Member[]] = [[], []];
    for (const member of body.members) (isOut(member) ? out : rest).push(member);
    if (out.length === 0 || rest.length === 0) return [body];
    this.top.remove([body]);
    return [
      { ...body, id: this.top.id(), members: out },
      { ...body, id: this.top.id(), members: rest },
    ];
  }
}

/** With what it waits for: `grill when the supper guests come`. */
const reachOf = ({ end, until }: Event): number =>
  Math.max(end, ...until.map((sign) => (sign.from === 'when' ? sign.end : 0)));

/** `Scrub the board and hands`, `wash down everything, hands included`: no food is washed. */
const isOfGear = ({ event: { craft, vessel }, names, unnamed }: BoundEvent): boolean =>
  craft === 'rinse' && vessel !== undefined && names.length === 0 && (unnamed === 'vessel' || unnamed === 'all');

/** Just off the boil, or on it. */
const isBoiling = (body: Body): boolean =>
  (isHot(body) || body.band === 'hot') && body.members.some(({ state }) => state.cooked === 'through');

const intoBoiling = (state: FoodState): FoodState =>
  state.cooked === 'raw' && (state.was & WAS.animal) !== 0 ? { ...state, was: state.was | WAS.intoBoiling } : state;

const STAYS_LISTED: ReadonlySet<Event['act']> = new Set(['divide', 'reserve', 'open', 'read']);

/** `Refrigerate once opened`, `once opened, a jar goes in the fridge`: only when something that nobody knows comes about. */
const isOnceMore = ({ act, as, until, where, vessel }: Event): boolean =>
  until.some(({ from, is }) => from === 'when' && is === undefined) &&
  (act === 'cool' ||
    act === 'freeze' ||
    ((act === 'stay' || (act === 'put' && as === 'told' && vessel?.is === 'jar')) &&
      where.some(({ is }) => is === 'cold' || is === 'frozen')));

/** Fat that something else was fried in, by the same heat. */
const isFried = ({ members }: Body, { was, heatedBy, cooked }: Member['state']): boolean =>
  (was & WAS.fat) !== 0 &&
  cooked !== 'raw' &&
  members.some(({ state }) => (state.was & WAS.fat) === 0 && state.heatedBy === heatedBy);

/** In its jar, with nothing but fat poured over: it lies in that. */
function laidIn(body: Body, all: readonly Body[]): Body {
  if (body.vessel !== 'jar' || !all.some((other) => other !== body && isFat(other))) return body;
  return withStates(body, (state) => ({ ...state, was: state.was | WAS.inFat }));
}

const isFat = ({ members }: Body): boolean => members.every(({ state }) => (state.was & WAS.fat) !== 0);
