// Knows how a finding's page is asked for and shown beside the recipe.
// It refuses to know what the pages say: the server writes them.

import * as vscode from 'vscode';
import { explainRequest, messageVersion } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { type CodeTitle, codesInManifest } from '../finding-codes.ts';
import { plainWords } from '../plain-words.ts';

const pageScheme = 'quern-page';

export function registerExplain(connection: Connection, manifest: unknown): vscode.Disposable {
  // The recipe that was in front when a page was last asked for: the page shows its arithmetic.
  let recipe: string | undefined;
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const provider: vscode.TextDocumentContentProvider = {
    onDidChange: changed.event,
    provideTextDocumentContent: async (uri) => {
      const about = recipe === undefined ? {} : { uri: recipe };
      const answer = await connection.ask(explainRequest, { version: messageVersion, code: codeOf(uri), ...about });
      return answer?.markdown ?? `# ${codeOf(uri)}\n\nThere is no page for this code.\n`;
    },
  };
  return vscode.Disposable.from(
    changed,
    vscode.workspace.registerTextDocumentContentProvider(pageScheme, provider),
    // Given a code, a link in a hover goes straight to its page.
    vscode.commands.registerCommand('quern.explain', async (given?: unknown) => {
      const code = typeof given === 'string' ? given : await chooseCode(manifest);
      if (code === undefined) return;
      const front = vscode.window.activeTextEditor?.document;
      if (front?.languageId === 'quern') recipe = front.uri.toString();
      changed.fire(pageUri(code));
      await showPage(code);
    }),
  );
}

const pageUri = (code: string): vscode.Uri => vscode.Uri.from({ scheme: pageScheme, path: `/${code}.md` });

async function showPage(code: string): Promise<void> {
  const uri = pageUri(code);
  try {
    await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  } catch {
    // Somebody switched the editor's own Markdown preview off: the page is readable as text too.
    await vscode.window.showTextDocument(uri, { viewColumn: vscode.ViewColumn.Beside, preview: true });
  }
}

function codeOf(uri: vscode.Uri): string {
  return uri.path.replace(/^\//, '').replace(/\.md$/, '');
}

/** The code of the finding at the caret; else one picked from this file's, then from all. */
async function chooseCode(manifest: unknown): Promise<string | undefined> {
  const editor = vscode.window.activeTextEditor;
  const inFile = editor ? findingsIn(editor.document) : [];
  const atCaret = editor ? inFile.filter((finding) => finding.range.contains(editor.selection.active)) : [];
  const [first, ...others] = uniqueCodes(atCaret);
  if (first !== undefined && others.length === 0) return first.code;
  const picked = await vscode.window.showQuickPick(offerCodes(inFile, atCaret, codesInManifest(manifest)), {
    title: 'Explain a finding',
    placeHolder: 'Which finding?',
    matchOnDetail: true,
  });
  return picked?.label;
}

function findingsIn(document: vscode.TextDocument): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(document.uri).filter((finding) => finding.source === 'quern');
}

function uniqueCodes(findings: readonly vscode.Diagnostic[]): CodeTitle[] {
  const titles = new Map<string, string>();
  for (const { code, message } of findings) {
    const value = typeof code === 'object' ? code.value : code;
    if (value !== undefined && !titles.has(String(value))) titles.set(String(value), message);
  }
  return [...titles].map(([code, title]) => ({ code, title }));
}

function offerCodes(
  inFile: readonly vscode.Diagnostic[],
  atCaret: readonly vscode.Diagnostic[],
  all: readonly CodeTitle[],
): vscode.QuickPickItem[] {
  const offered = new Set<string>();
  return [
    ...group('At the caret', uniqueCodes(atCaret)),
    ...group('In this recipe', uniqueCodes(inFile)),
    ...group('All findings', all),
  ];

  function group(name: string, codes: readonly CodeTitle[]): vscode.QuickPickItem[] {
    const fresh = codes.filter(({ code }) => !offered.has(code));
    for (const { code } of fresh) offered.add(code);
    if (fresh.length === 0) return [];
    return [
      { label: name, kind: vscode.QuickPickItemKind.Separator },
      ...fresh.map(({ code, title }) => ({ label: code, detail: plainWords(title) })),
    ];
  }
}
