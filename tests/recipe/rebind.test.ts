import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../server/src/recipe/model.ts';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

const { house } = makeHouse(DEFAULTS);

const MENU = `recipe Menu
  oven 180 C
part poolish
  100 g  plain flour
  100 g  water
  do Mix the flour and the water.
part syrup
  80 g   sugar
  40 g   sugar
  do Boil the sugar with 50 ml water.
part dough as bread dough
  200 g  poolish
  300 g  strong flour
  2      eggs
  do Mix the poolish, the flour and half the eggs.
  do Bake at 220 C for 30 min.
part glaze
  20 g   butter
  do Brush the dough with the syrup, the butter and the rest of the eggs.
part finish
  5 g    icing sugar
  do Dust with the sugar, and a little flour.
  do Return to the oven for 5 min.
`;

const LINES = [
  ...MENU.split('\n'),
  '  30 g  cocoa',
  '  do Whisk the yolks with the syrup.',
  'part syrup',
  '',
  '  do Add [sugar].',
];
const WORDS = ['sugar', 'flour', 's', ' syrup', ', chopped', '5', 'part ', ' (from the dough)', '\n', ' as cake'];

/** All that is worked out of a recipe, but for the heads as they stood when a part was bound. */
const workedOut = ({ parts, partsAt, inherits, name }: Recipe) => ({
  name,
  partsAt,
  inherits,
  parts: parts.map(({ heads: _, ...part }) => part),
});

const fresh = (text: string) => Snapshot.open('a.quern', 1, text, house);

const edit = fc.oneof(
  fc.record({ line: fc.nat(40), cut: fc.constant(true), put: fc.constantFrom(...LINES) }),
  fc.record({ line: fc.nat(40), cut: fc.constant(false), put: fc.constantFrom(...LINES.map((line) => `${line}\n`)) }),
  fc.record({ line: fc.nat(40), at: fc.nat(20), put: fc.constantFrom(...WORDS) }),
);

function edited(snapshot: Snapshot, { line, put, ...how }: { line: number; put: string; cut?: boolean; at?: number }) {
  const start = { line, character: how.at ?? 0 };
  const end = { line, character: how.cut ? 1000 : start.character };
  return snapshot.edited(snapshot.version + 1, [{ range: { start, end }, text: put }]);
}

describe('a recipe bound again after edits', () => {
  test('is the recipe that the text makes afresh, and has its findings', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), fc.nat(7), (edits, branch) => {
        const made = [fresh(MENU)];
        for (const [i, next] of edits.entries()) {
          // An edit may be made to an older text than the last.
          const from = i === branch ? made[i >> 1] : made.at(-1);
          if (from === undefined) return;
          void from.findings;
          const snapshot = edited(from, next);
          made.push(snapshot);
          const want = fresh(snapshot.text);
          expect(workedOut(snapshot.recipe)).toEqual(workedOut(want.recipe));
          const lastLine = snapshot.document.lines.length - 1;
          const found = ({ findings }: Snapshot) =>
            findings.open.filter((f) => f.at.line !== lastLine).map(({ code, at, said }) => ({ code, at, said }));
          expect(found(snapshot)).toEqual(found(want));
        }
      }),
      { numRuns: 40 },
    );
  }, 30_000);

  test.each<[string, number, string]>([
    ['another name', 7, 'part sauce'],
    ['none', 7, ''],
  ])('a part that a step above speaks of gets %s', (_, line, put) => {
    const text =
      'recipe Slice\npart sponge\n  100 g  plain flour\n  2      eggs\n  do Beat the eggs into the flour.\n  do Spread with custard.\n\npart custard\n  300 g  milk\n  do Warm the milk.\n';
    const before = fresh(text);
    const codes = ({ findings }: Snapshot) => findings.open.map(({ code, at }) => `${code} ${at.line}`);
    expect(codes(before)).not.toContain('unlisted-ingredient 5');
    const after = edited(before, { line, cut: true, put });
    expect(codes(after)).toContain('unlisted-ingredient 5');
    expect(codes(after)).toEqual(codes(fresh(after.text)));
  });

  /** The numbers of the parts that an edit makes again. */
  function madeAgain(find: string, put: string): number[] {
    const before = fresh(MENU);
    const bound = before.recipe.parts;
    const line = MENU.split('\n').findIndex((row) => row.includes(find));
    const { parts } = edited(before, { line, cut: true, put }).recipe;
    return parts.filter((part, i) => part !== bound[i]).map((part) => part.index);
  }

  test.each<[string, string, string, number[]]>([
    ['a weight that no other part takes', '20 g   butter', '  25 g   butter', [3]],
    ['a weight, with the part that takes it in', '100 g  water', '  90 g   water', [0, 2]],
    ['a name, with the parts that its sentence takes from', '20 g   butter', '  20 g   lard', [1, 2, 3]],
    ['a name, with the part that is meant instead', '300 g  strong flour', '  300 g  spelt', [0, 1, 2, 3, 4]],
    ['a class of food that an earlier part lists too', '40 g   sugar', '  40 g   plain flour', [0, 1, 3]],
    ['the name of a part that is mentioned', 'part syrup', 'part sirup', [1, 2, 3]],
    ['an oven, for those that begin with it', 'Bake at 220 C', '  do Bake at 210 C for 30 min.', [2, 3, 4]],
  ])('shares all but what is reached: %s', (_, find, put, want) => {
    expect(madeAgain(find, put)).toEqual(want);
  });
});
