/** The formula checks over kinds and contents: what is data, what counts as what, and what stays quiet. */
import { describe, expect, test } from 'vitest';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { MEASURES } from '../../server/src/recipe/measures/definitions.ts';
import { KINDS, kindNamed } from '../../server/src/recipe/measures/kinds.ts';
import { ratioOf } from '../../server/src/recipe/measures/ratio.ts';
import { open } from '../support/harness.ts';
import { measured, measuredRange } from '../support/measured.ts';

/** The kinds of the notation. */
const NAMED =
  'shortcrust, sweet paste, puff pastry, choux, lean bread, enriched bread, flatbread, pizza dough, pasta dough, sponge, creamed cake, pound cake, muffin, scone, pancake batter, popover batter, cookie, baked custard, stirred custard, quiche, cheese filling, pastry cream, set cream, jelly, ice cream, sorbet, ganache, caramel, meringue, jam, lacto-ferment, quick pickle, cure, mayonnaise, vinaigrette, butter sauce, starch sauce, roux sauce, stock, soup, braise, roast, mince dish, rice, dressing, sausage, terrine, risotto, pilaf, mash, slaw, salsa, hot sauce, chutney, relish, marinade, brine, rub, fermented hot sauce, tea ferment, yoghurt, fresh cheese, US biscuit, angel food, brittle, brownie, caramels, cheese pastry, chiffon, cordial, crumble, dumpling, fritter batter, frosting, fruit butter, fruit curd, fruit filling, gnocchi, granola, hot-water crust, infused spirit, marshmallow, oil cake, starch pudding, steamed pudding, suet crust, syrup, toffee'.split(
    ', ',
  );

describe('kinds are data', () => {
  test('every kind of the notation is there, and no other', () => {
    expect(KINDS.map((k) => k.name).sort()).toEqual([...NAMED].sort());
  });

  test('no two kinds share a name', () => {
    const names = KINDS.flatMap((k) => [k.name, ...(k.also ?? [])]);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(kindNamed(name)).toBeDefined();
  });

  test.each(KINDS)(
    '$name: the usual band lies in the implausible one, and each side that has an edge says what happens',
    ({ measures }) => {
      expect(measures.length).toBeGreaterThan(0);
      for (const { measure, usual, implausible, below, above, source } of measures) {
        expect(MEASURES[measure], measure).toBeDefined();
        expect(source.length, measure).toBeGreaterThan(10);
        const [low, high] = usual;
        const [least, most] = implausible;
        if (low !== null && high !== null) expect(low, measure).toBeLessThan(high);
        if (least !== null) expect(least, measure).toBeLessThanOrEqual(low ?? Number.NEGATIVE_INFINITY);
        if (most !== null) expect(most, measure).toBeGreaterThanOrEqual(high ?? Number.POSITIVE_INFINITY);
        if (low !== null && low > 0) expect(below, `${measure} below`).toBeDefined();
        if (high !== null) expect(above, `${measure} above`).toBeDefined();
      }
    },
  );
});

describe('the range of a ratio', () => {
  const term = (low: number, high: number, top: number, bottom: number) => ({
    grams: { low, high },
    top: { low: top, high: top },
    bottom: { low: bottom, high: bottom },
  });

  test('an ingredient above and below the line has one weight', () => {
    // Sugar 90 to 110 g in itself and 100 g of water: 90/190 to 110/210, not 90/210 to 110/190.
    const range = ratioOf([term(90, 110, 1, 1), term(100, 100, 0, 1)]);
    expect(range?.low).toBeCloseTo(90 / 190, 9);
    expect(range?.high).toBeCloseTo(110 / 210, 9);
  });

  test('agrees with every corner tried', () => {
    const terms = [term(80, 120, 0.3, 1), term(10, 40, 0.9, 0.2), term(200, 260, 0, 1), term(5, 50, 1, 1)];
    const corners = Array.from({ length: 16 }, (_, bits) => {
      const at = terms.map((t, i) => ({ t, grams: bits & (1 << i) ? t.grams.high : t.grams.low }));
      return (
        at.reduce((sum, { t, grams }) => sum + grams * t.top.low, 0) /
        at.reduce((sum, { t, grams }) => sum + grams * t.bottom.low, 0)
      );
    });
    const range = ratioOf(terms);
    expect(range?.low).toBeCloseTo(Math.min(...corners), 9);
    expect(range?.high).toBeCloseTo(Math.max(...corners), 9);
  });

  test('nothing below the line is no ratio', () => {
    expect(ratioOf([term(10, 10, 1, 0)])).toBeUndefined();
    expect(ratioOf([])).toBeUndefined();
    expect(ratioOf([term(0, 50, 1, 1)])).toBeUndefined();
  });
});

