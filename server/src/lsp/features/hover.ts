import type { Hover, HoverParams } from 'vscode-languageserver';
import { hover } from '../../editor/hover.ts';
import { hoverOf, readPosition } from '../convert.ts';
import { type Feature, onDocument } from '../feature.ts';

export const hoverFeature: Feature = {
  capability: () => ({ hoverProvider: true }),
  requests: [
    onDocument<HoverParams, Hover | null>('textDocument/hover', null, (snapshot, { position }, { abilities }) => {
      const found = hover(snapshot, readPosition(position));
      return found === undefined ? null : hoverOf(found, abilities);
    }),
  ],
};
