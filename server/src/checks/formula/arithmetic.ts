/**
 * Knows the arithmetic of a measure on one recipe, line by line, for the page of a finding.
 */
import { gramsText, significant, trimmed } from '../../measure/number-text.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import { depressionC, otherDepression, saltDepressionC, sucroseEquivalent } from '../../recipe/measures/freezing.ts';
import { bandText, measureText } from '../../recipe/measures/measure-text.ts';
import { milkSolids, waterShare } from '../../recipe/measures/shares.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { sums, sumTable } from '../sum-table.ts';
import type { BandValues } from './band.ts';

/** The values of a measure held against a band, where a finding's are such, or hold such as their `band`. */
export function bandValuesIn(values: unknown): BandValues | undefined {
  if (isBandValues(values)) return values;
  const held = typeof values === 'object' && values !== null && 'band' in values ? values.band : undefined;
  return isBandValues(held) ? held : undefined;
}

function isBandValues(values: unknown): values is BandValues {
  return (
    typeof values === 'object' &&
    values !== null &&
    ['measure', 'contents', 'kind', 'verdict'].every((key) => key in values)
  );
}

/** A Markdown table: what each ingredient weighs, brings, and counts for of what it is held against; then the result and the band. */
export function arithmetic(values: BandValues): string[] {
  const { measure: held, value, kind, contents } = values;
  const definition = MEASURES[held.measure];
  const result = `That is the ${definition.words}: ${measureText(held.measure, value.low, value.high)}; usual for ${kind.name}: ${bandText(held.measure, held.usual)}${held.implausible.every((edge) => edge === null) ? '' : `; at the outside: ${bandText(held.measure, held.implausible)}`}.`;
  if (!('top' in definition)) return freezing(contents, result);
  const rows = contents.map((i) => {
    const grams = gramsOf(i);
    const top = definition.topG?.(i);
    return {
      name: i.name,
      numbers: [
        grams,
        top === undefined ? grams * bringing(i, definition.top) : (top.low + top.high) / 2,
        grams * bringing(i, definition.bottom),
      ],
    };
  });
  const [, top = 0, bottom = 0] = sums(rows);
  return [
    ...sumTable(['ingredient', 'weighs, g', 'counts, g', `of it ${definition.per}, g`], rows),
    '',
    `By the middle of each range, ${significant(top)} g ÷ ${significant(bottom)} g of ${definition.per}${bottom > 0 ? ` = ${measureText(held.measure, top / bottom, top / bottom)}` : ''}. ${result}`,
  ];
}

/** Leighton's sum: sugars as sucrose in the water, the salts of milk, then alcohol and salt. */
function freezing(contents: readonly Ingredient[], result: string): string[] {
  const rows = contents.map((i) => ({
    name: i.name,
    numbers: [1, bringing(i, waterShare), bringing(i, sucroseEquivalent), bringing(i, milkSolids)].map(
      (share) => share * gramsOf(i),
    ),
  }));
  const [, water = 0, sucrose = 0, solids = 0] = sums(rows);
  if (water <= 0) return [result];
  const other = contents.reduce((sum, i) => sum + gramsOf(i) * bringing(i, otherDepression), 0) / water;
  const sugar = depressionC(sucrose / water);
  const lowered = [
    `the sugars lower it by ${sugar === undefined ? 'more than the table goes' : degrees(sugar)} (${gramsText((sucrose / water) * 100)} g as sucrose to 100 g of water)`,
    `the salts of milk by ${degrees(saltDepressionC(solids / water))}`,
    `alcohol and salt by ${degrees(other)}`,
  ];
  return [
    ...sumTable(['ingredient', 'weighs, g', 'water, g', 'sugars as sucrose, g', 'milk solids not fat, g'], rows),
    '',
    `By the middle of each range, ${lowered.join(', ')}. ${result}`,
  ];
}

const degrees = (celsius: number): string => `${trimmed(celsius, 1)} °C`;
