import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { readTarget } from '../../server/src/edits/scale-target.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { align } from '../../server/src/publish/align.ts';
import { diffJson, diffText } from '../../server/src/publish/diff/words.ts';
import { diffRecipes } from '../../server/src/publish/diff.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

const TART = `recipe Plum tart
  by      Harbour Lane test kitchen
  yield   8 slices
  pan     round 24 x 3 cm

part base as shortcrust
  200 g     plain flour
  100 g     butter, cold
  50 g      ice water
  2 g       fine salt

  do Rub the butter into the flour and salt.
  do Bring together with the ice water.
  do Chill at 4 C for 45 min.
  do Bake at 180 C for 18 min.

part fruit
  500 g     plums, halved
  20 g      caster sugar

  do Toss the plums with the sugar.
  do Lay the fruit on the base and bake at 170 C for 25 min, until the centre reads 80 C.
`;

const said = (before: string, after: string): string => diffText(diffRecipes(open(before).recipe, open(after).recipe));
const changed = (...pairs: readonly (readonly [string | RegExp, string])[]): string =>
  said(
    TART,
    pairs.reduce((text, [from, to]) => text.replace(from, to), TART),
  );

test('a field that is gone is said to be taken out', () => {
  expect(changed(['  by      Harbour Lane test kitchen\n', ''])).toContain(
    'by taken out (was: Harbour Lane test kitchen)\n',
  );
});

test('times of the head and pans of parts are compared by their words', () => {
  const having = (time: string, pan: string) =>
    TART.replace('  pan     round', `  Prep: ${time}\n  pan     round`).replace(
      'shortcrust\n',
      `shortcrust\n  pan     ${pan}\n`,
    );
  const before = having('20 min', 'round 20 x 3 cm');
  expect(said(before, having('20  min', 'round  20 x 3 cm'))).toBe(said(TART, TART));
  const changes = said(before, having('40 min', 'round 22 x 3 cm'));
  expect(changes).toContain('20 min to Prep: 40 min');
  expect(changes).toContain('pan of base round 20 x 3 cm to round 22 x 3 cm');
});

describe('one change, in a cook’s words', () => {
  test.each<[string, string | RegExp, string, string | RegExp]>([
    ['less of an ingredient', '100 g     butter', '80 g      butter', 'butter down 20 g (100 g to 80 g)'],
    ['its measure with it', '50 g      ice', '60 g      ice', /hydration 33 % to 38 %/],
    ['longer in the oven', 'for 18 min', 'for 28 min', 'bake 10 min longer (18 min to 28 min)'],
    ['a cooler oven', '180 C', '165 C', 'bake 15 C cooler (180 C to 165 C)'],
    ['the fan', '180 C', '180 C fan', 'bake at 180 C fan, not 180 C'],
    ['a reading in the food', 'reads 80 C', 'reads 82 C', 'done at 82 C, not 80 C'],
    ['the yield alone', '8 slices', '10 slices', 'yield 8 to 10 slices: 87 g each instead of 109 g, before cooking'],
    ['the pan', 'round 24 x 3 cm', 'square 22 x 3 cm', 'pan round 24 x 3 cm to square 22 x 3 cm'],
    [
      'a pan of a part',
      'part base as shortcrust\n',
      'part base as shortcrust\n  pan 2 lb loaf tin\n',
      'pan of base: 2 lb loaf tin (new)',
    ],
    ['a stated time', '  pan     round', '  time    20 min at work\n  pan     round', 'time: 20 min at work (new)'],
    [
      'another food of the kind',
      '20 g      caster sugar',
      '20 g      light brown sugar',
      '20 g light brown sugar in the place of 20 g caster sugar',
    ],
    [
      'something new',
      '  20 g      caster',
      '  5 g       vanilla extract\n  20 g      caster',
      'new: 5 g vanilla extract',
    ],
    ['something gone', '  2 g       fine salt\n', '', 'no fine salt any more (2 g)'],
    ['how it is prepared', 'plums, halved', 'plums, quartered', 'plums: quartered, not halved'],
    ['optional', '  20 g      caster', '  optional 20 g caster', 'caster sugar may be left out now'],
    ['the kind', 'base as shortcrust', 'base as sweet paste', 'base is sweet paste now, not shortcrust'],
    ['the name of a part', /\bbase\b/g, 'crust', 'the part base is now crust'],
    ['the name', 'Plum tart', 'Plum slice', 'the name Plum tart to Plum slice'],
    [
      'words of a step',
      'Toss the plums',
      'Gently toss the plums',
      'step 1 reads: Gently toss the plums with the sugar. (was: Toss the plums with the sugar.)',
    ],
    ['a step less', '  do Chill at 4 C for 45 min.\n', '', 'no longer, was step 3: Chill at 4 C for 45 min.'],
    [
      'a weight in the place of a measure',
      '20 g      caster',
      '20.0 g    caster',
      'nothing that a cook would do otherwise',
    ],
    ['layout', '  200 g     plain flour', ' 200 g   plain flour # sifted', 'nothing that a cook would do otherwise'],
  ])('%s', (_, from, to, want) => {
    const text = changed([from, to]);
    if (typeof want === 'string') expect(text.split('\n').map((l) => l.trim())).toContain(want);
    else expect(text).toMatch(want);
  });

  test('a step moved is said to be moved, within a part and to another', () => {
    const chill = '  do Chill at 4 C for 45 min.\n';
    expect(changed([chill, ''], ['  do Bring', `${chill}  do Bring`])).toMatch(/step [23] is step [23] now/);
    expect(changed([chill, ''], ['  do Toss', `${chill}  do Toss`])).toMatch(
      /step 3 went to fruit, step 1: Chill at 4 C for 45 min\./,
    );
  });

  test('an ingredient that goes into another part', () => {
    expect(
      changed(['  20 g      caster sugar\n', ''], ['  2 g       fine', '  20 g      caster sugar\n  2 g       fine']),
    ).toContain('caster sugar goes into base, not fruit');
  });

  test('lines of a food that read alike are no difference', () => {
    const food = 'food quayside flour\n  1 cup = 130 g\n  1 cup = 130 g\n';
    expect(said(food, food)).toBe('nothing that a cook would do otherwise\n');
  });

  test('a recipe of one nameless part that is new, or gone', () => {
    const oats = 'recipe Oats\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n';
    expect(said('', oats)).toContain('all new: rolled oats, butter\n');
    expect(said(oats, '')).toContain('nothing left of rolled oats, butter\n');
  });

  test('trials, accepted findings and foods', () => {
    const text = changed(
      ['  50 g ', '  allow dough-too-wet because as agreed\n  50 g '],
      [/$/, '\ntrial 2026-10-03 by Ines\n  verdict keep\n'],
    );
    expect(text).toContain('a trial more: 2026-10-03 by Ines');
    expect(text).toContain('dough-too-wet is accepted now, because as agreed');
    const food = 'food quayside flour\n  like    bread flour\n  price   1.35 per 1 kg\n';
    expect(said(food, food.replace('1.35', '1.40'))).toContain(
      'quayside flour: price 1.40 per 1 kg (was: price 1.35 per 1 kg)',
    );
  });

  test('the whole time goes with the steps', () => {
    expect(changed(['for 18 min', 'for 1 h 18 min'])).toMatch(/1 h 28 min in all to 2 h 28 min/);
  });
});

