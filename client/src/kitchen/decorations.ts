// Knows the marks that recipes carry where the editor lists files: cooked as it stands, or changed since.
// It refuses to mark what nobody cooked: that is most of what is written.

import * as vscode from 'vscode';
import type { KitchenRecipe } from '../../../server/src/lsp/messages.ts';
import { sayRecord } from '../status-words.ts';
import type { Recipes } from './recipes.ts';

const badges: Readonly<Record<KitchenRecipe['state'], string | undefined>> = {
  'never cooked': undefined,
  'cooked, changed since': '◐',
  'cooked as written': '●',
};

export function markFiles(recipes: Recipes): vscode.Disposable {
  const changed = new vscode.EventEmitter<undefined>();
  const provider: vscode.FileDecorationProvider = {
    onDidChangeFileDecorations: changed.event,
    provideFileDecoration: async (uri) => {
      if (!uri.path.endsWith('.quern')) return undefined;
      const recipe = await recipes.of(uri);
      const badge = recipe && badges[recipe.state];
      return recipe === undefined || badge === undefined ? undefined : { badge, tooltip: sayRecord(recipe) };
    },
  };
  return vscode.Disposable.from(
    changed,
    recipes.onChange(() => changed.fire(undefined)),
    vscode.window.registerFileDecorationProvider(provider),
  );
}
