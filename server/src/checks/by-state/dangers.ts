/**
 * Knows the dangers of a recipe, judged by the state that every body is in: what is eaten undercooked, what lies warm too long, what is shut
 * off from air.
 */
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import type { Recipe } from '../../recipe/model.ts';
import { type Served, servedAs } from '../../recipe/names/served.ts';
import type { House } from '../house.ts';
import { shutOff } from './shut-off.ts';
import { isQuestion, type TooWarm, tooWarm } from './too-warm.ts';
import { undercooked } from './undercooked.ts';
import { keyOf, type Verdict } from './verdict.ts';

export function dangersIn(recipe: Recipe, house: House): readonly Verdict[] {
  const served = servedAs(recipe);
  const found = journeysOf(recipe).flatMap((journey) => dangersOn(journey, served, house));
  return found.sort((a, b) => a.part - b.part || a.line - b.line || a.start - b.start);
}

function dangersOn(journey: Journey, served: Served, house: House): readonly Verdict[] {
  // A figure that is too low for several foods is one verdict.
  const cooking = new Map(
    undercooked(house, journey)
      .toReversed()
      .flatMap((each) => {
        const level = each.how.kind === 'raw flour' ? each.how.levels[served] : each.level;
        return level === undefined ? [] : [[keyOf(each), { ...each, level }]];
      }),
  );
  return [...cooking.values(), ...tooWarm(house, journey).map(verdictOf), ...shutOff(journey).verdicts];
}

const verdictOf = (each: TooWarm): Verdict => {
  const { kind, level, stay, start, end, minutes, celsius } = each;
  return {
    code: isQuestion(each) ? 'disposition-unsaid' : kind === 'figure' ? 'held-too-warm' : 'cooling-too-slow',
    level,
    part: stay.part,
    line: stay.line,
    start,
    end,
    why: `${kind}${minutes === undefined ? '' : `, ${minutes.low} to ${minutes.high} min`}${celsius === undefined ? '' : `, ${celsius.low} °C`}, ${stay.lies.place ?? 'nobody knows where'} (${stay.lies.sure})`,
  };
};
