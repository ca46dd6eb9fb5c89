// Knows the one item of the bar at the bottom: what the recipe in front comes to, and how it was cooked.
// It refuses to work anything out: every number comes from the server.

import * as vscode from 'vscode';
import type { StatusParams } from '../../server/src/lsp/messages.ts';
import type { ServerState } from './connection.ts';
import { plainWords } from './plain-words.ts';
import { sayAloud, sayInBar } from './status-words.ts';

export type StatusBar = vscode.Disposable & {
  /** `last` is what was last said of the recipe in front; undefined where none is in front, or nothing was said. */
  readonly show: (isRecipeInFront: boolean, state: ServerState, last: StatusParams | undefined) => void;
};

/** Left of the place of the caret. */
const priority = 110;

export function createStatusBar(): StatusBar {
  const item = vscode.window.createStatusBarItem('quern.recipe', vscode.StatusBarAlignment.Right, priority);
  item.name = 'Quern: the recipe in front';
  return {
    show: (isRecipeInFront, state, last) => {
      if (!isRecipeInFront) return item.hide();
      if (state === 'stopped') {
        item.text = '$(error) Recipes are not being checked';
        item.tooltip = 'Start the server again';
        item.command = 'quern.restartServer';
        item.accessibilityInformation = { label: 'Quern stopped: recipes are not being checked' };
      } else if (last === undefined) {
        item.text = state === 'starting' ? 'Quern is starting' : 'Reading the recipe';
        item.tooltip = undefined;
        item.command = undefined;
        item.accessibilityInformation = { label: item.text };
      } else {
        const said = sayAloud(last);
        item.text = plainWords(sayInBar(last));
        item.tooltip = [...said.map(plainWords), 'Show the recipe as a page'].join('\n');
        item.command = 'quern.showPage';
        item.accessibilityInformation = { label: `Recipe: ${said.join(' ')}`, role: 'button' };
      }
      item.show();
    },
    dispose: () => item.dispose(),
  };
}
