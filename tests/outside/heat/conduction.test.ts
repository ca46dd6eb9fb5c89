/**
 * The conduction of heat against what is known of it: the series solutions of Carslaw and Jaeger (Conduction of Heat in Solids) with roots found
 * here, products of them for bricks and short cylinders (Newman's rule), tables of freezing, and the balance of heat.
 */
import { besselj } from 'bessel';
import { describe, expect, test } from 'vitest';
import { Conduction, type Surface } from '../../../server/src/heat/conduct.ts';
import { at, FROM, type Material, materialOf, STEP } from '../../../server/src/heat/material.ts';
import { type Extent, oneDimension, rootSquared, sidesShare } from '../../../server/src/heat/shapes.ts';
import { untilCold, untilHot } from '../../../server/src/heat/until.ts';

const ROWS = Math.round((260 - FROM) / STEP) + 1;
const K = 0.5;
const C = 3.6e6;

/** The same at every temperature. */
const plain = (k: number, volumetric: number): Material => ({
  enthalpy: Float64Array.from({ length: ROWS }, (_, i) => i * STEP * volumetric),
  conductivity: new Float64Array(ROWS).fill(k),
  density: 1000,
});

const around = (celsius: number, h: number): Surface => ({ ambientC: () => celsius, h });

const bisect = (f: (x: number) => number, low: number, high: number): number => {
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
};

type Basic = 'slab' | 'cylinder' | 'sphere';
const J = (n: number, x: number): number => besselj(x, n);

const equation: Record<Basic, (x: number, biot: number) => number> = {
  slab: (x, biot) => x * Math.sin(x) - biot * Math.cos(x),
  cylinder: (x, biot) => x * J(1, x) - biot * J(0, x),
  sphere: (x, biot) => x * Math.cos(x) - (1 - biot) * Math.sin(x),
};

const weight: Record<Basic, (x: number) => number> = {
  slab: (x) => (4 * Math.sin(x)) / (2 * x + Math.sin(2 * x)),
  cylinder: (x) => (2 / x) * (J(1, x) / (J(0, x) ** 2 + J(1, x) ** 2)),
  sphere: (x) => (4 * (Math.sin(x) - x * Math.cos(x))) / (2 * x - Math.sin(2 * x)),
};

/** The first roots, looked for in steps. */
function roots(shape: Basic, biot: number, count: number): readonly number[] {
  const f = (x: number) => equation[shape](x, biot);
  const found: number[] = [];
  for (let x = 1e-6; found.length < count; x += 0.05) if (f(x) * f(x + 0.05) < 0) found.push(bisect(f, x, x + 0.05));
  return found;
}

/** What is left of the difference in the middle. */
const series = (shape: Basic, biot: number): ((fourier: number) => number) => {
  const terms = roots(shape, biot, 40).map((x) => ({ x, a: weight[shape](x) }));
  return (fourier) => terms.reduce((sum, { x, a }) => sum + a * Math.exp(-x * x * fourier), 0);
};

const EXPONENT: Record<Basic, number> = { slab: 1, cylinder: 2, sphere: 3 };

function computed(shape: Basic, biot: number, fourier: number, cells = 20, steps = 400): number {
  const depth = 0.05;
  const seconds = (fourier * depth * depth * C) / K;
  const body = new Conduction(
    plain(K, C),
    { depth, exponent: EXPONENT[shape] },
    20,
    around(100, (biot * K) / depth),
    undefined,
    cells,
  );
  for (let i = 0; i < steps; i++) body.step(seconds / steps);
  return (100 - body.coldestC) / 80;
}

describe('the middle of one dimension', () => {
  test.each(
    (['slab', 'cylinder', 'sphere'] as const).flatMap((shape) =>
      [0.5, 2, 10].flatMap((biot) => [0.2, 0.5, 1].map((fourier) => [shape, biot, fourier] as const)),
    ),
  )('%s, Bi %d, Fo %d is within 1 %% of the span of the series', (shape, biot, fourier) => {
    expect(Math.abs(computed(shape, biot, fourier) - series(shape, biot)(fourier))).toBeLessThan(0.01);
  });

  test.each([
    // Printed in tables of roots: slab 0.86033, cylinder 1.25578, ball 1.57080 at Bi 1 (Carslaw and Jaeger, from memory).
    ['slab', 0.86033],
    ['cylinder', 1.25578],
    ['sphere', 1.5708],
  ] as const)('the first root of the %s is the printed one', (shape, root) => {
    expect(roots(shape, 1, 1)[0]).toBeCloseTo(root, 4);
  });

  test.each(['slab', 'cylinder', 'sphere'] as const)(
    'half the cells or steps move the time of a %s by under 1 %%',
    (shape) => {
      const time = (cells: number, first: number) => {
        const body = new Conduction(
          plain(K, C),
          { depth: 0.05, exponent: EXPONENT[shape] },
          20,
          around(180, 20),
          undefined,
          cells,
        );
        return untilHot(body, 75, first, 1e6)?.seconds ?? Number.NaN;
      };
      const usual = time(20, 5);
      expect(Math.abs(time(40, 5) / usual - 1)).toBeLessThan(0.01);
      expect(Math.abs(time(20, 2.5) / usual - 1)).toBeLessThan(0.01);
    },
  );

  test('the approximate root is near the true one', () => {
    for (const shape of ['slab', 'cylinder', 'sphere'] as const)
      for (const biot of [0.1, 0.5, 1, 5, 20]) {
        const near = Math.sqrt(rootSquared(EXPONENT[shape], biot));
        expect(Math.abs(near / (roots(shape, biot, 1)[0] ?? 0) - 1)).toBeLessThan(0.07);
      }
  });
});

