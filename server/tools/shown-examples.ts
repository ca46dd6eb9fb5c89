/**
 * Knows which examples of a check a page shows (`publish/page.ts`): the first of each, without what its fixes make of it. The others are its tests, and
 * stay out of the bundles.
 */
import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';
import { type ESTree, parseSync, Visitor } from 'rolldown/utils';

const CHECKS = /[\\/]server[\\/]src[\\/]checks[\\/][a-z-]+[\\/][a-z-]+\.ts$/;

export const shownExamples: Plugin = {
  name: 'shown-examples',
  setup(build) {
    build.onLoad({ filter: CHECKS }, async ({ path }) => ({
      contents: shownIn(path, await readFile(path, 'utf8')),
      loader: 'ts',
    }));
  },
};

/** The text of a check with the first example that raises it, and the first that does not. */
export function shownIn(path: string, text: string): string {
  const left: ESTree.Span[] = [];
  new Visitor({
    Property({ key, value }) {
      if (value.type !== 'ArrayExpression' || key.type !== 'Identifier' || !LISTS.has(key.name)) return;
      const [first, ...others] = value.elements;
      // What is spread may be none, or several.
      if (first === null || first === undefined || value.elements.some((each) => each?.type === 'SpreadElement'))
        return;
      const parts = first.type === 'ObjectExpression' ? first.properties : [];
      const after = parts.findIndex(isAfter);
      const before = parts[after - 1];
      if (before !== undefined) left.push({ start: before.end, end: parts[after]?.end ?? before.end });
      const last = others.at(-1);
      if (last) left.push({ start: first.end, end: last.end });
    },
  }).visit(parseSync(path, text).program);
  return left.reduceRight((whole, { start, end }) => whole.slice(0, start) + whole.slice(end), text);
}

/** The lists of `Check.examples`; no check has others of these names. */
const LISTS: ReadonlySet<string> = new Set(['good', 'bad']);
const isAfter = (property: ESTree.ObjectPropertyKind): boolean =>
  property.type === 'Property' && property.key.type === 'Identifier' && property.key.name === 'after';
