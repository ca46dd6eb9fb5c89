/** A part whose kind is taken away looks like that kind or like none: published recipes and the example kitchen's. */
import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../../server/src/host/files.ts';
import { plainKind } from '../../../server/src/recipe/kind-evidence.ts';
import { Houses } from '../../../server/src/workspace/houses.ts';
import { Snapshot } from '../../../server/src/workspace/snapshot.ts';

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
