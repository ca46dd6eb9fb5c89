/**
 * Lines made by the grammar of printed ones read as the plain lines of the notation that weigh the same.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FORMS, type GeneratedLine } from './generated-lines.ts';
import { openText, recipeOf, sumOf } from './score.ts';

/** Forms that the reader does not know yet; `QUERN_ALL_FORMS=1` tries them all. */
const NOT_YET: ReadonlySet<string> = new Set([
  'numbers in figures',
  'numbers in words',
  'no blank before the unit',
  'of before the food',
  'tails',
  'a sum of volumes',
  'a sum of weights',
  'a weight beside',
  'packages',
  'ranges',
]);

interface Read {
  readonly foods: string;
  readonly grams: number;
}

function read(lines: readonly string[]): readonly Read[] {
  return lines.map((line) => {
    const { recipe } = openText(recipeOf(line), 'us');
    const ingredients = recipe.parts.flatMap((part) => part.head.ingredients);
    return {
      foods: ingredients.map(({ food }) => food?.id ?? 'not known').join(' + '),
      grams: sumOf(ingredients)?.likely ?? Number.NaN,
    };
  });
}

function agree({ printed, plain }: GeneratedLine): void {
  const [one] = read([printed]);
  const together = read(plain);
  const grams = together.reduce((sum, r) => sum + r.grams, 0);
  expect(one?.foods, printed).toBe(together[0]?.foods);
  expect(Math.abs((one?.grams ?? Number.NaN) - grams) / grams, `${printed}: ${one?.grams} g of ${grams}`).toBeLessThan(
    0.002,
  );
}

for (const [form, lines] of Object.entries(FORMS))
  test.skipIf(NOT_YET.has(form) && process.env.QUERN_ALL_FORMS === undefined)(
    `${form}: printed, read, the same grams`,
    () => {
      fc.assert(fc.property(lines, agree), { numRuns: 150 });
    },
  );
