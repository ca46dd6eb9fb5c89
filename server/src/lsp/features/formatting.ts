import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver';
import { formatting } from '../../editor/formatting.ts';
import { editsOf, readPosition, readRange } from '../convert.ts';
import { type Feature, onDocument } from '../feature.ts';

/** The layout is canonical, so the editor's tab size is not asked. */
export const formattingFeature: Feature = {
  capability: () => ({
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
  }),
  requests: [
    onDocument<DocumentFormattingParams, TextEdit[]>('textDocument/formatting', [], (snapshot) =>
      editsOf(snapshot, formatting(snapshot)),
    ),
    onDocument<DocumentRangeFormattingParams, TextEdit[]>('textDocument/rangeFormatting', [], (snapshot, params) => {
      const { start, end } = readRange(params.range);
      // A selection of whole lines ends at the head of the next.
      const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
      return editsOf(snapshot, formatting(snapshot, start.line, last));
    }),
    // The line that was just left, and no other.
    onDocument<DocumentOnTypeFormattingParams, TextEdit[]>('textDocument/onTypeFormatting', [], (snapshot, params) => {
      const { line } = readPosition(params.position);
      return line === 0 ? [] : editsOf(snapshot, formatting(snapshot, line - 1, line - 1));
    }),
  ],
};
