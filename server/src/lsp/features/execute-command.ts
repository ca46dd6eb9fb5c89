import type { ExecuteCommandParams, WorkspaceEdit } from 'vscode-languageserver';
import type { Answered, Verb } from '../../editor/verbs/verb.ts';
import { runVerb, VERBS } from '../../editor/verbs.ts';
import { record } from '../capabilities.ts';
import { workspaceEditOf } from '../convert.ts';
import { type Feature, onRequest, type View } from '../feature.ts';
import { ErrorCodes, ResponseError } from '../library.ts';

/** What came of a command. `edit` is made already where `applied` says so: it is sent as a `workspace/applyEdit` where the client takes one. */
type CommandAnswer =
  | {
      readonly ok: true;
      readonly edit: WorkspaceEdit;
      readonly applied: boolean;
      readonly changes: readonly string[];
      readonly said: readonly string[];
    }
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string };

const refuse = (why: string): CommandAnswer => ({ ok: false, why });

const verbOf = (command: string): Verb | undefined => {
  const name = command.replace(/^quern\./, '');
  return command !== name && Object.hasOwn(VERBS, name) ? VERBS[name] : undefined;
};

/**
 * What Quern's own extension does by requests of its own, for every other editor: `quern.VERB` with one argument, `{ uri, … }`.
 * `preview: true` leaves the text alone.
 */
export const executeCommandFeature: Feature = {
  capability: ({ runsCommandsItself }) =>
    runsCommandsItself
      ? {}
      : { executeCommandProvider: { commands: Object.keys(VERBS).map((name) => `quern.${name}`) } },
  requests: [
    onRequest<ExecuteCommandParams, CommandAnswer>(
      'workspace/executeCommand',
      refuse('Quern could not do this; its log says why.'),
      run,
    ),
  ],
};

async function run({ command, arguments: given = [] }: ExecuteCommandParams, view: View): Promise<CommandAnswer> {
  const verb = verbOf(command);
  if (verb === undefined) throw wrong(`there is no command ${command}`);
  const [arg] = given;
  const { uri, preview } = record(arg);
  const takes = ['uri', ...verb.takes, 'preview?'].join(', ');
  if (given.length !== 1 || typeof uri !== 'string') throw wrong(`${command} takes one object: { ${takes} }`);
  for (const name of verb.takes)
    if (!name.endsWith('?') && record(arg)[name] === undefined) throw wrong(`${command} wants ${name}: { ${takes} }`);
  const snapshot = view.snapshot(uri);
  if (snapshot === undefined) return refuse('The recipe is not open.');
  const answered: Answered = runVerb(verb, {
    snapshot,
    arg,
    today: view.today(),
    prices: () => view.prices(snapshot),
  });
  if ('refused' in answered) return refuse(answered.refused);
  if ('text' in answered) return { ok: true, text: answered.text };
  const { edits, changes, said } = answered;
  const edit = workspaceEditOf(snapshot, edits, view.abilities);
  const applied = preview !== true && view.abilities.appliesEdits && (await view.applied(verb.title, edit));
  return { ok: true, edit, applied, changes, said };
}

const wrong = (why: string): ResponseError<void> => new ResponseError(ErrorCodes.InvalidParams, why);
