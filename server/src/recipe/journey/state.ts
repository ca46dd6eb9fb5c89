/**
 * Knows the state of a kitchen between two steps: the bodies that there are, what is spoken of, and what is left of every list.
 * Refuses to know how it changes.
 */
import type { IngredientRef } from '../names.ts';
import { type Body, isSameBody, type Stay } from './bodies.ts';
import { type Clock, isSameClock } from './clock.ts';

export interface FoldState {
  /** The newest last. */
  readonly bodies: readonly Body[];
  /** What was acted on last. */
  readonly focus: readonly number[];
  readonly nextId: number;
  /** The part that is being cooked, -1 before the first, and what is left of its list, as shares. */
  readonly part: number;
  readonly left: readonly number[];
  readonly done: Done | undefined;
  readonly clock: Clock | undefined;
  /** Stays out of the cold with no word of for how long, that nothing has ended since: the clock may tell. */
  readonly open: readonly Stay[];
}

/** A part that is at its end, with those before it. */
export interface Done {
  readonly part: number;
  readonly left: readonly number[];
  /** What it made last. */
  readonly made: Body | undefined;
  readonly before: Done | undefined;
}

const NONE: readonly Body[] = [];
export const EMPTY: FoldState = {
  bodies: [],
  focus: [],
  nextId: 1,
  part: -1,
  left: [],
  done: undefined,
  clock: undefined,
  open: [],
};

export function isSameFold(a: FoldState, b: FoldState): boolean {
  return (
    a === b ||
    (a.nextId === b.nextId &&
      a.part === b.part &&
      sameNumbers(a.focus, b.focus) &&
      sameNumbers(a.left, b.left) &&
      a.bodies.length === b.bodies.length &&
      a.bodies.every((body, i) => isSameBody(body, b.bodies[i] as Body)) &&
      isSameClock(a.clock, b.clock) &&
      a.open.length === b.open.length &&
      a.open.every((stay, i) => stay === b.open[i]) &&
      isSameDone(a.done, b.done))
  );
}

function isSameDone(a: Done | undefined, b: Done | undefined): boolean {
  let [one, other] = [a, b];
  while (one !== other) {
    if (one === undefined || other === undefined) return false;
    if (one.part !== other.part || !sameNumbers(one.left, other.left)) return false;
    if (
      one.made !== other.made &&
      (one.made === undefined || other.made === undefined || !isSameBody(one.made, other.made))
    )
      return false;
    [one, other] = [one.before, other.before];
  }
  return true;
}

const sameNumbers = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));

/** What is left of an ingredient, of the part that is cooked or an earlier one. */
export function leftOf({ part, left, done }: FoldState, ref: IngredientRef): number {
  if (ref.part === part) return left[ref.ingredient] ?? 0;
  for (let at = done; at !== undefined; at = at.before) if (at.part === ref.part) return at.left[ref.ingredient] ?? 0;
  return 0;
}

/** The state with so much left of an ingredient. */
export function withLeft(state: FoldState, ref: IngredientRef, share: number): FoldState {
  if (ref.part === state.part) return { ...state, left: put(state.left, ref.ingredient, share) };
  return { ...state, done: putDone(state.done, ref, share) };
}

const put = (left: readonly number[], at: number, share: number): readonly number[] =>
  left.map((each, i) => (i === at ? share : each));

function putDone(done: Done | undefined, ref: IngredientRef, share: number): Done | undefined {
  const above: Done[] = [];
  let at = done;
  while (at !== undefined && at.part !== ref.part) {
    above.push(at);
    at = at.before;
  }
  if (at === undefined) return done;
  let made: Done = { ...at, left: put(at.left, ref.ingredient, share) };
  for (const each of above.reverse()) made = { ...each, before: made };
  return made;
}

/** What a part that is at its end made, where none of it is open any more. */
export function madeBy(state: FoldState, part: number): readonly Body[] {
  for (let at = state.done; at !== undefined; at = at.before) {
    if (at.part !== part) continue;
    const { made } = at;
    return made === undefined ? NONE : [made];
  }
  return NONE;
}
