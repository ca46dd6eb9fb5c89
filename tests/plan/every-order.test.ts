/** The search against every order tried by itself, with nothing left out, over days that are drawn by lot. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placesFor } from '../../server/src/recipe/plan/placing.ts';
import { schedule } from '../../server/src/recipe/plan/search.ts';
import { type DayKitchen, EVERYDAY, type Placed, type Task } from '../../server/src/recipe/plan/task.ts';
import '../support/seed.ts';

const task = (index: number): fc.Arbitrary<Task> =>
  fc
    .record({
      minutes: fc.constantFrom(0, 5, 10, 20, 45, 600),
      hands: fc.boolean(),
      heat: fc.constantFrom(undefined, undefined, 160, 180, 220),
      after: fc.subarray(Array.from({ length: index }, (_, i) => i)),
      mayWait: fc.constantFrom(0, 20, 120, 1440),
      watched: fc.boolean(),
    })
    .map(({ heat, ...rest }) => ({ ...rest, ...(heat !== undefined && { oven: { first: heat, last: heat } }) }));

const day = fc
  .integer({ min: 1, max: 6 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => task(i))));

const kitchen: fc.Arbitrary<DayKitchen> = fc.record({
  ovens: fc.constantFrom(1, 2),
  pairsOfHands: fc.constantFrom(1, 2),
  sharesOven: fc.boolean(),
  serve: fc.constantFrom(7 * 60, 19 * 60),
  awake: fc.constant(EVERYDAY),
});

type Cost = readonly [tooLong: number, elapsed: number, waits: number];

function costOf(tasks: readonly Task[], placed: readonly (Placed | undefined)[]): Cost {
  let [tooLong, elapsed, waits] = [0, 0, 0];
  for (const [i, { mayWait }] of tasks.entries()) {
    const own = placed[i] as Placed;
    const wait = own.wanted - own.end;
    tooLong += Math.max(0, wait - mayWait);
    elapsed = Math.max(elapsed, -own.start);
    waits += wait;
  }
  return [tooLong, elapsed, waits];
}

function best(tasks: readonly Task[], kitchenOf: DayKitchen): Cost {
  const followers = tasks.map((_, i) => tasks.flatMap(({ after }, j) => (after.includes(i) ? [j] : [])));
  const placed: (Placed | undefined)[] = tasks.map(() => undefined);
  let found: Cost | undefined;
  const isLess = (a: Cost, b: Cost) => {
    const at = a.findIndex((value, i) => value !== b[i]);
    return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
  };
  const go = (left: number): void => {
    if (left === 0) {
      const cost = costOf(tasks, placed);
      if (found === undefined || isLess(cost, found)) found = cost;
      return;
    }
    for (const [i] of tasks.entries()) {
      if (placed[i] !== undefined || followers[i]?.some((each) => placed[each] === undefined)) continue;
      for (const place of placesFor(i, tasks, followers[i] ?? [], placed, kitchenOf)) {
        placed[i] = place;
        go(left - 1);
        placed[i] = undefined;
      }
    }
  };
  go(tasks.length);
  return found as Cost;
}

test('no order is better than the one that is found, and nothing is in two places', () => {
  fc.assert(
    fc.property(day, kitchen, (tasks, of) => {
      const { placed, isBest } = schedule(tasks, of);
      expect(isBest).toBe(true);
      expect(costOf(tasks, placed)).toEqual(best(tasks, of));
      for (const [i, own] of placed.entries()) {
        expect(own.end - own.start).toBe(tasks[i]?.minutes);
        for (const before of tasks[i]?.after ?? []) expect(placed[before]?.end).toBeLessThanOrEqual(own.start);
        for (const [j, other] of placed.entries()) {
          const apart = other.end <= own.start || other.start >= own.end;
          if (j !== i && own.pair !== undefined && own.pair === other.pair) expect(apart).toBe(true);
          if (j !== i && !of.sharesOven && own.oven !== undefined && own.oven === other.oven) expect(apart).toBe(true);
        }
      }
    }),
    { numRuns: 300 },
  );
});
