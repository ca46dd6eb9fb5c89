// Knows how it is said above the page that it cannot follow the text, and what may be done about it.

import type { Remedy, Trouble } from '../messages.ts';

export function showTrouble(place: HTMLElement, trouble: Trouble | null, press: (does: Remedy) => void): void {
  if (trouble === null) {
    place.replaceChildren();
    return;
  }
  const section = document.createElement('section');
  section.className = 'empty';
  section.setAttribute('aria-label', trouble.heading);
  const heading = document.createElement('h2');
  heading.textContent = trouble.heading;
  const words = document.createElement('p');
  words.textContent = trouble.words;
  const buttons = document.createElement('p');
  for (const { does, label } of trouble.remedies) {
    const button = document.createElement('button');
    button.textContent = label;
    button.className = buttons.childElementCount === 0 ? 'first' : '';
    button.addEventListener('click', () => press(does));
    buttons.append(button, ' ');
  }
  section.append(heading, words, ...(trouble.remedies.length > 0 ? [buttons] : []));
  place.replaceChildren(section);
}
