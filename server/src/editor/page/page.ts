/**
 * Knows how an open recipe becomes what a view of it shows: a variant written out in full, with fixes where they may be written.
 * Refuses to know a view, and who looks at it.
 */
import type { Finding } from '../../checks/finding.ts';
import type { PriceList } from '../../publish/cost.ts';
import { type ViewFacts, viewFacts } from '../../publish/view/facts.ts';
import type { Look, ViewName } from '../../publish/view/look.ts';
import { viewPage } from '../../publish/view/views.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import { offeredFixes } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { ownLineIn, sayLineIn } from '../place.ts';
import { measureAfter, turnedOf } from './turned.ts';

export interface PageWish {
  readonly view: ViewName;
  readonly look: Look;
  /** Why nothing may be written, in one sentence; absent where it may. */
  readonly readOnly?: string;
  /** Of the house; only the view that shows them asks. */
  readonly prices?: PriceList;
}

/** The name of the recipe, and what stands in the body of its page. */
export function pageOf(snapshot: Snapshot, wish: PageWish): { readonly title: string; readonly html: string } {
  const facts = factsOf(snapshot, wish);
  return { title: facts.page.title, html: viewPage(facts, wish.view) };
}

function factsOf(snapshot: Snapshot, { look, readOnly, prices }: PageWish): ViewFacts {
  return viewFacts(snapshot.whole.recipe, snapshot.findings, {
    mode: 'live',
    look,
    ...(readOnly !== undefined && { readOnly }),
    ...(prices !== undefined && { prices }),
    trials: readTrials(snapshot.outline),
    sayLine: sayLineIn(snapshot),
    ownLine: ownLineIn(snapshot),
    turned: () => (readOnly === undefined ? turnedOf(snapshot, look) : undefined),
    ...(readOnly === undefined && {
      fixesOf: (finding: Finding) =>
        offeredFixes(finding, snapshot).map((fix) => ({
          title: fix.title,
          after: () => measureAfter(snapshot, finding, fix),
        })),
    }),
  });
}
