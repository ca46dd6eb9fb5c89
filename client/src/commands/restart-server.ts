import * as vscode from 'vscode';
import type { Connection } from '../connection.ts';
import { fail } from '../say.ts';

export function registerRestartServer(connection: Connection): vscode.Disposable {
  return vscode.commands.registerCommand('quern.restartServer', async () => {
    try {
      await connection.restart();
    } catch (error) {
      connection.log.error('The server did not start.', error);
      const showLog = 'Show Log';
      const answer = await fail('Quern could not be started.', showLog);
      if (answer === showLog) connection.log.show();
    }
  });
}
