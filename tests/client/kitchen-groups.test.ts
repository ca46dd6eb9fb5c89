import { describe, expect, it } from 'vitest';
import { groupsOf } from '../../client/src/kitchen/groups.ts';
import type { KitchenRecipe } from '../../server/src/lsp/messages.ts';

const recipe = (name: string, of: Partial<KitchenRecipe> = {}): KitchenRecipe => ({
  uri: `file:///k/${name}.quern`,
  name,
  line: 0,
  tags: [],
  state: 'never cooked',
  trials: 0,
  latest: null,
  uses: [],
  ...of,
});
const folderOf = (uri: string): string => /^file:\/\/\/k\/(.*)\/[^/]*$/.exec(uri)?.[1] ?? '';
const groups = (recipes: readonly KitchenRecipe[], by: Parameters<typeof groupsOf>[1]) =>
  groupsOf(recipes, by, folderOf).map(({ label, of, recipes: held }) => [
    of === undefined ? label : `${label} of ${of}`,
    held.map(({ name }) => name).join(' '),
  ]);

const tart = recipe('tart', {
  tags: ['Dessert', 'dessert', 'sunday'],
  state: 'cooked as written',
  uses: [{ uri: 'file:///k/paste.quern', part: 'sweet paste', of: 'Sweet paste' }],
});
const slice = recipe('slice', {
  uri: 'file:///k/bakes/slice.quern',
  tags: ['dessert'],
  uses: [
    { uri: 'file:///k/paste.quern', part: 'sweet paste', of: 'Sweet paste' },
    { uri: 'file:///k/paste.quern', part: 'sweet paste', of: 'Sweet paste' },
    { uri: 'file:///k/tart.quern', part: null, of: 'tart' },
  ],
});
const stock = recipe('stock', { state: 'cooked, changed since' });

describe('recipes in groups', () => {
  it('by how they were cooked: what is proved first, and no empty group', () => {
    expect(groups([slice, stock, tart], 'state')).toEqual([
      ['Cooked as written', 'tart'],
      ['Cooked, changed since', 'stock'],
      ['Never cooked', 'slice'],
    ]);
    expect(groups([slice], 'state')).toEqual([['Never cooked', 'slice']]);
  });

  it('by tag, however it is written, each once in each', () => {
    expect(groups([slice, stock, tart], 'tag')).toEqual([
      ['dessert', 'slice tart'],
      ['sunday', 'tart'],
      ['Without a tag', 'stock'],
    ]);
  });

  it('by what they are made with', () => {
    expect(groups([slice, stock, tart], 'part')).toEqual([
      ['sweet paste of Sweet paste', 'slice tart'],
      ['tart', 'slice'],
      ['Built on no other', 'stock'],
    ]);
  });

  it('by folder', () => {
    expect(groups([slice, tart], 'folder')).toEqual([
      ['bakes', 'slice'],
      ['In no folder of its own', 'tart'],
    ]);
    expect(groups([], 'folder')).toEqual([]);
  });

  it('keep their keys apart where labels are the same', () => {
    const other = recipe('pie', { uses: [{ uri: 'file:///k/other.quern', part: 'sweet paste', of: 'Other' }] });
    const keys = groupsOf([tart, other], 'part', folderOf).map(({ key }) => key);
    expect(new Set(keys).size).toBe(2);
  });
});
