/** A line of a list that is the name of a part takes all of it in: read, followed, summed up, scaled and shown. The texts are invented. */
import { describe, expect, test } from 'vitest';
import { htmlPage } from '../../server/src/publish/html.ts';
import { markdownPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { contentsOf } from '../../server/src/recipe/measures/contents.ts';
import { completeAt, formatted, hoverAt, labelsAt, renamedAt } from '../support/at-cursor.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const ABOVE = `recipe Chicken pie
  yield   6 pieces

part Shortcrust pastry
  250 g     plain flour
  125 g     butter, cold
  60 g      water
  do Rub the butter into the flour, bind with the water and chill for 1 h.

part Filling
  600 g     chicken thighs, diced
  200 g     leeks, sliced
  300 g     double cream
  do Fry the leeks and the chicken until brown. Stir in the cream.

`;
const BAKED = '  do Line a tin, fill, cover and bake at 190 C for 45 min until the centre reads 76 C.\n';
const pie = (lines: string, steps = BAKED): string => `${ABOVE}part Pie\n${lines}\n${steps}`;
const codesOf = (text: string): string[] => open(text).findings.open.map(({ code }) => code);

const WRITTEN: readonly (readonly [string, number])[] = [
  ['Filling', 1],
  ['filling', 1],
  ['The filling', 1],
  ['Filling (see above)', 1],
  ['Filling, from above', 1],
  ['filling as above', 1],
  ['all the filling', 1],
  ['1 batch of Filling', 1],
  ['1 quantity Filling', 1],
  ['1 recipe filling (see above)', 1],
  ['1/2 quantity filling', 0.5],
  ['2 batches filling', 2],
];

describe.each(WRITTEN)('%s', (line, share) => {
  const text = pie(`  ${line}\n  Shortcrust pastry`);

  test('is understood', () => {
    expect(
      codesOf(text).filter((code) =>
        ['syntax', 'missing-amount', 'unknown-food', 'unused-part', 'unused-ingredient', 'unread-amount'].includes(
          code,
        ),
      ),
    ).toEqual([]);
    expect(open(text).recipe.parts[2]?.head.notUnderstood).toEqual([]);
  });

  test('takes the part in, so many times over', () => {
    const part = open(text).recipe.parts[2];
    expect(part?.includes.map(({ name }) => name)).toEqual(['Filling', 'Shortcrust pastry']);
    const chicken = part === undefined ? undefined : contentsOf(part).find(({ name }) => name === 'chicken thighs');
    expect(chicken?.weighed.known === true && chicken.weighed.grams.low).toBe(600 * share);
  });

  test('is not counted twice', () => {
    expect(open(text).recipe.parts[2]?.head.massG).toEqual({ low: 0, high: 0, likely: 0, complete: true });
  });
});

describe('what stays as it was', () => {
  test.each(['Ragout', 'Filling and sauce', 'Filling 2'])('%s is no part', (line) => {
    expect(open(pie(`  ${line}`, '  do Serve.\n')).recipe.parts[2]?.includes).toEqual([]);
  });

  test('where two parts are called alike, the line is not read', () => {
    const text = pie('  Filling').replace(
      'part Pie',
      'part Filling\n  100 g     rice\n  do Boil the rice.\n\npart Pie',
    );
    expect(codesOf(text)).toContain('syntax');
  });

  test('a weight of a part is as much of it', () => {
    const part = open(pie('  550 g     filling')).recipe.parts[2];
    const chicken = part === undefined ? undefined : contentsOf(part).find(({ name }) => name === 'chicken thighs');
    expect(chicken?.weighed.known === true && Math.round(chicken.weighed.grams.low)).toBe(300);
  });
});

describe('the way of its food', () => {
  test('goes on through the part that lists it', () => {
    expect(codesOf(pie('  Filling\n  Shortcrust pastry'))).not.toContain('no-safe-temperature');
  });

  test('is told where it ends raw', () => {
    expect(codesOf(pie('  Filling\n  Shortcrust pastry', '  do Line a tin, fill, cover and serve.\n'))).toContain(
      'no-safe-temperature',
    );
  });
});

describe('an edit', () => {
  const text = pie('  Filling\n  Shortcrust pastry');
  const at = (offset: number) => {
    const above = text.slice(0, offset).split('\n');
    return { line: above.length - 1, character: above.at(-1)?.length ?? 0 };
  };

  test.each([
    ['part Filling', 'part Stuffing'],
    ['part Filling', 'part Filling (ahead)'],
    ['  Filling\n', '  Fillin\n'],
    ['600 g', '700 g'],
    ['do Line', 'do Butter and line'],
  ])('%s to %s reads it as the whole file is read', (find, put) => {
    const from = text.indexOf(find);
    const after = open(text).edited(2, [{ range: { start: at(from), end: at(from + find.length) }, text: put }]);
    const anew = open(text.replace(find, put));
    expect(after.recipe.parts.map((p) => p.includes.map(({ name }) => name))).toEqual(
      anew.recipe.parts.map((p) => p.includes.map(({ name }) => name)),
    );
    expect(after.findings.open.map(({ code, at: place }) => [code, place])).toEqual(
      anew.findings.open.map(({ code, at: place }) => [code, place]),
    );
  });
});

describe('shown', () => {
  const text = pie('  Filling (see above)\n  1 batch of shortcrust pastry\n  1         egg, beaten');

  test('the page links it to the list of its part', () => {
    const { recipe, findings } = open(text);
    const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'eu' });
    const html = htmlPage(page);
    expect(html).toContain('<h3 id="part-2">Filling</h3>');
    expect(html).toContain('<a href="#part-2">Filling</a>');
    expect(html.match(/id="part-2"/g)).toHaveLength(1);
    expect(markdownPage(page)).toContain('- Filling (see above)');
  });

  test('the report weighs the recipe once, and knows all its foods', async () => {
    const { out } = await quern(['report', 'pie.quern', '--format', 'json'], { 'pie.quern': text });
    const report = JSON.parse(out);
    expect(report.mass_g).toBeCloseTo(435 + 1100 + 50, 0);
    expect(report.not_counted ?? []).toEqual([]);
    expect(report.parts[2].ingredients[0]).toMatchObject({ name: 'Filling', grams: null });
  });

  test('twice as much is one batch still, of a part twice as large', async () => {
    const { out } = await quern(['scale', 'pie.quern', '--by', '2'], { 'pie.quern': text });
    expect(out).toContain('1 batch of shortcrust pastry');
    expect(out).toContain('  Filling (see above)');
    expect(out).toMatch(/1200 g +chicken thighs|1.2 kg +chicken thighs/);
  });

  test('format leaves a bare line as it is', () => {
    expect(formatted(pie('  Filling\n  Shortcrust pastry'))).toBe(pie('  Filling\n  Shortcrust pastry'));
  });
});

describe('in the editor', () => {
  test('the parts above are offered where a line of the list begins, but for those that it has', () => {
    const labels = labelsAt(`${ABOVE}part Pie\n  Filling\n  $0\n`);
    expect(labels).toContain('Shortcrust pastry');
    expect(labels).not.toContain('Filling');
    expect(completeAt(`${ABOVE}part Pie\n  S$0\n`, 'Shortcrust pastry')).toBe('  Shortcrust pastry');
  });

  test('renaming the part renames the line', () => {
    expect(
      renamedAt(pie('  Filling\n  Shortcrust pastry').replace('part Filling', 'part Fil$0ling'), 'Stew'),
    ).toContain('part Pie\n  Stew\n');
  });

  test('pointing at the line tells of the part', () => {
    expect(hoverAt(pie('  Fil$0ling\n  Shortcrust pastry'))).toMatch(/Filling/);
  });
});
