/**
 * Knows every rewrite that may be offered at a range: of lists, sentences, measures and sizes, swaps, and parts to make.
 * Needs the bound recipe. Refuses to know findings: what mends one is the finding's own.
 */
import type { PositionRange } from '../notation/document.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { adjustRewrites } from './rewrites/adjust.ts';
import { draftRewrites } from './rewrites/draft.ts';
import { extractRewrites } from './rewrites/extract.ts';
import { lineRewrites, orderRewrites } from './rewrites/list.ts';
import { measureRewrites } from './rewrites/measures.ts';
import { moveRewrites } from './rewrites/move.ts';
import type { Rewrite, RewriteKind } from './rewrites/rewrite.ts';
import { sentenceRewrites } from './rewrites/sentence.ts';
import { sizeRewrites } from './rewrites/size.ts';
import { swapRewrites } from './rewrites/swap.ts';

/** The families of rewrites, each with the kinds it offers, in the order they are shown. */
export const REWRITES: readonly {
  readonly kinds: readonly RewriteKind[];
  readonly offer: (snapshot: Snapshot, range: PositionRange) => readonly Rewrite[];
}[] = [
  { kinds: ['refactor.rewrite'], offer: draftRewrites },
  { kinds: ['refactor.rewrite'], offer: sentenceRewrites },
  { kinds: ['quickfix', 'refactor.rewrite'], offer: lineRewrites },
  { kinds: ['refactor.rewrite'], offer: swapRewrites },
  { kinds: ['refactor.rewrite'], offer: adjustRewrites },
  { kinds: ['refactor.rewrite'], offer: measureRewrites },
  { kinds: ['refactor.rewrite'], offer: sizeRewrites },
  { kinds: ['refactor.extract'], offer: extractRewrites },
  { kinds: ['refactor.move'], offer: moveRewrites },
  { kinds: ['source.organizeIngredients.quern'], offer: orderRewrites },
];
