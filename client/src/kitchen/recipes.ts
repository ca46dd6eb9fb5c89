// Knows the recipes of the open folders as the server last listed them, and when they are asked for again.
// It refuses to know how they are shown.

import * as vscode from 'vscode';
import { type KitchenRecipe, kitchenRequest, messageVersion } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';

export type Recipes = vscode.Disposable & {
  /** As they were last listed; asked for where they never were. */
  readonly list: () => Promise<readonly KitchenRecipe[]>;
  /** The one that lies in a file. */
  readonly of: (file: vscode.Uri) => Promise<KitchenRecipe | undefined>;
  /** They may be others now. */
  readonly onChange: vscode.Event<void>;
};

type Listed = {
  readonly recipes: readonly KitchenRecipe[];
  readonly byFile: ReadonlyMap<string, KitchenRecipe>;
};

/** The server may spell an address in another way than the editor. */
const spelled = (uri: vscode.Uri): string => uri.toString();

/** Files that come and go together are listed once. */
const settledAfterMs = 400;

export function createRecipes(connection: Connection): Recipes {
  const changed = new vscode.EventEmitter<void>();
  let last: Promise<Listed> | undefined;
  let waiting: NodeJS.Timeout | undefined;

  const forget = (): void => {
    // Whoever never asked is not told.
    if (last === undefined) return;
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      last = undefined;
      changed.fire();
    }, settledAfterMs);
  };
  const ask = async (): Promise<Listed> => {
    try {
      const { recipes } = await connection.ask(kitchenRequest, { version: messageVersion });
      return { recipes, byFile: new Map(recipes.map((recipe) => [spelled(vscode.Uri.parse(recipe.uri)), recipe])) };
    } catch (error) {
      connection.log.error('Listing the recipes failed.', error);
      return { recipes: [], byFile: new Map() };
    }
  };
  const listed = (): Promise<Listed> => {
    last ??= ask();
    return last;
  };
  const files = vscode.workspace.createFileSystemWatcher('**/{*.quern,quern.json}');
  const parts = vscode.Disposable.from(
    changed,
    files,
    files.onDidCreate(forget),
    files.onDidChange(forget),
    files.onDidDelete(forget),
    vscode.workspace.onDidSaveTextDocument(({ languageId }) => {
      if (languageId === 'quern') forget();
    }),
    vscode.workspace.onDidChangeWorkspaceFolders(forget),
    connection.onState((state) => {
      if (state === 'running') forget();
    }),
  );
  return {
    list: async () => (await listed()).recipes,
    of: async (file) => (await listed()).byFile.get(spelled(file)),
    onChange: changed.event,
    dispose: () => {
      clearTimeout(waiting);
      parts.dispose();
    },
  };
}
