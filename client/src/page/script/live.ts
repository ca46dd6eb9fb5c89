// Knows how a page lives: it becomes what it is sent, follows the caret, and says what is clicked and pressed.
// It refuses to know a view, and whether an editor or a browser is around it.

import type { PageState, ToPage } from '../messages.ts';
import { stopAtBoxes } from './boxes.ts';
import { bringIntoSight, markRow } from './caret.ts';
import { watchContrast } from './contrast.ts';
import { askedBy, isHeardAtOnce } from './fields.ts';
import { focusFinding } from './findings.ts';
import { focusAfter, type Pressed, pressedAt } from './focus.ts';
import { pressKey } from './keys.ts';
import { placeFindings } from './margin.ts';
import { morph } from './morph.ts';
import { focusLine, stopOnce } from './rows.ts';
import { refuseAt, sayPolitely } from './said.ts';
import type { Transport } from './transport.ts';
import { showTrouble } from './trouble.ts';

export function live(transport: Transport): void {
  const page = place('page');
  let state: PageState | undefined = transport.kept();
  let caret = 0;
  let isFirst = true;
  /** What was pressed last, until it has come to something. */
  let pressed: Pressed | undefined;
  /** What is gone to once another view is there. */
  let awaited: string | undefined;

  const show = ({ state: now, html, style }: Extract<ToPage, { kind: 'show' }>): void => {
    const isSameText = state?.uri === now.uri;
    const isOther = !isSameText || state?.view !== now.view;
    const scroll = isSameText ? (state?.scroll ?? {}) : {};
    state = { ...now, scroll };
    const sheet = place('sheet');
    if (style !== undefined && sheet.textContent !== style) sheet.textContent = style;
    morph(page, html);
    placeFindings(page);
    stopOnce(page);
    stopAtBoxes(page);
    markRow(page, caret);
    if (isOther || isFirst) window.scrollTo({ top: scroll[now.view] ?? 0, behavior: 'instant' });
    if (isFirst) watchContrast();
    isFirst = false;
    transport.keep(state);
    if (pressed !== undefined && focusAfter(page, pressed)) pressed = undefined;
    if (awaited !== undefined) goWithin(awaited);
    awaited = undefined;
  };

  const heard = (message: ToPage): void => {
    switch (message.kind) {
      case 'show':
        show(message);
        break;
      case 'caret': {
        const moved = message.line !== caret;
        caret = message.line;
        const row = markRow(page, caret);
        if (moved && row !== undefined && !document.hasFocus()) bringIntoSight(row);
        break;
      }
      case 'said':
        sayPolitely(place('said'), message.words);
        if (message.refused) refuseAt(pressed?.on, message.words);
        break;
      case 'busy':
        page.querySelector('main')?.setAttribute('aria-busy', 'true');
        break;
      case 'trouble':
        showTrouble(place('trouble'), message.trouble, (does) => transport.post({ kind: 'remedy', does }));
    }
  };

  const press = (element: HTMLElement): void => {
    const asked = askedBy(element);
    if (asked === undefined) return;
    pressed = pressedAt(page, element);
    transport.post({ kind: 'act', ...asked });
  };

  const go = (line: HTMLElement, focus: boolean): void => {
    const number = Number(line.dataset.line);
    if (Number.isInteger(number) && number > 0) transport.post({ kind: 'go', line: number, focus });
  };

  /** To something on the page by its id. */
  const goWithin = (id: string): void => focusFinding(document.getElementById(id) ?? undefined);

  /** Whether a click was one of the page's. */
  const clicked = (target: Element, toText: boolean): boolean => {
    const button = target.closest<HTMLElement>('button[data-do], a[data-do]');
    if (button !== null) {
      press(button);
      return true;
    }
    const link = target.closest<HTMLElement>('a[href^="#"]:not([data-line])');
    if (link !== null) {
      const { view } = link.dataset;
      const id = link.getAttribute('href')?.slice(1) ?? '';
      if (view === id && view === state?.view) return true;
      if (view === undefined || view === state?.view) goWithin(id);
      else {
        awaited = view === id ? undefined : id;
        transport.post({ kind: 'view', view });
      }
      return true;
    }
    if (target.closest('input, select, summary, label, details') !== null) return false;
    const line = target.closest<HTMLElement>('[data-line]');
    // Who marks words with the mouse wants those, not the line.
    if (line === null || getSelection()?.isCollapsed === false) return false;
    focusLine(line);
    go(line, toText);
    return true;
  };

  // Before the editor's own: it would follow every link by itself.
  document.addEventListener(
    'click',
    (event) => {
      if (!(event.target instanceof Element)) return;
      if (!clicked(event.target, event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    true,
  );
  document.addEventListener('keydown', (event) => {
    const keyed = { go: (line: HTMLElement) => go(line, true), press, undo: () => transport.post({ kind: 'undo' }) };
    if (pressKey(page, event, keyed)) event.preventDefault();
  });
  document.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLElement && isHeardAtOnce(target)) press(target);
  });
  document.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLElement && !isHeardAtOnce(target)) press(target);
  });
  document.addEventListener(
    'scroll',
    onceStill(() => {
      if (state === undefined) return;
      state = { ...state, scroll: { ...state.scroll, [state.view]: Math.round(window.scrollY) } };
      transport.keep(state);
    }),
  );
  window.addEventListener(
    'resize',
    onceStill(() => {
      placeFindings(page);
      stopAtBoxes(page);
    }),
  );
  transport.listen(heard);
  transport.post({ kind: 'ready' });
}

/** What is done once nothing has moved for a moment. */
function onceStill(run: () => void): () => void {
  let waiting: number | undefined;
  return () => {
    window.clearTimeout(waiting);
    waiting = window.setTimeout(run, 100);
  };
}

function place(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no #${id}.`);
  return found;
}
