/**
 * Knows which bodies an order can only mean that names none: what is looked at, what has a middle to be read, what is raw yet.
 * Refuses to know what an order does with them.
 */
import type { IngredientRef, Mention } from '../model.ts';
import { type BoundEvent, boundEvents } from './bind.ts';
import { type Body, hasFlesh, isAnimal, isSameRef, isUnread, type Member, WAS, withStates } from './bodies.ts';
import { placeOf } from './larder.ts';
import { isMadeIn, leftOf } from './state.ts';
import type { Worktop } from './worktop.ts';

/** `On a rack in the oven until the meat reads 75 C`: what is looked at is what is heated. */
export const seenIn = ({ state }: Worktop, { seen = [] }: BoundEvent): readonly Body[] =>
  state.bodies.filter((body) => isSeenIn(body, seen));

const isSeenIn = ({ members }: Body, seen: readonly Mention[]): boolean =>
  seen.some(({ part, ingredients }) =>
    members.some(({ of }) => of.part === part || ingredients.some((ref) => isSameRef(ref, of))),
  );

/** `Sauce them, and leave till the probe by the bone says 80 C`: no sauce has a bone, and neither has oil a middle. */
export function readOf(top: Worktop): readonly Body[] {
  const current = top.current().filter(hasFlesh);
  if (current.length > 0) return current;
  const unread = top.state.bodies.filter(({ members }) => members.some(isUnread));
  const meat = unread.filter(({ members }) => members.some(({ of }) => isMeat(top, of)));
  return meat.length > 0 ? meat : unread;
}

const isMeat = (top: Worktop, { part, ingredient }: IngredientRef): boolean =>
  top.larder(part).flesh.includes(ingredient);

/** Meat that no step names, of lists that have no steps of their own. */
export const fleshApart = (top: Worktop): readonly IngredientRef[] =>
  top.state.done.flatMap(({ part }) => {
    if (top.parts[part]?.steps.length !== 0) return [];
    const { flesh, unnamed } = top.larder(part);
    return flesh
      .filter((ingredient) => unnamed.includes(ingredient) && leftOf(top.state, { part, ingredient }) >= 1)
      .map((ingredient) => ({ part, ingredient }));
  });

/** Raw flesh that another part made ready. */
export function rawBefore(top: Worktop): readonly Body[] {
  const isRaw = ({ of, state }: Member): boolean =>
    of.part !== top.part.index && state.cooked === 'raw' && isMeat(top, of);
  return last(top, ({ members }) => members.some(isRaw));
}

/** What was made hot on the stove for what follows. */
export const hotBefore = (top: Worktop): readonly Body[] =>
  last(
    top,
    ({ band, lies, members }) =>
      band === 'hot' && lies.place === 'stove' && members.every(({ of }) => of.part === top.part.index),
  );

function last({ state }: Worktop, fits: (body: Body) => boolean): readonly Body[] {
  const found = state.bodies.findLast(fits);
  return found === undefined ? [] : [found];
}

/**
 * Whatever of the part is raw yet goes into the heat where nothing is named: what was mixed apart is in it by then, but for what a later step
 * puts in by name (`add the soaked beans`).
 */
export function rawHere(top: Worktop, { event, seen }: BoundEvent, isOfOther: boolean): readonly Body[] {
  const { index } = top.part;
  const { goesIn } = top.larder(index);
  const here = placeOf(
    top.step,
    boundEvents(top.step).findIndex((each) => each.event.start === event.start),
  );
  return top.state.bodies.flatMap((body): readonly Body[] => {
    const raw = body.members.filter(
      ({ of, state }) => (of.part === index || isMadeIn(body, index)) && state.cooked === 'raw',
    );
    const goesInLater = ({ of }: Member): boolean => of.part === index && (goesIn[of.ingredient] ?? -1) > here;
    const isApart =
      isOfOther && raw.some(goesInLater) && raw.every((each) => goesInLater(each) || !isAnimal(each.state.was));
    if (raw.length === 0 || isApart) return [];
    if (body.members.some(({ state }) => (state.was & WAS.eaten) !== 0)) return [];
    if (body.band !== 'cold') return [body];
    // What was put in the cold in between may be a sauce; it is one where what is looked at is something else.
    if (seen !== undefined && !isSeenIn(body, seen)) return [];
    return [withStates(body, (s) => ({ ...s, was: s.was | WAS.implied }))];
  });
}
