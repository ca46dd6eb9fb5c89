/**
 * View 3. Outside: water is water, but for 0.1 % (NDB 14411); table salt is 96.9 % salt by its sodium (USDA SR26, NDB 02047: 38,758 mg in 100 g, times 2.5 by Regulation (EU)
 * 1169/2011, annex I); unsalted butter is 81.1 % fat and 16.2 to 17.9 % water (USDA SR26, NDB 01145).
 */
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../../server/src/editor/page/acts.ts';
import { readLook } from '../../../server/src/editor/page/look.ts';
import { viewFacts } from '../../../server/src/publish/view/facts.ts';
import { madeOfView } from '../../../server/src/publish/view/made-of.ts';
import { EXAMPLES, open, openInKitchen } from '../../support/harness.ts';
import { elementsOf, factsOf, faultsIn, HOSTILE_NAME, rowOf, tableOf, textOf } from '../../support/view.ts';

const shown = (text: string, look = {}, mode: 'live' | 'print' = 'live') => madeOfView(factsOf(text, { look, mode }));

const BRINE = 'recipe Brine\n  980 g     water\n  20 g      table salt\n  do Stir until clear.\n';
const TART = `recipe Tart
  yield   8 slices
part crust
  200 g     plain flour
  100 g     unsalted butter
part filling
  300 g     double cream
  100 g     eggs
`;
const UNKNOWN = `${TART}part topping\n  80 g      zibbleroot\n`;

describe('what it is made of', () => {
  test('a brine, by hand', () => {
    const html = shown(BRINE);
    expect(rowOf(html, 'What it is made of', 'Water')?.[1]).toMatch(/^98 979 g$/);
    // 20 g of 96.9 %.
    expect(rowOf(html, 'What it is made of', 'Salt')?.[1]).toMatch(/^1\.9 19 g$/);
    expect(rowOf(html, 'What it is made of', 'Fat')?.[1]).toBe('0');
  });

  test('butter by itself', () => {
    const [, fat = ''] = rowOf(shown('recipe B\n  100 g  unsalted butter\n'), 'What it is made of', 'Fat') ?? [];
    expect(Number.parseFloat(fat)).toBeCloseTo(81, 0);
  });

  test('parts are columns, the whole is last, and what is of each adds up to it', () => {
    const { report } = factsOf(TART);
    const { parts, whole } = report.made_of;
    const html = shown(TART);
    expect(tableOf(html, 'What each part is made of')[0]?.map(({ text }) => text)).toEqual([
      '',
      'Crust',
      'Filling',
      'The whole',
    ]);
    expect(rowOf(html, 'What each part is made of', 'Of all')).toEqual(['Of all', '43 300 g', '57 400 g', '100 700 g']);
    for (const [substance, { grams }] of Object.entries(whole?.holds ?? {})) {
      const sum = parts.reduce((all, { holds }) => all + holds[substance as keyof typeof holds].grams, 0);
      expect(sum).toBeCloseTo(grams, 1);
    }
    // Down a column all substances and the rest are the whole of it.
    for (const column of [1, 2, 3]) {
      const rows = tableOf(html, 'What each part is made of').slice(2);
      const grams = rows.map((row) => Number(/([\d.]+) g$/.exec(row[column]?.text ?? '')?.[1] ?? 0));
      const all = [300, 400, 700][column - 1] ?? 0;
      expect(Math.abs(grams.reduce((a, b) => a + b, 0) - all)).toBeLessThan(4);
    }
  });

  test('what nobody knows is hatched and said, and nothing else is', () => {
    expect(shown(TART)).not.toContain('notknown');
    const html = shown(UNKNOWN);
    expect(rowOf(html, 'What each part is made of', 'Water')?.[3]).toBe('not known');
    expect(rowOf(html, 'What each part is made of', 'Water')?.[4]).toMatch(/^at least \d+/);
    // 80 g of 780 g could be all water, or none: a tenth of the scale.
    const [, , , , whole] = tableOf(html, 'What each part is made of').find((row) => row[0]?.text === 'Water') ?? [];
    const hatched = elementsOf(html, 'rect').filter((rect) => rect.attrs.some(({ value }) => value === 'notknown'));
    expect(hatched.map((rect) => rect.attrs.find(({ name }) => name === 'width')?.value)).toContain('10.3%');
    expect(whole?.text).not.toContain('not known');
    expect(rowOf(html, 'What each part is made of', 'Rest')?.slice(3)).toEqual(['not known', 'not known']);
  });

  test('a line without a weight is named, and is in no figure', () => {
    const html = shown('recipe X\n  200 g     plain flour\n  1 bunch   zibbleroot\n');
    expect(html).toContain('<b>zibbleroot</b> is in no figure here.');
    expect(rowOf(html, 'What it is made of', 'Starch')?.[1]).toMatch(/147 g$|146 g$/);
  });

  test('a line that can be read two ways is in no figure, whatever was read of it', () => {
    const text = 'recipe X\n  1000 g    water\n  2,5 g     table salt\n';
    const html = shown(text, { madeOf: { substance: 'salt' } });
    expect(html).toContain('<b>2,5 g     table salt</b> is in no figure here.');
    expect(rowOf(html, 'What it is made of', 'Salt')?.[1]).not.toMatch(/2\.4 g/);
    expect(tableOf(html, 'Salt of the whole by ingredient').some(([head]) => head?.text === 'table salt')).toBe(false);
  });

  test('percentages without a weight have no grams', () => {
    const html = shown('recipe Loaf\n  100 %     bread flour\n  65 %      water\n  2 %       fine salt\n');
    expect(html).toContain('it is written in percentages, so there are no grams');
    expect(textOf(elementsOf(html, 'table')[0] as never)).not.toMatch(/\d g\b/);
    expect(rowOf(html, 'What it is made of', 'Water')?.[1]).toMatch(/^4\d$/);
  });

  test('nothing weighed', () => {
    expect(shown('recipe X\n  do Wait.\n')).toContain('<b>No ingredient is weighed</b>');
  });
});

