/**
 * Knows what bursts, boils over or burns whoever does it: hot liquid shut in a blender, a frozen bird in hot fat, an egg in its shell in the
 * microwave oven, dry ice that is swallowed, a spirit over a flame, what is heated in a closed tin, water on lye.
 * Refuses to know whether what is cooked is safe to eat.
 */
import { middle } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Span } from '../../notation/tree.ts';
import type { Act } from '../../prose/event.ts';
import { spokenIn } from '../../prose/things.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type Body, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { speaks, thingsAt, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import type { At } from './burning-step.ts';
import { tinHeatedShut } from './closed-tins.ts';
import type { Done } from './done.ts';
import { type Held, membersIn, mixtureIn } from './spoils.ts';
import type { Level } from './verdict.ts';
import { wateredLye } from './watered-lye.ts';
import { whirledShut } from './whirled-shut.ts';

export type Burning =
  | 'blender'
  | 'frozen in fat'
  | 'wet in fat'
  | 'brim of fat'
  | 'smoking fat'
  | 'egg'
  | 'cold swallowed'
  | 'cold shut'
  | 'spirit poured'
  | 'spirit boiled'
  | 'pressure'
  | 'sealed'
  | 'lye';

export interface Burn extends Span {
  readonly kind: Burning;
  readonly level: Level;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
}

/** A bird or a joint: in smaller pieces fat only spits (judgement). Grams. */
const WHOLE_G = 800;
/** Fat to lie in. Grams. */
const DEEP_G = 1000;
/** Grams of alcohol in 100 g of a spirit: 30 % by volume, that burns when it is warm. */
const SPIRIT = 24;
/** Of what boils, as much alcohol in what is wet, and so many grams of it (judgement). */
const STRONG = 0.25;
const STRONG_G = 50;

export const burns = onceFor((journey: Journey): readonly Burn[] => {
  const { steps, parts } = journey;
  const found: Burn[] = [];
  steps.forEach((step, place) => {
    if (!mayBurn(step, parts)) return;
    for (const burn of burnsIn({ journey, step, place, things: thingsAt(parts, step) }))
      if (!found.some(({ kind, part, line }) => kind === burn.kind && part === burn.part && line === burn.line))
        found.push(burn);
  });
  const tin = tinHeatedShut(journey);
  if (tin !== undefined && !found.some(({ kind }) => kind === 'sealed'))
    found.push(burnOf('sealed', tin.by.event.medium?.is === 'water' ? 'warning' : 'error', tin));
  const lye = wateredLye(journey);
  if (lye !== undefined) found.push(burnOf('lye', 'error', lye));
  return found;
});

function burnOf(kind: Burning, level: Level, { by, part, line }: Done): Burn {
  const { start, end } = by.event.verb ?? by.event;
  return { kind, level, part, line, start, end };
}

const MAY = keptOn<FoldedStep, boolean>();

/** Whether a step does or speaks of anything that one of these dangers wants: most do not, and nothing else is asked of them. */
function mayBurn(step: FoldedStep, parts: Journey['parts']): boolean {
  let may = MAY.get(step);
  if (may === undefined) {
    may =
      speaks(
        thingsAt(parts, step),
        'blender',
        'jug',
        'cryogen',
        'flame',
        'bottle',
        'pressure cooker',
        'brim',
        'smoking',
        'unopened',
        'left shut',
      ) ||
      step.events.some(
        ({ event: { medium, craft, cooks } }) =>
          medium?.is === 'fat' || medium?.is === 'microwaves' || craft === 'deep-fry' || cooks === 'through',
      );
    MAY.set(step, may);
  }
  return may;
}

function burnsIn(at: At): readonly Burn[] {
  const { part, line, events } = at.step;
  const found: Burn[] = [];
  for (const by of events) {
    if (by.event.said !== 'yes') continue;
    const { start, end } = by.event.verb ?? by.event;
    const add = (kind: Burning, level: Level | undefined): void => {
      if (level !== undefined) found.push({ kind, level, part, line, start, end });
    };
    add('blender', whirledShut(at, by));
    add('frozen in fat', inFat(at, by, true));
    add('wet in fat', inFat(at, by, false));
    add('brim of fat', overFat(at, by, 'brim'));
    add('smoking fat', overFat(at, by, 'smoking'));
    add('egg', eggInShell(at, by));
    const swallowed = cold(at, by);
    if (swallowed !== undefined) add(...swallowed);
    add('spirit poured', poured(at, by));
    add('spirit boiled', boiled(at, by));
    add('pressure', overfilled(at, by));
    add('sealed', sealed(at, by));
  }
  return found;
}

