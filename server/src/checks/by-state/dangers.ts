/**
 * Knows the dangers of a recipe, judged by the state that every body is in: what is eaten undercooked, what lies warm too long, what is shut
 * off from air.
 */
import { journeyOf } from '../../recipe/journey/fold.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import type { House } from '../house.ts';
import { shutOff } from './shut-off.ts';
import { type TooWarm, tooWarm } from './too-warm.ts';
import { undercooked } from './undercooked.ts';
import { keyOf, type Verdict } from './verdict.ts';

export function dangersIn(recipe: Recipe, house: House): readonly Verdict[] {
  const journey = journeyOf(recipe);
  const shut = shutOff(recipe, journey);
  // A figure that is too low for several foods is one verdict.
  const cooking = new Map(
    undercooked(recipe, journey, house)
      .toReversed()
      .map((each) => [keyOf(each), each]),
  );
  const found = [...cooking.values(), ...tooWarm(house, recipe).map(verdictOf), ...shut.verdicts];
  return found.sort((a, b) => a.part - b.part || a.line - b.line || a.start - b.start);
}

const verdictOf = ({ kind, level, stay, start, end, minutes, celsius }: TooWarm): Verdict => ({
  code: kind === 'figure' ? 'held-too-warm' : 'cooling-too-slow',
  level,
  part: stay.part,
  line: stay.line,
  start,
  end,
  why: `${kind}${minutes === undefined ? '' : `, ${minutes.low} to ${minutes.high} min`}${celsius === undefined ? '' : `, ${celsius.low} °C`}, ${stay.lies.place ?? 'nobody knows where'} (${stay.lies.sure})`,
});
