/**
 * View 5. Outside: the United States' list of allergens (FALCPA 2004 and the FASTER Act 2021) and the European Union's (Regulation (EU) 1169/2011,
 * annex II); figures of a label by 21 CFR 101.9(c) and by the Commission's guidance of December 2012; the panel of an American stick of unsalted
 * butter, 14 g (from memory): 100 calories, fat 11 g (14 % of a day by the rounded figure, 15 % by the amount), saturates 7 g (36 %), sodium 0; daily values of 2016: 21 CFR 101.9(c)(9).
 */
import { describe, expect, test } from 'vitest';
import type { PriceList } from '../../../server/src/publish/cost.ts';
import { viewFacts } from '../../../server/src/publish/view/facts.ts';
import { labelView } from '../../../server/src/publish/view/label.ts';
import { EXAMPLES, openInKitchen } from '../../support/harness.ts';
import { elementsIn, elementsOf, factsOf, faultsIn, HOSTILE_NAME, rowOf, tableOf, textOf } from '../../support/view.ts';

const ALLERGENS = 'Allergens and what brings them';
const shown = (text: string, prices?: PriceList) => labelView(factsOf(text, { ...(prices && { prices }) }));
const list = (...lines: string[]) => `recipe X\n  yield   4 portions\n${lines.map((line) => `  ${line}\n`).join('')}`;

describe('allergens', () => {
  test('each with what brings it, by both lists', () => {
    const html = shown(
      list('200 g plain flour', '50 g rye flour', '2 large eggs', '100 g butter', '50 g ground almonds'),
    );
    expect(tableOf(html, ALLERGENS).map((row) => row.map(({ text }) => text))).toEqual([
      ['Contains', 'brought by', 'US list', 'EU list'],
      ['Gluten', 'rye flour', 'not on this list', 'cereals containing gluten'],
      ['Wheat', 'plain flour', 'wheat', 'cereals containing gluten'],
      ['Eggs', 'eggs', 'eggs', 'eggs'],
      ['Milk', 'butter', 'milk', 'milk'],
      ['Nuts', 'ground almonds', 'tree nuts', 'nuts'],
    ]);
  });

  test('one food may bring several', () => {
    const rows = tableOf(shown(list('30 ml soy sauce')), ALLERGENS).slice(1);
    expect(rows.map((row) => [row[0]?.text, row[1]?.text])).toEqual([
      ['Wheat', 'soy sauce'],
      ['Soya', 'soy sauce'],
    ]);
  });

  test('what is chosen may bring more', () => {
    const html = shown(list('200 ml cream, or oat milk', '30 g pine nuts'));
    expect(rowOf(html, ALLERGENS, 'Nuts')).toEqual(['Nuts', 'pine nuts', 'tree nuts', 'not on this list']);
    expect(textOf(elementsOf(html, 'table')[0] as never)).toMatch(/May contain by what is chosen\s*Gluten\s*oat milk/);
  });

  test('all that the report names is in the table, and no more', () => {
    for (const [path, text] of EXAMPLES) {
      const { whole, findings } = openInKitchen(text, path);
      const { allergens } = viewFacts(whole.recipe, findings, { mode: 'live' }).report;
      const named = (side: 'us' | 'eu') => [...new Set(allergens.brought.flatMap((each) => each[side] ?? []))].sort();
      expect(named('us')).toEqual(allergens.us);
      expect(named('eu')).toEqual(allergens.eu);
    }
  });

  test('a food that nobody knows carries the mark of a warning, and "none" is never said over it', () => {
    const html = shown(list('80 g zibbleroot'));
    expect(html).toMatch(/aria-label="warning".*<b>Not known for<\/b> <b>zibbleroot<\/b>/);
    expect(html).toContain('None is found in what is known.');
    expect(html).not.toContain('None of the listed allergens');
    expect(shown(list('80 g water'))).toContain('None of the listed allergens is found.');
  });

  test('a label that tells is to be read', () => {
    expect(shown(list('300 g pork sausages'))).toMatch(
      /Check the label of <b>pork sausages<\/b>: some makes have .*mustard/,
    );
  });
});

