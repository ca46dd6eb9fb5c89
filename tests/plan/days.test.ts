/**
 * Whole days, each worked out by hand from the text of its recipes before it was run: what begins when, what is asked, what clashes and
 * what would help. Served at 19:30 unless it says otherwise; somebody is up from 6:00 to 23:00.
 */
import { expect, test } from 'vitest';
import { planOf } from '../../server/src/recipe/plan/plan.ts';
import type { DayKitchen } from '../../server/src/recipe/plan/task.ts';
import { open } from '../support/harness.ts';

const KITCHEN: DayKitchen = {
  ovens: 1,
  pairsOfHands: 1,
  sharesOven: false,
  serve: 19 * 60 + 30,
  awake: { from: 6 * 60, to: 23 * 60 },
};

const text = (name: string, list: readonly string[], steps: readonly string[], head = ''): string =>
  `recipe ${name}\n${head}${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`;

/** What is planned in words: `18:55 light 220`, `19:10-19:30 Bake at 220 C for 20 min`. */
function day(
  texts: readonly string[],
  kitchen: Partial<DayKitchen> = {},
  given: Readonly<Record<number, number>> = {},
) {
  const all = { ...KITCHEN, ...kitchen };
  const recipes = texts.map((each) => open(each).recipe);
  const minutes = new Map(Object.entries(given).map(([line, min]) => [Number(line) - 1, min]));
  const plan = planOf(
    recipes.map((recipe) => ({ recipe, given: minutes })),
    all,
  );
  const clock = (minute: number) => {
    const at = (((all.serve + minute) % 1440) + 1440) % 1440;
    return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;
  };
  const said = plan.tasks.map(({ task: { part, line, start, end }, recipe }) =>
    recipes[recipe]?.parts[part]?.head.source.lines[line]?.text.slice(start, end).replace(/,$/, ''),
  );
  return {
    steps: plan.tasks.map(({ start, end, task, critical }, i) => {
      const when = task.minutes === 0 ? clock(start) : `${clock(start)}-${clock(end)}`;
      return `${when} ${said[i]}${critical ? ' *' : ''}`;
    }),
    lights: plan.preheats.map(({ start, celsius, oven }) => `${clock(start)} oven ${oven + 1} to ${celsius}`),
    start: clock(plan.start),
    daysBefore: Math.max(0, -Math.floor((all.serve + plan.start) / 1440)),
    hands: plan.handsMin,
    atLeast: plan.atLeast,
    asked: plan.tasks.flatMap(({ task: { from } }, i) => (from === 'unsaid' ? [said[i]] : [])),
    clashes: plan.clashes.map(
      ({ task, other, over, earlier, tooLong }) =>
        `${said[task]}: ${earlier} min earlier for ${over}${other === undefined ? '' : ` of ${said[other]}`}${tooLong > 0 ? `, waits ${tooLong} min too long` : ''}`,
    ),
    ways: plan.waysOut.map(
      ({ way, start, tooLong }) => `${way}: ${clock(start)}${tooLong > 0 ? `, ${tooLong} min too long` : ''}`,
    ),
    ahead: plan.ahead.map(({ task, days }) => `${said[task]} (${days})`),
  };
}

const ROLLS = text(
  'Rolls',
  ['500 g     bread flour', '320 g     water', '10 g      fine salt', '5 g       instant yeast'],
  [
    'Mix the flour, water, salt and yeast.',
    'Knead for 8 min.',
    'Prove at 24 C for 1 h 30 min.',
    'Shape for 10 min.',
    'Prove for 45 min.',
    'Bake at 220 C for 20 min, until the centre reads 96 C.',
  ],
);
const GRATIN = text(
  'Gratin',
  ['1 kg      potatoes', '400 ml    double cream'],
  ['Slice the potatoes for 15 min.', 'Layer with the cream for 5 min.', 'Bake at 160 C for 1 h 15 min.'],
);
const BEEF = text(
  'Beef',
  ['2 kg      beef rib', '10 g      salt'],
  [
    'Rub the beef with the salt for 5 min.',
    'Roast at 220 C for 20 min. Turn down to 160 C and roast for 1 h until it reads 55 C.',
    'Rest for 20 min.',
  ],
);

