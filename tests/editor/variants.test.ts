import { describe, expect, it } from 'vitest';
import { codeActions } from '../../server/src/editor/code-actions.ts';
import { partToFile } from '../../server/src/editor/part-to-file.ts';
import { symbols } from '../../server/src/editor/symbols.ts';
import { writeInFull } from '../../server/src/workspace/write-in-full.ts';
import { edited, fixture } from '../support/at-cursor.ts';
import { kitchenOf } from '../support/kitchen.ts';

const SCONES = `recipe Scones as scone
  yield   10 scones

  450 g     plain flour
  50 g      caster sugar
  90 g      unsalted butter, cold
  260 g     buttermilk

  do Rub the butter into the flour and sugar.
  do Stir in the buttermilk, pat out, cut in 10 and bake at 220 C for 12-14 min until gold.
`;
const CHEESE = `recipe Cheese scones
  from    scones.quern
  yield   12 scones
  swap buttermilk for 240 g buttermilk
  drop caster sugar
  add 120 g cheddar, grated
  60 g      unsalted butter

  do Rub the butter into the flour.
  do Stir in the cheddar and the buttermilk and bake at 230 C for 12-14 min until gold.
`;
const at = (words: string, files: Record<string, string> = {}) => {
  expect(CHEESE).toContain(words);
  return kitchenOf({ 'scones.quern': SCONES, ...files, 'cheese.quern': CHEESE.replace(words, `${words}$0`) });
};

it('what a part brings is found on the line that takes it, and accepted under it', () => {
  const files = {
    'paste.quern': 'recipe Paste\n  200 g     plain flour\n  100 g     butter\n  do Rub the butter into the flour.\n',
    'glaze.quern': 'recipe Glaze\n  100 g     apricot jam\n  do Warm the jam.\n',
  };
  const tart =
    'recipe Tart$0\n  yield   8 slices\npart glaze from glaze.quern\npart case from paste.quern\n\ntrial 2026-09-14\n  tested  000\n';
  const untested = (text: string) =>
    kitchenOf({ ...files, 'tart.quern': text }).snapshot.findings.open.filter((f) => f.code === 'untested-change');
  expect(untested(tart).map((f) => f.at.line + 1)).toEqual([3, 4, 4]);
  const { snapshot } = kitchenOf({ ...files, 'tart.quern': tart });
  const place = { line: 3, character: 2 };
  const [allow] = codeActions(
    snapshot,
    { start: place, end: place },
    (kind) => kind === 'quickfix',
    (error) => {
      throw error;
    },
  ).filter((a) => a.title.startsWith('Allow untested-change'));
  const text = edited(snapshot, allow?.edits() ?? []).replace('because ', 'because it is only the case');
  expect(text).toContain('part case from paste.quern\n  allow untested-change because it is only the case\n');
  expect(untested(text.replace('recipe Tart', 'recipe Tart$0')).map((f) => f.at.line + 1)).toEqual([3]);
});

it('a variant is not offered at another size: its amounts lie in its base', () => {
  const { snapshot } = fixture(CHEESE);
  const all = { start: { line: 0, character: 0 }, end: { line: 3, character: 0 } };
  const titles = codeActions(
    snapshot,
    all,
    () => true,
    (error) => {
      throw error;
    },
  ).map((a) => a.title);
  expect(titles.length).toBeGreaterThan(0);
  expect(titles.filter((title) => title.startsWith('Scale the recipe'))).toEqual([]);
});

