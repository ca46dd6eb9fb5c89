import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Equation, nearestFactors } from '../../server/src/edits/adjust/least-squares.ts';

const free = (weight = 1, least = 0.02, most = 50) => ({ weight, least, most });

/** By hand: the least of (x−1)² + (y−1)² on x + y = 3 is x = y = 1.5; where y costs four times as much, x − 1 = 4 (y − 1). */
test.each([
  ['two alike share', [{ of: [1, 1], is: 3 }], [free(), free()], [1.5, 1.5]],
  ['the dearer moves less', [{ of: [1, 1], is: 3 }], [free(1), free(4)], [1.8, 1.2]],
  ['one at its bound leaves the rest to the other', [{ of: [1, 1], is: 3 }], [free(1, 0, 1.2), free()], [1.2, 1.8]],
  [
    'two equations, two unknown',
    [
      { of: [1, 1], is: 2 },
      { of: [1, -1], is: 1 },
    ],
    [free(), free()],
    [1.5, 0.5],
  ],
  ['nothing asked, nothing moves', [{ of: [2, 3], is: 5 }], [free(), free()], [1, 1]],
] satisfies readonly [string, readonly Equation[], ReturnType<typeof free>[], readonly number[]][])(
  '%s',
  (_, equations, movers, factors) => {
    const found = nearestFactors(equations, movers) ?? [];
    expect(found).toHaveLength(factors.length);
    for (const [i, factor] of factors.entries()) expect(found[i]).toBeCloseTo(factor, 8);
  },
);

test.each([
  ['beyond the bounds', [{ of: [1], is: 60 }]],
  [
    'against one another',
    [
      { of: [1, 1], is: 3 },
      { of: [1, 1], is: 4 },
    ],
  ],
  ['of nothing that moves', [{ of: [0, 0], is: 1 }]],
  ['no number', [{ of: [Number.NaN, 1], is: 1 }]],
])('what cannot be met: %s', (_, equations) => {
  expect(nearestFactors(equations, [free(), free()].slice(0, equations[0]?.of.length))).toBeUndefined();
});

test('of all factors that meet an equation, none is nearer than what is found', () => {
  const gram = fc.integer({ min: -2000, max: 2000 }).map((n) => n / 10);
  const factor = fc.integer({ min: 5, max: 2000 }).map((n) => n / 100);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(gram, factor, fc.integer({ min: 1, max: 100 })), { minLength: 2, maxLength: 8 }),
      fc.array(gram, { minLength: 8, maxLength: 8 }),
      (rows, second) => {
        fc.pre(rows.some(([g]) => Math.abs(g) > 1));
        const movers = rows.map(([, , weight]) => free(weight));
        const known = rows.map(([, f]) => f);
        // Two equations that some factors within the bounds are known to meet.
        const equations = [rows.map(([g]) => g), rows.map((_, j) => second[j] ?? 0)].map((of) => ({
          of,
          is: of.reduce((sum, g, j) => sum + g * (known[j] ?? 0), 0),
        }));
        const found = nearestFactors(equations, movers);
        expect(found).toBeDefined();
        const cost = (of: readonly number[]) =>
          of.reduce((sum, f, j) => sum + (movers[j]?.weight ?? 0) * (f - 1) ** 2, 0);
        expect(cost(found ?? [])).toBeLessThanOrEqual(cost(known) * (1 + 1e-6) + 1e-9);
        for (const { of, is } of equations) {
          const size = Math.max(...of.map(Math.abs), 1e-300);
          expect(Math.abs(of.reduce((sum, g, j) => sum + g * (found?.[j] ?? 0), 0) - is) / size).toBeLessThan(1e-8);
        }
      },
    ),
  );
});
