import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figuresByKey, packedFigures, roundNumber } from '../../server/src/food/packed-figures.ts';

describe('figures of one letter', () => {
  test.each([
    [0, 0],
    [0.004, 0],
    [0.01, 0.01],
    [0.098, 0.1],
    [1.04, 1],
    [113, 110],
    [98, 100],
    [14, 14],
    [7364, 7200],
    [16500, 17000],
  ])('%s is %s', (value, want) => expect(roundNumber(value)).toBe(want));

  test('each is within a twentieth', () => {
    for (let value = 0.0099; value < 20000; value *= 1.013)
      expect(Math.abs(roundNumber(value) / value - 1), String(value)).toBeLessThan(0.0501);
  });

  test('the table comes back as it was', () => {
    const text = readFileSync('server/data/foods/minerals.tsv', 'utf8');
    expect([...figuresByKey(packedFigures(text))]).toEqual([...figuresByKey(text)]);
    expect(figuresByKey(text).size).toBeGreaterThan(1200);
  });
});
