// Knows how a cook is asked for a size, shown what would change, and how the change is made in one undo step.
// It refuses to scale: the server says which edits to make and what does not scale by itself.

import * as vscode from 'vscode';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type MessageEdit, messageVersion, type ScaleAnswer, scaleRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { editorEdit } from '../edits.ts';
import { plainWords } from '../plain-words.ts';
import { inform, warn } from '../say.ts';

const previewScheme = 'quern-scaled';

/** A scaling that was worked out and not yet made. */
type Proposal = {
  readonly document: vscode.TextDocument;
  /** The document's version the edits belong to. */
  readonly documentVersion: number;
  readonly to: string;
  readonly scaling: Extract<ScaleAnswer, { ok: true }>;
};

/** What a key binding may give: the wish, and whether to make the change without showing it first. */
type ScaleArguments = { readonly to?: string; readonly apply?: boolean };

export function registerScale(connection: Connection): vscode.Disposable {
  const proposals = new Map<string, Proposal>();
  const previews: vscode.TextDocumentContentProvider = {
    provideTextDocumentContent: (uri) => {
      const proposal = proposals.get(uri.toString());
      return proposal && textAfter(proposal.document, proposal.scaling.edits);
    },
  };

  const scale = async (given: ScaleArguments = {}): Promise<void> => {
    const document = vscode.window.activeTextEditor?.document;
    if (document?.languageId !== 'quern') return;
    const proposal = await choose(connection, document, given.to);
    if (proposal === undefined) return;
    if (given.apply === true) return make(proposal, true);
    const answer = await show(proposal);
    if (answer === 'apply') await make(proposal, false);
    if (answer === 'compare') {
      const preview = document.uri.with({ scheme: previewScheme, query: `${document.version}&${proposal.to}` });
      proposals.set(preview.toString(), proposal);
      await vscode.commands.executeCommand('vscode.diff', document.uri, preview, titleOf(proposal));
    }
  };

  const finish = async (apply: boolean): Promise<void> => {
    const open = previewInFront();
    const proposal = open && proposals.get(open.preview.toString());
    if (open === undefined || proposal === undefined) return;
    await vscode.window.tabGroups.close(open.tab);
    if (apply) await make(proposal, false);
  };

  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(previewScheme, previews),
    vscode.workspace.onDidCloseTextDocument((document) => proposals.delete(document.uri.toString())),
    vscode.commands.registerCommand('quern.scale', scale),
    vscode.commands.registerCommand('quern.scaleApply', () => finish(true)),
    vscode.commands.registerCommand('quern.scaleLeave', () => finish(false)),
  );
}

/** Asks until there is a size that can be worked out, or the cook leaves it. A size that is given is not asked for. */
async function choose(
  connection: Connection,
  document: vscode.TextDocument,
  given: string | undefined,
): Promise<Proposal | undefined> {
  let why: string | undefined;
  while (true) {
    const to = given ?? (await askForSize(why));
    if (to === undefined) return undefined;
    const answer = await propose(connection, document, to);
    if ('scaling' in answer) return answer;
    if (given !== undefined) {
      void warn(answer.why);
      return undefined;
    }
    why = answer.why;
  }
}

const usualSizes: readonly vscode.QuickPickItem[] = [{ label: 'double' }, { label: 'half' }, { label: 'triple' }];

/** What the cook typed, or one of the usual sizes; says why the last wish could not be met. */
function askForSize(why = 'Scale the recipe'): Promise<string | undefined> {
  const pick = vscode.window.createQuickPick();
  pick.title = why;
  pick.placeholder = 'by 1.5, to 12 slices, to 24 rolls of 60 g, to round 28 x 3 cm, for 230 g plums';
  pick.items = usualSizes;
  const typing = pick.onDidChangeValue((value) => {
    const typed = value.trim();
    const usual = usualSizes.filter((size) => size.label.startsWith(typed));
    pick.items = usual.length > 0 ? usual : [{ label: typed, alwaysShow: true }];
  });
  return settle(pick, () => pick.selectedItems[0]?.label).finally(() => typing.dispose());
}

async function propose(
  connection: Connection,
  document: vscode.TextDocument,
  to: string,
): Promise<Proposal | { readonly why: string }> {
  const documentVersion = document.version;
  try {
    const uri = connection.uriOf(document);
    const answer = await connection.ask(scaleRequest, { version: messageVersion, uri, to });
    return answer.ok ? { document, documentVersion, to, scaling: answer } : answer;
  } catch (error) {
    connection.log.error('Scaling failed.', error);
    return { why: 'Quern could not scale this recipe. Its log says why.' };
  }
}

type Choice = vscode.QuickPickItem & { readonly choice?: 'apply' | 'compare' };

/** Shows every change as a line; only the first two lines do something. */
function show(proposal: Proposal): Promise<'apply' | 'compare' | undefined> {
  const { changes, said } = proposal.scaling;
  const pick = vscode.window.createQuickPick<Choice>();
  pick.title = titleOf(proposal);
  pick.placeholder = 'Look through the changes, then apply them';
  pick.ignoreFocusOut = true;
  pick.items = [
    { label: '$(check) Apply', description: countChanges(changes.length), choice: 'apply' },
    { label: '$(diff) Compare side by side', choice: 'compare' },
    ...heading('Does not scale by itself', said),
    ...said.flatMap(sayWhatStays),
    ...heading('What changes', changes),
    ...changes.map((change) => ({ label: plainWords(change) })),
  ];
  return settle(pick, () => pick.selectedItems[0]?.choice);
}

function heading(label: string, lines: readonly string[]): Choice[] {
  return lines.length === 0 ? [] : [{ label, kind: vscode.QuickPickItemKind.Separator }];
}

/** A sentence over as many lines as it needs, because a line of the list is cut off at its end. */
function sayWhatStays(said: string): Choice[] {
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
function settle<Item extends vscode.QuickPickItem, Value>(
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

async function make(proposal: Proposal, sayTheRest: boolean): Promise<void> {
  const { document, scaling, to } = proposal;
  if (document.isClosed || document.version !== proposal.documentVersion) {
    void warn('The recipe was changed in the meantime, so it was not scaled. Scale it again.');
    return;
  }
  const edit = new vscode.WorkspaceEdit();
  edit.set(document.uri, scaling.edits.map(editorEdit));
  const made = await vscode.workspace.applyEdit(edit);
  if (!made) {
    void warn('This recipe cannot be changed here: it is read-only.');
    return;
  }
  await vscode.window.showTextDocument(document);
  if (sayTheRest && scaling.said.length > 0) {
    void inform(`Scaled: ${to}. ${scaling.said.join(' ')}`);
  }
}

function textAfter(document: vscode.TextDocument, edits: readonly MessageEdit[]): string {
  const before = TextDocument.create(
    document.uri.toString(),
    document.languageId,
    document.version,
    document.getText(),
  );
  return TextDocument.applyEdits(before, [...edits]);
}

function titleOf({ document, to }: Proposal): string {
  return `${document.uri.path.split('/').at(-1)}, scaled: ${to}`;
}

function previewInFront(): { readonly tab: vscode.Tab; readonly preview: vscode.Uri } | undefined {
  const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
  if (!(tab?.input instanceof vscode.TabInputTextDiff) || tab.input.modified.scheme !== previewScheme) return undefined;
  return { tab, preview: tab.input.modified };
}
