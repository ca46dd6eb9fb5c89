import type { CodeAction, CodeActionParams, Diagnostic } from 'vscode-languageserver';
import { type Action, type ActionKind, codeActions } from '../../editor/code-actions.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { record } from '../capabilities.ts';
import { diagnosticOf, rangeOf, readRange, workspaceEditOf } from '../convert.ts';
import { type Feature, onDocument, onRequest, type View } from '../feature.ts';
import { type FileActionKind, fileActions } from './file-actions.ts';

const KINDS: readonly (ActionKind | FileActionKind)[] = [
  'quickfix',
  'refactor.rewrite',
  'refactor.extract',
  'refactor.inline',
  'refactor.move',
  'source.organizeIngredients.quern',
  'source.fixAll.quern',
];
/** Kinds whose edits are worked out only when one is chosen. */
const RESOLVED: ReadonlySet<ActionKind> = new Set(['refactor.rewrite', 'refactor.extract']);

export const codeActionsFeature: Feature = {
  capability: ({ codeActionLiterals, resolvesCodeActionEdits }) =>
    codeActionLiterals
      ? { codeActionProvider: { codeActionKinds: [...KINDS], resolveProvider: resolvesCodeActionEdits } }
      : {},
  requests: [
    onDocument<CodeActionParams, CodeAction[]>('textDocument/codeAction', [], (snapshot, params, view) => {
      const { only, diagnostics } = params.context;
      // What is done to a whole file, or has a key of its own, is offered to whoever asks for that, and stands in nobody's way at a line.
      const apart = (kind: ActionKind | FileActionKind) => kind.startsWith('source.') || kind === 'refactor.move';
      const wants = (kind: ActionKind | FileActionKind) =>
        (only ?? ['']).some((o) => (o === '' ? !apart(kind) : kind === o || kind.startsWith(`${o}.`)));
      const actions = codeActions(snapshot, readRange(params.range), wants, (e) => view.report('codeAction', e));
      return [
        ...actions.map((action) => actionOf(action, snapshot, params.range, diagnostics, view)),
        ...fileActions(snapshot, readRange(params.range), wants, view),
      ];
    }),
    onRequest<CodeAction, CodeAction | null>('codeAction/resolve', null, resolve, (action) =>
      uriIn(record(action).data),
    ),
  ],
};

function actionOf(
  action: Action,
  snapshot: Snapshot,
  range: CodeActionParams['range'],
  sent: readonly Diagnostic[],
  view: View,
): CodeAction {
  const { title, kind, preferred, finding } = action;
  const later = view.abilities.resolvesCodeActionEdits && (RESOLVED.has(kind) || action.costly === true);
  return {
    title,
    kind,
    ...(preferred && { isPreferred: true }),
    ...(finding && { diagnostics: [sentFor(finding, sent) ?? diagnosticOf(finding, snapshot, view.abilities)] }),
    ...(later
      ? { data: { uri: snapshot.uri, version: snapshot.version, title, kind, range } }
      : { edit: workspaceEditOf(snapshot, action.edits(), view.abilities) }),
  };
}

/** The client's own copy of the finding, known by code and place. */
function sentFor(finding: NonNullable<Action['finding']>, sent: readonly Diagnostic[]): Diagnostic | undefined {
  const range = JSON.stringify(rangeOf(finding.at));
  return sent.find(
    (d) => d.source === 'quern' && d.code === finding.code && JSON.stringify(readRange(d.range)) === range,
  );
}

const uriIn = (data: unknown): string | undefined => {
  const { uri } = record(data);
  return typeof uri === 'string' ? uri : undefined;
};

/** The range an action was offered for; the start of the text where a client sent none back. */
function rangeIn(sent: unknown): ReturnType<typeof readRange> {
  const { start, end } = record(sent);
  const place = (of: unknown) => ({ line: Number(record(of).line), character: Number(record(of).character) });
  return readRange({ start: place(start), end: place(end) });
}

/** The edits of a chosen action; of one made for an older text, none. */
function resolve(action: CodeAction, view: View): CodeAction {
  const uri = uriIn(action.data);
  const snapshot = uri === undefined ? undefined : view.snapshot(uri);
  const { version, title, kind, range } = record(action.data);
  if (snapshot === undefined || snapshot.version !== version) return action;
  const again = codeActions(
    snapshot,
    rangeIn(range),
    (k) => k === kind,
    (e) => view.report('codeAction/resolve', e),
  );
  const chosen = again.find((a) => a.title === title);
  return chosen === undefined ? action : { ...action, edit: workspaceEditOf(snapshot, chosen.edits(), view.abilities) };
}
