// Knows how the page becomes another in its place: only what differs is replaced, and what the reader is at stays.
// It refuses to know what is shown.

import morphdom from 'morphdom';

/** What the script itself has set on an element, and the server does not know of. */
const OWN_ATTRIBUTES = ['tabindex', 'open'];

/** Makes the content of `root` that of `html`. Elements are the same where their `data-key`, or their id, is. */
export function morph(root: Element, html: string): void {
  const template = document.createElement('template');
  template.innerHTML = html;
  const next = document.createElement(root.tagName);
  next.append(template.content);
  become(root, next);
}

/** The same of an element of another page. */
export function become(root: Element, next: Element): void {
  morphdom(root, next, {
    childrenOnly: true,
    getNodeKey: (node) =>
      node instanceof Element ? (node.getAttribute('data-key') ?? (node.id || undefined)) : undefined,
    onBeforeElUpdated: (now, to) => {
      for (const name of OWN_ATTRIBUTES) {
        const value = now.getAttribute(name);
        if (value !== null && !to.hasAttribute(name)) to.setAttribute(name, value);
      }
      if (now instanceof HTMLInputElement && to instanceof HTMLInputElement) {
        // What is being typed is nobody's but the typist's.
        if (now === document.activeElement && !isPicked(now)) to.value = now.value;
        else if (now.value !== to.value) now.value = to.value;
      }
      return !now.isEqualNode(to);
    },
  });
}

const isPicked = ({ type }: HTMLInputElement): boolean => type === 'radio' || type === 'checkbox';
