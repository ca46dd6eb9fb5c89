// Knows how one open page follows its text: it asks the server for the view that is seen once the findings were sent, and for nothing
// while it is hidden; it passes on the caret, and does what was pressed.

import * as vscode from 'vscode';
import { messageVersion, type PageLook, pageActRequest, pageRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { editorEdit } from '../edits.ts';
import { isWritten } from '../written.ts';
import { commandOf, runOver } from './acts.ts';
import { type FromPage, type PageState, type Remedy, readFromPage, type ToPage, type Trouble } from './messages.ts';
import { type LastShown, shellOf } from './shell.ts';

export type Page = vscode.Disposable & {
  readonly panel: vscode.WebviewPanel;
  readonly shows: (uri: vscode.Uri) => boolean;
  /** Shows another text from now on. */
  readonly follow: (document: vscode.TextDocument) => void;
};

/** After this long without an answer, what is shown is said to be older than the text. */
const busyAfterMs = 300;

/** Nothing is looked at otherwise than the text says. */
const asWritten: PageLook = {};

/** Findings come within some ms of a key; whoever checks none of a text sends none. */
const withoutFindingsMs = 150;

export function showPage(
  connection: Connection,
  extension: vscode.Uri,
  panel: vscode.WebviewPanel,
  first: vscode.Uri,
  kept: PageState | undefined,
): Page {
  const script = vscode.Uri.joinPath(extension, 'dist', 'page.js');
  const looks = new Map<string, PageLook>();
  let uri = first;
  let view = kept?.view ?? 'recipe';
  if (kept !== undefined) looks.set(kept.uri, kept.look);
  let readOnly: string | undefined;
  let last: (LastShown & { readonly message: ToPage }) | undefined;
  let style: string | undefined;
  let isReady = false;
  let asking = false;
  let again = false;
  let watching: vscode.Disposable | undefined;
  let trouble: Trouble | null = null;

  const post = (message: ToPage): void => {
    if (isReady) void panel.webview.postMessage(message);
  };
  const documentOf = (): vscode.TextDocument | undefined =>
    vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
  const lookOf = (): PageLook => looks.get(uri.toString()) ?? asWritten;
  const editorOf = (): vscode.TextEditor | undefined =>
    vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());

  const sayTrouble = (now: Trouble | null): void => {
    trouble = now;
    post({ kind: 'trouble', trouble });
  };

  const tellCaret = (): void => {
    const editor = editorOf();
    post({ kind: 'caret', line: editor === undefined ? 0 : editor.selection.active.line + 1 });
  };

  /** Asks for what is seen, one question at a time. */
  const refresh = async (): Promise<void> => {
    if (!panel.visible) return;
    if (asking) {
      again = true;
      return;
    }
    const document = documentOf();
    if (document === undefined || connection.state() === 'stopped') return;
    asking = true;
    const busy = setTimeout(() => post({ kind: 'busy' }), busyAfterMs);
    const [askedUri, askedView, look] = [uri, view, lookOf()];
    try {
      const answer = await connection.ask(pageRequest, {
        version: messageVersion,
        uri: connection.uriOf(document),
        view,
        look,
        ...(readOnly !== undefined && { readOnly }),
        ...(style === undefined && { style: true }),
      });
      const isWanted = askedUri === uri && askedView === view && look === lookOf();
      if (answer === null || !isWanted) return;
      style = answer.style ?? style;
      panel.title = answer.title;
      const message: ToPage = {
        kind: 'show',
        state: { uri: uri.toString(), view, look },
        html: answer.html,
        documentVersion: answer.documentVersion,
        ...(style !== undefined && { style }),
      };
      const isSame = last !== undefined && JSON.stringify(last.message) === JSON.stringify(message);
      last = { style: style ?? '', html: answer.html, message };
      if (!isSame) post(message);
    } catch (error) {
      connection.log.error('Showing the recipe failed.', error);
    } finally {
      clearTimeout(busy);
      asking = false;
      if (again) {
        again = false;
        void refresh();
      }
    }
  };

  /** Listens to what is typed, for as long as the page is seen. */
  const watch = (): vscode.Disposable => {
    let late: NodeJS.Timeout | undefined;
    return vscode.Disposable.from(
      connection.onFindings((of) => {
        if (of.toString() !== uri.toString()) return;
        clearTimeout(late);
        void refresh();
      }),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.uri.toString() !== uri.toString()) return;
        clearTimeout(late);
        late = setTimeout(() => void refresh(), withoutFindingsMs);
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor.document.uri.toString() === uri.toString()) tellCaret();
      }),
      { dispose: () => clearTimeout(late) },
    );
  };

  const turned = (): void => {
    if (panel.visible === (watching !== undefined)) return;
    if (panel.visible) {
      watching = watch();
      void refresh();
      return;
    }
    watching?.dispose();
    watching = undefined;
    // A page that is hidden is thrown away by the editor, and begins again with what was shown last.
    isReady = false;
    panel.webview.html = shellOf(panel.webview, script, last);
  };

  const go = async (line: number, focus: boolean): Promise<void> => {
    const document = documentOf() ?? (await vscode.workspace.openTextDocument(uri));
    const at = document.lineAt(Math.min(line, document.lineCount) - 1);
    const place = new vscode.Position(at.lineNumber, at.firstNonWhitespaceCharacterIndex);
    const shown = editorOf();
    const editor =
      shown !== undefined && !focus
        ? shown
        : await vscode.window.showTextDocument(document, {
            viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
            preserveFocus: !focus,
          });
    editor.selection = new vscode.Selection(place, place);
    editor.revealRange(at.range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  };

  const say = (words: string, refused = false): void => post({ kind: 'said', words, refused });

  const act = async ({ act: name, arg, value }: Extract<FromPage, { kind: 'act' }>): Promise<void> => {
    const document = documentOf();
    if (document === undefined) return;
    const own = commandOf(name, arg);
    if (own !== undefined) return runOver(document, editorOf()?.viewColumn, own);
    const key = uri.toString();
    const answer = await connection.ask(pageActRequest, {
      version: messageVersion,
      uri: connection.uriOf(document),
      look: lookOf(),
      act: name,
      arg,
      value,
    });
    if (!answer.ok) return say(answer.why, true);
    if (answer.edits !== undefined) {
      if (document.version !== answer.documentVersion)
        return say('The text was changed in the meantime, so nothing was written.', true);
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, answer.edits.map(editorEdit));
      if (readOnly !== undefined || !(await vscode.workspace.applyEdit(edit)))
        return say('This recipe cannot be changed here: it is read-only.', true);
    }
    if (answer.look !== undefined) {
      looks.set(key, answer.look);
      void refresh();
    }
    if (answer.said !== undefined) say(answer.said);
  };

  const undo = async (): Promise<void> => {
    const document = documentOf();
    if (document === undefined) return;
    await vscode.window.showTextDocument(document, { viewColumn: editorOf()?.viewColumn ?? vscode.ViewColumn.One });
    await vscode.commands.executeCommand('undo');
    panel.reveal(undefined, false);
  };

  const remedy = async (does: Remedy): Promise<void> => {
    if (does === 'restart') await vscode.commands.executeCommand('quern.restartServer');
    if (does === 'log') connection.log.show();
    if (does === 'reopen') {
      await vscode.window.showTextDocument(uri, { viewColumn: vscode.ViewColumn.One, preserveFocus: true });
      sayTrouble(null);
    }
  };

  const heard = async (message: FromPage): Promise<void> => {
    switch (message.kind) {
      case 'ready':
        isReady = true;
        post({ kind: 'trouble', trouble });
        tellCaret();
        if (last !== undefined) post(last.message);
        return;
      case 'view':
        view = message.view;
        return refresh();
      case 'go':
        return go(message.line, message.focus);
      case 'act':
        return act(message);
      case 'undo':
        return undo();
      case 'remedy':
        return remedy(message.does);
    }
  };

  const follow = (document: vscode.TextDocument): void => {
    if (document.uri.toString() === uri.toString()) {
      tellCaret();
      return;
    }
    uri = document.uri;
    sayTrouble(null);
    readOnly = undefined;
    void settle();
    tellCaret();
  };

  /** Finds out whether the text may be written, and shows it. */
  const settle = async (): Promise<void> => {
    const at = uri;
    const why = await whyReadOnly(at);
    if (at !== uri) return;
    readOnly = why;
    await refresh();
  };

  const listening = vscode.Disposable.from(
    panel.webview.onDidReceiveMessage((sent: unknown) => {
      const message = readFromPage(sent);
      if (message === undefined) return;
      heard(message).then(undefined, (error: unknown) => {
        connection.log.error('The page could not do what was asked.', error);
        say('Quern could not do this. Its log says why.', true);
      });
    }),
    panel.onDidChangeViewState(turned),
    connection.onState((state) => {
      if (state === 'running') {
        sayTrouble(null);
        void refresh();
      } else if (state === 'stopped') sayTrouble(stopped(new Date()));
    }),
    vscode.workspace.onDidCloseTextDocument((document) => {
      if (document.uri.toString() === uri.toString()) sayTrouble(closed);
    }),
    vscode.workspace.onDidOpenTextDocument((document) => {
      if (document.uri.toString() !== uri.toString()) return;
      sayTrouble(null);
      void refresh();
    }),
    vscode.workspace.onDidGrantWorkspaceTrust(() => void settle()),
  );

  panel.webview.html = shellOf(panel.webview, script);
  if (connection.state() === 'stopped') trouble = stopped(new Date());
  if (panel.visible) watching = watch();
  void settle();

  return {
    panel,
    shows: (other) => other.toString() === uri.toString(),
    follow,
    dispose: () => {
      watching?.dispose();
      listening.dispose();
    },
  };
}