describe('hover in a variant', () => {
  it('over its base says what it inherits and what it changes', () => {
    const said = at('from    sco').hover();
    expect(said).toMatch(/^scones\.quern · Scones$/m);
    expect(said).toMatch(/^Inherits: 4 ingredients$/m);
    expect(said).toMatch(/^Goes in: 850 g$/m);
    expect(said).toMatch(/^This recipe: swaps 1, drops 1 and adds 1$/m);
  });

  it.each([
    ['60 g      unsal', /^In the base: 90 g unsalted butter, cold \(line 6 of scones\.quern\)$/m],
    ['for 240 g butter', /^In the base: 260 g buttermilk \(line 7 of scones\.quern\)$/m],
    ['swap butter', /^260 g buttermilk.*\nListed: line 7 of scones\.quern$/m],
    ['recipe Cheese', /^Goes in: 870 g$/m],
    ['drop caster', /^50 g caster sugar.*\nListed: line 5 of scones\.quern$/m],
    ['yield   1', /^In the base: yield 10 scones \(line 2 of scones\.quern\)$/m],
  ])('after %j shows both', (words, expected) => {
    expect(at(words).hover()).toMatch(expected);
  });

  it('over the first line of the list, which a swap wrote', () => {
    const first = CHEESE.replace('swap buttermilk for 240 g buttermilk', 'swap plain flour for 440 g plain fl$0our');
    const said = kitchenOf({ 'scones.quern': SCONES, 'cheese.quern': first }).hover();
    expect(said).toMatch(/^In the base: 450 g plain flour \(line 4 of scones\.quern\)$/m);
  });

  it('over an ingredient that only the base lists names its line there', () => {
    expect(at('into the flo').hover()).toMatch(/^Listed: plain flour, line 4 of scones\.quern$/m);
    expect(at('into the flo').hover()).toMatch(/^Weight: 450 g$/m);
  });

  it('over the keyword of a step of its own shows the step it was written over', () => {
    const said = at('  do').hover();
    expect(said).toMatch(/In the base: Rub the butter into the flour and sugar\. \(line 9 of scones\.quern\)/);
  });

  it('over a part of another file gives its weight and kind', () => {
    const files = { 'tart.quern': 'recipe Tart\npart case from paste.quern : past$0e\n' };
    const paste = 'part paste as shortcrust\n  200 g     plain flour\n  100 g     butter\n';
    const said = kitchenOf({ 'paste.quern': paste, ...files }).hover();
    expect(said).toMatch(/^paste · from paste\.quern$/m);
    expect(said).toMatch(/^Weight: 300 g$/m);
    expect(said).toMatch(/^Written: line 1 of paste\.quern$/m);
  });

  it('where the base is missing speaks of the file alone', () => {
    const alone = kitchenOf({ 'cheese.quern': CHEESE.replace('60 g      unsal', '60 g      unsal$0') });
    expect(alone.hover()).toMatch(/^Weight: 60 g$/m);
    expect(alone.hover()).not.toMatch(/In the base/);
  });
});

describe('the outline of a variant', () => {
  it('speaks of the recipe as it is cooked', () => {
    const { snapshot } = kitchenOf({
      'tart.quern':
        'recipe Tart\n  yield   8 slices\npart case as shortcrust\n  200 g     plain flour\n  100 g     butter\npart fruit\n  500 g     plums\n',
      'late.quern':
        'recipe Late tart$0\n  from    tart.quern\n  swap plums for 450 g damsons\npart case\n  120 g     butter\n',
    });
    const [root] = symbols(snapshot);
    expect(root?.detail).toBe('8 slices');
    expect(root?.children.map((n) => `${n.from + 1} ${n.kind} ${n.name}: ${n.detail}`)).toEqual([
      '2 part fruit: 450 g, from tart.quern',
      '3 ingredient damsons: 450 g',
      '4 part case: shortcrust, 320 g',
    ]);
  });
});

