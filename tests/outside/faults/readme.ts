/**
 * Knows the tables of the folder's README: every recipe with its kinds and source, and every kind with its recipes.
 */
import { FOLDER, KINDS_COVERED, kindsOf, RECIPES } from './corpus.ts';

export const README = `${FOLDER}/README.md`;

export const recipesTable = (): string =>
  table(
    ['recipe', 'kinds', 'source'],
    RECIPES.map((recipe) => [`\`${recipe.file}\``, kindsOf(recipe).join(', '), sourceOf(recipe.text)]),
  );

export const kindsTable = (): string =>
  table(
    ['kind', 'recipes'],
    KINDS_COVERED.map((kind) => [
      kind,
      RECIPES.filter((r) => kindsOf(r).includes(kind))
        .map((r) => `\`${r.file.replace(/^.*\//, '')}\``)
        .join(', '),
    ]),
  );

/** What stands after `source`, or an empty text. */
export const sourceOf = (text: string): string => /^\s+source\s+(\S.*)$/m.exec(text)?.[1] ?? '';

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
