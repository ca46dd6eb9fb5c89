/** What is not understood is in no sum of the report, the page or the hover, and each says so. */
import { describe, expect, test } from 'vitest';
import { report } from '../../server/src/publish/report.ts';
import { reportText } from '../../server/src/publish/report-text.ts';
import { viewFacts } from '../../server/src/publish/view/facts.ts';
import { printedReport } from '../../server/src/publish/view/printed.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const CAKE = (line: string): string =>
  `recipe Cake\n  yield   8 slices\n\npart batter as creamed cake\n  200 g     plain flour\n  180 g     caster sugar\n  3 large   eggs\n  ${line}\n\n  do Beat everything together and bake at 180 C for 40 min, until it springs back.\n`;
const AT = 'line 8';

const reported = (line: string) => {
  const { recipe, findings } = open(CAKE(line));
  return report(recipe, findings);
};

const printed = (line: string) => {
  const { recipe, findings } = open(CAKE(line));
  return printedReport(viewFacts(recipe, findings, { mode: 'print' }));
};

const UNREAD: readonly (readonly [string, string])[] = [
  ['an amount of no size', '2 blobs butter'],
  ['a number that is none', '1/0 g butter'],
  ['a bracket left open', '150 g butter (soft'],
  ['no amount', 'butter'],
  ['a number with a comma', '0,150 kg butter'],
];

describe('the report of a part with a line that is not understood', () => {
  test.each(UNREAD)('%s: `%s` is in no sum', (_name, line) => {
    const worked = reported(line);
    const [part] = worked.parts;
    expect(worked.read).toMatchObject({ lines_not_understood: 1 });
    expect(part?.not_understood).toEqual([{ where: AT, line: 8, text: line }]);
    expect(part?.mass_g).toBeNull();
    expect(worked.mass_g).toBeNull();
    expect(worked.yield?.each_g).toBeNull();
    expect(worked.per_serving).toBeNull();
    expect(worked.nutrition.eu_per_100g).toBeNull();
    expect(Object.values(part?.composition_g ?? {}).every((grams) => grams === null)).toBe(true);
    expect(part?.composition_at_least_g?.sugar).toBeGreaterThan(179);
    expect(part?.measures.every((m) => m.value === null && m.verdict === null)).toBe(true);
    expect(worked.allergens.not_known).toContain(line);
    expect(part?.ingredients.every((i) => i.bakers_percent === null && i.share_percent === null)).toBe(true);
    const text = reportText(worked);
    expect(text).toContain(`  not understood, and in no sum: ${AT}, \`${line}\`\n`);
    expect(text).toContain('  mass   not known\n');
    expect(text).toMatch(/ {2}holds at least: .*fat \d/);
    expect(text).not.toMatch(/ 0 (?:g|%)/);
    expect(text).not.toContain('as usual');
    expect(printed(line)).toContain(`Of what is weighed: <b>${line}</b> is in no figure here.`);
  });

  test('is whole where all is understood', () => {
    const worked = reported('150 g     butter');
    expect(worked.read).toMatchObject({ lines_not_understood: 0 });
    expect(worked.parts[0]?.not_understood).toEqual([]);
    expect(worked.parts[0]?.composition_at_least_g).toBeNull();
    expect(worked.parts[0]?.composition_g.fat).toBeGreaterThan(100);
    expect(worked.per_serving?.fat_g).toBeGreaterThan(10);
  });

  test('counts what is not understood beside the lists, whose sums are whole', () => {
    const worked = reported('150 g     butter\n  Serve it warm.');
    expect(worked.read).toMatchObject({ lines_not_understood: 1 });
    expect(worked.parts[0]?.not_understood).toEqual([]);
    expect(worked.mass_g).toBeGreaterThan(600);
  });

  test('says less than everything costs', async () => {
    const files = {
      'quern.json': '{}',
      'foods.quern': 'food plain flour\n  price 1 per 1 kg\n',
      'a.quern': CAKE('- 100 g butter'),
    };
    const { out } = await quern(['report', 'a.quern'], files);
    expect(out).toMatch(/at least 0\.20.*no price for .*- 100 g butter/);
  });
});

describe('the page of a recipe with such a line', () => {
  test.each(['html', 'markdown', 'text', 'json-ld'])('says so as %s, and on standard error', async (format) => {
    const { out, err, exit } = await quern(['publish', 'a.quern', '--format', format], {
      'a.quern': CAKE('1/0 g butter'),
    });
    expect(exit).toBe(1);
    expect(err).toBe(`quern publish: not all of Cake is understood, and the page says so:\n  ${AT}: 1/0 g butter\n`);
    expect(out).toMatch(/Not all of this recipe is understood/);
    // In the list as well, for whoever can read it.
    expect(out.split('1/0 g butter').length - 1).toBeGreaterThanOrEqual(2);
  });

  test('names the line of the base in which it stands', async () => {
    const files = {
      'a.quern': CAKE('1/0 g butter'),
      'v.quern': 'recipe Other cake\n  from    a.quern\n  swap caster sugar for 170 g light brown sugar\n',
    };
    const { err, exit } = await quern(['publish', 'v.quern', '--format', 'text'], files);
    expect(exit).toBe(1);
    expect(err).toContain(`  ${AT} of a.quern: 1/0 g butter\n`);
  });

  test('prints a line in a bracket left open as it was written', async () => {
    const { out } = await quern(['publish', 'a.quern', '--format', 'text'], { 'a.quern': CAKE('150 g butter (soft') });
    expect(out).toContain('- 150 g butter (soft\n');
  });

  test('is whole, and silent, where all is understood', async () => {
    const { out, err, exit } = await quern(['publish', 'a.quern', '--format', 'text'], {
      'a.quern': CAKE('150 g     butter'),
    });
    expect([exit, err]).toEqual([0, '']);
    expect(out).not.toMatch(/understood/);
  });
});

test('a line that is not understood is named once, and whole', () => {
  const { recipe } = open('recipe Soup\n  1 kg  water\n  1. Simmer xyloquartz. Blend..\n');
  const { allergens } = report(recipe, open('').findings);
  expect(allergens.not_known).toEqual(['1. Simmer xyloquartz. Blend..']);
});
