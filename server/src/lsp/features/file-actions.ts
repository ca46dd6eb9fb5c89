/**
 * Knows the actions that reach beyond the lines of one text: other files, and the clock.
 * Refuses to know what they write: `editor/` does.
 */
import type { CodeAction } from 'vscode-languageserver';
import { partToFile } from '../../editor/part-to-file.ts';
import { startTrial } from '../../editor/trial.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { writeInFull } from '../../workspace/write-in-full.ts';
import type { View } from '../feature.ts';
import { filesEditOf, withNewFile } from '../workspace-edit.ts';

export type FileActionKind = 'refactor.inline' | 'refactor.extract' | 'refactor.rewrite';

export function fileActions(
  snapshot: Snapshot,
  { start: { line } }: PositionRange,
  wants: (kind: FileActionKind) => boolean,
  view: View,
): CodeAction[] {
  const actions: (CodeAction | undefined)[] = [];
  if (wants('refactor.inline')) actions.push(inFull(snapshot, line, view));
  if (wants('refactor.extract')) actions.push(ownFile(snapshot, line, view));
  if (wants('refactor.rewrite')) actions.push(trial(snapshot, line, view));
  return actions.filter((a) => a !== undefined);
}

function inFull(snapshot: Snapshot, line: number, view: View): CodeAction | undefined {
  const kind = snapshot.document.lines[line]?.statement.kind;
  const named = kind === 'part' || isAbove(snapshot, line);
  const edits = named ? writeInFull(snapshot) : undefined;
  return (
    edits && {
      title: 'Write the recipe out in full',
      kind: 'refactor.inline',
      edit: filesEditOf(snapshot, edits, new Map(), view),
    }
  );
}

/** Only for a client that can make a file, and a recipe that lies beside others. */
function ownFile(snapshot: Snapshot, line: number, view: View): CodeAction | undefined {
  const path = view.pathOf(snapshot.uri);
  const moved = path === undefined || !view.abilities.createsFiles ? undefined : partToFile(snapshot, line);
  if (moved === undefined) return undefined;
  const { name, file, text, edits } = moved;
  return {
    title: `Move the part ${name} to a file of its own`,
    kind: 'refactor.extract',
    edit: withNewFile(snapshot, edits, { uri: new URL(encodeURIComponent(file), snapshot.uri).href, text }),
  };
}

/** Offered at the head of a recipe and at its trials. */
function trial(snapshot: Snapshot, line: number, view: View): CodeAction | undefined {
  const inTrial = snapshot.outline.trials.some(({ at, lines }) => at <= line && line < at + lines.length);
  if (!inTrial && !isAbove(snapshot, line)) return undefined;
  const started = startTrial(snapshot, view.today());
  if (started === undefined) return undefined;
  const title = 'Record a trial of today';
  const { recordTrialCommand } = view.abilities;
  return recordTrialCommand === undefined
    ? { title, kind: 'refactor.rewrite', edit: filesEditOf(snapshot, started.edits, new Map(), view) }
    : { title, kind: 'refactor.rewrite', command: { title, command: recordTrialCommand } };
}

/** Whether a line stands in the head of the recipe, above its first part. */
function isAbove({ outline, document }: Snapshot, line: number): boolean {
  if (outline.recipe === undefined || line < outline.recipe.at) return false;
  const last = outline.head.at(-1)?.at ?? outline.recipe.at;
  return line <= last && document.lines[line] !== undefined;
}
