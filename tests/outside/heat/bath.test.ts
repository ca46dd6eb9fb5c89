/** Bags in a circulated bath, eggs in boiling water and cups in a bath, against published times. */
import { describe, expect, test } from 'vitest';
import { Conduction } from '../../../server/src/heat/conduct.ts';
import { materialOf } from '../../../server/src/heat/material.ts';
import { untilHot } from '../../../server/src/heat/until.ts';

const BEEF = materialOf({ makeup: { water: 0.74, protein: 0.22, fat: 0.03, carbohydrate: 0, ash: 0.01 } });

/** Minutes until the middle is within half a degree of the bath. */
function inBath(mm: number, exponent: number, h: number): number {
  const bathC = 57;
  const body = new Conduction(BEEF, { depth: mm / 2000, exponent }, 5, { ambientC: () => bathC, h });
  return (untilHot(body, bathC - 0.5, 5, 1e5)?.seconds ?? Number.NaN) / 60;
}

// Baldwin 2012, Sous vide cooking: a review, Int. J. Gastronomy and Food Science 1:15 (table from memory); he took 95 to 155 W/(m² K).
describe('a bag in a bath at 57 °C, from 5 °C', () => {
  test.each([
    ['flat', 25, 1, 64, 86],
    ['flat', 40, 1, 128, 172],
    ['long and round', 20, 2, 24, 36],
    ['long and round', 30, 2, 40, 60],
    ['long and round', 50, 2, 96, 144],
  ])('%s, %d mm', (_, mm, exponent, low, high) => {
    const [slow, quick] = [inBath(mm, exponent, 95), inBath(mm, exponent, 155)];
    expect(quick).toBeLessThan(high);
    expect(slow).toBeGreaterThan(low);
  });
});

// Williams, in New Scientist, 4 April 1998: t = 0.451 M^(2/3) ln(0.76 (Tw - T0)/(Tw - Ty)) min, to 63 °C at the edge of the yolk.
describe('an egg in its shell from 4 °C, in boiling water', () => {
  const egg = materialOf({ makeup: { water: 0.76, protein: 0.125, fat: 0.095, carbohydrate: 0.01, ash: 0.01 } });
  test.each([57, 47])('of %d g, within a quarter of the formula', (grams) => {
    const formula = 0.451 * grams ** (2 / 3) * Math.log((0.76 * (100 - 4)) / (100 - 63));
    const radius = ((3 * grams) / 1e3 / 1035 / 4 / Math.PI) ** (1 / 3);
    const body = new Conduction(egg, { depth: radius, exponent: 3 }, 4, { ambientC: () => 100, h: 1500 });
    // The yolk takes a third of the volume: its edge is at 0.69 of the radius.
    const edge = Math.floor(0.69 * body.cells.length);
    while ((body.cells[edge] ?? 0) < 63) body.step(1);
    expect(Math.abs(body.seconds / 60 / formula - 1)).toBeLessThan(0.25);
  });
});
