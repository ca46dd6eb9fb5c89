/** Conversions held against UCUM as the library of the US National Library of Medicine carries it, and against NIST. */
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import type { ConvertTo } from '../../../server/src/edits/conversion.ts';
import { convertRecipe } from '../../../server/src/edits/convert.ts';
import { applyEdits } from '../../../server/src/edits/text-edit.ts';
import { totalOf } from '../../../server/src/measure/total.ts';
import { parseDocument, printDocument } from '../../../server/src/notation/document.ts';
import { degreesIn } from '../../../server/src/recipe/journey/degrees.ts';
import { open } from '../../support/harness.ts';

const ucum = UcumLhcUtils.getInstance();
function byUcum(value: number, from: string, to: string): number {
  const { status, toVal } = ucum.convertUnitTo(from, value, to);
  if (status !== 'succeeded' || toVal === null) throw new Error(`UCUM cannot turn ${from} into ${to}`);
  return toVal;
}

function converted(line: string, to: ConvertTo): string {
  const { document, recipe } = open(`recipe Test\n\n  ${line}\n`);
  const text = printDocument(applyEdits(document, convertRecipe(document, recipe, { to }).edits));
  return text.split('\n')[2]?.trim() ?? '';
}

/** The amount in its base unit, g or ml. */
function sizeIn(line: string): number {
  const { statement } = parseDocument(line).lines[0] ?? {};
  if (statement?.kind !== 'ingredient' || statement.amount?.kind !== 'measured') throw new Error(`no amount: ${line}`);
  return totalOf(statement.amount.quantity, 'us')?.low ?? Number.NaN;
}

describe('between the units of one dimension, within half a per cent of UCUM', () => {
  test.each<[string, ConvertTo, number, string, string]>([
    ['1 lb beef mince', 'metric', 1, '[lb_av]', 'g'],
    ['12 oz beef mince', 'metric', 12, '[oz_av]', 'g'],
    ['5 lb potatoes', 'metric', 5, '[lb_av]', 'g'],
    ['8 fl oz whole milk', 'metric', 8, '[foz_us]', 'mL'],
    ['1 quart water', 'metric', 1, '[qt_us]', 'mL'],
    ['2 gallon water', 'metric', 2, '[gal_us]', 'mL'],
    ['3 cup chicken stock', 'metric', 3, '[cup_us]', 'mL'],
    ['1 1/2 lb chicken thighs', 'weight', 1.5, '[lb_av]', 'g'],
  ])('%s to %s', (line, to, value, from, unit) => {
    const ours = sizeIn(converted(line, to));
    expect(Math.abs(ours / byUcum(value, from, unit) - 1)).toBeLessThan(0.005);
  });

  test.each<[string, number, string]>([
    ['450 g beef mince', 450, 'g'],
    ['1.5 kg chicken thighs', 1500, 'g'],
    ['500 ml water', 500, 'mL'],
    ['1 l chicken stock', 1000, 'mL'],
  ])('%s in US measures, within 3 %', (line, value, unit) => {
    const text = converted(line, 'us');
    expect(text).not.toMatch(/\d (?:g|kg|ml|l) /);
    const base = unit === 'g' ? byUcum(value, 'g', 'g') : byUcum(value, 'mL', 'mL');
    expect(Math.abs(sizeIn(text) / base - 1)).toBeLessThan(0.03);
  });
});

/** NIST, Metric Kitchen: cooking measurement equivalencies, rounded as printed (from memory). */
test.each<[string, number]>([
  ['1 cup water', 240],
  ['1 pint water', 470],
  ['1 quart water', 950],
  ['1 gallon water', 3800],
  ['1 fl oz water', 30],
  ['1 oz beef mince', 28],
  ['1 lb beef mince', 454],
])('%s is about %f ml or g by NIST', (line, printed) => {
  expect(Math.abs(sizeIn(converted(line, 'metric')) / printed - 1)).toBeLessThan(0.02);
});

describe('temperatures', () => {
  test.each([-18, 4, 63, 71, 74, 82, 96, 118, 180])(
    '%d °C in the food or pan is within a degree of UCUM',
    (celsius) => {
      const exact = byUcum(celsius, 'Cel', '[degF]');
      for (const role of ['food', 'medium', 'around'] as const)
        expect(Math.abs(Number(degreesIn(celsius, 'F', role)) - exact)).toBeLessThan(1);
    },
  );

  /** Limits as the FDA Food Code 2022, chapter 3, prints them on both scales. */
  test.each<[number, number]>([
    [5, 41],
    [21, 70],
    [57, 135],
    [63, 145],
    [68, 155],
    [74, 165],
  ])('%d °C is %d °F, as the rule says', (c, f) => {
    expect(degreesIn(c, 'F', 'food')).toBe(String(f));
    expect(degreesIn((f - 32) / 1.8, 'C', 'food')).toBe(String(c));
  });

  test('a limit that no rule prints is never moved to the unsafe side', () => {
    for (let c = 54; c < 100; c += 0.5) expect(Number(degreesIn(c, 'F', 'food')) + 0.5).toBeGreaterThan(c * 1.8 + 32);
    for (let f = 130; f < 212; f++)
      expect(Number(degreesIn((f - 32) / 1.8, 'C', 'food')) + 0.45).toBeGreaterThan((f - 32) / 1.8);
    for (let c = 0; c < 8; c += 0.5) expect(Number(degreesIn(c, 'F', 'around')) - 0.3).toBeLessThan(c * 1.8 + 32);
  });

  /** The oven table that British and US cook books print (from memory): °C, °F, gas. */
  test.each<[number, number, string]>([
    [140, 275, '1'],
    [150, 300, '2'],
    [160, 325, '3'],
    [180, 350, '4'],
    [190, 375, '5'],
    [200, 400, '6'],
    [220, 425, '7'],
    [230, 450, '8'],
    [245, 475, '9'],
  ])('an oven of %d °C is %d °F and gas %s', (c, f, gas) => {
    expect(Math.abs(Number(degreesIn(c, 'F', 'oven')) - f)).toBeLessThanOrEqual(5);
    expect(Math.abs(Number(degreesIn((f - 32) / 1.8, 'C', 'oven')) - c)).toBeLessThanOrEqual(5);
    expect(degreesIn((f - 32) / 1.8, 'gas', 'oven')).toBe(gas);
  });
});
