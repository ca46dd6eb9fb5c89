/** How long steps take, each held against the plain sense of what is written: minutes at work, waiting, cooking, and in all. */
import { describe, expect, test } from 'vitest';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { report as reportOf } from '../../server/src/publish/report.ts';
import { plannedTimes } from '../../server/src/recipe/journey/durations.ts';
import { open } from '../support/harness.ts';

const withSteps = (steps: readonly string[], head = ''): string =>
  `recipe Oats\n${head === '' ? '' : `  ${head}\n`}  1 kg      chicken thighs\n  200 g     rolled oats\n  100 g     milk\n${steps.map((step) => `  do ${step}\n`).join('')}`;

/** `10 at work, 50 waiting, 40 cooking, 60 in all` */
function planned(text: string): string {
  const { handsOn, waiting, cooking, total } = plannedTimes(open(text).recipe);
  return `${handsOn} at work, ${waiting} waiting, ${cooking ?? 0} cooking, ${total} in all`;
}

test.each<[string, readonly string[], string]>([
  ['a range', ['Bake the oats for 25 to 30 minutes.'], '0 at work, 28 waiting, 28 cooking, 28 in all'],
  ['a range in words', ['Bake the oats for twenty to thirty minutes.'], '0 at work, 25 waiting, 25 cooking, 25 in all'],
  ['half an hour', ['Simmer the oats for half an hour.'], '0 at work, 30 waiting, 30 cooking, 30 in all'],
  ['an hour and a half', ['Bake for an hour and a half.'], '0 at work, 90 waiting, 90 cooking, 90 in all'],
  ['a choice is its first', ['Soak the oats for 4 h or overnight.'], '0 at work, 240 waiting, 0 cooking, 240 in all'],
  ['at least', ['Chill for at least 2 h.'], '0 at work, 120 waiting, 0 cooking, 120 in all'],
  ['at least, and up to', ['Chill for at least 2 h and up to 4 h.'], '0 at work, 180 waiting, 0 cooking, 180 in all'],
  ['up to', ['Rest for up to 20 min.'], '0 at work, 20 waiting, 0 cooking, 20 in all'],
  ['a deadline takes no time', ['Boil for 5 min.', 'Chill within 2 h.'], '5 at work, 0 waiting, 5 cooking, 5 in all'],
  [
    'a point takes none',
    ['Bake for 25 min, rotating after 10 min, then start checking at 20 min.'],
    '0 at work, 25 waiting, 25 cooking, 25 in all',
  ],
  [
    'an interval takes none',
    ['Simmer for 1 h, stirring every 10 min.'],
    '0 at work, 60 waiting, 60 cooking, 60 in all',
  ],
  ['per side', ['Grill the thighs for 4 min per side.'], '0 at work, 8 waiting, 8 cooking, 8 in all'],
  [
    'one side and the other',
    ['Fry for 5 minutes on one side, 4 on the other.'],
    '9 at work, 0 waiting, 9 cooking, 9 in all',
  ],
  ['per batch', ['Fry the oats in 3 batches, 4 min per batch.'], '12 at work, 0 waiting, 12 cooking, 12 in all'],
  ['batches in words', ['Fry in two batches for 4 min each.'], '8 at work, 0 waiting, 8 cooking, 8 in all'],
  ['batches that nobody counts', ['Fry in batches for 4 min.'], '4 at work, 0 waiting, 4 cooking, 4 in all'],
  ['by weight', ['Roast the thighs for 20 min per 500 g.'], '0 at work, 40 waiting, 40 cooking, 40 in all'],
  [
    'by weight, and its sum',
    ['Roast the thighs 40 minutes a kilo, so about 40 minutes.'],
    '0 at work, 40 waiting, 40 cooking, 40 in all',
  ],
  [
    'another oven',
    ['Bake at 325 F for 20 minutes, or in a convection oven at 300 F for 15 minutes.'],
    '0 at work, 20 waiting, 20 cooking, 20 in all',
  ],
  ['work', ['Knead for 10 min.', 'Whisk for 5 minutes.'], '15 at work, 0 waiting, 0 cooking, 15 in all'],
  [
    'a short boil is stood by, a long one not',
    ['Boil for 5 min.', 'Simmer for 1 h.'],
    '5 at work, 60 waiting, 65 cooking, 65 in all',
  ],
  [
    'what is stirred over heat cooks',
    ['Stir over simmering water for 8 min until thick.'],
    '8 at work, 0 waiting, 8 cooking, 8 in all',
  ],
  ['a minute is not left', ['Stand for 1 min.', 'Stand for 10 min.'], '1 at work, 10 waiting, 0 cooking, 11 in all'],
  [
    'meanwhile',
    ['Bake the oats for 40 min.', 'Meanwhile, simmer the milk for 10 min.'],
    '10 at work, 30 waiting, 40 cooking, 40 in all',
  ],
  [
    'meanwhile, and longer',
    ['Bake the oats for 40 min.', 'Meanwhile, simmer the milk for 60 min.'],
    '0 at work, 60 waiting, 60 cooking, 60 in all',
  ],
  [
    'while it bakes',
    ['Bake the oats for 40 min.', 'While it bakes, boil the milk for 10 min.'],
    '10 at work, 30 waiting, 40 cooking, 40 in all',
  ],
  ['overnight', ['Soak the oats overnight.', 'Boil for 10 min.'], '10 at work, 720 waiting, 10 cooking, 730 in all'],
  [
    'the next morning',
    ['Cover the oats.', 'Next morning, boil them for 10 min.'],
    '10 at work, 480 waiting, 10 cooking, 490 in all',
  ],
  [
    'one night, said twice',
    ['Soak the oats overnight.', 'Next morning, boil them for 10 min.'],
    '10 at work, 720 waiting, 10 cooking, 730 in all',
  ],
  [
    'what is put away at the end',
    ['Boil the oats for 10 min.', 'Keep in the fridge for 2 days.'],
    '10 at work, 0 waiting, 10 cooking, 10 in all',
  ],
  [
    'what is put away on the way',
    ['Keep the dough in the fridge for 2 days.', 'Bake for 10 min.'],
    '0 at work, 2890 waiting, 10 cooking, 2890 in all',
  ],
  [
    'a cure that nothing was cooked before',
    ['Rub the thighs with the oats and keep at 4 C for 7 d.', 'Simmer until the centre reads 75 C.'],
    '0 at work, 10080 waiting, 0 cooking, 10080 in all',
  ],
  ['how long it is good', ['Boil for 10 min.', 'It keeps for 3 days.'], '10 at work, 0 waiting, 10 cooking, 10 in all'],
  ['what is not done', ['Boil for 10 min.', 'Do not soak for 2 h.'], '10 at work, 0 waiting, 10 cooking, 10 in all'],
  [
    'as the cook likes',
    ['Boil for 10 min.', 'If you like, chill for 1 h.'],
    '10 at work, 0 waiting, 10 cooking, 10 in all',
  ],
  [
    'an oven warms up beside',
    ['Preheat the oven for 30 min.', 'Bake for 10 min.'],
    '0 at work, 10 waiting, 10 cooking, 10 in all',
  ],
])('%s', (_, steps, want) => {
  expect(planned(withSteps(steps))).toBe(want);
});

