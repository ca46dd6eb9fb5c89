// Knows the way from finding to finding on the page, and where the keys go once one is mended.

import { focusLine } from './rows.ts';

const FINDING = 'main .finding:not(.accepted)';

const findingsIn = (root: ParentNode): HTMLElement[] => [...root.querySelectorAll<HTMLElement>(FINDING)];

/** To the next finding after where the focus is, or the last before it; around at the end. */
export function goToFinding(root: ParentNode, by: 1 | -1): void {
  const all = findingsIn(root);
  const from = document.activeElement ?? document.body;
  const isPast = (finding: HTMLElement): boolean => {
    if (finding.contains(from)) return false;
    const place = from.compareDocumentPosition(finding);
    return (place & (by > 0 ? Node.DOCUMENT_POSITION_FOLLOWING : Node.DOCUMENT_POSITION_PRECEDING)) > 0;
  };
  const past = all.filter(isPast);
  focusFinding((by > 0 ? (past[0] ?? all[0]) : (past.at(-1) ?? all.at(-1))) ?? undefined);
}

/** Its first button, or itself where it has none. */
function focusFinding(finding: HTMLElement | undefined): void {
  if (finding === undefined) return;
  finding.tabIndex = -1;
  finding.focus();
  finding.scrollIntoView({ block: 'nearest', behavior: 'instant' });
}

/** Where a fix was pressed: which findings stood from there on, and on which line of the page. */
export type Pressed = { readonly keys: readonly string[]; readonly line: string | undefined };

export function pressedAt(root: ParentNode, button: Element): Pressed | undefined {
  const finding = button.closest<HTMLElement>('.finding');
  if (finding === null) return undefined;
  const all = findingsIn(root);
  const keys = all.slice(all.indexOf(finding)).map((one) => one.dataset.key ?? '');
  const row = finding.closest<HTMLElement>('li, tr');
  return { keys, line: row?.dataset.key };
}

/** Where the keys go when what was pressed is gone: to the finding that came behind it, else to its line, else to the head. */
export function focusAfter(root: HTMLElement, { keys, line }: Pressed): void {
  const all = findingsIn(root);
  const [own, ...behind] = keys;
  if (all.some((one) => one.dataset.key === own)) return;
  const next = behind.flatMap((key) => all.find((one) => one.dataset.key === key) ?? [])[0] ?? all.at(-1);
  const row = line === undefined ? null : root.querySelector<HTMLElement>(`[data-key="${CSS.escape(line)}"]`);
  const target = row?.matches('[data-line]') === true ? row : row?.querySelector<HTMLElement>('[data-line]');
  if (next === undefined) focusLine(target ?? undefined);
  else focusFinding(next);
}
