import { describe, expect, test } from 'vitest';
import { EIGHTY } from '../../server/src/heat/estimate.ts';
import { learn } from '../../server/src/heat/learning.ts';

const read = (log: number) => ({ log, read: true, steepness: 1e6 });

describe('what trials teach', () => {
  // Worked by hand: spread 0.18, scatter 0.08, y = 0.14, 0.10, 0.18: mean 0.1314, next 0.0917, factor 1.140.
  test('three trials, worked by hand', () => {
    const { factor, spread, trials } = learn(0.18, [read(0.14), read(0.1), read(0.18)]);
    expect(Math.log(factor)).toBeCloseTo(0.1314, 3);
    expect(spread).toBeCloseTo(0.0917, 3);
    expect(trials).toBe(3);
  });

  test.each([
    [0, 1.66],
    [1, 1.32],
    [2, 1.28],
    [5, 1.25],
  ])('after %d trials the range is %d wide', (n, width) => {
    const { spread } = learn(
      0.18,
      Array.from({ length: n }, () => read(0)),
    );
    // With none it is the kind's own and the scatter of one.
    const next = n === 0 ? Math.hypot(spread, 0.08) : spread;
    expect(Math.exp(2 * EIGHTY * next)).toBeCloseTo(width, 1);
  });

  test('one that is far off teaches nothing', () => {
    expect(learn(0.18, [read(1.2)])).toEqual({ factor: 1, spread: 0.18, trials: 0 });
  });

  test('another oven tells of the recipe and less than its own, worked by hand', () => {
    const elsewhere = { ...read(0.2), oven: 'top' };
    // Of the recipe 1/(0.18² - 0.1²) = 44.64, of the trial 1/(0.1² + 0.08²) = 60.98: mean 0.1155; with another oven's own 0.1.
    const { factor, spread, trials } = learn(0.18, [elsewhere], 'lower deck');
    expect(Math.log(factor)).toBeCloseTo(0.1155, 3);
    expect(spread).toBeCloseTo(Math.sqrt(1 / 105.62 + 0.01 + 0.0064), 3);
    expect(trials).toBe(1);
    const there = learn(0.18, [elsewhere], 'top');
    expect(Math.log(there.factor)).toBeGreaterThan(0.1155);
    expect(there.spread).toBeLessThan(spread);
  });

  test('where the end is flat a reading counts for less', () => {
    const flat = learn(0.18, [{ log: 0.2, read: true, steepness: 4 }]);
    const steep = learn(0.18, [{ log: 0.2, read: true, steepness: 60 }]);
    expect(Math.log(flat.factor)).toBeLessThan(Math.log(steep.factor) / 1.5);
  });

  test('of 200 drawn from a known oven the range of eight in ten holds 148 to 172, at 0, 1 and 5 trials', () => {
    let seed = 7;
    const uniform = () => {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      return (seed + 0.5) / 2_147_483_648;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    for (const n of [0, 1, 5]) {
      let held = 0;
      const widths: number[] = [];
      for (let i = 0; i < 200; i++) {
        const truth = 0.18 * normal();
        const { factor, spread } = learn(
          0.18,
          Array.from({ length: n }, () => read(truth + 0.08 * normal())),
        );
        const width = n === 0 ? Math.hypot(spread, 0.08) : spread;
        const next = truth + 0.08 * normal();
        if (Math.abs(next - Math.log(factor)) <= EIGHTY * width) held++;
        widths.push(Math.exp(2 * EIGHTY * width));
      }
      expect(held).toBeGreaterThanOrEqual(148);
      expect(held).toBeLessThanOrEqual(172);
      if (n === 1) expect(widths[100]).toBeLessThanOrEqual(1.4);
    }
  });
});