describe('what counts as what', () => {
  test('herbs, vegetables and fruit bring half of their water to a dough', () => {
    // Parsley holds 87.71 % (USDA SR26, NDB 11297).
    expect(
      measured('recipe X as shortcrust\n  200 g  plain flour\n  100 g  parsley\n  100 g  lard\n', 'hydration'),
    ).toBeCloseTo((100 * 0.8771) / 2 / 200, 3);
  });

  test('dried egg counts as what it is mixed up to', () => {
    const fresh = measured('recipe X as sponge\n  100 g  plain flour\n  200 g  eggs\n', 'egg');
    const dried = measured('recipe X as sponge\n  100 g  plain flour\n  50 g  dried egg\n', 'egg');
    expect(dried / fresh).toBeCloseTo(1, 1);
  });

  test('butter of no name may be salted or not', () => {
    const salt = (butter: string) =>
      measuredRange(`recipe X as shortcrust\n  200 g  plain flour\n  100 g  ${butter}\n`, 'salt');
    expect(salt('butter').low).toBeLessThan(0.001);
    expect(salt('butter').high).toBeCloseTo(salt('salted butter').low, 4);
    expect(salt('unsalted butter').high).toBeLessThan(0.001);
  });

  test('oats and nuts in a biscuit are taken as flour and as not', () => {
    const { low, high } = measuredRange(
      'recipe X as cookie\n  100 g  plain flour\n  100 g  rolled oats\n  100 g  caster sugar\n',
      'sugar',
    );
    expect(low).toBeCloseTo(0.5, 1);
    expect(high).toBeCloseTo(1, 1);
  });

  test('what is added to taste and a spice of no weight do not stand in the way', () => {
    expect(() =>
      measured(
        'recipe X as shortcrust\n  200 g  plain flour\n  100 g  lard\n  60 g  water\n  to taste  salt\n',
        'salt',
      ),
    ).not.toThrow();
  });

  test('where all that stands below the line is unknown, the measure is, and says why', () => {
    expect(() => measured('recipe X as shortcrust\n  100 g  lard\n  100 g  zorbul\n', 'fat')).toThrow(/zorbul/);
  });
});

const formula = (text: string) =>
  open(text).findings.open.filter((f) => f.check.family === 'formula' || f.code === 'unknown-kind');

describe('every fix of a formula, applied, leaves the formula quiet', () => {
  test.each([
    ['recipe X as choux\n  250 g  water\n  110 g  unsalted butter\n  140 g  plain flour\n  2 large  eggs\n'],
    ['recipe X as lean bread\n  500 g  bread flour\n  330 g  water\n  30 g  fine salt\n  4 g  instant yeast\n'],
    ['recipe X as lacto-ferment\n  1 kg  white cabbage\n  10 g  fine salt\n'],
    ['recipe X as vinaigrette\n  20 g  red wine vinegar\n  300 g  olive oil\n'],
    ['recipe X as ganache\n  100 g  dark chocolate\n  300 g  double cream\n'],
    ['recipe X as meringue\n  120 g  egg whites\n  600 g  caster sugar\n'],
    ['recipe X as roux sauce\n  50 g  unsalted butter\n  4 g  plain flour\n  600 g  whole milk\n'],
    ['recipe X as jelly\n  2 sheets  gelatine\n  500 g  apple juice\n'],
    ['recipe X as lean bread\n  100 %  bread flour\n  40 %  water\n  2 %  fine salt\n  0.8 %  instant yeast\n'],
    ['recipe X as lean bread\n  1 kg  bread flour\n  65 %  water\n  8 %  fine salt\n  0.8 %  instant yeast\n'],
    ['recipe X as quick pickle\n  300 g  cucumbers\n  100 g  cider vinegar\n  300 g  water\n'],
  ])('%s', (text) => {
    const before = open(text);
    const found = formula(text);
    expect(found.length).toBe(1);
    const [finding] = found;
    const [fix] = finding === undefined ? [] : fixesOf(finding, before);
    expect(fix).toBeDefined();
    if (fix === undefined) return;
    expect(formula(printDocument(applyEdits(before.document, fix.edits))).map((f) => f.said.message)).toEqual([]);
  });
});

