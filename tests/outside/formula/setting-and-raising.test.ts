/** Gelatine by bloom, egg in custard, and what neutralises soda: published figures. */
import { expect, test } from 'vitest';
import { neutralises } from '../../../server/src/recipe/measures/leavening.ts';
import { open } from '../../support/harness.ts';
import { measured, measuredRange } from '../../support/measured.ts';

const jelly = (gelatine: string) => `recipe Jelly as jelly\n  ${gelatine}\n  500 g  apple juice\n  460 g  water\n`;

test('gelatine between grades: m₂ = m₁ √(B₁/B₂) (gelatine makers)', () => {
  const gold = measured(jelly('20 g  gelatine, 200 bloom'), 'gelatine');
  expect(gold).toBeCloseTo(20 / 980, 4);
  expect(measured(jelly('20 g  gelatine, 250 bloom'), 'gelatine') / gold).toBeCloseTo(Math.sqrt(250 / 200), 2);
  expect(measured(jelly('20 g  gelatine, 160 bloom'), 'gelatine') / gold).toBeCloseTo(Math.sqrt(160 / 200), 2);
});

test('a sheet of any grade sets as much: 10 sheets are 20 to 23 g of 200 bloom (trade sheets, from memory)', () => {
  const { low, high } = measuredRange(jelly('10 sheets  gelatine'), 'gelatine');
  expect(low).toBeGreaterThan(20 / 1000);
  expect(high).toBeLessThan(23.5 / 970);
});

test('one large egg, or two yolks, in 250 ml of milk is the least that sets (McGee, from memory)', () => {
  const custard = (egg: string) =>
    `recipe Cup as baked custard\n  ${egg}\n  250 ml  whole milk\n  25 g  caster sugar\n  do Whisk the egg with the milk and the sugar.\n`;
  const codes = (text: string) =>
    open(text)
      .findings.open.filter((f) => f.severity === 'warning')
      .map((f) => f.code);
  expect(measured(custard('1 large  egg'), 'egg protein')).toBeCloseTo(6.28 / 332, 2);
  expect(codes(custard('1 large  egg'))).not.toContain('custard-wont-set');
  expect(measured(custard('2 large  egg yolks'), 'egg protein')).toBeGreaterThan(0.014);
  expect(codes(custard('1 large  egg').replace('250 ml', '500 ml'))).toContain('custard-wont-set');
});

test.each([
  // Grams that 1 g of soda needs, from molar masses and the acidity of the food.
  ['cream of tartar', 2.2],
  ['lemon juice', 13],
  ['distilled vinegar', 14.3],
  ['buttermilk', 126],
])('%s: %d g for 1 g of baking soda', (name, needed) => {
  const food = open(`recipe X\n  1 g  ${name}\n`).recipe.parts[0]?.head.ingredients[0]?.food;
  expect(food).toBeDefined();
  if (food === undefined) return;
  const { low, high } = neutralises(food);
  expect(1 / high).toBeLessThan(needed);
  expect(1 / low).toBeGreaterThan(needed);
});

test('half a teaspoon of soda to a cup of sour milk (common practice) leaves no soap', () => {
  const text =
    'recipe Cakes as scone\n  2 cup  plain flour\n  1/2 tsp  baking soda\n  3 tbsp  butter\n  1 cup  buttermilk\n  do Rub the butter into the flour and soda and stir in the buttermilk.\n';
  expect(
    open(text).findings.open.filter((f) => f.code === 'leavening-out-of-range' && f.severity === 'warning'),
  ).toEqual([]);
});
