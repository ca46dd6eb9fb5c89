// Knows what is done when something on the page is pressed: what is the editor's own at once, all else as the server says it comes to.

import * as vscode from 'vscode';
import { messageVersion, type PageActAnswer, type PageLook, pageActRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { editorEdit } from '../edits.ts';
import type { FromPage } from './messages.ts';
import { documentOf, focusText } from './text.ts';

type Act = Extract<FromPage, { kind: 'act' }>;

export type Acted =
  | { readonly ok: true; readonly look?: PageLook; readonly said?: string }
  | { readonly ok: false; readonly why: string };

const done: Acted = { ok: true };
const refuse = (why: string): Acted => ({ ok: false, why });

/** What the editor does by itself; commands about a recipe are about the one in front. */
const editorActs: Readonly<
  Record<string, (uri: vscode.Uri, page: vscode.ViewColumn | undefined, arg: unknown) => Promise<unknown>>
> = {
  problems: async () => vscode.commands.executeCommand('workbench.actions.view.problems'),
  explain: async (_, __, arg) => vscode.commands.executeCommand('quern.explain', textIn(arg, 'code')),
  trial: async (uri, page) => {
    await focusText(uri, page);
    await vscode.commands.executeCommand('quern.recordTrial');
  },
  compare: async (uri, page, arg) => {
    await focusText(uri, page);
    await vscode.commands.executeCommand('quern.compareWithTrial', textIn(arg, 'day'));
  },
};

/** `page` is the column that the page is in. */
export async function doAct(
  connection: Connection,
  uri: vscode.Uri,
  page: vscode.ViewColumn | undefined,
  look: PageLook,
  pressed: Act,
): Promise<Acted> {
  const { act, arg, value } = pressed;
  const own = Object.hasOwn(editorActs, act) ? editorActs[act] : undefined;
  if (own !== undefined) {
    await own(uri, page, arg);
    return done;
  }
  const document = documentOf(uri);
  if (document === undefined) return refuse('The recipe is closed.');
  const answer = await connection.ask(pageActRequest, {
    version: messageVersion,
    uri: connection.uriOf(document),
    look,
    act,
    arg,
    value,
  });
  return answer.ok ? write(document, answer) : answer;
}

/** All as one step that can be undone. */
async function write(document: vscode.TextDocument, answer: Extract<PageActAnswer, { ok: true }>): Promise<Acted> {
  const { edits, look, said, documentVersion } = answer;
  if (edits !== undefined) {
    if (document.isClosed || document.version !== documentVersion)
      return refuse('The text was changed in the meantime, so nothing was written.');
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, edits.map(editorEdit));
    if (!(await vscode.workspace.applyEdit(edit)))
      return refuse('This recipe cannot be changed here: it is read-only.');
  }
  return { ok: true, ...(look !== undefined && { look }), ...(said !== undefined && { said }) };
}

function textIn(arg: unknown, key: string): string | undefined {
  if (typeof arg !== 'object' || arg === null || !Object.hasOwn(arg, key)) return undefined;
  const value = (arg as Readonly<Record<string, unknown>>)[key];
  return typeof value === 'string' ? value : undefined;
}
