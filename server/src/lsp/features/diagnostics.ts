import type { DocumentDiagnosticParams, DocumentDiagnosticReport } from 'vscode-languageserver';
import { type Feature, onRequest, type View } from '../feature.ts';

/** Findings for clients that ask for them; `session.ts` pushes them to the others. */
export const diagnosticsFeature: Feature = {
  capability: ({ pullsDiagnostics, checksFolderItself }) =>
    pullsDiagnostics
      ? {
          diagnosticProvider: {
            identifier: 'quern',
            interFileDependencies: true,
            workspaceDiagnostics: !checksFolderItself,
          },
        }
      : {},
  requests: [
    onRequest<DocumentDiagnosticParams, DocumentDiagnosticReport>(
      'textDocument/diagnostic',
      { kind: 'full', items: [] },
      async ({ textDocument, previousResultId }, view) => {
        await view.quiet();
        return report(textDocument.uri, previousResultId, view);
      },
      ({ textDocument }) => textDocument.uri,
    ),
  ],
};

function report(uri: string, previous: string | undefined, view: View): DocumentDiagnosticReport {
  const snapshot = view.snapshot(uri);
  if (snapshot === undefined) return { kind: 'full', items: [] };
  const resultId = String(snapshot.serial);
  if (resultId === previous) return { kind: 'unchanged', resultId };
  return { kind: 'full', resultId, items: view.diagnostics(snapshot) };
}
