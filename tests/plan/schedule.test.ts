/** Plans that were worked out by hand, each with the clock; the first two were checked by an exhaustive search over orders. */
import { expect, test } from 'vitest';
import { schedule } from '../../server/src/recipe/plan/search.ts';
import type { DayKitchen, Task } from '../../server/src/recipe/plan/task.ts';

interface Job {
  readonly name: string;
  readonly min: number;
  readonly hands?: boolean;
  readonly oven?: number;
  readonly after?: readonly string[];
  readonly mayWait?: number;
}

const KITCHEN: DayKitchen = { ovens: 1, pairsOfHands: 1, sharesOven: false, serve: 19 * 60 };

/** `name -60..-40`, in the order of the jobs. */
function planned(jobs: readonly Job[], kitchen: Partial<DayKitchen> = {}) {
  const tasks = jobs.map(
    ({ min, hands = false, oven, after = [], mayWait = Number.POSITIVE_INFINITY }): Task => ({
      minutes: min,
      hands,
      after: after.map((name) => jobs.findIndex((job) => job.name === name)),
      mayWait,
      ...(oven !== undefined && { oven: { first: oven, last: oven } }),
    }),
  );
  const { placed, elapsed, tooLong, isBest } = schedule(tasks, { ...KITCHEN, ...kitchen });
  return {
    elapsed,
    tooLong,
    isBest,
    times: jobs.map(({ name }, i) => `${name} ${placed[i]?.start}..${placed[i]?.end}`).join(', '),
  };
}

const TART: readonly Job[] = [
  { name: 'rub base', min: 10, hands: true },
  { name: 'chill', min: 45, after: ['rub base'] },
  { name: 'roll', min: 10, hands: true, after: ['chill'] },
  { name: 'blind', min: 18, oven: 180, after: ['roll'] },
  { name: 'custard', min: 10, hands: true },
  { name: 'fill', min: 2, hands: true, after: ['blind', 'custard'] },
  { name: 'bake', min: 40, oven: 160, after: ['fill'] },
  { name: 'cool', min: 60, after: ['bake'] },
  { name: 'cold', min: 120, after: ['cool'] },
];

test('a custard tart: the oven comes down from 180 to 160 while it is filled', () => {
  expect(planned(TART)).toEqual({
    elapsed: 308,
    tooLong: 0,
    isBest: true,
    times:
      'rub base -308..-298, chill -298..-253, roll -253..-243, blind -243..-225, custard -232..-222, fill -222..-220, bake -220..-180, cool -180..-120, cold -120..0',
  });
});

test('one pair of hands: 60 min, not 40', () => {
  const jobs = [
    { name: 'a', min: 20, hands: true },
    { name: 'b', min: 20, hands: true },
    { name: 'c', min: 20, hands: true, after: ['a', 'b'] },
  ];
  expect(planned(jobs)).toMatchObject({ elapsed: 60, isBest: true, times: 'a -40..-20, b -60..-40, c -20..0' });
  // Two cooks do both at once.
  expect(planned(jobs, { pairsOfHands: 2 })).toMatchObject({ elapsed: 40 });
});
