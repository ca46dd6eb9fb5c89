import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeOwnForm } from '../../server/src/edits/own-form.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { open } from '../support/harness.ts';

function written(line: string): string | undefined {
  const { document, recipe } = open(`recipe Trial\n  ${line}\n  do Mix.\n`);
  const [part] = recipe.parts;
  const own = part && writeOwnForm(document, recipe, part, part.head.ingredients[0]?.line ?? 0);
  return own && printDocument(applyEdits(document, own.edits)).split('\n').slice(1, -2).join('\n');
}

const grams = (text: string): readonly (readonly [string, string])[] =>
  open(text).recipe.parts.flatMap((part) =>
    part.head.ingredients.map(({ name, weighed }) => [
      name.toLowerCase(),
      weighed.known ? `${weighed.grams.low.toFixed(3)} ${weighed.grams.high.toFixed(3)}` : 'not known',
    ]),
  );

describe('a printed line in the form of the notation', () => {
  it.each([
    ['411 g can diced tomatoes', '  1 can of 411 g  diced tomatoes'],
    ['1 (14.5-ounce) can beans  # drained', '  1 can of 14.5 oz  beans  # drained'],
    ['2 x 400 g tins beans', '  2 tins of 400 g  beans'],
    ['1 cup sugar plus 2 tbsp', '  1 cup + 2 tbsp  sugar'],
    ['1 1/4 cups (156 g) flour', '  1 1/4 cup = 156 g  flour'],
    ['225 g/8 oz sugar', '  225 g (8 oz)  sugar'],
    ['1/4 box or 1/2 ounce gelatine', '  1/4 box = 1/2 oz  gelatine'],
    ['One and one-half cups milk', '  1 1/2 cup  milk'],
    ['.5 kg flour', '  0.5 kg    flour'],
    ['2 or 3 carrots', '  2-3       carrots'],
    ['Butter, 4 oz', '  4 oz      butter'],
    ['salt and pepper', '  to taste  salt\n  to taste  pepper'],
    ['oil for frying', '  as needed  oil, for frying'],
    ['2 eggs plus 1 yolk', '  2         eggs\n  1         yolk'],
    ['1 tsp each of ginger and cloves', '  1 tsp     ginger\n  1 tsp     cloves'],
  ])('%s', (line, expected) => {
    expect(written(line)).toBe(expected);
  });

  it.each([
    '200 g plain flour, sifted (fine)',
    '2 large eggs',
    '1 T sugar',
    '100 g butter or margarine',
    'juice of 1/2 lemon (about 2 tbsp)',
    'to taste salt',
    '1 cup or 2 butter',
    'Butter the tin.',
  ])('%s is none, or has it already', (line) => {
    expect(written(line)).toBeUndefined();
  });

  it('holds the same foods and grams, and nothing more to write', () => {
    const number = fc.constantFrom('1', '2', '1/2', '2-1/2', '1½', '.5', 'one', 'half a', '2 or 3', 'a few');
    const unit = fc.constantFrom('c.', 'T', 'tablespoonfuls', 'heaping tsp.', 'lbs', 'oz.', 'g', 'pints', 'qts.');
    const amount = fc.oneof(
      fc.tuple(number, unit).map(([n, u]) => `${n} ${u}`),
      fc.tuple(number, unit, number, unit).map(([n, u, m, v]) => `${n} ${u} plus ${m} ${v}`),
      fc.tuple(number, unit, fc.integer({ min: 5, max: 900 })).map(([n, u, g]) => `${n} ${u} (${g} g)`),
      fc.integer({ min: 2, max: 30 }).map((n) => `1 ${n}-oz can`),
      fc.integer({ min: 100, max: 800 }).map((n) => `2 x ${n} g tins`),
    );
    const food = fc.constantFrom('flour', 'sugar', 'butter or margarine', 'milk', 'diced tomatoes', 'egg yolks');
    const tail = fc.constantFrom('', ', sifted', ', plus more for dusting', ' (a fine one)', ' for the top');
    fc.assert(
      fc.property(amount, food, tail, (a, f, t) => {
        const line = `${a} ${f}${t}`;
        const own = written(line);
        if (own === undefined) return;
        const text = `recipe Trial\n${own}\n  do Mix.\n`;
        expect(grams(text)).toEqual(grams(`recipe Trial\n  ${line}\n  do Mix.\n`));
        expect(own.split('\n').map((one) => written(one.trim()))).toEqual(own.split('\n').map(() => undefined));
      }),
      { numRuns: 200 },
    );
  });
});
