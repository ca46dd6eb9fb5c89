// Knows which of the findings that the server pushes are shown: those of files in no tab. A recipe in a tab is asked for its
// own findings as it is typed, and an open `quern.json` is checked by its schema; pushed as well, each would be said twice.

import * as vscode from 'vscode';

type Show = (uri: vscode.Uri, findings: vscode.Diagnostic[]) => void;

export type PushedFindings = vscode.Disposable & {
  /** Passes findings on, or keeps them for as long as the file is in a tab. */
  readonly handle: (uri: vscode.Uri, findings: vscode.Diagnostic[], show: Show) => void;
};

export function holdPushedFindings(): PushedFindings {
  const held = new Map<
    string,
    { readonly uri: vscode.Uri; readonly findings: vscode.Diagnostic[]; readonly show: Show }
  >();
  let shown = inTabs();
  const watching = vscode.window.tabGroups.onDidChangeTabs(() => {
    const before = shown;
    shown = inTabs();
    for (const [key, { uri, findings, show }] of held) {
      if (before.has(key) !== shown.has(key)) show(uri, shown.has(key) ? [] : findings);
    }
  });
  return {
    handle: (uri, findings, show) => {
      const key = uri.toString();
      if (findings.length === 0) held.delete(key);
      else held.set(key, { uri, findings, show });
      show(uri, shown.has(key) ? [] : findings);
    },
    dispose: () => watching.dispose(),
  };
}

/** The files that stand in tabs, by URI. */
function inTabs(): ReadonlySet<string> {
  const uris = vscode.window.tabGroups.all.flatMap((group) =>
    group.tabs.flatMap(({ input }) => {
      if (input instanceof vscode.TabInputText) return [input.uri];
      if (input instanceof vscode.TabInputTextDiff) return [input.original, input.modified];
      return [];
    }),
  );
  return new Set(uris.map((uri) => uri.toString()));
}