test('rolls: one thing after the other; what nothing says is asked for, and reckoned as nothing', () => {
  expect(day([ROLLS])).toEqual({
    steps: [
      '16:37 Mix the flour, water, salt and yeast *',
      '16:37-16:45 Knead for 8 min *',
      '16:45-18:15 Prove at 24 C for 1 h 30 min *',
      '18:15-18:25 Shape for 10 min *',
      '18:25-19:10 Prove for 45 min *',
      '19:10-19:30 Bake at 220 C for 20 min, until the centre reads 96 C *',
    ],
    lights: ['18:55 oven 1 to 220'],
    start: '16:37',
    daysBefore: 0,
    hands: 18,
    atLeast: true,
    asked: ['Mix the flour, water, salt and yeast'],
    clashes: [],
    ways: [],
    ahead: [],
  });
});

test('the same with an answer: the day begins so much earlier, and is no longer at least', () => {
  expect(day([ROLLS], {}, { 6: 7 })).toMatchObject({ start: '16:30', hands: 25, atLeast: false, asked: [] });
});

test('a joint, a gratin and rolls for one oven: the gratin and the joint come out too early, and a second oven mends it', () => {
  // Rolls last: 19:10. The oven takes 15 min up from 160: the gratin is out by 18:55. The joint ends at the same heat, at 17:40.
  expect(day([GRATIN, ROLLS, BEEF])).toMatchObject({
    steps: [
      '16:15-16:20 Rub the beef with the salt for 5 min *',
      '16:20-17:40 Roast at 220 C for 20 min. Turn down to 160 C and roast for 1 h until it reads 55 C *',
      '16:37 Mix the flour, water, salt and yeast',
      '16:37-16:45 Knead for 8 min',
      '16:45-18:15 Prove at 24 C for 1 h 30 min',
      '17:20-17:35 Slice the potatoes for 15 min',
      '17:35-17:40 Layer with the cream for 5 min',
      '17:40-18:55 Bake at 160 C for 1 h 15 min *',
      '18:15-18:25 Shape for 10 min',
      '18:25-19:10 Prove for 45 min',
      '19:10-19:30 Bake at 220 C for 20 min, until the centre reads 96 C *',
      '19:10-19:30 Rest for 20 min',
    ],
    lights: ['16:05 oven 1 to 220'],
    clashes: [
      'Bake at 160 C for 1 h 15 min: 35 min earlier for oven of Bake at 220 C for 20 min, until the centre reads 96 C, waits 15 min too long',
      'Roast at 220 C for 20 min. Turn down to 160 C and roast for 1 h until it reads 55 C: 90 min earlier for oven of Bake at 160 C for 1 h 15 min, waits 70 min too long',
    ].sort(),
    ways: ['another oven: 16:37'],
  });
});

const CAKE = (name: string, minutes: number) =>
  text(
    name,
    ['200 g     butter', '200 g     sugar', '200 g     plain flour', '4 large   eggs'],
    ['Beat the butter with the sugar, eggs and flour for 10 min.', `Bake at 180 C for ${minutes} min.`],
  );

test('two cakes at one heat: one after the other, unless they fit in together', () => {
  // 30 min and 40 min, one of them behind the other; what waits is hot and keeps so for 20 min.
  expect(day([CAKE('Round', 30), CAKE('Square', 40)])).toMatchObject({
    start: '18:05',
    lights: ['18:05 oven 1 to 180'],
    clashes: ['Bake at 180 C for 40 min: 30 min earlier for oven of Bake at 180 C for 30 min, waits 10 min too long'],
    ways: ['share the oven: 18:35', 'another oven: 18:35'],
  });
  expect(day([CAKE('Round', 30), CAKE('Square', 40)], { sharesOven: true })).toMatchObject({
    start: '18:35',
    steps: [
      '18:40-18:50 Beat the butter with the sugar, eggs and flour for 10 min *',
      '18:50-19:30 Bake at 180 C for 40 min *',
      '18:50-19:00 Beat the butter with the sugar, eggs and flour for 10 min',
      '19:00-19:30 Bake at 180 C for 30 min',
    ].sort(),
    clashes: [],
  });
});

