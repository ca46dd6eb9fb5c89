/**
 * Knows what stands about between two parts: the bodies that are open, by the parts whose foods they hold, where they were left, what is left
 * of every list, and what the clock says.
 * Refuses to know what a part does with it: a part is shown what it may speak of, and the rest stays as it is.
 */
import type { Part } from '../model.ts';
import type { Placed } from './ahead.ts';
import { type Body, isHot, isUnread, type Member, type Stay, WAS } from './bodies.ts';
import { isSameClock } from './clock.ts';
import { type FoldedPart, partsIn } from './folded-part.ts';
import { larderOf } from './larder.ts';
import { listsAlone, type Related, reachedFrom, relatedOf } from './related.ts';
import { Shelf } from './shelf.ts';
import { type Done, type FoldState, firstId } from './state.ts';

const NO_BODIES: readonly Body[] = [];
const NO_STAYS: readonly Stay[] = [];
const NO_FOCUS: readonly number[] = [];
const NO_DONE: readonly Done[] = [];

export class Kitchen {
  private readonly parts: readonly Part[];
  private readonly alone: readonly number[];
  private readonly done: (Done | undefined)[] = [];
  private readonly bodies = new Shelf(({ id }: Body) => id);
  /** Those with flesh or egg that nothing tells is done. */
  private readonly unread = new Set<number>();
  /** Stays that the clock may end. */
  private readonly open = new Shelf((stay: Stay) => stay);
  /** Parts that were left, in order; of the first so many it is known what they leave. */
  private readonly left: FoldedPart[] = [];
  private known = 0;
  /** Parts of whose foods something is not as it was in the kitchen before. */
  readonly other = new Set<number>();
  private isLastOther = false;
  /** Flesh or egg that nothing tells is done is other, or was. */
  private isUnreadOther = false;

  constructor(parts: readonly Part[]) {
    this.parts = parts;
    this.alone = listsAlone(parts);
  }

  /** Whether a part finds what it found in the kitchen before, as far as it is easily told. */
  findsTheSame(placed: Placed, { before, saw }: FoldedPart): boolean {
    const last = this.left.at(-1);
    if (!isSameClock(before.clock, last?.clock)) return false;
    if (this.other.size === 0) return true;
    const { mixture, raw, goesOn, hot, clock } = relatedOf(placed);
    if (
      mixture ||
      (raw && this.isUnreadOther) ||
      goesOn ||
      hot ||
      clock ||
      (this.isLastOther && placed.part.head.ingredients.length === 0)
    )
      return false;
    return (
      saw.every((part) => !this.other.has(part)) &&
      reachedFrom(placed, this.parts, this.alone).every((part) => !this.other.has(part))
    );
  }

  /** What a part finds when it begins: its list is whole, and one without a list goes on with what was acted on last. */
  stateFor(placed: Placed): FoldState {
    const { index, head } = placed.part;
    const last = this.left.at(-1);
    const reached = reachedFrom(placed, this.parts, this.alone);
    const related = relatedOf(placed);
    const before = related.goesOn ? this.rawBefore() : NO_FOCUS;
    const focus = before.length > 0 ? before : head.ingredients.length === 0 ? (last?.focus ?? NO_FOCUS) : NO_FOCUS;
    const alone: FoldState = {
      bodies: NO_BODIES,
      focus,
      nextId: firstId(index),
      part: index,
      left: head.ingredients.map(() => 1),
      done: NO_DONE,
      clock: last?.clock,
      open: NO_STAYS,
    };
    const { mixture, raw, hot, clock } = related;
    if (reached.length === 0 && focus.length === 0 && !mixture && !raw && !hot && !clock) return alone;
    this.lookAround();
    const bodies = this.shown(reached, focus, related);
    return {
      ...alone,
      bodies,
      done: reached.flatMap((each) => this.done[each] ?? []),
      open: clock ? this.open.all() : this.open.of([...reached, ...partsIn(bodies)]),
    };
  }

  /** A part is at its end. `before` is how it was folded in the kitchen before. */
  leave(folded: FoldedPart, before: FoldedPart | undefined): void {
    this.left.push(folded);
    this.isLastOther = folded !== before;
    if (folded === before) return;
    for (const each of before === undefined ? [folded] : [folded, before]) this.lose(each);
  }

  /** A part that was there before is no more, or is another. */
  lose({ part, touches, before, made, changed, taken }: FoldedPart): void {
    this.other.add(part.index);
    for (const each of touches) this.other.add(each);
    this.isUnreadOther ||=
      made.some(({ body }) => hasUnread(body)) ||
      changed.some(hasUnread) ||
      before.bodies.some((body) => (taken.has(body.id) || changed.some(({ id }) => id === body.id)) && hasUnread(body));
  }

  /** The only raw meat that was made ready, or with none the only raw egg: of several nobody knows which is meant. */
  private rawBefore(): readonly number[] {
    this.lookAround();
    const raw = this.bodies.all().filter(({ members }) => members.some(isRawAnimal));
    const meat = raw.filter(({ members }) => members.some((member) => isRawAnimal(member) && this.isMeat(member)));
    const [only, ...more] = meat.length > 0 ? meat : raw;
    return only === undefined || more.length > 0 ? NO_FOCUS : [only.id];
  }

  private isMeat({ of: { part, ingredient } }: Member): boolean {
    const of = this.parts[part];
    return of !== undefined && larderOf(of).flesh.includes(ingredient);
  }

  private lookAround(): void {
    for (; this.known < this.left.length; this.known++) {
      const { done, taken, changed, made, elsewhere, ends, opens } = this.left[this.known] as FoldedPart;
      for (const id of taken) {
        this.bodies.take(id);
        this.unread.delete(id);
      }
      for (const body of changed) {
        this.bodies.replace(body);
        this.look(body);
      }
      for (const { body, parts } of made) {
        this.bodies.put(body, parts);
        this.look(body);
      }
      for (const stay of ends) this.open.take(stay);
      for (const { stay, parts } of opens) this.open.put(stay, parts);
      this.done[done.part] = done;
      for (const other of elsewhere) this.done[other.part] = other;
    }
  }

  private look(body: Body): void {
    if (hasUnread(body)) this.unread.add(body.id);
    else this.unread.delete(body.id);
  }

  private shown(
    reached: readonly number[],
    focus: readonly number[],
    { mixture, raw, hot, clock }: Related,
  ): readonly Body[] {
    if (clock) return this.bodies.all();
    const mixed = mixture ? this.bodies.last(({ members }) => members.length > 1) : undefined;
    const more = [...(mixed === undefined ? [] : [mixed]), ...(hot ? this.bodies.all().filter(isHot) : [])];
    const unread = raw ? [...this.unread] : NO_FOCUS;
    return this.bodies.of(reached, [...focus, ...more.map(({ id }) => id), ...unread]);
  }
}

const hasUnread = ({ members }: Body): boolean => members.some(isUnread);

const isRawAnimal = ({ state }: Member): boolean => state.cooked === 'raw' && (state.was & WAS.animal) !== 0;
