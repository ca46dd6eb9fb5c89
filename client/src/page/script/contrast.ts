// Knows whether the softer of the page's two inks can be read on its paper, whatever theme is chosen.

import { type Colour, contrastOf } from '../contrast-ratio.ts';

/** What text needs, by WCAG 2.2, 1.4.3. */
const READABLE = 4.5;

/** Makes soft ink plain ink where it is too weak, now and after each change of the theme. */
export function watchContrast(): void {
  const judge = (): void => {
    document.body.classList.remove('weak');
    const [soft, paper] = [inked('--soft'), inked('--paper')];
    if (soft !== undefined && paper !== undefined && contrastOf(soft, paper) < READABLE)
      document.body.classList.add('weak');
  };
  judge();
  // The editor says a new theme by a class and an attribute, and its colours by the style of the root.
  const options = { attributes: true, attributeFilter: ['data-vscode-theme-id', 'data-vscode-theme-kind'] };
  new MutationObserver(judge).observe(document.body, options);
}

/** What a colour of the sheet comes to, however it is mixed: as it is painted. */
function inked(name: string): Colour | undefined {
  const probe = document.createElement('span');
  probe.className = 'unseen';
  document.body.append(probe);
  probe.style.color = `var(${name})`;
  const canvas = document.createElement('canvas');
  canvas.width = 1;
  canvas.height = 1;
  const pen = canvas.getContext('2d');
  if (pen !== null) {
    pen.fillStyle = getComputedStyle(probe).color;
    pen.fillRect(0, 0, 1, 1);
  }
  probe.remove();
  const [red, green, blue] = pen?.getImageData(0, 0, 1, 1).data ?? [];
  return red === undefined || green === undefined || blue === undefined ? undefined : [red, green, blue];
}
