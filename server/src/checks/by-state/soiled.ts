/**
 * Knows what raw flesh was cut, laid or mixed on, and where that is used again, unwashed, for what is eaten as it is; and birds that are
 * stuffed long before they are cooked.
 * Refuses to know what flesh lay in.
 */
import type { FoodClass } from '../../food/food.ts';
import { middle } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Act, Event } from '../../prose/event.ts';
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
import { type Done, doneIn, spokenAround } from './done.ts';
import type { UsedAgain } from './marinade-again.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, isRawBird, type Lists, membersIn } from './spoils.ts';

export type Contact = UsedAgain & { readonly kind: 'tool' | 'stuffed' | 'rinsed' };

/** What keeps on it what it touched. */
const GEAR = ['board', 'knife', 'tongs', 'brush', 'bowl', 'plate', 'bag'] as const satisfies readonly Thing[];
type Gear = (typeof GEAR)[number];

/** What is soiled by what is done, with no word of it: nobody cuts on air. */
const SOILS: Partial<Readonly<Record<Act, readonly Gear[]>>> = { cut: ['board', 'knife'], mince: ['board', 'knife'] };

/** What raw flesh was on, and whether words say that it was on this. */
interface Soil {
  readonly flesh: IngredientRef;
  readonly name: string;
  readonly said: boolean;
}

/** It goes back where it came from. */
const LAY_ON = ['plate', 'bowl', 'bag'] as const satisfies readonly Gear[];

/** The first use of each thing that raw flesh soiled. */
export const soiledAgain = onceFor((journey: Journey): readonly Contact[] => {
  if (!journey.steps.some((step) => speaksOfSame(step, journey.parts))) return NONE;
  const done = doneIn(journey);
  const soiled = new Map<Gear, Soil>();
  let wiped: { readonly gear: Gear; readonly at: Done } | undefined;
  let isCooked = false;
  let isBaked = false;
  for (const [at, each] of done.entries()) {
    const { by } = each;
    const { event } = by;
    const own = spokenAround(done, at);
    const isSame = speaks(own, 'same');
    if (event.said !== 'yes' && !isSame) continue;
    if (event.act === 'heat' || isOverFire(event)) isCooked = true;
    if (isInOven(by)) isBaked = true;
    if (speaks(own, 'washed')) for (const gear of GEAR) if (speaks(own, gear)) soiled.delete(gear);
    const isSaid = isCooked && speaks(own, 'held raw');
    const flesh = isCooked ? undefined : fleshOf(journey, by, each.part);
    if (flesh !== undefined) {
      for (const one of SOILS[event.act] ?? []) soiled.set(one, { ...flesh, said: false });
      for (const one of GEAR.filter((gear) => speaks(own, gear))) soiled.set(one, { ...flesh, said: true });
      continue;
    }
    const isClean = speaks(own, 'clean', 'washed');
    const isWiped = speaks(own, 'wiped') && !isClean;
    if (isWiped) {
      const gear = GEAR.find((one) => speaks(own, one) && soiled.has(one));
      if (gear !== undefined) wiped = { gear, at: each };
    }
    const gear = isClean ? undefined : gearAgain(own, soiled, isSame || isSaid, isCooked);
    // `Scrape the board and slice the cucumber on it`
    const onWiped =
      wiped !== undefined && wiped.at.part === each.part && wiped.at.line === each.line && !isClean
        ? wiped.gear
        : undefined;
    const again = gear ?? (CUTS.has(event.act) && !isWiped ? onWiped : undefined);
    const isThere = again !== undefined && isReady(journey, by, done.slice(at + 1));
    // A board like it was named for itself: which of them is meant, nobody knows.
    for (const { is, isNew } of own) if (isNew) for (const one of GEAR) if (one === is) soiled.delete(one);
    if (again === undefined) {
      const lies =
        isCooked && !isBaked && !isClean && !speaks(own, 'kept apart') ? laidAgain(by, own, soiled) : undefined;
      if (lies !== undefined && isReady(journey, by, done.slice(at + 1)))
        return [contact(each, soiled.get(lies)?.name ?? fleshIn(journey, each.part), 'warning')];
      const on = isClean || !CUTS.has(event.act) || !isEatenRaw(journey, by) ? undefined : namedAgain(own, soiled);
      if (on !== undefined) return [contact(each, soiled.get(on)?.name ?? fleshIn(journey, each.part), 'warning')];
      continue;
    }
    if (isThere) return [contact(each, soiled.get(again)?.name ?? fleshIn(journey, each.part), 'error')];
  }
  return NONE;
});

