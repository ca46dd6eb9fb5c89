/** What steps call an ingredient by its sort. Which words are meant is common practice, no source. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import { open } from '../support/harness.ts';

/** Which lines of a list its steps use. */
function used(lines: readonly string[], step: string): readonly string[] {
  const { recipe } = open(`recipe Test\n${lines.map((line) => `  ${line}\n`).join('')}  do ${step}\n`);
  return (recipe.parts[0]?.ledger ?? []).filter((e) => e.uses.length > 0).map((e) => e.ingredient.name);
}

describe('a word for a sort', () => {
  test.each<[listed: string, said: string]>([
    ['rhubarb', 'the fruit'],
    ['apples', 'the fruit'],
    ['raisins', 'the fruit'],
    ['raisins', 'the dried fruit'],
    ['jalapeños', 'the chillies'],
    ['scotch bonnet', 'the chilli'],
    ["bird's eye chillies", 'the chilies'],
    ['rump steak', 'the beef'],
    ['rump steak', 'the meat'],
    ['minced beef', 'the beef'],
    ['minced beef', 'the meat'],
    ['chicken thighs', 'the meat'],
    ['ham hock', 'the pork'],
    ['leg of lamb', 'the joint'],
    ['turkey', 'the bird'],
    ['gruyère', 'the cheese'],
    ['walnuts', 'the nuts'],
    ['cod', 'the fish'],
    ['mussels', 'the shellfish'],
    ['prawns', 'the seafood'],
    ['squid', 'the seafood'],
    ['parsley', 'the herbs'],
    ['dried oregano', 'the herbs'],
    ['blueberries', 'the berries'],
    ['spinach', 'the greens'],
    ['rocket', 'the leaves'],
    ['brioche', 'the bread'],
    ['panko', 'the crumbs'],
    ['chicken stock', 'the broth'],
    ['beef broth', 'the stock'],
    ['oranges', 'the citrus'],
    ['port', 'the wine'],
    ['brandy', 'the spirit'],
    ['lard', 'the fat'],
    ['pumpkin seeds', 'the seeds'],
  ])('takes %s for %s', (listed, said) => {
    expect(used([`200 g ${listed}`, '50 g water'], `Add ${said}.`)).toEqual([listed]);
  });

  test.each<[listed: string, said: string]>([
    ['rhubarb', 'the berries'],
    ['cod', 'the shellfish'],
    ['bacon', 'the beef'],
    ['spinach', 'the green tops'],
    ['honey', 'the sugar'],
    ['panko', 'the bread'],
    ['stock cube', 'the broth'],
    ['pepper', 'the chillies'],
  ])('does not take %s for %s', (listed, said) => {
    expect(used([`200 g ${listed}`, '50 g water'], `Add ${said}.`)).toEqual([]);
  });

  test('gives way to a name', () => {
    expect(used(['200 g cod', '20 g fish sauce'], 'Add the fish sauce.')).toEqual(['fish sauce']);
    expect(used(['200 g sweet potatoes', '2 chillies'], 'Add the chillies.')).toEqual(['chillies']);
  });

  test('means all of its sort', () => {
    expect(used(['200 g cod', '100 g salmon', '50 g peas'], 'Poach the fish.')).toEqual(['cod', 'salmon']);
  });
});

describe('an order to season', () => {
  const LIST = ['300 g cod', '3 g fine salt', '1 g black pepper', '10 g lemon juice'];
  const BOTH = ['fine salt', 'black pepper'];
  test.each<[string, readonly string[]]>([
    ['Season.', BOTH],
    ['Season to taste.', BOTH],
    ['Season well and serve.', BOTH],
    ['Stir, then season.', BOTH],
    ['Season with the pepper.', ['black pepper']],
    ['Season lightly with the lemon juice.', ['lemon juice']],
    ['Season, then dress with the lemon juice.', [...BOTH, 'lemon juice']],
    ['Check the seasoning.', []],
  ])('%s', (step, names) => {
    expect(used(LIST, step)).toEqual(names);
  });

  test('takes the pepper of a list that does not say which', () => {
    expect(used(['3 g salt', '1 g pepper'], 'Season.')).toEqual(['salt', 'pepper']);
  });

  test('leaves open how much, so that nothing is left over or overdrawn', () => {
    const { findings } = open(
      'recipe Test\n  200 g rice\n  4 g fine salt\n  do Boil the rice with half the salt.\n  do Season.\n  do Add the rest of the salt.\n',
    );
    expect(findings.open.map((f) => f.code).filter((c) => /amount|unused/.test(c))).toEqual([]);
  });
});

test('the table names foods and classes of the book', () => {
  const foods = builtInBook().all();
  const known = new Set<string>(foods.flatMap((f) => [f.id, f.class]));
  const rows = readFileSync('server/data/sorts.tsv', 'utf8').trim().split('\n').slice(2);
  for (const row of rows) {
    const [word, classes = '', ids = '', not = '', source = ''] = row.split('\t');
    const named = [classes, ids, not].flatMap((cell) => cell.split(';')).filter((each) => each !== '');
    expect(
      named.filter((each) => !known.has(each)),
      word,
    ).toEqual([]);
    expect(source).not.toBe('');
  }
});
