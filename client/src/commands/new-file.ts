// Knows how a recipe, a variant of the one in front, or a trial kitchen's list of foods is begun.
// It refuses to know more of the notation than its first lines.

import * as vscode from 'vscode';
import { recipeInFront } from '../in-front.ts';

type Beginning = vscode.QuickPickItem & { readonly snippet: string };

const recipe: Beginning = {
  label: 'Recipe',
  description: 'a name, a list and a method',
  snippet:
    'recipe ${1:Name}\n  yield   ${2:12 slices}\n\npart ${3:base}\n  ${4:200 g}     ${5:plain flour}\n\n  do ${6:Whisk the eggs.}\n$0',
};
const foods: Beginning = {
  label: 'Foods of the house',
  description: 'what they weigh, hold and cost',
  snippet:
    'food ${1:stoneground flour}\n  like    ${2:wholemeal flour}\n  1 cup = ${3:120} g\n  price   ${4:1.40} per ${5:1 kg}\n$0',
};

export function registerNewFile(): vscode.Disposable {
  return vscode.commands.registerCommand('quern.new', async (given?: unknown) => {
    const beginnings = [recipe, ...variantOf(recipeInFront()), foods];
    const picked =
      beginnings.find(({ label }) => label === given) ??
      (await vscode.window.showQuickPick(beginnings, { title: 'What is begun?' }));
    if (picked === undefined) return;
    const editor = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'quern' }));
    await editor.insertSnippet(new vscode.SnippetString(picked.snippet));
  });
}

/** Of a recipe that lies on the disk: what builds on it names its file. */
function variantOf(front: vscode.TextDocument | undefined): readonly Beginning[] {
  if (front === undefined || front.isUntitled) return [];
  const file = front.uri.path.split('/').at(-1) ?? '';
  const name = new vscode.SnippetString().appendText(file).value;
  return [
    {
      label: `Variant of ${file}`,
      description: 'saved beside it',
      snippet: `recipe \${1:Name}\n  from    ${name}\n  swap \${2:butter} for \${3:120 g} \${4:margarine}\n$0`,
    },
  ];
}
