import { describe, expect, test } from 'vitest';
import type { Food } from '../../server/src/food/food.ts';
import { Houses } from '../../server/src/workspace/houses.ts';
import type { Files } from '../../server/src/workspace/ports.ts';

function over(texts: Readonly<Record<string, string>>, read: (path: string) => void = () => undefined): Houses {
  const files: Files = {
    read: (path) => {
      read(path);
      return texts[path];
    },
    recipesBelow: (folder) =>
      Object.keys(texts).filter((path) => path.startsWith(`${folder}/`) && path.endsWith('.quern')),
    houseAbove: (path) => {
      const folders = path.split('/').map((_, n, all) => all.slice(0, all.length - n).join('/'));
      return folders.find((folder) => `${folder}/quern.json` in texts);
    },
    join: (folder, name) => `${folder}/${name}`,
    beside: (path, name) => new URL(name, `file://${path}`).pathname,
  };
  return new Houses(files);
}

const foodAt = (houses: Houses, path: string, name: string): Food | undefined => {
  const found = houses.of(path).house.world.book.find(name);
  return found.kind === 'food' ? found.food : undefined;
};

const KITCHEN = over({
  '/k/quern.json': '{}',
  '/k/foods.quern':
    'food butter\n  fat 84 %\n  water 14 %\n\nfood quayside flour\n  like bread flour\n  1 cup = 135 g\n',
  '/k/pastry/foods.quern':
    'food butter\n  1 tbsp = 15 g\n\nfood quayside flour\n  protein 13 %\n\nfood dock syrup\n  contains nothing\n',
  '/k/pastry/tart.quern': 'recipe Tart\n',
  '/k/soup.quern': 'recipe Soup\n',
  '/k/abroad/quern.json': '{ "measures": "metric" }',
  '/k/abroad/foods.quern': 'food pier salt\n  like salt\n',
  '/k/abroad/stew.quern': 'recipe Stew\n',
});

describe('the foods of nested folders', () => {
  test('stay in their folder', () => {
    expect(foodAt(KITCHEN, '/k/pastry/tart.quern', 'dock syrup')?.house).toBe(true);
    expect(foodAt(KITCHEN, '/k/soup.quern', 'dock syrup')).toBeUndefined();
    expect(foodAt(KITCHEN, '/k/soup.quern', 'pier salt')?.house).toBeUndefined();
    expect(foodAt(KITCHEN, '/k/abroad/stew.quern', 'pier salt')?.like).toBe('table-salt');
    expect(foodAt(KITCHEN, '/k/abroad/stew.quern', 'quayside flour')?.house).toBeUndefined();
  });

  test('go before those of the house, field by field, and those before the book', () => {
    const near = foodAt(KITCHEN, '/k/pastry/tart.quern', 'butter');
    expect(near?.per100).toMatchObject({ fat: 84, water: 14 });
    expect(near?.measures[0]).toMatchObject({ unit: 'tbsp', grams: { low: 15, high: 15 } });
    expect(near?.allergens.eu).toEqual(['milk']);
    const flour = foodAt(KITCHEN, '/k/pastry/tart.quern', 'quayside flour');
    expect(flour?.per100.protein).toBe(13);
    expect(flour?.measures[0]).toMatchObject({ unit: 'cup', grams: { low: 135, high: 135 } });
    expect(foodAt(KITCHEN, '/k/soup.quern', 'quayside flour')?.per100.protein).not.toBe(13);
  });

  test('one house is read for all that it holds alike, and a change is seen', () => {
    const texts: Record<string, string> = {
      '/k/quern.json': '{}',
      '/k/a/foods.quern': 'food dock syrup\n  water 20 %\n',
      '/k/a/one.quern': 'recipe One\n',
    };
    const houses = over(texts);
    const before = houses.of('/k/a/one.quern');
    expect(houses.of('/k/a/two.quern')).toBe(before);
    expect(houses.of('/k/b/two.quern')).not.toBe(before);
    texts['/k/a/foods.quern'] = 'food dock syrup\n  water 25 %\n';
    houses.forget('/k/a/foods.quern');
    expect(foodAt(houses, '/k/a/one.quern', 'dock syrup')?.per100.water).toBe(25);
    expect(houses.foodFiles('/k/b/two.quern')).toEqual([]);
    expect(houses.foodFiles('/k/a/one.quern')).toEqual(['/k/a/foods.quern']);
  });
});

describe('the foods of other files', () => {
  const texts: Record<string, string> = {
    '/k/quern.json': '{ "foods": ["pantry/dairy.quern", "../outside.quern", "gone.quern"] }',
    '/k/pantry/dairy.quern': 'food quay cream\n  like double cream\n',
    '/k/deep/tart.quern': 'recipe Tart\n\nfood own syrup\n  like honey\n',
    '/k/deep/other.quern': 'recipe Other\n',
    '/outside.quern': 'food spirit\n  like vodka\n',
    '/alone.quern': 'recipe Alone\n\nfood lone oats\n  like rolled oats\n',
  };

  test('hold for the house where quern.json names the file, and what cannot be taken is said', () => {
    const houses = over(texts);
    expect(foodAt(houses, '/k/deep/other.quern', 'quay cream')?.house).toBe(true);
    expect(houses.of('/k/deep/other.quern').problems).toEqual([
      '`foods` names ../outside.quern, which lies outside the house',
      '`foods` names gone.quern, which is not there',
    ]);
  });

  test('hold for their own file alone where nobody names it, also beside no house', () => {
    const houses = over(texts);
    expect(foodAt(houses, '/k/deep/tart.quern', 'own syrup')?.house).toBe(true);
    expect(houses.of('/k/deep/tart.quern').house.ownFoods).toEqual(['own syrup']);
    expect(foodAt(houses, '/k/deep/other.quern', 'own syrup')).toBeUndefined();
    expect(foodAt(houses, '/alone.quern', 'lone oats')?.house).toBe(true);
    expect(houses.of('/k/pantry/dairy.quern').house.ownFoods).toBeUndefined();
  });

  test('no recipe is read for another', () => {
    const read: string[] = [];
    const many = Object.fromEntries(Array.from({ length: 50 }, (_, i) => [`/k/r${i}.quern`, 'recipe R\n']));
    const houses = over({ ...texts, ...many }, (path) => read.push(path));
    houses.of('/k/deep/other.quern', 'recipe Other\n');
    expect(read.filter((path) => path.endsWith('.quern') && !path.endsWith('foods.quern'))).toEqual(
      expect.not.arrayContaining(['/k/r1.quern', '/k/deep/tart.quern', '/k/deep/other.quern']),
    );
  });

  test('are seen to change', () => {
    const changing = { ...texts };
    const houses = over(changing);
    expect(foodAt(houses, '/k/deep/other.quern', 'own syrup')).toBeUndefined();
    changing['/k/deep/other.quern'] = 'recipe Other\n\nfood own syrup\n  like honey\n';
    expect(houses.forget('/k/deep/other.quern')).toBe(true);
    expect(foodAt(houses, '/k/deep/other.quern', 'own syrup')?.house).toBe(true);
  });
});
