// Knows that the editor checks an open `quern.json` by its schema while it is typed, so that Quern's own findings of it,
// which are those of the saved file, are shown only while it is closed.

import * as vscode from 'vscode';

type Show = (uri: vscode.Uri, findings: vscode.Diagnostic[]) => void;

export type HouseProblems = vscode.Disposable & {
  /** Passes findings on, or keeps them until the file is closed. */
  readonly handle: (uri: vscode.Uri, findings: vscode.Diagnostic[], show: Show) => void;
};

export function holdHouseProblems(): HouseProblems {
  const held = new Map<string, { readonly findings: vscode.Diagnostic[]; readonly show: Show }>();
  const again = (isOpen: boolean) => (document: vscode.TextDocument) => {
    const last = held.get(document.uri.toString());
    last?.show(document.uri, isOpen ? [] : last.findings);
  };
  const watching = vscode.Disposable.from(
    vscode.workspace.onDidOpenTextDocument(again(true)),
    vscode.workspace.onDidCloseTextDocument(again(false)),
  );
  return {
    handle: (uri, findings, show) => {
      if (!uri.path.endsWith('/quern.json')) return show(uri, findings);
      held.set(uri.toString(), { findings, show });
      const open = vscode.workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
      show(uri, open ? [] : findings);
    },
    dispose: () => watching.dispose(),
  };
}
