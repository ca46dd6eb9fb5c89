// Knows the way from finding to finding on the page.

const FINDING = 'main .finding:not(.accepted)';

export const findingsIn = (root: ParentNode): HTMLElement[] => [...root.querySelectorAll<HTMLElement>(FINDING)];

/** To the next finding after where the focus is, or the last before it; around at the end. */
export function goToFinding(root: ParentNode, by: 1 | -1): void {
  const all = findingsIn(root);
  const from = document.activeElement ?? document.body;
  const side = by > 0 ? Node.DOCUMENT_POSITION_FOLLOWING : Node.DOCUMENT_POSITION_PRECEDING;
  const isPast = (finding: HTMLElement): boolean =>
    !finding.contains(from) && (from.compareDocumentPosition(finding) & side) !== 0;
  // Everything lies within the body, which nothing precedes: from there, either way begins at an end.
  const past = from === document.body ? all : all.filter(isPast);
  focusFinding(by > 0 ? (past[0] ?? all[0]) : (past.at(-1) ?? all.at(-1)));
}

/** A finding by itself: its buttons are the next stops. */
export function focusFinding(finding: HTMLElement | undefined): void {
  if (finding === undefined) return;
  finding.tabIndex = -1;
  finding.focus({ preventScroll: true });
  finding.scrollIntoView({ block: 'nearest', behavior: 'instant' });
}
