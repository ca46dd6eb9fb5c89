/**
 * Knows what raw flesh was cut, laid or mixed on, and where that is used again, unwashed, for what is eaten as it is; and birds that are
 * stuffed long before they are cooked.
 * Refuses to know what flesh lay in.
 */
import type { FoodClass } from '../../food/food.ts';
import { middle } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Act } from '../../prose/event.ts';
import type { Spoken, Thing } from '../../prose/things.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { isSameRef, type Stay } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { larderOf } from '../../recipe/journey/larder.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { IngredientRef } from '../../recipe/model.ts';
import { speaks, thingsAt, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import type { UsedAgain } from './marinade-again.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, isRawBird, type Lists, membersIn } from './spoils.ts';

export type Contact = UsedAgain & { readonly kind: 'tool' | 'stuffed' };

/** What keeps on it what it touched. */
const GEAR = ['board', 'knife', 'tongs', 'brush', 'bowl', 'plate', 'bag'] as const satisfies readonly Thing[];
type Gear = (typeof GEAR)[number];

/** What is soiled by what is done, with no word of it: nobody cuts on air. */
const SOILS: Partial<Readonly<Record<Act, readonly Gear[]>>> = { cut: ['board', 'knife'], mince: ['board', 'knife'] };

interface Done {
  readonly by: BoundEvent;
  readonly part: number;
  readonly line: number;
  readonly things: readonly Spoken[];
}

/** The first use of each thing that raw flesh soiled. */
export const soiledAgain = onceFor((journey: Journey): readonly Contact[] => {
  if (!journey.steps.some((step) => speaksOfSame(step, journey.parts))) return NONE;
  const done = journey.steps.flatMap((step): readonly Done[] => {
    const things = thingsAt(journey.parts, step);
    return step.events.map((by) => ({ by, part: step.part, line: step.line, things }));
  });
  const soiled = new Map<Gear, { readonly flesh: IngredientRef; readonly name: string }>();
  const found: Contact[] = [];
  let isCooked = false;
  for (const [at, each] of done.entries()) {
    const { by } = each;
    const { event } = by;
    const own = ownOf(done, at);
    const isSame = speaks(own, 'same');
    if (event.said !== 'yes' && !isSame) continue;
    if (event.act === 'heat') isCooked = true;
    if (speaks(own, 'washed')) for (const gear of GEAR) if (speaks(own, gear)) soiled.delete(gear);
    const isSaid = isCooked && speaks(own, 'held raw');
    const flesh = isCooked ? undefined : fleshOf(journey, by, each.part);
    if (flesh !== undefined) {
      const gear = [...(SOILS[event.act] ?? []), ...GEAR.filter((one) => speaks(own, one))];
      for (const one of gear) soiled.set(one, flesh);
      continue;
    }
    const gear =
      (isSame || isSaid) && !speaks(own, 'clean', 'washed')
        ? GEAR.find((one) => speaks(own, one) && (isSaid || soiled.has(one)))
        : undefined;
    if (gear === undefined || !isReady(journey, by, done.slice(at + 1))) continue;
    const raw = soiled.get(gear)?.name ?? fleshIn(journey, each.part);
    const { start, end } = event.verb ?? event;
    found.push({ kind: 'tool', level: 'error', part: each.part, line: each.line, start, end, flesh: raw });
  }
  return found.length === 0 ? NONE : found.slice(0, 1);
});

const NONE: readonly Contact[] = [];

const SAME = keptOn<FoldedStep, boolean>();

/** Whether a step speaks of what raw flesh was on: with no such word nothing is found, however many steps there are. */
function speaksOfSame(step: FoldedStep, parts: Journey['parts']): boolean {
  let same = SAME.get(step);
  if (same === undefined) {
    same = speaks(thingsAt(parts, step), 'same', 'held raw');
    SAME.set(step, same);
  }
  return same;
}

/** What the words between the event before and the one behind it speak of. */
function ownOf(done: readonly Done[], at: number): readonly Spoken[] {
  const { by, part, line, things } = done[at] as Done;
  const isHere = (other: Done | undefined): boolean => other?.part === part && other.line === line;
  const [before, behind] = [done[at - 1], done[at + 1]];
  const start = isHere(before) ? Math.min(by.event.start, before?.by.event.end ?? 0) : 0;
  const end = isHere(behind) ? Math.max(by.event.end, behind?.by.event.start ?? 0) : Number.POSITIVE_INFINITY;
  return within(things, { start, end });
}

/** Raw flesh that an event names, or that a part is about and it works at with no name. */
function fleshOf(
  { parts }: Journey,
  { names, unnamed }: BoundEvent,
  at: number,
): { readonly flesh: IngredientRef; readonly name: string } | undefined {
  for (const { mention, already } of names)
    for (const ref of already === 'cooked' ? [] : mention.ingredients) {
      const part = parts[ref.part];
      const ingredient = part?.head.ingredients[ref.ingredient];
      if (part !== undefined && ingredient !== undefined && larderOf(part).flesh.includes(ref.ingredient))
        return { flesh: ref, name: ingredient.name };
    }
  // `Pile them on a tray`
  const part = parts[at];
  const [first] = part === undefined || unnamed !== 'it' || names.length > 0 ? [] : larderOf(part).flesh;
  const ingredient = first === undefined ? undefined : part?.head.ingredients[first];
  return first === undefined || ingredient === undefined
    ? undefined
    : { flesh: { part: at, ingredient: first }, name: ingredient.name };
}

/** What the flesh of a part is called. */
function fleshIn({ parts }: Journey, part: number): string {
  const of = parts[part];
  const [first] = of === undefined ? [] : larderOf(of).flesh;
  return (first === undefined ? undefined : of?.head.ingredients[first]?.name) ?? 'flesh';
}

/** It is eaten as it is: what it names is raw in the end, or nothing heats what was cooked once more. */
function isReady({ bodies }: Journey, { names }: BoundEvent, after: readonly Done[]): boolean {
  const refs = names.flatMap(({ mention }) => mention.ingredients);
  const raw = refs.filter((ref) =>
    bodies.some(({ members }) => members.some((m) => isSameRef(m.of, ref) && m.state.cooked === 'raw')),
  );
  if (raw.length > 0) return true;
  const isHeated = after.some(
    ({ by: { event } }) => event.act === 'heat' && event.said === 'yes' && event.cooks !== 'barely',
  );
  return !isHeated;
}

/** So long in the cold a filled bird is kept, and not only set down (judgement). Minutes. */
const AHEAD_MIN = 180;
/** Of what fills it, less is an onion for the smell. Grams (judgement). */
const FILLING_G = 80;

/** Of every piece, the stays of whole raw birds that are filled. */
const stuffedStays = overPieces((lists, { stays, folded }) =>
  stays.flatMap((stay) => {
    const bird = filledBird(lists, stay);
    if (bird === undefined) return [];
    const isFilled = folded.steps.some(({ events }) => events.some((by) => fills(by, bird.member.of)));
    return isFilled ? [{ stay, bird }] : [];
  }),
);

export const stuffedAhead = onceFor((journey: Journey): readonly Contact[] => {
  const found = stuffedStays(journey).map(({ stay, bird }): Contact => {
    const { start, end } = stay.by.event.verb ?? stay.by.event;
    const { part, line } = stay;
    return { kind: 'stuffed', level: 'error', part, line, start, end, flesh: bird.ingredient.name };
  });
  return found.length === 0 ? NONE : found;
});

/** A bird that is whole and raw, with something in it that is no herb and no fruit. */
function filledBird(lists: Lists, { timed, minutes, body, branch }: Stay): Held | undefined {
  if (!timed || minutes.high < AHEAD_MIN || branch) return undefined;
  const held = membersIn(lists, body);
  const bird = held.find(isRawBird);
  const isFilling = ({ member, ingredient }: Held): boolean =>
    ingredient !== bird?.ingredient &&
    !AROMATIC.has(foodOf(ingredient)?.class) &&
    !isIn(ingredient, 'dry') &&
    !isIn(ingredient, 'fat') &&
    ingredient.weighed.known &&
    middle(ingredient.weighed.grams) * middle(member.share) >= FILLING_G;
  return held.some(isFilling) ? bird : undefined;
}

const AROMATIC: ReadonlySet<FoodClass | undefined> = new Set([
  'fruit',
  'juice',
  'leafy herb',
  'vegetable',
  'water',
  'alcohol',
  'vinegar',
  'dairy',
]);

/** `Stuff the turkey`, `spoon the rice into the chicken`. */
const fills = ({ event, names }: BoundEvent, bird: IngredientRef): boolean =>
  event.said === 'yes' &&
  (event.act === 'stuff' ||
    ((event.act === 'put' || event.act === 'pack') &&
      names.some(({ role, mention }) => role === 'into' && mention.ingredients.some((ref) => isSameRef(ref, bird)))));
