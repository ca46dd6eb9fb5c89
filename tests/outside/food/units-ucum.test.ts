/** Units held against UCUM, as the library of the US National Library of Medicine carries it. */
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import type { Measures } from '../../../server/src/measure/systems.ts';
import { baseOf } from '../../../server/src/measure/unit.ts';
import type { UnitSymbol } from '../../../server/src/measure/unit-symbol.ts';

const ucum = UcumLhcUtils.getInstance();

function ucumFactor(from: string, to: string): number {
  const { status, toVal } = ucum.convertUnitTo(from, 1, to);
  if (status !== 'succeeded' || toVal === null) throw new Error(`UCUM cannot turn ${from} into ${to}`);
  return toVal;
}

describe('factors agree with UCUM to nine figures', () => {
  test.each<[UnitSymbol, Measures, string, string]>([
    ['mg', 'us', 'mg', 'g'],
    ['kg', 'us', 'kg', 'g'],
    ['oz', 'us', '[oz_av]', 'g'],
    ['lb', 'us', '[lb_av]', 'g'],
    ['tsp', 'us', '[tsp_us]', 'mL'],
    ['tbsp', 'us', '[tbs_us]', 'mL'],
    ['fl oz', 'us', '[foz_us]', 'mL'],
    ['cup', 'us', '[cup_us]', 'mL'],
    ['pint', 'us', '[pt_us]', 'mL'],
    ['quart', 'us', '[qt_us]', 'mL'],
    ['gallon', 'us', '[gal_us]', 'mL'],
    ['fl oz', 'imperial', '[foz_br]', 'mL'],
    ['pint', 'imperial', '[pt_br]', 'mL'],
    ['quart', 'imperial', '[qt_br]', 'mL'],
    ['gallon', 'imperial', '[gal_br]', 'mL'],
    ['pint', 'metric', '[pt_br]', 'mL'],
    ['fl oz', 'canadian', '[foz_br]', 'mL'],
    ['tsp', 'metric', '[tsp_m]', 'mL'],
    ['tbsp', 'metric', '[tbs_m]', 'mL'],
    ['cl', 'us', 'cL', 'mL'],
    ['dl', 'us', 'dL', 'mL'],
    ['l', 'us', 'L', 'mL'],
    ['cm', 'us', 'cm', 'mm'],
    ['in', 'us', '[in_i]', 'mm'],
    ['min', 'us', 'min', 's'],
    ['h', 'us', 'h', 's'],
    ['d', 'us', 'd', 's'],
  ])('%s (%s) is %s in %s', (symbol, house, from, to) => {
    const ours = baseOf(symbol, house) ?? Number.NaN;
    expect(ours / ucumFactor(from, to)).toBeCloseTo(1, 9);
  });
});
