import type {
  CallHierarchyIncomingCall,
  CallHierarchyIncomingCallsParams,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CallHierarchyOutgoingCallsParams,
  CallHierarchyPrepareParams,
} from 'vscode-languageserver';
import { type Built, buildingOn, builtAt, builtFrom } from '../../editor/call-hierarchy.ts';
import { fileName } from '../../editor/place.ts';
import { visible } from '../../publish/visible.ts';
import { record } from '../capabilities.ts';
import { rangeOf, readPosition, readRange } from '../convert.ts';
import { type Feature, onDocument, onRequest, type View } from '../feature.ts';

export const callHierarchyFeature: Feature = {
  capability: () => ({ callHierarchyProvider: true }),
  requests: [
    onDocument<CallHierarchyPrepareParams, CallHierarchyItem[] | null>(
      'textDocument/prepareCallHierarchy',
      null,
      (snapshot, { position }, view) => {
        const found = builtAt(snapshot, view.pathOf(snapshot.uri), readPosition(position), view.kitchen());
        return found === undefined ? null : [itemOf(found, view)];
      },
    ),
    onRequest<CallHierarchyIncomingCallsParams, CallHierarchyIncomingCall[]>(
      'callHierarchy/incomingCalls',
      [],
      ({ item }, view) => {
        const of = readItem(item, view);
        return (of === undefined ? [] : buildingOn(of, view.kitchen())).map(({ of: from, says }) => ({
          from: itemOf(from, view),
          fromRanges: says.map(rangeOf),
        }));
      },
    ),
    onRequest<CallHierarchyOutgoingCallsParams, CallHierarchyOutgoingCall[]>(
      'callHierarchy/outgoingCalls',
      [],
      ({ item }, view) => {
        const of = readItem(item, view);
        return (of === undefined ? [] : builtFrom(of, view.kitchen())).map(({ of: to, says }) => ({
          to: itemOf(to, view),
          fromRanges: says.map(rangeOf),
        }));
      },
    ),
  ],
};

/** The protocol's kinds: File, and Class as parts are in the outline. */
const itemOf = ({ path, name, part, at }: Built, view: View): CallHierarchyItem => ({
  name: visible(name),
  detail: fileName(path),
  kind: part ? 5 : 1,
  uri: view.uriAt(path),
  range: rangeOf(at),
  selectionRange: rangeOf(at),
  data: { name, part },
});

function readItem(item: CallHierarchyItem, view: View): Built | undefined {
  const path = view.pathOf(item.uri);
  const { name, part } = record(item.data);
  if (path === undefined || typeof name !== 'string') return undefined;
  const { start, end } = readRange(item.selectionRange);
  return { path, name, part: part === true, at: { line: start.line, start: start.character, end: end.character } };
}
