import type { SelectionRange, SelectionRangeParams } from 'vscode-languageserver';
import { selections } from '../../editor/selection.ts';
import { readPosition } from '../convert.ts';
import { type Feature, onDocument } from '../feature.ts';

export const selectionFeature: Feature = {
  capability: () => ({ selectionRangeProvider: true }),
  requests: [
    onDocument<SelectionRangeParams, SelectionRange[]>('textDocument/selectionRange', [], (snapshot, { positions }) =>
      positions.map((position) => {
        const [first, ...wider] = selections(snapshot, readPosition(position)).reverse();
        const widest: SelectionRange = { range: first ?? { start: position, end: position } };
        return wider.reduce<SelectionRange>((parent, range) => ({ range, parent }), widest);
      }),
    ),
  ],
};