async function whyReadOnly(uri: vscode.Uri): Promise<string | undefined> {
  if (!vscode.workspace.isTrusted) return 'This folder is not trusted: the page shows the recipe and writes nothing.';
  if (!isWritten(uri)) return 'This is an older text or a preview: the page shows it and writes nothing.';
  if (uri.scheme === 'untitled') return undefined;
  try {
    const { permissions } = await vscode.workspace.fs.stat(uri);
    const isReadOnly = permissions !== undefined && (permissions & vscode.FilePermission.Readonly) !== 0;
    return isReadOnly ? 'This file is read-only: the page shows it and writes nothing.' : undefined;
  } catch {
    return undefined;
  }
}

const stopped = (at: Date): Trouble => ({
  heading: 'Quern has stopped',
  words: `The page shows what was true at ${two(at.getHours())}:${two(at.getMinutes())} and follows nothing until it is started again.`,
  remedies: [
    { does: 'restart', label: 'Start it again' },
    { does: 'log', label: 'Show the log' },
  ],
});

const closed: Trouble = {
  heading: 'The recipe is closed',
  words: 'The page shows it as it was last, and follows nothing until it is open again.',
  remedies: [{ does: 'reopen', label: 'Open it' }],
};

const two = (n: number): string => String(n).padStart(2, '0');
