/**
 * Knows how one line of a test asks a feature: a fixture with `$0` in, words out.
 * Refuses to know what is expected.
 */
import { codeActions } from '../../server/src/editor/code-actions.ts';
import type { Completion } from '../../server/src/editor/completion/item.ts';
import { completions } from '../../server/src/editor/completion.ts';
import { folds } from '../../server/src/editor/folding.ts';
import { formatting } from '../../server/src/editor/formatting.ts';
import { hover } from '../../server/src/editor/hover.ts';
import { definition, highlights, references } from '../../server/src/editor/navigation.ts';
import type { Place } from '../../server/src/editor/place.ts';
import { rename } from '../../server/src/editor/rename.ts';
import { selections } from '../../server/src/editor/selection.ts';
import { type SymbolNode, symbols } from '../../server/src/editor/symbols.ts';
import { tokens } from '../../server/src/editor/tokens.ts';
import { applyEdits, type TextEdit } from '../../server/src/edits/text-edit.ts';
import { hoverText } from '../../server/src/lsp/convert.ts';
import { type Position, type PositionRange, printDocument } from '../../server/src/notation/document.ts';
import type { Settings } from '../../server/src/workspace/settings.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from './harness.ts';

export interface Fixture {
  readonly snapshot: Snapshot;
  /** Where `$0` stood, once or twice. */
  readonly range: PositionRange;
}

/** Reads a fixture: `$0` is the cursor, `$0 … $0` a selection. */
export function fixture(text: string, settings?: Partial<Settings>): Fixture {
  const [head = '', middle, tail] = text.split('$0');
  const start = positionAfter(head);
  const end = tail === undefined ? start : positionAfter(head + (middle ?? ''));
  return { snapshot: open(head + (middle ?? '') + (tail ?? ''), settings), range: { start, end } };
}

function positionAfter(text: string): Position {
  const lines = text.split(/\r\n|\n|\r/);
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

/** The hover as plain text, `undefined` where there is none. */
export function hoverAt(text: string, settings?: Partial<Settings>): string | undefined {
  const { snapshot, range } = fixture(text, settings);
  const found = hover(snapshot, range.start);
  return found && hoverText(found);
}

export function completionsAt(text: string, byBlank = false, settings?: Partial<Settings>): readonly Completion[] {
  const { snapshot, range } = fixture(text, settings);
  return completions(snapshot, range.start, byBlank).items;
}

export const labelsAt = (text: string, byBlank = false): string[] => completionsAt(text, byBlank).map((c) => c.label);

/** The line once the completion of that label is taken. */
export function completeAt(text: string, label: string): string {
  const { snapshot, range } = fixture(text);
  const item = completions(snapshot, range.start).items.find((c) => c.label === label);
  if (item === undefined) throw new Error(`not offered: ${label}`);
  const line = snapshot.document.lines[range.start.line]?.text ?? '';
  return line.slice(0, item.start) + item.text + line.slice(item.end);
}

/** Titles, with `!` after a preferred one. */
export function actionsAt(text: string, only?: string): string[] {
  const { snapshot, range } = fixture(text);
  const found = codeActions(snapshot, range, (kind) => only === undefined || kind === only, rethrow);
  return found.map((a) => (a.preferred ? `${a.title}!` : a.title));
}

/** The text after the action of that title. */
export function afterAction(text: string, title: string): string {
  const { snapshot, range } = fixture(text);
  const action = codeActions(snapshot, range, () => true, rethrow).find((a) => a.title === title);
  if (action === undefined) throw new Error(`not offered: ${title}`);
  return edited(snapshot, action.edits());
}

const rethrow = (error: unknown): never => {
  throw error;
};

export const edited = (snapshot: Snapshot, edits: readonly TextEdit[]): string =>
  printDocument(applyEdits(snapshot.document, edits));

export function formatted(text: string, lines?: readonly [number, number]): string {
  const { snapshot } = fixture(text);
  return edited(snapshot, formatting(snapshot, lines?.[0], lines?.[1]));
}

/** One symbol a line, indented by depth: `kind name | detail`. */
export function symbolsOf(text: string): string[] {
  const write = (node: SymbolNode, depth: number): string[] => [
    `${'  '.repeat(depth)}${node.kind} ${node.name}${node.detail === '' ? '' : ` | ${node.detail}`}`,
    ...node.children.flatMap((child) => write(child, depth + 1)),
  ];
  return symbols(fixture(text).snapshot).flatMap((node) => write(node, 0));
}

export const foldsOf = (text: string): string[] =>
  folds(fixture(text).snapshot).map((f) => `${f.from}-${f.to}${f.comment ? ' comment' : ''}`);

/** `words type.modifier` for each token. */
export function tokensOf(text: string): string[] {
  const { snapshot } = fixture(text);
  return tokens(snapshot).map((t) => `${wordsAt(snapshot, t)} ${[t.type, ...t.modifiers].join('.')}`);
}

const wordsAt = (snapshot: Snapshot, { line, start, end }: Place): string =>
  snapshot.document.lines[line]?.text.slice(start, end) ?? '';

/** `line:words`, lines from 1. */
export function definitionAt(text: string): string | undefined {
  const { snapshot, range } = fixture(text);
  const place = definition(snapshot, range.start);
  return place && `${place.line + 1}:${wordsAt(snapshot, place)}`;
}

export function referencesAt(text: string, withDefinition = true): string[] {
  const { snapshot, range } = fixture(text);
  return references(snapshot, range.start, withDefinition).map((p) => `${p.line + 1}:${wordsAt(snapshot, p)}`);
}

export function highlightsAt(text: string): string[] {
  const { snapshot, range } = fixture(text);
  return highlights(snapshot, range.start).map((p) => `${p.line + 1}:${wordsAt(snapshot, p)} ${p.role}`);
}

/** The text after the rename, or why not. */
export function renamedAt(text: string, newName: string): string {
  const { snapshot, range } = fixture(text);
  const renamed = rename(snapshot, range.start, newName);
  return renamed.ok ? edited(snapshot, renamed.edits) : `refused: ${renamed.why}`;
}

/** What is selected as the selection grows. */
export function selectionsAt(text: string): string[] {
  const { snapshot, range } = fixture(text);
  return selections(snapshot, range.start).map(({ start, end }) =>
    start.line === end.line
      ? wordsAt(snapshot, { line: start.line, start: start.character, end: end.character })
      : `lines ${start.line + 1}-${end.line + 1}`,
  );
}
