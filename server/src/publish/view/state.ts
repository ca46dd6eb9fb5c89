/**
 * Knows how the state of a recipe is said at the head of its page: never cooked, cooked and changed since, or as it stands.
 * Refuses to call proved what somebody still has to look at.
 */
import type { Recipe } from '../../recipe/model.ts';
import { recipeRecord } from '../../recipe/trials/state.ts';
import { changedSince, factsOf, type Trial } from '../../recipe/trials/trials.ts';
import { dateText } from '../date-text.ts';
import type { Proof } from '../proof.ts';

/** Never cooked, changed since, as it stands. */
export type StateMark = 'never' | 'changed' | 'proved';

/** One sentence, of which the first words say the most. */
export interface ViewState {
  readonly mark: StateMark;
  readonly strong: string;
  readonly rest: string;
}

/** `trials` are those of the recipe's own file, oldest first. */
export function viewState(recipe: Recipe, proof: Proof, trials: readonly Trial[]): ViewState {
  const { asWritten } = recipeRecord(recipe, trials);
  if (asWritten !== undefined) {
    const cooked = `cooked as written ${whenAndWho(asWritten)}`;
    const times = trials.length > 1 ? `, ${number(trials.length)} times in all` : '';
    return proof.missing.length === 0
      ? { mark: 'proved', strong: 'Proved:', rest: `${cooked}${times}.` }
      : { mark: 'proved', strong: 'Cooked as written', rest: `${whenAndWho(asWritten)}${times}.` };
  }
  const latest = trials.at(-1);
  if (latest === undefined) return { mark: 'never', strong: 'Never cooked.', rest: '' };
  const strong = `Cooked ${whenAndWho(latest)}`;
  if (latest.tested === undefined)
    return { mark: 'changed', strong: `${strong}:`, rest: 'not known whether as it stands here.' };
  const places = changedPlaces(recipe, latest.tested);
  if (places === 0)
    return { mark: 'changed', strong: `${strong} as it stands here, and rejected:`, rest: 'it proves nothing.' };
  return {
    mark: 'changed',
    strong: `${strong}, and changed since`,
    rest: `in ${number(places)} ${places === 1 ? 'place' : 'places'}: not yet cooked as it stands here.`,
  };
}

/** A figure that is another has a mark too many on both sides. */
function changedPlaces(recipe: Recipe, tested: readonly string[]): number {
  const facts = factsOf(recipe);
  const changed = changedSince(facts, tested).length;
  return Math.max(changed, tested.length - (facts.length - changed));
}

const whenAndWho = ({ date, by }: Trial): string => `on ${dateText(date)}${by === undefined ? '' : ` by ${by}`}`;

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const number = (count: number): string => WORDS[count] ?? String(count);