test('nothing is said where no step says a time', () => {
  expect(plannedTimes(open(withSteps(['Bake the oats until golden.'])).recipe)).toEqual({
    total: null,
    handsOn: null,
    waiting: null,
    cooking: null,
    stated: false,
  });
});

describe('the head beside the steps', () => {
  const steps = ['Soak the oats for 30 min.', 'Knead for 10 min.', 'Bake for 25 min.'];
  test.each<[string, string]>([
    ['note none', '10 at work, 55 waiting, 25 cooking, 65 in all'],
    ['time 1 h', '10 at work, 50 waiting, 25 cooking, 60 in all'],
    ['time 20 min at work, 25 min in the oven', '20 at work, 55 waiting, 25 cooking, 75 in all'],
    ['time 20 min at work', '20 at work, 55 waiting, 25 cooking, 75 in all'],
    ['time prep 20 min, cook 40 min, total 1 h 30 min', '20 at work, 70 waiting, 40 cooking, 90 in all'],
    ['time 2 h at work, total 1 h', '60 at work, 0 waiting, 25 cooking, 60 in all'],
  ])('%s', (head, want) => {
    expect(planned(withSteps(steps, head))).toBe(want);
  });
});

const minutes = (text: string | undefined): number => {
  const [, d = '0', h = '0', m = '0'] = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?$/.exec(text ?? 'P') ?? [];
  return Number(d) * 1440 + Number(h) * 60 + Number(m);
};

test.each([
  ['note none', ['Bake the oats for 40 min.', 'Meanwhile, simmer the milk for 10 min.', 'Chill for 4 h or overnight.']],
  ['time 20 min at work', ['Bake the oats for 40 min.', 'Knead for 10 min.']],
  ['time 30 min', ['Bake the oats for 40 min.', 'Knead for 10 min.']],
  ['time prep 1 h, cook 2 h', ['Bake the oats for 40 min.', 'Fry in 3 batches for 4 min each.']],
])('report, page and data agree: %s', (head, steps) => {
  const { recipe, findings } = open(withSteps(steps, head));
  const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'us' });
  const data = JSON.parse(jsonLd(page)) as Record<string, string>;
  const { times_min: report } = reportOf(recipe, findings);
  expect(minutes(data.prepTime) + minutes(data.cookTime)).toBe(minutes(data.totalTime));
  expect(minutes(data.totalTime)).toBe(page.times.totalMin);
  expect(minutes(data.cookTime)).toBe(page.times.cookingMin);
  expect([report.total, report.hands_on, report.waiting, report.cooking]).toEqual([
    page.times.totalMin,
    page.times.handsOnMin,
    page.times.waitingMin,
    page.times.cookingMin,
  ]);
  expect((report.hands_on ?? 0) + (report.waiting ?? 0)).toBe(report.total);
});