describe('where a substance comes from', () => {
  test('most first, and as many grams as the part has', () => {
    const html = shown(TART, { madeOf: { substance: 'fat', part: 'filling' } });
    const rows = tableOf(html, 'Fat of the filling by ingredient').slice(1);
    expect(rows.map((row) => row[0]?.text)).toEqual(['double cream', 'eggs']);
    const grams = rows.map((row) => Number(row[1]?.text));
    const whole = factsOf(TART).report.made_of.parts[1]?.holds.fat.grams ?? 0;
    expect(Math.abs(grams.reduce((a, b) => a + b, 0) - whole)).toBeLessThan(1.1);
    expect(rows.map((row) => Number(row[2]?.text)).reduce((a, b) => a + b, 0)).toBeCloseTo(100, -0.5);
  });

  test('of the whole unless somebody looks at a part, with the part beside it', () => {
    const rows = tableOf(shown(TART), 'Water of the whole by ingredient');
    expect(rows[0]?.map(({ text }) => text)).toEqual(['Ingredient', 'part', 'g', '%', 'drawn']);
    expect(rows.some((row) => row[0]?.text === 'double cream' && row[1]?.text === 'filling')).toBe(true);
  });

  test('a part that is gone leaves the whole', () => {
    expect(tableOf(shown(TART, { madeOf: { part: 'glaze' } }), 'Water of the whole by ingredient')).not.toEqual([]);
  });

  test('what is not known stands last, hatched', () => {
    const rows = tableOf(shown(UNKNOWN), 'Water of the whole by ingredient');
    expect(rows[0]?.[3]?.text).toBe('% of what is known');
    expect(rows.at(-1)?.map(({ text }) => text)).toEqual(['zibbleroot', 'topping', 'not known', '']);
  });

  test('none of it', () => {
    expect(shown(BRINE, { madeOf: { substance: 'alcohol' } })).toContain('None of it has any alcohol.');
  });

  test('can be chosen in the editor alone', () => {
    expect(elementsOf(shown(TART), 'select')).toHaveLength(2);
    expect(elementsOf(shown(BRINE), 'select')).toHaveLength(1);
    const printed = shown(TART, {}, 'print');
    expect(printed).not.toContain('<select');
    expect(printed).toContain('<h2>Where the water of the whole comes from</h2>');
  });

  test('the act changes what is looked at, whatever it is sent', () => {
    const snapshot = open(TART);
    const act = (arg: unknown, value: unknown, look = {}) => outcomeOf('made-of', { snapshot, arg, value, look });
    expect(act({ choose: 'substance' }, 'fat')).toEqual({ look: { madeOf: { substance: 'fat' } } });
    expect(act({ choose: 'part' }, 'part:crust', { makes: 3, madeOf: { substance: 'fat' } })).toEqual({
      look: { makes: 3, madeOf: { substance: 'fat', part: 'crust' } },
    });
    expect(act({ choose: 'part' }, '', { madeOf: { substance: 'fat', part: 'crust' } })).toEqual({
      look: { madeOf: { substance: 'fat' } },
    });
    for (const [arg, value] of [
      [{ choose: 'substance' }, 'gold'],
      [null, 'fat'],
      [{ choose: 7 }, {}],
    ])
      expect(act(arg, value)).toHaveProperty('refused');
    expect(readLook({ madeOf: { substance: 'fat', part: 3 } })).toEqual({ madeOf: { substance: 'fat' } });
    expect(readLook({ madeOf: 'fat' })).toEqual({});
  });
});

test('names are shown as the words that they are', () => {
  const html = shown(`recipe X\npart ${HOSTILE_NAME}\n  200 g  plain flour\npart b\n  50 g   ${HOSTILE_NAME}\n`);
  expect(elementsOf(html, 'img')).toEqual([]);
  expect(faultsIn(html)).toEqual([]);
  expect(textOf(elementsOf(html, 'thead')[0] as never)).toContain('<img src=x onerror=alert(1)>');
});

test.each(EXAMPLES)('%s has no fault of form', (path, text) => {
  const { whole, findings } = openInKitchen(text, path);
  for (const mode of ['live', 'print'] as const)
    expect(faultsIn(madeOfView(viewFacts(whole.recipe, findings, { mode })))).toEqual([]);
});
