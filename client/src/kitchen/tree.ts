// Knows how the recipes of a folder are shown in the explorer, in groups that can be chosen.
// It refuses to know what was cooked: the server does.

import * as vscode from 'vscode';
import type { KitchenRecipe } from '../../../server/src/lsp/messages.ts';
import { plainWords } from '../plain-words.ts';
import { sayRecord } from '../status-words.ts';
import { type Group, type Grouping, groupings, groupsOf } from './groups.ts';
import type { Recipes } from './recipes.ts';

type Node = { readonly group: Group } | { readonly recipe: KitchenRecipe; readonly group: Group };

const groupingKey = 'quern.kitchen.grouping';

/** The same three marks as everywhere: an empty, a half and a full circle. */
const icons: Readonly<Record<KitchenRecipe['state'], string>> = {
  'never cooked': 'circle-outline',
  'cooked, changed since': 'color-mode',
  'cooked as written': 'circle-filled',
};

export function showKitchen(recipes: Recipes, memento: vscode.Memento): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  let grouping = readGrouping(memento.get(groupingKey));

  const provider: vscode.TreeDataProvider<Node> = {
    onDidChangeTreeData: changed.event,
    getChildren: async (node) => {
      if (node === undefined)
        return groupsOf(await recipes.list(), grouping, folderOf).map((group): Node => ({ group }));
      return 'recipe' in node ? [] : node.group.recipes.map((recipe): Node => ({ recipe, group: node.group }));
    },
    getTreeItem: (node) => ('recipe' in node ? recipeItem(node.recipe, node.group) : groupItem(node.group)),
  };
  const view = vscode.window.createTreeView('quern.kitchen', { treeDataProvider: provider, showCollapseAll: true });
  const group = async (by: Grouping): Promise<void> => {
    grouping = by;
    view.description = `by ${by}`;
    await memento.update(groupingKey, by);
    await vscode.commands.executeCommand('setContext', groupingKey, by);
    changed.fire();
  };
  view.description = `by ${grouping}`;
  void vscode.commands.executeCommand('setContext', groupingKey, grouping);

  return vscode.Disposable.from(
    changed,
    view,
    recipes.onChange(() => changed.fire()),
    vscode.commands.registerCommand('quern.kitchenByState', () => group('state')),
    vscode.commands.registerCommand('quern.kitchenByTag', () => group('tag')),
    vscode.commands.registerCommand('quern.kitchenByPart', () => group('part')),
    vscode.commands.registerCommand('quern.kitchenByFolder', () => group('folder')),
  );
}

const readGrouping = (value: unknown): Grouping => groupings.find((by) => by === value) ?? 'state';

function groupItem({ key, label, of, state, recipes }: Group): vscode.TreeItem {
  const item = new vscode.TreeItem(plainWords(label), vscode.TreeItemCollapsibleState.Expanded);
  item.id = key;
  const count = `${recipes.length}`;
  item.description = of === undefined ? count : plainWords(`of ${of}, ${count}`);
  if (state !== undefined) item.iconPath = new vscode.ThemeIcon(icons[state]);
  item.accessibilityInformation = {
    label: `${label}${of === undefined ? '' : ` of ${of}`}, ${count} ${recipes.length === 1 ? 'recipe' : 'recipes'}`,
  };
  return item;
}

function recipeItem({ uri, name, line, state, trials, latest, tags }: KitchenRecipe, group: Group): vscode.TreeItem {
  const file = vscode.Uri.parse(uri);
  const item = new vscode.TreeItem(file, vscode.TreeItemCollapsibleState.None);
  item.id = `${group.key} ${uri}`;
  item.label = plainWords(name);
  item.description = plainWords(folderOf(uri));
  const record = sayRecord({ state, trials, latest });
  item.tooltip = [
    name,
    vscode.workspace.asRelativePath(file),
    `${record}.`,
    ...(tags.length === 0 ? [] : [tags.join(', ')]),
  ]
    .map(plainWords)
    .join('\n');
  item.accessibilityInformation = { label: `${name}, ${record}` };
  if (group.state === undefined) item.iconPath = new vscode.ThemeIcon(icons[state]);
  const selection = new vscode.Range(line, 0, line, 0);
  item.command = { command: 'vscode.open', title: 'Open', arguments: [file, { selection, preview: true }] };
  return item;
}

/** The folder in which a file lies, from the open folder on. */
function folderOf(uri: string): string {
  const path = vscode.workspace.asRelativePath(vscode.Uri.parse(uri));
  return path.slice(0, Math.max(path.lastIndexOf('/'), 0));
}
