/**
 * A slip made in a published recipe is found, by the right code, and not much else is found beside it.
 */
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../../server/src/checks/index.ts';
import { FAULTS } from './faults.ts';
import { judge, MOST_BESIDE } from './judge.ts';

test('there are at least 120 faults, and every check has one', () => {
  expect(FAULTS.length).toBeGreaterThanOrEqual(120);
  const codes = new Set(FAULTS.map((f) => f.code));
  expect(CHECKS.map((c) => c.code).filter((code) => !codes.has(code))).toEqual([]);
});

test('no fault is listed twice', () => {
  const names = FAULTS.map((f) => `${f.recipe} ${f.code} ${f.title}`);
  expect(new Set(names).size).toBe(names.length);
});

describe.each([...new Set(FAULTS.map((f) => f.recipe))])('%s', (recipe) => {
  test.each(FAULTS.filter((f) => f.recipe === recipe))('$title: $code', (fault) => {
    const { found, before, beside } = judge(fault);
    expect(before, 'in the sound recipe already').toBe(false);
    expect(found, `not found, but ${beside.join(', ') || 'nothing'}`).toBe(true);
    expect(beside.length, beside.join(', ')).toBeLessThanOrEqual(MOST_BESIDE);
  });
});
