// Knows how the day is planned backwards for the open recipes: when it is eaten is asked, the page is shown beside.
// It refuses to plan: the server does.

import * as vscode from 'vscode';
import { messageVersion, planRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { recipeInFront } from '../in-front.ts';
import { plainWords } from '../plain-words.ts';
import { warn } from '../say.ts';

export function registerPlan(connection: Connection): vscode.Disposable {
  // What was asked for last is offered again.
  let last = '19:30';
  return vscode.commands.registerCommand('quern.planDay', async () => {
    const front = recipeInFront();
    if (front === undefined) return;
    try {
      const recipes = await chooseRecipes(front);
      if (recipes === undefined || recipes.length === 0) return;
      const serve = await vscode.window.showInputBox({
        title: 'When is it eaten?',
        value: last,
        validateInput: (text) => (/^\s*\d{1,2}([:.]\d{2})?\s*$/.test(text) ? undefined : 'A time such as 19:30.'),
      });
      if (serve === undefined) return;
      last = serve;
      const uris = recipes.map((document) => connection.uriOf(document));
      const answer = await connection.ask(planRequest, { version: messageVersion, uris, serve });
      if (!answer.ok) return void warn(answer.why);
      const page = vscode.window.createWebviewPanel(
        'quern.plan',
        plainWords(answer.title),
        { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
        { enableScripts: false, localResourceRoots: [] },
      );
      page.webview.html = answer.html;
    } catch (error) {
      connection.log.error('Planning the day failed.', error);
      void warn('Quern could not plan this day. Its log says why.');
    }
  });
}

/** The recipe in front, and of others that are open those that are picked. */
async function chooseRecipes(front: vscode.TextDocument): Promise<readonly vscode.TextDocument[] | undefined> {
  const open = vscode.workspace.textDocuments.filter(
    (document) => document.languageId === 'quern' && (document === front || document.uri.scheme === 'file'),
  );
  if (open.length < 2) return [front];
  const items = open.map((document) => ({
    label: plainWords(vscode.workspace.asRelativePath(document.uri)),
    picked: document === front,
    document,
  }));
  const picked = await vscode.window.showQuickPick(items, { title: 'What is eaten together?', canPickMany: true });
  return picked?.map(({ document }) => document);
}
