import type {
  Diagnostic,
  WorkDoneProgressBegin,
  WorkDoneProgressEnd,
  WorkDoneProgressReport,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { type Feature, onRequest } from '../feature.ts';
import type { CheckedFile } from '../folder-check.ts';
import {
  type CheckFolderAnswer,
  type CheckFolderParams,
  checkFolderRequest,
  type FindingCounts,
  messageVersion,
} from '../messages.ts';

/** Findings of every file at hand: pulled by clients that can, else pushed on request. */
export const checkFolderFeature: Feature = {
  requests: [
    onRequest<WorkspaceDiagnosticParams, WorkspaceDiagnosticReport>(
      'workspace/diagnostic',
      { items: [] },
      async ({ previousResultIds, partialResultToken, workDoneToken }, view, token) => {
        await view.quiet();
        const before = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
        const items: WorkspaceDocumentDiagnosticReport[] = [];
        const give = (report: WorkspaceDocumentDiagnosticReport) => {
          if (partialResultToken === undefined) items.push(report);
          else view.progress(partialResultToken, { items: [report] });
        };
        const { folder } = view;
        const paths = folder.paths();
        const tell = (value: WorkDone) => {
          if (workDoneToken !== undefined) view.progress(workDoneToken, value);
        };
        const told = percentages(paths.length, (report) => tell({ kind: 'report', ...report }));
        tell({ kind: 'begin', title: 'Checking the recipes', percentage: 0, cancellable: true });
        try {
          await folder.each(paths, token, (file, done) => {
            give(reportOf(file, before.get(file.uri)));
            before.delete(file.uri);
            told(done);
          });
        } finally {
          tell({ kind: 'end' });
        }
        // What is not there any more has no findings.
        if (!token.isCancellationRequested)
          for (const uri of before.keys()) give({ kind: 'full', uri, version: null, items: [] });
        return { items };
      },
    ),
    onRequest<CheckFolderParams, CheckFolderAnswer>(
      checkFolderRequest.method,
      { version: messageVersion, finished: false, files: 0, withFindings: 0, findings: none() },
      async ({ workDoneToken }, view, token) => {
        const { folder } = view;
        const paths = folder.paths();
        const counts = none();
        let files = 0;
        let withFindings = 0;
        const told = percentages(paths.length, (report) => {
          if (workDoneToken !== undefined) view.progress(workDoneToken, { kind: 'report', ...report });
        });
        const finished = await folder.each(paths, token, (file, done) => {
          view.list(file);
          files++;
          if (file.diagnostics.length > 0) withFindings++;
          for (const diagnostic of file.diagnostics) counts[severityOf(diagnostic)]++;
          told(done);
        });
        return { version: messageVersion, finished, files, withFindings, findings: counts };
      },
    ),
  ],
};

type WorkDone = WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd;

/** Tells of each whole percent of a count once, when it is reached. */
function percentages(
  count: number,
  tell: (report: { readonly percentage: number; readonly message: string }) => void,
): (done: number) => void {
  let told = -1;
  return (done) => {
    const percentage = Math.floor((100 * done) / count);
    if (percentage === told) return;
    told = percentage;
    tell({ percentage, message: `${done} of ${count}` });
  };
}

function reportOf(file: CheckedFile, previous: string | undefined): WorkspaceDocumentDiagnosticReport {
  const { uri, version, id, diagnostics } = file;
  return id === previous
    ? { kind: 'unchanged', uri, version, resultId: id }
    : { kind: 'full', uri, version, resultId: id, items: [...diagnostics] };
}

function none(): { -readonly [key in keyof FindingCounts]: number } {
  return { error: 0, warning: 0, info: 0, hint: 0 };
}

const severityOf = ({ severity }: Diagnostic): keyof FindingCounts =>
  severity === 1 ? 'error' : severity === 2 ? 'warning' : severity === 3 ? 'info' : 'hint';
