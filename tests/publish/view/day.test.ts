/**
 * View 4: the day backwards as it is drawn. The days are worked out by hand from the texts, before they were run; served at 19:30 unless it
 * says otherwise.
 */
import { parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { recipeDay } from '../../../server/src/publish/plan-day.ts';
import { axisOf } from '../../../server/src/publish/view/day/axis.ts';
import { dayDrawn } from '../../../server/src/publish/view/day.ts';
import { EXAMPLES, open, openInKitchen } from '../../support/harness.ts';

const ROLLS = `recipe Rolls
  500 g     bread flour
  320 g     water
  10 g      fine salt
  5 g       instant yeast
  do Mix the flour, water, salt and yeast.
  do Knead for 8 min.
  do Prove at 24 C for 90 min.
  do Shape for 10 min.
  do Bake at 220 C for 18-22 min, until the centre reads 96 C.
`;

const facts = (text: string, serve = '19:30') => recipeDay(open(text).recipe, { serve });
const drawn = (text: string, shown: Partial<Parameters<typeof dayDrawn>[1]> = {}, serve = '19:30') =>
  dayDrawn(facts(text, serve), { mode: 'read', order: 'clock', writes: false, ...shown });

/** The rows of the table: from, words, takes. */
const rows = (html: string) =>
  html
    .split('<tr data-key=')
    .slice(1)
    .map((row) =>
      row
        .split('<td')
        .slice(1, 4)
        .map((cell) =>
          cell
            .replace(/^[^>]*>/, '')
            .replace(/<br>/g, ' ')
            .replace(/<[^>]*>/g, '')
            .replaceAll('&nbsp;', ' ')
            .trim(),
        )
        .join(' | '),
    );

describe('what it says', () => {
  test('every step from the clock, what is put in slanted figures, and when to begin if all takes its longest', () => {
    const html = drawn(ROLLS);
    // 20 min in the oven from 19:10; shaped from 19:00, proved from 17:30, kneaded from 17:22, mixed 5 min before; 2 min earlier at most.
    expect(rows(html)).toEqual([
      '17:17 | Mix the flour, water, salt and yeast | 5 min',
      '17:22 | Knead for 8 min | 8 min',
      '17:30 | Prove at 24 °C for 90 min | 1 h 30 min',
      '18:55 | Light the oven: 220 °C | 15 min',
      '19:00 | Shape for 10 min | 10 min',
      '19:10 | Bake at 220 °C for 18–22 min, until the centre reads 96 °C | 20 min (18–22)',
      '19:30 | On the table | ',
    ]);
    expect(html).toContain(
      '<b>Begin at 17:17</b>; at 17:15 if all takes its longest. One pair of hands, one oven. Hands 23 min',
    );
    expect(html).toContain('Prove at <b>24&nbsp;°C</b> for <b>90 min</b>');
    expect(html).toContain('Bake at <b>220&nbsp;°C</b> for <b>18–22 min</b>, until the centre reads <b>96&nbsp;°C</b>');
    expect(html).toContain('<i class="soft">5 min</i>');
    expect(html).toContain('One step of work says no minutes: 5 min is put for it here, and nothing is written.');
  });

  test('another hour moves all of it', () => {
    expect(rows(drawn(ROLLS, {}, '12:00'))[0]).toBe('09:47 | Mix the flour, water, salt and yeast | 5 min');
  });

  test('part by part, each under its name', () => {
    const [, text = ''] = EXAMPLES.find(([path]) => path === 'pastry/lemon-tart.quern') ?? [];
    const html = dayDrawn(recipeDay(openInKitchen(text, 'pastry/lemon-tart.quern').whole.recipe, { serve: '19:30' }), {
      mode: 'read',
      order: 'part',
      writes: false,
    });
    expect([...html.matchAll(/scope="rowgroup" colspan="4">([^<]*)/g)].map(([, name]) => name)).toEqual([
      'Case',
      'Lemon cream',
      'Assembly',
    ]);
    // The two bakes want one oven at two heats, a few minutes apart: both carry the mark, and a way out is told.
    expect(html.match(/<path class="note"/g)).toHaveLength(2);
    expect(html).toContain('With another oven: the day begins at');
  });

  test('an estimate is said as likely, with its range; where there is none, why, and nothing is reckoned', () => {
    const cake = `recipe Cake
  pan round 22 x 6 cm
  part cake as butter cake
    200 g     unsalted butter
    200 g     caster sugar
    200 g     plain flour
    4 large   eggs
    do Beat the butter with the sugar, eggs and flour for 10 min.
    do Bake at 180 C until the centre reads 98 C.
`;
    const bake = facts(cake).steps.find(({ oven }) => oven !== null);
    expect(bake?.minutes_from).toBe('estimate');
    const [low = 0, high = 0] = bake?.estimate_min ?? [];
    // A cake of 800 g in such a tin takes 40 to 60 min at 180 °C (common practice, no source).
    expect([low < (bake?.minutes ?? 0), (bake?.minutes ?? 0) < high, low >= 25, high <= 90]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(rows(drawn(cake)).at(-2)).toContain(`likely, (${low}–${high})`);

    const crust = `recipe Crust
  part crust as shortcrust
    200 g     plain flour
    100 g     unsalted butter
    50 g      water
    do Rub the butter into the flour for 5 min, and bring together with the water for 2 min.
    do Line with paper and weights and bake at 190 C until dry and gold.
`;
    const html = drawn(crust);
    expect(facts(crust).at_least).toBe(true);
    expect(html).toContain('not known');
    expect(html).toContain('a crust by itself is done when it is dry and brown, not when it is hot');
    expect(html).toContain('class="notknown"');
    expect(html).toContain('<b>Begin before ');
  });
});

describe('what is pressed', () => {
  test('the hour is a field, and minutes are offered, only where something may be written', () => {
    const live = drawn(ROLLS, { mode: 'live', writes: true });
    expect(live).toContain('data-do="serve-at"');
    expect(live).toContain('<button type="button" data-do="write-minutes">Write “about 5 min” into the step</button>');
    expect(drawn(ROLLS, { mode: 'live' })).not.toContain('<button');
    expect(drawn(ROLLS)).not.toMatch(/<button|<input/);
  });
});

describe('the axis', () => {
  const BEEF = `recipe Beef
  2 kg      beef brisket
  20 g      fine salt
  do Rub the beef with the salt for 10 min.
  do Chill at 4 C for 12 h.
  do Roast at 150 C for 3 h, until the centre reads 90 C.
  do Rest for 20 min.
`;

  test('a wait of more than four hours is cut out, with its length on it', () => {
    const plan = facts(BEEF);
    const { cuts, at } = axisOf(plan);
    // Chilled from 4:10 at the latest; rubbed before 23:00, as nobody is up by then: from 23:00 to 15:55, when the oven is lit.
    expect(plan.start).toMatchObject({ at: '22:50', days_before: 1 });
    expect(cuts).toHaveLength(1);
    expect(cuts[0]?.minutes).toBe(16 * 60);
    expect(dayDrawn(plan, { mode: 'read', order: 'clock', writes: false })).toContain(
      'font-style="italic">16 h</text>',
    );
    expect([at(plan.start.min), at(0), at(-9999), at(60)]).toEqual([0, 100, 0, 100]);
  });

  test('time never goes backwards on it, and every bar lies within', () => {
    for (const [path, text] of EXAMPLES) {
      const snapshot = openInKitchen(text, path);
      if (!snapshot.isWhole) continue;
      const plan = recipeDay(snapshot.whole.recipe, { serve: '13:00' });
      const { at } = axisOf(plan);
      let last = 0;
      for (let min = plan.start.min; min <= 0; min += 7) {
        expect(at(min), path).toBeGreaterThanOrEqual(last);
        last = at(min);
      }
      const html = dayDrawn(plan, { mode: 'read', order: 'clock', writes: false });
      for (const [, x, width] of html.matchAll(
        /<rect class="(?:ink|bar|heat|wait|notknown)" x="([\d.]+)%" width="([\d.]+)%"/g,
      )) {
        expect(Number(x), path).toBeGreaterThanOrEqual(0);
        expect(Number(x) + Number(width), path).toBeLessThanOrEqual(100.5);
      }
    }
  });
});

test('whatever a text says stays text', () => {
  const html = drawn(
    ROLLS.replace('recipe Rolls', 'recipe <script>').replace(
      'Shape for 10 min',
      'Shape "<img src=x onerror=alert(1)>" for 10 min',
    ),
  );
  expect(html).not.toMatch(/<img|<script/);
  expect(html).not.toContain('style="');
  const errors: string[] = [];
  parse(`<!doctype html><title>x</title><section>${html}</section>`, { onParseError: ({ code }) => errors.push(code) });
  expect(errors).toEqual([]);
});
