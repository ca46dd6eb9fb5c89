import { describe, expect, it } from 'vitest';
import { mendLinks } from '../../server/src/editor/moved-files.ts';
import { workspaceSymbols } from '../../server/src/editor/workspace-symbols.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { kitchenOf } from '../support/kitchen.ts';

const PASTE = `part sweet paste as sweet paste
  200 g     plain flour
  100 g     butter
  80 g      icing sugar
  do Rub the butter into the flour and sugar.
`;
const TART = `recipe Plum tart
  yield   8 slices

part case from paste.quern : sweet paste

part fruit
  500 g     plums
  do Lay the plums in the case.

trial 2026-10-10 by Ruth
  verdict keep
`;
const LATE = `recipe Late plum tart
  from    tart.quern
  swap plums for 450 g damsons

part case
  90 g      butter

part fruit
  do Lay the damsons in the case.
`;
const FOODS = 'food quay flour\n  like    plain flour\n\nfood dock flour\n  like    quay flour\n';
const BREAD = 'recipe Bread\n  500 g     quay flour\n  300 g     water\n  do Mix the quay flour with the water.\n';
const ROLLS = 'recipe Rolls\n  from    bread.quern\n  swap water for 310 g water\n  add 5 g quay flour\n';

const ALL = {
  'paste.quern': PASTE,
  'tart.quern': TART,
  'late.quern': LATE,
  'foods.quern': FOODS,
  'bread.quern': BREAD,
  'rolls.quern': ROLLS,
};
/** The kitchen with the caret after some words of one file. */
const at = (file: keyof typeof ALL, words: string) => {
  expect(ALL[file]).toContain(words);
  return kitchenOf({ ...ALL, [file]: ALL[file].replace(words, `${words}$0`) });
};

describe('definition', () => {
  it.each([
    ['tart.quern', 'from pas', 'paste.quern:1:'],
    ['tart.quern', ': sweet pas', 'paste.quern:1:sweet paste'],
    ['tart.quern', 'part ca', 'paste.quern:1:sweet paste'],
    ['tart.quern', 'in the ca', 'tart.quern:4:case'],
    ['late.quern', 'from    ta', 'tart.quern:1:Plum tart'],
    ['late.quern', 'swap plu', 'tart.quern:7:plums'],
    ['late.quern', 'Lay the dam', 'late.quern:3:damsons'],
    ['bread.quern', '500 g     quay', 'foods.quern:1:quay flour'],
    ['rolls.quern', 'add 5 g quay', 'foods.quern:1:quay flour'],
    ['foods.quern', 'like    quay', 'foods.quern:1:quay flour'],
  ] as const)('in %s after %j is %s', (file, words, expected) => {
    expect(at(file, words).definition()).toBe(expected);
  });

  it('of a word in a variant that its base lists is the line of the base', () => {
    const kitchen = kitchenOf({
      'bread.quern': BREAD,
      'rolls.quern': 'recipe Rolls\n  from    bread.quern\n  do Mix the quay flour with the wat$0er.\n',
    });
    expect(kitchen.definition()).toBe('bread.quern:3:water');
  });
});

