import { describe, expect, test } from 'vitest';
import { costOf, pricesOf } from '../../server/src/publish/cost.ts';
import { euLabel } from '../../server/src/publish/declared.ts';
import { nutritionOf } from '../../server/src/publish/nutrition.ts';
import { spreadOf } from '../../server/src/publish/report.ts';
import { fingerprint, readTrials } from '../../server/src/recipe/trials/trials.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const LOAF =
  'recipe Loaf\n  yield   2 loaves\n\n  1000 g    bread flour\n  700 g     water\n  20 g      fine salt\n\n  do Mix the flour, water and salt.\n  do Bake at 230 C for 40 min.\n';
const trial = (weighed: string, more = '') =>
  `\ntrial 2026-10-03 by Ines\n${more}  weighed ${weighed}\n  verdict keep\n`;
const worked = (text: string) => {
  const { recipe } = open(text);
  return nutritionOf(recipe, readTrials(recipe.outline));
};

describe('water lost in cooking', () => {
  test('without a weighed trial the figures are of the raw mix', () => {
    expect(worked(LOAF)).toMatchObject({ rawG: 1720, cookedG: null, weighedTrials: 0 });
    expect(euLabel(worked(LOAF))).toMatchObject({ basis: 'before cooking', salt: { text: '1.1 g' } });
  });

  test('with one, 100 g hold more of all but water, and the whole holds the same', () => {
    const baked = worked(LOAF + trial('1500 g out of the oven'));
    expect(baked).toMatchObject({ rawG: 1720, cookedG: 1500, weighedTrials: 1 });
    expect(baked.whole).toEqual(worked(LOAF).whole);
    expect(euLabel(baked)).toMatchObject({ basis: 'as weighed after cooking', salt: { text: '1.3 g' } });
  });

  test('several are averaged', () => {
    expect(worked(LOAF + trial('1500 g out of the oven') + trial('1.52 kg out of the oven')).cookedG).toBe(1510);
  });

  test.each<[string, string]>([
    ['heavier than what went in', '1800 g out of the oven'],
    ['one piece of it', '300 g out of the oven'],
    ['less than could be lost as water', '800 g out of the oven'],
    ['something else', '1400 g out of the bowl'],
  ])('a weight that is %s is left out', (_, weighed) => expect(worked(LOAF + trial(weighed)).cookedG).toBeNull());

  test('a trial of the recipe as it was is left out', () => {
    const tested = `  tested  ${fingerprint(open(LOAF).recipe)}\n`;
    expect(worked(LOAF + trial('1500 g out of the oven', tested)).cookedG).toBe(1500);
    expect(worked(LOAF.replace('700 g', '650 g') + trial('1500 g out of the oven', tested)).cookedG).toBeNull();
  });
});

describe('what is not known', () => {
  test('is counted, and never as nothing', () => {
    const unknown = worked(LOAF.replace('20 g      fine salt', '200 g     xyloquartz\n  to taste  fine salt'));
    expect(unknown.notCounted).toEqual(['xyloquartz', 'fine salt']);
    expect(unknown.whole.fat).toBeNull();
    expect(worked(LOAF.replace('20 g      fine salt', '2 cup     xyloquartz')).rawG).toBeNull();
  });
});

describe('cost', () => {
  const FOODS =
    'food bread flour\n  price   1.20 per 1 kg\n\nfood fine salt\n  price   0.90 per 750 g\n\nfood farm egg\n  like    egg\n  price   3.60 per 12\n\nfood plum\n  price   4 per 1 kg\n';
  const cost = (text: string) => {
    const { recipe, outline, house } = open(`${text}\n${FOODS}`);
    return costOf(recipe, pricesOf([outline], house.world.book, house.world.measures));
  };

  test('by weight, whole and a serving; water costs nothing', () => {
    expect(cost(LOAF)).toMatchObject({ total: 1.224, per_serving: 0.612, complete: true, without_price: [] });
  });

  test('what has no price is named, and the total is a lower bound', () => {
    expect(cost(LOAF.replace('20 g      fine', '20 g      fine salt\n  50 g      honey\n  5 g fine'))).toMatchObject({
      complete: false,
      without_price: ['honey'],
    });
  });

  test('by the piece, and as bought', () => {
    const fruit =
      'recipe Plums\n  yield   4 portions\n\n  500 g     plums, stoned from 560 g\n\n  do Stew the plums.\n';
    expect(cost(fruit)).toMatchObject({ total: 2.24, per_serving: 0.56 });
  });

  test('no prices, no cost', () => {
    const { recipe, outline, house } = open(LOAF);
    expect(costOf(recipe, pricesOf([outline], house.world.book, 'us'))).toBeNull();
  });
});

