// Knows how a recipe is compared with an earlier version of itself, in a cook's words beside it.
// It refuses to tell two recipes apart: the server does; and to run git: the editor's own extension does.

import * as vscode from 'vscode';
import {
  asTestedRequest,
  diffRequest,
  messageVersion,
  type TrialsAnswer,
  trialsRequest,
} from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { type OldText, textOfLastCommit, textOfTrial } from '../git.ts';
import { recipeInFront } from '../in-front.ts';
import { plainWords } from '../plain-words.ts';
import { inform, warn } from '../say.ts';

const scheme = 'quern-compared';

type Trial = TrialsAnswer['trials'][number];

export function registerCompare(connection: Connection): vscode.Disposable {
  const pages = new Map<string, string>();
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const provider: vscode.TextDocumentContentProvider = {
    onDidChange: changed.event,
    provideTextDocumentContent: (uri) => pages.get(uri.toString()) ?? '',
  };

  const compare = async (
    document: vscode.TextDocument,
    old: OldText,
    since: string,
    /** Another recipe, of which the text is. */
    other?: vscode.Uri,
  ): Promise<void> => {
    const joint = other === undefined ? 'since' : 'against';
    if (!old.known) return void inform(old.why);
    const answer = await connection.ask(diffRequest, {
      version: messageVersion,
      uri: connection.uriOf(document),
      a: old.text,
      ...(other !== undefined && { uriOfA: other.toString() }),
      b: document.getText(),
    });
    if (answer === null) return void warn('Quern could not compare them. Its log says why.');
    const name = document.uri.path.split('/').at(-1) ?? 'recipe';
    const version = old.but === undefined ? old.revision : `${old.revision}: ${old.but}`;
    if (answer.same) {
      const than = other === undefined ? `since ${since}` : `than by ${since}`;
      return void inform(`Nothing in ${name} that a cook would do otherwise ${than} (${version}).`);
    }
    const page = vscode.Uri.from({
      scheme,
      path: `/${name} ${joint} ${since.replaceAll('/', ' ')}.txt`,
      query: document.uri.toString(),
    });
    pages.set(page.toString(), `${name} ${joint} ${since} (${version})\n\n${answer.words}`);
    changed.fire(page);
    await vscode.window.showTextDocument(page, {
      viewColumn: vscode.ViewColumn.Beside,
      preview: true,
      preserveFocus: true,
    });
  };

  const withCommit = async (document: vscode.TextDocument): Promise<void> =>
    compare(document, await textOfLastCommit(document.uri), 'the last commit');

  const withTrial = async (document: vscode.TextDocument, day: unknown): Promise<void> => {
    const uri = connection.uriOf(document);
    const { trials } = await connection.ask(trialsRequest, { version: messageVersion, uri });
    if (trials.length === 0) return void inform('This recipe has no trials yet.');
    const trial = typeof day === 'string' ? trials.find(({ date }) => date === day) : await chooseTrial(trials);
    if (trial === undefined) return;
    const { date, tested } = trial;
    const whichTested = async (texts: readonly string[]): Promise<number | null> =>
      tested === null
        ? null
        : (await connection.ask(asTestedRequest, { version: messageVersion, uri, tested, texts })).at;
    const old = await vscode.window.withProgress(
      { location: vscode.ProgressLocation.Window, title: plainWords(`Looking for what the trial of ${date} tested`) },
      () => textOfTrial(document.uri, date, tested === null ? undefined : whichTested),
    );
    if (old.known) return compare(document, old, `the trial of ${date}`);
    void inform(`${old.why} ${sayFingerprint(trial)}`);
  };

  const withFile = async (document: vscode.TextDocument, given: unknown): Promise<void> => {
    const other = given instanceof vscode.Uri ? given : await chooseRecipe(document.uri);
    if (other === undefined) return;
    const text = (await vscode.workspace.openTextDocument(other)).getText();
    const name = other.path.split('/').at(-1) ?? 'recipe';
    await compare(document, { known: true, text, revision: vscode.workspace.asRelativePath(other) }, name, other);
  };

  const command =
    (run: (document: vscode.TextDocument, given: unknown) => Promise<void>) => async (given?: unknown) => {
      const document = recipeInFront();
      if (document === undefined) return;
      try {
        await run(document, given);
      } catch (error) {
        connection.log.error('Comparing failed.', error);
        void warn('Quern could not compare them. Its log says why.');
      }
    };

  return vscode.Disposable.from(
    changed,
    vscode.workspace.registerTextDocumentContentProvider(scheme, provider),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => pages.delete(uri.toString())),
    vscode.commands.registerCommand('quern.compareWithCommit', command(withCommit)),
    // A key binding may give the file.
    vscode.commands.registerCommand('quern.compareWithFile', command(withFile)),
    // A key binding may give the trial's date.
    vscode.commands.registerCommand('quern.compareWithTrial', command(withTrial)),
  );
}

const mostFiles = 2000;

/** Another recipe of the open folders. */
async function chooseRecipe(but: vscode.Uri): Promise<vscode.Uri | undefined> {
  const found = await vscode.workspace.findFiles('**/*.quern', '**/node_modules/**', mostFiles);
  const items = found
    .filter((uri) => uri.toString() !== but.toString())
    .map((uri) => ({ label: plainWords(vscode.workspace.asRelativePath(uri)), uri }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
  const picked = await vscode.window.showQuickPick(items, { title: 'Compare with another recipe' });
  return picked?.uri;
}

/** The only trial, or the one that is picked; the latest first. */
async function chooseTrial(trials: readonly Trial[]): Promise<Trial | undefined> {
  const [only, ...others] = trials;
  if (others.length === 0) return only;
  const items = trials.toReversed().map((trial) => ({
    label: trial.date,
    description: plainWords([trial.by, trial.verdict].filter((word) => word !== null).join(', ')),
    detail: sayFingerprint(trial),
    trial,
  }));
  const picked = await vscode.window.showQuickPick(items, { title: "Compare with a trial's version" });
  return picked?.trial;
}

function sayFingerprint({ changedLines, asWritten }: Trial): string {
  if (changedLines === null) return 'The trial carries no fingerprint of what it tested.';
  if (asWritten) return 'By its fingerprint, it tested the recipe as it is now.';
  if (changedLines === 0) return 'By its fingerprint, lines that it tested were taken out since.';
  return `By its fingerprint, ${changedLines} ${changedLines === 1 ? 'line was' : 'lines were'} changed since.`;
}
