/**
 * Knows how many days at most what is raw yet lies in the cold before it is cooked, and what acid keeps, which is no preserve.
 * Refuses to know where it lies, and what keeps by salt, by drying or by ferments.
 */
import type { Body, Stay } from '../../recipe/journey/bodies.ts';
import { WAS } from '../../recipe/journey/bodies.ts';
import { isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { CURES, type Held, isDried, type Lists, membersIn, mixtureIn, SOUR } from './spoils.ts';

/** So many minutes are told of, and so many are advised. */
export interface Days {
  readonly first: Held;
  readonly overMin: number;
  readonly min: number;
  readonly isRaw: boolean;
  readonly source: string;
}

const DAY = 1440;
const RAW_SOURCE = 'FoodSafety.gov, cold food storage chart (from memory)';
const SOUR_SOURCE = 'NCHFP, canned lemon curd and pickled eggs (from memory)';

/** Poultry, mince and fish raw for 1 to 2 days, other meat for 3 to 5, egg out of its shell for 2 to 4 (FoodSafety.gov, cold food storage chart, from memory). */
const SOON = { overMin: 5 * DAY, min: 2 * DAY };
const LATER = { overMin: 7 * DAY, min: 4 * DAY };
/** Water of the whole below which a dough or paste is stiff, alcohol of what is wet that keeps raw egg, and vinegar of the whole (judgement). */
const STIFF = 0.2;
const STRONG = 0.1;
const VINEGAR = 0.1;
/** Raw animal food of the whole from which its days count (judgement). */
const SHARE = 0.1;

/** Of what is raw; undefined where salt, acid, spirit, yeast or air keep it, and of a joint or an egg by itself, which age. */
export function rawDays(lists: Lists, body: Body): Days | undefined {
  const held = membersIn(lists, body);
  const raw = held.filter(isRawAnimal);
  const [first] = raw;
  if (first === undefined || (held.length === 1 && first.member.state.cut === 'whole')) return undefined;
  const mix = mixtureIn(lists, body);
  const { massG, waterG, alcoholG, saltG, acidG, of, has } = mix;
  const wet = waterG + alcoholG;
  if (massG <= 0 || of.flesh + of.egg < massG * SHARE || waterG < massG * STIFF) return undefined;
  if (saltG >= massG * CURES || has.has('curing') || has.has('yeast') || isDried(mix, body)) return undefined;
  if (acidG >= wet * SOUR || of.vinegar > massG * VINEGAR || alcoholG >= wet * STRONG) return undefined;
  if (has.has('culture') && of.flesh === 0) return undefined;
  return { first, ...(raw.some(isSoon) ? SOON : LATER), isRaw: true, source: RAW_SOURCE };
}

const isRawAnimal = ({ member: { state }, ingredient }: Held): boolean => {
  const states = listedAs(ingredient);
  return state.cooked === 'raw' && (state.was & WAS.animal) !== 0 && !states.has('cooked') && !states.has('treated');
};

const isSoon = ({ member: { state }, ingredient }: Held): boolean => {
  const kind = foodOf(ingredient)?.class;
  return (
    state.cut === 'minced' ||
    kind === 'poultry' ||
    kind === 'fish' ||
    kind === 'ground meat' ||
    kind === 'ground poultry'
  );
};

/** Egg, milk and flesh in what is sour: a curd for 4 weeks, eggs in vinegar for 3 to 4 months (NCHFP, from memory). */
const CURD = { overMin: 92 * DAY, min: 28 * DAY };
const PICKLED = { overMin: 190 * DAY, min: 120 * DAY };
const SWEET = 0.15;

/** Of what is cooked and keeps by its acid; undefined of what is canned, cultured or has nothing of an animal. */
export function sourDays(lists: Lists, { body }: Stay): Days | undefined {
  const { massG, waterG, alcoholG, acidG, of, has } = mixtureIn(lists, body);
  if (massG <= 0 || acidG < (waterG + alcoholG) * SOUR || has.has('culture')) return undefined;
  if (
    of.animal < massG * SHARE ||
    body.members.some(({ state }) => (state.was & (WAS.pressed | WAS.boiledInJar)) !== 0)
  )
    return undefined;
  const first = membersIn(lists, body).find(
    ({ ingredient }) => isOf(foodOf(ingredient), 'egg') || isOf(foodOf(ingredient), 'flesh'),
  );
  return first && { first, ...(of.sugar >= massG * SWEET ? CURD : PICKLED), isRaw: false, source: SOUR_SOURCE };
}
