/**
 * Knows what an event does to one body by what is done, beside heat and time: what it is in, how it is shut, that it is cut or eaten.
 * Refuses to know other bodies.
 */
import type { Act, Event } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, type FoodState, isHot, WAS, withStates } from './bodies.ts';
import { anyDoes, deed } from './deeds.ts';
import { heated, readIn } from './heating.ts';
import { heats } from './heats.ts';
import { liftedOut, takenAgain } from './lifted-out.ts';
import { isOff, lie, stillWarm } from './stays.ts';
import { type Settled, settleTemperatures } from './temperatures.ts';
import { TRANSITIONS } from './transitions.ts';
import type { Worktop } from './worktop.ts';

/** Three days. */
const LONGEST_HEAT_MIN = 4320;

/** Where an event stands, and whether it may not happen. */
export interface At {
  readonly part: number;
  readonly line: number;
  readonly branch: boolean;
}

/** The body after it; where it lay is noted. */
export function changed(before: Body, by: BoundEvent, at: At, top: Worktop): Body {
  const { event } = by;
  const body = TRANSITIONS[event.act].joins ? takenAgain(before, by) : before;
  // Shaken, opened or eaten later on, what was closed up and kept was kept all the same.
  if (isKept(body) && (USES.has(event.act) || event.as === 'before')) {
    if (event.act !== 'eat') return body;
    // `Keep in the pantry and eat within 10 weeks`: so long it lies there.
    const isLife = body.shut !== 'jar' && event.times.some(({ kind }) => kind === 'life');
    return isLife ? lain(eaten(body), by, [], at, top) : eaten(body);
  }
  const temperatures = settleTemperatures(event, body);
  const vessel = vesselOf(by, body);
  // A jar that is closed stands in the kettle, and is not emptied into it.
  const isIn =
    body.shut === 'jar' ||
    (body.vessel === 'jar' && (event.act === 'close' || (event.act === 'put' && event.medium?.is === 'water')));
  const stands = isIn && (vessel === 'open' || vessel === 'lidded' || vessel === 'wrap');
  let next = vessel === undefined || stands ? body : { ...body, vessel };
  if (heats(event, body, temperatures)) {
    next = heated(next, by, temperatures);
    top.heats(next);
    // Nobody heats for days: so long it keeps.
    const keeps = event.times.filter(({ kind, minutes }) => kind !== 'every' && minutes.low >= LONGEST_HEAT_MIN);
    return keeps.length === 0
      ? next
      : lain(next, { ...by, event: { ...event, act: 'stay', where: [], times: keeps } }, [], at, top);
  }
  if (event.medium?.is === 'fat' && LAYS.has(event.act))
    next = withStates(next, (state) => ({ ...state, was: state.was | WAS.inFat }));
  if (isPuzzling(event)) next = withStates(next, (state) => ({ ...state, was: state.was | WAS.puzzled }));
  switch (event.act) {
    case 'cut':
      next = withStates(takenOut(next), (state) => cutMore(state, 'cut'));
      break;
    case 'mince':
      next = withStates(next, (state) => cutMore(state, 'minced'));
      break;
    case 'pierce':
      next = withStates(next, (state) => cutMore(state, 'pierced'));
      break;
    case 'stuff':
      next = withStates(next, (state) => ({ ...state, was: state.was | WAS.stuffed }));
      break;
    case 'cover': {
      const isLidded = event.vessel?.is === 'tool' && next.vessel === 'jar';
      next = {
        ...next,
        shut:
          event.medium?.is === 'fat' ? 'under fat' : isLidded ? 'jar' : next.shut === 'open' ? 'covered' : next.shut,
      };
      break;
    }
    case 'pack':
      if (
        (event.vessel === undefined || event.vessel.is === 'tool') &&
        event.where.length === 0 &&
        wasMade(next) &&
        !anyDoes(top.part.steps, LINES_TIN)
      )
        next = { ...next, vessel: next.vessel === 'airtight' ? 'airtight' : 'jar', shut: 'jar' };
      break;
    case 'close':
      // `Close the hatch`: that is no jar.
      if (by.unnamed !== 'name' || next.vessel === 'jar' || next.vessel === 'airtight' || event.vessel !== undefined)
        next = { ...next, shut: shutBy(next) };
      break;
    case 'combine':
      // Shaken in its jar, what nobody cooked is no longer put by.
      if (next.shut === 'jar' && next.members.every(({ state }) => state.cooked === 'raw'))
        next = { ...next, shut: 'covered' };
      if (next.vessel === 'jar' && vessel === undefined && event.lasts === 'works' && next.shut !== 'jar')
        next = { ...next, vessel: 'lidded' };
      break;
    case 'put':
      // The lids, on jars.
      if (event.vessel?.is === 'tool' && next.vessel === 'jar') next = { ...next, shut: 'jar' };
      break;
    case 'remove':
      // `Rinse, and hang to dry`
      if (event.vessel === undefined && isRinsing(by))
        next = withStates(next, (state) => ({ ...state, was: state.was | WAS.rinsed }));
      if (event.craft === 'strain' && event.said === 'yes')
        next = withStates(next, (state) => ({ ...state, was: state.was | WAS.strained }));
      // Into a pan, it is kept.
      if (event.craft === 'drain' && (event.vessel === undefined || event.vessel.is === 'tool'))
        next = withStates(next, (state) => ({ ...state, was: state.was | WAS.drained }));
      break;
    case 'read': {
      const warm = stillWarm(next, by, temperatures, at);
      if (warm !== undefined) top.lies(warm);
      break;
    }
    case 'open':
      // `Boil them, and open one in January`: the others stay shut.
      // `Vent the canner`: what is opened is no jar.
      next =
        by.names.length === 0 &&
        (isSealed(next) || ((next.shut === 'jar' || next.vessel === 'jar') && by.unnamed === 'name'))
          ? next
          : { ...next, shut: 'open' };
      break;
    case 'eat':
      next = eaten(next);
      break;
  }
  // `Drain, and save the liquor`, `keep the brine`: what of it is no food of the list is what it lay in.
  if ((event.act === 'reserve' || event.craft === 'keep') && by.unnamed === 'name')
    next = withStates(next, (state) => ({ ...state, was: state.was & ~WAS.drained }));
  // `Break it up until no red is left`, in the pan.
  // `The juices should run clear.`
  if (
    isHot(next) &&
    (next.lies.place === 'stove' || event.act === 'read') &&
    event.until.some(({ is, from }) => is === 'through' && from === 'until')
  )
    next = withStates(next, (state) => ({ ...state, was: state.was | WAS.signed }));
  if (event.craft === 'taste' && event.said === 'yes' && !isOfAnother(by) && !isOfCooked(event))
    next = withStates(next, tasted);
  // `Out they come, still pink at the heart`: heat has its own signs.
  if (LEAVES_RARE.has(event.act) && event.until.some(({ is }) => is === 'rare')) next = withStates(next, leftRare);
  if (event.act !== 'cool' && event.act !== 'freeze' && event.act !== 'thaw') next = readIn(next, by, temperatures);
  return lain(liftedOut(next, by), by, temperatures, at, top);
}

