/**
 * Knows the actions that reach beyond the lines of one text: other files, and the clock.
 * Refuses to know what they write: `editor/` does.
 */
import type { CodeAction } from 'vscode-languageserver';
import type { Finding } from '../../checks/finding.ts';
import { partToFile } from '../../editor/part-to-file.ts';
import { startTrial } from '../../editor/trial.ts';
import type { PositionRange } from '../../notation/document.ts';
import { lastAbove } from '../../notation/outline.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { writeInFull } from '../../workspace/write-in-full.ts';
import { diagnosticOf } from '../convert.ts';
import type { View } from '../feature.ts';
import { filesEditOf, withNewFile } from '../workspace-edit.ts';

export type FileActionKind = 'quickfix' | 'refactor.inline' | 'refactor.extract' | 'refactor.rewrite';

export function fileActions(
  snapshot: Snapshot,
  { start: { line } }: PositionRange,
  wants: (kind: FileActionKind) => boolean,
  view: View,
): CodeAction[] {
  const actions: (CodeAction | undefined)[] = [];
  if (wants('refactor.inline')) actions.push(inFull(snapshot, line, view));
  if (wants('refactor.extract')) actions.push(ownFile(snapshot, line, view));
  const untested = wants('quickfix') ? untestedAt(snapshot, line) : undefined;
  if (untested !== undefined) actions.push(trial(snapshot, view, untested));
  else if (wants('refactor.rewrite') && isTrialPlace(snapshot, line)) actions.push(trial(snapshot, view));
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

/** What was changed since the last trial is answered by a new one. */
const untestedAt = (snapshot: Snapshot, line: number): Finding | undefined =>
  snapshot.findings.open.find(({ code, at }) => code === 'untested-change' && at.line === line);

/** At the head of a recipe and at its trials. */
const isTrialPlace = (snapshot: Snapshot, line: number): boolean =>
  isAbove(snapshot, line) || snapshot.outline.trials.some(({ at, lines }) => at <= line && line < at + lines.length);

function trial(snapshot: Snapshot, view: View, untested?: Finding): CodeAction | undefined {
  const started = startTrial(snapshot, view.today());
  if (started === undefined) return undefined;
  const title = 'Record a trial of today';
  const { recordTrialCommand } = view.abilities;
  const offered =
    untested === undefined
      ? { title, kind: 'refactor.rewrite' }
      : { title, kind: 'quickfix', diagnostics: [diagnosticOf(untested, snapshot, view.abilities)] };
  return recordTrialCommand === undefined
    ? { ...offered, edit: filesEditOf(snapshot, started.edits, new Map(), view) }
    : { ...offered, command: { title, command: recordTrialCommand } };
}

/** Whether a line stands in the head of the recipe, above its first part. */
function isAbove({ outline, document }: Snapshot, line: number): boolean {
  if (outline.recipe === undefined || line < outline.recipe.at) return false;
  const last = lastAbove(outline) ?? outline.recipe.at;
  return line <= last && document.lines[line] !== undefined;
}
