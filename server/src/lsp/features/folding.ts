import type { FoldingRange, FoldingRangeParams } from 'vscode-languageserver';
import { folds } from '../../editor/folding.ts';
import { type Feature, onDocument } from '../feature.ts';

export const foldingFeature: Feature = {
  capability: () => ({ foldingRangeProvider: true }),
  requests: [
    onDocument<FoldingRangeParams, FoldingRange[]>('textDocument/foldingRange', [], (snapshot) =>
      folds(snapshot).map(({ from, to, comment }) => ({
        startLine: from,
        endLine: to,
        ...(comment && { kind: 'comment' }),
      })),
    ),
  ],
};