describe('report', () => {
  test('JSON has labels, cost and the state beside the fields that were there', async () => {
    const files = {
      'a.quern': LOAF + trial('1500 g out of the oven'),
      'foods.quern': 'food quayside flour\n  like    bread flour\n  also    bread flour\n  price   1.35 per 1 kg\n',
      'quern.json': '{}',
    };
    const json = JSON.parse((await quern(['report', 'a.quern', '--format', 'json'], files)).out);
    expect(json).toMatchObject({
      version: 1,
      mass_g: 1720,
      state: 'cooked, changed since',
      nutrition: {
        cooked_g: 1500,
        weighed_trials: 1,
        us_per_serving: {
          of: 'one of 2 loaves',
          mass_g: 750,
          energy: { value: expect.any(Number) },
          // 10 g of table salt hold 3.9 g of sodium (USDA SR26, NDB 02047); a day's value is 2.3 g.
          sodium: { daily_percent: 170 },
        },
        eu_per_100g: { of: '100 g', salt: { value: 1.3 } },
        not_counted: [],
      },
      cost: { total: 1.35, complete: false, without_price: ['fine salt'] },
      out_of_oven_g: { low: expect.any(Number), high: expect.any(Number) },
    });
    expect(json.out_of_oven_g.low).toBeLessThan(1500);
    expect(json.out_of_oven_g.high).toBeLessThan(json.mass_g);
    for (const field of ['energy_kcal', 'fat_g', 'sodium_mg']) expect(json.per_serving).toHaveProperty(field);
    const { out } = await quern(['report', 'a.quern'], files);
    expect(out).toMatch(/^EU label, 100 g, as weighed after cooking: energy \d+ kJ \/ \d+ kcal, /m);
    expect(out).toMatch(
      /^cost by the house's prices: at least 1\.35, 0\.68 for one of the yield; no price for fine salt$/m,
    );
  });

  test('a cost of which nothing is known is no cost of nothing, and what is not baked has no weight out of the oven', async () => {
    const files = {
      'a.quern': 'recipe Dip\n  1 kg      sunflower oil\n  20 g      fine salt\n  do Stir the salt into the oil.\n',
      'foods.quern': 'food quayside flour\n  like    bread flour\n  price   1.35 per 1 kg\n',
      'quern.json': '{}',
    };
    const { out } = await quern(['report', 'a.quern'], files);
    expect(out).toMatch(/^cost by the house's prices: not known; none of it has a price$/m);
    expect(out).not.toMatch(/oven/);
    expect(JSON.parse((await quern(['report', 'a.quern', '--format', 'json'], files)).out).out_of_oven_g).toBeNull();
  });

  test('as HTML: every ingredient in a table, what was written as text, and no script', async () => {
    const files = {
      'a.quern': LOAF.replace('20 g      fine salt', '20 g      fine salt\n  1 g       salt & <b>pepper</b>'),
    };
    const { out, exit } = await quern(['report', 'a.quern', '--format', 'html'], files);
    expect(exit).toBe(0);
    expect(out).toMatch(/^<!doctype html>/);
    expect(out).toContain('<th scope="row">bread flour</th>');
    expect(out).toContain('salt &amp; &lt;b&gt;pepper&lt;/b&gt;');
    expect(out).toMatch(/<h2>Nutrition <small>before cooking; .*<th scope="col" class="n">EU label,<br>100 g<\/th>/s);
    expect(out).not.toContain('<script');
  });

  test('several trials give a spread', () => {
    const trials = readTrials(
      open(
        `${LOAF}${trial('1500 g out of the oven', '  took    40 min to bake\n')}${trial('1.52 kg out of the oven', '  took    44 min to bake\n')}`,
      ).outline,
    );
    expect(spreadOf(trials)).toEqual([
      { what: 'bake', unit: 'min', trials: 2, low: 40, high: 44, mean: 42 },
      { what: 'out of the oven', unit: 'g', trials: 2, low: 1500, high: 1520, mean: 1510 },
    ]);
  });
});