describe('completion', () => {
  const typed = (text: string) =>
    kitchenOf({ ...ALL, 'new.quern': text, 'north/rye.quern': 'recipe Rye\n  1 kg      rye\n' });

  it('after `from` offers the recipes, those near first', () => {
    expect(typed('recipe X\n  from    $0').offered()).toEqual([
      'bread.quern | Bread',
      'late.quern | Late plum tart',
      'rolls.quern | Rolls',
      'tart.quern | Plum tart',
      'north/rye.quern | Rye',
    ]);
    expect(typed('recipe X\n  from    no$0').completed('north/rye.quern')).toBe('  from    north/rye.quern');
  });

  it('after `part … from` offers what has parts, then its parts', () => {
    expect(typed('recipe X\npart case from pas$0').offered()).toEqual(['paste.quern | sweet paste']);
    expect(typed('recipe X\npart case from paste.quern $0').completed('sweet paste')).toBe(
      'part case from paste.quern : sweet paste',
    );
    expect(typed('recipe X\npart case from tart.quern : fr$0').offered()).toEqual(['case', 'fruit']);
    expect(typed('recipe X\npart case from tart.quern :$0').completed('fruit')).toBe(
      'part case from tart.quern : fruit',
    );
    expect(typed('recipe X\npart case from none.quern : $0').offered()).toEqual([]);
  });

  it('after `swap` and `drop` offers what the base lists', () => {
    const head = 'recipe X\n  from    bread.quern\n';
    expect(typed(`${head}  drop $0`).offered()).toEqual([
      'quay flour | 500 g in bread.quern',
      'water | 300 g in bread.quern',
    ]);
    expect(typed(`${head}  swap qu$0`).completed('quay flour')).toBe('  swap quay flour for ');
    expect(typed(`${head}  swap wat$0 for 300 g milk`).completed('water')).toBe('  swap water for 300 g milk');
    expect(typed(`${head}  swap water $0`).completed('for')).toBe('  swap water for ');
    expect(typed(`${head}  swap water for 300 g whole m$0`).completed('whole milk')).toBe(
      '  swap water for 300 g whole milk',
    );
    expect(typed('recipe X\n  from    tart.quern\npart fruit\n  drop $0').offered()).toEqual([
      'plums | 500 g in tart.quern',
    ]);
  });

  it('in a step of a variant offers what its base lists, and its first words are those that change it', () => {
    const head = 'recipe X\n  from    bread.quern\n';
    expect(typed(`${head}  do Mix the $0`).offered()).toEqual([
      'quay flour | 500 g, not used yet',
      'water | 300 g, not used yet',
    ]);
    expect(
      typed(`${head}  $0`)
        .offered()
        .slice(0, 3)
        .map((o) => o.split(' ')[0]),
    ).toEqual(['swap', 'drop', 'add']);
  });
});

describe('references', () => {
  it("of a recipe's name are those who build on it", () => {
    expect(at('tart.quern', 'recipe Plum').references()).toEqual(['tart.quern:1:Plum tart', 'late.quern:2:tart.quern']);
  });

  it('of a part are the files that take it', () => {
    expect(at('paste.quern', 'part sweet pas').references()).toEqual([
      'paste.quern:1:sweet paste',
      'tart.quern:4:paste.quern',
    ]);
  });

  it('of a line of a base are what its variants swap, drop and say of it, whichever of them is asked', () => {
    const files = {
      'bread.quern': BREAD,
      'rolls.quern': ROLLS,
      'seed.quern':
        'recipe Seed\n  from    bread.quern\n  add 20 g poppy seeds\n  do Mix the quay flour and the seeds with the water.\n',
      'buns.quern': 'recipe Buns\n  from    seed.quern\n  drop water\n  add 200 g whole milk\n  do Mix all.\n',
    };
    const all = [
      'bread.quern:3:water',
      'bread.quern:4:water',
      'rolls.quern:3:water',
      'seed.quern:4:water',
      'buns.quern:3:water',
    ];
    const ask = (file: keyof typeof files, words: string) =>
      kitchenOf({ ...files, [file]: files[file].replace(words, `${words}$0`) }).references();
    expect(ask('bread.quern', '300 g     wat').sort()).toEqual([...all].sort());
    expect(ask('rolls.quern', 'swap wat').sort()).toEqual([...all].sort());
    expect(ask('seed.quern', 'with the wat').sort()).toEqual([...all].sort());
  });

  it('of a food of the house are the lines that list it and what is like it', () => {
    expect(at('foods.quern', 'food quay').references(false)).toEqual([
      'foods.quern:5:quay flour',
      'bread.quern:2:quay flour',
      'rolls.quern:4:quay flour',
    ]);
  });
});

