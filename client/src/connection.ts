// Knows how the language server is started, started again after a crash, asked and listened to.
// It refuses to know what a recipe is, and what is shown of the answers.

import * as vscode from 'vscode';
import {
  CloseAction,
  ErrorAction,
  type ErrorHandler,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
  vsdiag,
  WorkDoneProgress,
  type WorkDoneProgressReport,
} from 'vscode-languageclient';
import {
  aliveRequest,
  type HandedParams,
  handedNotification,
  type PrivateNotification,
  type PrivateRequest,
} from '../../server/src/lsp/messages.ts';
import { handFiles } from './handed-files.ts';
import { holdPushedFindings, type PushedFindings } from './pushed-findings.ts';
import { createRestartCounter, type RestartCounter } from './restart-counter.ts';
import { fail, warn } from './say.ts';
import type { ServedClient, ServerRun } from './server-run.ts';
import { createWatchdog } from './watchdog.ts';
import { isWritten } from './written.ts';

export type ServerState = 'starting' | 'running' | 'stopped';

/** The one way in which the rest of the client reaches the server. */
export type Connection = vscode.Disposable & {
  readonly log: vscode.LogOutputChannel;
  readonly state: () => ServerState;
  readonly onState: vscode.Event<ServerState>;
  readonly start: () => Promise<void>;
  /** Stops the server if it runs, forgets its crashes and starts it. */
  readonly restart: () => Promise<void>;
  readonly stop: () => Promise<void>;
  /** Waits for a server that is starting. Rejects when there is no server to answer. */
  readonly ask: <Params, Answer>(
    request: PrivateRequest<Params, Answer>,
    params: Params,
    token?: vscode.CancellationToken,
  ) => Promise<Answer>;
  /** How far a request is that was given this token of its own. */
  readonly onProgress: (token: string, heard: (done: WorkDoneProgressReport) => void) => vscode.Disposable;
  readonly listen: <Params>(
    notification: PrivateNotification<Params>,
    heard: (params: Params) => void,
  ) => vscode.Disposable;
  /** A text whose findings the server has just sent, the same again or others. */
  readonly onFindings: vscode.Event<vscode.Uri>;
  /** A document's URI as the server spells it. */
  readonly uriOf: (document: vscode.TextDocument) => string;
};

const restartWindowMs = 3 * 60 * 1000;
const restartsWithinWindow = 4;

/** A server that works out the largest file it takes answers within a few seconds. */
const askedEveryMs = 5000;
const questionsUnanswered = 4;

export function createConnection(run: ServerRun): Connection {
  const log = vscode.window.createOutputChannel('Quern', { log: true });
  const crashes = createRestartCounter({ most: restartsWithinWindow, windowMs: restartWindowMs, now: Date.now });
  const pushed = holdPushedFindings();
  const findings = new vscode.EventEmitter<vscode.Uri>();
  let handed: HandedParams | undefined;
  const served = run.client({
    ...clientOptions(log, crashes, pushed, findings),
    initializationOptions: () => ({ ...forServer, ...(handed !== undefined && { handed }) }),
  });
  const { client } = served;
  const files = handFiles(
    (folder) => !run.reads(folder),
    (uri) => client.code2ProtocolConverter.asUri(uri),
    (params) => {
      if (client.state === State.Running) void client.sendNotification(handedNotification.method, params);
    },
  );
  const states = new vscode.EventEmitter<ServerState>();
  const watchdog = createWatchdog({
    ask: () => client.sendRequest(aliveRequest.method, {}),
    hung: () => endHung(served, log),
    everyMs: askedEveryMs,
    patience: questionsUnanswered,
  });
  const watching = client.onDidChangeState((change) => {
    if (change.newState === State.Running && !served.isInDebugMode()) watchdog.watch();
    else watchdog.rest();
    states.fire(stateOf(change.newState));
  });
  let starting: Promise<void> | undefined;

  const start = (): Promise<void> => {
    // The first findings are those of a text in its house.
    starting = files.all().then((all) => {
      handed = all;
      return client.start();
    });
    return starting;
  };
  const stop = (): Promise<void> => (client.state === State.Running ? client.stop() : Promise.resolve());

  return {
    log,
    state: () => stateOf(client.state),
    onState: states.event,
    start,
    restart: async () => {
      crashes.reset();
      // A start that failed has been reported by whoever asked for it.
      await starting?.catch(() => undefined);
      await stop();
      await start();
    },
    stop,
    ask: async (request, params, token) => {
      await starting;
      return token === undefined
        ? client.sendRequest(request.method, params)
        : client.sendRequest(request.method, params, token);
    },
    onProgress: (token, heard) =>
      client.onProgress(WorkDoneProgress.type, token, (value) => {
        if (value.kind === 'report') heard(value);
      }),
    listen: (notification, heard) => client.onNotification(notification.method, heard),
    onFindings: findings.event,
    uriOf: (document) => client.code2ProtocolConverter.asUri(document.uri),
    dispose: () => {
      watchdog.rest();
      vscode.Disposable.from(watching, files, pushed, findings, states, log).dispose();
    },
  };
}

