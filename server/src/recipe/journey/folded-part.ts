/**
 * Knows a part folded: what its steps leave of what they found, and of its list. It is folded again only where it found something else.
 * Refuses to know the other parts.
 */
import type { InPieces } from '../../measure/in-pieces.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Part } from '../model.ts';
import type { Placed } from './ahead.ts';
import { type Body, isSameBody, type Stay } from './bodies.ts';
import type { Clock } from './clock.ts';
import { type FoldedStep, foldStep, stillUsed } from './folded-step.ts';
import { listedStays } from './listed.ts';
import { type Done, type FoldState, isSameDone, isSameFold } from './state.ts';

export interface FoldedPart {
  readonly part: Part;
  readonly before: FoldState;
  readonly steps: readonly FoldedStep[];
  /** Of the list, before the first step, and of the steps. */
  readonly listed: readonly Stay[];
  readonly stays: readonly Stay[];
  /** Stays of which the clock told later how long they are. */
  readonly tells: readonly Stay[];
  /** Open bodies that it made or put elsewhere, the newest last, each with the parts of which it holds something. */
  readonly made: readonly { readonly body: Body; readonly parts: readonly number[] }[];
  /** Bodies that nothing can happen to any more. */
  readonly ended: readonly Body[];
  /** Of the bodies that it found, those that are no longer as they were: taken, and changed where they stand. */
  readonly taken: ReadonlySet<number>;
  readonly changed: readonly Body[];
  /** Stays that the clock may end: those that it found and nothing may end any more, and those that it opens. */
  readonly ends: readonly Stay[];
  readonly opens: readonly { readonly stay: Stay; readonly parts: readonly number[] }[];
  readonly clock: Clock | undefined;
  /** What is spoken of at its end. */
  readonly focus: readonly number[];
  readonly done: Done;
  /** Other parts of whose lists it left less. */
  readonly elsewhere: readonly Done[];
  /** Other parts whose foods it had in hand. */
  readonly touches: readonly number[];
  /** Other parts of which something was there for it. */
  readonly saw: readonly number[];
}

const NO_PARTS: readonly number[] = [];

const FOLDED = keptOn<Placed, FoldedPart>();

export function* foldPart(before: FoldState, placed: Placed, parts: readonly Part[]): InPieces<FoldedPart> {
  const kept = FOLDED.get(placed);
  if (kept !== undefined && isSameFold(kept.before, before) && kept.steps.every(({ used }) => stillUsed(used, parts)))
    return kept;
  const steps: FoldedStep[] = [];
  let state = before;
  for (const step of placed.steps) {
    const folded = foldStep(state, placed.part, step, parts);
    steps.push(folded);
    state = folded.after;
    yield;
  }
  const folded = sum(placed.part, before, steps, state);
  FOLDED.set(placed, folded);
  return folded;
}

function sum(part: Part, before: FoldState, steps: readonly FoldedStep[], after: FoldState): FoldedPart {
  const isPut = (id: number): boolean => steps.some(({ put }) => put.has(id));
  const made = after.bodies.filter(({ id }) => isPut(id));
  const taken = new Set<number>();
  const changed: Body[] = [];
  const seen: Body[] = [...made];
  for (const body of before.bodies) {
    const now = isPut(body.id) ? undefined : after.bodies.find(({ id }) => id === body.id);
    if (now !== undefined && isSameBody(now, body)) continue;
    seen.push(body);
    if (now === undefined) taken.add(body.id);
    else changed.push(now);
  }
  const listed = listedStays(part);
  const othersIn = (bodies: readonly Body[], done: readonly Done[]): readonly number[] => {
    const parts = partsIn(
      bodies,
      done.map((each) => each.part),
    ).filter((index) => index !== part.index);
    return parts.length === 0 ? NO_PARTS : parts;
  };
  const elsewhere = after.done.filter((each, i) => !isSameDone(each, before.done[i] as Done));
  const stays = steps.flatMap((step) => step.stays);
  const ended = steps.flatMap((step) => step.ended);
  for (const stay of stays) seen.push(stay.body);
  const ends = before.open.filter((stay) => !after.open.includes(stay));
  for (const stay of ends) seen.push(stay.body);
  seen.push(...ended);
  return {
    part,
    before,
    steps,
    listed,
    stays,
    tells: stays.flatMap(({ told }) => told ?? []),
    made: made.map((body) => ({ body, parts: partsIn([body]) })),
    ended,
    taken,
    changed,
    ends,
    opens: after.open
      .filter((stay) => !before.open.includes(stay))
      .map((stay) => ({ stay, parts: partsIn([stay.body]) })),
    clock: after.clock,
    focus: after.focus,
    done: { part: part.index, left: after.left, made: made.at(-1) },
    elsewhere,
    touches: othersIn(seen, elsewhere),
    saw: othersIn([...before.bodies, ...before.open.map((stay) => stay.body)], before.done),
  };
}

/** The parts of which those bodies hold something, behind some that are known. */
export function partsIn(bodies: readonly Body[], known: readonly number[] = NO_PARTS): readonly number[] {
  const parts = [...known];
  let last = -1;
  for (const { members } of bodies)
    for (const { of } of members) {
      // Mostly all of one.
      if (of.part === last) continue;
      last = of.part;
      if (!parts.includes(last)) parts.push(last);
    }
  return parts;
}
