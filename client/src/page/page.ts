// Knows how one open page follows its text: it asks the server for the view that is seen once the findings were sent, and for nothing
// while it is hidden; it passes on the caret, and has done what was pressed.

import * as vscode from 'vscode';
import { messageVersion, type PageLook, pageRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { doAct } from './acts.ts';
import { type FromPage, type PageState, type Remedy, readFromPage, type ToPage, type Trouble } from './messages.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { withPictures } from './pictures.ts';
import { type LastShown, shellOf } from './shell.ts';
import { documentOf, editorOf, focusText, goToLine, isOf } from './text.ts';
import { closed, gone, stopped, whyReadOnly } from './troubles.ts';

export type Page = vscode.Disposable & {
  readonly panel: vscode.WebviewPanel;
  readonly shows: (document: vscode.TextDocument) => boolean;
  /** Shows another text from now on. */
  readonly follow: (document: vscode.TextDocument) => void;
};

type Act = Extract<FromPage, { kind: 'act' }>;

const nameOf = (uri: vscode.Uri): string => uri.path.split('/').at(-1) ?? uri.path;

/** A slider says every value on its way; only the last of those that wait is worked out. */
const isSameAgain = (waiting: Act | undefined, act: Act): boolean =>
  waiting !== undefined && waiting.act === act.act && JSON.stringify(waiting.arg) === JSON.stringify(act.arg);

/** After this long without an answer, what is shown is said to be older than the text. */
const busyAfterMs = 300;

/** Longer than between two keys. */
const stillAfterMs = 300;

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
  let isHasty = true;
  let still: NodeJS.Timeout | undefined;
  let watching: vscode.Disposable | undefined;
  let trouble: Trouble | null = connection.state() === 'stopped' ? stopped(new Date()) : null;
  const pressed: Act[] = [];

  const lookOf = (): PageLook => looks.get(uri.toString()) ?? asWritten;

  const post = (message: ToPage): void => {
    if (isReady) void panel.webview.postMessage(message);
  };

  const sayTrouble = (now: Trouble | null): void => {
    trouble = now;
    post({ kind: 'trouble', trouble });
  };

  const tellCaret = (): void => {
    const editor = editorOf(uri);
    post({ kind: 'caret', line: editor === undefined ? 0 : editor.selection.active.line + 1 });
  };

  const ask = oneAtATime(async () => {
    const hasty = isHasty;
    isHasty = true;
    const document = documentOf(uri);
    if (!panel.visible || document === undefined || connection.state() === 'stopped') return;
    const busy = hasty ? setTimeout(() => post({ kind: 'busy' }), busyAfterMs) : undefined;
    const asked = { uri, view, look: lookOf() };
    try {
      const answer = await connection.ask(pageRequest, {
        version: messageVersion,
        uri: connection.uriOf(document),
        view,
        look: asked.look,
        hasty,
        ...(readOnly !== undefined && { readOnly }),
        ...(style === undefined && { style: true }),
      });
      const isWanted = asked.uri === uri && asked.view === view && asked.look === lookOf();
      // Whatever changed meanwhile has asked for another.
      if (answer === null || !isWanted) return;
      style ??= answer.style ?? '';
      panel.title = answer.title === '' ? nameOf(asked.uri) : answer.title;
      const html = withPictures(answer.html, panel.webview, uri);
      const message: ToPage = {
        kind: 'show',
        state: { uri: uri.toString(), view, look: asked.look },
        html,
        style,
        documentVersion: answer.documentVersion,
      };
      last = { style, html, message };
      post(message);
    } catch (error) {
      connection.log.error('Showing the recipe failed.', error);
    } finally {
      clearTimeout(busy);
    }
  });

  /** At once, and once more with what takes long when nobody types. */
  const refresh = (): void => {
    clearTimeout(still);
    if (!panel.visible) return;
    still = setTimeout(() => {
      isHasty = false;
      ask();
    }, stillAfterMs);
    ask();
  };

  /** Finds out whether the text may be written, and shows it. */
  const settle = async (): Promise<void> => {
    const at = uri;
    const why = await whyReadOnly(at);
    if (at !== uri) return;
    readOnly = why;
    refresh();
  };

  /** Listens to what is typed, for as long as the page is seen. */
  const watch = (): vscode.Disposable => {
    let late: NodeJS.Timeout | undefined;
    return vscode.Disposable.from(
      connection.onFindings((of) => {
        if (of.toString() !== uri.toString()) return;
        clearTimeout(late);
        refresh();
      }),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (!isOf(uri, document)) return;
        clearTimeout(late);
        late = setTimeout(refresh, withoutFindingsMs);
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (isOf(uri, textEditor.document)) tellCaret();
      }),
      { dispose: () => clearTimeout(late) },
    );
  };

  const turned = (): void => {
    if (panel.visible === (watching !== undefined)) return;
    if (panel.visible) {
      watching = watch();
      refresh();
      return;
    }
    watching?.dispose();
    watching = undefined;
    clearTimeout(still);
    // A page that is hidden is thrown away by the editor, and begins again with what was shown last.
    isReady = false;
    panel.webview.html = shellOf(panel.webview, script, last);
  };

  const failed = (error: unknown): void => {
    connection.log.error('The page could not do what was asked.', error);
    post({ kind: 'said', words: 'Quern could not do this. Its log says why.', refused: true });
  };

  const act = async (one: Act): Promise<void> => {
    const at = uri;
    const acted = await doAct(connection, at, panel.viewColumn, lookOf(), one);
    if (!acted.ok) return post({ kind: 'said', words: acted.why, refused: true });
    if (acted.look !== undefined) looks.set(at.toString(), acted.look);
    if (acted.look !== undefined) refresh();
    if (acted.said !== undefined) post({ kind: 'said', words: acted.said, refused: false });
  };

  /** In their order: each begins with what the one before has left to look at. */
  const actAll = oneAtATime(async () => {
    for (let one = pressed.shift(); one !== undefined; one = pressed.shift()) await act(one).catch(failed);
  });

  const undo = async (): Promise<void> => {
    await focusText(uri, panel.viewColumn);
    await vscode.commands.executeCommand('undo');
    panel.reveal(undefined, false);
  };

  const remedy = async (does: Remedy): Promise<void> => {
    if (does === 'restart') await vscode.commands.executeCommand('quern.restartServer');
    if (does === 'log') connection.log.show();
    if (does === 'reopen') await focusText(uri, panel.viewColumn, true);
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
        return goToLine(uri, panel.viewColumn, message.line, message.focus);
      case 'act':
        if (isSameAgain(pressed.at(-1), message)) pressed.pop();
        pressed.push(message);
        return actAll();
      case 'undo':
        return undo();
      case 'remedy':
        return remedy(message.does);
    }
  };

  const listening = vscode.Disposable.from(
    panel.webview.onDidReceiveMessage((sent: unknown) => {
      const message = readFromPage(sent);
      if (message === undefined) return;
      heard(message).catch(failed);
    }),
    panel.onDidChangeViewState(turned),
    connection.onState((state) => {
      if (state === 'stopped') sayTrouble(stopped(new Date()));
      else if (state === 'running') {
        sayTrouble(null);
        refresh();
      }
    }),
    vscode.workspace.onDidCloseTextDocument((document) => {
      if (isOf(uri, document)) sayTrouble(closed);
    }),
    vscode.workspace.onDidOpenTextDocument((document) => {
      if (!isOf(uri, document)) return;
      sayTrouble(null);
      void settle();
    }),
    vscode.workspace.onDidGrantWorkspaceTrust(() => void settle()),
  );

  const icons = vscode.Uri.joinPath(extension, 'syntaxes', 'icons');
  panel.iconPath = {
    light: vscode.Uri.joinPath(icons, 'quern-light.svg'),
    dark: vscode.Uri.joinPath(icons, 'quern-dark.svg'),
  };
  panel.webview.html = shellOf(panel.webview, script);
  if (panel.visible) watching = watch();
  if (documentOf(uri) !== undefined) void settle();
  // A page that is restored may be there before its text.
  else vscode.workspace.openTextDocument(uri).then(undefined, () => sayTrouble(gone));

  return {
    panel,
    shows: (document) => isOf(uri, document),
    follow: (document) => {
      if (!isOf(uri, document)) {
        uri = document.uri;
        sayTrouble(null);
        void settle();
      }
      tellCaret();
    },
    dispose: () => {
      clearTimeout(still);
      watching?.dispose();
      listening.dispose();
    },
  };
}