/** The bodies that an event heats. */
const heatedBy = ({ step }: At, by: BoundEvent): readonly Body[] =>
  by.event.act === 'heat'
    ? step.after.bodies.filter(({ members }) => members.some(({ state }) => state.heatedBy === by))
    : [];

/** A bird as it comes from the freezer or the brine: its water boils in the fat, which goes over the rim and burns. */
function inFat(at: At, by: BoundEvent, frozen: boolean): Level | undefined {
  const { event, names } = by;
  if (event.medium?.is !== 'fat' && event.craft !== 'deep-fry') return undefined;
  const { journey, step, things } = at;
  const part = journey.parts[step.part];
  const isDeep =
    event.craft === 'deep-fry' ||
    part?.head.ingredients.some(
      (each) => isIn(each, 'fat') && each.weighed.known && middle(each.weighed.grams) >= DEEP_G,
    );
  if (!isDeep) return undefined;
  for (const body of heatedBy(at, by))
    for (const { member, ingredient } of membersIn(journey, body)) {
      const { state } = member;
      if (!isOf(foodOf(ingredient), 'flesh') || state.cut !== 'whole' || !ingredient.weighed.known) continue;
      if (middle(ingredient.weighed.grams) * middle(member.share) < WHOLE_G) continue;
      const isFrozen =
        ((state.was & WAS.frozen) !== 0 && (state.was & WAS.thawed) === 0) ||
        names.some(({ already }) => already === 'frozen') ||
        hasIceYet(at);
      if (frozen ? isFrozen : !isFrozen && speaks(things, 'wet')) return 'error';
    }
  return undefined;
}

/** `Heat the oil in a pan that is filled to the brim`: whatever goes in makes it foam, and it runs into the flame. So much of it that smokes is about to burn. */
function overFat({ journey: { parts }, step, things }: At, by: BoundEvent, how: 'brim' | 'smoking'): Level | undefined {
  const { event, names } = by;
  const isHot = event.act === 'heat' || event.vessel?.stands === 'stove';
  // `Heat the oil in a pan, filling it to the brim`
  const next = step.events[step.events.indexOf(by) + 1]?.event;
  const ends = [event.end, ...event.until.map(({ end }) => end), ...(next?.as === 'beside' ? [next.end] : [])];
  const own = within(things, { start: event.start, end: Math.max(...ends) });
  if (!isHot || !speaks(own, how) || (how === 'brim' && speaks(own, 'vent', 'bottle'))) return undefined;
  const isOfFat = names.some(({ mention }) =>
    mention.ingredients.some(({ part, ingredient }) => {
      const each = parts[part]?.head.ingredients[ingredient];
      const { weighed } = each ?? {};
      const isDeep = weighed?.known === true && middle(weighed.grams) >= DEEP_G / 2;
      return each !== undefined && isIn(each, 'fat') && (how === 'brim' || isDeep);
    }),
  );
  return isOfFat ? 'error' : undefined;
}

/** `Never mind if there is ice in it yet`, in its part, and no step thaws it then or after. */
function hasIceYet({ journey: { steps, parts }, step, place }: At): boolean {
  for (let before = place; before >= 0; before--) {
    const each = steps[before];
    if (each === undefined || each.part !== step.part) return false;
    if (each.events.some(({ event: { act, said } }) => act === 'thaw' && said === 'yes')) return false;
    if (speaks(thingsAt(parts, each), 'icy')) return true;
  }
  return false;
}

/** What is done to an egg that is in no shell any more. */
const OPENS: ReadonlySet<Act> = new Set(['cut', 'combine', 'open', 'divide', 'mince', 'unknown']);

function eggInShell(at: At, by: BoundEvent): Level | undefined {
  if (by.event.medium?.is !== 'microwaves') return undefined;
  const { journey, place } = at;
  for (const body of heatedBy(at, by)) {
    const held = membersIn(journey, body).filter(({ ingredient }) => !isPlain(ingredient));
    if (held.length === 0 || !held.every(isWholeEgg)) continue;
    const before = journey.steps.slice(0, place + 1);
    if (before.some((each) => speaks(thingsAt(journey.parts, each), 'in the shell'))) return 'error';
    const isOpened = before.some(({ events }) =>
      events.some((other) => other !== by && OPENS.has(other.event.act) && other.event.said === 'yes'),
    );
    return isOpened ? undefined : 'warning';
  }
  return undefined;
}

const isWholeEgg = ({ member: { state }, ingredient }: Held): boolean =>
  foodOf(ingredient)?.class === 'egg' && state.cut === 'whole' && !listedAs(ingredient).has('cooked');
const isPlain = (ingredient: Ingredient): boolean => isIn(ingredient, 'water') || foodOf(ingredient)?.class === 'salt';

/** Kept cold by it, and not mixed with it. */
const AROUND: ReadonlySet<Act> = new Set(['pack', 'stay', 'cool', 'freeze', 'eat', 'discard']);

