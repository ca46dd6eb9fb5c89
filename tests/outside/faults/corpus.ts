/**
 * Knows the published recipes of `tests/outside/recipes`: their text, the house each is read under, and what is found in them.
 */
import { readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nodeFiles } from '../../../server/src/host/files.ts';
import { Houses } from '../../../server/src/workspace/houses.ts';
import { Snapshot } from '../../../server/src/workspace/snapshot.ts';

export interface PublishedRecipe {
  /** Relative to the folder of recipes, without its extension: `home/imperial/puff-paste`. */
  readonly file: string;
  readonly text: string;
  readonly snapshot: Snapshot;
}

const files = nodeFiles();
const houses = new Houses(files);
export const FOLDER = resolve(dirname(fileURLToPath(import.meta.url)), '../recipes');
const pathOf = (file: string): string => resolve(FOLDER, `${file}.quern`);

export const RECIPES: readonly PublishedRecipe[] = files.recipesBelow(FOLDER).map((path) => {
  const text = readFileSync(path, 'utf8');
  const file = relative(FOLDER, path).replace(/\.quern$/, '');
  return { file, text, snapshot: openAs(file, text) };
});

/** Another text in a recipe's place, read under the same house. A check that throws is an error. */
export function openAs(file: string, text: string): Snapshot {
  const path = pathOf(file);
  const snapshot = Snapshot.open(path, 1, text, houses.of(path, text).house, houses.bases);
  const [bug] = snapshot.bugs;
  if (bug !== undefined) throw new Error(`${file}: ${bug.check} threw`, { cause: bug.error });
  return snapshot;
}

/** Kinds that the parts of a recipe are written as, by their own names. */
export const kindsOf = ({ snapshot }: PublishedRecipe): string[] => [
  ...new Set(snapshot.recipe.parts.flatMap(({ head }) => head.kind?.name ?? [])),
];

export const KINDS_COVERED: readonly string[] = [...new Set(RECIPES.flatMap(kindsOf))].sort();

/** Errors and warnings in a recipe, as `code: message`. */
export const gravest = (snapshot: Snapshot) =>
  snapshot.findings.open.filter((f) => f.severity === 'error' || f.severity === 'warning');
