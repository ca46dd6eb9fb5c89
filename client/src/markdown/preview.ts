// In the preview of a Markdown text: the recipes in it coloured, whenever one comes in.
// Nothing of the extension runs for it: who reads a text wants no server. The colours are those that the preview has for any code.

import { piecesOf } from './colours.ts';

function colour(): void {
  for (const block of document.querySelectorAll('code.language-quern')) {
    const pieces = piecesOf(block.textContent ?? '');
    // One that is coloured holds elements; of one that has nothing to colour nothing is changed.
    if (block.childElementCount > 0 || pieces.every(({ as }) => as === undefined)) continue;
    block.replaceChildren(
      ...pieces.map(({ text, as }) => {
        if (as === undefined) return text;
        const span = document.createElement('span');
        span.className = `hljs-${as}`;
        span.textContent = text;
        return span;
      }),
    );
  }
}

// The text is put in after this runs, and put in anew as it is written.
new MutationObserver(colour).observe(document, { childList: true, subtree: true });
colour();
