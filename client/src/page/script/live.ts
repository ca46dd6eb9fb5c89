// Knows how a page lives: it becomes what it is sent, follows the caret, and says what is clicked and pressed.
// It refuses to know a view, and whether an editor or a browser is around it.

import type { PageState, ToPage } from '../messages.ts';
import { bringIntoSight, markRow } from './caret.ts';
import { watchContrast } from './contrast.ts';
import { askedBy, isHeardAtOnce } from './fields.ts';
import { focusAfter, goToFinding, type Pressed, pressedAt } from './findings.ts';
import { placeFindings } from './margin.ts';
import { morph } from './morph.ts';
import { focusLine, moveByKey, stopOnce } from './rows.ts';
import type { Transport } from './transport.ts';
import { showTrouble } from './trouble.ts';

export function live(transport: Transport): void {
  const page = place('page');
  const said = place('said');
  let state: PageState | undefined = transport.kept();
  let caret = 0;
  let shownVersion = -1;
  let pressed: { readonly at: Pressed; readonly version: number } | undefined;

  const keepScroll = (): void => {
    if (state === undefined) return;
    state = { ...state, scroll: { ...state.scroll, [state.view]: Math.round(window.scrollY) } };
    transport.keep(state);
  };

  const show = (message: Extract<ToPage, { kind: 'show' }>): void => {
    const isOther = state === undefined || state.uri !== message.state.uri || state.view !== message.state.view;
    const isFirst = shownVersion < 0;
    const scroll = state !== undefined && state.uri === message.state.uri ? state.scroll : {};
    state = { ...message.state, scroll };
    shownVersion = message.documentVersion;
    const sheet = document.getElementById('sheet');
    if (message.style !== undefined && sheet !== null && sheet.textContent !== message.style)
      sheet.textContent = message.style;
    morph(page, message.html);
    page.removeAttribute('aria-busy');
    page.querySelector('main')?.removeAttribute('aria-busy');
    placeFindings(page);
    stopOnce(page);
    markRow(page, caret);
    if (isOther || isFirst) window.scrollTo({ top: scroll[state.view] ?? 0, behavior: 'instant' });
    transport.keep(state);
    if (isFirst) watchContrast();
    if (pressed !== undefined && shownVersion !== pressed.version) {
      const { at } = pressed;
      pressed = undefined;
      focusAfter(page, at);
    }
  };

  const heard = (message: ToPage): void => {
    switch (message.kind) {
      case 'show':
        show(message);
        return;
      case 'caret': {
        const moved = message.line !== caret;
        caret = message.line;
        const row = markRow(page, caret);
        if (moved && row !== undefined && !document.hasFocus()) bringIntoSight(row);
        return;
      }
      case 'said':
        said.textContent = message.words;
        if (message.refused) pressed = undefined;
        return;
      case 'busy':
        page.querySelector('main')?.setAttribute('aria-busy', 'true');
        return;
      case 'trouble':
        showTrouble(place('trouble'), message.trouble, (does) => transport.post({ kind: 'remedy', does }));
        return;
    }
  };

  const press = (element: HTMLElement): void => {
    const asked = askedBy(element);
    if (asked === undefined) return;
    const at = element instanceof HTMLButtonElement ? pressedAt(page, element) : undefined;
    if (at !== undefined) pressed = { at, version: shownVersion };
    transport.post({ kind: 'act', ...asked });
  };

  const go = (element: HTMLElement, focus: boolean): void => {
    const line = Number(element.dataset.line);
    if (Number.isInteger(line) && line > 0) transport.post({ kind: 'go', line, focus });
  };

  document.addEventListener('click', (event) => {
    if (!(event.target instanceof Element)) return;
    const link = event.target.closest<HTMLElement>('[data-view]');
    if (link?.dataset.view !== undefined) {
      event.preventDefault();
      transport.post({ kind: 'view', view: link.dataset.view });
      return;
    }
    const button = event.target.closest<HTMLElement>('button[data-do], a[data-do]');
    if (button !== null) {
      event.preventDefault();
      press(button);
      return;
    }
    if (event.target.closest('input, select, summary, label, details[open] p, a[href^="http"]') !== null) return;
    const line = event.target.closest<HTMLElement>('[data-line]');
    // Who marks words with the mouse wants those, not the line.
    if (line === null || getSelection()?.isCollapsed === false) return;
    event.preventDefault();
    focusLine(line);
    go(line, event.ctrlKey || event.metaKey);
  });
  document.addEventListener('keydown', (event) => {
    if (keyed(event)) event.preventDefault();
  });
  document.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLElement && isHeardAtOnce(target)) press(target);
  });
  document.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLElement && !isHeardAtOnce(target)) press(target);
  });
  let scrolled: number | undefined;
  document.addEventListener('scroll', () => {
    window.clearTimeout(scrolled);
    scrolled = window.setTimeout(keepScroll, 100);
  });
  let narrower: number | undefined;
  window.addEventListener('resize', () => {
    window.clearTimeout(narrower);
    narrower = window.setTimeout(() => placeFindings(page), 100);
  });
  transport.listen(heard);
  transport.post({ kind: 'ready' });

  /** Whether a key was one of the page's. */
  function keyed({ target, key, shiftKey, altKey, ctrlKey, metaKey }: KeyboardEvent): boolean {
    if (!(target instanceof HTMLElement)) return false;
    if (key === 'F8') {
      goToFinding(page, shiftKey ? -1 : 1);
      return true;
    }
    if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) return false;
    if (key === 'z' && (ctrlKey || metaKey) && !shiftKey && !altKey) {
      transport.post({ kind: 'undo' });
      return true;
    }
    if (ctrlKey || metaKey || altKey) return false;
    if (key === 'Enter' && target.matches('[data-line]:not(button, [data-do])')) {
      go(target, true);
      return true;
    }
    return moveByKey(key, target);
  }
}

function place(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no #${id}.`);
  return found;
}
