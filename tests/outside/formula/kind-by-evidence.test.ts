/** A part whose kind is taken away looks like that kind or like none: published recipes and the example kitchen's. */
import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../../server/src/host/files.ts';
import { plainKind } from '../../../server/src/recipe/kind-evidence.ts';
import { Houses } from '../../../server/src/workspace/houses.ts';
import { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { open } from '../../support/harness.ts';

const files = nodeFiles();
const houses = new Houses(files);
const looks = ['examples', 'tests/outside/recipes']
  .flatMap((folder) => files.recipesBelow(resolve(folder)))
  .flatMap((path) => {
    const text = readFileSync(path, 'utf8');
    const { house } = houses.of(path);
    const written = Snapshot.open(path, 1, text, house).recipe.parts;
    const bare = Snapshot.open(path, 1, text.replace(/^(part|recipe)(.*?) as [a-z -]+$/gm, '$1$2'), house).recipe.parts;
    return written.flatMap((part, i) => {
      const there = bare[i];
      const found = there === undefined ? undefined : plainKind(there)?.name;
      return [{ name: `${relative('.', path)} ${part.head.name}`, written: part.head.kind?.name, found }];
    });
  });

test('none looks like another kind', () => {
  expect(looks.filter((l) => l.found !== undefined && l.found !== l.written)).toEqual([]);
});

test('a good part of them is recognised', () => {
  expect(looks.filter((l) => l.found !== undefined).length).toBeGreaterThanOrEqual(20);
});

const PLAIN: Readonly<Record<string, string>> = {
  crumble:
    '  200 g  plain flour\n  120 g  sugar\n  120 g  butter\n  do Rub the butter into the flour and the sugar.\n  do Scatter it over the fruit and bake at 180 C for 40 min.\n',
  dumpling:
    '  200 g  plain flour\n  10 g  baking powder\n  2 g  salt\n  40 g  butter\n  130 g  milk\n  do Mix all, drop spoonfuls into the simmering stew and simmer for 20 min.\n',
};
test.each(Object.entries(PLAIN))('a plain %s is recognised', (kind, lines) => {
  const { parts } = open(`recipe Dish\npart mix\n${lines}`).recipe;
  expect(parts.map((part) => plainKind(part)?.name)).toEqual([kind]);
});

/** Their neighbours: shortbread, a scone. */
test.each([
  '  300 g  plain flour\n  100 g  sugar\n  200 g  butter\n  do Rub the butter into the flour, roll out and cut into fingers. Bake at 160 C for 30 min.\n',
  '  250 g  plain flour\n  12 g  baking powder\n  40 g  butter\n  150 g  milk\n  do Rub in the butter, cut rounds and bake at 220 C for 12 min.\n',
])('none of them: %#', (lines) => {
  const found = open(`recipe Dish\npart mix\n${lines}`).recipe.parts.map((part) => plainKind(part)?.name);
  for (const kind of Object.keys(PLAIN)) expect(found).not.toContain(kind);
});
