import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figuresByKey, packedFigures, roundNumber } from '../../server/src/food/packed-figures.ts';
import { readNumbers } from '../../server/src/food/tables.ts';

describe('figures of one letter', () => {
  test.each([
    [0, 0],
    [0.004, 0],
    [0.01, 0.01],
    [0.098, 0.1],
    [1.04, 1],
    [113, 110],
    [98, 100],
    [14, 15],
    [7364, 7800],
    [16500, 17000],
  ])('%s is %s', (value, want) => expect(roundNumber(value)).toBe(want));

  test('each is within a tenth', () => {
    for (let value = 0.0099; value < 20000; value *= 1.013)
      expect(Math.abs(roundNumber(value) / value - 1), String(value)).toBeLessThan(0.1);
  });

  test('the table comes back as it was', () => {
    const text = readFileSync('server/data/foods/minerals.tsv', 'utf8');
    const order = readNumbers();
    const known = figuresByKey(text, () => []);
    const unpacked = figuresByKey(packedFigures(text, order), () => order);
    expect(known.size).toBeGreaterThan(1200);
    for (const [key, figures] of known) expect(unpacked.get(key), String(key)).toEqual(figures);
  });
});
