// Knows how a change that was worked out is shown before it is made: as a list, or side by side with the text; and how it is made in one
// undo step, or opened as a recipe of its own. It refuses to know what is changed, and why.

import * as vscode from 'vscode';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { changeRequest, type MessageEdit, messageVersion, type ScaleAnswer } from '../../server/src/lsp/messages.ts';
import type { Connection } from './connection.ts';
import { editorEdit } from './edits.ts';
import { plainWords } from './plain-words.ts';
import { inform, warn } from './say.ts';

const previewScheme = 'quern-proposed';

/** A change that was worked out and not yet made. */
export type Proposal = {
  readonly document: vscode.TextDocument;
  /** The document's version the edits belong to. */
  readonly documentVersion: number;
  /** What is done, for titles: 'scaled: double'. */
  readonly title: string;
  readonly change: Extract<ScaleAnswer, { ok: true }>;
};

/** What a verb of the server is asked. */
export type Verb = { readonly verb: 'adjust' | 'convert'; readonly arg: object };

export type Proposals = vscode.Disposable & {
  /** Asks what a verb would change and offers it, or makes it at once; says why it cannot be done. */
  readonly propose: (document: vscode.TextDocument, verb: Verb, title: string, atOnce: boolean) => Promise<void>;
  /** Shows what would change, and does what is chosen. */
  readonly offer: (proposal: Proposal) => Promise<void>;
  /** Makes it without showing it, and says what it does not change. */
  readonly makeAtOnce: (proposal: Proposal) => Promise<void>;
};

export function createProposals(connection: Connection): Proposals {
  const open = new Map<string, Proposal>();
  let shown = 0;
  const previews: vscode.TextDocumentContentProvider = {
    provideTextDocumentContent: (uri) => {
      const proposal = open.get(uri.toString());
      return proposal && textAfter(proposal);
    },
  };
  const finish = async (makes: boolean): Promise<void> => {
    const front = previewInFront();
    const proposal = front && open.get(front.preview.toString());
    if (front === undefined || proposal === undefined) return;
    await vscode.window.tabGroups.close(front.tab);
    if (makes) await make(proposal, false);
  };
  const parts = vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(previewScheme, previews),
    vscode.workspace.onDidCloseTextDocument((document) => open.delete(document.uri.toString())),
    vscode.commands.registerCommand('quern.writeChanges', () => finish(true)),
    vscode.commands.registerCommand('quern.leaveChanges', () => finish(false)),
  );
  const offer = async (proposal: Proposal): Promise<void> => {
    const answer = await show(proposal);
    if (answer === 'make') await make(proposal, false);
    if (answer !== 'compare') return;
    const preview = proposal.document.uri.with({ scheme: previewScheme, query: String(++shown) });
    open.set(preview.toString(), proposal);
    await vscode.commands.executeCommand('vscode.diff', proposal.document.uri, preview, titleOf(proposal));
  };
  return {
    offer,
    propose: async (document, verb, title, atOnce) => {
      const documentVersion = document.version;
      try {
        const uri = connection.uriOf(document);
        const answer = await connection.ask(changeRequest, { version: messageVersion, uri, ...verb });
        if (!answer.ok) return void inform(answer.why);
        const proposal = { document, documentVersion, title, change: answer };
        await (atOnce ? make(proposal, true) : offer(proposal));
      } catch (error) {
        connection.log.error(`${verb.verb} failed.`, error);
        void warn('Quern could not work this out. Its log says why.');
      }
    },
    makeAtOnce: (proposal) => make(proposal, true),
    dispose: () => parts.dispose(),
  };
}

type Choice = vscode.QuickPickItem & { readonly choice?: 'make' | 'compare' };

/** Shows every change as a line; only the first two lines do something. */
function show(proposal: Proposal): Promise<'make' | 'compare' | undefined> {
  const { changes, said, inFull } = proposal.change;
  const pick = vscode.window.createQuickPick<Choice>();
  pick.title = titleOf(proposal);
  pick.placeholder = 'Look through the changes first';
  pick.ignoreFocusOut = true;
  pick.items = [
    inFull === undefined
      ? { label: '$(check) Write it', description: countChanges(changes.length), choice: 'make' }
      : {
          label: '$(new-file) Open it as a recipe of its own',
          description: 'this file stays as it is',
          choice: 'make',
        },
    { label: '$(diff) Compare side by side', choice: 'compare' },
    ...heading('To be known', said),
    ...said.flatMap(sayInLines),
    ...heading('What changes', changes),
    ...changes.map((change) => ({ label: plainWords(change) })),
  ];
  return settle(pick, () => pick.selectedItems[0]?.choice);
}

function heading(label: string, lines: readonly string[]): Choice[] {
  return lines.length === 0 ? [] : [{ label, kind: vscode.QuickPickItemKind.Separator }];
}

/** A sentence over as many lines as it needs, because a line of the list is cut off at its end. */
function sayInLines(said: string): Choice[] {
  return wrap(plainWords(said), 64).map((line, at) => ({ label: `${at === 0 ? '$(info)' : '$(blank)'} ${line}` }));
}

function wrap(text: string, width: number): string[] {
  if (text.length <= width) return [text];
  const breakAt = text.lastIndexOf(' ', width);
  return breakAt === -1 ? [text] : [text.slice(0, breakAt), ...wrap(text.slice(breakAt + 1), width)];
}

function countChanges(count: number): string {
  return `${count} ${count === 1 ? 'change' : 'changes'}, undone in one step`;
}

/** Shows a pick until a line is accepted that means something, or it is closed. */
export function settle<Item extends vscode.QuickPickItem, Value>(
  pick: vscode.QuickPick<Item>,
  accepted: () => Value | undefined,
): Promise<Value | undefined> {
  return new Promise((resolve) => {
    pick.onDidAccept(() => {
      const value = accepted();
      if (value === undefined) return;
      resolve(value);
      pick.hide();
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
  });
}

async function make(proposal: Proposal, saysTheRest: boolean): Promise<void> {
  const { document, change } = proposal;
  if (document.isClosed || document.version !== proposal.documentVersion) {
    void warn('The recipe was changed in the meantime, so nothing was written. Do it again.');
    return;
  }
  if (change.inFull !== undefined) {
    const content = change.inFull;
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'quern', content }));
  } else {
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, change.edits.map(editorEdit));
    if (!(await vscode.workspace.applyEdit(edit))) {
      void warn('This recipe cannot be changed here: it is read-only.');
      return;
    }
    await vscode.window.showTextDocument(document);
  }
  if (saysTheRest && change.said.length > 0) void inform(`${titleOf(proposal)}. ${change.said.join(' ')}`);
}

function textAfter({ document, change }: Proposal): string {
  if (change.inFull !== undefined) return change.inFull;
  const edits: readonly MessageEdit[] = change.edits;
  const { uri, languageId, version } = document;
  const before = TextDocument.create(uri.toString(), languageId, version, document.getText());
  return TextDocument.applyEdits(before, [...edits]);
}

const titleOf = ({ document, title }: Proposal): string => `${document.uri.path.split('/').at(-1)}, ${title}`;

function previewInFront(): { readonly tab: vscode.Tab; readonly preview: vscode.Uri } | undefined {
  const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
  if (!(tab?.input instanceof vscode.TabInputTextDiff) || tab.input.modified.scheme !== previewScheme) return undefined;
  return { tab, preview: tab.input.modified };
}
