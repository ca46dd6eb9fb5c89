/**
 * Knows the state of a kitchen between two steps of a part: the bodies that the part may speak of, what is spoken of, and what is left of
 * its list and of those before it.
 * Refuses to know how it changes.
 */
import type { IngredientRef } from '../model.ts';
import { type Body, isSameBody, type Stay } from './bodies.ts';
import { type Clock, isSameClock } from './clock.ts';

export interface FoldState {
  /** The newest last. */
  readonly bodies: readonly Body[];
  /** What was acted on last. */
  readonly focus: readonly number[];
  readonly nextId: number;
  /** The part that is being cooked, and what is left of its list, as shares. */
  readonly part: number;
  readonly left: readonly number[];
  /** The parts at their end that this one takes from. */
  readonly done: readonly Done[];
  readonly clock: Clock | undefined;
  /** Stays out of the cold with no word of for how long, that nothing has ended since: the clock may tell. */
  readonly open: readonly Stay[];
}

/** A part that is at its end. */
export interface Done {
  readonly part: number;
  readonly left: readonly number[];
  /** What it made last. */
  readonly made: Body | undefined;
}

const NONE: readonly Body[] = [];

/** So many bodies at most come of one part: each has a number of its own. */
const IDS = 2 ** 20;
/** The number of the first body that a part makes. */
export const firstId = (part: number): number => part * IDS + 1;

/** Whether the steps of that part put it together. */
export const isMadeIn = ({ id }: Body, part: number): boolean => Math.floor(id / IDS) === part;

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
      a.done.length === b.done.length &&
      a.done.every((each, i) => isSameDone(each, b.done[i] as Done)))
  );
}

export function isSameDone(a: Done, b: Done): boolean {
  return (
    a === b ||
    (a.part === b.part &&
      sameNumbers(a.left, b.left) &&
      (a.made === b.made || (a.made !== undefined && b.made !== undefined && isSameBody(a.made, b.made))))
  );
}

const sameNumbers = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));

/** What is left of an ingredient, of the part that is cooked or an earlier one. */
export function leftOf({ part, left, done }: FoldState, ref: IngredientRef): number {
  const of = ref.part === part ? left : done.find((each) => each.part === ref.part)?.left;
  return of?.[ref.ingredient] ?? 0;
}

/** The state with so much left of an ingredient. */
export function withLeft(state: FoldState, ref: IngredientRef, share: number): FoldState {
  if (ref.part === state.part) return { ...state, left: put(state.left, ref.ingredient, share) };
  const at = state.done.findIndex(({ part }) => part === ref.part);
  const done = state.done[at];
  return done === undefined
    ? state
    : { ...state, done: state.done.with(at, { ...done, left: put(done.left, ref.ingredient, share) }) };
}

const put = (left: readonly number[], at: number, share: number): readonly number[] =>
  left.map((each, i) => (i === at ? share : each));

/** What a part that is at its end made, where none of it is open any more. */
export function madeBy({ done }: FoldState, part: number): readonly Body[] {
  const made = done.find((each) => each.part === part)?.made;
  return made === undefined ? NONE : [made];
}
