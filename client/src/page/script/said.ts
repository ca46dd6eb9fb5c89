// Knows how something is said that was done or could not be: to whoever listens, and beside what was pressed.

/** The same words again are said again. */
export function sayPolitely(place: HTMLElement, words: string): void {
  place.textContent = '';
  requestAnimationFrame(() => {
    place.textContent = words;
  });
}

/** Stands behind what was pressed until the page changes. */
export function refuseAt(pressed: HTMLElement | undefined, words: string): void {
  if (pressed?.isConnected !== true) return;
  const around = pressed.closest('.fixes, .looking, p, td, dd, li, section') ?? pressed.parentElement;
  around?.querySelector(':scope > .refused')?.remove();
  const why = document.createElement('span');
  why.className = 'refused soft small';
  why.setAttribute('aria-hidden', 'true');
  why.textContent = ` ${words}`;
  around?.append(why);
}