test('a set cream: all of it may be done a day before, and the day itself is free', () => {
  const cream = text(
    'Set cream',
    ['500 g     double cream', '6 g       gelatine leaves'],
    [
      'Soak the gelatine for 10 min.',
      'Warm the cream for 5 min and stir in the gelatine for 2 min.',
      'Chill at 4 C for 4 h.',
    ],
  );
  expect(day([cream])).toMatchObject({
    start: '15:13',
    ahead: ['Chill at 4 C for 4 h (1)'],
    ways: ['days before: 19:30'],
  });
});

test('a dough that lies overnight: nobody gets up for it', () => {
  const loaf = text(
    'Loaf',
    ['500 g     bread flour', '350 g     water', '10 g      salt', '2 g       instant yeast'],
    [
      'Knead the flour, water, salt and yeast for 10 min.',
      'Prove in the fridge for 12 h.',
      'Bake at 230 C for 40 min.',
    ],
  );
  // Eaten at 8:00: in the oven from 7:20, in the fridge from 19:20 the day before.
  expect(day([loaf], { serve: 8 * 60 })).toMatchObject({ start: '19:10', daysBefore: 1, clashes: [] });
  // Eaten at 15:00 it would go into the fridge at 2:20; so it does at 23:00, and lies there for 3 h 20 min more, as a cold dough may.
  expect(day([loaf], { serve: 15 * 60 })).toMatchObject({ start: '22:50', daysBefore: 1, clashes: [] });
  // In the warm it would have fallen by then.
  expect(day([loaf.replace('in the fridge', 'at 20 C')], { serve: 15 * 60 })).toMatchObject({
    start: '22:50',
    daysBefore: 1,
    clashes: ['Prove at 20 C for 12 h: 200 min earlier for night, waits 200 min too long'],
    ways: ['at night: 02:10'],
  });
});

test('a joint that rests hot, in a box that is else for the cold, is not left there for a day', () => {
  const brisket = text(
    'Brisket',
    ['5 kg      beef brisket', '50 g      salt'],
    ['Smoke the brisket at 110 C for 8 h until the centre reads 93 C.', 'Rest in a cool box at 65 C for 3 h.'],
  );
  expect(day([brisket])).toMatchObject({ start: '08:30', ahead: [], ways: [] });
});

test('a terrine that chills overnight is baked in the evening, and does not stand about till the morning', () => {
  const terrine = text(
    'Terrine',
    ['1 kg      minced pork', '15 g      salt'],
    ['Mix the pork with the salt for 10 min.', 'Bake at 150 C for 75 min.', 'Cool for 1 h.', 'Chill at 4 C for 12 h.'],
  );
  // The latest, at 5:05, would have somebody up; so it is in the cold at 23:00, and waits there, at most for a day.
  expect(day([terrine])).toMatchObject({
    steps: [
      '20:35-20:45 Mix the pork with the salt for 10 min *',
      '20:45-22:00 Bake at 150 C for 75 min *',
      '22:00-23:00 Cool for 1 h *',
      '23:00-11:00 Chill at 4 C for 12 h *',
    ],
    daysBefore: 1,
    clashes: [],
  });
});

const SAUCE = (name: string) =>
  text(name, ['200 g     butter', '4 large   egg yolks'], ['Whisk the yolks and butter for 20 min.']);

test('two sauces want the same hands: one is made first', () => {
  expect(day([SAUCE('White'), SAUCE('Green')])).toMatchObject({
    start: '18:50',
    hands: 40,
    clashes: [
      'Whisk the yolks and butter for 20 min: 20 min earlier for hands of Whisk the yolks and butter for 20 min',
    ],
    ways: ['another cook: 19:10'],
  });
});

