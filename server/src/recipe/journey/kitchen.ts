/**
 * Knows what stands about between two parts: the bodies that are open, by the parts whose foods they hold, where they were left, what is left
 * of every list, and what the clock says.
 * Refuses to know what a part does with it: a part is shown what it may speak of, and the rest stays as it is.
 */
import type { Part } from '../recipe.ts';
import type { Placed } from './ahead.ts';
import { type Body, isHot, type Stay } from './bodies.ts';
import type { Clock } from './clock.ts';
import { type FoldedPart, partsIn } from './folded-part.ts';
import { type Related, reachedFrom, relatedOf } from './related.ts';
import { Shelf } from './shelf.ts';
import { type Done, type FoldState, firstId } from './state.ts';

const NO_FOCUS: readonly number[] = [];
const NO_DONE: readonly Done[] = [];

export class Kitchen {
  private readonly parts: readonly Part[];
  private readonly done: (Done | undefined)[] = [];
  private readonly bodies = new Shelf(({ id }: Body) => id);
  /** Stays that the clock may end. */
  private readonly open = new Shelf((stay: Stay) => stay);
  private focus: readonly number[] = NO_FOCUS;
  private clock: Clock | undefined;

  constructor(parts: readonly Part[]) {
    this.parts = parts;
  }

  /** What a part finds when it begins: its list is whole, and one without a list goes on with what was acted on last. */
  stateFor(placed: Placed): FoldState {
    const { index, head } = placed.part;
    const reached = reachedFrom(placed, this.parts);
    const focus = head.ingredients.length === 0 ? this.focus : NO_FOCUS;
    const bodies = this.shown(index, reached, focus, relatedOf(placed));
    return {
      bodies,
      focus,
      nextId: firstId(index),
      part: index,
      left: head.ingredients.map(() => 1),
      done: reached.length === 0 ? NO_DONE : reached.flatMap((each) => this.done[each] ?? []),
      clock: this.clock,
      open: relatedOf(placed).clock
        ? this.open.all()
        : this.open.of(bodies.length === 0 ? [index, ...reached] : [index, ...reached, ...partsIn(bodies)]),
    };
  }

  /** What is as a part leaves it. */
  leave({ done, taken, changed, made, focus, elsewhere, ends, opens, clock }: FoldedPart): void {
    for (const id of taken) this.bodies.take(id);
    for (const body of changed) this.bodies.replace(body);
    for (const { body, parts } of made) this.bodies.put(body, parts);
    for (const stay of ends) this.open.take(stay);
    for (const { stay, parts } of opens) this.open.put(stay, parts);
    this.done[done.part] = done;
    for (const other of elsewhere) this.done[other.part] = other;
    this.focus = focus;
    this.clock = clock;
  }

  private shown(
    index: number,
    reached: readonly number[],
    focus: readonly number[],
    { mixture, hot, clock }: Related,
  ): readonly Body[] {
    if (clock) return this.bodies.all();
    const mixed = mixture ? this.bodies.last(({ members }) => members.length > 1) : undefined;
    const more = [...(mixed === undefined ? [] : [mixed]), ...(hot ? this.bodies.all().filter(isHot) : [])];
    return this.bodies.of([index, ...reached], more.length === 0 ? focus : [...focus, ...more.map(({ id }) => id)]);
  }
}
