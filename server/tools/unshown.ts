/**
 * Knows what of the data is for who reads it here and no program shows: what a file is about, and the sources and notes of what no page names.
 */
import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';

/** Files of which no source is shown. */
const SILENT = /oven-loss\.json$/;

/** Tables whose source no program asks for, and whose note. */
const UNASKED: readonly (readonly [path: RegExp, column: string])[] = [
  [
    /data[\\/](?:prose[\\/][\w-]+|foods[\\/](?:nouns|modifiers)|sorts|food-families|listed-states|needed-acts)\.tsv$/,
    'source',
  ],
  [/data[\\/]heat[\\/](?!spans)[\w-]+\.tsv$/, 'source'],
  [/data[\\/]pans\.tsv$/, 'note'],
];

/** The table with those cells empty. */
export function shownOf(path: string, table: string): string {
  const column = UNASKED.find(([of]) => of.test(path))?.[1];
  const lines = table.split('\n');
  const heading = lines.findIndex((line) => !line.startsWith('#'));
  const at = column === undefined ? -1 : (lines[heading]?.split('\t').indexOf(column) ?? -1);
  if (at < 0) return table;
  return lines
    .map((line, row) => {
      const cells = line.split('\t');
      return row <= heading || cells.length <= at ? line : cells.with(at, '').join('\t');
    })
    .join('\n');
}

export const unshown: Plugin = {
  name: 'unshown',
  setup(build) {
    build.onLoad({ filter: /server[\\/]data[\\/][^\\/]+\.json$/ }, async ({ path }) => {
      const isSilent = SILENT.test(path);
      const data: unknown = JSON.parse(await readFile(path, 'utf8'), (key, value: unknown) =>
        key === 'about' || (isSilent && key === 'source') ? undefined : value,
      );
      return { contents: JSON.stringify(data), loader: 'json', watchFiles: [path] };
    });
  },
};