describe('nutrition', () => {
  const BUTTER = 'recipe Butter\n  yield   10 portions\n  140 g   unsalted butter\n';

  test('butter, as its own packet has it', () => {
    const html = shown(BUTTER);
    expect(rowOf(html, 'Nutrition', 'Energy, kcal')?.[4]).toBe('100');
    expect(rowOf(html, 'Nutrition', 'Fat, g')?.slice(4, 6)).toEqual(['11', '15']);
    expect(rowOf(html, 'Nutrition', 'of it saturates, g')?.slice(4, 6)).toEqual(['7', '36']);
    expect(rowOf(html, 'Nutrition', 'Sodium, mg')?.slice(4, 6)).toEqual(['0', '0']);
  });

  test('a serving, 100 g and both labels stand in one row', () => {
    const html = shown(BUTTER);
    expect(tableOf(html, 'Nutrition')[0]?.map(({ text }) => text)).toEqual([
      '',
      'one of 10 portions, 14 g',
      '100 g',
      'EU label, 100 g',
      'US label, a serving',
      '% of a day',
      'a whole day',
    ]);
    // 81.1 g of fat in 100 g (USDA SR26, NDB 01145).
    expect(rowOf(html, 'Nutrition', 'Fat, g')?.slice(1, 4)).toEqual(['11.4', '81.1', '81']);
    expect(rowOf(html, 'Nutrition', 'Salt, g')?.slice(4)).toEqual(['', '', '']);
    expect(rowOf(html, 'Nutrition', 'Sodium, mg')?.[3]).toBe('');
  });

  test.each(EXAMPLES)('%s: the labels of the table are those of the report', (path, text) => {
    const { whole, findings } = openInKitchen(text, path);
    const facts = viewFacts(whole.recipe, findings, { mode: 'live' });
    const { us_per_serving: us, eu_per_100g: eu } = facts.report.nutrition;
    const html = labelView(facts);
    const names = [
      ['fat', 'Fat, g'],
      ['sugars', 'of it sugars, g'],
      ['protein', 'Protein, g'],
    ] as const;
    for (const [field, name] of names) {
      const row = rowOf(html, 'Nutrition', name);
      const told = row?.join(' ') ?? '';
      const [euText, usText] = [eu?.[field]?.text, us?.[field]?.text].map((each) => each?.replace(/ g$/, ''));
      if (euText === undefined && usText === undefined)
        expect(`${told}${html}`).toMatch(/not known for|nothing is weighed/i);
      else
        expect([row?.[us === null ? 2 : 3], us === null ? undefined : row?.[4]]).toEqual([
          euText ?? 'not known',
          us === null ? undefined : (usText ?? 'not known'),
        ]);
    }
    expect(faultsIn(html)).toEqual([]);
  });

  test('a bar ends at the whole day, and of more than a day the line stands within it', () => {
    const drawn = (text: string) => {
      const row = tableOf(shown(text), 'Nutrition').find(([head]) => head?.text === 'Sodium, mg');
      const [cell] = row?.slice(-1) ?? [];
      const at = (tag: 'rect' | 'line', name: string): string | undefined =>
        elementsIn(cell?.of, tag)[0]?.attrs.find((attr) => attr.name === name)?.value;
      return { percent: row?.[5]?.text, bar: at('rect', 'width'), day: at('line', 'x1') };
    };
    // 2.375 g of salt a portion is 920 mg of sodium (NDB 02047), 40 % of 2300; ten times that is four days.
    expect(drawn(list('9.5 g table salt', '400 g water'))).toEqual({ percent: '40', bar: '40%', day: '100%' });
    expect(drawn(list('95 g table salt', '400 g water'))).toEqual({ percent: '400', bar: '100%', day: '25%' });
  });

  test('a nutrient that is not known is named and hatched, and is no nought', () => {
    const html = shown(list('100 g plain flour', '50 g zibbleroot'));
    expect(html).toContain('<b>Not known for</b> <b>zibbleroot</b><b>:</b> no figure can be given without it.');
    expect(tableOf(html, 'Nutrition')).toEqual([]);
  });

  test('without servings their columns go', () => {
    const html = shown('recipe B\n  250 g  unsalted butter\n');
    expect(tableOf(html, 'Nutrition')[0]?.map(({ text }) => text)).toEqual(['', '100 g', 'EU label, 100 g']);
    expect(html).toContain('A serving is not known');
  });

  test('nothing listed', () => {
    expect(shown('recipe X\n  do Wait.\n')).toContain('<b>Nothing is listed</b>');
    expect(shown('recipe X\n  do Wait.\n')).toContain('<b>Nothing is weighed</b>, so no figure is known.');
  });
});

