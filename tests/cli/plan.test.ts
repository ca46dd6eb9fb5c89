/** The day planned backwards, on the command line: as text, data, page and calendar, and what is asked and refused. */
import ICAL from 'ical.js';
import { parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import type { PlanFacts } from '../../server/src/publish/plan-facts.ts';
import { quern } from '../support/fake-io.ts';

const GRATIN =
  'recipe Gratin\n  1 kg      potatoes\n  400 ml    double cream\n\n  do Slice the potatoes for 15 min.\n  do Layer with the cream.\n  do Bake at 160 C for 1 h 15 min.\n';
const ROLLS =
  'recipe Rolls; or, “small & round”\n  500 g     bread flour\n  320 g     water\n\n  do Knead the flour with the water for 10 min.\n  do Bake at 200 C for 10 min. Turn down to 180 C and bake for 15 min.\n';
const CREAM =
  'recipe Cream\n  500 g     double cream\n\n  do Warm the cream for 5 min.\n  do Chill at 4 C overnight.\n';
const FILES = { 'gratin.quern': GRATIN, 'rolls.quern': ROLLS, 'cream.quern': CREAM };

const plan = (...args: readonly string[]) => quern(['plan', ...args], FILES);
const facts = async (...args: readonly string[]): Promise<PlanFacts> =>
  JSON.parse((await plan(...args, '--format', 'json')).out);

test('as text', async () => {
  expect((await plan('gratin.quern', '--serve', '19:30')).out).toBe(
    [
      'For 19:30: Gratin',
      'Begin at 17:55. That is 1 h 35 min before it is eaten, 20 min of it by hand.',
      'One step of work says no minutes: 5 min is put for it here, and nothing is written.',
      '',
      '17:55-18:10 * hands        Slice the potatoes for 15 min (15 min)',
      '18:00-18:15   by itself    Light the oven: 160 °C (15 min)',
      '18:10-18:15 * hands        Layer with the cream (5 min, put here)',
      '18:15-19:30 * oven 160 °C  Bake at 160 °C (325 °F) for 1 h 15 min (1 h 15 min)',
      '19:30                      It is eaten',
      '* the longest way: what is late there is late at the table',
      '',
      'Asked: give each with --minutes LINE=MINUTES, or write it into the step',
      '  line 6: “Layer with the cream”: how many minutes? (5 min is put here)',
      '',
      'The times are those that the recipes give, and no promise: a thermometer decides when food is done, and when it is cold.',
      '',
    ].join('\n'),
  );
});

test('two recipes, one oven: the clash and its way out, and whose line is asked', async () => {
  const { out } = await plan('gratin.quern', 'rolls.quern', '--serve', '19:30');
  // The rolls go in at 19:05, at 200 °C, for which the oven takes 15 min up from 160: the gratin is out at 18:50.
  expect(out).toContain(
    '“Gratin: Bake at 160 °C (325 °F) for 1 h 15 min” is 40 min earlier than it need be, as the oven is wanted, at its heat, for',
  );
  expect(out).toContain('it then waits 40 min, 20 min longer than it should.');
  expect(out).toContain('With another oven: the day begins at 17:55, and nothing waits too long.');
  expect(out).toContain('line 6 of gratin.quern: “Layer with the cream”: how many minutes?');
  expect(out).toMatch(/19:15 +hands +Turn the oven to 180 °C/);
});

test('minutes that were asked for are given by line, with the file where there are several', async () => {
  const one = await facts('gratin.quern', '--serve', '19:30', '--minutes', '6=7');
  expect([one.start.at, one.at_least, one.asked]).toEqual(['17:53', false, []]);
  expect(one.steps.map((step) => step.minutes_from)).toEqual(['steps', 'given', 'steps']);
  const two = await facts(
    'gratin.quern',
    'rolls.quern',
    '--serve',
    '19:30',
    '--minutes',
    'gratin.quern:6=7',
    '--ovens',
    '2',
  );
  expect([two.start.at, two.at_least, two.ovens]).toEqual(['17:53', false, ['oven 1', 'oven 2']]);
});

test('the ovens are those that the house names', async () => {
  const house = '{ "ovens": { "lower deck": { "fan": true }, "upper deck": {} } }';
  const { out } = await quern(['plan', 'gratin.quern', 'rolls.quern', '--serve', '19:30'], {
    ...FILES,
    'quern.json': house,
  });
  expect(out).toMatch(/Light lower deck: 160 °C/);
  expect(out).toMatch(/19:15 +hands +Turn upper deck to 180 °C/);
  expect(out).not.toContain('Clashes');
});

test('what is set overnight begins in the evening before, and may all be done then', async () => {
  const {
    start,
    ahead,
    ways_out: ways,
    steps,
  } = await facts('cream.quern', '--serve', '12:00', '--date', '2026-12-25');
  expect([start.at, start.days_before, start.min]).toEqual(['22:55', 1, -785]);
  expect(ahead).toEqual([{ recipe: 0, step: 1, days: 1 }]);
  expect(ways).toMatchObject([{ way: 'days before', start: { at: '12:00', min: 0 } }]);
  expect(steps[1]).toMatchObject({ spent: 'waiting', hands: false, minutes: 720, waits_min: 60 });
});

describe('as a page', () => {
  test('it is well-formed, holds no script, draws every step, and is for light and dark', async () => {
    const { out, exit } = await plan('gratin.quern', 'rolls.quern', '--serve', '19:30', '--format', 'html');
    const errors: string[] = [];
    parse(out, { onParseError: ({ code }) => errors.push(code) });
    expect([exit, errors]).toEqual([0, []]);
    expect(out).not.toMatch(/<script|javascript:|https?:|style="/);
    // Five steps, each a row of the table with its bar, beside the lighting of the oven and its turn.
    const rows = out.split('<tr data-key=').slice(1);
    expect(rows.filter((row) => /<rect class="(?:ink|heat)"/.test(row))).toHaveLength(5);
    expect(out).toContain('prefers-color-scheme: dark');
    expect(out).toContain('“small &amp; round”');
    expect(out).toContain('a thermometer decides');
  });
});

describe('as a calendar', () => {
  const calendar = async (...args: readonly string[]) => {
    const { out } = await plan(...args, '--format', 'ics');
    const events = new ICAL.Component(ICAL.parse(out))
      .getAllSubcomponents('vevent')
      .map((event) => new ICAL.Event(event));
    return { out, events };
  };

  test('minutes that no step says are told to be put', async () => {
    const { events } = await calendar('gratin.quern', '--serve', '12:00', '--date', '2026-03-01');
    const layered = events.find(({ summary }) => summary === 'Layer with the cream');
    expect(layered?.description).toMatch(/^5 min, by hand\.\nIt says no minutes: these are put for it\./);
    expect(events.find(({ summary }) => summary?.startsWith('Slice'))?.description).not.toContain('put for it');
  });

  test('another reader of it finds every step, by floating times and with its own words', async () => {
    const { events } = await calendar('rolls.quern', 'cream.quern', '--serve', '12:00', '--date', '2026-03-01');
    expect(events.map(({ startDate, endDate, summary }) => `${startDate} ${endDate} ${summary}`)).toEqual([
      '2026-03-01T11:20:00 2026-03-01T11:35:00 Light the oven: 200 °C',
      '2026-02-28T22:55:00 2026-02-28T23:00:00 Cream: Warm the cream for 5 min',
      '2026-02-28T23:00:00 2026-03-01T11:00:00 Cream: Chill at 4 °C (39 °F) overnight',
      '2026-03-01T11:25:00 2026-03-01T11:35:00 Rolls; or, “small & round”: Knead the flour with the water for 10 min',
      '2026-03-01T11:35:00 2026-03-01T12:00:00 Rolls; or, “small & round”: Bake at 200 °C (400 °F) for 10 min. Turn down to 180 °C (350 °F) and bake for 15 min',
      '2026-03-01T11:45:00 2026-03-01T11:45:00 Turn the oven to 180 °C',
      '2026-03-01T12:00:00 2026-03-01T12:00:00 Eaten: Rolls; or, “small & round”, Cream',
    ]);
    expect(events.every(({ startDate }) => startDate.zone === ICAL.Timezone.localTimezone)).toBe(true);
    expect(events.every(({ description }) => description.includes('a thermometer decides'))).toBe(true);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  });

  test('its lines end in CRLF, and none is longer than 75 octets', async () => {
    const { out } = await calendar('rolls.quern', '--serve', '12:00');
    const lines = out.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(lines.join('')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(out).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:/);
    expect(out).toMatch(/\r\nDTSTAMP:\d{8}T000000Z\r\n/);
  });
});

test.each<[readonly string[], RegExp]>([
  [['gratin.quern'], /say when it is eaten: --serve 19:30/],
  [['gratin.quern', '--serve', '25:00'], /--serve is a time of the day such as 19:30, not `25:00`/],
  [['gratin.quern', '--serve', '12:00', '--date', '2026-02-30'], /--date is a day/],
  [['gratin.quern', '--serve', '12:00', '--ovens', '0'], /--ovens is a number from 1 to 20/],
  [['gratin.quern', '--serve', '12:00', '--awake', '23:00-06:00'], /--awake is a time of the day/],
  [['gratin.quern', '--serve', '12:00', '--minutes', '6'], /--minutes is a list such as/],
  [['gratin.quern', '--serve', '12:00', '--minutes', '60=5'], /there is no line 60 in `gratin.quern`/],
  [['gratin.quern', 'rolls.quern', '--serve', '12:00', '--minutes', '6=5'], /says the file too.*`gratin.quern:6=5`/],
  [['--serve', '12:00'], /name the recipes/],
])('%j is refused in words', async (args, want) => {
  const { err, exit } = await plan(...args);
  expect(exit).toBe(2);
  expect(err).toMatch(want);
});
