/**
 * Knows the facts of the page for a file that is open: a variant written out in full, with the fixes worth offering.
 * Refuses to know how they are shown, and who asks.
 */
import { type ViewFacts, type ViewSources, viewFacts } from '../../publish/view/facts.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import { offeredFixes } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export type PageWish = Pick<ViewSources, 'look' | 'line' | 'readOnly' | 'prices'>;

/** `line` counts from 1. */
export function pageFacts(snapshot: Snapshot, wish: PageWish = {}): ViewFacts {
  return viewFacts(snapshot.whole.recipe, snapshot.findings, {
    ...wish,
    mode: 'live',
    label: snapshot.house.world.measures === 'us' ? 'us' : 'eu',
    trials: readTrials(snapshot.outline),
    fixesOf: (finding) => (wish.readOnly === undefined ? offeredFixes(finding, snapshot) : []),
  });
}
