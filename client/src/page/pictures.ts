// Knows how the pictures of a page are asked for from within a panel: a page names them from its recipe's folder on.
// It refuses to show any other image, and what lies outside the open folders and the recipe's own: the panel's roots hold that.

import * as vscode from 'vscode';

/** As the server writes it: an address relative to the recipe. */
const picture = /(<img class="picture" src=")([^"]*)(")/g;

/** The page with its pictures as the panel can load them. */
export function withPictures(html: string, webview: vscode.Webview, recipe: vscode.Uri): string {
  return html.replace(picture, (_, before: string, src: string, after: string) => {
    const file = vscode.Uri.joinPath(recipe, '..', ...src.replaceAll('&#39;', "'").split('/').map(decodeURIComponent));
    return `${before}${webview.asWebviewUri(file)}${after}`;
  });
}

/** Where they may lie. */
export const pictureRoots = (recipe: vscode.Uri): readonly vscode.Uri[] => [
  ...(vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri),
  ...(recipe.scheme === 'untitled' ? [] : [vscode.Uri.joinPath(recipe, '..')]),
];
