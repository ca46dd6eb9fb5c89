/**
 * Weights printed beside measures in public-domain recipes of the US Armed Forces, the USDA and others: the printed weight, give or take its
 * rounding, lies within what the book says of the measure; what does not is listed as a miss.
 */
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../../server/src/food/book.ts';
import { unitSpelled } from '../../../server/src/measure/unit.ts';
import pairsText from './recipe-pairs.tsv';

const book = builtInBook();

const PAIRS = pairsText
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [recipe = '', amount = '', unit = '', words = '', grams = '', tolerance = '', miss = ''] = line.split('\t');
    return { recipe, amount: Number(amount), unit, words, grams: Number(grams), tolerance: Number(tolerance), miss };
  });

function agrees({ amount, unit, words, grams, tolerance }: (typeof PAIRS)[number]): boolean {
  const match = book.find(words);
  const symbol = unitSpelled(unit)?.symbol;
  if (match.kind !== 'food' || symbol === undefined) return false;
  const weighed = book.weigh(match.food, { low: amount, high: amount, about: false, unit: symbol }, 'us', match.form);
  return weighed.known && grams * (1 + tolerance) >= weighed.grams.low && grams * (1 - tolerance) <= weighed.grams.high;
}

describe('weight and measure of published recipes', () => {
  test('nine in ten agree', () => {
    expect(PAIRS.filter((pair) => pair.miss === '').length / PAIRS.length).toBeGreaterThan(0.9);
  });

  test.each(PAIRS)('$recipe: $amount $unit $words is $grams g', (pair) => {
    expect(agrees(pair)).toBe(pair.miss === '');
  });
});
