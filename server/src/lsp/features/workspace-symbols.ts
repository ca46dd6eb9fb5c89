import type { SymbolInformation, WorkspaceSymbolParams } from 'vscode-languageserver';
import { type FoundSymbol, workspaceSymbols } from '../../editor/workspace-symbols.ts';
import { rangeOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';

/** The protocol's kinds, as in the outline: File, Class, Struct, Event. */
const KINDS: Readonly<Record<FoundSymbol['kind'], SymbolInformation['kind']>> = {
  recipe: 1,
  part: 5,
  food: 23,
  trial: 24,
};

export const workspaceSymbolsFeature: Feature = {
  capability: () => ({ workspaceSymbolProvider: true }),
  requests: [
    onRequest<WorkspaceSymbolParams, SymbolInformation[]>('workspace/symbol', [], ({ query }, view) =>
      workspaceSymbols(view.kitchen().index, String(query)).map(({ name, kind, path, at, inside }) => ({
        name,
        kind: KINDS[kind],
        location: { uri: view.uriAt(path), range: rangeOf(at) },
        ...(inside !== undefined && { containerName: inside }),
      })),
    ),
  ],
};
