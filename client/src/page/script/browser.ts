// The page in a browser: it becomes what the folder says by now, in its place; in the kitchen it hears arrow keys and space, and keeps the
// screen awake. It refuses a timer, a sound and a swipe, and to change anything by itself but what has changed.

import { become } from './morph.ts';

const everyMs = 2000;
/** What the page was made of, and where that is asked for. */
const stampOf = (of: Document): HTMLMetaElement | null => of.querySelector('meta[name=stamp]');
let shown = stampOf(document)?.content;
const stampAt = stampOf(document)?.dataset.at;

/** Asks whether anything is another, and only then for the page itself. */
async function follow(): Promise<void> {
  if (document.visibilityState !== 'visible' || stampAt === undefined) return;
  const answer = await fetch(stampAt, { cache: 'no-store' });
  if (!answer.ok || (await answer.text()) === shown) return;
  const page = await fetch(location.href, { cache: 'no-store' });
  if (!page.ok) return;
  const next = new DOMParser().parseFromString(await page.text(), 'text/html');
  shown = stampOf(next)?.content;
  document.title = next.title;
  const said = document.getElementById('awake')?.textContent;
  become(document.body, next.body);
  const awake = document.getElementById('awake');
  if (awake !== null && said != null) awake.textContent = said;
}

async function followOn(): Promise<void> {
  try {
    await follow();
  } catch {
    // Whoever served it has gone; the page stays readable, and asks again.
  }
  setTimeout(() => void followOn(), everyMs);
}

const ways: Readonly<Record<string, string>> = {
  ArrowRight: 'a[rel=next]',
  ArrowDown: 'a[rel=next]',
  ' ': 'a[rel=next]',
  PageDown: 'a[rel=next]',
  ArrowLeft: 'a[rel=prev]',
  PageUp: 'a[rel=prev]',
  ArrowUp: 'a[data-all]',
};

function keyed({ key, altKey, ctrlKey, metaKey, shiftKey }: KeyboardEvent): boolean {
  if (altKey || ctrlKey || metaKey || shiftKey) return false;
  const way = Object.hasOwn(ways, key) ? ways[key] : undefined;
  const link = way === undefined ? null : document.querySelector<HTMLAnchorElement>(`nav.k ${way}`);
  if (link === null) return false;
  location.assign(link.href);
  return true;
}

/** Said in one session once: after that it is known. */
async function stayAwake(): Promise<void> {
  const said = document.getElementById('awake');
  try {
    await navigator.wakeLock.request('screen');
  } catch {
    if (said === null || document.visibilityState !== 'visible' || sessionStorage.getItem('quern.awake') !== null)
      return;
    sessionStorage.setItem('quern.awake', 'refused');
    said.textContent = 'This screen may go dark by itself. ';
  }
}

if (document.querySelector('main.k:not(.all)') !== null) {
  document.addEventListener('keydown', (event) => {
    if (keyed(event)) event.preventDefault();
  });
  document.addEventListener('visibilitychange', () => void stayAwake());
  void stayAwake();
}
setTimeout(() => void followOn(), everyMs);
