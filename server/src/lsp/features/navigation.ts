import type {
  DefinitionParams,
  DocumentHighlight,
  DocumentHighlightParams,
  Location,
  ReferenceParams,
} from 'vscode-languageserver';
import { definition, foodBlock, foodName, highlights, references } from '../../editor/navigation.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { rangeOf, readPosition } from '../convert.ts';
import { type Feature, onDocument, type View } from '../feature.ts';

export const navigationFeature: Feature = {
  capability: () => ({ definitionProvider: true, referencesProvider: true, documentHighlightProvider: true }),
  requests: [
    onDocument<DefinitionParams, Location[]>('textDocument/definition', [], define),
    onDocument<ReferenceParams, Location[]>('textDocument/references', [], (snapshot, { position, context }) =>
      references(snapshot, readPosition(position), context.includeDeclaration).map((place) => ({
        uri: snapshot.uri,
        range: rangeOf(place),
      })),
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
  ],
};

/** A food of the house by its block; anything else by its line. */
function define(snapshot: Snapshot, params: DefinitionParams, view: View): Location[] {
  const position = readPosition(params.position);
  const food = foodName(snapshot, position);
  if (food !== undefined) {
    for (const file of foodFiles(snapshot, food, view)) {
      const place = foodBlock(file, food);
      if (place !== undefined) return [{ uri: file.uri, range: rangeOf(place) }];
    }
  }
  const place = definition(snapshot, position);
  return place === undefined ? [] : [{ uri: snapshot.uri, range: rangeOf(place) }];
}

/** This file first; the others of the house only for a food that is not the book's. */
function foodFiles(snapshot: Snapshot, food: string, view: View): ReturnType<View['foodFiles']> {
  const here = { uri: snapshot.uri, outline: snapshot.outline };
  const match = snapshot.house.world.book.find(food);
  const ours = match.kind === 'food' && match.food.id.startsWith('house-');
  return ours ? [here, ...view.foodFiles(snapshot.uri)] : [here];
}
