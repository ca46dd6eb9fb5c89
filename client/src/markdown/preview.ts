// In the preview of a Markdown text: the recipes in it coloured, whenever it is shown anew.
// Nothing of the extension runs for it: who reads a text wants no server. The colours are those that the preview has for any code.

import { piecesOf } from './colours.ts';

const colour = (): void => {
  for (const block of document.querySelectorAll('code.language-quern')) {
    // One that is coloured holds elements.
    if (block.childElementCount > 0) continue;
    block.replaceChildren(
      ...piecesOf(block.textContent ?? '').map(({ text, as }) => {
        if (as === undefined) return text;
        const span = document.createElement('span');
        span.className = `hljs-${as}`;
        span.textContent = text;
        return span;
      }),
    );
  }
};

window.addEventListener('vscode.markdown.updateContent', colour);
colour();
