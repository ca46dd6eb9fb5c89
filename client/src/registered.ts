// Knows what Quern registers with the editor, wherever it runs, and nothing else.

import * as vscode from 'vscode';
import { registerAdjust } from './commands/adjust.ts';
import { registerCheckFolder } from './commands/check-folder.ts';
import { registerCompare } from './commands/compare.ts';
import { registerConvert } from './commands/convert.ts';
import { registerExplain } from './commands/explain.ts';
import { registerInitFolder } from './commands/init-folder.ts';
import { registerMoveLine } from './commands/move-line.ts';
import { registerNewFile } from './commands/new-file.ts';
import { registerPlan } from './commands/plan.ts';
import { registerPublish } from './commands/publish.ts';
import { registerReadPrinted } from './commands/read-printed.ts';
import { registerRecordTrial } from './commands/record-trial.ts';
import { registerRestartServer } from './commands/restart-server.ts';
import { registerScale } from './commands/scale.ts';
import { registerShowLog } from './commands/show-log.ts';
import { registerWeigh } from './commands/weigh.ts';
import { type Connection, createConnection } from './connection.ts';
import { markFiles } from './kitchen/decorations.ts';
import { createRecipes } from './kitchen/recipes.ts';
import { showKitchen } from './kitchen/tree.ts';
import { registerPage } from './page/panel.ts';
import { createProposals } from './proposal.ts';
import type { ServerRun } from './server-run.ts';
import { showStatus } from './status.ts';

export function register(context: vscode.ExtensionContext, run: ServerRun): Connection {
  const connection = createConnection(run);
  const proposals = createProposals(connection);
  const recipes = createRecipes(connection);
  context.subscriptions.push(
    proposals,
    connection,
    showStatus(connection),
    registerPage(connection, context.extensionUri),
    registerScale(connection, proposals),
    registerConvert(proposals),
    registerAdjust(connection, proposals),
    registerPublish(connection),
    registerWeigh(connection),
    registerMoveLine(),
    registerNewFile(),
    registerInitFolder(connection),
    recipes,
    showKitchen(recipes, context.workspaceState),
    markFiles(recipes),
    registerRecordTrial(connection),
    registerPlan(connection),
    registerReadPrinted(connection),
    registerCompare(connection),
    registerCheckFolder(connection),
    registerExplain(connection, context.extension.packageJSON),
    registerShowLog(connection),
    registerRestartServer(connection),
  );
  // Commands that need the server stay out of the palette until there is one.
  void vscode.commands.executeCommand('setContext', 'quern.active', true);
  // Colours and commands do not wait for the server.
  connection.start().catch((error: unknown) => connection.log.error('The server did not start.', error));
  return connection;
}
