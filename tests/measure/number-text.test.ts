import { expect, test } from 'vitest';
import { percentRange } from '../../server/src/measure/number-text.ts';

test.each([
  [0.18, 0.4, '18 to 40 %'],
  [0.0005, 0.015, '0.05 to 1.5 %'],
  [0.0002, 0.0002, '0.02 %'],
  [0.001, 0.001, '0.1 %'],
  [0.0125, 0.07, '1.3 to 7 %'],
  [0, 0, '0 %'],
])('%s to %s is written %s', (low, high, want) => {
  expect(percentRange(low, high)).toBe(want);
});
