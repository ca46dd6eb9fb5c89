import { expect, it } from 'vitest';
import { dayOf } from '../../client/src/day.ts';

it("is the cook's own day, whatever the hour", () => {
  expect(dayOf(new Date(2026, 8, 4, 0, 1))).toBe('2026-09-04');
  expect(dayOf(new Date(2026, 10, 25, 23, 59))).toBe('2026-11-25');
});
