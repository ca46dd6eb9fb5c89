/**
 * Knows when a text is a printed recipe that was pasted: no line of it says what it is. Turned into the notation in one step.
 * Refuses a file that holds a recipe, a part, a step or a food already.
 */
import { readText } from '../../edits/read-text/read-text.ts';
import type { Document, PositionRange } from '../../notation/document.ts';
import type { StatementKind } from '../../notation/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Rewrite } from './rewrite.ts';

/** What only a writer of the notation types. */
const WRITTEN: ReadonlySet<StatementKind> = new Set<StatementKind>(['recipe', 'part', 'step', 'food', 'trial', 'from']);

/** Whether a line says what it is, as nothing that was printed elsewhere does. */
export const isWritten = ({ lines }: Document): boolean => lines.some(({ statement }) => WRITTEN.has(statement.kind));

/** The lines that are selected, or all of them where none is. */
export function draftRewrites({ document, recipe: { world } }: Snapshot, { start, end }: PositionRange): Rewrite[] {
  const { lines } = document;
  if (isWritten(document)) return [];
  const isAll = start.line === end.line && start.character === end.character;
  const first = isAll ? 0 : start.line;
  const last = isAll ? lines.length - 1 : end.line;
  const draft = lines.slice(first, last + 1);
  if (draft.length < LEAST || !draft.some(({ statement }) => statement.kind === 'ingredient')) return [];
  const edits = () => {
    const { text, ingredients } = readText(draft.map((line) => line.text).join('\n'), world);
    if (ingredients === 0) return [];
    const to = { line: last, character: lines[last]?.text.length ?? 0 };
    return [{ start: { line: first, character: 0 }, end: to, text: text.replace(/\n$/, '') }];
  };
  return [{ title: 'Tidy this draft', kind: 'refactor.rewrite', edits }];
}

/** Fewer lines are no recipe. */
const LEAST = 3;