describe('rename', () => {
  it('of a part is followed by the files that take it', () => {
    const after = at('paste.quern', 'part sweet pas').renamed('tart paste');
    expect(Object.keys(after)).toEqual(['paste.quern', 'tart.quern']);
    expect(after).toMatchObject({
      'paste.quern': PASTE.replace('part sweet paste', 'part tart paste'),
      'tart.quern': TART.replace(': sweet paste', ': tart paste'),
    });
  });

  it('of a part is followed by variants: their own lines over it and what their steps say', () => {
    const after = at('tart.quern', 'part ca').renamed('shell');
    expect(after).toEqual({
      'tart.quern': TART.replace('part case', 'part shell').replace('in the case', 'in the shell'),
      'late.quern': LATE.replace('part case', 'part shell').replace('in the case', 'in the shell'),
    });
  });

  it('where the file was taken without saying which part, it is said from then on', () => {
    const after = kitchenOf({
      'paste.quern': PASTE.replace('part sweet', 'part sw$0eet'),
      'tart.quern': 'recipe Tart\npart sweet paste from paste.quern\n',
    }).renamed('tart paste');
    expect(after).toMatchObject({ 'tart.quern': 'recipe Tart\npart sweet paste from paste.quern : tart paste\n' });
  });

  it('of what a base lists can be asked for in the variant', () => {
    const after = at('late.quern', 'swap plu').renamed('greengages');
    expect(after).toEqual({
      'tart.quern': TART.replaceAll('plums', 'greengages'),
      'late.quern': LATE.replace('swap plums', 'swap greengages'),
    });
  });

  it('of a food of the house reaches lists, sentences, variants and other foods', () => {
    const after = at('foods.quern', 'food quay').renamed('mill flour');
    expect(after).toEqual({
      'foods.quern': FOODS.replaceAll('quay', 'mill'),
      'bread.quern': BREAD.replaceAll('quay', 'mill'),
      'rolls.quern': ROLLS.replace('quay', 'mill'),
    });
  });

  it('changes no file where one of them could not follow', () => {
    const clash = LATE.replace('part case\n', 'part tin\n  10 g      butter\n  do Butter it.\n\npart case\n');
    const kitchen = kitchenOf({ ...ALL, 'tart.quern': TART.replace('part case', 'part ca$0se'), 'late.quern': clash });
    expect(kitchen.renamed('tin')).toBe('In late.quern: Another part is called tin.');
    expect(at('foods.quern', 'food quay').renamed('flour, fine')).toMatch(/cannot be read/);
    expect(at('foods.quern', 'food quay').renamed('dock flour')).toBe('The house already has dock flour.');
  });
});

describe('moved files', () => {
  const moved = (moves: { from: string; to: string }[]) => {
    const { kitchen } = at('tart.quern', 'recipe');
    return Object.fromEntries(
      [...mendLinks(moves, kitchen.index)].map(([path, edits]) => {
        const file = kitchen.snapshotAt(path);
        return [path, file && printDocument(applyEdits(file.document, edits))];
      }),
    );
  };

  it('take the lines of their users along', () => {
    expect(moved([{ from: '/k/paste.quern', to: '/k/pastry/short.quern' }])).toEqual({
      '/k/tart.quern': TART.replace('paste.quern', 'pastry/short.quern'),
    });
  });

  it('have their own lines led back', () => {
    expect(moved([{ from: '/k/tart.quern', to: '/k/tarts/plum.quern' }])).toEqual({
      '/k/tart.quern': TART.replace('paste.quern', '../paste.quern'),
      '/k/late.quern': LATE.replace('tart.quern', 'tarts/plum.quern'),
    });
  });

  it('that move together keep what they say of each other', () => {
    expect(
      moved([
        { from: '/k/tart.quern', to: '/k/t/tart.quern' },
        { from: '/k/late.quern', to: '/k/t/late.quern' },
      ]),
    ).toEqual({ '/k/tart.quern': TART.replace('paste.quern', '../paste.quern') });
    expect(moved([{ from: '/k', to: '/elsewhere' }])).toEqual({});
  });
});

describe('symbols of the folders', () => {
  const found = (query: string) =>
    workspaceSymbols(at('tart.quern', 'recipe').kitchen.index, query).map((s) => `${s.kind} ${s.name}`);

  it('are found by their start, by a word, by letters, best first', () => {
    expect(found('plum')).toEqual(['recipe Plum tart', 'recipe Late plum tart']);
    expect(found('flour')).toEqual(['food dock flour', 'food quay flour']);
    expect(found('swp')).toEqual(['part sweet paste']);
    expect(found('trial 2026')).toEqual(['trial trial 2026-10-10']);
    expect(found('zzz')).toEqual([]);
  });
});
