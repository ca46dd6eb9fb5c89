// Knows how an amount of a food is asked for and its grams shown while it is typed. It refuses to weigh: the server does.

import * as vscode from 'vscode';
import { messageVersion, weighRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { recipeInFront } from '../in-front.ts';
import { plainWords } from '../plain-words.ts';
import { warn } from '../say.ts';

export function registerWeigh(connection: Connection): vscode.Disposable {
  return vscode.commands.registerCommand('quern.weigh', async (given?: unknown) => {
    const document = recipeInFront();
    const selection = vscode.window.activeTextEditor?.selection;
    const selected = document === undefined || selection === undefined ? '' : document.getText(selection);
    const uri = document === undefined ? 'untitled:Untitled' : connection.uriOf(document);
    const pick = vscode.window.createQuickPick();
    pick.title = 'Weigh an amount of a food';
    pick.placeholder = '1 1/2 cup plain flour';
    let asked = 0;
    const show = async (words: string): Promise<void> => {
      const now = ++asked;
      if (words.trim() === '') {
        pick.items = [];
        return;
      }
      try {
        const answer = await connection.ask(weighRequest, { version: messageVersion, uri, words });
        if (now !== asked) return;
        const [grams = '', ...why] = answer.ok ? answer.text.split('\n') : [answer.why];
        const taken = answer.ok ? { description: 'Enter copies it' } : {};
        pick.items = [{ label: plainWords(grams), detail: plainWords(why.join(' ')), alwaysShow: true, ...taken }];
      } catch (error) {
        pick.hide();
        connection.log.error('Weighing failed.', error);
        void warn('Quern could not weigh this. Its log says why.');
      }
    };
    pick.onDidChangeValue((value) => void show(value));
    // What was found can be taken along.
    pick.onDidAccept(() => {
      const [found] = pick.selectedItems;
      if (found !== undefined) void vscode.env.clipboard.writeText(found.label);
      pick.hide();
    });
    pick.onDidHide(() => pick.dispose());
    pick.value = typeof given === 'string' ? given : /[\r\n]/.test(selected) ? '' : selected.trim();
    pick.show();
    await show(pick.value);
  });
}
