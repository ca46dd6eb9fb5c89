// Knows what a test does in the editor, whatever it tests: opens, types, waits for findings, asks for pictures.
// It refuses to know any one feature.

import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import * as vscode from 'vscode';
import { say, waitFor } from './runner.ts';

export async function open(file: string): Promise<vscode.TextEditor> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, 'no folder is open');
  const uri = vscode.Uri.joinPath(folder.uri, file);
  const editor = await vscode.window.showTextDocument(uri, { viewColumn: vscode.ViewColumn.One, preview: false });
  // What a test that failed left behind is no concern of the next.
  if (editor.document.isDirty) await vscode.commands.executeCommand('workbench.action.files.revert');
  return editor;
}

/** The findings of a document once they are as awaited. */
export function findingsOf(
  document: vscode.TextDocument,
  awaited: (findings: readonly vscode.Diagnostic[]) => boolean,
): Promise<readonly vscode.Diagnostic[]> {
  let last: readonly vscode.Diagnostic[] = [];
  return waitFor(`the findings of ${document.uri.path}`, () => {
    last = vscode.languages.getDiagnostics(document.uri).filter(({ source }) => source === 'quern');
    return awaited(last) ? last : undefined;
  }).catch((error: unknown) => {
    throw new Error(
      `${error instanceof Error ? error.message : error} They were: ${[...codes(last)].join(', ') || 'none'}`,
    );
  });
}

export function codes(findings: readonly vscode.Diagnostic[]): ReadonlySet<string> {
  return new Set(findings.map(codeOf));
}

export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

export function placeOf(document: vscode.TextDocument, text: string): vscode.Position {
  const at = document.getText().indexOf(text);
  assert.notEqual(at, -1, `${text} is not in the recipe`);
  return document.positionAt(at + 1);
}

export async function hoverText(document: vscode.TextDocument, place: vscode.Position): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    place,
  );
  return hovers
    .flatMap((hover) => hover.contents)
    .map((content) => (typeof content === 'string' ? content : content.value))
    .join('\n');
}

/** Types a line above the first line that starts with the given text, as one undo step. */
export async function insertLine(document: vscode.TextDocument, line: string, before: string): Promise<void> {
  const at = document
    .getText()
    .split('\n')
    .findIndex((text) => text.startsWith(before));
  assert.notEqual(at, -1, `no line starts with ${before}`);
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, new vscode.Position(at, 0), `${line}\n`);
  assert.ok(await vscode.workspace.applyEdit(edit));
}

export async function replaceText(document: vscode.TextDocument, text: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  const whole = new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length));
  edit.replace(document.uri, whole, text);
  assert.ok(await vscode.workspace.applyEdit(edit));
}

export async function undoOnceTo(document: vscode.TextDocument, before: string): Promise<void> {
  await vscode.commands.executeCommand('undo');
  assert.equal(document.getText(), before);
}

export function allTabs(): vscode.Tab[] {
  return vscode.window.tabGroups.all.flatMap((group) => group.tabs);
}

/** The first occurrence, as one undo step. */
export async function replaceWords(document: vscode.TextDocument, words: string, by: string): Promise<void> {
  const at = document.getText().indexOf(words);
  assert.notEqual(at, -1, `${words} is not in the recipe`);
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, new vscode.Range(document.positionAt(at), document.positionAt(at + words.length)), by);
  assert.ok(await vscode.workspace.applyEdit(edit));
}

export async function closeOthers(document: vscode.TextDocument): Promise<void> {
  const others = allTabs().filter(
    ({ input }) => !(input instanceof vscode.TabInputText) || input.uri.toString() !== document.uri.toString(),
  );
  await vscode.window.tabGroups.close(others);
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

/** To do with the editor what only a cook can; answers whether there is somebody who does. */
export function askHost(what: string): boolean {
  if (process.env.QUERN_SHOTS === undefined) return false;
  say(what);
  return true;
}

/** What the browser says of the page, or of the editor around it (`workbench`); null where there is none yet. */
export async function askPage(question: object): Promise<unknown> {
  const folder = join(process.env.QUERN_SHOTS ?? '.', 'answers');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${Date.now()}-${Math.round(performance.now() * 1000)}.json`);
  askHost(`ask ${JSON.stringify({ file, ...question })}`);
  const text = await waitFor('an answer of the browser', () => {
    try {
      return readFileSync(file, 'utf8');
    } catch {
      return undefined;
    }
  });
  rmSync(file);
  return JSON.parse(text);
}

/** A picture of the whole editor in shots/, where there is somebody who can take it. */
export async function takeScreenshot(name: string, folder = process.env.QUERN_SHOTS): Promise<void> {
  if (process.env.QUERN_SHOTS === undefined) return;
  if (folder === undefined) return;
  const file = join(folder, `${name}.png`);
  const startedAt = Date.now();
  say(`screenshot ${file}`);
  await waitFor(`the picture ${file}`, () => writtenSince(file, startedAt) || undefined);
}

/** A small picture of a part of the editor (left, top, width, height) for the store's page. */
export async function takeForStore(file: string, of: readonly [number, number, number, number]): Promise<void> {
  if (process.env.QUERN_SHOTS === undefined) return;
  const startedAt = Date.now();
  say(`picture ${JSON.stringify({ file, of })}`);
  await waitFor(`the picture ${file}`, () => writtenSince(file, startedAt) || undefined);
}

function writtenSince(file: string, at: number): boolean {
  const stat = statSync(file, { throwIfNoEntry: false });
  return stat !== undefined && stat.mtimeMs >= at && stat.size > 0;
}

/** The language servers that this extension host started. */
export function serverProcesses(): number[] {
  if (!existsSync('/proc/self')) return [];
  return readdirSync('/proc')
    .map(Number)
    .filter((pid) => {
      try {
        const isChild = readFileSync(`/proc/${pid}/status`, 'utf8').includes(`PPid:\t${process.pid}\n`);
        return isChild && readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('dist/server.js');
      } catch {
        return false;
      }
    });
}