test('mashed fruit wets a batter, and whole fruit may not', () => {
  const muffin = (fruit: string) =>
    formula(
      `recipe X as muffin\n  250 g  plain flour\n  150 g  caster sugar\n  10 g  baking powder\n  250 ml  whole milk\n  100 g  sunflower oil\n  1 large  egg\n  400 g  ${fruit}\n`,
    ).map((f) => f.code);
  expect(muffin('bananas, mashed')).toEqual(['dough-too-wet']);
  expect(muffin('raspberries')).toEqual([]);
});

test('a value that rounds to the edge of its band is said to lie past it', () => {
  const text =
    'recipe X as ice cream\n  500 g  whole milk\n  250 g  double cream\n  110 g  caster sugar\n  140 g  skimmed milk powder\n';
  expect(formula(text).map((f) => f.said.message.split('.')[0])).toContain(
    'The sugar, lactose apart, in the mix is just under 11 %; 11 to 22 % is usual for ice cream',
  );
});

describe('how far is judged by what it likely is', () => {
  const cakes = (flour: string, powder: string) =>
    formula(`recipe X as muffin\n  ${flour}  plain flour\n  ${powder}  baking powder\n  150 g  milk\n  50 g  butter\n`);

  test('three and a half teaspoons to a cup may be what some bear by a heaped cup, and likely are not', () => {
    const [only] = cakes('1 cup', '3 1/2 tsp');
    expect(only?.severity).toBe('warning');
    expect(only?.said.message).toMatch(/ is \d.* to 1\d %, likely 1[23] %; /);
  });

  test('three of a cup may be usual', () => {
    expect(cakes('1 cup', '3 tsp')).toEqual([]);
  });

  test('of weights there is nothing likely to be told', () => {
    expect(cakes('125 g', '20 g')[0]?.said.message).toMatch(/ is 16 %; /);
  });
});

test('raw white whipped in does not help gelatine; whole egg does', () => {
  const cream = (egg: string) =>
    formula(
      `recipe X as set cream\n  2 g  gelatine\n  400 g  whole milk\n  300 g  double cream\n  ${egg}\n  60 g  sugar\n`,
    );
  expect(cream('120 g  egg whites').map((f) => f.code)).toContain('gel-wont-set');
  expect(cream('120 g  eggs').map((f) => f.code)).not.toContain('gel-wont-set');
});

test('half of the water and the fat of a cheese may stay in it', () => {
  // Cheddar holds 36.75 % water and 33.14 % fat (USDA SR26, NDB 01009).
  const text = 'recipe X as cheese pastry\n  100 g  plain flour\n  100 g  cheddar\n';
  expect(measured(text, 'hydration')).toBeCloseTo(0.3675 / 2, 2);
  expect(measuredRange(text, 'fat').low).toBeCloseTo(0.3314 / 2, 2);
  expect(measuredRange(text, 'fat').high).toBeCloseTo(0.3314, 2);
});

