// Knows the panel that shows a recipe as a page beside its text: which recipe, how it is opened, restored and closed.
// It refuses to know what a page shows: it comes whole from the server, and lives by its own script.

import * as vscode from 'vscode';
import type { Connection } from '../connection.ts';
import { isWritten } from '../written.ts';
import { readState } from './messages.ts';
import { type Page, showPage } from './page.ts';
import { pictureRoots } from './pictures.ts';

const panelType = 'quern.page';

export function registerPage(connection: Connection, extension: vscode.Uri): vscode.Disposable {
  let open: Page | undefined;

  const take = (panel: vscode.WebviewPanel, uri: vscode.Uri, kept: unknown): void => {
    const page = showPage(connection, extension, panel, uri, readState(kept));
    open = page;
    panel.onDidDispose(() => {
      page.dispose();
      if (open === page) open = undefined;
    });
  };

  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    if (document?.languageId !== 'quern') {
      open?.panel.reveal();
      return;
    }
    if (open !== undefined) {
      // Who asks for what is in sight wants to be there.
      const isShown = open.panel.visible && open.shows(document);
      open.follow(document);
      open.panel.reveal(undefined, !isShown);
      return;
    }
    const panel = vscode.window.createWebviewPanel(
      panelType,
      'Recipe',
      { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
      optionsOf(extension, document.uri),
    );
    take(panel, document.uri, undefined);
  };

  return vscode.Disposable.from(
    vscode.commands.registerCommand('quern.showPage', show),
    vscode.window.onDidChangeActiveTextEditor((editor) => {
      if (editor?.document.languageId === 'quern' && isWritten(editor.document.uri)) open?.follow(editor.document);
    }),
    vscode.window.registerWebviewPanelSerializer(panelType, {
      deserializeWebviewPanel: async (panel, kept: unknown) => {
        const state = readState(kept);
        const uri = state === undefined ? vscode.window.activeTextEditor?.document.uri : vscode.Uri.parse(state.uri);
        if (uri === undefined || open !== undefined) return panel.dispose();
        panel.webview.options = optionsOf(extension, uri);
        take(panel, uri, kept);
      },
    }),
    { dispose: () => open?.panel.dispose() },
  );
}

const optionsOf = (extension: vscode.Uri, recipe: vscode.Uri): vscode.WebviewOptions & vscode.WebviewPanelOptions => ({
  enableScripts: true,
  enableFindWidget: true,
  localResourceRoots: [vscode.Uri.joinPath(extension, 'dist'), ...pictureRoots(recipe)],
});
