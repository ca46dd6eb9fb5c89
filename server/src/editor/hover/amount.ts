/** An amount that no ingredient claims: the same in other measures. */
import { gramsText, significant } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { figure } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import { span, textOf } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';
import { measuredAt } from './unit.ts';

const INCH_MM = 25.4;

export const hoverAmount: HoverSource = (snapshot, cursor) => {
  const node = measuredAt(cursor).find((m) => holds(m, cursor.character));
  const symbol = node?.unit?.symbol;
  const base = symbol === undefined ? undefined : baseOf(symbol, snapshot.house.world.measures);
  if (node === undefined || symbol === undefined || base === undefined) return undefined;
  const value = { low: node.quantity.low * base, high: node.quantity.high * base };
  const facts = convert(value, dimensionOf(symbol), baseOf('fl oz', snapshot.house.world.measures) ?? Number.NaN);
  return facts.length === 0 ? undefined : { at: placeOf(cursor.at, node), title: textOf(cursor.line, node), facts };
};

function convert(value: Range, dimension: string, fluidOunceMl: number): Fact[] {
  switch (dimension) {
    case 'mass':
      return [
        figure('Grams', `${span(value, gramsText)} g`),
        figure('Ounces', `${span(value, (g) => significant(g / 28.349523125))} oz`),
      ];
    case 'volume':
      return [
        figure('Millilitres', `${span(value, gramsText)} ml`),
        figure('Fluid ounces', `${span(value, (ml) => significant(ml / fluidOunceMl))} fl oz`),
      ];
    case 'length':
      return [
        figure('Centimetres', `${span(value, (mm) => significant(mm / 10))} cm`),
        figure('Inches', `${span(value, (mm) => significant(mm / INCH_MM, 2))} in`),
      ];
    default:
      return [];
  }
}
