/**
 * Knows what a step works at: the bodies and lists that are there, with their numbers and their order.
 * Refuses to know events.
 */
import type { Part, Step } from '../model.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, bodyOf, type Lying, type Member, MOST_BODIES, type Stay, WAS } from './bodies.ts';
import { type Larder, larderOf } from './larder.ts';
import { openStay, openWith, withoutFood } from './passing.ts';
import type { FoldState } from './state.ts';

export type Mark = Pick<Worktop, 'state' | 'put' | 'ended'>;

export class Worktop {
  state: FoldState;
  readonly part: Part;
  readonly parts: readonly Part[];
  readonly step: Step;
  /** Bodies that were put somewhere. */
  put: ReadonlySet<number> = new Set();
  /** Bodies that nothing can happen to any more. */
  ended: readonly Body[] = [];
  readonly stays: Stay[] = [];
  /** Lists that were looked at, by part. */
  readonly used = new Map<number, Larder>();

  constructor(state: FoldState, part: Part, parts: readonly Part[], step: Step) {
    this.state = state;
    this.part = part;
    this.parts = parts;
    this.step = step;
    this.larder(part.index);
  }

  /** What is there now, to go back to. */
  mark(): Mark {
    const { state, put, ended } = this;
    return { state, put, ended };
  }

  goBack({ state, put, ended }: Mark): void {
    this.state = state;
    this.put = put;
    this.ended = ended;
  }

  larder(index: number): Larder {
    let larder = this.used.get(index);
    if (larder === undefined) {
      larder = larderOf(this.parts[index] as Part);
      this.used.set(index, larder);
    }
    return larder;
  }

  /** What was acted on last. */
  current(): readonly Body[] {
    const { bodies, focus } = this.state;
    return bodies.filter(({ id }) => focus.includes(id));
  }

  id(): number {
    const { nextId } = this.state;
    this.state = { ...this.state, nextId: nextId + 1 };
    return nextId;
  }

  /** A body of what is taken from a list. */
  bodyOfNew(members: readonly Member[]): Body {
    const body = bodyOf(this.id(), members);
    return members.length > 0 && members.every(({ state }) => (state.was & WAS.frozen) !== 0)
      ? { ...body, band: 'frozen' }
      : body;
  }

  /** Each body as it is changed where it stands. */
  change(change: (body: Body) => Body): void {
    this.state = { ...this.state, bodies: this.state.bodies.map(change) };
  }

  /** Where a body lies from then on. */
  lies(stay: Stay): void {
    this.stays.push(stay);
    this.state = { ...this.state, open: openWith(this.state.open, stay) };
  }

  /** From here on a body lies somewhere, with no word of for how long. */
  leaves(body: Body, lies: Lying, by: BoundEvent, line: number): void {
    const stay = openStay(body, lies, by, { part: this.part.index, line });
    this.state = { ...this.state, open: openWith(this.state.open, stay) };
  }

  /** It no longer lies where it lay. */
  heats(body: Body): void {
    const { open } = this.state;
    if (open.length > 0) this.state = { ...this.state, open: withoutFood(open, body) };
  }

  remove(bodies: readonly Body[]): void {
    this.state = { ...this.state, bodies: this.state.bodies.filter(({ id }) => !bodies.some((b) => b.id === id)) };
  }

  /** Puts the bodies behind the others; beyond what a kitchen has, the oldest is at its end. */
  place(bodies: readonly Body[], focus: readonly number[] = this.state.focus): void {
    const all = [...this.state.bodies, ...bodies];
    const over = Math.max(0, all.length - MOST_BODIES);
    this.put = new Set([...this.put, ...bodies.map(({ id }) => id)]);
    if (over > 0) this.ended = [...this.ended, ...all.slice(0, over)];
    this.state = { ...this.state, bodies: all.slice(over), focus };
  }
}