describe('writing a variant out in full', () => {
  it('is not refused where a kept step still names what was dropped', () => {
    const plain = 'recipe Plain scones$0\n  from    scones.quern\n  drop caster sugar\n';
    const { snapshot } = kitchenOf({ 'scones.quern': SCONES, 'plain.quern': plain });
    expect(snapshot.findings.open.map((f) => f.said.message)).toEqual([
      'It is dropped here, and a step of the base still says `sugar`: write the steps of that part anew.',
    ]);
    expect(edited(snapshot, writeInFull(snapshot) ?? [])).toMatch(/260 g {5}buttermilk/);
  });

  it('keeps what the writer remarked and what the recipe weighs', () => {
    const marked = `# Savoury.
recipe Cheese scones
  from    scones.quern  # the plain ones
  yield   12 scones
  swap plain flour for 440 g plain flour  # the cheese is floury
  swap buttermilk for 240 g buttermilk  # cheese is wet
  drop caster sugar  # no sweetness
  # Strong, or it is lost.
  add 120 g cheddar, grated
  60 g      unsalted butter
  # By hand.
  do Rub the butter into the flour.
  do Stir in the cheddar and the buttermilk and bake at 230 C for 12-14 min until gold.
  # Eat warm.

trial 2026-10-01 by Ines  # in the new oven
  verdict keep

food harbour cheddar  # ours
  like    cheddar
`;
    const { snapshot } = kitchenOf({ 'scones.quern': SCONES, 'cheese.quern': marked.replace('Savoury', 'Savoury$0') });
    const text = edited(snapshot, writeInFull(snapshot) ?? []);
    for (const remark of marked.match(/# .*$/gm) ?? []) expect(text.split(remark)).toHaveLength(2);
    expect(text).not.toMatch(/^ *(from|swap|drop|add)\b/m);
    expect(text).toMatch(/^ {2}240 g {5}buttermilk +# cheese is wet$/m);
    const mass = (s: typeof snapshot) => s.recipe.parts.map((p) => p.head.massG);
    const after = kitchenOf({ 'a.quern': text.replace('recipe', 're$0cipe') }).snapshot;
    expect(after.written).toBeUndefined();
    expect(mass(after)).toEqual(mass(snapshot.whole));
    expect(after.outline.foods).toHaveLength(1);
    expect(after.outline.trials).toHaveLength(1);
    // Of the foods that a variant describes nothing is said where it is worked out whole.
    const codes = after.findings.open.map((f) => f.code).filter((code) => code !== 'food-for-one-file');
    expect(codes).toEqual(snapshot.whole.findings.open.map((f) => f.code));
    expect(text).not.toMatch(/\n\n\n/);
  });

  it('is not offered for what builds on nothing, or on what is not there', () => {
    expect(writeInFull(fixture(SCONES).snapshot)).toBeUndefined();
    expect(writeInFull(fixture(CHEESE).snapshot)).toBeUndefined();
  });
});

describe('a part moved to a file of its own', () => {
  const TART = `recipe Tart
part sweet paste as sweet paste  # the house's
  200 g     plain flour
  80 g      icing sugar
  100 g     butter
  do Rub the butter into the flour and sugar.

part fruit
  500 g     plums
  do Lay the plums on the paste and dot with the rest of the butter.
`;

  it('leaves a line that takes it, and the recipe weighs the same', () => {
    const { snapshot } = fixture(TART);
    const moved = partToFile(snapshot, 3);
    const rest = edited(snapshot, moved?.edits ?? []);
    expect(moved?.file).toBe('sweet-paste.quern');
    expect(moved?.text).toBe(`${TART.slice(TART.indexOf('part'), TART.indexOf('\n\npart'))}\n`);
    expect(rest).toBe(
      `recipe Tart\npart sweet paste from sweet-paste.quern : sweet paste  # the house's\n\n${TART.slice(TART.indexOf('part fruit'))}`,
    );
    const after = kitchenOf({
      'tart.quern': rest.replace('recipe', 're$0cipe'),
      'sweet-paste.quern': moved?.text ?? '',
    });
    expect(after.snapshot.whole.recipe.parts.map((p) => p.head.massG)).toEqual(
      snapshot.recipe.parts.map((p) => p.head.massG),
    );
    expect(after.snapshot.findings.open.map((f) => f.code)).toEqual(snapshot.findings.open.map((f) => f.code));
  });

  it('takes the oven along that was set above it', () => {
    const crisp = `recipe Crisp
  oven    200 C

part biscuit
  100 g     plain flour
  60 g      butter
  do Rub the butter into the flour.
  do Bake for 15 min until gold, then turn.
  do Lower the oven to 160 C and bake for 10 min.

part fruit
  500 g     apples
  do Lay the apples on the biscuit.
`;
    const moved = partToFile(fixture(crisp).snapshot, 4);
    expect(moved?.text).toContain('  do Bake at 200 C for 15 min until gold, then turn.\n  do Lower the oven to 160 C');
  });

  it('is not offered where its steps speak of another part, or where it is from a file already', () => {
    expect(partToFile(fixture(TART).snapshot, 8)).toBeUndefined();
    expect(partToFile(fixture(SCONES).snapshot, 3)).toBeUndefined();
    expect(partToFile(fixture('recipe T\npart a from b.quern : a\n').snapshot, 1)).toBeUndefined();
  });

  it('gets a name that is free', () => {
    const { snapshot } = kitchenOf({
      'tart.quern': TART.replace('recipe', 're$0cipe'),
      'sweet-paste.quern': 'part x\n',
    });
    expect(partToFile(snapshot, 3)?.file).toBe('sweet-paste-2.quern');
  });
});
