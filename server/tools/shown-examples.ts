/**
 * Knows which examples of a check a page shows (`publish/page.ts`): the first of each, without what its fixes make of it. The others are its tests, and
 * stay out of the bundles. What a page alone shows is made when it is asked for: a start reads back none of it.
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

/** A text that takes the place of what stands there. */
interface Edit extends ESTree.Span {
  readonly by: string;
}

/** The text of a check with the first example that raises it, and the first that does not. */
export function shownIn(path: string, text: string): string {
  const edits: Edit[] = [];
  const leave = (start: number, end: number): void => {
    edits.push({ start, end, by: '' });
  };
  new Visitor({
    Property({ key, value, method, shorthand }) {
      if (key.type !== 'Identifier') return;
      if (OF_PAGE.has(key.name) && !method && !shorthand) {
        edits.push({ start: key.start, end: value.start, by: `get ${key.name}(){return ` });
        edits.push({ start: value.end, end: value.end, by: '}' });
      }
      if (value.type !== 'ArrayExpression' || !LISTS.has(key.name)) return;
      const [first, ...others] = value.elements;
      // What is spread may be none, or several.
      if (first === null || first === undefined || value.elements.some((each) => each?.type === 'SpreadElement'))
        return;
      const parts = first.type === 'ObjectExpression' ? first.properties : [];
      const after = parts.findIndex(isAfter);
      const before = parts[after - 1];
      if (before !== undefined) leave(before.end, parts[after]?.end ?? before.end);
      const last = others.at(-1);
      if (last) leave(first.end, last.end);
    },
  }).visit(parseSync(path, text).program);
  return edits
    .sort((a, b) => b.start - a.start)
    .reduce((whole, { start, end, by }) => whole.slice(0, start) + by + whole.slice(end), text);
}

/** What of a check its page alone shows. */
const OF_PAGE: ReadonlySet<string> = new Set(['explain', 'examples']);

/** The lists of `Check.examples`; no check has others of these names. */
const LISTS: ReadonlySet<string> = new Set(['good', 'bad']);
const isAfter = (property: ESTree.ObjectPropertyKind): boolean =>
  property.type === 'Property' && property.key.type === 'Identifier' && property.key.name === 'after';