const NONE: readonly Contact[] = [];
/** What is cut lies on it. */
const CUTS: ReadonlySet<Act> = new Set(['cut', 'mince']);

function contact({ by: { event }, part, line }: Done, flesh: string, level: Contact['level']): Contact {
  const { start, end } = event.verb ?? event;
  return { kind: 'tool', level, part, line, start, end, flesh };
}

/** What raw flesh was on, as words say that this is the same, or that what is cooked goes back to it. */
function gearAgain(
  own: readonly Spoken[],
  soiled: ReadonlyMap<Gear, Soil>,
  isSame: boolean,
  isCooked: boolean,
): Gear | undefined {
  if (isSame) {
    const gear = GEAR.find((one) => speaks(own, one) && (soiled.has(one) || speaks(own, 'held raw')));
    if (gear !== undefined) return gear;
  }
  if (!isCooked) return undefined;
  const isLaidOn = (gear: Gear): boolean => soiled.get(gear)?.said === true;
  if (speaks(own, 'where it was')) return LAY_ON.find(isLaidOn);
  return speaks(own, 'back') ? LAY_ON.find((gear) => isLaidOn(gear) && speaks(own, gear)) : undefined;
}

/** `The board`, of which words said that flesh was on it. */
const namedAgain = (own: readonly Spoken[], soiled: ReadonlyMap<Gear, Soil>): Gear | undefined =>
  GEAR.find((gear) => soiled.get(gear)?.said === true && own.some(({ is, isNew }) => is === gear && !isNew));

/** Over fire, with a time or a figure, it is cooked, whatever the verb. */
const isOverFire = ({ where, times, temperatures }: Event): boolean =>
  where.some(({ is, way, not }) => is === 'stove' && way === 'at' && !not) && times.length + temperatures.length > 0;

/** What it lies on goes in with it; on a grill it lies itself. */
const isInOven = ({ event: { act, craft, where } }: BoundEvent): boolean =>
  ((act === 'heat' && craft !== 'grill') || act === 'put') &&
  where.some(({ is, way, not }) => is === 'oven' && way !== 'out of' && !not);

/** What sets food down. */
const LAYS: ReadonlySet<Act> = new Set(['put', 'remove', 'return', 'pack']);
const POURS: ReadonlySet<Act> = new Set(['put', 'combine', 'eat', 'divide', 'cover']);

/** What came off the fire is heaped on the tray it was raw on; or what gathered in the bag it was raw in is poured over it. */
function laidAgain(
  { event, names }: BoundEvent,
  own: readonly Spoken[],
  soiled: ReadonlyMap<Gear, Soil>,
): Gear | undefined {
  const saidOf = (gear: Gear): Soil | undefined => {
    const soil = soiled.get(gear);
    return soil?.said === true ? soil : undefined;
  };
  const plate = saidOf('plate');
  if (
    plate !== undefined &&
    LAYS.has(event.act) &&
    own.some(({ is, isNew, start }) => is === 'plate' && !isNew && start >= event.start) &&
    names.every(({ mention }) => mention.ingredients.some((ref) => isSameRef(ref, plate.flesh)))
  )
    return 'plate';
  if (!POURS.has(event.act)) return undefined;
  const verb = event.verb?.start ?? event.start;
  return LAY_ON.find((gear) => {
    const before = own.find(({ is, start }) => is === gear && start < verb);
    return (
      saidOf(gear) !== undefined &&
      before !== undefined &&
      own.some(({ is, start }) => is === 'dregs' && start < before.start)
    );
  });
}

const SAME = keptOn<FoldedStep, boolean>();