const LEAVES_RARE: ReadonlySet<Act> = new Set<Act>(['read', 'remove', 'put']);

/** Days from which what lay in its jar was kept in it. */
const KEPT_MIN = 2880;

const isKept = ({ shut, vessel, waits, warmMin }: Body): boolean =>
  shut === 'jar'
    ? waits !== undefined || warmMin.low >= KEPT_MIN
    : vessel === 'jar' && waits !== undefined && waits.lies.sure === 'said';

function lain(body: Body, by: BoundEvent, temperatures: readonly Settled[], at: At, top: Worktop): Body {
  const { body: lain, stay } = lie(body, by, temperatures, at);
  if (stay !== undefined) top.lies(stay);
  return lain;
}

const SMALLER: Readonly<Record<FoodState['cut'], number>> = { whole: 0, cut: 1, pierced: 2, minced: 3 };

const cutMore = (state: FoodState, cut: FoodState['cut']): FoodState =>
  SMALLER[cut] > SMALLER[state.cut] ? { ...state, cut } : state;

/** It takes a while, and no row knows what it is; in half a minute a machine has mixed, and no stove cooked. */
const isPuzzling = ({ act, as, verb, times }: Event): boolean =>
  act === 'unknown' &&
  as === 'ordered' &&
  verb !== undefined &&
  times.some(({ kind, minutes }) => kind === 'spent' && minutes.high >= LEAST_COOKED_MIN);