/** Ends a server that says nothing any more; what sees it end starts another. */
function endHung(served: ServedClient, log: vscode.LogOutputChannel): void {
  const words = `Quern did not answer for ${(askedEveryMs * questionsUnanswered) / 1000} seconds, so it was stopped and started again.`;
  log.error(words);
  const showLog = 'Show Log';
  void warn(words, showLog).then((answer) => {
    if (answer === showLog) log.show();
  });
  served.kill();
}

/** What the server is told of this client at the start. */
const forServer = {
  status: true,
  runsCommandsItself: true,
  pageScheme: 'quern-page',
  explainCommand: 'quern.explain',
  recordTrialCommand: 'quern.recordTrial',
  scaleCommand: 'quern.scale',
  showPageCommand: 'quern.showPage',
  checksFolderItself: true,
  sizedPictures: true,
};

function clientOptions(
  log: vscode.LogOutputChannel,
  crashes: RestartCounter,
  pushed: PushedFindings,
  sent: vscode.EventEmitter<vscode.Uri>,
): LanguageClientOptions {
  return {
    documentSelector: [{ language: 'quern' }],
    outputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    // A hover links to the page of a finding, and sets its sources in small print.
    markdown: { isTrusted: { enabledCommands: ['quern.explain'] }, supportHtml: true },
    errorHandler: errorHandler(crashes),
    middleware: {
      // Old versions and previews are coloured and explained, but their findings would stand twice in the list.
      provideDiagnostics: async (document, previous, token, next) => {
        const uri = document instanceof vscode.Uri ? document : document.uri;
        if (!isWritten(uri)) return { kind: vsdiag.DocumentDiagnosticReportKind.full, items: [] };
        const report = await next(document, previous, token);
        sent.fire(uri);
        return report;
      },
      handleDiagnostics: (uri, findings, next) => pushed.handle(uri, isWritten(uri) ? findings : [], next),
    },
  };
}

function errorHandler(crashes: RestartCounter): ErrorHandler {
  return {
    error: () => ({ action: ErrorAction.Continue, handled: true }),
    closed: () => {
      if (crashes.crashed()) return { action: CloseAction.Restart, handled: true };
      void offerRestart();
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}

async function offerRestart(): Promise<void> {
  const restart = 'Restart Server';
  const showLog = 'Show Log';
  const answer = await fail(
    'Quern stopped working several times within three minutes, so recipes are not being checked.',
    restart,
    showLog,
  );
  if (answer === restart) await vscode.commands.executeCommand('quern.restartServer');
  if (answer === showLog) await vscode.commands.executeCommand('quern.showLog');
}

function stateOf(state: State): ServerState {
  if (state === State.Running) return 'running';
  return state === State.Starting ? 'starting' : 'stopped';
}
