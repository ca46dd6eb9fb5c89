/**
 * Knows how edits in several files become one change of the workspace, held to the versions they were made for.
 * Refuses to know why they are made.
 */
import type { CreateFile, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { FileEdits } from '../editor/kitchen.ts';
import type { TextEdit } from '../edits/text-edit.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { editsOf } from './convert.ts';
import type { View } from './feature.ts';

/** Edits of the file at hand, and of others by path; of a file that is not open, whatever its version. */
export function filesEditOf(
  snapshot: Snapshot | undefined,
  own: readonly TextEdit[],
  others: FileEdits,
  view: View,
): WorkspaceEdit {
  const { snapshotAt } = view.kitchen();
  const files = [...others].flatMap(([path, edits]) => {
    const file = snapshotAt(path);
    return file === undefined ? [] : [{ file, edits }];
  });
  const all = [...(snapshot === undefined ? [] : [{ file: snapshot, edits: own }]), ...files].filter(
    ({ edits }) => edits.length > 0,
  );
  if (!view.abilities.documentChanges)
    return { changes: Object.fromEntries(all.map(({ file, edits }) => [file.uri, editsOf(file, edits)])) };
  return {
    documentChanges: all.map(({ file, edits }) => ({
      textDocument: { uri: file.uri, version: view.snapshot(file.uri) === undefined ? null : file.version },
      edits: editsOf(file, edits),
    })),
  };
}

/** A new file with its text, and edits of the file at hand, in one change. Only for a client that can make files. */
export function withNewFile(
  snapshot: Snapshot,
  own: readonly TextEdit[],
  made: { readonly uri: string; readonly text: string },
): WorkspaceEdit {
  const start = { line: 0, character: 0 };
  const create: CreateFile = { kind: 'create', uri: made.uri, options: { overwrite: false, ignoreIfExists: false } };
  const fill: TextDocumentEdit = {
    textDocument: { uri: made.uri, version: null },
    edits: [{ range: { start, end: start }, newText: made.text }],
  };
  const change: TextDocumentEdit = {
    textDocument: { uri: snapshot.uri, version: snapshot.version },
    edits: editsOf(snapshot, own),
  };
  return { documentChanges: [create, fill, change] };
}
