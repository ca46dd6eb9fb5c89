import {
  type PrepareRenameParams,
  type Range,
  type RenameParams,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { prepareRename, rename } from '../../editor/rename.ts';
import { rangeOf, readPosition, workspaceEditOf } from '../convert.ts';
import { type Feature, onDocument } from '../feature.ts';

/** The protocol's code for a request that is understood and refused. */
const REQUEST_FAILED = -32803;

export const renameFeature: Feature = {
  capability: ({ preparesRename }) => ({ renameProvider: preparesRename ? { prepareProvider: true } : true }),
  requests: [
    onDocument<PrepareRenameParams, { range: Range; placeholder: string } | null>(
      'textDocument/prepareRename',
      null,
      (snapshot, { position }) => {
        const found = prepareRename(snapshot, readPosition(position));
        return found === undefined ? null : { range: rangeOf(found.at), placeholder: found.name };
      },
    ),
    onDocument<RenameParams, WorkspaceEdit | null>(
      'textDocument/rename',
      null,
      (snapshot, { position, newName }, { abilities }) => {
        const renamed = rename(snapshot, readPosition(position), newName);
        if (!renamed.ok) throw new ResponseError(REQUEST_FAILED, renamed.why);
        return workspaceEditOf(snapshot, renamed.edits, abilities);
      },
    ),
  ],
};
