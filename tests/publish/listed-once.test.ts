/** Each food of a line stands on the page once, with its own amount, and so does what may stand for it. */
import { describe, expect, test } from 'vitest';
import { ingredientText, readerPage } from '../../server/src/publish/reader-page.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

function listed(line: string): readonly string[] {
  const { recipe, findings } = open(`recipe Trial\npart p\n  ${line}\n  do Mix.\n`);
  const page = readerPage(recipe, findings, { measures: 'measure-first', label: 'us' });
  return page.sections.flatMap((section) => section.ingredients.map(ingredientText));
}

describe('on the page', () => {
  test.each([
    ['8 oz flour, 4 oz lard', ['8 oz (227 g) flour', '4 oz (113 g) lard']],
    ['1 tsp salt, pepper', ['1 tsp (about 6 g) salt', 'pepper']],
    ['salt, sugar and nutmeg to taste', ['salt, to taste', 'sugar, to taste', 'nutmeg, to taste']],
    ['2 eggs, beaten with 1 tbsp water', ['2 eggs (about 100 g), beaten with water', '1 tbsp (about 15 g) water']],
    ['1 can peas, or 2 cups fresh peas', ['1 can peas (about 425 g), or 2 cups fresh peas']],
    ['1 large or 2 small onions', ['1 large or 2 small onions (about 150 g)']],
    ['200 ml cream, or coconut milk', ['200 ml cream, or coconut milk']],
    ['3 onions, 1 sliced, 2 whole', ['3 onions (about 330 g), 1 sliced, 2 whole']],
  ])('%s', (line, lines) => {
    expect(listed(line)).toEqual(lines);
  });
});

test('a pan that one part alone goes into is a tool too', async () => {
  const text =
    'recipe Pie\n  pan 23 cm round\n\npart base\n  pan 20 x 30 cm tray\n  100 g butter\n  do Melt the butter.\n\npart top\n  2 eggs\n  do Whisk the eggs.\n';
  const { out } = await quern(['publish', 'pie.quern', '--format', 'json-ld'], { 'pie.quern': text });
  const { tool } = JSON.parse(out);
  expect(tool.map(({ name }: { name: string }) => name)).toEqual([
    'Pan: 23 cm round (9 in)',
    'Pan: 20 × 30 cm tray (7¾ × 11¾ in)',
  ]);
});
