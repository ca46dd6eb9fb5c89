/**
 * View 6. What was measured is drawn where it was measured; what lies outside is told by the slack of the checks: a range as written, 15 % of
 * one time, 3 °C above a temperature and nothing below it, 5 % of an amount. Common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { trialsView } from '../../../server/src/publish/view/trials.ts';
import { fingerprint } from '../../../server/src/recipe/trials/trials.ts';
import { open } from '../../support/harness.ts';
import {
  attributeOf,
  type Element,
  elementsIn,
  elementsOf,
  factsOf,
  faultsIn,
  HOSTILE_NAME,
  rowOf,
  tableOf,
  textOf,
} from '../../support/view.ts';

const LOAF = (water: number, oven: number): string => `recipe Loaf as lean bread
  yield   2 loaves
  1000 g    bread flour
  ${water} g     water
  20 g      fine salt
  5 g       instant yeast
  do Mix everything and knead for 8 min.
  do Bake at ${oven} C for 35-40 min, until the centre reads 96 C.
`;
const [OLD, NEW] = [LOAF(660, 220), LOAF(700, 230)];
const [OLD_MARK, NEW_MARK] = [OLD, NEW].map((text) => fingerprint(open(text).recipe));

const trial = (
  date: string,
  by: string,
  min: number,
  c: number,
  g: number,
  mark: string | undefined,
  verdict = 'keep',
) =>
  `\ntrial ${date} by ${by}\n  took    ${min} min to bake\n  reached ${c} C in the centre\n  weighed ${g} g out of the oven\n  saw     Seen by ${by}.\n${mark === undefined ? '' : `  tested  ${mark}\n`}  verdict ${verdict}\n`;

const PROVED = [
  NEW,
  trial('2026-06-20', 'Ines', 43, 97, 1522, OLD_MARK, 'change'),
  trial('2026-07-11', 'Bao', 41, 96, 1530, OLD_MARK, 'change'),
  trial('2026-08-02', 'Ines', 38, 94, 1548, NEW_MARK, 'change'),
  trial('2026-10-03', 'Ruth', 36, 96, 1540, NEW_MARK),
].join('');

const shown = (text: string, look = {}) => trialsView(factsOf(text, { look }));
const chartsOf = (text: string): Element[] => elementsOf(shown(text), 'figure');
const within = (of: Element | undefined, name: string, kind: string): Element[] =>
  elementsIn(of, name).filter((each) => attributeOf(each, 'class') === kind);
const number = (of: Element | undefined, name: string): number =>
  Number.parseFloat(attributeOf(of as Element, name) ?? '');

describe('the charts', () => {
  test('one a measured thing, in words what is written, usual and likely', () => {
    const captions = elementsOf(shown(PROVED), 'figcaption').map(textOf);
    expect(captions[0]).toMatch(/^Took to bake, min written 35–40; likely \d+, \d+ to \d+, with 4 trials$/);
    expect(captions[1]).toBe('Reached, °C in the centre written 96');
    expect(captions[2]).toMatch(/^Weighed, g out of the oven not written; 13\d\d–16\d\d is usual$/);
  });

  test('the same days in each, later to the right, longer higher', () => {
    const charts = chartsOf(PROVED);
    const across = charts.map((chart) =>
      [...within(chart, 'circle', 'hollow'), ...within(chart, 'circle', 'ink')].map((dot) => number(dot, 'cx')),
    );
    expect(across[1]).toEqual(across[0]);
    expect(across[2]).toEqual(across[0]);
    expect(across[0]).toEqual(across[0]?.toSorted((a, b) => a - b));
    const [first, last] = [within(charts[0], 'circle', 'hollow')[0], within(charts[0], 'circle', 'ink').at(-1)];
    // 43 minutes stand above 36.
    expect(number(first, 'cy')).toBeLessThan(number(last, 'cy'));
  });

  test('filled where it tested the text as it stands, hollow where it did not', () => {
    const [chart] = chartsOf(PROVED);
    expect(within(chart, 'circle', 'hollow')).toHaveLength(2);
    expect(within(chart, 'circle', 'ink')).toHaveLength(2);
    const unmarked = chartsOf(NEW + trial('2026-10-03', 'Ruth', 36, 96, 1540, undefined));
    expect(within(unmarked[0], 'circle', 'hollow')).toHaveLength(1);
    expect(shown(NEW + trial('2026-10-03', 'Ruth', 36, 96, 1540, undefined))).toContain('that the trial does not mark');
  });

  test('a band of what is written, and a line of one figure', () => {
    const [took, reached, weighed] = chartsOf(PROVED);
    expect(within(took, 'rect', 'band')).toHaveLength(1);
    expect(within(reached, 'rect', 'band')).toHaveLength(0);
    expect(within(reached, 'line', 'edge')).toHaveLength(1);
    expect(within(weighed, 'line', 'edge')).toHaveLength(0);
    // 36 and 38 min lie in the band, 41 and 43 above it.
    const [band] = within(took, 'rect', 'band');
    const [top, height] = [number(band, 'y'), number(band, 'height')];
    for (const dot of within(took, 'circle', 'ink')) expect(number(dot, 'cy')).toBeGreaterThan(top);
    for (const dot of within(took, 'circle', 'ink')) expect(number(dot, 'cy')).toBeLessThan(top + height);
    for (const dot of within(took, 'circle', 'hollow')) expect(number(dot, 'cy')).toBeLessThan(top);
  });

  test('a dashed line where the text changed, and what', () => {
    const [chart] = chartsOf(PROVED);
    const lines = within(chart, 'line', 'serve');
    expect(lines).toHaveLength(1);
    const dots = within(chart, 'circle', 'hollow');
    expect(number(lines[0], 'x1')).toBeGreaterThan(number(dots[1], 'cx'));
    expect(number(lines[0], 'x1')).toBeLessThan(number(within(chart, 'circle', 'ink')[0], 'cx'));
    expect(textOf(elementsOf(shown(PROVED), 'p').find((p) => attributeOf(p, 'class') === 'key') as Element)).toContain(
      'changed: 700 g water; Bake at 230 C for 35-40 min',
    );
  });

  test('every point is lettered up to eight, then the last, the least and the most', () => {
    const many = (count: number) =>
      NEW +
      Array.from({ length: count }, (_, i) =>
        trial(`2026-0${1 + Math.floor(i / 3)}-1${i % 3}`, 'Ines', 34 + ((i * 5) % 11), 96, 1540, NEW_MARK),
      ).join('');
    const letters = (count: number) => within(chartsOf(many(count))[0], 'text', 'halo').map(textOf);
    expect(letters(8)).toHaveLength(8);
    // 34, 39, 44, 38, 43, 37, 42, 36 and 41 minutes.
    expect(letters(9)).toEqual(['34', '44', '41']);
  });

  test('no letters stand on others', () => {
    const rising = [703, 706, 709, 712, 715, 718, 721, 724, 727, 742, 739].map(
      (grams, i) => `\ntrial 2026-03-${10 + i}\n  used    ${grams} g water\n`,
    );
    const letters = within(chartsOf(NEW + rising.join(''))[0], 'text', 'halo');
    expect(letters.map(textOf)).toEqual(['703', '742', '739']);
    const [, most, last] = letters.map((letter) => number(letter, 'y'));
    expect(Math.abs((most ?? 0) - (last ?? 0))).toBeGreaterThan(12);
  });

  test('each is an image with its sentence, and no two points stand on each other', () => {
    for (const chart of chartsOf(PROVED)) {
      const [svg] = elementsIn(chart, 'svg');
      expect(attributeOf(svg as Element, 'role')).toBe('img');
      expect(attributeOf(svg as Element, 'aria-label')).toMatch(/: .* on 20 June 2026, .* on 3 Oct\. 2026\.$/);
    }
    const near = chartsOf(
      NEW +
        [1, 2, 28].map((day) => trial(`2026-09-0${day}`.replace('-028', '-28'), 'I', 37, 96, 1540, NEW_MARK)).join(''),
    );
    const [a, b] = within(near[0], 'circle', 'ink').map((dot) => number(dot, 'cx'));
    expect((b ?? 0) - (a ?? 0)).toBeGreaterThan(10);
  });

  test('on the scale that is looked at', () => {
    const captions = elementsOf(shown(PROVED, { degrees: 'F' }), 'figcaption').map(textOf);
    expect(captions[1]).toBe('Reached, °F in the centre written 205');
    expect(rowOf(shown(PROVED, { degrees: 'F' }), 'Trials, newest first', '3 Oct.')?.[3]).toBe('205');
  });

  test('long times in hours and days', () => {
    const days = trialsView(
      factsOf(
        'recipe K\n  1000 g  cabbage\n  20 g  fine salt\n  do Ferment at 18 C for 14-21 d.\n\ntrial 2026-11-02\n  took 19 d to ferment\n',
      ),
    );
    expect(textOf(elementsOf(days, 'figcaption')[0] as Element)).toBe('Took to ferment, d written 14–21');
    expect(rowOf(days, 'Trials, newest first', '2 Nov.')?.[2]).toBe('19');
  });
});

describe('the table', () => {
  const rows = tableOf(shown(PROVED), 'Trials, newest first');

  test('newest first, cut where the text changed', () => {
    expect(rows.map((row) => row[0]?.text.replace(/ Compare$/, '')).filter((text) => text !== '')).toEqual([
      'Day',
      '3 Oct.',
      '2 Aug.',
      'Changed here: 700 g water; Bake at 230 C for 35-40 min.',
      '11 July',
      '20 June',
    ]);
  });

  test('bold is outside what is written: 94 of 96, 41 and 43 of 35 to 40', () => {
    const bold = rows.flatMap((row) => row.flatMap(({ of }) => elementsIn(of, 'b'))).map(textOf);
    expect(bold).toEqual(['94', '41', '43']);
    expect(shown(PROVED)).toContain('Bold: outside what is written now');
    expect(shown(NEW + trial('2026-10-03', 'Ruth', 36, 96, 1540, NEW_MARK))).not.toContain('Bold:');
  });

  test('the trial that the text is compared with is the one before the change', () => {
    const [button] = elementsOf(shown(PROVED), 'button');
    expect(attributeOf(button as Element, 'data-do')).toBe('compare');
    expect(JSON.parse(attributeOf(button as Element, 'data-arg') ?? '')).toEqual({ day: '2026-07-11' });
  });

  test('changed since the last', () => {
    const since = tableOf(shown(NEW + trial('2026-06-20', 'Ines', 43, 97, 1522, OLD_MARK)), 'Trials, newest first');
    expect(since[1]?.[0]?.text).toMatch(/^Changed since: 700 g water; Bake at 230 C/);
  });

  test('what was taken out is counted, as nobody has its words', () => {
    const longer = NEW.replace('  5 g       instant yeast\n', '  5 g       instant yeast\n  30 g      honey\n');
    const mark = fingerprint(open(longer).recipe);
    const since = tableOf(shown(NEW + trial('2026-06-20', 'Ines', 38, 96, 1522, mark)), 'Trials, newest first');
    expect(since[1]?.[0]?.text).toMatch(/^Changed since in one place\. Compare$/);
  });

  test('what was not measured or said is no nought', () => {
    const text = `${NEW}\ntrial 2026-10-03\n  took    37 min to bake\n\ntrial 2026-10-04 by Bao\n  reached 96 C in the centre\n`;
    expect(rowOf(shown(text), 'Trials, newest first', '3 Oct.')).toEqual([
      '3 Oct.',
      'not said',
      '37',
      'not measured',
      'not said',
    ]);
    expect(rowOf(shown(text), 'Trials, newest first', '4 Oct.')?.slice(1, 4)).toEqual(['Bao', 'not measured', '96']);
  });

  test('years are told where there are several', () => {
    const text =
      NEW + trial('2025-12-30', 'I', 37, 96, 1540, NEW_MARK) + trial('2026-01-02', 'I', 37, 96, 1540, NEW_MARK);
    expect(tableOf(shown(text), 'Trials, newest first').map((row) => row[0]?.text)).toContain('30 Dec. 2025');
  });

  test('what was used, against the list', () => {
    const text = `${NEW}\ntrial 2026-10-03\n  used    760 g water\n  used    21 g fine salt\n`;
    const row = rowOf(shown(text), 'Trials, newest first', '3 Oct.');
    expect(row?.slice(2, 4)).toEqual(['760', '21']);
    const bold = elementsOf(shown(text), 'td')
      .flatMap((cell) => elementsIn(cell, 'b'))
      .map(textOf);
    // 760 g is 8.6 % off 700 g; 21 g is 5 % off 20 g.
    expect(bold).toEqual(['760']);
  });
});

test('none yet', () => {
  expect(shown(NEW)).toMatch(
    /<b>None yet\.<\/b> Whoever cooks it writes down the day, the name and what was measured\. <button type="button" data-do="trial">/,
  );
  expect(trialsView(factsOf(NEW, { mode: 'print' }))).not.toContain('<button');
});

test('buttons are for whoever can press them', () => {
  expect(trialsView(factsOf(PROVED, { mode: 'print' }))).not.toMatch(/<button|data-line/);
  const readOnly = trialsView(factsOf(PROVED, { readOnly: 'The file is read-only.' }));
  expect(readOnly).toContain('data-do="compare"');
  expect(readOnly).not.toContain('data-do="trial"');
});

test('words of a trial are shown as the words that they are', () => {
  const text = `${NEW}\ntrial 2026-10-03 by ${HOSTILE_NAME}\n  took    37 min to bake\n  reached 96 C in the ${HOSTILE_NAME}\n  saw     ${HOSTILE_NAME}\n  verdict ${HOSTILE_NAME}\n`;
  const html = shown(text);
  expect(elementsOf(html, 'img')).toEqual([]);
  expect(faultsIn(html)).toEqual([]);
  expect(faultsIn(shown(PROVED))).toEqual([]);
});
