// Knows the empty page that a panel begins with: what it may load, where the page comes in, and what is said to whoever does not see it.
// It refuses to make anything of a recipe: that comes whole from the server.

import type * as vscode from 'vscode';

/** What was shown last, to begin with; as the server made it. */
export type LastShown = { readonly style: string; readonly html: string };

/** Nothing may be loaded but the script and the sheet that carry this page's own mark, and pictures out of the recipe's folder. */
export function shellOf(webview: vscode.Webview, script: vscode.Uri, last?: LastShown): string {
  const nonce = crypto.randomUUID();
  const policy = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'; img-src ${webview.cspSource}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Recipe</title>
<style nonce="${nonce}" id="sheet">${last?.style ?? ''}</style>
</head>
<body>
<div id="trouble"></div>
<div id="page">${last?.html ?? ''}</div>
<p id="said" class="unseen" role="status"></p>
<script nonce="${nonce}" src="${webview.asWebviewUri(script)}"></script>
</body>
</html>`;
}
