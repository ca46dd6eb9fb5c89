/**
 * Knows what was lifted off the heat as done, and when it is taken in hand again: what goes on in the pan cooks no roast that rests on a board.
 * Refuses to know what is done enough.
 */
import type { Act, Event, PlaceKind } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, isSameRef, type Member, WAS, withStates } from './bodies.ts';
import { isReadInside } from './readings.ts';

/** The body with what an event sets down marked so. */
export function liftedOut(body: Body, by: BoundEvent): Body {
  if (!body.members.some(isDone) || !liftsOut(by)) return body;
  const isNamed = namedBy(by);
  const isOut = (member: Member): boolean => !hasNames(by) || isNamed(member);
  if (!body.members.some((member) => isDone(member) && isOut(member))) return body;
  return marked(body, isOut, true);
}

/** The body with what an event takes in hand again as it was in the pan. */
export function takenAgain(body: Body, by: BoundEvent): Body {
  if (!body.members.some(isLifted)) return body;
  const { event, unnamed, seen = [] } = by;
  const isAll =
    event.act === 'return' ||
    unnamed === 'all' ||
    isReadInside(event) ||
    (heatsIt(event)
      ? body.members.every(isLifted)
      : OBJECTS.has(unnamed ?? '') && (by.into !== undefined || (event.act === 'put' && !liftsOut(by))));
  const isNamed = namedBy(by);
  const isSeen = ({ of }: Member): boolean =>
    seen.some(({ part, ingredients }) => part === of.part || ingredients.some((ref) => isSameRef(ref, of)));
  return marked(body, (member) => isAll || isNamed(member) || isSeen(member), false);
}

const isLifted = ({ state: { was } }: Pick<Member, 'state'>): boolean => (was & WAS.lifted) !== 0;

const OBJECTS: ReadonlySet<string> = new Set(['it', 'all', 'rest', 'name']);

/** Flesh or egg that something heated, and that only a figure or a sign tells of. */
const isDone = ({ state: { was, cooked } }: Member): boolean => (was & WAS.animal) !== 0 && cooked === 'unsaid';

const hasNames = ({ names }: BoundEvent): boolean => names.some(({ role }) => role === 'what');

const namedBy =
  ({ names }: BoundEvent) =>
  ({ of }: Member): boolean =>
    names.some(({ mention: { part, ingredients } }) =>
      part === undefined ? ingredients.some((ref) => isSameRef(ref, of)) : of.part === part,
    );

const marked = (body: Body, which: (member: Member) => boolean, on: boolean): Body => {
  const of = new Set(body.members.filter(which).map(({ of }) => of));
  return withStates(body, (state, ref) => {
    if (!of.has(ref) || ((state.was & WAS.lifted) !== 0) === on) return state;
    return { ...state, was: on ? state.was | WAS.lifted : state.was & ~WAS.lifted };
  });
};

/** `Move it to a board`, `lift it out`, `rest the joint`; but `take the pan off the heat`, `leave to stand in the pan`. */
function liftsOut(by: BoundEvent): boolean {
  const { act, vessel, where, as } = by.event;
  if (!LIFTS.has(act) || as === 'before' || vessel?.stands === 'stove' || by.into === 'mixture') return false;
  if (heatsIt(by.event) || where.some(({ way }) => way === 'off')) return false;
  if (vessel?.stands === 'oven' && vessel.is !== 'tool') return false;
  if (act === 'remove') return true;
  if (act === 'put') return vessel !== undefined && by.into === undefined;
  return act === 'reserve' || hasNames(by);
}

const heatsIt = ({ act, where }: Event): boolean =>
  act === 'heat' || where.some(({ is, way, not }) => !not && way !== 'out of' && HEATS.has(is));
const LIFTS: ReadonlySet<Act> = new Set<Act>(['remove', 'put', 'reserve', 'stay']);
const HEATS: ReadonlySet<PlaceKind | undefined> = new Set<PlaceKind | undefined>(['oven', 'stove', 'bath', 'smoker']);
