// Knows how the entries beside the language's name, and the one of the bar, show what the server last said of the recipe in front.
// It refuses to work anything out: every number comes from the server.

import * as vscode from 'vscode';
import { messageVersion, type StatusParams, statusNotification } from '../../server/src/lsp/messages.ts';
import type { Connection } from './connection.ts';
import { plainWords } from './plain-words.ts';
import { createStatusBar } from './status-bar.ts';
import { sayFindings, sayMass, sayRecord } from './status-words.ts';

const selector = { language: 'quern' };
const nowhere: vscode.DocumentSelector = [];

export function showStatus(connection: Connection): vscode.Disposable {
  const findings = vscode.languages.createLanguageStatusItem('quern.findings', selector);
  findings.name = 'Quern: findings';
  const weight = vscode.languages.createLanguageStatusItem('quern.weight', selector);
  weight.name = 'Quern: weight and yield';
  const trials = vscode.languages.createLanguageStatusItem('quern.trials', selector);
  trials.name = 'Quern: trials';
  const bar = createStatusBar();
  const lastByUri = new Map<string, StatusParams>();
  /** What was in front before a page of it was. */
  let before: vscode.TextDocument | undefined;

  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document ?? (isPageInFront() ? before : undefined);
    before = document?.isClosed === true ? undefined : document;
    const last = document && lastByUri.get(connection.uriOf(document));
    bar.show(document?.languageId === 'quern', connection.state(), last);
    showFindings(findings, connection, last);
    showWeight(weight, last);
    showTrials(trials, last);
  };
  show();

  return vscode.Disposable.from(
    bar,
    findings,
    weight,
    trials,
    connection.listen(statusNotification, (params) => {
      if (params.version !== messageVersion) return;
      lastByUri.set(params.uri, params);
      show();
    }),
    connection.onState((state) => {
      // What a server said that is gone is not true of what is typed since.
      if (state !== 'running') lastByUri.clear();
      show();
    }),
    vscode.window.onDidChangeActiveTextEditor(show),
    vscode.workspace.onDidCloseTextDocument((document) => lastByUri.delete(connection.uriOf(document))),
  );
}

/** A page has no text editor: what it shows is the recipe that was in front. */
function isPageInFront(): boolean {
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  return input instanceof vscode.TabInputWebview && input.viewType.endsWith('quern.page');
}

function showFindings(item: vscode.LanguageStatusItem, connection: Connection, last: StatusParams | undefined): void {
  const state = connection.state();
  item.busy = state === 'starting';
  item.severity = vscode.LanguageStatusSeverity.Information;
  item.command = { title: 'Show', command: 'workbench.actions.view.problems' };
  if (state === 'stopped') {
    item.severity = vscode.LanguageStatusSeverity.Error;
    item.text = 'Recipes are not being checked';
    item.command = { title: 'Restart', command: 'quern.restartServer' };
  } else if (last === undefined) {
    item.text = state === 'starting' ? 'Quern is starting' : 'Reading the recipe';
  } else {
    item.text = sayFindings(last.findings);
    if (last.findings.error > 0) item.severity = vscode.LanguageStatusSeverity.Error;
    else if (last.findings.warning > 0) item.severity = vscode.LanguageStatusSeverity.Warning;
  }
}

function showTrials(item: vscode.LanguageStatusItem, last: StatusParams | undefined): void {
  const record = last?.record ?? null;
  item.selector = record === null ? nowhere : selector;
  item.text = record === null ? '' : sayRecord(record);
  item.command = { title: 'Record a Trial', command: 'quern.recordTrial' };
}

function showWeight(item: vscode.LanguageStatusItem, last: StatusParams | undefined): void {
  // A file of foods has neither.
  const isKnown = last !== undefined && (last.massG !== null || last.yield !== null);
  item.selector = isKnown ? selector : nowhere;
  item.text = sayMass(last?.massG ?? null);
  item.detail = plainWords(last?.yield ?? 'no yield given');
  item.command = { title: 'Scale', command: 'quern.scale' };
}
