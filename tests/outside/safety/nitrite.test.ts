/**
 * Ingoing nitrite, worked by hand: 9 CFR 424.21(c) and 424.22(b), FSIS Handbook 7620.3 (1995). The ppm limits as pages that quote
 * the rule print them; the ounces and the brines from memory. Curing salt no. 1 is 6.25 % sodium nitrite.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

function dose(meat: string, salt: string, water = '') {
  const text = `recipe Cure\n  ${meat}\n${water === '' ? '' : `  ${water}\n`}  ${salt}\n  do Mix all the ingredients and chill at 4 C for 2 d.\n`;
  return open(text).findings.open.filter((f) => f.code === 'curing-salt-dose');
}

describe('minced meat, 156 ppm', () => {
  test('2.5 g a kg is 156 ppm, and the most', () => {
    expect(dose('1 kg  minced pork', '2.5 g  curing salt')).toEqual([]);
    const [over] = dose('1 kg  minced pork', '3.2 g  curing salt');
    // 3.2 g × 0.0625 / 1 kg = 200 ppm.
    expect(over?.said.value).toBe(200);
    expect(over?.said.band).toEqual([null, 156]);
  });

  test('4 oz of curing salt on 100 lb is a quarter ounce of nitrite, 156 ppm', () => {
    expect(dose('100 lb  minced beef', '4 oz  curing salt')).toEqual([]);
    // 16 oz: 1 oz of nitrite, four times as much.
    expect(dose('100 lb  minced beef', '16 oz  curing salt')[0]?.said.value).toBe(625);
  });
});

describe('whole meat', () => {
  test('rubbed on dry, 625 ppm: 10 g a kg', () => {
    expect(dose('1 kg  pork shoulder', '10 g  curing salt')).toEqual([]);
    expect(dose('1 kg  pork shoulder', '12 g  curing salt')[0]?.said.value).toBe(750);
  });

  test('bacon rubbed on dry, 200 ppm: 3.2 g a kg', () => {
    expect(dose('1 kg  pork belly', '3.2 g  curing salt')).toEqual([]);
    expect(dose('1 kg  pork belly', '5 g  curing salt')[0]?.said.value).toBe(313);
  });

  test('a brine that evens out, 200 ppm of meat and water together', () => {
    // 4 kg and 2 kg: 19.2 g × 0.0625 / 6 kg = 200 ppm.
    expect(dose('4 kg  pork shoulder', '19.2 g  curing salt', '2 kg  water')).toEqual([]);
    const [strong] = dose('4 kg  pork shoulder', '24 g  curing salt', '2 kg  water');
    expect(strong?.said.value).toBe(250);
  });

  test('bacon in a brine, 120 ppm', () => {
    // 1.92 g a kg of meat and water.
    expect(dose('2 kg  pork belly', '5.7 g  curing salt', '1 kg  water')).toEqual([]);
    expect(dose('2 kg  pork belly', '7 g  curing salt', '1 kg  water')).toHaveLength(1);
  });

  test('2 lb of nitrite to 100 gal of pickle at a tenth taken up is 200 ppm, so it is information', () => {
    // As curing salt 32 lb; 100 gal of pickle with its salt weigh some 1000 lb. Here a hundredth of it, over 10 lb of meat.
    const brine = (salt: string) =>
      dose('10 lb  pork shoulder', salt, '8.34 lb  water\n  1.34 lb  fine salt')[0]?.severity;
    expect(brine('0.32 lb  curing salt')).toBe('info');
    expect(brine('0.5 lb  curing salt')).toBe('error');
  });
});

test('no finding where there is no meat, or no weight', () => {
  expect(dose('1 kg  carrots', '20 g  curing salt')).toEqual([]);
  expect(dose('as needed  pork shoulder', '20 g  curing salt')).toEqual([]);
});