describe('bricks, discs and short cylinders', () => {
  const brick = (...sizes: number[]): readonly Extent[] => sizes.map((cm) => ({ half: cm / 200, round: false }));
  const round = (across: number, high: number): readonly Extent[] => [
    { half: across / 200, round: true },
    { half: high / 200, round: false },
  ];
  const bodies: readonly (readonly [string, readonly Extent[]])[] = [
    ['cube 6 cm', brick(6, 6, 6)],
    ['brick 6 × 9 × 12 cm', brick(6, 9, 12)],
    ['cylinder 8 × 8 cm', round(8, 8)],
    ['disc 20 × 4 cm', round(20, 4)],
    ['loaf 11 × 11 × 22 cm', brick(11, 11, 22)],
  ];
  // Halfway the bodies of one dimension are worst; foods are taken out later.
  test.each(
    bodies.flatMap(([name, extents]) =>
      [10, 25, 100].flatMap((h) => [0.2, 0.05].map((left) => [name, extents, h, left] as const)),
    ),
  )('%s: %#', (_, extents, h, left) => {
    const solutions = extents.map(({ half, round: isRound }) => {
      const theta = series(isRound ? 'cylinder' : 'slab', (h * half) / K);
      return (seconds: number) => theta((seconds * K) / C / half ** 2);
    });
    const product = bisect((t) => solutions.reduce((all, each) => all * each(t), 1) - left, 60, 1e6);
    const shape = oneDimension(extents, h / K);
    const body = new Conduction(plain(K, C), shape, 20, around(120, h));
    const time = (untilHot(body, 120 - 100 * left, 5, 1e6)?.seconds ?? Number.NaN) * shape.longer;
    expect(Math.abs(time / product - 1)).toBeLessThan(0.1);
  });

  test('a flat pan with sides is quicker, and the wider the less', () => {
    const share = (cm: number) => sidesShare(0.04, [{ half: cm / 200, round: true }], 30);
    expect(share(16)).toBeLessThan(share(24));
    expect(share(24)).toBeLessThan(share(36));
    expect(share(36)).toBeLessThan(1);
  });
});

describe('water that freezes and boils', () => {
  // Lean beef, ASHRAE Handbook, Refrigeration, by Choi and Okos with Schwartzberg's ice; enthalpies above -40 °C, kJ/kg.
  const beef = materialOf({ makeup: { water: 0.745, protein: 0.21, fat: 0.03, carbohydrate: 0, ash: 0.015 } });
  test.each([
    [-30, 22.9],
    [-20, 48.2],
    [-10, 81.7],
    [-5, 115.6],
    [-2, 189.7],
    [0, 306.7],
    [10, 342.8],
  ])('at %d °C lean beef holds %d kJ/kg', (celsius, held) => {
    const heat = (at(beef.enthalpy, celsius) - at(beef.enthalpy, -40)) / beef.density / 1000;
    expect(Math.abs(heat / held - 1)).toBeLessThan(0.01);
  });

  // Plank's and Pham's formulas bracket these; a fine grid gave the figures (hours).
  test.each([
    ['slab of 25 mm', 0.0125, 1, 10, -18, 4, -10, 6.1],
    ['slab of 25 mm, blown', 0.0125, 1, 30, -30, 10, -10, 1.3],
    ['slab of 100 mm', 0.05, 1, 20, -25, 5, -15, 11.85],
    ['ball of 60 mm', 0.03, 3, 10, -18, 20, -10, 5.68],
    ['cylinder of 80 mm', 0.04, 2, 8, -18, 5, -10, 12.89],
  ])('%s freezes in time', (_, depth, exponent, h, airC, fromC, toC, hours) => {
    const body = new Conduction(beef, { depth, exponent }, fromC, around(airC, h));
    expect(Math.abs((untilCold(body, toC, 10, 1e6)?.seconds ?? 0) / 3600 / hours - 1)).toBeLessThan(0.02);
  });

  test('wet food does not pass 101 °C, and a dry rim does', () => {
    const dough = materialOf({ makeup: { water: 0.43, protein: 0.08, fat: 0.03, carbohydrate: 0.445, ash: 0.015 } });
    const body = new Conduction(dough, { depth: 0.03, exponent: 1 }, 25, around(220, 40));
    while (body.seconds < 9000) body.step(10);
    expect(body.coldestC).toBeGreaterThan(95);
    expect(body.coldestC).toBeLessThan(101);
    expect(body.cells.at(-1)).toBeGreaterThan(105);
  });

  test('no heat is lost or made', () => {
    for (const [airC, h, from] of [
      [-25, 30, 15],
      [220, 40, 20],
    ] as const) {
      const food = materialOf({ makeup: { water: 0.6, protein: 0.15, fat: 0.1, carbohydrate: 0.13, ash: 0.02 } });
      const shape = { depth: 0.04, exponent: 1 };
      const body = new Conduction(food, shape, from, around(airC, h), around(airC, 5));
      while (body.seconds < 10_800) body.step(20);
      const held = body.cells.reduce((sum, celsius) => sum + at(food.enthalpy, celsius) * (shape.depth / 20), 0);
      const gained = held - at(food.enthalpy, from) * shape.depth;
      expect(Math.abs(gained / body.taken - 1)).toBeLessThan(1e-6);
    }
  });
});
