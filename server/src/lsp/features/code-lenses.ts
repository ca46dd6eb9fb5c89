import type { CodeLens, CodeLensParams, Command } from 'vscode-languageserver';
import { type Lens, lenses, lensWords } from '../../editor/lenses.ts';
import { visible } from '../../publish/visible.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Abilities, record } from '../capabilities.ts';
import { type Feature, onDocument, onRequest, type View } from '../feature.ts';

export const codeLensesFeature: Feature = {
  capability: () => ({ codeLensProvider: { resolveProvider: true } }),
  requests: [
    onDocument<CodeLensParams, CodeLens[]>('textDocument/codeLens', [], (snapshot, _params, view) =>
      lenses(snapshot, view.shown()).flatMap((lens) => lensOf(lens, snapshot, view.abilities) ?? []),
    ),
    onRequest<CodeLens, CodeLens | null>('codeLens/resolve', null, resolve),
  ],
};

/** What it says is worked out once it is looked at; what it does needs a command of the client. */
function lensOf({ line, does, part }: Lens, { uri }: Snapshot, abilities: Abilities): CodeLens | undefined {
  const range = { start: { line, character: 0 }, end: { line, character: 0 } };
  if (does === 'facts') return { range, data: { uri, part: part ?? null } };
  const command = commandOf(does, uri, abilities);
  return command && { range, command };
}

function commandOf(does: Exclude<Lens['does'], 'facts'>, uri: string, abilities: Abilities): Command | undefined {
  const { scaleCommand, recordTrialCommand, showPageCommand } = abilities;
  // What the server does itself needs no client's command.
  const own = abilities.runsCommandsItself ? undefined : 'quern.trial';
  const given = { scale: scaleCommand, trial: recordTrialCommand ?? own, page: showPageCommand }[does];
  return given === undefined ? undefined : { title: TITLES[does], command: given, arguments: [{ uri }] };
}

const TITLES = { scale: 'Scale…', trial: 'Record a trial', page: 'Show the recipe' } as const;

function resolve(lens: CodeLens, view: View): CodeLens {
  const { uri, part } = record(lens.data);
  const snapshot = typeof uri === 'string' ? view.snapshot(uri) : undefined;
  if (snapshot === undefined) return lens;
  const name = typeof part === 'string' ? part : undefined;
  const words = lensWords(snapshot, name, view.prices(snapshot));
  return { ...lens, command: { title: visible(words ?? 'nothing is known of it yet'), command: '' } };
}