const SOILED = [
  'same',
  'held raw',
  'wiped',
  'back',
  'where it was',
  'board',
  'knife',
  'plate',
  'dregs',
] as const satisfies readonly Thing[];

/** Whether a step speaks of what raw flesh was on: with no such word nothing is found, however many steps there are. */
function speaksOfSame(step: FoldedStep, parts: Journey['parts']): boolean {
  let same = SAME.get(step);
  if (same === undefined) {
    same = speaks(thingsAt(parts, step), ...SOILED);
    SAME.set(step, same);
  }
  return same;
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

/** What it names is raw in the end, and none of it is flesh. */
const isEatenRaw = (journey: Journey, { names }: BoundEvent): boolean =>
  areEatenRaw(
    journey,
    names.flatMap(({ mention }) => mention.ingredients),
  );

const areEatenRaw = ({ bodies, parts }: Journey, refs: readonly IngredientRef[], orUnsaid = false): boolean =>
  refs.some((ref) => {
    const part = parts[ref.part];
    return (
      part !== undefined &&
      !larderOf(part).flesh.includes(ref.ingredient) &&
      bodies.some(({ members }) =>
        members.some(
          ({ of, state: { cooked } }) => isSameRef(of, ref) && (cooked === 'raw' || (orUnsaid && cooked === 'unsaid')),
        ),
      )
    );
  });

/** It is eaten as it is: what it names is raw in the end, or nothing heats what was cooked once more. */
function isReady(journey: Journey, by: BoundEvent, after: readonly Done[]): boolean {
  if (isEatenRaw(journey, by)) return true;
  const isHeated = after.some(
    ({ by: { event } }) => event.act === 'heat' && event.said === 'yes' && event.cooks !== 'barely',
  );
  return !isHeated;
}

interface Standing {
  readonly of: readonly IngredientRef[];
}

/** Raw flesh that is washed over what stands there to be eaten as it is. */
export const rinsedOver = onceFor((journey: Journey): readonly Contact[] => {
  if (!journey.steps.some((step) => speaks(thingsAt(journey.parts, step), 'drainer'))) return NONE;
  const done = doneIn(journey);
  let standing: Standing | undefined;
  let named: { readonly of: readonly IngredientRef[]; readonly at: Done; readonly isFlesh: boolean } | undefined;
  for (const each of done) {
    const { by, part, line, things } = each;
    const { event, names } = by;
    if (event.said !== 'yes') continue;
    const of = names.flatMap(({ mention }) => mention.ingredients);
    if (of.length > 0) named = { of, at: each, isFlesh: fleshOf(journey, by, part) !== undefined };
    const isThere = speaks(within(things, event), 'drainer');
    // `Wash the parsley and stand it in the sieve`: it is no flesh.
    const isOfNamed = of.length === 0 && named?.at.part === part && named.at.line === line && !named.isFlesh;
    const flesh = isOfNamed
      ? undefined
      : (fleshOf(journey, by, part) ??
        (of.length === 0 && isOfFlesh(journey, part) ? { name: fleshIn(journey, part) } : undefined));
    if (flesh !== undefined) {
      const isWashed = event.craft === 'rinse' || speaks(things, 'washed', 'rinsed');
      if (standing !== undefined && isThere && isWashed && !speaks(things, 'clean'))
        return [{ ...contact(each, flesh.name, 'warning'), kind: 'rinsed' }];
      continue;
    }
    const those = isOfNamed ? (named?.of ?? of) : of;
    if (isThere && event.act !== 'discard' && those.length > 0 && areEatenRaw(journey, those, true))
      standing = { of: those };
    // It was taken away before.
    else if (
      standing?.of.some((ref) => those.some((other) => isSameRef(ref, other))) &&
      MOVES.has(event.act) &&
      event.craft !== 'drain'
    )
      standing = undefined;
  }
  return NONE;
});

const MOVES: ReadonlySet<Act> = new Set(['put', 'combine', 'remove', 'dry', 'pack', 'divide']);
const isOfFlesh = ({ parts }: Journey, part: number): boolean => {
  const of = parts[part];
  return of !== undefined && larderOf(of).flesh.length > 0;
};

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
