/**
 * Knows what the features that look beyond one file need: the index of the folders, and any file as it stands.
 */
import type { TextEdit } from '../edits/text-edit.ts';
import type { Folders } from '../workspace/folders.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

export interface Kitchen {
  readonly index: Folders;
  /** The open text of a file, else the one on disk. */
  readonly snapshotAt: (path: string) => Snapshot | undefined;
}

/** Edits by the path of the file they are made in. */
export type FileEdits = ReadonlyMap<string, readonly TextEdit[]>;
