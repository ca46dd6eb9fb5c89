// Knows how a recipe is published from the editor: which format is asked, where the page goes too, and it is written there.
// It refuses to lay a page out: the server does.

import * as vscode from 'vscode';
import {
  type DocumentAnswer,
  messageVersion,
  publishRequest,
  reportRequest,
} from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { recipeInFront } from '../in-front.ts';
import { inform, warn } from '../say.ts';

type Format = vscode.QuickPickItem & { readonly format: string; readonly ending: string; readonly language: string };

const pages: readonly Format[] = [
  { label: 'Web page', description: '.html', format: 'html', ending: 'html', language: 'html' },
  { label: 'Markdown', description: '.md', format: 'markdown', ending: 'md', language: 'markdown' },
  { label: 'Plain text', description: '.txt', format: 'text', ending: 'txt', language: 'plaintext' },
  { label: 'Data for search engines', description: '.json', format: 'json-ld', ending: 'json', language: 'json' },
];

const reports: readonly Format[] = [
  { label: 'Text', description: 'one fact a line', format: 'text', ending: 'txt', language: 'plaintext' },
  { label: 'JSON', description: 'for other programs', format: 'json', ending: 'json', language: 'json' },
  { label: 'Web page', description: 'to print', format: 'html', ending: 'html', language: 'html' },
];

/** What a key binding may give: the format, and the file. */
type Given = { readonly format?: string; readonly to?: vscode.Uri };

export function registerPublish(connection: Connection): vscode.Disposable {
  const ask = (document: vscode.TextDocument) =>
    ({ version: messageVersion, uri: connection.uriOf(document) }) as const;

  const run =
    (
      title: string,
      formats: readonly Format[],
      had: (of: vscode.TextDocument, format: string) => Promise<DocumentAnswer>,
    ) =>
    async (given: Given = {}): Promise<void> => {
      const document = recipeInFront();
      if (document === undefined) return;
      const format =
        formats.find((f) => f.format === given.format) ?? (await vscode.window.showQuickPick(formats, { title }));
      if (format === undefined) return;
      try {
        const answer = await had(document, format.format);
        if (!answer.ok) return void warn(answer.why);
        for (const words of answer.said) void warn(words);
        await keep(document, answer.text, format, given.to);
      } catch (error) {
        connection.log.error(`${title} failed.`, error);
        void warn('Quern could not write the page. Its log says why.');
      }
    };

  return vscode.Disposable.from(
    vscode.commands.registerCommand(
      'quern.publish',
      run('Publish as', pages, (of, format) => connection.ask(publishRequest, { ...ask(of), format })),
    ),
    vscode.commands.registerCommand(
      'quern.report',
      run('Report as', reports, (of, format) => connection.ask(reportRequest, { ...ask(of), format })),
    ),
  );
}

/** Beside the recipe, or wherever it is wanted; a recipe that lies in no folder gives a text that was never saved. */
async function keep(recipe: vscode.TextDocument, content: string, format: Format, given?: vscode.Uri): Promise<void> {
  if (given === undefined && recipe.uri.scheme !== 'file') {
    await vscode.window.showTextDocument(
      await vscode.workspace.openTextDocument({ language: format.language, content }),
    );
    return;
  }
  const beside = recipe.uri.with({ path: recipe.uri.path.replace(/(?:\.quern)?$/, `.${format.ending}`) });
  const to = given ?? (await vscode.window.showSaveDialog({ defaultUri: beside, title: 'Where does it go?' }));
  if (to === undefined) return;
  await vscode.workspace.fs.writeFile(to, new TextEncoder().encode(content));
  const open = 'Open';
  const answer = await inform(`Written: ${vscode.workspace.asRelativePath(to)}.`, open);
  if (answer !== open) return;
  if (format.ending === 'html' && to.scheme === 'file') await vscode.env.openExternal(to);
  else await vscode.window.showTextDocument(to);
}
