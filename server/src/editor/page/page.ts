/**
 * Knows how an open recipe becomes what a view of it shows.
 * Refuses to know a view, and who looks at it.
 */
import type { Look, ViewName } from '../../publish/view/look.ts';
import { viewPage } from '../../publish/view/views.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type PageWish as FactsWish, pageFacts } from './facts.ts';

export interface PageWish extends FactsWish {
  readonly view: ViewName;
  readonly look: Look;
}

/** The name of the recipe, empty where there is none to show, and what stands in the body of its page. */
export function pageOf(
  snapshot: Snapshot,
  { view, ...wish }: PageWish,
): { readonly title: string; readonly html: string } {
  const facts = pageFacts(snapshot, wish);
  return { title: facts.nothing === undefined ? facts.page.title : '', html: viewPage(facts, view) };
}
