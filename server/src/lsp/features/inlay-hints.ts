import type { InlayHint, InlayHintParams } from 'vscode-languageserver';
import { hints, type PlacedHint } from '../../editor/hints.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { record } from '../capabilities.ts';
import { editsOf, factsOf, readRange } from '../convert.ts';
import { type Feature, onDocument, onRequest, type View } from '../feature.ts';

export const inlayHintsFeature: Feature = {
  capability: ({ resolvesHints }) => ({ inlayHintProvider: { resolveProvider: resolvesHints } }),
  requests: [
    onDocument<InlayHintParams, InlayHint[]>('textDocument/inlayHint', [], (snapshot, params, view) => {
      const { start, end } = readRange(params.range);
      return hints(snapshot, start.line, end.line, view.shown()).map((placed) => hintOf(placed, snapshot, view));
    }),
    onRequest<InlayHint, InlayHint | null>('inlayHint/resolve', null, resolve),
  ],
};

function hintOf(placed: PlacedHint, snapshot: Snapshot, view: View): InlayHint {
  const { at, hint } = placed;
  const { uri, version } = snapshot;
  const bare = { position: { line: at, character: hint.of.end }, label: hint.label, paddingLeft: true };
  return view.abilities.resolvesHints
    ? { ...bare, data: { uri, version, at, label: hint.label } }
    : { ...bare, ...written(placed, snapshot) };
}

/** Only what is pointed at, or clicked, is worked out. */
function resolve(sent: InlayHint, view: View): InlayHint {
  const { uri, version, at, label } = record(sent.data);
  const snapshot = typeof uri === 'string' ? view.snapshot(uri) : undefined;
  if (snapshot === undefined || snapshot.version !== version || typeof at !== 'number') return sent;
  const placed = hints(snapshot, at, at, view.shown()).find(
    ({ hint }) => hint.label === label && hint.of.end === sent.position.character,
  );
  if (placed === undefined) return sent;
  const facts = placed.hint.facts?.() ?? [];
  const title = placed.hint.label;
  return {
    ...sent,
    ...written(placed, snapshot),
    ...(facts.length > 0 && {
      tooltip: factsOf({ title, facts }, view.abilities.hoverMarkdown, view.abilities),
    }),
  };
}

function written({ at, hint }: PlacedHint, snapshot: Snapshot): Pick<InlayHint, 'textEdits'> {
  const edits = hint.edits?.(snapshot, at) ?? [];
  return edits.length === 0 ? {} : { textEdits: editsOf(snapshot, edits) };
}
