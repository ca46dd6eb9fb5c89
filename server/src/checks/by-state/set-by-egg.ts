/**
 * Knows what is set by the egg in it, and what is told to be left liquid by it.
 * Refuses to know eggs that nothing heats.
 */
import { type Body, type FoodState, WAS } from '../../recipe/journey/bodies.ts';
import { EGG_DISHES } from '../safety/egg-dishes.ts';
import { type Held, type Lists, mixtureIn } from './spoils.ts';

/** Egg from this share of the mixture on is what sets it. */
const EGG_SETS = 0.3;

/** Less egg than this is what binds, and is not what stays liquid (judgement). */
const EGG_TELLS = 0.1;
/** A sweet that is runny within is meant to be. */
const SWEET = 0.1;

/** What is told to be liquid inside is the egg in it. */
export function isRunnyBake(lists: Lists, body: Body, { member, ingredient: { weighed } }: Held): boolean {
  if (!isOutOfOven(member.state)) return false;
  const { massG, of } = mixtureIn(lists, body);
  return weighed.known && of.sugar < massG * SWEET && weighed.grams.high > massG * EGG_TELLS;
}

/** Soft eggs out of the pan or the shell are as who eats them orders them. */
const isOutOfOven = ({ was, heatedBy }: FoodState): boolean =>
  (was & WAS.rare) !== 0 && heatedBy?.event.where.some(({ is, not }) => is === 'oven' && !not) === true;

export function setsByEgg(lists: Lists, body: Body, { member, ingredient: { weighed } }: Held): boolean {
  const kind = lists.parts[member.of.part]?.head.kind;
  // A terrine is set by its meat or by egg.
  if (kind !== undefined && kind.name !== 'terrine') return EGG_DISHES.has(kind.name);
  const { massG, of } = mixtureIn(lists, body);
  if (!weighed.known || of.flour > massG * 0.1 || of.sugar >= massG * 0.25) return false;
  return weighed.grams.high > massG * EGG_SETS;
}
