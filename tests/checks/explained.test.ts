/** The page of a finding on one recipe: the sum a cook could follow, and where each figure is from. */
import { describe, expect, test } from 'vitest';
import type { Check } from '../../server/src/checks/check.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import { explainOn } from '../../server/src/publish/page.ts';
import { open } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

/** Codes of which a finding is a figure that was added up, and not a word or a time held against a rule. */
const COMPUTED: ReadonlySet<string> = new Set([
  ...CHECKS.filter((c) => c.family === 'formula').map((c) => c.code),
  'curing-salt-dose',
  'garlic-in-oil',
  'implausible-temperature',
  'leftover-amount',
  'low-acid-preserve',
  'measure-mismatch',
  'overdrawn-amount',
  'pan-overfull',
  'pan-underfull',
  'yield-mismatch',
]);

/** What is seen and not added up: raw fruit that eats gelatine, yolk in the white. */
const SEEN = /takes gelatine apart|keeps the white from whipping/;

function pageOn(code: string, text: string): string {
  const check = CHECKS.find((c) => c.code === code);
  if (check === undefined) throw new Error(`no check ${code}`);
  const snapshot = open(text);
  const page = explainOn(check, snapshot.findings.open, snapshot, 'it');
  return page.slice(page.indexOf('## In it'));
}

const badTexts = (check: Check): string[] =>
  check.examples.bad.map((e) => readMarks(typeof e === 'string' ? e : e.text).text);

test.each(CHECKS.map((check) => ({ code: check.code, check })))('$code names a source under every finding', (each) => {
  for (const text of badTexts(each.check)) {
    const on = pageOn(each.code, text);
    const found = on.match(/^\*\*Line \d+\.\*\*/gm) ?? [];
    expect(found.length, text).toBeGreaterThan(0);
    expect(on.match(/^Source: \S.*\.$/gm), text).toHaveLength(found.length);
  }
});

test.each(CHECKS.filter((c) => COMPUTED.has(c.code)))('$code shows its sum', (check) => {
  for (const text of badTexts(check)) {
    const on = pageOn(check.code, text);
    if (!SEEN.test(on)) expect(on, text).toMatch(/^\| --- \|| = /m);
  }
});

describe('the sum on a recipe', () => {
  test.each<[string, string, string, readonly string[]]>([
    [
      'of a pan: its parts by what they are made of, and the tin',
      'pan-overfull',
      'recipe Jelly\n  yield   6 portions\n  pan     round 20 x 2 cm\n  1 l       water\n  100 g     caster sugar\n  14 g      powdered gelatine\n  do Soak the gelatine in the water, melt it with the sugar and pour into the pan.\n',
      [
        '| caster sugar | 100 | 0.02 | 0 | 0 | 100 | 0.01 | 63 |',
        'The pan: π × (20 cm ÷ 2)² × 2 cm = 628 ml, to the brim.',
      ],
    ],
    [
      'of curing salt: its share of nitrite over the meat',
      'curing-salt-dose',
      'recipe Sausage\n  1 kg      pork shoulder, minced\n  7.5 g     curing salt\n  do Mix the pork with the curing salt and poach until the centre reads 72 C.\n',
      [
        '7.5 g curing salt × 6.25 % = 0.4688 g of nitrite; 0.4688 g ÷ 1000 g',
        '÷ 1000 g × 1 000 000 = 469 ppm',
        '156 ppm × 1000 g ÷ 1 000 000 ÷ 6.25 % = 2.5 g at most',
      ],
    ],
    [
      'of a jar: the acid in the whole',
      'low-acid-preserve',
      'recipe Relish\n  1 kg      red bell peppers, diced\n  100 g     white wine vinegar\n  do Simmer the peppers in the vinegar for 30 min.\n  do Fill into sterilised jars, seal and store in the larder.\n',
      ['| white wine vinegar | 100 | 6 |', '6 g ÷ 1100 g = 0.55 %', '1100 g × 0.77 % = 8.4 g of acid'],
    ],
    [
      'of soda: what the buttermilk takes up',
      'leavening-out-of-range',
      'recipe Scones\npart dough as scone\n  450 g     plain flour\n  9 g       baking soda\n  80 g      butter\n  250 g     whole milk\n  50 g      buttermilk\n  do Sift the flour and baking soda and rub in the butter.\n  do Stir in the milk and buttermilk and shape.\n',
      ['| buttermilk | 50 | ', '9 g baking soda − ', '3 × 9 g = 27 g of baking powder.'],
    ],
    [
      'of yeast over time: hours, warmth and pace of each rise',
      'yeast-out-of-range',
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n  do Prove at 25 C for 15 h.\n  do Prove at 34 C for 1 h.\n',
      ['The yeast is 1 % of the flour.', '| 1 | 15 | 25 | 1 | 15 |', '| 2 | 1 | 34 | 2 | 2 |', 'In all 17;'],
    ],
    [
      'of a yield: the list, and the pieces',
      'yield-mismatch',
      'recipe Rolls\n  yield   24 rolls of 60 g\n  500 g     bread flour\n  330 g     water\n  do Mix the flour and water.\n',
      ['| **in all** | 830 |', '24 × 60 g = 1440 g', '830 g × 1.06 = 880 g'],
    ],
    [
      'of the ledger: what each step takes and leaves',
      'overdrawn-amount',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub 50 g of the butter into the oats.\n  do Brush with 40 g of the butter.\n',
      ['| the list |  | 80 g |', '| line 4 | 50 g | 30 g |', '| line 5 | 40 g | 0 g |'],
    ],
    [
      'of a measure: what is divided by what, with the digits that the result wants',
      'salt-out-of-range',
      'recipe Loaf as lean bread\n  500 g     bread flour\n  330 g     water\n  25 g      fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
      ['25 g ÷ 500 g of flour = 5 %.'],
    ],
    [
      'of a reading below all published times',
      'undercooked',
      'recipe Patties\n  600 g     minced pork\n  do Shape the pork and grill until the centre reads 60 C.\n',
      ['| 63 | 145 | 3 min |', 'Below 63 °C no time is published: at 60 °C none is enough.'],
    ],
    [
      'of a weight out of the oven: each part, what it loses and what is left',
      'trial-disagrees',
      'recipe Rolls\n  yield   12 rolls\n\npart dough as enriched bread\n  500 g     bread flour\n  250 g     water\n  60 g      butter\n  do Mix the flour, water and butter and bake at 200 C for 15 min until gold.\n\ntrial 2026-09-14\n  weighed 41 g out of the oven\n',
      ['one of 12 usually weighs 55 to 64 g, and that is 14 g less', '| dough | 810 g | 5 to 18 % | 664 to 770 g |'],
    ],
    [
      'of soup: the band, and how far it bends',
      'salt-out-of-range',
      'recipe Soup as soup\n  1 l       water\n  400 g     carrots\n  60 g      fine salt\n  do Simmer the carrots in the water with the salt.\n',
      ['usual for soup: up to 1.8 %; at the outside: up to 2.7 %.'],
    ],
  ])('%s', (_name, code, text, parts) => {
    const on = pageOn(code, text);
    for (const part of parts) expect(on).toContain(part);
  });
});
