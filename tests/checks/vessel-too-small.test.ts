import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const SOUP = '  1 kg      leeks, sliced\n  500 g     potatoes, diced\n  2 l       water\n  8 g       salt\n';
const DOUGH = '  1 kg      bread flour\n  650 g     water\n  18 g      fine salt\n  8 g       instant yeast\n';
const FRIED = '  800 g     cod, in pieces\n  2 l       sunflower oil\n  5 g       salt\n';

const found = (list: string, steps: readonly string[]): boolean =>
  open(`recipe Dish\n${list}${steps.map((step) => `  do ${step}\n`).join('')}`).findings.open.some(
    ({ code }) => code === 'vessel-too-small',
  );

describe('what goes into a vessel of a size that is said', () => {
  test.each<[list: string, steps: readonly string[]]>([
    [SOUP, ['Put the leeks and potatoes in a 2 l pan, cover with the water, add the salt and simmer for 30 min.']],
    [DOUGH, ['Knead the flour, water, salt and yeast in a 1-litre bowl for 10 min.', 'Prove for 1 h.']],
    [DOUGH, ['Knead the flour, water, salt and yeast for 10 min.', 'Put in a 1 litre bowl and prove for 1 h.']],
    [
      FRIED,
      ['Heat the oil to 180 C in a 2-quart pot.', 'Fry the cod in the oil in four batches for 5 min, and salt it.'],
    ],
  ])('does not fit: %s %s', (list, steps) => {
    expect(found(list, steps)).toBe(true);
  });

  test.each<[list: string, steps: readonly string[]]>([
    [SOUP, ['Put the leeks and potatoes in a 5 l pan, cover with the water, add the salt and simmer for 30 min.']],
    // What was boiled down, lifted out or shared is less.
    [SOUP, ['Simmer the leeks and potatoes in the water with the salt for 60 min.', 'Strain into a 1 l jug.']],
    [DOUGH, ['Knead the flour, water, salt and yeast for 10 min.', 'Divide in two and put each in a 1 l bowl.']],
    [
      DOUGH,
      ['Stir the yeast with 60 ml of the water in a bowl.', 'Knead in the flour, the rest of the water and the salt.'],
    ],
    [FRIED, ['Heat the oil to 180 C in a 5 l pot.', 'Fry the cod in the oil in four batches for 5 min, and salt it.']],
    [SOUP, ['Cook the leeks, potatoes, salt and water in two 1 l pans for 30 min.']],
  ])('fits: %s %s', (list, steps) => {
    expect(found(list, steps)).toBe(false);
  });
});
