import type { PrepareRenameParams, Range, RenameFilesParams, RenameParams, WorkspaceEdit } from 'vscode-languageserver';
import { mendLinks } from '../../editor/moved-files.ts';
import { prepareRenameAcross, renameAcross } from '../../editor/rename-across.ts';
import { PICTURES_GLOB } from '../capabilities.ts';
import { rangeOf, readPosition } from '../convert.ts';
import { type Feature, onDocument, onRequest } from '../feature.ts';
import { ResponseError } from '../library.ts';
import { filesEditOf } from '../workspace-edit.ts';

/** The protocol's code for a request that is understood and refused. */
const REQUEST_FAILED = -32803;

const FILES = {
  filters: [
    { pattern: { glob: '**/*.quern', matches: 'file' as const } },
    { pattern: { glob: PICTURES_GLOB, matches: 'file' as const } },
    { pattern: { glob: '**', matches: 'folder' as const } },
  ],
};

/** Names of things, and names of files. */
export const renameFeature: Feature = {
  capability: ({ preparesRename, willRenameFiles, tellsFileOperations }) => ({
    renameProvider: preparesRename ? { prepareProvider: true } : true,
    ...((willRenameFiles || tellsFileOperations) && {
      workspace: {
        fileOperations: {
          ...(willRenameFiles && { willRename: FILES }),
          ...(tellsFileOperations && { didCreate: FILES, didRename: FILES, didDelete: FILES }),
        },
      },
    }),
  }),
  requests: [
    onDocument<PrepareRenameParams, { range: Range; placeholder: string } | null>(
      'textDocument/prepareRename',
      null,
      (snapshot, { position }) => {
        const found = prepareRenameAcross(snapshot, readPosition(position));
        return found === undefined ? null : { range: rangeOf(found.at), placeholder: found.name };
      },
    ),
    onDocument<RenameParams, WorkspaceEdit | null>(
      'textDocument/rename',
      null,
      (snapshot, { position, newName }, view) => {
        const path = view.pathOf(snapshot.uri);
        const renamed = renameAcross(snapshot, path, readPosition(position), newName, view.kitchen());
        if (!renamed.ok) throw new ResponseError(REQUEST_FAILED, renamed.why);
        return filesEditOf(snapshot, renamed.own, renamed.edits, view);
      },
    ),
    onRequest<RenameFilesParams, WorkspaceEdit | null>('workspace/willRenameFiles', null, ({ files }, view) => {
      const moves = files.flatMap(({ oldUri, newUri }) => {
        const [from, to] = [view.pathOf(oldUri), view.pathOf(newUri)];
        return from === undefined || to === undefined ? [] : [{ from, to }];
      });
      const edits = mendLinks(moves, view.kitchen().index);
      return edits.size === 0 ? null : filesEditOf(undefined, [], edits, view);
    }),
  ],
};