test('what is done meanwhile begins no earlier than what goes on by itself, and both are waited for', () => {
  const rice = text(
    'Rice',
    ['300 g     rice', '600 g     water', '100 g     almonds'],
    [
      'Simmer the rice in the water for 25 min.',
      'Meanwhile chop the almonds for 10 min.',
      'Stir in the almonds for 2 min.',
    ],
  );
  expect(day([rice]).steps).toEqual([
    '19:03-19:28 Simmer the rice in the water for 25 min *',
    '19:18-19:28 chop the almonds for 10 min',
    '19:28-19:30 Stir in the almonds for 2 min *',
  ]);
});

test("the head's work is shared among what the steps leave silent", () => {
  const soup = text(
    'Soup',
    ['500 g     carrots', '1 l       water'],
    ['Peel and slice the carrots.', 'Simmer in the water for 30 min.', 'Blend.'],
    '  time    20 min work\n',
  );
  expect(day([soup])).toMatchObject({
    steps: [
      '18:40-18:50 Peel and slice the carrots *',
      '18:50-19:20 Simmer in the water for 30 min *',
      '19:20-19:30 Blend *',
    ],
    hands: 20,
    atLeast: false,
    asked: [],
  });
});

test('a tart of two parts: the custard is made while the crust bakes, and the oven comes down for it', () => {
  const tart =
    'recipe Tart\n\npart base\n  240 g     plain flour\n  150 g     butter\n  do Rub the butter into the flour for 10 min.\n  do Chill at 4 C for 45 min.\n  do Roll out for 10 min.\n  do Bake at 180 C for 18 min.\n\npart custard\n  4 large   eggs\n  500 ml    double cream\n  do Whisk the eggs with the cream for 10 min.\n  do Stir into the base for 2 min.\n  do Bake at 160 C for 40 min.\n  do Cool for 1 h.\n  do Chill at 4 C for 2 h.\n';
  // The hand-worked tart of `schedule.test.ts`, from its text.
  expect(day([tart], { serve: 19 * 60 })).toMatchObject({
    start: '13:52',
    hands: 32,
    steps: [
      '13:52-14:02 Rub the butter into the flour for 10 min *',
      '14:02-14:47 Chill at 4 C for 45 min *',
      '14:47-14:57 Roll out for 10 min *',
      '14:57-15:15 Bake at 180 C for 18 min *',
      '15:08-15:18 Whisk the eggs with the cream for 10 min',
      '15:18-15:20 Stir into the base for 2 min',
      '15:20-16:00 Bake at 160 C for 40 min *',
      '16:00-17:00 Cool for 1 h *',
      '17:00-19:00 Chill at 4 C for 2 h *',
    ],
    lights: ['14:42 oven 1 to 180'],
    clashes: ['Bake at 180 C for 18 min: 3 min earlier for oven of Bake at 160 C for 40 min'],
    ahead: ['Chill at 4 C for 2 h (1)'],
  });
});

test('what cools in the oven leaves it to nothing else, nor does what is turned down on another line', () => {
  const cheesecake = text(
    'Cheesecake',
    ['600 g     cream cheese', '150 g     sugar'],
    [
      'Bake at 220 C for 10 min.',
      'Turn down to 150 C and bake for 50 min.',
      'Cool in the oven for 1 h.',
      'Chill at 4 C for 5 h.',
    ],
  );
  // In the oven from 12:30 to 14:30. The round cake may be hot at 19:30, long after it.
  const { steps, lights, clashes } = day([cheesecake, CAKE('Round', 30)]);
  expect([steps[0], lights, clashes]).toEqual([
    '12:30-14:30 Bake at 220 C for 10 min *',
    ['12:15 oven 1 to 220', '18:45 oven 1 to 180'],
    [],
  ]);
});

test('two dishes and two ovens: each has its own, and each is lit', () => {
  expect(day([GRATIN, CAKE('Round', 30)], { ovens: 2 })).toMatchObject({
    lights: ['18:00 oven 1 to 160', '18:45 oven 2 to 180'],
    clashes: [],
  });
});
