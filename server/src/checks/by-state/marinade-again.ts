/**
 * Knows where what raw flesh lay in is used again, and no step boils it: a marinade served as a sauce, stirred into a dip.
 * Refuses to know whether the flesh is cooked.
 */
import type { Span } from '../../notation/tree.ts';
import type { Act } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type Body, isSameRef, type Member, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isIn, isOf } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { IngredientRef } from '../../recipe/model.ts';
import { speaks, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import { type Done, doneIn } from './done.ts';
import { overPieces } from './over-pieces.ts';
import { type Lists, membersIn } from './spoils.ts';
import type { Level } from './verdict.ts';

export interface UsedAgain extends Span {
  readonly level: Level;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
  /** What the flesh is called. */
  readonly flesh: string;
}

/** What flesh waits in. */
const SOAKS: ReadonlySet<Act> = new Set(['steep', 'stay', 'cool', 'thaw']);
const PUTS: ReadonlySet<Act> = new Set(['combine', 'put', 'cover', 'adjust']);
/** What is done with it is eaten. */
const USES: ReadonlySet<Act> = new Set(['combine', 'put', 'eat', 'return', 'cut', 'divide', 'unknown']);
/** All of it was with the flesh, but for a little. */
const ALL = 0.95;

interface Soaked {
  readonly flesh: string;
  readonly of: readonly IngredientRef[];
  readonly wet: readonly IngredientRef[];
  /** What lies under or beside it, and is no marinade. */
  readonly plants: readonly IngredientRef[];
}

/** Where flesh waits in something. */
const soaks = overPieces((lists, { stays }) =>
  stays.flatMap(({ by, body, timed, lies }) => {
    // `Chops in, overnight in the fridge`
    const isLeft = timed && lies.place === 'cold' && PUTS.has(by.event.act);
    const soaked = SOAKS.has(by.event.act) || isLeft ? soakedIn(lists, body, isInSoak(by)) : undefined;
    return soaked === undefined ? [] : [{ by, soaked }];
  }),
);

/** The first use of each marinade. */
export const usedAgain = onceFor((journey: Journey): readonly UsedAgain[] => {
  const those = soaks(journey);
  if (those.length === 0) return NONE;
  const events = doneIn(journey);
  const found: UsedAgain[] = [];
  for (const { by: soak, soaked } of those) {
    const from = events.findIndex(({ by }) => by.event.start === soak.event.start && isSameEvent(by, soak));
    if (from < 0 || events.slice(0, from).some(({ by }) => isShared(by, soaked, journey))) continue;
    const cooked = events.findIndex(({ by }, at) => at > from && by.event.act === 'heat' && by.event.said === 'yes');
    const kept = events.findIndex(({ by }, i) => i > from && isNotThrownAway(by, soaked));
    const put = events.findIndex(
      (each, i) =>
        i > from &&
        cooked >= 0 &&
        (i < cooked ? isSaved(each) : isUse(each, soaked, journey) || (kept >= 0 && i > kept && isPutOn(each.by))),
    );
    // `Do not waste the juice in the bowl: two spoons on each rice`
    const at = put < 0 && cooked >= 0 && kept > cooked ? kept : put;
    const use = events[at];
    // Whatever boils after it may have it in.
    if (use === undefined || isPlantCooked(events.slice(from + 1, at), use.by, soaked)) continue;
    if (events.slice(Math.max(at, cooked) + 1).some(({ by }) => boils(by))) continue;
    if (events.slice(from, at).some(({ by }) => boils(by) && by.event.cooks === 'through')) continue;
    const isSoakNamed = speaks(within(use.things, use.by.event), 'soak');
    // What is poured over by its name was not thrown away, whatever else is said.
    if (
      !isSoakNamed &&
      events.slice(from, at).some(({ by: { event } }) => event.act === 'discard' && event.said === 'yes')
    )
      continue;
    if (at < cooked && events.slice(at).some(isBasted)) continue;
    const { start, end } = use.by.event;
    const isNamed = use.by.names.length > 0 || isSoakNamed;
    if (!found.some((each) => each.part === use.part && each.line === use.line && each.start === start))
      found.push({
        level: isNamed ? 'error' : 'warning',
        part: use.part,
        line: use.line,
        start,
        end,
        flesh: soaked.flesh,
      });
  }
  return found;
});

const NONE: readonly UsedAgain[] = [];

/** What lay beside it went into the heat as well, as nobody says that the flesh did alone. */
const isPlantCooked = (between: readonly Done[], { names }: BoundEvent, { of, plants }: Soaked): boolean =>
  names.some(({ mention: { ingredients } }) => ingredients.some((ref) => isAmong(ref, plants))) &&
  between.some(
    ({ by }) =>
      by.event.act === 'heat' &&
      by.event.said === 'yes' &&
      (by.names.length === 0 ||
        by.names.some(({ mention: { ingredients } }) => ingredients.some((ref) => !isAmong(ref, of)))),
  );

const isSameEvent = (a: BoundEvent, b: BoundEvent): boolean =>
  a.event.verb?.start === b.event.verb?.start && a.event.end === b.event.end;

/** Raw flesh, and what it lies in; undefined where some of that was kept apart. */
function soakedIn(lists: Lists, body: Body, inSoak: boolean): Soaked | undefined {
  const held = membersIn(lists, body);
  const isRaw = ({ state }: Member): boolean => state.cooked === 'raw' && (state.was & WAS.animal) !== 0;
  const flesh = held.find(({ member, ingredient }) => isRaw(member) && isOf(foodOf(ingredient), 'flesh'));
  // What mince is mixed with is fried with it: nothing of it is left in the bowl.
  if (flesh === undefined || flesh.member.state.cut === 'minced') return undefined;
  const others = held.filter(({ member }) => !isRaw(member));
  const wet = others.filter(
    ({ ingredient }) => isIn(ingredient, 'sour fruit') || DRY.every((family) => !isIn(ingredient, family)),
  );
  const plants = others.filter(({ ingredient }) => isIn(ingredient, 'plant') && !isIn(ingredient, 'sour fruit'));
  if ((wet.length === 0 && plants.length === 0 && !inSoak) || wet.some(({ member }) => allOf(body, member) < ALL))
    return undefined;
  return {
    plants: plants.map(({ member }) => member.of),
    flesh: flesh.ingredient.name,
    of: held.filter(({ member }) => isRaw(member)).map(({ member }) => member.of),
    wet: wet.map(({ member }) => member.of),
  };
}

/** Of what went in portion by portion, all that lies there: salt that is dissolved in some of the water, and the rest poured on. */
const allOf = ({ members }: Body, { of }: Member): number =>
  members.reduce((sum, each) => (isSameRef(each.of, of) ? sum + each.share.low : sum), 0);

/** `Keep the pork in the brine`, of which nothing else is said. */
const isInSoak = ({ event: { medium } }: BoundEvent): boolean => medium?.is === 'brine' || medium?.is === 'acid';

const POURS: ReadonlySet<Act> = new Set(['combine', 'put', 'eat']);

const isAmong = (ref: IngredientRef, refs: readonly IngredientRef[]): boolean =>
  refs.some((other) => isSameRef(ref, other));

/** The rest of a marinade flows. */
const DRY = ['dry', 'sugar', 'plant'] as const;

function isUse(
  { by: { event, names, unnamed }, things }: Done,
  { of, wet, plants }: Soaked,
  { parts }: Journey,
): boolean {
  if (event.said !== 'yes' || event.as === 'beside' || !USES.has(event.act)) return false;
  // `Spoon it over, straight from the bowl`: nothing was cooked in that.
  const isFromVessel = event.act === 'put' && event.objects.some(({ role, by }) => role === 'from' && by === 'vessel');
  if (names.length === 0 && (isFromVessel || event.objects.some(({ by }) => by === 'rest'))) return true;
  const holdsFlesh = (part: number): boolean =>
    of.some((ref) => ref.part === part) && wet.some((ref) => ref.part === part);
  const isOfFlesh = names.every(({ role, mention: { part, ingredients } }) =>
    // `Spoon some of the used brine over the chops`, which stand in its list.
    part === undefined ? ingredients.every((ref) => isAmong(ref, of)) : role === 'what' && holdsFlesh(part),
  );
  // `Pour what is left in the bag over the pork`
  if (unnamed === 'rest' && isOfFlesh && POURS.has(event.act)) return true;
  const own = within(things, event);
  // `Drizzle the leftover marinade over`, `stir a ladle of the brine into the gravy`
  if (isOfFlesh && POURS.has(event.act) && speaks(own, 'soak') && !speaks(things, 'kept apart', 'clean')) return true;
  return names.some(({ mention: { part, ingredients } }) =>
    part === undefined
      ? // What is listed twice over may be another.
        (ingredients.length === 1 && wet.some((ref) => isSameRef(ref, ingredients[0] as IngredientRef))) ||
        // `Serve on the lettuce` that it dripped on.
        (event.act === 'eat' && ingredients.some((ref) => isAmong(ref, plants)))
      : isMarinade(parts[part]?.index, of, wet),
  );
}

/** Some of it was kept apart: `half of the marinade`. */
const isShared = ({ names }: BoundEvent, soaked: Soaked, { parts }: Journey): boolean =>
  names.some(
    ({ mention }) =>
      mention.portion.kind !== 'plain' &&
      mention.portion.kind !== 'all' &&
      mention.part !== undefined &&
      isMarinade(parts[mention.part]?.index, soaked.of, soaked.wet),
  );

/** `Saving every drop in the bowl`, `keep what marinade is left`: of what the flesh was lifted out of. */
const isSaved = ({ by: { event, names }, things }: Done): boolean =>
  event.said === 'yes' &&
  names.length === 0 &&
  (event.act === 'reserve' ||
    (event.act === 'stay' && event.craft === 'keep' && speaks(within(things, event), 'soak')));

/** `Grill, basting with the marinade`: it goes over the fire with what lay in it. */
const isBasted = ({ by: { event }, things }: Done): boolean =>
  event.said === 'yes' && event.as === 'beside' && event.act === 'combine' && speaks(within(things, event), 'soak');

/** `Waste no drop of what the chicken lay in`: what is put on something after that is this. */
const isNotThrownAway = ({ event, names }: BoundEvent, { of, wet }: Soaked): boolean =>
  event.act === 'discard' &&
  event.said === 'not' &&
  // `Don't you dare throw away the basin!`
  ((names.length === 0 && event.vessel !== undefined && event.vessel.stands === undefined) ||
    names.some(({ mention: { ingredients } }) =>
      ingredients.some((ref) => [...of, ...wet].some((other) => isSameRef(ref, other))),
    ));

const isPutOn = ({ event }: BoundEvent): boolean => event.act === 'put' && event.said === 'yes';

/** A part of which all is what the flesh lay in, and none the flesh. */
const isMarinade = (part: number | undefined, of: readonly IngredientRef[], wet: readonly IngredientRef[]): boolean =>
  part !== undefined && wet.some((ref) => ref.part === part) && !of.some((ref) => ref.part === part);

const boils = ({ event }: BoundEvent): boolean =>
  event.act === 'heat' && event.said === 'yes' && event.cooks !== 'barely' && event.cooks !== 'outside';