describe('quiet', () => {
  test.each([
    [
      'a custard that starch sets',
      'recipe X as baked custard\n  500 g  whole milk\n  1 large  egg\n  30 g  cornflour\n  60 g  caster sugar\n',
    ],
    [
      'a sweet cooked with pineapple',
      'recipe X as jelly\n  14 g  gelatine\n  400 g  apple juice\n  300 g  pineapple, poached\n',
    ],
    [
      'rice that is drained',
      'recipe X as rice\n  200 g  long-grain rice\n  3 l  water\n  do Boil the rice in the water and drain.\n',
    ],
    [
      'soda with buttermilk',
      'recipe X as scone\n  400 g  plain flour\n  4 g  baking soda\n  70 g  unsalted butter\n  300 g  buttermilk\n',
    ],
    [
      'sourdough without yeast',
      'recipe X as lean bread\n  400 g  bread flour\n  150 g  sourdough starter\n  250 g  water\n  9 g  fine salt\n',
    ],
    [
      'water to boil a dough in, and egg to glaze it',
      'recipe X as lean bread\n  500 g  bread flour\n  280 g  water\n  10 g  fine salt\n  5 g  instant yeast\n  1 l  water for boiling\n  1 large  egg, beaten, to glaze\n  100 g  butter, to serve\n',
    ],
    [
      'whole berries in a muffin',
      'recipe X as muffin\n  250 g  plain flour\n  150 g  caster sugar\n  10 g  baking powder\n  210 ml  whole milk\n  100 g  sunflower oil\n  1 large  egg\n  250 g  blueberries\n',
    ],
    ['angel food', 'recipe X as sponge\n  350 g  egg whites\n  300 g  caster sugar\n  130 g  cake flour\n'],
    [
      'an ice that is whipped and frozen still',
      'recipe X as ice cream\n  600 g  double cream\n  400 g  sweetened condensed milk\n  do Whip the cream and fold in the milk.\n  do Freeze at -18 C for 6 h.\n',
    ],
    [
      'thin pancakes (110 g of flour, 2 eggs, 275 ml of milk and water: from memory)',
      'recipe X as pancake batter\n  110 g  plain flour\n  2  large eggs\n  200 ml  whole milk\n  75 ml  water\n  50 g  butter, melted\n  1 g  fine salt\n',
    ],
    [
      'brioche at 2.4 % of salt (from memory)',
      'recipe X as enriched bread\n  500 g  bread flour\n  12 g  fine salt\n  60 g  caster sugar\n  8 g  instant yeast\n  5  large eggs\n  60 g  whole milk\n  250 g  unsalted butter\n',
    ],
    [
      'focaccia at 8 % of oil (from memory)',
      'recipe X as lean bread\n  500 g  bread flour\n  400 g  water\n  10 g  fine salt\n  5 g  instant yeast\n  40 g  olive oil\n',
    ],
    ['marmalade boiled with its water', 'recipe X as jam\n  1 kg  oranges\n  2 kg  granulated sugar\n  2 l  water\n'],
  ])('%s', (_, text) => {
    expect(formula(text).map((f) => f.said.message)).toEqual([]);
  });
});

test('a caramel of condensed milk counts its sucrose, and not its lactose, as added sugar', () => {
  const text = 'recipe X as cookie\n  200 g  plain flour\n  120 g  butter\n  100 g  dulce de leche\n';
  expect(measured(text, 'sugar')).toBeCloseTo(0.398 / 2, 3);
});

describe('a kind by evidence', () => {
  test('one click writes it on the recipe line of a part without a name', () => {
    const text =
      'recipe Mayo  # for the bar\n  36 g  pasteurised egg yolk\n  20 g  lemon juice\n  250 g  sunflower oil\n';
    const snapshot = open(text);
    const [hint] = formula(text);
    expect(hint?.severity).toBe('hint');
    const [fix] = hint === undefined ? [] : fixesOf(hint, snapshot);
    expect(fix === undefined ? '' : printDocument(applyEdits(snapshot.document, fix.edits))).toContain(
      'recipe Mayo as mayonnaise  # for the bar\n',
    );
  });

  test('a kind on a recipe of several parts is read too', () => {
    const text = 'recipe Tart as shortcurst\npart a\n  1 g  salt\npart b\n  1 g  salt\n';
    expect(formula(text).map((f) => f.code)).toEqual(['unknown-kind']);
  });

  test('a very long word after `as` is not compared letter by letter', () => {
    expect(formula(`part b as ${'mud'.repeat(300)}\n  1 g  salt\n`).map((f) => f.code)).toEqual(['unknown-kind']);
  });
});
