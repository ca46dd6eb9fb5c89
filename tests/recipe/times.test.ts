/** Times as the head of a recipe states them: read, held against the steps, on the page and in its data. */
import { describe, expect, test } from 'vitest';
import { readLine } from '../../server/src/notation/statements.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { textPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { formatted } from '../support/at-cursor.ts';
import { onlyCheck, open } from '../support/harness.ts';

/** Minutes by role: work, cooking, waiting, total. */
const TIMES: readonly (readonly [string, string])[] = [
  ['time 20 min at work, 50 min in the oven', 'work 20, cooking 50'],
  ['time 1 h 10 min', 'total 70'],
  ['time 45 min', 'total 45'],
  ['time prep 20 min, cook 50 min', 'work 20, cooking 50'],
  ['time prep 20 min, cook 50 min, total 1 h 10 min', 'work 20, cooking 50, total 70'],
  ['time 20 min prep, 50 min cook', 'work 20, cooking 50'],
  ['time 20 min prep 50 min cook', 'work 20, cooking 50'],
  ['time prep 20 min cook 50 min', 'work 20, cooking 50'],
  ['time 20 min to prep and 50 min to cook', 'work 20, cooking 50'],
  ['time prep time: 20 minutes; cooking time: 50 minutes', 'work 20, cooking 50'],
  ['time 20 mins at work, 1 hr in the oven, 30 mins to cool', 'work 20, cooking 60, waiting 30'],
  ['time 30-40 min at work', 'work 35'],
  ['time about 2 h in all', 'total 120'],
  ['time 1 1/2 h in all', 'total 90'],
  ['time ready in 40 min', 'total 40'],
  ['time 15 min hands-on, 12 h waiting', 'work 15, waiting 720'],
  ['time 15 min at work, overnight to rise', 'work 15, waiting 720'],
  ['time 20 min active, 1 h 30 min total', 'work 20, total 90'],
  ['time 2 h to chill', 'waiting 120'],
  ['Prep: 20 min', 'work 20'],
  ['Prep time: 20 min', 'work 20'],
  ['Prep 20 mins • Cook 50 mins', 'work 20, cooking 50'],
  ['Cook time 1 hour', 'cooking 60'],
  ['Total time: 1 h 10 min', 'total 70'],
  ['Ready in 40 min', 'total 40'],
  ['cook 50 min', 'cooking 50'],
  ['prep 20 min', 'work 20'],
];

describe('a stated time', () => {
  test.each(TIMES)('%s', (line, wanted) => {
    const { statement, faults } = readLine(line);
    expect(faults).toEqual([]);
    const read =
      statement.kind === 'time'
        ? statement.stated.map(({ duration: d, role }) => `${role} ${(d.lowMin + d.highMin) / 2}`).join(', ')
        : statement.kind;
    expect(read).toBe(wanted);
    const [, laidOut = ''] = formatted(`recipe A\n${line}\n`).split('\n');
    expect(laidOut.trim().replace(/\s+/g, ' ')).toBe(line);
  });

  test.each([
    ['time', 'missing-value'],
    ['time soon', 'missing-value'],
    ['time 20 min for bananas', 'stray-text'],
  ])('%s is refused', (line, code) => {
    expect(readLine(line).faults.map((f) => f.code)).toEqual([code]);
  });

  test.each(['Cook 50 g of rice', 'Cook the rice for 20 min.', 'Total of 3 eggs', 'Prep the leeks'])(
    'is not read in `%s`',
    (line) => {
      expect(readLine(line).statement.kind).not.toBe('time');
    },
  );
});

const oats = (time: string, bake = '25 min') =>
  `recipe Oats\n  yield   4 bowls\n  ${time}\n  200 g     rolled oats\n  40 g      honey\n  do Stir the oats with the honey.\n  do Soak for 30 min.\n  do Bake at 160 C for ${bake} until golden.\n`;

describe('against the steps', () => {
  test.each<[string, string, string | undefined]>([
    ['time 10 min at work, 25 min in the oven', '25 min', undefined],
    ['time 10 min at work, 25 min in the oven', '28 min', undefined],
    ['time 25 min in the oven', '35 min', 'info'],
    ['time 25 min in the oven', '1 h', 'warning'],
    ['time 1 h in the oven', '25 min', 'warning'],
    ['time 55 min', '25 min', undefined],
    ['time 2 h', '25 min', undefined],
    ['time 30 min', '25 min', 'warning'],
    ['time overnight', '25 min', undefined],
    ['time 30 min to soak, 25 min to bake', '25 min', undefined],
  ])('%s and %s', (time, bake, severity) => {
    const found = open(oats(time, bake), onlyCheck('time-disagrees')).findings.open;
    expect(found.map((f) => f.severity)).toEqual(severity === undefined ? [] : [severity]);
  });
});

test('preparing and cooking make the total in the data of a page', () => {
  for (const time of [
    'time 10 min at work, 30 min to soak, 25 min in the oven',
    'time 20 min prep, 25 min cook',
    'note none',
    'time 1 h',
  ]) {
    const { recipe, findings } = open(oats(time));
    const data = JSON.parse(jsonLd(readerPage(recipe, findings, { measures: 'weight-first', label: 'us' }))) as Record<
      string,
      string
    >;
    const minutes = (text = 'PT0M') => {
      const [, h = '0', m = '0'] = /^PT(?:(\d+)H)?(?:(\d+)M)?$/.exec(text) ?? [];
      return Number(h) * 60 + Number(m);
    };
    expect(minutes(data.prepTime) + minutes(data.cookTime)).toBe(minutes(data.totalTime));
  }
  const { recipe, findings } = open(oats('time 20 min prep, 25 min cook'));
  const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'us' });
  expect(textPage(page)).toContain('Time: 1 h 15 min');
  expect(textPage(page)).not.toContain('as far as the steps say');
});
