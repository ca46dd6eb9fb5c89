// Knows whether findings stand in the margin or beneath their lines: where one would stand far from its line, all stand beneath.

const LINES_AWAY = 5;

/** Looks once, as it is laid out; a layout that is too narrow for a margin has them beneath by itself. */
export function placeFindings(root: ParentNode): void {
  const main = root.querySelector('main.noted, main.beneath');
  if (main === null) return;
  main.classList.replace('beneath', 'noted');
  if ([...main.querySelectorAll<HTMLElement>('.finding')].some(isFar)) main.classList.replace('noted', 'beneath');
}

function isFar(finding: HTMLElement): boolean {
  if (getComputedStyle(finding).float === 'none') return false;
  const row = finding.closest('li, tr');
  if (row === null) return false;
  const lineHeight = Number.parseFloat(getComputedStyle(row).lineHeight) || 20;
  return finding.getBoundingClientRect().top - row.getBoundingClientRect().top > LINES_AWAY * lineHeight;
}
