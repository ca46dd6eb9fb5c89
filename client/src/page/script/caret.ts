// Knows which row of the page stands for the caret's line, and brings it into sight when the caret moves.

/** The row that stands for a line of the text, from 1; of several, the first of the list and method. */
export function rowOf(root: ParentNode, line: number): HTMLElement | undefined {
  const all = [...root.querySelectorAll<HTMLElement>(`main [data-line="${line}"]`)];
  const rows = all.map((element) => element.closest<HTMLElement>('li, tr, h3') ?? element);
  return rows[0];
}

/** Marks the row of the caret, and no other. */
export function markRow(root: ParentNode, line: number): HTMLElement | undefined {
  const row = line > 0 ? rowOf(root, line) : undefined;
  for (const marked of root.querySelectorAll('main .here'))
    if (marked !== row) {
      marked.classList.remove('here');
      marked.removeAttribute('aria-current');
    }
  row?.classList.add('here');
  row?.setAttribute('aria-current', 'true');
  return row;
}

/** Brings it to a third from the top, at once, where it is out of sight. */
export function bringIntoSight(element: Element): void {
  const { top, bottom } = element.getBoundingClientRect();
  const covered = document.querySelector('nav.views')?.getBoundingClientRect().height ?? 0;
  if (top >= covered && bottom <= window.innerHeight) return;
  window.scrollTo({ top: window.scrollY + top - window.innerHeight / 3, behavior: 'instant' });
}
