import type { DocumentDiagnosticParams, DocumentDiagnosticReport } from 'vscode-languageserver';
import { type Feature, onRequest } from '../feature.ts';

const NOTHING: DocumentDiagnosticReport = { kind: 'full', items: [] };

/** Findings for clients that ask for them; `session.ts` pushes them to the others. */
export const diagnosticsFeature: Feature = {
  capability: ({ pullsDiagnostics, checksFolderItself }) =>
    pullsDiagnostics
      ? {
          diagnosticProvider: {
            identifier: 'quern',
            interFileDependencies: true,
            workspaceDiagnostics: !checksFolderItself,
            workDoneProgress: true,
          },
        }
      : {},
  requests: [
    onRequest<DocumentDiagnosticParams, DocumentDiagnosticReport>(
      'textDocument/diagnostic',
      NOTHING,
      async ({ textDocument, previousResultId }, view, token) => {
        await view.quiet();
        await view.workedOut(textDocument.uri, token);
        if (token.isCancellationRequested) return NOTHING;
        const snapshot = view.snapshot(textDocument.uri);
        return snapshot === undefined ? NOTHING : view.reports.of(snapshot, previousResultId);
      },
      ({ textDocument }) => textDocument.uri,
    ),
  ],
};