const LEAST_COOKED_MIN = 1;

/** What lies in fat from then on; what is mixed with it does not. */
const LAYS: ReadonlySet<Act> = new Set<Act>(['put', 'pack', 'cover', 'steep', 'stay', 'close']);

const eaten = (body: Body): Body => withStates(body, (state) => ({ ...state, was: state.was | WAS.eaten }));

/** It is washed, and nothing that is named is taken out of it. */
const isRinsing = ({ event, names }: BoundEvent): boolean =>
  event.craft === 'rinse' && names.every(({ role }) => role !== 'from');

/** Heated in its closed jar. */
const isSealed = ({ shut, vessel, lies, members }: Body): boolean =>
  shut === 'jar' &&
  vessel === 'jar' &&
  HEATED_AT.has(lies.place) &&
  members.some(({ state }) => state.cooked !== 'raw');
const HEATED_AT: ReadonlySet<Body['lies']['place']> = new Set<Body['lies']['place']>(['stove', 'bath', 'oven']);

const USES: ReadonlySet<Act> = new Set<Act>(['combine', 'eat', 'open']);

/** `Taste the sauce`: a name that is no food of this. */
const isOfAnother = ({ names, unnamed }: BoundEvent): boolean => names.length === 0 && unnamed === 'name';

/** `Taste a fried spoonful` */
const isOfCooked = ({ objects }: Event): boolean => objects.some(({ already }) => already === 'cooked');

const tasted = (state: FoodState): FoodState =>
  state.cooked === 'raw' && state.cut === 'minced' && (state.was & WAS.animal) !== 0
    ? { ...state, was: state.was | WAS.tasted }
    : state;

/** It is cooked less than its verb says; a figure still tells more. */
const leftRare = (state: FoodState): FoodState =>
  (state.was & WAS.animal) === 0
    ? state
    : { ...state, cooked: state.cooked === 'through' ? 'unsaid' : state.cooked, was: state.was | WAS.rare };

/** What it is put in; `a jar of passata` holds nothing any more. */
function vesselOf({ event: { act, craft, vessel }, names }: BoundEvent, { vessel: before }: Body): Body['vessel'] {
  // A cake hangs on a bottle, and a cloth over a jar.
  if (craft === 'hang') return undefined;
  if (vessel?.is === undefined || vessel.is === 'tool' || act === 'remove' || act === 'open') return undefined;
  // The copper that the jars stand in; `bags fully under` says that they are no jars.
  if (before === 'jar' && act === 'heat' && vessel.is !== 'airtight') return before;
  const isEmptied = names.some(({ mention }) => mention.start > vessel.end && mention.start - vessel.end <= OF);
  return isEmptied ? undefined : vessel.is;
}

/** Between a measure and what it holds: ` of `. */
const OF = 4;

/** More was done with it than to take it from the list: it is bottled, and not laid in something. */
/** `Line the basin … pack in the filling`: into that. */
const LINES_TIN = deed(({ craft, vessel }) => craft === 'line' && vessel?.is !== 'jar');

const wasMade = ({ members, band }: Body): boolean => band !== 'unsaid' || members.length > 1;

/** Nobody carves in the bag: what was cooked in its closed pack is out of it. Jars are labelled, trimmed, scored. */
function takenOut(body: Body): Body {
  if (body.shut !== 'jar' || body.vessel !== 'airtight' || !body.members.some(({ state }) => state.cooked !== 'raw'))
    return body;
  return { ...body, vessel: undefined, shut: 'open' };
}

/** What is closed, and on no fire, is closed to be kept; so is what is packed in nothing that is named. */
function shutBy({ vessel, lies, band, members }: Body): Body['shut'] {
  if (vessel === 'jar' || vessel === 'airtight') return 'jar';
  // `Kill the flame, lid on`
  if (band === 'between' && isOff(lies)) return 'covered';
  // Nobody cans in a flask for hot soup; one that oil is poured into is a bottle.
  const isKeptHot =
    lies.place === 'hot' && members.every(({ state }) => state.cooked === 'through' && state.heatedBy !== undefined);
  return lies.place === 'stove' || lies.place === 'oven' || lies.place === 'warm' || isKeptHot ? 'covered' : 'jar';
}
