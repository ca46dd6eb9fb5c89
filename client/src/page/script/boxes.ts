// Knows that a box which scrolls by itself can be scrolled by keys too, for as long as it does.

export function stopAtBoxes(root: ParentNode): void {
  for (const box of root.querySelectorAll<HTMLElement>('.scroll')) {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute('tabindex');
  }
}
