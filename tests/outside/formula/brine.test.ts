/** Salt and acid of published ferments and pickles; USDA Complete Guide to Home Canning (2015) and NCHFP, from memory. */
import { expect, test } from 'vitest';
import { open } from '../../support/harness.ts';
import { measured } from '../../support/measured.ts';

const codes = (text: string) => open(text).findings.open.map((f) => f.code);

test('sauerkraut: 5 lb cabbage and 3 tbsp salt is 2.25 to 2.5 %', () => {
  const text =
    'recipe Kraut as lacto-ferment\n  5 lb  white cabbage\n  3 tbsp  salt\n  do Rub the salt into the cabbage.\n  do Ferment at 70 F for 3 weeks.\n';
  expect(measured(text, 'brine salt')).toBeGreaterThan(0.0215);
  expect(measured(text, 'brine salt')).toBeLessThan(0.026);
  expect(codes(text)).not.toContain('weak-brine');
});

test('fermented dill pickles: 4 lb cucumbers, 8 cups water, 1/4 cup vinegar, 1/2 cup salt', () => {
  const text =
    'recipe Dills as lacto-ferment\n  4 lb  cucumbers\n  8 cup  water\n  1/4 cup  vinegar\n  1/2 cup  salt\n  do Dissolve the salt in the water with the vinegar and pour over the cucumbers.\n  do Ferment at 70 F for 3 weeks.\n';
  // 146 g of salt in 1814 + 1893 + 60 + 146 g.
  expect(measured(text, 'brine salt')).toBeCloseTo(146 / 3913, 2);
  expect(codes(text)).not.toContain('weak-brine');
  expect(codes(text)).not.toContain('salt-out-of-range');
});

test('a brine of 5 % is 2.4 % once its weight of vegetables has drawn even', () => {
  const text = 'recipe Jar as lacto-ferment\n  1 kg  carrots\n  1 kg  water\n  50 g  fine salt\n';
  // What the carrots bring (69 mg of sodium in 100 g, USDA SR26, NDB 11124) no guide reckons.
  expect(measured(text, 'brine salt')).toBeCloseTo(50 / 2050, 6);
});

test('vinegar of 5 % thinned 1 : 1 with water is 2.5 %, the commonest tested pickle', () => {
  const text =
    'recipe Pickle as quick pickle\n  500 g  cucumbers\n  400 g  distilled vinegar\n  400 g  water\n  8 g  fine salt\n';
  expect(measured(text, 'liquor acid')).toBeCloseTo(0.025, 4);
  expect(codes(text)).not.toContain('acid-out-of-range');
  expect(codes(text.replace('400 g  distilled', '150 g  distilled'))).toContain('acid-out-of-range');
});

test('a dry cure of 60 g of salt on 1 kg of salmon is 6 %, within 3 to 12 % for fish', () => {
  const text = 'recipe Salmon as cure\n  1 kg  salmon\n  60 g  fine salt\n  40 g  caster sugar\n';
  // What the fish brings (44 mg of sodium in 100 g) no guide reckons.
  expect(measured(text, 'cure salt')).toBeCloseTo(0.06, 6);
});
