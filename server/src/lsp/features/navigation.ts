import type {
  DefinitionParams,
  DocumentHighlight,
  DocumentHighlightParams,
  DocumentLink,
  DocumentLinkParams,
  ImplementationParams,
  Location,
  ReferenceParams,
  TypeDefinitionParams,
} from 'vscode-languageserver';
import { definitionAcross, referencesAcross } from '../../editor/across-files.ts';
import { fileLinks } from '../../editor/file-links.ts';
import { highlights } from '../../editor/navigation.ts';
import { fileName, type Located } from '../../editor/place.ts';
import { typeDefinition } from '../../editor/type-definition.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { rangeOf, readPosition } from '../convert.ts';
import { type Feature, onDocument, type View } from '../feature.ts';

export const navigationFeature: Feature = {
  capability: () => ({
    definitionProvider: true,
    declarationProvider: true,
    typeDefinitionProvider: true,
    implementationProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    documentLinkProvider: {},
  }),
  requests: [
    // Some editors bind only one of the two.
    ...['textDocument/definition', 'textDocument/declaration'].map((method) =>
      onDocument<DefinitionParams, Location[]>(method, [], (snapshot, { position }, view) => {
        const found = definitionAcross(snapshot, readPosition(position), view.kitchen());
        return found === undefined ? [] : [locationOf(found, snapshot, view)];
      }),
    ),
    // A kind or a food of the book is a page, for who can show one.
    onDocument<TypeDefinitionParams, Location[]>('textDocument/typeDefinition', [], (snapshot, { position }, view) => {
      const found = typeDefinition(snapshot, readPosition(position), view.kitchen());
      if (found === undefined) return [];
      if (!('page' in found)) return [locationOf(found, snapshot, view)];
      const uri = view.abilities.typePageOf(found.page);
      return uri === undefined ? [] : [{ uri, range: rangeOf({ line: 0, start: 0, end: 0 }) }];
    }),
    // What other files make of a recipe, a part or a line that they build on.
    onDocument<ImplementationParams, Location[]>('textDocument/implementation', [], (snapshot, { position }, view) => {
      const path = view.pathOf(snapshot.uri);
      return referencesAcross(snapshot, path, readPosition(position), false, view.kitchen())
        .filter((found) => found.path !== undefined && found.path !== path)
        .map((found) => locationOf(found, snapshot, view));
    }),
    onDocument<ReferenceParams, Location[]>(
      'textDocument/references',
      [],
      (snapshot, { position, context: { includeDeclaration } }, view) => {
        const path = view.pathOf(snapshot.uri);
        return referencesAcross(snapshot, path, readPosition(position), includeDeclaration, view.kitchen()).map(
          (found) => locationOf(found, snapshot, view),
        );
      },
    ),
    onDocument<DocumentHighlightParams, DocumentHighlight[]>(
      'textDocument/documentHighlight',
      [],
      (snapshot, { position }) =>
        highlights(snapshot, readPosition(position)).map((o) => ({
          range: rangeOf(o),
          kind: o.role === 'definition' ? 3 : 2,
        })),
    ),
    onDocument<DocumentLinkParams, DocumentLink[]>('textDocument/documentLink', [], (snapshot, _params, view) =>
      fileLinks(snapshot).map(({ at, path }) => ({
        range: rangeOf(at),
        target: view.uriAt(path),
        tooltip: `Open ${fileName(path)}`,
      })),
    ),
  ],
};

const locationOf = ({ path, at }: Located, { uri }: Snapshot, view: View): Location => ({
  uri: path === undefined ? uri : view.uriAt(path),
  range: rangeOf(at),
});