function cold({ journey, place, things }: At, by: BoundEvent): readonly [Burning, Level] | undefined {
  const { event } = by;
  const own = within(things, event);
  const part = journey.parts[journey.steps[place]?.part ?? -1];
  const isListed = part?.head.ingredients.some(({ name }) => speaks(spokenIn(name), 'cryogen')) === true;
  if ((!speaks(own, 'cryogen') && !(isListed && speaks(own, 'pellet'))) || speaks(own, 'gone')) return undefined;
  const done = journey.steps.slice(place).flatMap((step) => {
    const spoken = thingsAt(journey.parts, step);
    return step.events.map((each) => ({ by: each, things: spoken }));
  });
  const after = done.slice(done.findIndex((each) => each.by === by) + 1);
  const isShut =
    event.vessel?.is === 'jar' || after.some(({ by: { event: next } }) => next.act === 'close' && next.said === 'yes');
  if (isShut && !speaks(things, 'vent')) return ['cold shut', 'error'];
  if (AROUND.has(event.act) || event.until.length > 0) return undefined;
  for (const { by: next, things: spoken } of after) {
    if (next.event.said !== 'yes') continue;
    if (next.event.act === 'stay' || next.event.act === 'discard' || speaks(within(spoken, next.event), 'gone'))
      return undefined;
    if (next.event.act === 'eat') return ['cold swallowed', 'error'];
  }
  return speaks(things, 'gone') ? undefined : ['cold swallowed', 'warning'];
}

const isSpirit = (ingredient: Ingredient | undefined): boolean =>
  ingredient !== undefined && (foodOf(ingredient)?.per100.alcohol ?? 0) >= SPIRIT;

/** Out of the bottle, the flame climbs back into it. */
function poured({ journey, step, things }: At, { event, names }: BoundEvent): Level | undefined {
  if (event.act !== 'put' && event.act !== 'combine') return undefined;
  const isOfSpirit = names.some(({ mention }) =>
    mention.ingredients.some((ref) => isSpirit(journey.parts[ref.part]?.head.ingredients[ref.ingredient])),
  );
  const own = within(things, event);
  // `Tip more over it from the bottle`
  const isMore =
    names.length === 0 && speaks(own, 'bottle') && journey.parts[step.part]?.head.ingredients.some(isSpirit) === true;
  if (!isOfSpirit && !isMore) return undefined;
  if (speaks(own, 'flame')) return 'error';
  const burnsAlready =
    speaks(things, 'flame') || step.events.some(({ event: other }) => other.where.some(({ is }) => is === 'stove'));
  return speaks(own, 'bottle') && burnsAlready ? 'error' : undefined;
}

/** What rises from it is what burns. */
function boiled(at: At, by: BoundEvent): Level | undefined {
  if (by.event.cooks !== 'through' || by.event.medium?.is === 'pressure') return undefined;
  for (const body of heatedBy(at, by)) {
    const { waterG, alcoholG } = mixtureIn(at.journey, body);
    if (alcoholG >= STRONG_G && alcoholG >= (waterG + alcoholG) * STRONG)
      return speaks(within(at.things, by.event), 'flame') ? 'error' : 'warning';
  }
  return undefined;
}

/** Foam shuts the valve. */
const overfilled = ({ things }: At, { event }: BoundEvent): Level | undefined =>
  speaks(things, 'pressure cooker') && !speaks(things, 'vent') && speaks(within(things, event), 'brim')
    ? 'error'
    : undefined;

/** Of a tin, and of no door. */
const isSaidShut = (things: At['things'], event: Span): boolean =>
  speaks(within(things, event), 'unopened') ||
  (speaks(within(things, event), 'left shut') && speaks(things, 'tin') && !speaks(things, 'door'));

/** What is shut goes off when it is hot enough: a tin in the coals, a closed jar in the microwave oven. */
function sealed(at: At, by: BoundEvent): Level | undefined {
  const { event } = by;
  const isHeated =
    event.act === 'heat' ||
    event.where.some(
      ({ is, not, way }) => !not && way !== 'off' && way !== 'out of' && (is === 'stove' || is === 'oven'),
    );
  if (!isHeated) return undefined;
  if (isSaidShut(at.things, event)) return event.medium?.is === 'water' ? 'warning' : 'error';
  // What was boxed up for tomorrow is opened before it is warmed.
  const isClosed = at.step.events.some(({ event: other }) => other.act === 'close' && other.start < event.start);
  const isShut = heatedBy(at, by).some(({ shut, vessel }) => shut === 'jar' && vessel === 'jar');
  return isClosed && isShut && event.medium?.is === 'microwaves' ? 'error' : undefined;
}