describe('a mere change of batch', () => {
  const scaled = (text: string, by: string): string => {
    const { document, recipe } = open(text);
    const target = readTarget(by);
    const result = target === undefined ? undefined : scaleRecipe(document, recipe, target);
    if (result?.ok !== true) throw new Error('does not scale');
    // In the same pan it is deeper or shallower: the new time in the oven is a change of its own, and is left out here.
    const { edits } = result.scaling;
    const kept = edits.filter(({ text: written }) => !/^[\d.-]+ (?:min|h)$/.test(written));
    return printDocument(applyEdits(document, kept));
  };

  test.each(['2', '0.5', '1.5', '3'])('the tart %s times is the same recipe at another size', (by) => {
    const text = said(TART, scaled(TART, by));
    expect(text).toMatch(/^the same recipe at another size: 8 to \d+ slices, [\d.]+ times the batch\n$/);
    expect(text).toContain(`${by} times`);
  });

  const whole = EXAMPLES.filter(([path, text]) => !/foods|draft/.test(path) && !openInKitchen(text).recipe.inherits);

  test.each(whole)('%s doubled is only that', (_, text) => {
    const snapshot = openInKitchen(text);
    const target = readTarget('2');
    if (target === undefined) throw new Error('no target');
    const done = scaleRecipe(snapshot.document, snapshot.recipe, target);
    if (!done.ok) throw new Error(done.why);
    const twice = openInKitchen(printDocument(applyEdits(snapshot.document, done.scaling.edits)));
    const { batch, changes } = diffRecipes(snapshot.recipe, twice.recipe);
    expect(batch).toBeCloseTo(2, 1);
    expect(changes.filter((c) => c.kind !== 'field')).toEqual([]);
  });

  test('what else changed is set against the batch', () => {
    const text = said(TART, scaled(TART, '2').replace('200 g     butter', '170 g     butter'));
    expect(text).toMatch(/^another size: 8 to 16 slices, 2 times the batch; set against that:\n/);
    expect(text).toContain('butter down 30 g (100 g to 170 g; 200 g at this batch)');
    expect(text).not.toMatch(/flour up/);
  });

  test('two changes among four are no batch', () => {
    expect(changed(['200 g     plain', '260 g     plain'], ['100 g     butter', '130 g     butter'])).toContain(
      'plain flour up 60 g',
    );
  });
});

test('JSON gives each change its figures and its words', () => {
  const a = open(TART);
  const b = open(TART.replace('100 g     butter', '80 g      butter'));
  const json = JSON.parse(diffJson(diffRecipes(a.recipe, b.recipe), { from: 'a', to: 'b' }));
  expect(json).toMatchObject({ version: 1, from: 'a', to: 'b', batch: 1, yield: null });
  expect(json.changes[0]).toMatchObject({ kind: 'amount', part: 'base', name: 'butter', fromG: 100, toG: 80 });
  expect(json.changes[0].text).toBe('butter down 20 g (100 g to 80 g)');
});

test('the same recipe twice, and any example against any other, throw nothing', () => {
  for (const [, text] of EXAMPLES) {
    const a = openInKitchen(text);
    expect(diffRecipes(a.recipe, openInKitchen(text).recipe)).toEqual({ batch: 1, changes: [] });
    for (const [, other] of EXAMPLES)
      expect(diffText(diffRecipes(a.recipe, openInKitchen(other).recipe))).not.toMatch(/undefined|NaN/);
  }
});

test('lists are aligned in order, also long ones', () => {
  const same = (x: string, y: string) => (x === y ? 1 : 0);
  expect(align(['a', 'b', 'c'], ['x', 'b', 'c', 'd'], same)).toEqual({
    both: [
      ['b', 'b'],
      ['c', 'c'],
    ],
    left: ['a'],
    right: ['x', 'd'],
  });
  expect(align([], ['a'], same).right).toEqual(['a']);
});