/** The order of the rows: 21 CFR 101.9(c) and (d), Regulation (EU) 1169/2011, annex XV. */
describe('the draft of a label', () => {
  const TART = list('250 g plain flour', '125 g butter', '300 ml double cream', '400 g strawberries', '60 g sugar');
  const rows = (html: string, caption: RegExp): (string | undefined)[][] =>
    tableOf(html, caption).map((row) => row.map(({ text }) => text));

  test('Nutrition Facts in the order of the law, each with its figure or for what it is not known', () => {
    const facts = rows(shown(TART), /^Nutrition Facts, United States/);
    expect(facts.map(([name]) => name)).toEqual([
      'Calories',
      'Total Fat',
      'Saturated Fat',
      'Trans Fat',
      'Cholesterol',
      'Sodium',
      'Total Carbohydrate',
      'Dietary Fiber',
      'Total Sugars',
      'Added Sugars',
      'Protein',
      'Vitamin D',
      'Calcium',
      'Iron',
      'Potassium',
    ]);
    for (const [name, figure = '', daily] of facts) {
      expect(figure, name).toMatch(/^(?:\d[\d.]*(?: to \d[\d.]*)?(?: m?c?g)?|not known for .*)$/);
      // 101.9(c): trans fat, total sugars and, where none is claimed, protein have no per cent; calories none.
      if (/^(?:Calories|Trans Fat|Total Sugars|Protein)$/.test(name ?? '')) expect(daily, name).toBe('');
      else expect(daily, name).toMatch(/^\d+ %$/);
    }
  });

  test('what stands within another is set in', () => {
    const within = tableOf(shown(TART), /^Nutrition Facts/).filter(([name]) => name?.class === 'within');
    expect(within.map(([name]) => name?.text)).toEqual([
      'Saturated Fat',
      'Trans Fat',
      'Dietary Fiber',
      'Total Sugars',
      'Added Sugars',
    ]);
  });

  test('the declaration of the European Union in its order', () => {
    const names = rows(shown(TART), /^Nutrition declaration, European Union/).map(([name]) => name);
    expect(names).toEqual([
      'Energy',
      'Fat',
      'of which saturates',
      'Carbohydrate',
      'of which sugars',
      'Fibre',
      'Protein',
      'Salt',
    ]);
  });

  test('what is taken by likeness is named, allergens stand in capitals, and what is to be asked in a list', () => {
    const html = shown(list('300 ml double cream', '100 g dark chocolate'));
    expect(html).toContain('double cream as whipping cream and unsalted butter mixed to its fat or water');
    expect(html).toMatch(/<b>Ingredients:<\/b> double cream \(MILK\)/);
    expect(html).toMatch(/<h3>To ask<\/h3>\n<ul class="lines"><li>[^<]*dark chocolate/);
  });

  test('a food that nobody knows is named in each row, and no row is nought', () => {
    const facts = rows(shown(list('250 g plain flour', '80 g zibbleroot')), /^Nutrition Facts/);
    expect(facts.length).toBeGreaterThan(0);
    for (const [name, said] of facts) expect(said, name).toBe('not known for zibbleroot');
  });

  test('as cooked or as it goes in is chosen in the editor alone', () => {
    expect(shown(TART)).toMatch(/<h2>Draft of a label .*data-do="look-cooked"/);
    expect(labelView(factsOf(TART, { mode: 'print' }))).toContain('<h2>Draft of a label </h2>');
    const cooked = labelView(factsOf(`${TART}  do Bake at 180 C for 30 min.\n`, { look: { cooked: true } }));
    expect(cooked).toContain('USDA&#39;s retention factors');
  });

  test('it has no fault that no view may have', () => {
    expect(faultsIn(shown(TART))).toEqual([]);
  });
});

describe('cost', () => {
  const PRICES: PriceList = new Map([
    ['wheat-flour-plain', { perG: 0.001 }],
    ['unsalted-butter', { perG: 0.01 }],
  ]);
  const TEXT = list('300 g plain flour', '100 g unsalted butter', '100 g water');

  test('the sum in a sentence, and dearest first', () => {
    // 300 g at 1 a kilogram and 100 g at 10 a kilogram; water from the tap costs nothing.
    const html = shown(TEXT, PRICES);
    expect(html).toContain('<b>1.30, 0.33 for one of 4 portions.</b>');
    expect(tableOf(html, 'Cost by ingredient').map((row) => row.map(({ text }) => text))).toEqual([
      ['Ingredient', 'cost', 'a serving', 'drawn'],
      ['unsalted butter', '1.00', '0.25', ''],
      ['plain flour', '0.30', '0.07', ''],
      ['water', '0.00', '0.00', ''],
      ['In all', '1.30', '0.33', ''],
    ]);
    expect(html).not.toContain('notknown');
  });

  test('what has no price is named with its share, and the sum is the least', () => {
    const html = shown(TEXT.replace('100 g water', '100 g caster sugar'), PRICES);
    expect(html).toContain(
      '<b>At least 1.30, 0.33 for one of 4 portions.</b> Not known for <b>caster sugar</b>: 20 % of the weight.',
    );
    expect(rowOf(html, 'Cost by ingredient', '1 without a price')).toEqual(['1 without a price', 'not known', '', '']);
    expect(rowOf(html, 'Cost by ingredient', 'At least')?.[1]).toBe('1.30');
  });

  test('nothing priced is not known, and not nothing', () => {
    const html = shown(list('100 g caster sugar', '100 g water'), PRICES);
    expect(html).toContain('<b>Not known.</b> None of it has a price');
    expect(html).not.toMatch(/0\.00/);
  });

  test('a house without prices', () => {
    expect(shown(TEXT)).toContain('<b>No prices are known.</b>');
  });

  test('a part that is taken in is paid for once', () => {
    const { cost } = factsOf(
      'recipe X\npart paste\n  300 g  plain flour\npart tart\n  paste\n  100 g  unsalted butter\n  do Line with the paste.\n',
      {
        prices: PRICES,
      },
    ).report;
    expect(cost).toMatchObject({ total: 1.3, complete: true, without_price: [] });
  });
});

test('names are shown as the words that they are', () => {
  const html = shown(list(`50 g ${HOSTILE_NAME}`, '20 g butter'), new Map([['butter', { perG: 0.01 }]]));
  expect(elementsOf(html, 'img')).toEqual([]);
  expect(faultsIn(html)).toEqual([]);
});
