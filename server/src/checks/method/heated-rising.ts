/**
 * Knows how long the doughs of a recipe rise against the time in which their yeast doubles them, as warm as they stand.
 * Refuses to judge, and to know when a dough with a starter has risen.
 */
import { spansOf } from '../../heat/spans.ts';
import type { Stay } from '../../recipe/journey/bodies.ts';
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { type RisingStay, risingOf } from '../../recipe/waiting/rising.ts';
import { onceFor } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import type { Heated } from './written-heat.ts';

/** Where nobody says how warm it stands (judgement). */
const ROOM_C = 23;
const OPEN = Number.POSITIVE_INFINITY;

const hasYeast = anyPart(({ head }) => head.ingredients.some((each) => isIn(each, 'yeast')));

export const risenIn = (recipe: Recipe): readonly Heated[] =>
  hasYeast(recipe) ? journeysOf(recipe).flatMap(risenOn) : [];

interface Rise {
  readonly stay: Stay;
  readonly rising: RisingStay;
}

const risenOn = onceFor((journey: Journey): readonly Heated[] => {
  const rises = journey.stays.flatMap((stay): readonly Rise[] => {
    const rising = isLeaven(journey.parts, stay) ? undefined : risingOf(journey, stay, ROOM_C);
    return rising === undefined || stay.by.event.said !== 'yes' ? [] : [{ stay, rising }];
  });
  // In times of doubling.
  const all = rises.reduce((sum, { stay, rising }) => sum + stay.minutes.high / rising.likely, 0);
  return rises.flatMap(({ stay, rising }, i) => heatedBy(stay, rising, i === rises.length - 1 ? all : OPEN));
});

function heatedBy({ by: { event }, part, line, timed }: Stay, { likely, percent }: RisingStay, all: number) {
  const time = event.times.find(({ kind, per, choice }) => kind === 'spent' && per === undefined && choice === 0);
  if (time === undefined || !timed || !Number.isFinite(time.minutes.high)) return [];
  const { minutes, start, end } = time;
  const heated: Heated = {
    way: 'rise',
    of: `a dough with ${percent.toPrecision(2)} % of yeast`,
    spans: spansOf('any doubling', 'rise').map((span) => ({
      ...span,
      minutes: { low: span.minutes.low * likely, high: span.minutes.high * likely },
    })),
    heats: [],
    times: [{ ...minutes, start, end, part, line, at: [] }],
    totalMin: all * likely,
  };
  return [heated];
}

/** With a starter, or of nothing but flour, water and yeast, it ripens for as long as one likes. */
function isLeaven(parts: readonly Part[], { body }: Stay): boolean {
  const foods = body.members.flatMap(({ of }) => parts[of.part]?.head.ingredients[of.ingredient] ?? []);
  return (
    foods.some((each) => isIn(each, 'culture')) || foods.every((each) => LEAVEN.some((family) => isIn(each, family)))
  );
}
const LEAVEN = ['flour', 'water', 'yeast'] as const satisfies readonly Family[];
